"""Point 76: wall features against the layout, on sheets that are then spoiled."""

import json
from copy import deepcopy
from typing import Any

import pytest

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.prepare import layout_answer, prepare
from tests.drawing.checker.spoiled import Spoiled
from tests.drawing.checker.test_items import Drawn, found, replaced, spoiled_plan

KINDS = {"W1": "window", "W2": "fireplace", "W3": "cabinet", "W4": "door"}
SPEC: dict[str, Any] = {
    "room": {
        "length": 240,
        "width": 180,
        "height": 108,
        "wall_features": [
            {"kind": kind, "wall": wall, "center": 70, "width": 40} for wall, kind in KINDS.items()
        ],
    },
    "drawing": {"paper": "tabloid", "sheets": ["Z-101", "Z-102", "Z-701"]},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    prepared = prepare(json.dumps(SPEC).encode())
    typeface = load_typeface()
    sheets = compose(prepared.layout, prepared.digest, typeface).sheets
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheets]
    return svgs, dict(layout_answer(prepared, trace=False))


def test_a_feature_at_each_wall_is_drawn_listed_and_explained(drawn: Drawn):
    svgs, answer = drawn
    assert found(svgs, answer) == set()
    for number in range(1, 5):
        assert f'id="wall-feature-{number}"' in svgs[0]
    # Below the plan nothing stands in the way of a name.
    assert 'id="tag-wall-feature-4"' in svgs[0]


@pytest.mark.parametrize(("number", "dx", "dy"), [(1, 0, 0.06), (2, -0.06, 0), (4, 0, -0.5)])
def test_a_feature_moved_is_found(drawn: Drawn, number: int, dx: float, dy: float):
    identity = f"wall-feature-{number}"
    assert (76, identity) in spoiled_plan(drawn, lambda sheet: sheet.move(identity, dx, dy))


def test_a_feature_left_out_or_drawn_twice_is_found(drawn: Drawn):
    def twice(sheet: Spoiled) -> None:
        again = deepcopy(sheet.group("wall-feature-4"))
        again.set("id", "wall-feature-5")
        sheet.group("object-view-1").append(again)

    gone = spoiled_plan(drawn, lambda sheet: sheet.remove("wall-feature-3"))
    assert (76, "wall-features") in gone
    assert (76, "wall-features") in spoiled_plan(drawn, twice)


def test_hatch_across_a_feature_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.move("wall-W2", 20, 0)

    assert (76, "wall-feature-2") in spoiled_plan(drawn, spoil)


def test_a_feature_that_is_not_listed_is_found(drawn: Drawn):
    old = 'class="wall-feature-row" data-kind="door"'
    assert replaced(drawn, old, 'class="row"') == {(76, "wall-features-table")}


def test_a_kind_that_is_not_explained_is_found(drawn: Drawn):
    assert replaced(drawn, 'data-entry="wall-feature-cabinet"', 'data-entry="c"') == {
        (76, "legend")
    }


def test_a_layout_with_another_place_is_found(drawn: Drawn):
    svgs, answer = drawn
    other = json.loads(json.dumps(answer))
    first, second = other["wall_features"][:2]
    first["near"], second["near"] = {"exact": "40 in"}, {"exact": "49 in"}
    assert {(76, "wall-feature-1"), (76, "wall-feature-2")} <= found(svgs, other)
