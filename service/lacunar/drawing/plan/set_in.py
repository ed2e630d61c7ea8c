"""Polygons with their edges moved inward, as mouldings leave them."""

from collections.abc import Sequence
from math import dist

from lacunar.drawing.elements import Pt


def set_in(corners: Sequence[Pt], distance: float) -> tuple[Pt, ...]:
    """A polygon with every edge moved inward; on paper, counter-clockwise has y going down."""
    ways = []
    for one, other in zip(corners, (*corners[1:], corners[0]), strict=True):
        long = dist((one.x, one.y), (other.x, other.y))
        ways.append(((other.y - one.y) / long, -(other.x - one.x) / long))
    found = []
    for number, corner in enumerate(corners):
        (ax, ay), (bx, by) = ways[number - 1], ways[number]
        blunt = 1 + ax * bx + ay * by
        found.append(corner.moved((ax + bx) * distance / blunt, (ay + by) * distance / blunt))
    return tuple(found)
