"""Decides what a survey leaves open."""

from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import distance
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.opening_assumptions import COPE_CLOSES, SQUARE_FRAME_HIDES
from lacunar.model.openings import OutOfSquare
from lacunar.model.spec import RoomSpec
from lacunar.model.survey import (
    Crooked,
    CrookedSpec,
    DiagonalsSpec,
    Excess,
    FourLengths,
    GridMode,
    Survey,
    SurveySpec,
    Wall,
)

# From where a survey is taken again, and from where a taper is seen: common practice, no source.
TOLERANCE = {Units.INCH: Length.of_inches(1) / 2, Units.MILLIMETER: Length.of_millimeters(12)}
VISIBLE_TAPER = {Units.INCH: Length.of_inches(1) / 4, Units.MILLIMETER: Length.of_millimeters(6)}

_STRAIGHT: FourLengths = (ZERO, ZERO, ZERO, ZERO)


def decide_survey(room: RoomSpec, units: Units, assuming: Assuming) -> Survey | None:
    """Turn a survey that has passed the rules into a decided one."""
    said = room.survey
    if said is None:
        return None
    return Survey(
        sides=said.sides,
        diagonals=said.diagonals or DiagonalsSpec(),
        angles=said.angles,
        points=said.points,
        bows=said.bows or _STRAIGHT,
        tolerance=assuming.settle(
            said.tolerance,
            "/room/survey/tolerance",
            TOLERANCE[units],
            "a closing error up to here is shared out, a larger one is measured again",
        ),
    )


def decide_crooked(room: RoomSpec, units: Units, assuming: Assuming) -> Crooked | None:
    """Turn what is said of the grid in a surveyed room into what holds of it."""
    if room.survey is None:
        return None
    said = room.crooked or CrookedSpec()
    mode = assuming.settle(
        said.mode,
        "/room/crooked/mode",
        GridMode.KEEP_SQUARE,
        "equal coffers with right angles, and what is out of square at the walls",
    )
    # What only the other way to lay out asks for is settled without a word.
    square, following = (assuming if mode is each else Assuming() for each in GridMode)
    how, limit = _tapering(said, units, following)
    return Crooked(
        mode=mode,
        control=square.settle(
            said.control,
            "/room/crooked/control",
            str(Wall.W1),
            "the grid is square to the wall it is measured from",
        ),
        excess=square.settle(
            said.excess,
            "/room/crooked/excess",
            Excess.END,
            "each strip takes up what lies between it and its own wall",
        ),
        visible_taper=square.settle(
            said.visible_taper,
            "/room/crooked/visible_taper",
            VISIBLE_TAPER[units],
            "a strip that tapers more is seen to",
        ),
        out_of_square=how,
        out_of_square_limit=limit,
    )


def _tapering(said: CrookedSpec, units: Units, assuming: Assuming) -> tuple[OutOfSquare, Length]:
    """How crown goes into coffers that taper, and from where they count as tapering."""
    place = "/room/crooked/out_of_square"
    return (
        assuming.settle(said.out_of_square, place, OutOfSquare.COPED_IN_PLACE, COPE_CLOSES),
        assuming.settle(
            said.out_of_square_limit,
            f"{place}_limit",
            SQUARE_FRAME_HIDES[units],
            "what a square frame can be out and still be caulked",
        ),
    )


def nominal_sizes(survey: SurveySpec) -> tuple[Length, Length]:
    """Turn a survey into what the room is called by: its sides W4 and W1 [length]."""
    if survey.sides is not None:
        return survey.sides[3], survey.sides[0]
    if survey.points is None:
        raise ValueError("/room/survey/points is open: the spec has not passed the rules")
    datum, right, _, left = survey.points
    return distance(datum, right).length, distance(datum, left).length
