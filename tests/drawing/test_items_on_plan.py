"""Ceiling items and wall features on composed sheets: ids give way, and nothing is left out."""

import json
from typing import Any

from lacunar.drawing.elements import Circle, Element, Group, Polyline, Text, walk
from lacunar.workflow.check import check_drawings
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import Prepared, prepare
from tests.drawing.checker.drawn_sets import PLANS_AND_POLES

LIGHTS = {"kind": "light", "diameter": 6}


def prepared(room: dict[str, Any], **more: Any) -> Prepared:
    whole = {"length": 240, "width": 180, "height": 108, **room}
    drawing = {"sheets": PLANS_AND_POLES, **more.pop("drawing", {})}
    return prepare(json.dumps({"room": whole, "drawing": drawing, **more}).encode())


def groups(ready: Prepared, kind: str) -> list[Group]:
    sheet_set, _ = compose_sheets(ready)
    found = (each for sheet in sheet_set.sheets for each in walk(sheet.children))
    return [each for each in found if isinstance(each, Group) and each.kind == kind]


def corner(children: tuple[Element, ...]) -> tuple[float, float]:
    """The upper left corner of the first outline."""
    (outline, *_) = [each for each in children if isinstance(each, Polyline) and each.closed]
    return min(p.x for p in outline.points), min(p.y for p in outline.points)


def test_ids_stand_alike_in_all_coffers_that_have_a_light_in_the_middle():
    coffers = groups(prepared({"ceiling_items": [LIGHTS]}), "coffer")
    places = set()
    for coffer in coffers:
        (tag,) = [each for each in coffer.children if isinstance(each, Group)]
        (left, top), (x, y) = corner(coffer.children), corner(tag.children)
        places.add((round(x - left, 3), round(y - top, 3)))
    assert len(coffers) > 1
    assert len(places) == 1


def test_ids_stand_in_the_middle_where_nothing_is():
    for coffer in groups(prepared({}), "coffer"):
        (tag,) = [each for each in coffer.children if isinstance(each, Group)]
        (opening,) = [each for each in coffer.children if isinstance(each, Polyline)]
        (outline,) = [each for each in tag.children if isinstance(each, Polyline)]
        for side in ("x", "y"):
            whole = sum(getattr(point, side) for point in opening.points) / 4
            assert abs(sum(getattr(point, side) for point in outline.points) / 4 - whole) < 1e-9


def test_a_clearance_is_outlined_only_where_it_is_in_conflict():
    """The first return stands where a beam is, in the middle of the room; the second is free."""
    items = [
        {"kind": "return", "x": x, "y": 90, "length": 8, "width": 4, "clearance": 2}
        for x in (120, 90)
    ]
    ready = prepared({"ceiling_items": items}, grid={"length": {"coffers": 2}})
    drawn = {group.data["id"]: group for group in groups(ready, "item")}
    conflicting = {item.id for item in ready.layout.items.items if item.conflicts}
    assert "R-1" in conflicting
    outlined = {
        identity
        for identity, group in drawn.items()
        if any(isinstance(e, Group) and e.kind == "item-clearance" for e in group.children)
    }
    assert outlined == conflicting


def test_of_a_hundred_lights_close_together_some_have_no_id_and_all_are_listed():
    """Lights 7 in apart leave no room for words between them at any scale of a whole room."""
    many = {"kind": "light", "diameter": 5, "x": 30, "y": 30, "columns": 20, "rows": 6}
    ready = prepared({"ceiling_items": [{**many, "length_pitch": 7, "width_pitch": 7}]})
    assert len(groups(ready, "item")) == 120
    assert len(groups(ready, "item-row")) == 120
    tags = [tag for tag in groups(ready, "tag") if tag.data["kind"] == "item"]
    assert len(tags) < 120
    assert check_drawings(ready) == ()


def test_an_item_bears_its_id():
    items = [{"kind": "fan", "x": 60, "y": 50, "diameter": 20}]
    tags = groups(prepared({"ceiling_items": items}), "tag")
    (tag,) = [each for each in tags if each.data["kind"] == "item"]
    assert [each.text for each in tag.children if isinstance(each, Text)] == ["F-1"]


def test_an_item_too_small_to_be_read_is_drawn_larger():
    small = {"kind": "sprinkler", "x": 60, "y": 50, "diameter": 1}
    (item,) = groups(prepared({"ceiling_items": [small]}), "item")
    rings = [each.radius for each in item.children if isinstance(each, Circle)]
    assert max(rings) == 1.6


def test_a_letter_sheet_holds_a_small_room_with_items_boards_and_joists():
    """Its cautions are taller than a letter's column, so that they go on in the next."""
    ready = prepared(
        {
            "length": 158,
            "width": 138,
            "joists": {"parallel_to": "length", "first": 8},
            "ceiling_items": [LIGHTS, {"kind": "detector", "x": 76, "y": 92, "diameter": 6}],
            "wall_features": [{"kind": "door", "wall": "W4", "center": 40, "width": 32}],
        },
        grid={"length": {"coffers": 3}, "width": {"coffers": 3}},
        panel={"kind": "boards", "board": "1x4"},
        drawing={"paper": "letter"},
    )
    assert check_drawings(ready) == ()
    assert [group.id for group in groups(ready, "cautions")] == ["cautions", "cautions-2"]


def test_ids_lose_their_frames_where_coffers_are_small_on_paper():
    """Coffers of 53 in are 14 mm wide at 1:96, of which the light in the middle takes 3.2 mm."""
    ready = prepared(
        {"length": 1200, "width": 1200, "ceiling_items": [LIGHTS]},
        grid={"length": {"coffers": 20}, "width": {"coffers": 20}},
        drawing={"paper": "arch_c"},
    )
    coffers = groups(ready, "coffer")
    tags = [tag for coffer in coffers for tag in coffer.children if isinstance(tag, Group)]
    assert len(tags) == 400
    assert not any(isinstance(each, Polyline) for tag in tags for each in tag.children)
    assert check_drawings(ready) == ()
