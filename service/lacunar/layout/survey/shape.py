"""From what was measured to four corners, closed: the survey as the tape or the level gave it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from typing import Literal

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.survey.quadrilateral import NAMES, closing_change, least_squares
from lacunar.layout.survey_records import AngleCorrection, LengthCorrection
from lacunar.measure.angle import Angle, stride, times_sine
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import (
    ORIGIN,
    Root,
    Spot,
    distance,
    on_grid,
    snapped,
    third_corner,
    turn,
)
from lacunar.model.faults import Fault, FigureValue, SpecRefused
from lacunar.model.room import WALLS
from lacunar.model.survey import CORNERS, FourAngles, FourLengths, FourSpots, Survey

CLOSING_ERROR = Rule(
    "closing error: the diagonal as measured, less what the rest of the survey makes it",
    "measured - computed",
)
CLOSING_GAP = Rule(
    "closing error: how far the way round the room ends from where it began",
    "sqrt(along * along + across * across)",
)
ADJUSTED = Rule("as taken, so that the survey closes", "measured + correction")
FLAT_SUM = 360

_SURVEY = "/room/survey"
Kind = Literal["diagonals", "angles", "points"]


@dataclass(frozen=True, slots=True)
class Shape:
    """Four corners at what was measured to, and how the survey closed."""

    kind: Kind
    corners: FourSpots
    closing_error: LengthFigure | None
    lengths: tuple[LengthCorrection, ...]
    angles: tuple[AngleCorrection, ...]
    approximate: bool


def surveyed_shape(survey: Survey) -> Shape:
    """Turn a survey into its corners. Raises SpecRefused where it contradicts itself."""
    if survey.points is not None:
        return _checked(survey, Shape("points", survey.points, None, (), (), approximate=False))
    if survey.sides is None:
        raise ValueError("the survey has not passed the rules")
    if survey.angles is not None:
        return _checked(survey, _by_angles(survey, survey.sides, survey.angles))
    if survey.diagonals.rising is None or survey.diagonals.falling is None:
        corners, approximate = _corners(_measured(survey, survey.sides))
        return Shape("diagonals", corners, None, (), (), approximate)
    return _by_both_diagonals(survey, survey.sides)


def _apart(one: Spot, other: Spot) -> Root:
    """How far two places are apart, on the grid where it has no exact form."""
    found = distance(one, other)
    return Root(on_grid(found.length), approximate=True) if found.approximate else found


def _measured(survey: Survey, sides: FourLengths) -> dict[str, Length]:
    named = dict(zip(WALLS, sides, strict=True))
    for name in ("rising", "falling"):
        diagonal = getattr(survey.diagonals, name)
        if diagonal is not None:
            named[name] = diagonal
    return named


def _corners(measured: Mapping[str, Length]) -> tuple[FourSpots, bool]:
    """Corners from four sides and one diagonal, the rising one if both are there."""
    right = Spot(measured["W4"], ZERO)
    try:
        if "rising" in measured:
            rising = measured["rising"]
            top, one = third_corner((ORIGIN, right), rising, measured["W3"])
            left, other = third_corner((ORIGIN, top), measured["W1"], measured["W2"])
        else:
            falling = measured["falling"]
            left, one = third_corner((ORIGIN, right), measured["W1"], falling)
            top, other = third_corner((left, right), measured["W2"], measured["W3"])
    except ValueError:
        raise SpecRefused([_impossible(measured)]) from None
    return (ORIGIN, right, top, left), one or other


def _impossible(measured: Mapping[str, Length]) -> Fault:
    """The fault of sides and a diagonal that make no triangle, naming the three."""
    diagonal = "rising" if "rising" in measured else "falling"
    pairs = (("W3", "W4"), ("W1", "W2")) if diagonal == "rising" else (("W1", "W4"), ("W2", "W3"))
    for pair in pairs:
        longest = max((diagonal, *pair), key=lambda name: measured[name])
        others = [name for name in (diagonal, *pair) if name != longest]
        if measured[longest] >= measured[others[0]] + measured[others[1]]:
            return Fault(
                code="survey_impossible",
                pointer=_pointer(longest),
                message=f"{longest} is not shorter than {others[0]} and {others[1]} together: the"
                " three make no triangle.",
                remedy=f"Take {longest}, {others[0]} and {others[1]} again.",
                figures={name: measured[name] for name in (longest, *others)},
            )
    return Fault(
        code="survey_impossible",
        pointer=_SURVEY,
        message="Sides and diagonals make no room with four corners.",
        remedy="Take the sides and both diagonals again.",
        figures=dict(measured),
    )


def _pointer(name: str) -> str:
    if name in CORNERS:
        return f"{_SURVEY}/angles/{name}"
    return f"{_SURVEY}/sides/{name}" if name in WALLS else f"{_SURVEY}/diagonals/{name}"


def _by_both_diagonals(survey: Survey, sides: FourLengths) -> Shape:
    measured = _measured(survey, sides)
    corners, approximate = _corners(measured)
    computed = _apart(corners[1], corners[3])
    off = measured["falling"] - computed.length
    error = _error(off, approximate or computed.approximate, measured["falling"], computed.length)
    if abs(off) > survey.tolerance:
        raise SpecRefused([_does_not_close(measured, off, survey.tolerance)])
    try:
        closed = least_squares({name: measured[name].inches for name in NAMES})
    except ValueError:
        raise SpecRefused([_impossible(measured)]) from None
    if not closed.changed:
        return Shape("diagonals", corners, error, (), (), approximate)
    adjusted = {name: Length.of_inches(closed.distances[name]) for name in NAMES}
    corners, _ = _corners(adjusted)
    lengths = tuple(_correction(name, measured[name], on_grid(adjusted[name])) for name in NAMES)
    return Shape("diagonals", corners, error, lengths, (), approximate=True)


def _error(off: Length, approximate: bool, measured: Length, computed: Length) -> LengthFigure:
    tell = CLOSING_ERROR.approximates if approximate else CLOSING_ERROR.gives
    return tell(off, measured=measured, computed=computed)


def _correction(name: str, measured: Length, adjusted: Length) -> LengthCorrection:
    return LengthCorrection(
        name,
        measured,
        ADJUSTED.approximates(adjusted, measured=measured, correction=adjusted - measured),
    )


def _does_not_close(measured: Mapping[str, Length], off: Length, tolerance: Length) -> Fault:
    """The fault that names the measurement whose single change, the least of all, closes best."""
    inches = {name: measured[name].inches for name in NAMES}
    changes = {name: closing_change(inches, name) for name in NAMES}
    told = {name: on_grid(Length.of_inches(each)) for name, each in changes.items() if each}
    first = min(told, key=lambda name: abs(told[name]), default="falling")
    figures: dict[str, FigureValue] = {"closing_error": off, "tolerance": tolerance}
    return Fault(
        code="survey_does_not_close",
        pointer=_pointer(first),
        message=f"Sides and diagonals do not agree. With {first} alone changed they would, by the"
        " least of all.",
        remedy=f"Take {first} again first, then those whose change is not much larger: with one"
        " measurement over, each of the six could be the wrong one.",
        figures=figures | {f"{name}_changes_by": change for name, change in told.items()},
    )


def _by_angles(survey: Survey, sides: FourLengths, angles: FourAngles) -> Shape:
    """Balance the angles to a full turn, go round, and share the gap by the compass rule."""
    off = sum((angle.degrees for angle in angles), Fraction(0)) - FLAT_SUM
    balanced = tuple(angle - Angle(off / 4) for angle in angles)
    longest = max(sides)
    spread = abs(times_sine(longest, Angle(abs(off) / 4))) if off else ZERO
    if abs(off) > FLAT_SUM / 4 or spread > survey.tolerance:
        raise SpecRefused([_angles_off(sides, angles, off)])
    ways = list(_ways(sides, balanced))
    gap = ways[-1][1]
    error = _apart(ORIGIN, gap)
    if error.length > survey.tolerance:
        raise SpecRefused([_sides_off(ways, gap, error.length, survey.tolerance)])
    perimeter = sum(sides, ZERO)
    steps = list(accumulate((sides[WALLS.index(wall)] for wall, _, _ in ways), initial=ZERO))
    spots = [ORIGIN, *(end for _, end, _ in ways)]
    placed = [spot - gap * (step / perimeter) for spot, step in zip(spots, steps, strict=True)]
    approximate = bool(error.length) or any(angle.degrees % 90 for angle in balanced)
    corners = [snapped(spot) if approximate else spot for spot in placed[:4]]
    tell = CLOSING_GAP.approximates if approximate or error.approximate else CLOSING_GAP.gives
    return Shape(
        kind="angles",
        corners=(ORIGIN, corners[1], corners[2], corners[3]),
        closing_error=tell(error.length, along=gap.x, across=gap.y),
        lengths=tuple(_side_corrections(sides, corners)) if error.length else (),
        angles=tuple(_angle_corrections(angles, balanced)) if off else (),
        approximate=approximate,
    )


def _ways(sides: FourLengths, angles: tuple[Angle, ...]) -> Iterator[tuple[str, Spot, Angle]]:
    """Each wall round the room from the datum, W4 first: where it ends, and its heading."""
    at, heading = ORIGIN, Angle.of_degrees(0)
    turns = (angles[1], angles[2], angles[3], angles[0])
    for wall, corner in zip(("W4", "W3", "W2", "W1"), turns, strict=True):
        x, y = stride(sides[WALLS.index(wall)], heading)
        at = at + Spot(x, y)
        yield wall, at, heading
        heading = heading + Angle.of_degrees(FLAT_SUM // 2) - corner


def _side_corrections(sides: FourLengths, corners: list[Spot]) -> Iterator[LengthCorrection]:
    places = {"W4": (0, 1), "W3": (1, 2), "W2": (2, 3), "W1": (3, 0)}
    for wall, side in zip(WALLS, sides, strict=True):
        one, other = places[wall]
        yield _correction(wall, side, _apart(corners[one], corners[other]).length)


BALANCED = Rule("corner angle, balanced", "measured - sum_over / 4")


def _angle_corrections(
    angles: FourAngles, balanced: tuple[Angle, ...]
) -> Iterator[AngleCorrection]:
    over = Angle(sum((angle.degrees for angle in angles), Fraction(0)) - FLAT_SUM)
    for corner, angle, taken in zip(CORNERS, angles, balanced, strict=True):
        figure = BALANCED.gives(taken, measured=angle, sum_over=over)
        yield AngleCorrection(corner, angle, figure)


def _angles_off(sides: FourLengths, angles: FourAngles, off: Fraction) -> Fault:
    """The fault of angles that make no full turn: the one whose change alone closes best."""
    gaps: dict[str, Length] = {}
    for index, corner in enumerate(CORNERS):
        alone = tuple(
            angle - Angle(off) if place == index else angle for place, angle in enumerate(angles)
        )
        *_, (_, gap, _) = _ways(sides, alone)
        gaps[corner] = _apart(ORIGIN, gap).length
    first = min(gaps, key=lambda corner: gaps[corner])
    figures: dict[str, FigureValue] = {"sum": Angle(off + FLAT_SUM).text, "wanted": "360°"}
    return Fault(
        code="survey_does_not_close",
        pointer=_pointer(first),
        message=f"The four angles make {Angle(off + FLAT_SUM).text}, not 360°. With the one at"
        f" {first} alone changed, the room closes best.",
        remedy=f"Take the angle at {first} again first.",
        figures=figures | {f"gap_if_{corner}": gap for corner, gap in gaps.items()},
    )


def _sides_off(
    ways: list[tuple[str, Spot, Angle]], gap: Spot, error: Length, tolerance: Length
) -> Fault:
    """The fault of a way round that does not close: the side whose change alone closes best."""
    left: dict[str, Length] = {}
    for wall, _, heading in ways:
        x, y = stride(Length.of_inches(1), heading)
        left[wall] = on_grid(Length.of_inches(abs(turn(Spot(x, y), gap))))
    first = min(left, key=lambda wall: left[wall])
    figures: dict[str, FigureValue] = {"closing_error": error, "tolerance": tolerance}
    return Fault(
        code="survey_does_not_close",
        pointer=_pointer(first),
        message=f"The way round the room does not close. With {first} alone changed it comes"
        " nearest to.",
        remedy=f"Take {first} again first; if it stands, the wall that lies along the same way.",
        figures=figures | {f"left_if_{wall}": each for wall, each in left.items()},
    )


def _checked(survey: Survey, shape: Shape) -> Shape:
    """Hold check diagonals against a shape that does not rest on them."""
    refuse(list(_folded(shape.corners)))
    faults = []
    worst = shape.closing_error
    for name, one, other in (("rising", 0, 2), ("falling", 1, 3)):
        diagonal = getattr(survey.diagonals, name)
        if diagonal is None:
            continue
        computed = _apart(shape.corners[one], shape.corners[other])
        off = diagonal - computed.length
        approximate = shape.approximate or computed.approximate
        if worst is None or abs(off) > abs(worst.value):
            worst = _error(off, approximate, diagonal, computed.length)
        if abs(off) > survey.tolerance:
            faults.append(_check_fails(name, off, survey.tolerance, computed.length))
    refuse(faults)
    return Shape(shape.kind, shape.corners, worst, shape.lengths, shape.angles, shape.approximate)


def _check_fails(name: str, off: Length, tolerance: Length, computed: Length) -> Fault:
    return Fault(
        code="survey_does_not_close",
        pointer=_pointer(name),
        message=f"The {name} diagonal is not what the corners make it.",
        remedy=f"Take the {name} diagonal again, then what the corners rest on.",
        figures={"closing_error": off, "tolerance": tolerance, "computed": computed},
    )


def _folded(corners: FourSpots) -> Iterator[Fault]:
    """A fault where the way round the corners does not turn left at each of them."""
    ways = [other - one for one, other in pairwise((*corners, corners[0], corners[1]))]
    if all(turn(one, other) > 0 for one, other in pairwise(ways)):
        return
    yield Fault(
        code="survey_folded",
        pointer=_SURVEY,
        message="Going round the corners from the datum, along W4 first, does not turn left at"
        " each of them.",
        remedy="Look whether corners were exchanged: W1 is left on the plan, W2 above, W3 right,"
        " W4 below.",
    )


def fold_faults(shape: Shape) -> Iterator[Fault]:
    """Faults of a shape that is no room."""
    return _folded(shape.corners)
