"""Coffers as rings of corners on paper, whole or cut by walls, and what lies in them."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import dist, inf

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.clear_places import Box
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.layout.outline_records import PartialCoffer
from lacunar.layout.records import Point
from lacunar.measure.plane import Spot
from lacunar.model.room import RunName

Rings = tuple[tuple[Pt, ...], ...]
Line = tuple[Pt, Pt]
LEVEL = 1e-6
"""How much of a way across a side is none [mm]."""


def on_paper(frame: PlanFrame, spot: Spot) -> Pt:
    """A place of the room as a point on paper."""
    return frame.point(Point(spot.x, spot.y))


def coffer_rings(frame: PlanFrame) -> dict[str, Rings]:
    """The corners of every coffer, whole and cut, by its id; then of the holes in it."""
    layout = frame.layout
    whole = {
        coffer.id: (tuple(frame.point(corner) for corner in coffer.corners),)
        for coffer in layout.coffers
    }
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    return {**whole, **{coffer.id: rings_on_paper(frame, coffer) for coffer in cut}}


def rings_on_paper(frame: PlanFrame, coffer: PartialCoffer) -> tuple[tuple[Pt, ...], ...]:
    """The corners of a cut coffer on paper, then those of the holes that columns make in it."""
    rings = (coffer.corners, *(hole.corners for hole in coffer.holes))
    return tuple(tuple(on_paper(frame, spot) for spot in ring) for ring in rings)


def largest_box(rings: Sequence[Sequence[Pt]]) -> Box:
    """The largest upright rectangle with sides through corners, or half way, within a polygon.

    `rings` are its corners, and those of its holes.
    """
    corners = [corner for ring in rings for corner in ring]
    xs, ys = (_places([getattr(corner, way) for corner in corners]) for way in "xy")
    boxes = [
        Box(left, top, right, bottom)
        for left in xs
        for right in xs
        if right > left
        for top in ys
        for bottom in ys
        if bottom > top
    ]
    boxes.sort(key=lambda box: (box.right - box.left) * (box.bottom - box.top), reverse=True)
    return next((box for box in boxes if _holds(rings, box)), boxes[-1])


def _places(values: Sequence[float]) -> list[float]:
    ordered = sorted(set(values))
    between = [(one + other) / 2 for one, other in pairwise(ordered)]
    return sorted({*ordered, *between})


def _holds(rings: Sequence[Sequence[Pt]], box: Box) -> bool:
    """Whether a rectangle lies in a polygon: its middle does, and no edge passes through it."""
    inner, (outer, *holes) = box.grown(-1e-6), rings
    if not inside(outer, box.middle) or any(inside(hole, box.middle) for hole in holes):
        return False
    return not any(inner.is_passed_by(*line) for ring in rings for line in closed(ring))


def closed(ring: Sequence[Pt]) -> Iterator[tuple[Pt, Pt]]:
    """The edges of a polygon, the last one back to its first corner."""
    yield from zip(ring, (*ring[1:], ring[0]), strict=True)


def inside(polygon: Sequence[Pt], at: Pt) -> bool:
    """Whether a point lies in a polygon."""
    within = False
    for one, other in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        if (one.y > at.y) is not (other.y > at.y):
            x = one.x + (at.y - one.y) / (other.y - one.y) * (other.x - one.x)
            within = within is not (at.x < x)
    return within


def across_rings(rings: Sequence[Sequence[Pt]], on: RunName, through: Pt) -> Iterator[Line]:
    """A line across a run through a point, as far as it lies within a polygon with holes."""
    upright = on is RunName.LENGTH
    place = through.x if upright else through.y
    met: list[float] = []
    for one, other in (edge for ring in rings for edge in closed(ring)):
        start, end = (one.x, other.x) if upright else (one.y, other.y)
        # An end of an edge counts on one side alone, so that a corner is passed once.
        if (start > place) is not (end > place):
            share = (place - start) / (end - start)
            first, last = (one.y, other.y) if upright else (one.x, other.x)
            met.append(first + (last - first) * share)
    met.sort()
    for first, last in zip(met[::2], met[1::2], strict=False):
        if upright:
            yield Pt(place, first), Pt(place, last)
        else:
            yield Pt(first, place), Pt(last, place)


def within_ring(ring: Sequence[Pt], through: Pt, way: Pt) -> Line | None:
    """A line through a point, going a way, as far as it lies within a convex polygon; None outside.

    `ring` is counter-clockwise on the ceiling; each side leaves a half of the line (Cyrus and
    Beck's way).
    """
    enters, leaves = -inf, inf
    for one, other in closed(ring):
        inward = Pt(other.y - one.y, one.x - other.x)
        goes = way.x * inward.x + way.y * inward.y
        off = (through.x - one.x) * inward.x + (through.y - one.y) * inward.y
        if abs(goes) < LEVEL:
            if off < 0:
                return None
        elif goes > 0:
            enters = max(enters, -off / goes)
        else:
            leaves = min(leaves, -off / goes)
    if enters + LEVEL >= leaves:
        return None
    start, end = (through.moved(way.x * share, way.y * share) for share in (enters, leaves))
    return start, end


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


def room_on_paper(frame: PlanFrame) -> Box:
    """The upright rectangle about the room between its finished walls, as drawn."""
    (left, right), (low, high) = (frame.reach(run) for run in RunName)
    origin = frame.origin
    return Box(origin.x + left, origin.y - high, origin.x + right, origin.y - low)
