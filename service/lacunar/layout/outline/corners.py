"""Corners and areas of polygons that need not be convex."""

from collections.abc import Sequence

from lacunar.layout.survey.report import corner_of
from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, turn
from lacunar.measure.polygon import area

JUTS_IN = Rule("corner that juts in: a full turn less the angle outside it", "360 - outside")

_FULL = Angle.of_degrees(360)
_FOOT = Length.of_feet(1)


def corner_of_ring(before: Spot, corner: Spot, after: Spot, *, approximate: bool) -> AngleFigure:
    """Turn three corners of a polygon, counter-clockwise, into the angle inside at the middle one.

    Past 180 degrees where the corner juts in.
    """
    found = corner_of(before, corner, after, approximate=approximate)
    if turn(corner - before, after - corner) >= 0:
        return found
    tell = JUTS_IN.approximates if found.approximate else JUTS_IN.gives
    return tell(_FULL - found.value, outside=found.value)


def area_of(
    polygon: Sequence[Spot], *, approximate: bool, holes: Sequence[Sequence[Spot]] = ()
) -> NumberFigure:
    """Turn a polygon, counter-clockwise, less its holes, clockwise, into its area [ft2].

    Formula: half the sum of x1 y2 - x2 y1 over all edges.
    """
    operands: dict[str, Length] = {}
    terms, first = [], 1
    for ring in (polygon, *holes):
        for number, spot in enumerate(ring, start=first):
            operands |= {f"x{number}": spot.x, f"y{number}": spot.y}
        last = first + len(ring) - 1
        after = [*range(first + 1, last + 1), first]
        pairs = zip(range(first, last + 1), after, strict=True)
        terms += [f"x{one} * y{other} - x{other} * y{one}" for one, other in pairs]
        first = last + 1
    words = "area within its corners, less that of holes" if holes else "area within its corners"
    rule = Rule(words, f"({' + '.join(terms)}) / 2 / (foot * foot)")
    tell = rule.approximates if approximate else rule.gives
    total = sum((area(ring) for ring in holes), area(polygon))
    return tell(total / _FOOT.inches**2, **operands, foot=_FOOT)
