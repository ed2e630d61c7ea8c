"""From measured sides to corners: the way round the room, closed, and held against its checks."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.outline_records import OutlineCheck, OutlineCorrection
from lacunar.measure.angle import Angle, times_sine
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import ORIGIN, Spot, distance, on_grid, snapped
from lacunar.measure.polygon import area, is_simple
from lacunar.model.faults import Fault, FigureValue, SpecRefused
from lacunar.model.outline import Outline, Side
from lacunar.model.outline_assumptions import walked

CLOSING_GAP = Rule(
    "closing error: how far the way round the room ends from where it began",
    "sqrt(along * along + across * across)",
)
ADJUSTED = Rule("as taken, so that the outline closes", "measured + correction")
CHECKED = Rule(
    "what the corners make of a measured diagonal",
    "sqrt(along * along + across * across)",
)
OFF = Rule("by how much a diagonal disagrees with the corners", "measured - computed")

_OUTLINE = "/room/outline"
_RIGHT_ANGLE = 90


@dataclass(frozen=True, slots=True)
class OutlineShape:
    """Corners clockwise, the first where side 1 starts, and how they came about."""

    corners: tuple[Spot, ...]
    closing_error: LengthFigure | None
    corrections: tuple[OutlineCorrection, ...]
    checks: tuple[OutlineCheck, ...]
    approximate: bool


def outline_shape(outline: Outline) -> OutlineShape:
    """Turn an outline into its corners.

    Angles are balanced to (n - 2) half turns; what the way round then lacks is shared out by the
    transit rule: over the sides that run along the gap, by how far they do, so that what is square
    stays square. Raises SpecRefused where it does not close, crosses itself or fails a check.
    """
    if outline.points:
        shape = OutlineShape(outline.points, None, (), (), approximate=False)
    else:
        shape = _walked(outline)
    if not is_simple(shape.corners) or area(shape.corners) >= 0:
        raise SpecRefused([_folded()])
    checks = tuple(_checks(outline, shape))
    refuse(
        [
            _check_fails(number, check, outline.tolerance)
            for number, check in enumerate(checks)
            if abs(check.off.value) > outline.tolerance
        ]
    )
    return OutlineShape(
        shape.corners, shape.closing_error, shape.corrections, checks, shape.approximate
    )


def _walked(outline: Outline) -> OutlineShape:
    sides = _balanced(outline)
    ends = walked(sides)
    gap = ends[-1]
    error = distance(ORIGIN, gap)
    if error.length > outline.tolerance:
        raise SpecRefused([_does_not_close(ends, gap, error.length, outline.tolerance)])
    placed = [ORIGIN, *_shared(ends, gap)]
    square = all(not side.corner.degrees % _RIGHT_ANGLE for side in sides)
    corners = tuple(spot if square else snapped(spot) for spot in placed[:-1])
    tell = CLOSING_GAP.approximates if error.approximate or not square else CLOSING_GAP.gives
    figure = tell(
        on_grid(error.length) if error.approximate else error.length, along=gap.x, across=gap.y
    )
    corrections = tuple(_corrections(outline.sides, corners)) if error.length else ()
    return OutlineShape(corners, figure, corrections, (), approximate=not square)


def _balanced(outline: Outline) -> tuple[Side, ...]:
    """The sides with angles that make a full turn: what is over or short is shared out evenly."""
    count = len(outline.sides)
    off = sum((side.corner.degrees for side in outline.sides), Fraction(0)) - (count - 2) * 180
    if not off:
        return outline.sides
    longest = max(side.length for side in outline.sides)
    each = Angle(abs(off) / count)
    # By angles this far off nothing could be said of the walls.
    if each.degrees > 1 or abs(times_sine(longest, each)) > outline.tolerance:
        raise SpecRefused([_angles_off(off, count)])
    return tuple(Side(side.length, side.corner - Angle(off / count)) for side in outline.sides)


def _shared(ends: Sequence[Spot], gap: Spot) -> Iterator[Spot]:
    """Where sides end once the gap is shared out: along each way by how far a side goes that way.

    Where no side goes a way at all the gap along it is shared by the number of sides.
    """
    ways = [end - start for start, end in zip((ORIGIN, *ends), ends, strict=False)]
    along, across = (
        [abs(way.x) for way in ways] if gap.x else [ZERO] * len(ways),
        [abs(way.y) for way in ways] if gap.y else [ZERO] * len(ways),
    )
    total_along, total_across = sum(along, ZERO), sum(across, ZERO)
    so_far_along, so_far_across = ZERO, ZERO
    for end, x, y in zip(ends, along, across, strict=True):
        so_far_along, so_far_across = so_far_along + x, so_far_across + y
        share = Spot(
            gap.x * (so_far_along / total_along) if total_along else ZERO,
            gap.y * (so_far_across / total_across) if total_across else ZERO,
        )
        yield end - share


def _corrections(sides: Sequence[Side], corners: Sequence[Spot]) -> Iterator[OutlineCorrection]:
    for number, side in enumerate(sides, start=1):
        found = distance(corners[number - 1], corners[number % len(corners)])
        adjusted = on_grid(found.length) if found.approximate else found.length
        if adjusted != side.length:
            tell = ADJUSTED.approximates if found.approximate else ADJUSTED.gives
            figure = tell(adjusted, measured=side.length, correction=adjusted - side.length)
            yield OutlineCorrection(number, side.length, figure)


def _checks(outline: Outline, shape: OutlineShape) -> Iterator[OutlineCheck]:
    for diagonal in outline.diagonals:
        one, other, measured = diagonal.from_corner, diagonal.to_corner, diagonal.length
        if one is None or other is None or measured is None:
            raise ValueError("a check has not passed the rules")
        start, end = shape.corners[one - 1], shape.corners[other - 1]
        found, way = distance(start, end), end - start
        rough = found.approximate or shape.approximate
        value = on_grid(found.length) if found.approximate else found.length
        computed = (CHECKED.approximates if rough else CHECKED.gives)(
            value, along=way.x, across=way.y
        )
        off = (OFF.approximates if rough else OFF.gives)(
            measured - value, measured=measured, computed=value
        )
        yield OutlineCheck(one, other, measured, computed, off)


def _folded() -> Fault:
    return Fault(
        code="outline_folded",
        pointer=_OUTLINE,
        message="The way round the room, clockwise, meets itself or encloses nothing.",
        remedy="Look whether sides or corners were exchanged: the first side goes up the plan, and"
        " the room lies to the right of whoever goes round.",
    )


def _angles_off(off: Fraction, count: int) -> Fault:
    return Fault(
        code="outline_does_not_close",
        pointer=f"{_OUTLINE}/sides",
        message=f"The corners make {Angle(off + (count - 2) * 180).text} together, where {count}"
        f" corners have {(count - 2) * 180}°.",
        remedy="Look whether a corner that juts into the room was given as 90 in place of 270, and"
        " take the angles again.",
        figures={"corners": count},
    )


def _does_not_close(ends: Sequence[Spot], gap: Spot, error: Length, tolerance: Length) -> Fault:
    """The fault of a way round that does not close: the side whose change alone closes best."""
    left: dict[int, Length] = {}
    start = ORIGIN
    for number, end in enumerate(ends, start=1):
        way = end - start
        long = distance(start, end).length
        across = (way.x.inches * gap.y.inches - way.y.inches * gap.x.inches) / long.inches
        left[number] = on_grid(Length.of_inches(abs(across)))
        start = end
    first = min(left, key=lambda number: left[number])
    figures: dict[str, FigureValue] = {
        "closing_error": on_grid(error),
        "tolerance": tolerance,
        "gap_along_length": gap.x,
        "gap_along_width": gap.y,
        "left_if_changed": left[first],
    }
    return Fault(
        code="outline_does_not_close",
        pointer=f"{_OUTLINE}/sides/{first - 1}/length",
        message=f"The way round the room does not close. With side {first} alone changed it comes"
        " nearest to.",
        remedy=f"Take side {first} again first, then the others that lie along the same way.",
        figures=figures,
    )


def _check_fails(number: int, check: OutlineCheck, tolerance: Length) -> Fault:
    return Fault(
        code="outline_does_not_close",
        pointer=f"{_OUTLINE}/diagonals/{number}/length",
        message=f"From corner {check.from_corner} to corner {check.to_corner} it is not what the"
        " sides make it.",
        remedy="Take this again, then the sides and corners between.",
        figures={
            "off": check.off.value,
            "computed": check.computed.value,
            "tolerance": tolerance,
        },
    )
