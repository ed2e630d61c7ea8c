"""Flat mouldings and nailers along the sides of coffers that walls or columns cut.

At the ceiling they go all round, mitred at every corner, inside and outside ones. At the lower edge
they are on beams only: they end against a bare wall or a column, or square where that falls back.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.layout.moulding_records import PieceEnd
from lacunar.layout.mouldings.pieces import flats_at, standing_out
from lacunar.layout.outline.edge_lengths import edge_lengths, set_in
from lacunar.layout.outline.filling import Filling
from lacunar.layout.outline_records import NAILER, SideStrip
from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatPlace

MITRED_AT = Rule("angle between side and cut: half the corner, for a miter", "corner / 2")
BUTTED_AT = Rule("angle between side and cut: the corner, for an end against a wall", "corner")
FREE_AT = Rule(
    "angle between side and cut: square, where the side ends free, or the wall falls back too far"
    " for a bevel",
    "90",
)

_STRAIGHT = Angle.of_degrees(180)
_RIGHT = Angle.of_degrees(90)
# Saws tilt by 45 to 50 degrees (common practice, no source).
_MOST_BEVELED = Angle.of_degrees(140)


@dataclass(frozen=True, slots=True)
class StripSide:
    """A side with its left and right corner, and whether it and those beside it are beams'."""

    length: LengthFigure
    corners: tuple[AngleFigure, AngleFigure]
    beam: bool
    beams_beside: tuple[bool, bool]


@dataclass(frozen=True, slots=True)
class _Strip:
    """A strip by its name: so far from the side, so far out from there."""

    moulding: str
    behind: Length
    depth: Length


def side_strips(side: StripSide, filling: Filling) -> Iterator[SideStrip]:
    """Turn a side into its strips: flat ones at the ceiling, nailer, flat ones at the lower edge.

    One whose edges do not both have some length has no room there.
    """
    mitred = tuple(_mitred(corner) for corner in side.corners)
    for strip in (*_flats(FlatPlace.CEILING, filling), *_nailer(filling)):
        yield _strip(side, strip, mitred)
    if not side.beam:
        return
    ends = tuple(
        _mitred(corner) if beam else _ended(corner)
        for corner, beam in zip(side.corners, side.beams_beside, strict=True)
    )
    for strip in _flats(FlatPlace.BOTTOM_EDGE, filling):
        yield _strip(side, strip, ends)


def _flats(place: FlatPlace, filling: Filling) -> Iterator[_Strip]:
    flats = flats_at(place, filling.ceiling.flat_mouldings)
    for number, flat in enumerate(flats):
        yield _Strip(flat.name, standing_out(flats[:number]), flat.thickness)


def _nailer(filling: Filling) -> Iterator[_Strip]:
    if filling.crown is not None and filling.crown.nailer is not None:
        yield _Strip(NAILER, filling.behind, filling.crown.nailer.depth.value)


def _mitred(corner: AngleFigure) -> tuple[PieceEnd, AngleFigure]:
    """An end that meets its like; where the sides run straight on it is square."""
    tell = MITRED_AT.approximates if corner.approximate else MITRED_AT.gives
    end = PieceEnd.SQUARE if corner.value == _STRAIGHT else PieceEnd.MITRED
    return end, tell(corner.value / 2, corner=corner.value)


def _ended(corner: AngleFigure) -> tuple[PieceEnd, AngleFigure]:
    """An end against a bare wall or a column; where that falls back too far it is square.

    Against a wall that goes nearly straight on, a bevel would have no end.
    """
    if corner.value > _MOST_BEVELED:
        return PieceEnd.SQUARE, FREE_AT.gives(_RIGHT)
    tell = BUTTED_AT.approximates if corner.approximate else BUTTED_AT.gives
    return PieceEnd.SQUARE, tell(corner.value, corner=corner.value)


def _strip(
    side: StripSide, strip: _Strip, ends: Sequence[tuple[PieceEnd, AngleFigure]]
) -> SideStrip:
    (left_end, left), (right_end, right) = ends
    cuts = left.value, right.value
    edges = edge_lengths(set_in(side.length, strip.behind, cuts), strip.depth, cuts)
    return SideStrip(
        moulding=strip.moulding,
        left_end=left_end,
        right_end=right_end,
        left_cut=left,
        right_cut=right,
        long_point=edges.long_point,
        short_point=edges.short_point,
        cut_from=edges.cut_from,
        between_ends=edges.between_ends,
        has_room=min(edges.long_point.value, edges.short_point.value) > ZERO,
    )
