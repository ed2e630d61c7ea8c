"""Columns that stand free in a room: what they cut, what ends at them, what goes round them."""

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from lacunar.layout.outline_records import RoomColumn
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from tests.layout.laying_out import Spec, laid_out
from tests.layout.test_outlines import ELL, HALF, inch, outlined, refused, room

EXAMPLES = Path(__file__).parents[2] / "examples" / "ceilings"


def with_columns(*columns: dict[str, Any], **more: Any) -> Spec:
    """20 ft by 15 ft, four by three coffers of 53 between beams of 7, and columns."""
    return {
        "room": {"length": 240, "width": 180, "height": 108, "columns": list(columns)},
        "grid": {"length": {"coffers": 4, **HALF}, "width": {"coffers": 3, **HALF}},
        **more,
    }


def square(x: Any, y: Any, size: Any, **more: Any) -> dict[str, Any]:
    return {"x": x, "y": y, "length": size, "width": size, **more}


def columns_of(layout: Layout) -> dict[str, RoomColumn]:
    return {column.name: column for column in outlined(layout).columns}


def codes(layout: Layout) -> set[str]:
    return {caution.code for caution in layout.cautions}


def test_a_column_in_a_coffer_leaves_a_hole_that_crown_turns_round():
    """By hand: coffers are 53 square between faces at 63 1/2, 116 1/2; the column is 10 by 12.

    Crown is mitred round its four outside corners: at the column it is 10 and 12 long, and the edge
    out on the ceiling longer by the projection at both ends.
    """
    column = {"x": 90, "y": 90, "length": 10, "width": 12}
    layout = laid_out(with_columns(column, crown={"face": "2 1/2", "fit_total": 0}))
    assert columns_of(layout)["COL-1"].cuts == ("B2",)
    (coffer,) = outlined(layout).partial_coffers
    assert coffer.area.value == Fraction(53 * 53 - 120, 144)
    assert [side.length.value for side in coffer.sides] == [inch(53)] * 4
    (hole,) = coffer.holes
    assert {side.against for side in hole.sides} == {"COL-1"}
    assert {side.corner.value.degrees for side in hole.sides} == {270}
    section = layout.mouldings.crown
    assert section is not None
    for side in hole.sides:
        assert side.long_point is not None
        assert side.short_point is not None
        assert side.long_point.value == side.length.value
        longer = side.short_point.value - side.length.value
        assert abs(longer - section.projection.value * 2) <= inch("1/1000")
    assert sorted(side.length.value for side in hole.sides) == [inch(10)] * 2 + [inch(12)] * 2
    assert len(layout.coffers) == 11


def test_a_wider_column_stops_a_beam_on_both_sides():
    """XB-2 stands from 116 1/2 to 123 1/2; the column from 115 to 125, and from 85 to 95 up."""
    layout = laid_out(with_columns(square(120, 90, 10)))
    column = columns_of(layout)["COL-1"]
    assert (column.stops, column.stands_in, column.cuts) == (("XB-2",), (), ("B2", "B3"))
    ends = [
        (span.start.value, span.end.value, span.start_at, span.end_at)
        for span in outlined(layout).spans
        if span.beam == "XB-2"
    ]
    assert ends == [
        (inch("7/2"), inch(85), "W4", "COL-1"),
        (inch(95), inch("353/2"), "COL-1", "W2"),
    ]
    # Below: from W4's beam through LB-1 (60 up) to the column: 88 less 3 1/2 and a beam of 7.
    beam = next(beam for beam in layout.beams if beam.id == "XB-2")
    pieces = [piece.length.value for piece in beam.pieces]
    assert sum(pieces, Length.of_inches(0)) <= inch(180 - 7 - 10)
    corners = [
        side.corner.value.degrees
        for coffer in outlined(layout).partial_coffers
        for side in coffer.sides
    ]
    assert sorted(corners) == [90] * 12 + [270] * 4


def test_a_narrower_column_stands_in_the_beam_that_goes_on_about_it():
    layout = laid_out(with_columns(square(120, 90, 6)))
    column = columns_of(layout)["COL-1"]
    assert (column.stands_in, column.stops, column.cuts) == (("XB-2",), (), ())
    assert outlined(layout).partial_coffers == ()
    assert len(layout.coffers) == 12
    assert "column_in_beam" in codes(layout)


def test_a_column_at_a_crossing_within_one_beam_does_not_stop_the_other():
    """4 along the length and 12 along the width: within XB-2's 7, and wider than LB-1."""
    layout = laid_out(with_columns({"x": 120, "y": 60, "length": 4, "width": 12}))
    column = columns_of(layout)["COL-1"]
    assert (column.stands_in, column.stops) == (("XB-2",), ())


def test_a_beam_that_passes_beside_a_column_in_part_ends_at_it():
    """The column's right face is at 121, so 2 1/2 of XB-2's 7 are left beside it."""
    layout = laid_out(with_columns(square(116, 90, 10)))
    column = columns_of(layout)["COL-1"]
    assert column.leaves_beside == ("XB-2",)
    assert "column_beside_beam" in codes(layout)
    # The column takes 5 1/2 by 10 of B2; what is left beside it, 2 1/2 by 10, belongs to B3.
    before, after = outlined(layout).partial_coffers
    assert before.area.value == Fraction(53 * 53 - 55, 144)
    assert after.area.value == Fraction(53 * 53 + 25, 144)
    # Beside the column lie its face and both ends of the beam.
    assert [side.against for side in after.sides].count("XB-2") == 4


