"""Polygons in rational numbers: cut by lines, joined along edges, their areas. Nothing is rounded.

A polygon is its corners counter-clockwise; a hole is told clockwise. What is left of a polygon may
be several, so that everything here gives tuples of them.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, along, crossing, turn

Polygon = tuple[Spot, ...]
Line = tuple[Spot, Spot]


def edges(polygon: Sequence[Spot]) -> Iterator[Line]:
    """Each edge of a polygon, from corner to corner."""
    yield from zip(polygon, (*polygon[1:], polygon[0]), strict=True)


def area(polygon: Sequence[Spot]) -> Fraction:
    """Turn a polygon into its area [in2]; below zero where its corners run clockwise.

    Formula: half the sum of the cross products of neighboring corners.

    >>> from lacunar.measure.length import Length
    >>> inch = Length.of_inches
    >>> area([Spot(inch(0), inch(0)), Spot(inch(4), inch(0)), Spot(inch(4), inch(3))])
    Fraction(6, 1)
    """
    return sum((turn(one, other) for one, other in edges(polygon)), Fraction(0)) / 2


def box_of(low: Spot, high: Spot) -> Polygon:
    """The rectangle between its lower left and its upper right corner."""
    return low, Spot(high.x, low.y), high, Spot(low.x, high.y)


def extent(polygon: Iterable[Spot]) -> Line:
    """The lower left and the upper right corner of the rectangle about a polygon."""
    spots = list(polygon)
    xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
    return Spot(min(xs), min(ys)), Spot(max(xs), max(ys))


def is_simple(polygon: Sequence[Spot]) -> bool:
    """Whether no two edges meet but neighbors, in the corner they share."""
    if len(polygon) < 3 or len(set(polygon)) < len(polygon):  # noqa: PLR2004
        return False
    lines = list(edges(polygon))
    count = len(lines)
    return not any(
        _folds(lines[one], lines[other]) if other - one in (1, count - 1) else _meet(*pair)
        for one in range(count)
        for other in range(one + 1, count)
        for pair in [(lines[one], lines[other])]
    )


def _folds(one: Line, other: Line) -> bool:
    """Whether neighboring edges lie back on each other."""
    if one[0] == other[1]:
        one, other = other, one
    way, onward = one[1] - one[0], other[1] - other[0]
    return not turn(way, onward) and along(way, onward) < 0


def _meet(one: Line, other: Line) -> bool:
    first, second = _side(one, other[0]), _side(one, other[1])
    third, fourth = _side(other, one[0]), _side(other, one[1])
    if first * second < 0 and third * fourth < 0:
        return True
    touching = ((one, other[0]), (one, other[1]), (other, one[0]), (other, one[1]))
    return any(lies_on(line, spot) for line, spot in touching)


def _side(line: Line, spot: Spot) -> Fraction:
    """Above zero where a place is left of a line, twice the area of the triangle they make."""
    return turn(line[1] - line[0], spot - line[0])


def lies_on(line: Line, spot: Spot) -> bool:
    """Whether a place lies on a line between its ends, these included."""
    return not _side(line, spot) and along(line[0] - spot, line[1] - spot) <= 0


def gap_squared(one: Line, other: Line) -> Fraction:
    """Turn two lines into the square [in2] of how far they are apart; nothing where they meet.

    >>> from lacunar.measure.length import Length
    >>> at = lambda x, y: Spot(Length.of_inches(x), Length.of_inches(y))
    >>> gap_squared((at(0, 0), at(4, 0)), (at(6, 1), at(6, 3)))
    Fraction(5, 1)
    """
    if _meet(one, other):
        return Fraction(0)
    ends = [(one, at) for at in other] + [(other, at) for at in one]
    return min(off_squared(line, at) for line, at in ends)


def off_squared(line: Line, spot: Spot) -> Fraction:
    """The square [in2] of how far a place is from the nearest one on a line."""
    way, out = line[1] - line[0], spot - line[0]
    long = along(way, way)
    share = max(Fraction(0), min(Fraction(1), along(way, out) / long))
    off = out - way * share
    return along(off, off)


def contains(polygon: Sequence[Spot], spot: Spot) -> bool:
    """Whether a place lies in a polygon or on its edges."""
    inside = False
    for line in edges(polygon):
        if lies_on(line, spot):
            return True
        low, high = sorted(line, key=lambda end: end.y)
        if low.y <= spot.y < high.y and _side((low, high), spot) > 0:
            inside = not inside
    return inside


def inner_spot(polygon: Sequence[Spot]) -> Spot:
    """A place inside a polygon, not on its edges.

    In the triangle at its lowest corner, or half way from there to the nearest corner in that.
    """
    at = min(range(len(polygon)), key=lambda each: (polygon[each].y, polygon[each].x))
    before, corner, after = (polygon[(at + step) % len(polygon)] for step in (-1, 0, 1))
    within = [
        spot
        for spot in polygon
        if spot not in (before, corner, after) and contains((before, corner, after), spot)
    ]
    third = Fraction(1, 3)
    if not within:
        return (before + corner + after) * third
    nearest = max(within, key=lambda spot: abs(_side((before, after), spot)))
    return (corner + nearest) * Fraction(1, 2)


def left_of(polygon: Sequence[Spot], line: Line) -> tuple[Polygon, ...]:
    """Turn a polygon into what of it lies left of a line, its corners counter-clockwise.

    >>> from lacunar.measure.length import Length
    >>> at = lambda x, y: Spot(Length.of_inches(x), Length.of_inches(y))
    >>> (left,) = left_of(box_of(at(0, 0), at(4, 2)), (at(3, 0), at(3, 1)))
    >>> area(left)
    Fraction(6, 1)
    """
    crossed = list(_with_crossings(polygon, line))
    sides = [_side(line, spot) for spot in crossed]
    if all(side >= 0 for side in sides):
        return (tuple(crossed),) if any(sides) else ()
    if all(side <= 0 for side in sides):
        return ()
    return tuple(_closed(_chains(crossed, sides), line))


def _with_crossings(polygon: Sequence[Spot], line: Line) -> Iterator[Spot]:
    """The corners, and between them the places where edges cross the line."""
    for one, other in edges(polygon):
        yield one
        if _side(line, one) * _side(line, other) < 0:
            yield crossing((one, other), line)


def _chains(crossed: Sequence[Spot], sides: Sequence[Fraction]) -> Iterator[list[Spot]]:
    """The runs of edges left of the line, each from the line to the line."""
    count = len(crossed)
    kept = [sides[at] > 0 or sides[(at + 1) % count] > 0 for at in range(count)]
    first = next(at for at in range(count) if kept[at] and not kept[at - 1])
    chain: list[Spot] = []
    for step in range(count):
        at = (first + step) % count
        if not kept[at]:
            continue
        if not chain:
            chain = [crossed[at]]
        after = (at + 1) % count
        chain.append(crossed[after])
        # A corner that points away from the line only touches it; one that points at it parts.
        touches = not sides[after] and _points_in(crossed, after)
        if not kept[after] or touches:
            yield chain
            chain = []


def _points_in(crossed: Sequence[Spot], at: int) -> bool:
    before, corner, after = crossed[at - 1], crossed[at], crossed[(at + 1) % len(crossed)]
    return turn(corner - before, after - corner) < 0


def _closed(chains: Iterable[list[Spot]], line: Line) -> Iterator[Polygon]:
    """Close chains along the line: from where one ends to where the next starts."""
    way = line[1] - line[0]
    found = list(chains)
    ends = [(along(way, chain[-1] - line[0]), 1, number) for number, chain in enumerate(found)]
    starts = [(along(way, chain[0] - line[0]), 0, number) for number, chain in enumerate(found)]
    following: dict[int, int] = {}
    waiting: list[int] = []
    # Where a corner parts what is left, one stretch of the line starts where another ends.
    for _, is_end, number in sorted([*starts, *ends]):
        if is_end:
            waiting.append(number)
        else:
            following[waiting.pop()] = number
    left = set(following)
    while left:
        at = first = min(left)
        corners: list[Spot] = []
        while True:
            left.discard(at)
            corners += found[at]
            at = following[at]
            if at == first:
                break
        yield without_idle_corners(corners)


def without_idle_corners(polygon: Sequence[Spot]) -> Polygon:
    """The same polygon without corners that are none, or stand there twice."""
    spots = [spot for spot, after in edges(polygon) if spot != after]
    return tuple(
        spot
        for at, spot in enumerate(spots)
        if turn(spot - spots[at - 1], spots[(at + 1) % len(spots)] - spot)
    )


def without_hairs(polygon: Sequence[Spot], hair: Length) -> Polygon:
    """The same polygon without corners that lie off the line between their neighbors by a hair.

    Places that were snapped one by one leave sides as short as the grid they were snapped to.
    """
    spots = list(polygon)
    at = 0
    while at < len(spots) > 3:  # noqa: PLR2004
        line = spots[at - 1], spots[(at + 1) % len(spots)]
        if line[0] != line[1] and off_squared(line, spots[at]) < hair.inches**2:
            del spots[at]
            at = 0
        else:
            at += 1
    return tuple(spots)


def within_box(polygon: Sequence[Spot], low: Spot, high: Spot) -> tuple[Polygon, ...]:
    """Turn a polygon into what of it lies in a rectangle."""
    found: tuple[Polygon, ...] = (tuple(polygon),)
    for line in edges(box_of(low, high)):
        found = tuple(part for each in found for part in left_of(each, line))
    return found


def outside(polygon: Sequence[Spot], hole: Sequence[Spot]) -> tuple[Polygon, ...]:
    """Turn a polygon into what of it lies outside another, which turns inward nowhere, in pieces.

    The pieces touch along edges; `joined` makes them one again.

    >>> from lacunar.measure.length import Length
    >>> at = lambda x, y: Spot(Length.of_inches(x), Length.of_inches(y))
    >>> pieces = outside(box_of(at(0, 0), at(4, 4)), box_of(at(1, 1), at(2, 2)))
    >>> (one,) = joined(pieces)
    >>> one.area, len(one.holes)
    (Fraction(15, 1), 1)
    """
    found: list[Polygon] = []
    rest: tuple[Polygon, ...] = (tuple(polygon),)
    for line in edges(hole):
        back = line[1], line[0]
        found += [part for each in rest for part in left_of(each, back)]
        rest = tuple(part for each in rest for part in left_of(each, line))
    return tuple(found)


def overlap(polygon: Sequence[Spot], hole: Sequence[Spot]) -> Fraction:
    """The area [in2] that a polygon shares with another, which turns inward nowhere."""
    return area(polygon) - sum((area(each) for each in outside(polygon, hole)), Fraction(0))


@dataclass(frozen=True, slots=True)
class Joined:
    """Polygons that touched along edges, as one, with what holes that left."""

    corners: Polygon
    holes: tuple[Polygon, ...]

    def holds(self, spot: Spot) -> bool:
        """Whether a place lies in it, and in none of its holes."""
        return contains(self.corners, spot) and not any(contains(hole, spot) for hole in self.holes)

    @property
    def area(self) -> Fraction:
        """What it covers [in2]."""
        return area(self.corners) + sum((area(hole) for hole in self.holes), Fraction(0))


def joined(polygons: Sequence[Polygon]) -> tuple[Joined, ...]:
    """Turn polygons that do not overlap into those that are left where common edges fall away.

    >>> from lacunar.measure.length import Length
    >>> at = lambda x, y: Spot(Length.of_inches(x), Length.of_inches(y))
    >>> (one,) = joined([box_of(at(0, 0), at(2, 2)), box_of(at(2, 1), at(3, 2))])
    >>> one.area, len(one.corners)
    (Fraction(5, 1), 6)
    """
    spots = {spot for polygon in polygons for spot in polygon}
    pieces = {
        piece for polygon in polygons for edge in edges(polygon) for piece in _split(edge, spots)
    }
    left = {piece for piece in pieces if (piece[1], piece[0]) not in pieces}
    rings = [without_idle_corners(ring) for ring in _rings(left)]
    outer = [ring for ring in rings if area(ring) > 0]
    holes = [ring for ring in rings if area(ring) < 0]
    return tuple(
        Joined(ring, tuple(hole for hole in holes if contains(ring, hole[0]))) for ring in outer
    )


def _split(edge: Line, spots: Iterable[Spot]) -> Iterator[Line]:
    on = {spot for spot in spots if lies_on(edge, spot)}
    way = edge[1] - edge[0]
    ordered = sorted(on, key=lambda spot: along(way, spot - edge[0]))
    yield from pairwise(ordered)


def _rings(pieces: Iterable[Line]) -> Iterator[list[Spot]]:
    """Edges linked to rings, at a corner where several meet by the sharpest turn to the right.

    There rings touch in one place, and are to stay apart.
    """
    leaving: dict[Spot, list[Spot]] = {}
    for one, other in sorted(pieces, key=lambda each: [(s.x.inches, s.y.inches) for s in each]):
        leaving.setdefault(one, []).append(other)
    while leaving:
        first = next(iter(leaving))
        ring, at, before = [], first, None
        while True:
            ways = leaving[at]
            onward = ways[0] if before is None or len(ways) == 1 else _leftmost(before, at, ways)
            ways.remove(onward)
            if not ways:
                del leaving[at]
            ring.append(at)
            before, at = at, onward
            if at == first:
                break
        yield ring


def _leftmost(before: Spot, at: Spot, ways: Sequence[Spot]) -> Spot:
    """Of several ways on from a corner, the one that turns most to the left."""
    came = at - before

    def turned(spot: Spot) -> tuple[int, Fraction]:
        way = spot - at
        side, ahead = turn(came, way), along(came, way)
        # Angles in order without a root: by half turn, then by what is like a cotangent.
        if side > 0:
            return 1, -ahead / side
        if side < 0:
            return -1, -ahead / side
        return 0, Fraction(0)

    return max(ways, key=turned)
