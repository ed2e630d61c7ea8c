"""Ceiling items and wall features on the plan: plain signs where they are, ids beside them.

An item whose sign would lie on a word is not drawn, and one whose id finds no clear place has none:
the table tells the places of all.
"""

from collections.abc import Mapping, Sequence

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Fill, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import (
    Box,
    Drawn,
    Label,
    Line,
    on_paper,
    place_label,
    room_on_paper,
)
from lacunar.drawing.views.reflected_ceiling_plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.item_records import CeilingItem, WallFeatureCheck
from lacunar.layout.records import Point
from lacunar.model.ceiling_items import ItemKind
from lacunar.model.room import END_WALL, START_WALL, RunName

LEAST = 3.2
HEAD = 1.6
"""The sign of a sprinkler, which is too small to be drawn to scale."""
BEYOND = 1.0


def item_box(frame: PlanFrame, item: CeilingItem) -> Box:
    """What an item's sign takes up on paper: its size, or the least that can be read."""
    at = frame.point(Point(item.x.value, item.y.value))
    if item.kind is ItemKind.SPRINKLER:
        return Box.about(at, HEAD, HEAD)
    beyond = 2 * BEYOND if item.kind is ItemKind.FAN else 0.0
    wide, high = (max(LEAST, frame.on_paper(size)) + beyond for size in (item.length, item.width))
    return Box.about(at, wide, high)


def item_boxes(frame: PlanFrame) -> Mapping[str | None, tuple[Box, ...]]:
    """The signs' boxes by the coffers they lie in; under None those on beams."""
    found: dict[str | None, list[Box]] = {}
    for item in frame.layout.items.items:
        found.setdefault(item.coffer, []).append(item_box(frame, item))
    return {coffer: tuple(boxes) for coffer, boxes in found.items()}


def item_sign(kind: ItemKind, box: Box, *, rounded: bool) -> tuple[Element, ...]:
    """The sign of a kind of item that fills a box on paper."""
    middle = box.middle
    wide, high = box.right - box.left, box.bottom - box.top
    if kind is ItemKind.SPRINKLER:
        return (Circle(middle, wide / 2, None, Fill.BLACK),)
    if kind is ItemKind.FAN:
        around = Circle(middle, min(wide, high) / 2 - BEYOND, style.OBJECT, Fill.NONE)
        return around, Segments(_plus(box, middle), style.FINE)
    outline = _outline(kind, box, middle, rounded=rounded)
    if kind is ItemKind.DETECTOR:
        inner = Circle(middle, min(wide, high) / 4, style.FINE, Fill.NONE)
        return outline, inner
    return outline, Segments(_inside(kind, box, middle), style.FINE)


def _outline(kind: ItemKind, box: Box, middle: Pt, *, rounded: bool) -> Element:
    wide, high = box.right - box.left, box.bottom - box.top
    if rounded:
        return Circle(middle, wide / 2, style.OBJECT, Fill.NONE)
    pen = style.HIDDEN if kind is ItemKind.HATCH else style.OBJECT
    return Polyline(box_corners(box.left, box.top, wide, high), pen, closed=True)


def _inside(kind: ItemKind, box: Box, middle: Pt) -> tuple[Line, ...]:
    """Supply air a saltire, return air one diagonal, a speaker a bar, all others a cross."""
    falling = (Pt(box.left, box.top), Pt(box.right, box.bottom))
    rising = (Pt(box.left, box.bottom), Pt(box.right, box.top))
    if kind is ItemKind.DIFFUSER:
        return falling, rising
    if kind in (ItemKind.RETURN, ItemKind.HATCH):
        return (rising,)
    plus = _plus(box, middle)
    return plus[:1] if kind is ItemKind.SPEAKER else plus


def _plus(box: Box, middle: Pt) -> tuple[Line, ...]:
    level = (Pt(box.left, middle.y), Pt(box.right, middle.y))
    upright = (Pt(middle.x, box.top), Pt(middle.x, box.bottom))
    return level, upright


def item_signs(frame: PlanFrame, drawn: Sequence[Element], typeface: Typeface) -> tuple[Group, ...]:
    """Every item that has room among what is drawn already, with its id where that has."""
    if not frame.layout.items.items:
        return ()
    there = on_paper(drawn, typeface)
    free = [
        (item, box)
        for item in frame.layout.items.items
        if not any((box := item_box(frame, item)).meets(word) for word in there.words)
    ]
    words = [*there.words, *(box for _, box in free)]
    groups: list[Group] = []
    for item, box in free:
        others = tuple(word for word in words if word is not box)
        label = _label(frame, item, box, Drawn(there.lines, others), typeface)
        if label is not None:
            words.append(label[0])
        sign = item_sign(item.kind, box, rounded=item.round)
        groups.append(_item(item, (*sign, *(label[1] if label else ()))))
    return tuple(groups)


def _label(
    frame: PlanFrame, item: CeilingItem, box: Box, drawn: Drawn, typeface: Typeface
) -> tuple[Box, tuple[Element, ...]] | None:
    reach = max(box.right - box.left, box.bottom - box.top) / 2
    return place_label(Label(box.middle, item.id, reach, room_on_paper(frame)), drawn, typeface)


def _item(item: CeilingItem, children: tuple[Element, ...]) -> Group:
    return Group(
        "item",
        children,
        id=f"item-{item.id}",
        title=f"{item.kind.capitalize()} {item.id}",
        data={
            "id": item.id,
            "kind": item.kind.value,
            "x-mm": decimal_mm(item.x.value),
            "y-mm": decimal_mm(item.y.value),
            "length-mm": decimal_mm(item.length),
            "width-mm": decimal_mm(item.width),
        },
    )


def feature_signs(frame: PlanFrame) -> tuple[Group, ...]:
    """Every door, window, fireplace and cabinet as a gap in the band of its wall."""
    return tuple(
        _feature(frame, number, check)
        for number, check in enumerate(frame.layout.wall_features, start=1)
    )


def _feature(frame: PlanFrame, number: int, check: WallFeatureCheck) -> Group:
    near, far = (frame.on_paper(edge.value) for edge in (check.near, check.far))
    left, bottom = frame.origin.x, frame.origin.y
    along, up = (frame.span(run) for run in (RunName.LENGTH, RunName.WIDTH))
    if check.wall in (START_WALL[RunName.WIDTH], END_WALL[RunName.WIDTH]):
        low = check.wall == START_WALL[RunName.WIDTH]
        face = bottom if low else bottom - up
        back = face + WALL_BAND if low else face - WALL_BAND
        ends = [(Pt(left + x, face), Pt(left + x, back)) for x in (near, far)]
    else:
        first = check.wall == START_WALL[RunName.LENGTH]
        face = left if first else left + along
        back = face - WALL_BAND if first else face + WALL_BAND
        ends = [(Pt(face, bottom - y), Pt(back, bottom - y)) for y in (near, far)]
    (one, one_back), (other, other_back) = ends
    return Group(
        "wall-feature",
        (Polyline((one, one_back, other_back, other), style.OBJECT, closed=True, fill=Fill.WHITE),),
        id=f"wall-feature-{number}",
        title=f"{check.name} in {check.wall}",
        data={
            "id": check.name,
            "wall": check.wall,
            "near-mm": decimal_mm(check.near.value),
            "far-mm": decimal_mm(check.far.value),
        },
    )
