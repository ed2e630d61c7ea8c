"""Where nothing is fixed or cut: about each ceiling item, with its clearance."""

from collections.abc import Iterator, Sequence

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners, diagonal_lines, outside_box
from lacunar.drawing.plan.clear_places import Box, Label, Occupied, place_label
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import room_on_paper
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.item_records import CeilingItem
from lacunar.layout.records import Point

PITCH = 1.4
LEAST = 2.4
"""No zone is drawn smaller than this [mm], or it would not be seen."""

Boxes = Sequence[tuple[Pt, ...]]


def zone_box(frame: PlanFrame, item: CeilingItem) -> Box:
    """What is kept clear about an item, as far as it is in the room."""
    center = frame.point(Point(item.x.value, item.y.value))
    out = frame.on_paper(item.clearance)
    wide, high = (
        max(frame.on_paper(side) / 2 + out, LEAST / 2) for side in (item.length, item.width)
    )
    room = room_on_paper(frame)
    return Box(
        max(center.x - wide, room.left),
        max(center.y - high, room.top),
        min(center.x + wide, room.right),
        min(center.y + high, room.bottom),
    )


def keep_out_zones(frame: PlanFrame, texts: Boxes) -> Iterator[Group]:
    """The zone of each item, hatched; lines stop at texts."""
    for item in frame.layout.items.items:
        box = zone_box(frame, item)
        corners = box_corners(box.left, box.top, box.right - box.left, box.bottom - box.top)
        hatch, edges = diagonal_lines(corners, PITCH), _edges(corners)
        for text in texts:
            hatch, edges = outside_box(hatch, text), outside_box(edges, text)
        yield Group(
            "keep-out",
            (Segments(hatch, style.HATCH), Segments(edges, style.CLEARANCE)),
            id=f"keep-out-{item.id}",
            title=f"Keep out about {item.id}",
            data={
                "of": item.id,
                "x-mm": decimal_mm(item.x.value),
                "y-mm": decimal_mm(item.y.value),
                "length-mm": decimal_mm(item.length + item.clearance * 2),
                "width-mm": decimal_mm(item.width + item.clearance * 2),
            },
        )


def _edges(corners: tuple[Pt, ...]) -> tuple[tuple[Pt, Pt], ...]:
    return tuple(zip(corners, (*corners[1:], corners[0]), strict=True))


def zone_sign(box: Box) -> tuple[Element, ...]:
    """A zone as it looks in a key."""
    corners = box_corners(box.left, box.top, box.right - box.left, box.bottom - box.top)
    hatch = Segments(diagonal_lines(corners, PITCH), style.HATCH)
    return hatch, Polyline(corners, style.CLEARANCE, closed=True)


def zone_names(frame: PlanFrame, busy: Occupied, typeface: Typeface) -> Iterator[Group]:
    """The id of each item by its zone, where there is room."""
    room = room_on_paper(frame)
    for item in frame.layout.items.items:
        words = place_label(Label(item.id, zone_box(frame, item), False, room), busy, typeface)
        if words:
            busy.add(words)
            yield Group("keep-out-name", words, data={"of": item.id})
