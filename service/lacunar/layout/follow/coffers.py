"""Coffers of a grid that follows the walls: their corners, and openings as they are planned."""

from collections.abc import Iterator, Sequence

from lacunar.layout.names import coffer_id
from lacunar.layout.opening_records import (
    MeasuredDiagonal,
    MeasuredOpening,
    MeasuredSide,
    OpeningCorner,
    Squareness,
)
from lacunar.layout.openings.as_measured import SHORTER, worst_lean
from lacunar.layout.openings.faults import SIDE_TOWARD
from lacunar.layout.quadrilaterals import CORNERS, lean_of
from lacunar.layout.records import Coffer, Point
from lacunar.layout.survey_records import CrookedRoom, ModeCoffer
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.room import WALLS


def planned_coffers(crooked: CrookedRoom) -> tuple[ModeCoffer, ...]:
    """The coffers of the way that was chosen, row by row."""
    return next(mode for mode in crooked.modes if mode.chosen).coffers


def followed_coffers(crooked: CrookedRoom, columns: int) -> tuple[Coffer, ...]:
    """Turn coffers along the walls into coffers; `columns` is how many are in a row.

    Length and width are those of what fits between unlike sides: the shorter of the two.
    """
    return tuple(
        _coffer(planned, *divmod(number, columns))
        for number, planned in enumerate(planned_coffers(crooked))
    )


def _coffer(planned: ModeCoffer, row: int, column: int) -> Coffer:
    first, second, third, fourth = (Point(corner.at.x, corner.at.y) for corner in planned.corners)
    return Coffer(
        id=coffer_id(row + 1, column + 1),
        row=row + 1,
        column=column + 1,
        corners=(first, second, third, fourth),
        length=_shorter(planned.towards_w4, planned.towards_w2),
        width=_shorter(planned.towards_w1, planned.towards_w3),
    )


def _shorter(one: LengthFigure, other: LengthFigure) -> LengthFigure:
    tell = SHORTER.approximates if one.approximate or other.approximate else SHORTER.gives
    return tell(min(one.value, other.value), one=one.value, other=other.value)


def planned_openings(
    crooked: CrookedRoom, coffers: Sequence[Coffer], limit: Length
) -> Iterator[MeasuredOpening]:
    """Turn coffers along the walls into openings that nobody measured yet, with known corners.

    `limit` is how far a side may stand off square for square frames and panels to do.
    """
    for planned, coffer in zip(planned_coffers(crooked), coffers, strict=True):
        yield _opening(planned, coffer, limit)


def _opening(planned: ModeCoffer, coffer: Coffer, limit: Length) -> MeasuredOpening:
    first, second, third, fourth = (
        MeasuredSide(wall, side, None, None)
        for wall, side in zip(WALLS, planned.sides, strict=True)
    )
    sides = (planned.towards_w4, planned.towards_w3, planned.towards_w2, planned.towards_w1)
    corners = tuple(_corner(planned, sides, number) for number in CORNERS)
    off = worst_lean([corner.lean for corner in corners])
    squareness = Squareness.OUT_OF_SQUARE if off.value > limit else Squareness.SQUARE
    return MeasuredOpening(
        coffer=planned.id,
        sides=(first, second, third, fourth),
        diagonals=(
            MeasuredDiagonal("rising", planned.rising, None, None),
            MeasuredDiagonal("falling", planned.falling, None, None),
        ),
        fit_length=coffer.length,
        fit_width=coffer.width,
        corners=corners,
        closing_error=None,
        out_of_square=off,
        squareness=squareness,
        missing=(),
    )


def _corner(planned: ModeCoffer, sides: Sequence[LengthFigure], number: int) -> OpeningCorner:
    angle = planned.corners[number].angle
    return OpeningCorner(
        between=(SIDE_TOWARD[number - 1], SIDE_TOWARD[number]),
        angle=angle,
        by_rising=None,
        by_falling=None,
        lean=lean_of(sides[number].value, sides[number - 1].value, angle.value),
    )
