"""Points on cut list, cutting diagrams and material list, on sheets that are then spoiled."""

import json
from typing import Any
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.checker.json_node import UnexpectedJson
from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import prepare
from tests.drawing.checker.listed_sets import LISTS, ListedSet, listed_set
from tests.drawing.checker.spoiled import Spoiled, moved_path

SPEC: dict[str, Any] = {
    "room": {"length": "12' 3\"", "width": "10' 1\"", "height": 108},
    "grid": {"length": {"coffers": 3}, "width": {"coffers": 3}},
    "beams": {
        "crosswise": {"sides": "1x6", "bottom": "1x4"},
        "lengthwise": "same",
        "look": {"corners": "mitred"},
    },
    "crown": {"face": "3 1/4"},
    "panel": {"kind": "sheet_goods", "thickness": "1/4", "grain": "length"},
    "drawing": {"paper": "tabloid"},
}
LONG: dict[str, Any] = {
    "room": {"length": "22'", "width": "20'", "height": 108},
    "grid": {"length": {"coffers": 1}, "width": {"coffers": 1}},
    "crown": {"face": "3 1/4"},
    "drawing": {"paper": "tabloid"},
}


@pytest.fixture(scope="module")
def drawn() -> ListedSet:
    return listed_set(SPEC)


@pytest.fixture(scope="module")
def joined() -> ListedSet:
    return listed_set(LONG)


def stick_of(drawn: ListedSet, pieces: int) -> Element:
    """The first stick from which so many pieces are cut."""
    groups = Spoiled(drawn.svgs["Z-602"]).root.iter()
    return next(
        group
        for group in groups
        if group.get("class") == "stick"
        and [one.get("class") for one in group].count("stick-piece") == pieces
    )


def within(sheet: Spoiled, identity: str, kind: str, number: int = 0) -> Element:
    """A group of a class in the group of an id."""
    return [one for one in sheet.group(identity).iter() if one.get("class") == kind][number]


def outline(group: Element) -> Element:
    """The first path of a group."""
    return next(one for one in group if one.tag.endswith("path"))


def shift(sheet: Spoiled, at: tuple[str, str, int], dx: float) -> None:
    """Move a piece's outline along its stick or sheet [mm]."""
    path = outline(within(sheet, *at))
    path.set("d", moved_path(path.attrib["d"], dx, 0.0))


def stretch(path: Element, by: float) -> None:
    """Draw a rectangle longer, from its left edge on [mm]."""
    words = path.attrib["d"].split()
    ends = [float(word.lstrip("ML")) for word in words[:-1][0::2]]
    right = max(ends)
    told = []
    for place, word in enumerate(words):
        at_right = place % 2 == 0 and word != "Z" and float(word.lstrip("ML")) == right
        letter = word[0] if word[0] in "ML" else ""
        told.append(f"{letter}{right + by:.3f}" if at_right else word)
    path.set("d", " ".join(told))


def test_lists_as_drawn_keep_all_points(drawn: ListedSet, joined: ListedSet):
    assert drawn.points() == set()
    assert joined.points() == set()
    assert set(drawn.svgs) >= set(LISTS)


def test_a_quantity_other_than_taken_off_is_found(drawn: ListedSet):
    assert drawn.rewritten("Z-601", ">12</text>", ">13</text>").points() == {50}


def test_a_part_that_is_not_listed_is_found(drawn: ListedSet):
    def leave_out(sheet: Spoiled) -> None:
        within(sheet, "part-table", "part-row").set("data-of", "SD2")

    assert drawn.spoiled("Z-601", leave_out).points() >= {50}


def test_a_length_other_than_taken_off_is_found(drawn: ListedSet):
    assert drawn.rewritten("Z-601", ">9'-9 1/2\"<", ">9'-9 5/8\"<").points() == {53}


def test_another_material_is_found(drawn: ListedSet):
    assert drawn.rewritten("Z-601", ">1x6</text>", ">1x8</text>").points() == {53}


def test_a_missing_column_of_lengths_is_found(drawn: ListedSet):
    assert drawn.rewritten("Z-601", 'data-name="length"', 'data-name="run"').points() == {53}


def test_short_points_that_are_not_told_are_found(drawn: ListedSet):
    short = 'data-name="short_length"'
    assert drawn.rewritten("Z-601", short, 'data-name="short"', count=-1).points() == {53}


def test_two_marks_for_the_same_part_are_found(drawn: ListedSet):
    def double(lists: dict[str, Any]) -> None:
        parts = lists["take_off"]["parts"]
        parts.append({**parts[0], "mark": "SD99"})

    assert 54 in drawn.listed(double).points()


def test_one_mark_for_two_parts_is_found(drawn: ListedSet):
    def reuse(lists: dict[str, Any]) -> None:
        lists["take_off"]["parts"][1]["mark"] = "SD1"

    assert 54 in drawn.listed(reuse).points()


def test_pieces_too_many_are_found(drawn: ListedSet):
    def cut_more(sheet: Spoiled) -> None:
        stick = sheet.group("stick-1")
        stick.set("data-times", str(int(stick.attrib["data-times"]) + 1))

    assert drawn.spoiled("Z-602", cut_more).points() == {51, 161}


