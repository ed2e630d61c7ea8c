"""Points 75 and 77: ceiling items against the layout, on sheets that are then spoiled."""

import json
import re
from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set, found, points
from tests.drawing.checker.spoiled import Spoiled

KINDS = ("fan", "diffuser", "return", "sprinkler", "speaker", "hatch", "detector")
SPEC: dict[str, Any] = {
    "room": {
        "length": 240,
        "width": 180,
        "height": 108,
        "ceiling_items": [
            {"kind": "light", "pattern": "coffer_centers", "diameter": 6},
            *(
                {"kind": kind, "x": 40 + 24 * number, "y": 30, "diameter": 8}
                for number, kind in enumerate(KINDS)
            ),
            {"kind": "return", "x": 60, "y": 120, "length": 12, "width": 6, "clearance": 3},
            {"kind": "sprinkler", "x": 100, "y": 150, "diameter": 2},
        ],
        "wall_features": [{"kind": "door", "wall": "W4", "center": 60, "width": 32}],
    },
    "grid": {"length": {"coffers": 4}, "width": {"coffers": 3}},
    "panel": {"kind": "boards"},
    "drawing": {"paper": "tabloid"},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC)


def spoiled_plan(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[tuple[int, str]]:
    """What is found once the first sheet, which has the plan, is spoiled."""
    svgs, answer = drawn
    sheet = Spoiled(svgs[0])
    spoil(sheet)
    return found([sheet.svg, *svgs[1:]], answer)


def replaced(drawn: Drawn, old: str, new: str) -> set[tuple[int, str]]:
    """What is found once a text is replaced on all sheets."""
    svgs, answer = drawn
    spoiled = [svg.replace(old, new) for svg in svgs]
    assert spoiled != svgs
    return found(spoiled, answer)


def test_every_kind_of_item_is_drawn_listed_and_explained(drawn: Drawn):
    svgs, answer = drawn
    assert points(svgs, answer) == set()
    shown = {
        kind
        for svg in svgs
        for kind in re.findall(r'class="item" data-id="[^"]*" data-kind="([a-z]+)"', svg)
    }
    assert shown == {"light", *KINDS}
    tags = re.findall(r'id="tag-item-([A-Z]+-[0-9]+)"', svgs[0])
    assert sorted(tags) == sorted(item["id"] for item in answer["ceiling_items"]["items"])


def test_an_item_elsewhere_is_found(drawn: Drawn):
    svgs, answer = drawn
    other = json.loads(json.dumps(answer))
    items = other["ceiling_items"]["items"]
    items[0]["x"], items[1]["x"] = items[1]["x"], items[0]["x"]
    assert points(svgs, other) == {75}


def test_an_item_moved_by_a_hair_is_found(drawn: Drawn):
    assert (75, "item-L-4") in spoiled_plan(drawn, lambda sheet: sheet.move("item-L-4", 0.06, 0))


def test_an_item_of_another_size_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        ring = sheet.part("item-D-1", "circle")
        ring.set("r", f"{float(ring.attrib['r']) + 0.1:.3f}")

    assert (75, "item-D-1") in spoiled_plan(drawn, spoil)


def test_a_sprinkler_smaller_than_can_be_read_is_found(drawn: Drawn):
    """2 in at 1:24 is 2.1 mm, which is drawn 3.2 mm large."""

    def spoil(sheet: Spoiled) -> None:
        sheet.part("item-SP-2", "circle").set("r", "1.058")

    assert (75, "item-SP-2") in spoiled_plan(drawn, spoil)


def test_an_item_left_out_or_drawn_twice_is_found(drawn: Drawn):
    def twice(sheet: Spoiled) -> None:
        again = deepcopy(sheet.group("item-F-1"))
        again.set("id", "item-F-1-2")
        sheet.group("view-1").append(again)

    assert (75, "item-R-1") in spoiled_plan(drawn, lambda sheet: sheet.remove("item-R-1"))
    assert (75, "item-F-1") in spoiled_plan(drawn, twice)


def test_an_item_drawn_as_another_kind_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("item-SK-1").set("data-kind", "light")

    assert (75, "item-SK-1") in spoiled_plan(drawn, spoil)


def test_an_item_that_is_not_listed_is_found(drawn: Drawn):
    old = 'class="item-row" data-kind="light" data-of="L-3"'
    assert (75, "item-L-3") in replaced(drawn, old, 'class="row"')


def test_a_sign_that_is_not_explained_is_found(drawn: Drawn):
    assert replaced(drawn, 'data-entry="item-fan"', 'data-entry="fan"') == {(75, "legend")}
    assert replaced(drawn, 'data-entry="clearance"', 'data-entry="c"') == {(75, "legend")}


def test_an_id_away_from_its_item_is_found(drawn: Drawn):
    assert (77, "tag-item-L-4") in spoiled_plan(
        drawn, lambda sheet: sheet.move("tag-item-L-4", 9, 0)
    )


def test_an_id_of_another_item_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("tag-item-L-4", "text").text = "L-5"

    assert (77, "tag-item-L-4") in spoiled_plan(drawn, spoil)


def test_items_without_ids_need_a_word_in_the_legend(drawn: Drawn):
    svgs, answer = drawn
    sheet = Spoiled(svgs[0])
    sheet.remove("tag-item-L-4")
    assert found([sheet.svg, *svgs[1:]], answer) == set()
    silent = [svg.replace('data-entry="item-tag"', 'data-entry="tag"') for svg in svgs[1:]]
    assert found([sheet.svg, *silent], answer) == {(75, "legend")}
