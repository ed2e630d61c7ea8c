"""Point 74: the table of openings against what was measured, on sheets that are then spoiled."""

import json
from typing import Any

import pytest

from lacunar.workflow.prepare import prepare
from tests.drawing.checker.drawn_sets import Drawn, drawn_set, points

SPEC: dict[str, Any] = {
    "room": {"length": 192, "width": 144, "height": 108},
    "grid": {"length": {"coffers": 3}, "width": {"coffers": 2}},
    "crown": {"face": "3 1/4"},
    "drawing": {"paper": "tabloid"},
}
SIDES = {"W1": "66 3/8", "W2": 58, "W3": "66 1/4", "W4": "58 1/8"}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    grid = prepare(json.dumps(SPEC).encode()).layout.grid_id
    coffers = [{"coffer": "A1", "sides": SIDES, "diagonals": {"rising": "88 3/4"}}]
    section = {"grid": grid, "coffers": coffers, "out_of_square": "mitred_to_corners"}
    return drawn_set({**SPEC, "measured_openings": section})


def test_what_was_measured_is_listed_with_the_saw_at_its_corners(drawn: Drawn):
    svgs, answer = drawn
    assert points(svgs, answer) == set()
    assert sum(svg.count('class="opening-row"') for svg in svgs) == 5
    assert sum(svg.count('class="corner-row"') for svg in svgs) == 4


def test_an_opening_that_is_not_listed_is_found(drawn: Drawn):
    svgs, answer = drawn
    spoiled = [svg.replace('data-what="W3"', 'data-what="W2"') for svg in svgs]
    assert points(spoiled, answer) == {74}


def test_a_size_that_was_not_measured_is_found(drawn: Drawn):
    svgs, answer = drawn
    sides = answer["measured_openings"]["openings"][0]["sides"]
    other = json.loads(json.dumps(answer))
    other["measured_openings"]["openings"][0]["sides"][0]["measured"] = sides[2]["measured"]
    assert points(svgs, other) == {74}


def test_a_difference_that_is_none_is_found(drawn: Drawn):
    svgs, answer = drawn
    rows = next(svg for svg in svgs if 'class="opening-row"' in svg)
    start = rows.index('class="opening-row"')
    assert "+" in rows[start:]
    spoiled = rows[:start] + rows[start:].replace(">+", ">-", 1)
    assert points([spoiled if svg is rows else svg for svg in svgs], answer) == {74}
