"""Point 75: ceiling items against the layout, on sheets that are then spoiled."""

import json
import re
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set, points

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


def test_every_kind_of_item_is_drawn_listed_and_explained(drawn: Drawn):
    svgs, answer = drawn
    assert points(svgs, answer) == set()
    shown = {
        kind
        for svg in svgs
        for kind in re.findall(r'class="item" data-id="[^"]*" data-kind="([a-z]+)"', svg)
    }
    assert shown == {"light", *KINDS}


def test_an_item_elsewhere_is_found(drawn: Drawn):
    svgs, answer = drawn
    other = json.loads(json.dumps(answer))
    items = other["ceiling_items"]["items"]
    items[0]["x"], items[1]["x"] = items[1]["x"], items[0]["x"]
    assert points(svgs, other) == {75}


def test_an_item_that_is_not_listed_is_found(drawn: Drawn):
    svgs, answer = drawn
    spoiled = [svg.replace('class="item-row" data-of="L-3"', 'class="row"') for svg in svgs]
    assert spoiled != svgs
    assert 75 in points(spoiled, answer)


def test_a_sign_that_is_not_explained_is_found(drawn: Drawn):
    svgs, answer = drawn
    spoiled = [svg.replace('data-entry="item-fan"', 'data-entry="fan"') for svg in svgs]
    assert points(spoiled, answer) == {75}
