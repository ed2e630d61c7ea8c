"""Decides what a family of flat beams leaves open: its boards and how their edges lie."""

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.beams import Flat
from lacunar.model.defaults import DEFAULTS
from lacunar.model.spec import BoxSpec
from lacunar.model.stock import (
    SOFTWOOD,
    Stock,
    actual_stock,
    boards_at_least,
    is_common,
    same_stock_at_least,
)


def decide_flat(
    place: str, said: BoxSpec, widths: tuple[Length, ...], units: Units, assuming: Assuming
) -> Flat:
    """A flat family with nothing open; what was assumed is noted in `assuming`.

    Parameters: `place`, its pointer; `said` of it; `widths` of fixed beams that it must make;
    `units`; `assuming`.
    """
    bottom = said.bottom
    if bottom is None:
        like = said.upper_board or DEFAULTS[units].bottom
        least = max((each for each in (said.width, *widths) if each), default=like.width)
        bottom = _at_least(like, least, units)
        reason = "the narrowest stock that makes the widest beam" if least != like.width else ""
        assuming.note(f"{place}/bottom", bottom, reason or "a usual size")
    reveal, overhang = _edges(place, said, bottom, assuming)
    return Flat(bottom, said.upper_board, reveal, overhang, said.width)


def _at_least(like: Stock, width: Length, units: Units) -> Stock:
    """Stock like another, at least so wide; if none is sold, it is glued up."""
    if like.kind in SOFTWOOD:
        boards = boards_at_least(width, like)
        found = next((board for board in boards if is_common(board)), next(iter(boards), None))
    else:
        found = same_stock_at_least(like, width)
    return found or actual_stock(like.thickness, width, units)


def _edges(place: str, said: BoxSpec, bottom: Stock, assuming: Assuming) -> tuple[Length, Length]:
    """Reveal and overhang: as told, else as two boards as sold lie when one is centered."""
    upper = said.upper_board
    if upper is None or said.reveal is not None or said.overhang is not None:
        return said.reveal or ZERO, said.overhang or ZERO
    half = (upper.width - bottom.width) / 2
    reason = "the boards as sold, one centered on the other"
    if half >= ZERO:
        assuming.note(f"{place}/reveal", half, reason)
        return half, ZERO
    assuming.note(f"{place}/overhang", -half, reason)
    return ZERO, -half
