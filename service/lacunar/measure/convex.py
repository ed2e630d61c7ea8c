"""Convex polygons in rational numbers: grown by a box, crossed by a line, apart from a box.

Corners are counter-clockwise. A polygon may be as thin as a line.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, turn
from lacunar.measure.polygon import Line, Polygon, edges

Stretch = tuple[Fraction, Fraction]
_INCH = Length.of_inches(1)


def hull(spots: Sequence[Spot]) -> Polygon:
    """The least convex polygon about places, by the monotone chain.

    >>> inch = Length.of_inches
    >>> at = lambda x, y: Spot(inch(x), inch(y))
    >>> len(hull([at(0, 0), at(4, 0), at(4, 4), at(0, 4), at(2, 2)]))
    4
    """
    ordered = sorted(set(spots), key=lambda spot: (spot.x, spot.y))
    lower, upper = _chain(ordered), _chain(list(reversed(ordered)))
    return (*lower[:-1], *upper[:-1])


def _chain(ordered: Sequence[Spot]) -> list[Spot]:
    found: list[Spot] = []
    for spot in ordered:
        while len(found) > 1 and turn(found[-1] - found[-2], spot - found[-1]) <= 0:
            found.pop()
        found.append(spot)
    return found


def grown(polygon: Sequence[Spot], by: tuple[Length, Length]) -> Polygon:
    """Turn a polygon into where the middle of a box meets it that has half the sizes `by`."""
    across, up = by
    corners = [Spot(x, y) for x in (-across, across) for y in (-up, up)]
    return hull([spot + corner for spot in polygon for corner in corners])


def stretch_inside(line: Line, polygon: Polygon) -> Stretch | None:
    """Turn a line into the shares of it between which it passes inside a polygon; None if nowhere.

    The line goes on past both its ends, so that shares may be below zero and above one.

    >>> inch = Length.of_inches
    >>> at = lambda x, y: Spot(inch(x), inch(y))
    >>> stretch_inside((at(0, 1), at(4, 1)), hull([at(1, 0), at(2, 0), at(2, 2), at(1, 2)]))
    (Fraction(1, 4), Fraction(1, 2))
    """
    lows: list[Fraction] = []
    highs: list[Fraction] = []
    way = line[1] - line[0]
    for one, other in edges(polygon):
        edge = other - one
        # Left of the edge is inside: above zero from where the line crosses it.
        at_start, change = turn(edge, line[0] - one), turn(edge, way)
        if not change:
            if at_start <= 0:
                return None
            continue
        (lows if change > 0 else highs).append(-at_start / change)
    low, high = max(lows), min(highs)
    return (low, high) if low < high else None


@dataclass(frozen=True, slots=True)
class Gap:
    """How far a box and a polygon are apart along one way, out of the box.

    `apart` is from the box's middle to the polygon, `reach` to the box's edge, both times the
    length of the `way` [in2].
    """

    way: Spot
    apart: Fraction
    reach: Fraction

    @property
    def girth(self) -> Fraction:
        """What growing the box by an inch on every side adds to its reach."""
        return abs(self.way.x.inches) + abs(self.way.y.inches)

    @property
    def room(self) -> Fraction:
        """What the box can grow by on every side before both meet [in]; below zero if they do."""
        return (self.apart - self.reach) / self.girth


def gap_to_box(polygon: Sequence[Spot], center: Spot, half: tuple[Length, Length]) -> Gap:
    """Turn a polygon, and a box by its middle and half its sizes, into the way they part best.

    >>> inch = Length.of_inches
    >>> at = lambda x, y: Spot(inch(x), inch(y))
    >>> gap_to_box([at(6, 0), at(6, 5)], at(0, 0), (inch(2), inch(2))).room
    Fraction(4, 1)
    """
    ways = [Spot(x, y) for x, y in ((_INCH, ZERO), (-_INCH, ZERO), (ZERO, _INCH), (ZERO, -_INCH))]
    for one, other in edges(polygon):
        edge = other - one
        # A polygon as thin as a line has its edges lie either way out.
        ways += [Spot(edge.y, -edge.x), Spot(-edge.y, edge.x)]
    gaps = [gap_along(way, polygon, center, half) for way in ways if way.x or way.y]
    return max(gaps, key=lambda gap: gap.room)


def gap_along(way: Spot, polygon: Sequence[Spot], center: Spot, half: tuple[Length, Length]) -> Gap:
    """How far a box and a polygon are apart along a way out of the box."""
    nearest = min(along(way, spot - center) for spot in polygon)
    reach = abs(way.x.inches) * half[0].inches + abs(way.y.inches) * half[1].inches
    return Gap(way, nearest, reach)
