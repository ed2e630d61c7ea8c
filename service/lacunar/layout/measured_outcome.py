"""What measured openings come to, put together: openings, crown, panels and boards."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.mouldings.out_of_square import out_of_square_crown
from lacunar.layout.opening_records import (
    MeasuredOpening,
    MeasuredOpenings,
    OutOfSquareCrown,
    TaperedField,
    TaperedPanel,
)
from lacunar.layout.openings.as_measured import measured_openings
from lacunar.layout.openings.grid_id import NONE_CUT, grid_id
from lacunar.layout.panels.sheet_goods import AsMeasured, CofferReach
from lacunar.layout.panels.tapered_boards import tapered_boards
from lacunar.layout.panels.tapered_panels import tapered_panels
from lacunar.layout.records import Coffer
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.ceiling import Ceiling

REACH = Rule("size of the rectangle about a coffer that tapers", "high - low")


def as_measured(
    ceiling: Ceiling,
    coffers: Sequence[Coffer],
    tapering: Sequence[MeasuredOpening] = (),
    cut: Mapping[str, Sequence[Spot]] = NONE_CUT,
) -> AsMeasured:
    """Turn what was measured in the grid of these coffers into openings and tapered panels.

    Parameters: `ceiling`; `coffers`; `tapering`, the openings as planned of coffers that are to
    taper, which count as long as they were not measured; `cut`, the corners of those that walls or
    columns cut. Raises SpecRefused where the grid is another, or with every opening that cannot
    close.
    """
    grid = grid_id(coffers, cut)
    taken = measured_openings(ceiling.measured_openings, grid, coffers, tapering, tuple(cut))
    known = {opening.coffer: opening for opening in (*tapering, *taken)}
    opened = tuple(known[coffer.id] for coffer in coffers if coffer.id in known)
    return AsMeasured(
        openings=opened,
        tapered=tuple(tapered_panels(ceiling.panel, opened)),
        tapered_boards=tuple(tapered_boards(ceiling.panel, opened)),
        reaches=tuple(_reaches(coffers, tapering)),
    )


def _reaches(
    coffers: Sequence[Coffer], tapering: Sequence[MeasuredOpening]
) -> Iterator[CofferReach]:
    """The rectangle about each coffer that is planned to taper."""
    planned = {opening.coffer for opening in tapering}
    for coffer in coffers:
        if coffer.id in planned:
            yield CofferReach(
                coffer,
                _reach([corner.x for corner in coffer.corners]),
                _reach([corner.y for corner in coffer.corners]),
            )


def _reach(places: Sequence[Length]) -> LengthFigure:
    low, high = min(places), max(places)
    return REACH.approximates(high - low, high=high, low=low)


def measured_outcome(
    ceiling: Ceiling, coffers: Sequence[Coffer], measured: AsMeasured
) -> MeasuredOpenings | None:
    """Turn what was measured into all that follows from it where coffers are out of square.

    None where nothing was measured. What follows of square ones stands with mouldings, panels and
    boards.
    """
    if ceiling.measured_openings is None:
        return None
    taken = {each.coffer for each in ceiling.measured_openings.coffers}
    own = outcome_of(ceiling, measured, taken)
    return MeasuredOpenings(
        grid=ceiling.measured_openings.grid,
        openings=tuple(each for each in measured.openings if each.coffer in taken),
        not_measured=tuple(coffer.id for coffer in coffers if coffer.id not in taken),
        crown=own.crown,
        panels=own.panels,
        boards=own.boards,
    )


@dataclass(frozen=True, slots=True)
class Outcome:
    """What goes into coffers out of square."""

    crown: tuple[OutOfSquareCrown, ...]
    panels: tuple[TaperedPanel, ...]
    boards: tuple[TaperedField, ...]


def outcome_of(ceiling: Ceiling, measured: AsMeasured, coffers: Collection[str]) -> Outcome:
    """What goes into those of some coffers that are out of square."""
    openings = [each for each in measured.openings if each.coffer in coffers]
    return Outcome(
        crown=tuple(out_of_square_crown(ceiling, openings)),
        panels=tuple(each for each in measured.tapered if each.coffer in coffers),
        boards=tuple(f for f, _ in measured.tapered_boards if f.coffer in coffers),
    )