def test_columns_in_a_room_to_framing_are_placed_from_it():
    spec = with_columns(square(90, 90, 10))
    spec["room"] |= {"measured_to": "framing", "wall_finish": "1/2"}
    column = columns_of(laid_out(spec))["COL-1"]
    assert (column.left.value, column.right.value) == (inch("169/2"), inch("189/2"))


def test_a_turned_column_has_its_corners():
    points = [{"x": x, "y": y} for x, y in [(90, 80), (80, 90), (90, 100), (100, 90)]]
    layout = laid_out(with_columns({"name": "Post", "points": points}))
    (coffer,) = outlined(layout).partial_coffers
    assert coffer.area.value == Fraction(53 * 53 - 200, 144)
    assert {side.corner.value.degrees for side in coffer.holes[0].sides} == {270}


def test_boards_end_at_a_column_or_go_past_it():
    """Boards of 5 along the length, each cut in two where the column is as wide as the course."""
    panel = {"kind": "boards", "cover": 5, "parallel_to": "length", "gap": 0}
    layout = laid_out(with_columns({"x": 90, "y": 90, "length": 10, "width": 25}, panel=panel))
    (coffer,) = outlined(layout).partial_coffers
    lengths = {course.length.value: course.boards for course in coffer.courses}
    # 53 across: 11 courses, the middle one about 90. From 77 1/2 to 102 1/2 the column stops them.
    assert lengths == {inch(53): 6, inch("43/2"): 10}


def test_the_area_of_the_room_is_less_its_columns():
    layout = laid_out(with_columns(square(90, 90, 10), square(120, 90, 6)))
    assert outlined(layout).area.value == Fraction(240 * 180 - 136, 144)


def test_a_plain_room_with_columns_is_not_asked_for_diagonals():
    assert "outline_not_checked" not in codes(laid_out(with_columns(square(90, 90, 10))))


def test_crown_that_would_meet_beside_a_column_is_cautioned():
    """The column's lower face is 2 1/2 above LB-1's: less than twice the projection."""
    spec = with_columns({"x": 90, "y": 72, "length": 10, "width": 12}, crown={"face": "3 1/4"})
    layout = laid_out(spec)
    assert outlined(layout).partial_coffers[0].crown_meets
    assert "crown_meets_in_cut_coffer" in codes(layout)


@pytest.mark.parametrize(
    ("columns", "code", "pointer"),
    [
        ([square(3, 90, 10)], "column_at_wall", "/room/columns/0"),
        ([square(9, 90, 12)], "column_at_wall", "/room/columns/0"),  # in W1's half beam
        ([square(90, 90, 10), square(99, 90, 8)], "columns_meet", "/room/columns/1"),
        ([{"x": 90, "y": 90, "length": 10}], "name_missing", "/room/columns/0/width"),
        (
            [{"x": 9, "points": [{"x": x, "y": y} for x, y in [(80, 80), (90, 80), (90, 90)]]}],
            "column_unclear",
            "/room/columns/0",
        ),
        (
            [{"points": [{"x": x, "y": y} for x, y in [(80, 80), (90, 80), (99, 80)]]}],
            "column_not_convex",
            "/room/columns/0/points",
        ),
        (
            [square(90, 90, 10, name="A"), square(50, 90, 10, name="A")],
            "label_doubled",
            "/room/columns/1/name",
        ),
    ],
)
def test_columns_that_cannot_be_are_refused(columns: list[dict[str, Any]], code: str, pointer: str):
    found = refused(with_columns(*columns))
    assert (found[0].code, found[0].pointer) == (code, pointer)
    assert found[0].remedy


def test_columns_stand_in_no_surveyed_room():
    spec = with_columns(square(90, 90, 10))
    survey = {"sides": {"W1": 180, "W2": 240, "W3": 180, "W4": 240}, "diagonals": {"rising": 300}}
    del spec["room"]["length"], spec["room"]["width"]
    spec["room"]["survey"] = survey
    assert [fault.code for fault in refused(spec)] == ["columns_in_survey"]


def test_a_column_stands_in_an_ell():
    layout = laid_out(
        {
            **room(ELL, (5, 4)),
            "room": {"height": 108, "outline": ELL, "columns": [square(120, 60, 12)]},
        }
    )
    assert columns_of(layout)["COL-1"].cuts


def test_no_side_of_a_cut_coffer_is_a_hair():
    """The bay of the example breakfast room has corners that were snapped one by one."""
    text = (EXAMPLES / "breakfast_room.json").read_text("utf-8")
    room_ = outlined(laid_out(json.loads(text)))
    assert all(
        side.against and side.length.value > inch("1/4")
        for coffer in room_.partial_coffers
        for side in coffer.all_sides
    )
    assert not any(coffer.crown_meets for coffer in room_.partial_coffers)
