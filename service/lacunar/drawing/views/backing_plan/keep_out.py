"""Where nothing is fixed or cut: about each ceiling item, with its clearance."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Segments
from lacunar.drawing.hatching import diagonal_lines
from lacunar.drawing.plan.broken import Boxes, broken
from lacunar.drawing.plan.clear_places import Box, Label, Occupied, place_label
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import closed, room_on_paper
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.item_records import CeilingItem
from lacunar.layout.records import Point

PITCH = 1.4
LEAST = 2.4
"""No zone is drawn smaller than this [mm], or it would not be seen."""


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
        corners = box.corners
        hatch = broken(diagonal_lines(corners, PITCH), texts, style.HATCH)
        edges = broken(tuple(closed(corners)), texts, style.CLEARANCE)
        yield Group(
            "keep-out",
            (*hatch, *edges),
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


def zone_sign(box: Box) -> tuple[Element, ...]:
    """A zone as it looks in a key."""
    corners = box.corners
    hatch = Segments(diagonal_lines(corners, PITCH), style.HATCH)
    return hatch, Polyline(corners, style.CLEARANCE, closed=True)


def zone_names(frame: PlanFrame, busy: Occupied, typeface: Typeface) -> Iterator[Group]:
    """The id of each item close by its zone, where there is room."""
    room = room_on_paper(frame)
    for item in frame.layout.items.items:
        label = Label(item.id, zone_box(frame, item), False, room, led_out=False)
        words = place_label(label, busy, typeface)
        if words:
            busy.add(words)
            yield Group("keep-out-name", words, data={"of": item.id})
