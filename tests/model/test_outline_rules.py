"""Outlines: what is refused before anything is laid out, and what is taken for what is open."""

from typing import Any

import pytest

from lacunar.exchange.spec_json import spec_from
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused

ELL = [180, 144, {"length": 72, "corner": 270}, 96, 108, 240]
POINTS = [{"x": 0, "y": 0}, {"x": 0, "y": 100}, {"x": 120, "y": 0}]


def sides(*given: Any) -> list[dict[str, Any]]:
    return [each if isinstance(each, dict) else {"length": each} for each in given]


def found(outline: dict[str, Any], **room: Any) -> list[tuple[str, str]]:
    panel = room.pop("panel", None)
    spec = {"room": {"height": 108, "outline": outline, **room}}
    try:
        spec_from({**spec, "panel": panel} if panel else spec)
    except SpecRefused as refused:
        return [(fault.code, fault.pointer) for fault in refused.faults]
    return []


@pytest.mark.parametrize(
    ("outline", "faults"),
    [
        ({"sides": sides(*ELL)}, []),
        ({"points": POINTS}, []),
        ({}, [("name_missing", "/room/outline/sides")]),
        (
            {"sides": sides(*ELL), "points": POINTS},
            [("outline_kind_unclear", "/room/outline/points")],
        ),
        ({"sides": sides(100, 100)}, [("outline_too_few_sides", "/room/outline/sides")]),
        (
            {"sides": [{"length": 100}, {}, {"length": 100}]},
            [("name_missing", "/room/outline/sides/1/length")],
        ),
        (
            {
                "points": POINTS,
                "diagonals": [{"from_corner": 1, "to_corner": 4, "length": 100}],
            },
            [("corner_unknown", "/room/outline/diagonals/0/to_corner")],
        ),
        (
            {
                "points": POINTS,
                "diagonals": [{"from_corner": 2, "to_corner": 2, "length": 100}],
            },
            [("corner_unknown", "/room/outline/diagonals/0/to_corner")],
        ),
    ],
)
def test_an_outline_is_of_one_kind_and_goes_round(
    outline: dict[str, Any], faults: list[tuple[str, str]]
):
    assert found(outline) == faults


def test_a_room_is_measured_once():
    outline = {"sides": sides(*ELL)}
    assert found(outline, length=240) == [("room_measured_twice", "/room/length")]
    survey = {"sides": {"W1": 1, "W2": 1, "W3": 1, "W4": 1}, "diagonals": {"rising": 1}}
    codes = [code for code, _ in found(outline, survey=survey)]
    assert "room_measured_twice" in codes


def test_surfaces_are_told_once_of_sides_that_there_are():
    surfaces = [{"side": 2, "finish": "5/8"}, {"side": 2, "bow": {"in": "1/4"}}, {"side": 7}]
    assert found({"sides": sides(*ELL), "surfaces": surfaces}, measured_to="framing") == [
        ("outline_side_unknown", "/room/outline/surfaces/1/side"),
        ("outline_side_unknown", "/room/outline/surfaces/2/side"),
    ]


def test_boards_end_in_coffers():
    outline = {"sides": sides(*ELL)}
    through = {"kind": "boards", "run": "through"}
    assert found(outline, panel=through) == [("through_boards_in_outline", "/panel/run")]


def test_what_is_open_is_assumed_and_listed():
    spec = spec_from({"room": {"height": 108, "outline": {"sides": sides(*ELL)}}})
    resolved = resolve(spec)
    outline = resolved.ceiling.room.outline
    assert outline is not None
    assert [side.corner.degrees for side in outline.sides] == [90, 90, 270, 90, 90, 90]
    assert outline.tolerance == Length.of_inches(1) / 2
    pointers = {each.pointer for each in resolved.assumptions}
    assert {"/room/outline/sides", "/room/outline/tolerance"} <= pointers
    # What the room is called by: how far it reaches either way.
    assert resolved.ceiling.room.length == Length.of_inches(240)
    assert resolved.ceiling.room.width == Length.of_inches(180)


def test_corners_that_cannot_be_read_are_told_and_nothing_else():
    assert found({"points": [{"x": 0, "y": 0}, 3, [None, None]]}) == [
        ("wrong_type", "/room/outline/points/1"),
        ("wrong_type", "/room/outline/points/2"),
    ]