def test_pieces_that_leave_no_room_for_the_saw_are_found(drawn: ListedSet):
    """A saw cut of 1/8 in is 0.13 mm of paper at half an inch to the foot."""
    second = (stick_of(drawn, 2).attrib["id"], "stick-piece", 1)
    close = drawn.spoiled("Z-602", lambda sheet: shift(sheet, second, -0.12))
    assert close.points() == {51}


def test_pieces_that_overlap_are_found(drawn: ListedSet):
    second = (stick_of(drawn, 2).attrib["id"], "stick-piece", 1)
    over = drawn.spoiled("Z-602", lambda sheet: shift(sheet, second, -2.0))
    assert 51 in over.points()


def test_a_piece_drawn_shorter_than_listed_is_found(drawn: ListedSet):
    def shorten(sheet: Spoiled) -> None:
        stretch(outline(within(sheet, "stick-1", "stick-piece")), -0.1)

    assert drawn.spoiled("Z-602", shorten).points() == {51}


def test_a_piece_that_runs_off_its_stick_is_found(drawn: ListedSet):
    def lengthen(sheet: Spoiled) -> None:
        stretch(outline(within(sheet, "stick-1", "stick-piece", -1)), 60.0)

    assert drawn.spoiled("Z-602", lengthen).points() >= {25, 51}


def test_panels_that_overlap_are_found(drawn: ListedSet):
    sheet = next(sheet for sheet, svg in drawn.svgs.items() if 'class="sheet-panel"' in svg)
    over = drawn.spoiled(sheet, lambda one: shift(one, ("sheet-1", "sheet-panel", 1), -1.0))
    assert 51 in over.points()


def test_a_panel_across_the_grain_is_found(drawn: ListedSet):
    sheet = next(sheet for sheet, svg in drawn.svgs.items() if 'class="sheet-panel"' in svg)
    turned = drawn.rewritten(sheet, 'data-turned="no"', 'data-turned="yes"')
    assert 162 in turned.points()


def test_a_stick_that_is_not_to_scale_is_found(drawn: ListedSet):
    def lengthen(sheet: Spoiled) -> None:
        stretch(outline(within(sheet, "stick-1", "stick-outline")), 1.0)

    assert drawn.spoiled("Z-602", lengthen).points() == {160}


def test_an_offcut_other_than_drawn_is_found(drawn: ListedSet):
    def leave_more(sheet: Spoiled) -> None:
        stick = sheet.group("stick-1")
        stick.set("data-offcut-mm", str(float(stick.attrib["data-offcut-mm"]) + 24.0))

    assert drawn.spoiled("Z-602", leave_more).points() == {160}


def test_stock_that_is_drawn_and_not_bought_is_found(drawn: ListedSet):
    def buy_less(lists: dict[str, Any]) -> None:
        bought = lists["materials"]["lines"][0]["bought"]
        bought[0]["quantity"] -= 1

    assert drawn.listed(buy_less).points() == {52, 53, 161}


def test_an_amount_other_than_planned_is_found(drawn: ListedSet):
    svg = drawn.svgs["Z-603"]
    start = svg.index('data-name="waste"')
    old = svg[svg.index(">", svg.index("<text", start)) : svg.index("</text>", start)]
    cell = svg[start : svg.index("</text>", start)]
    assert drawn.rewritten("Z-603", cell, cell.replace(old, ">99.00")).points() == {53}


def test_an_order_other_than_planned_is_found(drawn: ListedSet):
    assert drawn.rewritten("Z-603", ">1 x box of", ">1 x bag of").points() == {53}


def test_too_little_bought_is_found(drawn: ListedSet):
    svg = drawn.svgs["Z-603"]
    start = svg.index('data-name="amount"')
    cell = svg[start : svg.index(">", start)]
    assert drawn.rewritten("Z-603", cell, 'data-name="amount" data-value="1"').points() == {52}


def test_a_joint_that_is_not_told_is_found(joined: ListedSet):
    """Crown of 20 ft comes from no stock of 16 ft in one piece."""
    assert "CR1 of 2" in joined.svgs["Z-602"]
    assert joined.rewritten("Z-602", "CR1 of 2", "CR1 of 3").points() == {25}


def test_parts_that_are_not_planned_without_a_word_are_found(drawn: ListedSet):
    def refuse(lists: dict[str, Any]) -> None:
        lists["materials"] = None

    assert 163 in drawn.listed(refuse).points()


def test_json_that_is_no_list_is_refused(drawn: ListedSet):
    def empty(lists: dict[str, Any]) -> None:
        lists["take_off"] = {}

    with pytest.raises(UnexpectedJson):
        drawn.listed(empty).points()


def test_whoever_checks_drawings_has_the_lists_checked_too():
    sheets = {"drawing": {**SPEC["drawing"], "sheets": list(LISTS)}}
    assert check_drawings(prepare(json.dumps({**SPEC, **sheets}).encode())) == ()
