"""Turns what was measured into openings: differences from the plan, corners, how far off square."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.opening_records import (
    MeasuredDiagonal,
    MeasuredOpening,
    MeasuredSide,
    OpeningCorner,
    Squareness,
)
from lacunar.layout.openings.faults import (
    SIDE_TOWARD,
    closing_faults,
    corner_faults,
    grid_faults,
    triangle_faults,
)
from lacunar.layout.quadrilaterals import (
    CORNERS,
    Corner,
    Quadrilateral,
    closing_error,
    corner,
    lean,
)
from lacunar.layout.records import Coffer
from lacunar.measure.angle import hypotenuse
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.openings import MeasuredCoffer, Openings
from lacunar.model.room import WALLS

DIFFERENCE = Rule("as measured, less as planned", "measured - planned")
PLANNED_DIAGONAL = Rule(
    "diagonal as planned: across a square opening", "sqrt(length * length + width * width)"
)
SHORTER = Rule("what fits between unlike sides: the shorter of the two", "min(one, other)")
SIDES_DIFFER = Rule(
    "least that corners are off square by, opposite sides being unlike: half of what they differ",
    "max(abs(w1 - w3), abs(w2 - w4)) / 2",
)
WORST_LEAN = Rule("off square: the most of any corner", "max(first, second, third, fourth)")


@dataclass(frozen=True, slots=True)
class PlannedSizes:
    """A coffer as planned: sides by the wall they lie toward, diagonals, and what fits."""

    sides: Mapping[str, LengthFigure]
    rising: LengthFigure
    falling: LengthFigure
    length: LengthFigure
    width: LengthFigure


def measured_openings(
    openings: Openings | None,
    grid: str,
    coffers: Sequence[Coffer],
    tapering: Sequence[MeasuredOpening] = (),
    cut: Sequence[str] = (),
) -> tuple[MeasuredOpening, ...]:
    """Turn what was measured into openings, in the order of the grid; none where nothing was.

    Parameters: `openings` as measured in the `grid` of these `coffers`; `tapering`, the openings as
    planned where these are no rectangles.

    Four sides and a diagonal fix the corners, by the law of cosines; two diagonals prove each
    other, and corners are the mean of both. Four sides alone fix no corner. `cut` are the ids of
    coffers that walls or columns cut, which are measured by numbers.

    Raises SpecRefused where the grid is another, or with every opening that cannot close.
    """
    if openings is None:
        return ()
    refuse(list(grid_faults(openings, grid, coffers, cut)))
    planned = {coffer.id: rectangle(coffer) for coffer in coffers}
    planned |= {opening.coffer: planned_sizes(opening) for opening in tapering}
    found: dict[str, MeasuredOpening] = {}
    faults: list[Fault] = []
    for number, each in enumerate(openings.coffers):
        place = f"/measured_openings/coffers/{number}"
        if each.coffer in cut:
            continue
        try:
            found[each.coffer] = _opening(place, planned[each.coffer], each, openings)
        except SpecRefused as refused:
            faults += refused.faults
    refuse(faults)
    return tuple(found[coffer.id] for coffer in coffers if coffer.id in found)


def _opening(
    place: str, sizes: PlannedSizes, measured: MeasuredCoffer, openings: Openings
) -> MeasuredOpening:
    sides = tuple(
        _side(wall, sizes.sides[wall], taken)
        for wall, taken in zip(WALLS, measured.sides, strict=True)
    )
    first, second, third, fourth = sides
    rising = _diagonal("rising", sizes.rising, measured.rising)
    falling = _diagonal("falling", sizes.falling, measured.falling)
    shape = _shape(measured)
    planned = {each.toward: each.planned.value for each in sides}
    planned |= {each.name: each.planned.value for each in (rising, falling)}
    corners, closing = _corners(place, measured.coffer, shape, planned, openings)
    off = _off_square(corners, sides)
    return MeasuredOpening(
        coffer=measured.coffer,
        sides=(first, second, third, fourth),
        diagonals=(rising, falling),
        fit_length=_fit(second, fourth, sizes.length),
        fit_width=_fit(first, third, sizes.width),
        corners=corners,
        closing_error=closing,
        out_of_square=off,
        squareness=_squareness(corners, off, openings.out_of_square_limit),
        missing=tuple(_missing(measured)),
    )


def rectangle(coffer: Coffer) -> PlannedSizes:
    """Turn a coffer with right angles into its sizes."""
    across = _planned_diagonal(coffer)
    along = {"W2": coffer.length, "W4": coffer.length}
    sides = {**along, "W1": coffer.width, "W3": coffer.width}
    return PlannedSizes(sides, across, across, coffer.length, coffer.width)


def planned_sizes(opening: MeasuredOpening) -> PlannedSizes:
    """Turn an opening as it is planned into its sizes."""
    rising, falling = opening.diagonals
    return PlannedSizes(
        {side.toward: side.planned for side in opening.sides},
        rising.planned,
        falling.planned,
        opening.fit_length,
        opening.fit_width,
    )


def _planned_diagonal(coffer: Coffer) -> LengthFigure:
    length, width = coffer.length.value, coffer.width.value
    return PLANNED_DIAGONAL.approximates(hypotenuse(length, width), length=length, width=width)


def _side(toward: str, planned: LengthFigure, taken: Length | None) -> MeasuredSide:
    if taken is None:
        return MeasuredSide(toward, planned, None, None)
    return MeasuredSide(toward, planned, given(taken), _difference(planned, taken))


def _diagonal(
    name: Literal["rising", "falling"], planned: LengthFigure, taken: Length | None
) -> MeasuredDiagonal:
    if taken is None:
        return MeasuredDiagonal(name, planned, None, None)
    return MeasuredDiagonal(name, planned, given(taken), _difference(planned, taken))


def _difference(planned: LengthFigure, taken: Length) -> LengthFigure:
    gives = DIFFERENCE.approximates if planned.approximate else DIFFERENCE.gives
    return gives(taken - planned.value, measured=taken, planned=planned.value)


def _fit(one: MeasuredSide, other: MeasuredSide, planned: LengthFigure) -> LengthFigure:
    """The shorter of opposite sides; the planned size unless both were measured."""
    if one.measured is None or other.measured is None:
        return planned
    shorter = min(one.measured.value, other.measured.value)
    return SHORTER.gives(shorter, one=one.measured.value, other=other.measured.value)


def _shape(measured: MeasuredCoffer) -> Quadrilateral | None:
    """The shape, where all sides and a diagonal are known."""
    left, top, right, bottom = measured.sides
    if left is None or top is None or right is None or bottom is None:
        return None
    if measured.rising is None and measured.falling is None:
        return None
    return Quadrilateral((bottom, right, top, left), measured.rising, measured.falling)


def _corners(
    place: str,
    coffer: str,
    shape: Quadrilateral | None,
    planned: Mapping[str, Length],
    openings: Openings,
) -> tuple[tuple[OpeningCorner, ...], LengthFigure | None]:
    """The corners and the closing error of a shape that is known. Raises SpecRefused."""
    if shape is None:
        return (), None
    refuse(list(triangle_faults(place, coffer, shape)))
    error = closing_error(shape)
    if error is not None:
        limits = (error, openings.closing_limit)
        refuse(list(closing_faults(place, coffer, shape, planned, limits)))
    corners = [corner(shape, number) for number in CORNERS]
    refuse(list(corner_faults(place, coffer, [each.angle.value for each in corners])))
    return tuple(_corner(shape, number, each) for number, each in enumerate(corners)), error


def _corner(shape: Quadrilateral, number: int, found: Corner) -> OpeningCorner:
    return OpeningCorner(
        between=(SIDE_TOWARD[number - 1], SIDE_TOWARD[number]),
        angle=found.angle,
        by_rising=found.by_rising,
        by_falling=found.by_falling,
        lean=lean(shape, number, found.angle.value),
    )


def _off_square(
    corners: Sequence[OpeningCorner], sides: Sequence[MeasuredSide]
) -> LengthFigure | None:
    if corners:
        return worst_lean([corner.lean for corner in corners])
    w1, w2, w3, w4 = (None if each.measured is None else each.measured.value for each in sides)
    if w1 is None or w2 is None or w3 is None or w4 is None:
        return None
    differ = max(abs(w1 - w3), abs(w2 - w4)) / 2
    return SIDES_DIFFER.gives(differ, w1=w1, w3=w3, w2=w2, w4=w4)


def worst_lean(leans: Sequence[LengthFigure]) -> LengthFigure:
    """Turn the leans of four corners [length] into what their opening is out of square by."""
    names = ("first", "second", "third", "fourth")
    told = {name: lean.value for name, lean in zip(names, leans, strict=True)}
    return WORST_LEAN.approximates(max(told.values()), **told)


def _squareness(
    corners: Sequence[OpeningCorner], off: LengthFigure | None, limit: Length
) -> Squareness:
    """Unlike sides prove an opening out of square; like ones prove nothing without a diagonal."""
    if off is not None and off.value > limit:
        return Squareness.OUT_OF_SQUARE
    return Squareness.SQUARE if corners else Squareness.UNKNOWN


def _missing(measured: MeasuredCoffer) -> Iterator[str]:
    for wall, taken in zip(WALLS, measured.sides, strict=True):
        if taken is None:
            yield f"side toward {wall}"
    if measured.rising is None and measured.falling is None:
        yield "a diagonal"
