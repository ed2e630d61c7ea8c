"""Coffers that walls cut, on paper: what crown leaves of them, and where there is room in them."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import dist

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.clear_places import Box
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.layout.outline_records import PartialCoffer
from lacunar.layout.records import Point
from lacunar.measure.plane import Spot
from lacunar.model.moulding import CrownMethod, FlatPlace


def on_paper(frame: PlanFrame, spot: Spot) -> Pt:
    """A place of the room as a point on paper."""
    return frame.point(Point(spot.x, spot.y))


def seen_boxes(frame: PlanFrame) -> dict[str, Box]:
    """The largest upright rectangle that lies in what is seen of each cut coffer."""
    room = frame.layout.outlined
    return {
        coffer.id: largest_box(seen_rings(frame, coffer) or rings_on_paper(frame, coffer))
        for coffer in (room.partial_coffers if room else ())
    }


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
    if not _inside(outer, box.middle) or any(_inside(hole, box.middle) for hole in holes):
        return False
    return not any(inner.is_passed_by(*line) for ring in rings for line in _closed(ring))


def _closed(ring: Sequence[Pt]) -> Iterator[tuple[Pt, Pt]]:
    yield from zip(ring, (*ring[1:], ring[0]), strict=True)


def _inside(polygon: Sequence[Pt], at: Pt) -> bool:
    inside = False
    for one, other in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        if (one.y > at.y) is not (other.y > at.y):
            x = one.x + (at.y - one.y) / (other.y - one.y) * (other.x - one.x)
            inside = inside is not (at.x < x)
    return inside


def seen_rings(frame: PlanFrame, coffer: PartialCoffer) -> tuple[tuple[Pt, ...], ...]:
    """What crown leaves to be seen of a cut coffer, as far as it leaves anything of every side.

    Nothing where two runs of crown would take the same place.
    """
    crown, asked = frame.layout.mouldings.crown, frame.layout.ceiling.crown
    if crown is None or asked is None or coffer.crown_meets:
        return ()
    flats = [
        float(flat.thickness.millimeters)
        for flat in frame.layout.ceiling.flat_mouldings
        if flat.at is FlatPlace.CEILING
    ]
    fit = asked.fit_total / 2 if asked.method is CrownMethod.BENCH_FRAME else asked.fit_total * 0
    inward = sum(flats) + float((fit + crown.projection.value).millimeters)
    rings = rings_on_paper(frame, coffer)
    found = tuple(set_in(ring, inward / frame.ratio) for ring in rings)
    return () if any(_turned(*pair) for pair in zip(rings, found, strict=True)) else found


def _turned(ring: Sequence[Pt], inner: Sequence[Pt]) -> bool:
    """Whether a side has nothing left, so that it would run the other way."""
    return any(
        (other.x - one.x) * (end.x - start.x) + (other.y - one.y) * (end.y - start.y) <= 0
        for (one, other), (start, end) in zip(_closed(ring), _closed(inner), strict=True)
    )


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
