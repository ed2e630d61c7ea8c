"""Points 24 and 150 to 154: crossings and crown frames against the layout, on spoiled sheets."""

import json
import re
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set, points

BOX = {"sides": "1x6", "bottom": "1x4", "bottom_joint": "between", "reveal": "1/4"}
SPEC: dict[str, Any] = {
    "room": {"length": 192, "width": 144, "height": 108},
    "beams": {
        "crosswise": BOX,
        "lengthwise": "same",
        "look": {"sides": "per_coffer", "corners": "mitred"},
    },
    "grid": {
        "length": {"coffers": 3, "start": "half", "end": "half"},
        "width": {"coffers": 2, "start": "half", "end": "half"},
    },
    "crown": {"face": "3 1/4", "spring_from_wall": 38},
    "drawing": {"paper": "tabloid"},
}
DETAILS = ("Z-502", "Z-503")


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC, DETAILS)


def spoiled(drawn: Drawn, pattern: str, new: str) -> set[int]:
    """The points not kept once the first place that a pattern finds is another."""
    svgs, answer = drawn
    assert any(re.search(pattern, svg) for svg in svgs)
    done = False
    found = []
    for svg in svgs:
        other = svg if done else re.sub(pattern, new, svg, count=1)
        done = done or other != svg
        found.append(other)
    assert done
    return points(found, answer)


def changed(drawn: Drawn, change: Any) -> set[int]:
    """The points not kept where the layout is another than was drawn."""
    svgs, answer = drawn
    other = json.loads(json.dumps(answer))
    change(other)
    return points(svgs, other)


def group(kind: str, data: str = "") -> str:
    return rf'(<g[^>]*class="{kind}"[^>]*{data}[^>]*>)'


def test_detail_sheets_keep_every_point(drawn: Drawn):
    svgs, answer = drawn
    assert points(svgs, answer) == set()
    views = sum(svg.count('data-view="crossing"') for svg in svgs)
    assert views == len(answer["crossings"]) == 3


def test_a_crossing_that_is_not_drawn_is_found(drawn: Drawn):
    assert 150 in changed(drawn, lambda other: other["crossings"].append(other["crossings"][0]))


def test_a_wrong_count_of_places_is_found(drawn: Drawn):
    assert spoiled(drawn, r">(\d+) PLACES:", ">17 PLACES:") == {150}


def test_a_wrong_count_in_the_table_is_found(drawn: Drawn):
    def fewer(other: Any) -> None:
        other["crossings"][0]["places"].pop()

    assert changed(drawn, fewer) == {150}


def test_a_board_of_another_width_is_found(drawn: Drawn):
    def thicker(other: Any) -> None:
        for profile in other["profiles"]:
            for part in profile["parts"]:
                if part["name"] == "side":
                    part["thickness"] = {"exact": "1 in"}

    assert changed(drawn, thicker) == {151}


def test_a_board_that_ends_elsewhere_is_found(drawn: Drawn):
    def longer(other: Any) -> None:
        other["crossings"][2]["ends"][-1]["end"]["past"] = {"exact": "2 in"}

    assert changed(drawn, longer) == {151}


def test_a_board_left_out_is_found(drawn: Drawn):
    assert spoiled(drawn, 'data-part="bottom"', 'data-part="side"') == {151}


def test_a_long_point_that_does_not_fit_the_opening_is_found(drawn: Drawn):
    def wider(other: Any) -> None:
        for coffer in other["coffers"]:
            coffer["length"] = {"exact": "70 in"}

    assert changed(drawn, wider) == {24}


@pytest.mark.parametrize("angle", ["45", "31.6", "33.9"])
def test_an_angle_that_does_not_follow_from_the_spring_is_found(drawn: Drawn, angle: str):
    assert spoiled(drawn, rf">{angle}°<", ">30.2°<") == {24}


def test_a_spring_that_is_another_is_found(drawn: Drawn):
    def steeper(other: Any) -> None:
        other["mouldings"]["crown"]["spring_from_wall"]["exact"] = "45 deg"

    assert 24 in changed(drawn, steeper)


def test_a_length_that_is_not_the_layouts_is_found(drawn: Drawn):
    def shorter(other: Any) -> None:
        for trim in other["mouldings"]["coffers"]:
            trim["pieces"][0]["short_point"] = {"exact": "40 in"}

    assert changed(drawn, shorter) == {152, 153}


def test_a_piece_that_is_not_listed_is_found(drawn: Drawn):
    svgs, answer = drawn
    row = re.compile(group("length-row") + r".*?</g>\s*</g>", re.DOTALL)
    assert points([row.sub("", svg, count=1) for svg in svgs], answer) >= {152}


def test_a_piece_that_ends_otherwise_is_found(drawn: Drawn):
    assert spoiled(drawn, 'data-left="mitred"', 'data-left="square"') == {153}


def test_crown_that_reaches_further_is_found(drawn: Drawn):
    def deeper(other: Any) -> None:
        other["mouldings"]["crown"]["projection"] = {"exact": "3 in"}

    assert changed(drawn, deeper) == {153}


@pytest.mark.parametrize(
    ("name", "wrong"), [("table", "right"), ("keep", "right"), ("miter", "12°")]
)
def test_a_picture_of_the_saw_that_is_wrong_is_found(drawn: Drawn, name: str, wrong: str):
    pattern = rf'(class="saw-picture"[^>]*?data-{name}=")[^"]*'
    alternative = rf'(data-{name}=")[^"]*("[^>]*?class="saw-picture")'
    if any(re.search(pattern, svg) for svg in drawn[0]):
        assert spoiled(drawn, pattern, rf"\g<1>{wrong}") == {154}
    else:
        assert spoiled(drawn, alternative, rf"\g<1>{wrong}\g<2>") == {154}


def test_a_cut_turned_otherwise_is_found(drawn: Drawn):
    svgs, answer = drawn
    blade = re.compile(r'(class="blade"[^>]*>\s*<path[^>]*?d="M[\d.-]+ [\d.-]+ L)([\d.-]+)')
    assert any(blade.search(svg) for svg in svgs)
    moved = [blade.sub(lambda m: f"{m[1]}{float(m[2]) + 3:.3f}", svg, count=1) for svg in svgs]
    assert 154 in points(moved, answer)
