"""Coffers that walls cut, on paper: what crown leaves of them, and where there is room in them."""

from collections.abc import Sequence
from itertools import pairwise
from math import dist

from lacunar.drawing.elements import Pt
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Box
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
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
        coffer.id: largest_box(seen_polygon(frame, coffer) or corners_on_paper(frame, coffer))
        for coffer in (room.partial_coffers if room else ())
    }


def corners_on_paper(frame: PlanFrame, coffer: PartialCoffer) -> tuple[Pt, ...]:
    """The corners of a cut coffer on paper."""
    return tuple(on_paper(frame, spot) for spot in coffer.corners)


def largest_box(polygon: Sequence[Pt]) -> Box:
    """The largest upright rectangle with sides through corners, or half way, within a polygon."""
    xs, ys = (_places([getattr(corner, way) for corner in polygon]) for way in "xy")
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
    return next((box for box in boxes if _holds(polygon, box)), boxes[-1])


def _places(values: Sequence[float]) -> list[float]:
    ordered = sorted(set(values))
    between = [(one + other) / 2 for one, other in pairwise(ordered)]
    return sorted({*ordered, *between})


def _holds(polygon: Sequence[Pt], box: Box) -> bool:
    """Whether a rectangle lies in a polygon: its middle does, and no edge passes through it."""
    inner = box.grown(-1e-6)
    lines = zip(polygon, (*polygon[1:], polygon[0]), strict=True)
    return _inside(polygon, box.middle) and not any(inner.is_passed_by(*line) for line in lines)


def _inside(polygon: Sequence[Pt], at: Pt) -> bool:
    inside = False
    for one, other in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        if (one.y > at.y) is not (other.y > at.y):
            x = one.x + (at.y - one.y) / (other.y - one.y) * (other.x - one.x)
            inside = inside is not (at.x < x)
    return inside


def seen_polygon(frame: PlanFrame, coffer: PartialCoffer) -> tuple[Pt, ...]:
    """What crown leaves to be seen of a cut coffer, as far as it leaves anything of every side."""
    crown, asked = frame.layout.mouldings.crown, frame.layout.ceiling.crown
    if crown is None or asked is None:
        return ()
    flats = [
        float(flat.thickness.millimeters)
        for flat in frame.layout.ceiling.flat_mouldings
        if flat.at is FlatPlace.CEILING
    ]
    fit = asked.fit_total / 2 if asked.method is CrownMethod.BENCH_FRAME else asked.fit_total * 0
    inward = sum(flats) + float((fit + crown.projection.value).millimeters)
    corners = corners_on_paper(frame, coffer)
    found = set_in(corners, inward / frame.ratio)
    edges = zip(corners, (*corners[1:], corners[0]), strict=True)
    inner = zip(found, (*found[1:], found[0]), strict=True)
    for (one, other), (start, end) in zip(edges, inner, strict=True):
        along = (other.x - one.x) * (end.x - start.x) + (other.y - one.y) * (end.y - start.y)
        if along <= 0:
            return ()
    return found


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
