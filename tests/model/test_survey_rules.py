"""Surveys: what is refused before anything is laid out, and what is taken for what is open."""

from typing import Any

import pytest

from lacunar.exchange.spec_json import spec_from
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused

SIDES = {"W1": 144, "W2": 180, "W3": 144, "W4": 180}
POINTS = {
    "W4-W1": {"x": 0, "y": 0},
    "W3-W4": {"x": 180, "y": "-1/2"},
    "W2-W3": {"x": 180, "y": 144},
    "W1-W2": {"x": 0, "y": 144},
}
RISING = {"rising": "230 1/2"}

MEMBER = {"name": "S1", "on": "length", "center": 90, "width": 4, "drop": 4}


def found(room: dict[str, Any]) -> list[tuple[str, str]]:
    try:
        spec_from({"room": {"height": 108, **room}})
    except SpecRefused as refused:
        return [(fault.code, fault.pointer) for fault in refused.faults]
    return []


@pytest.mark.parametrize(
    ("room", "faults"),
    [
        # Four sides can lean either way: without a diagonal or an angle the shape is not fixed.
        ({"survey": {"sides": SIDES}}, [("diagonal_missing", "/room/survey/diagonals")]),
        (
            {"survey": {"sides": SIDES, "diagonals": {}}},
            [("diagonal_missing", "/room/survey/diagonals")],
        ),
        ({"survey": {"sides": SIDES, "diagonals": RISING}}, []),
        ({"survey": {"points": POINTS}}, []),
        ({"survey": {}}, [("name_missing", "/room/survey/sides")]),
        (
            {"survey": {"points": POINTS, "sides": SIDES, "diagonals": RISING}},
            [("survey_kind_unclear", "/room/survey/points")],
        ),
        (
            {"survey": {"points": POINTS}, "length": 180},
            [("room_measured_twice", "/room/length")],
        ),
        (
            {"length": 180, "width": 144, "crooked": {"control": "W2"}},
            [("crooked_not_surveyed", "/room/crooked")],
        ),
        (
            {"survey": {"sides": {"W1": 144, "W2": 180, "W3": 144}, "diagonals": RISING}},
            [("name_missing", "/room/survey/sides/W4")],
        ),
        (
            {"survey": {"points": POINTS, "bows": {"W1": {"in": 1, "out": 1}}}},
            [("value_not_one", "/room/survey/bows/W1")],
        ),
        (
            {"survey": {"points": POINTS, "bows": {"W1": {"in": 13}}}},
            [("length_out_of_bounds", "/room/survey/bows/W1")],
        ),
        (
            {"survey": {"points": POINTS}, "crooked": {"control": "S1"}},
            [("control_line_unknown", "/room/crooked/control")],
        ),
        (
            {"survey": {"points": POINTS}, "crooked": {"control": "S1"}, "members": [MEMBER]},
            [],
        ),
        (
            {
                "survey": {"points": POINTS},
                "crooked": {"mode": "follow_walls", "control": "W2", "excess": "split"},
            },
            [
                ("mode_without_setting", "/room/crooked/control"),
                ("mode_without_setting", "/room/crooked/excess"),
            ],
        ),
        (
            {
                "survey": {"points": POINTS},
                "crooked": {"out_of_square": "coped_in_place", "out_of_square_limit": 1},
            },
            [
                ("mode_without_setting", "/room/crooked/out_of_square"),
                ("mode_without_setting", "/room/crooked/out_of_square_limit"),
            ],
        ),
        (
            {
                "survey": {"points": POINTS},
                "crooked": {"mode": "follow_walls", "out_of_square_limit": 9},
            },
            [("length_out_of_bounds", "/room/crooked/out_of_square_limit")],
        ),
    ],
)
def test_surveys_that_cannot_be(room: dict[str, Any], faults: list[tuple[str, str]]):
    assert found(room) == faults


def test_what_a_survey_leaves_open_is_listed():
    spec = spec_from({"room": {"height": 108, "survey": {"points": POINTS}}})
    resolved = resolve(spec)
    assumed = {each.pointer: each.value for each in resolved.assumptions}
    assert assumed["/room/survey/tolerance"] == Length.of_inches(1) / 2
    assert assumed["/room/crooked/control"] == "W1"
    assert assumed["/room/crooked/visible_taper"] == Length.of_inches(1) / 4
    assert assumed["/room/crooked/mode"] == "keep_square"
    assert assumed["/room/crooked/excess"] == "end"
    assert "/room/crooked/out_of_square" not in assumed
    assert "/room/length" not in assumed


def test_of_a_grid_along_the_walls_only_what_it_knows_is_assumed():
    room = {"survey": {"points": POINTS}, "crooked": {"mode": "follow_walls"}}
    resolved = resolve(spec_from({"room": {"height": 108, **room}}))
    assumed = {each.pointer: each.value for each in resolved.assumptions}
    assert assumed["/room/crooked/out_of_square"] == "coped_in_place"
    assert assumed["/room/crooked/out_of_square_limit"] == Length.of_inches(1) / 8
    assert "/room/crooked/control" not in assumed
    assert "/room/crooked/excess" not in assumed
