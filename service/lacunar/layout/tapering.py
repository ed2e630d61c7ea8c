"""What tapers of a layout, whether it was measured so or laid out along walls out of square."""

from collections.abc import Iterator, Mapping

from lacunar.layout.opening_records import (
    OutOfSquareCrown,
    Squareness,
    TaperedField,
    TaperedPanel,
)
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle

Corners = Mapping[frozenset[str], Angle]

_BETWEEN = (("W1", "W4"), ("W4", "W3"), ("W3", "W2"), ("W2", "W1"))


def tapered_panels_of(layout: Layout) -> Iterator[TaperedPanel]:
    """The panels that are no rectangles."""
    for found in (layout.measured_openings, layout.followed):
        yield from found.panels if found else ()


def tapered_boards_of(layout: Layout) -> Iterator[TaperedField]:
    """The fields of boards that taper."""
    for found in (layout.measured_openings, layout.followed):
        yield from found.boards if found else ()


def crown_out_of_square(layout: Layout) -> Iterator[OutOfSquareCrown]:
    """The crown of coffers that are out of square."""
    for found in (layout.measured_openings, layout.followed):
        yield from found.crown if found else ()


def corners_out_of_square(layout: Layout) -> dict[str, Corners]:
    """The corners of coffers out of square, by the walls toward which their sides lie."""
    found = dict(_planned(layout))
    measured = layout.measured_openings
    for opening in measured.openings if measured else ():
        found.pop(opening.coffer, None)
        if opening.squareness is Squareness.OUT_OF_SQUARE:
            found[opening.coffer] = {
                frozenset(corner.between): corner.angle.value for corner in opening.corners
            }
    return found


def _planned(layout: Layout) -> Iterator[tuple[str, Corners]]:
    if layout.followed is None or layout.crooked is None:
        return
    tapering = {each.coffer for each in layout.followed.coffers if each.tapers}
    mode = next(each for each in layout.crooked.modes if each.chosen)
    for coffer in mode.coffers:
        if coffer.id in tapering:
            corners = zip(_BETWEEN, coffer.corners, strict=True)
            yield coffer.id, {frozenset(pair): corner.angle.value for pair, corner in corners}
