"""A closed survey as it is told: corners, walls and diagonals between finished faces."""

from collections.abc import Sequence
from functools import lru_cache

from lacunar.layout.survey.control_line import WALL_ENDS
from lacunar.layout.survey.square_frame import SquareFrame
from lacunar.layout.survey_records import SurveyedCorner, SurveyedWall, SurveyReport
from lacunar.measure.angle import Angle, corner_of_triangles
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.plane import ORIGIN, Spot, distance, on_grid
from lacunar.model.room import WALLS
from lacunar.model.survey import CORNERS, Survey

APART = Rule("how far two corners are apart", "sqrt(along * along + across * across)")
IN_LINE = Rule("how far two corners are apart, in line with a run", "abs(way)")
CORNER = Rule(
    "corner angle, by the law of cosines",
    "acos((one * one + other * other - opposite * opposite) / (2 * one * other))",
)
_RIGHT_ANGLE = 90
MANY = 256
"""So many ways and corners are remembered, as a square grid has the same ones again and again."""


def apart(one: Spot, other: Spot, *, approximate: bool) -> LengthFigure:
    """Turn two places into the figure of how far they are apart [length]."""
    return _long(other - one, approximate=approximate)


@lru_cache(maxsize=MANY)
def _long(way: Spot, *, approximate: bool) -> LengthFigure:
    """How long a way is. Coffers of a square grid all have the same few ways."""
    if not way.x or not way.y:
        tell = IN_LINE.approximates if approximate else IN_LINE.gives
        return tell(abs(way.x + way.y), way=way.x + way.y)
    found = distance(ORIGIN, way)
    tell = APART.approximates if approximate or found.approximate else APART.gives
    length = on_grid(found.length) if found.approximate else found.length
    return tell(length, along=way.x, across=way.y)


def corner_of(before: Spot, corner: Spot, after: Spot, *, approximate: bool) -> AngleFigure:
    """Turn three places into the angle at the middle one [deg]."""
    return _between(before - corner, after - corner, approximate=approximate)


@lru_cache(maxsize=MANY)
def _between(way: Spot, onward: Spot, *, approximate: bool) -> AngleFigure:
    """The angle between two ways from a corner."""
    one, other = distance(ORIGIN, way), distance(ORIGIN, onward)
    opposite = distance(way, onward)
    # The ways say exactly whether a corner is square, also where a diagonal had to be cut off.
    square = not (way.x.inches * onward.x.inches + way.y.inches * onward.y.inches)
    cut_off = approximate or any(each.approximate for each in (one, other, opposite))
    angle = Angle.of_degrees(_RIGHT_ANGLE)
    if not square:
        angle = corner_of_triangles([(one.length, other.length, opposite.length)])
    tell = CORNER.gives if square and not cut_off else CORNER.approximates
    return tell(
        angle,
        one=one.length,
        other=other.length,
        opposite=opposite.length,
    )


def corner_angles(corners: Sequence[Spot], *, approximate: bool) -> tuple[AngleFigure, ...]:
    """The angle inside at each of the corners of an outline, in their order."""
    return tuple(
        corner_of(
            corners[place - 1], corner, corners[(place + 1) % len(corners)], approximate=approximate
        )
        for place, corner in enumerate(corners)
    )


def survey_report(survey: Survey, frame: SquareFrame) -> SurveyReport:
    """Turn a survey and its frame into what is told of it."""
    shape, corners, rough = frame.shape, frame.corners, frame.approximate
    angles = corner_angles(corners, approximate=rough)
    return SurveyReport(
        kind=shape.kind,
        closing_error=shape.closing_error,
        tolerance=survey.tolerance,
        lengths=shape.lengths,
        angles=shape.angles,
        corners=tuple(
            SurveyedCorner(name, angle) for name, angle in zip(CORNERS, angles, strict=True)
        ),
        walls=tuple(
            SurveyedWall(
                wall,
                apart(*(corners[place] for place in WALL_ENDS[wall]), approximate=rough),
                bow,
            )
            for wall, bow in zip(WALLS, survey.bows, strict=True)
        ),
        rising=apart(corners[0], corners[2], approximate=rough),
        falling=apart(corners[1], corners[3], approximate=rough),
    )
