"""A level run of crown that meets a raked one at a corner: whether their profiles do."""

from dataclasses import dataclass

from lacunar.layout.moulding_records import Rake, RakedMeeting
from lacunar.layout.mouldings.saw_settings import STRAIGHT
from lacunar.measure.angle import Angle, hypotenuse, off_upright, square_to_slope
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO

# Worked out with vectors, as the tests do again; there is no other source.
HEIGHT_CLIMBING = Rule(
    "height of a climbing run's other edge where it passes the level run's",
    "drop / cos(slope) + projection * tan(slope) / tan(corner / 2)",
)
HEIGHT_FALLING = Rule(
    "height of a falling run's other edge where it passes the level run's",
    "drop / cos(slope) - projection * tan(slope) / tan(corner / 2)",
)
APART = Rule(
    "how far the edges of a level and a raked run of one profile pass each other",
    "abs(raked_height - drop)",
)
DROP_CLIMBING = Rule(
    "drop, square to the rake, of a profile run for a climbing rake",
    "drop * cos(slope) - projection * sin(slope) / tan(corner / 2)",
)
DROP_FALLING = Rule(
    "drop, square to the rake, of a profile run for a falling rake",
    "drop * cos(slope) + projection * sin(slope) / tan(corner / 2)",
)
RUN_FACE = Rule(
    "face of a profile run for the rake", "sqrt(run_drop * run_drop + projection * projection)"
)
WIDER = Rule("how much wider a face run for the rake is", "run_face - face")

LEVEL = Angle.of_degrees(0)


@dataclass(frozen=True, slots=True)
class SizedCrown:
    """The sizes of crown as it stands on a level run."""

    face: LengthFigure
    drop: LengthFigure
    projection: LengthFigure


def raked_meeting(
    crown: SizedCrown | None, corner: Angle, slope: Angle, rake: Rake
) -> RakedMeeting:
    """Turn crown, a corner and a slope above level [deg] into how level and raked runs meet.

    Both walls are upright, both runs have one section square to their length, and each leans from
    its own wall by the spring. Every line of the section that is o out and v up runs on along both
    walls; in plan two such lines cross once, where the rake has gone o / tan(C/2) from the corner
    and gained that times tan R, and its section stands v / cos R tall. So one line meets another
    only where v (1 / cos R - 1) + o tan R / tan(C/2) is nothing: for all of them at once on a level
    run alone. Along one straight wall they do meet, in the plane half way between.

    Validity: 0 <= R < 90, 0 < C < 360. Without a source: worked with vectors, in the tests anew.

    >>> square = Angle.of_degrees(90)
    >>> raked_meeting(None, square, Angle.of_degrees(20), Rake.CLIMBS).meets
    False
    >>> raked_meeting(None, STRAIGHT, Angle.of_degrees(20), Rake.CLIMBS).meets
    True
    """
    if slope == LEVEL or corner == STRAIGHT:
        return RakedMeeting(slope, rake, True, None, None, None, None, None)
    if crown is None:
        return RakedMeeting(slope, rake, False, None, None, None, None, None)
    height = _raked_height(crown, corner, slope, rake)
    level = crown.drop.value
    apart = APART.approximates(
        max(height.value - level, level - height.value), raked_height=height.value, drop=level
    )
    run_drop = _run_drop(crown, corner, slope, rake)
    if run_drop.value <= ZERO:
        return RakedMeeting(slope, rake, False, height, apart, None, None, None)
    face, wider = _run_face(crown, run_drop)
    return RakedMeeting(slope, rake, False, height, apart, run_drop, face, wider)


def _raked_height(crown: SizedCrown, corner: Angle, slope: Angle, rake: Rake) -> LengthFigure:
    drop, projection = crown.drop.value, crown.projection.value
    rule = HEIGHT_CLIMBING if rake is Rake.CLIMBS else HEIGHT_FALLING
    height = off_upright(drop, _signed(slope, rake), projection, corner / 2)
    return rule.approximates(height, drop=drop, slope=slope, projection=projection, corner=corner)


def _run_drop(crown: SizedCrown, corner: Angle, slope: Angle, rake: Rake) -> LengthFigure:
    drop, projection = crown.drop.value, crown.projection.value
    rule = DROP_CLIMBING if rake is Rake.CLIMBS else DROP_FALLING
    square = square_to_slope(drop, _signed(slope, rake), projection, corner / 2)
    return rule.approximates(square, drop=drop, slope=slope, projection=projection, corner=corner)


def _signed(slope: Angle, rake: Rake) -> Angle:
    return slope if rake is Rake.CLIMBS else LEVEL - slope


def _run_face(crown: SizedCrown, run_drop: LengthFigure) -> tuple[LengthFigure, LengthFigure]:
    projection, face = crown.projection.value, crown.face.value
    run = RUN_FACE.approximates(
        hypotenuse(run_drop.value, projection), run_drop=run_drop.value, projection=projection
    )
    return run, WIDER.approximates(run.value - face, run_face=run.value, face=face)
