"""A surveyed room as drawn: what tells of a survey, and what stays the rectangle's drawing."""

import json
from typing import Any

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import Prepared, prepare

SIDES = {"W1": 180, "W2": 240, "W3": 180, "W4": 240}


def prepared(room: dict[str, Any], **sections: Any) -> Prepared:
    grid = {"length": {"coffers": 3}, "width": {"coffers": 2}}
    spec = {"grid": grid, "room": {"height": 108, **room}, **sections}
    return prepare(json.dumps(spec).encode())


def surveyed(**diagonals: object) -> dict[str, Any]:
    return {"survey": {"sides": SIDES, "diagonals": diagonals}}


def sheets(ceiling: Prepared, digest: str) -> list[str]:
    typeface = load_typeface()
    drawn = compose(ceiling.layout, digest, typeface).sheets
    return [paint_svg(sheet, typeface, fonts=None) for sheet in drawn]


def test_a_square_survey_is_drawn_as_the_rectangle_to_the_last_byte():
    """180, 240 and 300 are 3, 4 and 5 times 60; the digest alone tells that it was surveyed."""
    plain = prepared({"length": 240, "width": 180})
    square = prepared(surveyed(rising=300, falling=300))
    assert sheets(square, plain.digest) == sheets(plain, plain.digest)


def test_sheets_of_a_room_out_of_square_tell_it():
    ceiling = prepared(surveyed(rising=301), drawing={"paper": "ansi_d"})
    assert check_drawings(ceiling) == ()
    svg = next(each for each in sheets(ceiling, ceiling.digest) if ' id="Z-101"' in each)
    for word in ("STRIPS AT WALLS", "WALLS AS SURVEYED", "MARKS FROM W4 AT W3", "Control line: W1"):
        assert word in svg


def test_ends_that_are_alike_are_dimensioned_once():
    """A control line along W4, whose opposite wall lies along it: only the length run differs."""
    points = {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 240, "y": 0},
        "W2-W3": {"x": 242, "y": 180},
        "W1-W2": {"x": 0, "y": 180},
    }
    room = {"survey": {"points": points}, "crooked": {"control": "W4"}}
    ceiling = prepared(room, drawing={"paper": "ansi_d"})
    assert check_drawings(ceiling) == ()
    svg = next(each for each in sheets(ceiling, ceiling.digest) if ' id="Z-101"' in each)
    assert 'id="string-length-overall-at-start"' in svg
    assert 'id="string-width-overall-at-end"' not in svg


def test_a_member_is_marked_at_both_walls_though_the_room_is_square():
    """A member 4 wide that wanders an inch: centers 100 and 101, marked where it meets each."""
    member = {"name": "S1", "on": "length", "center": 100, "center_at_end": 101, "width": 4}
    beams = {"crosswise": {"sides": "1x8", "bottom": "1x10"}, "lengthwise": "same"}
    ceiling = prepared(
        {"length": 240, "width": 180, "members": [{**member, "drop": 5}]},
        beams=beams,
        drawing={"paper": "ansi_d"},
    )
    assert check_drawings(ceiling) == ()
    svg = next(each for each in sheets(ceiling, ceiling.digest) if ' id="Z-101"' in each)
    told = [part.split('"', 1)[0] for part in svg.split('data-kind="member_center"')[1:]]
    assert len(told) == 2
    assert 'data-value="100 in"' in svg
    assert 'data-value="101 in"' in svg
