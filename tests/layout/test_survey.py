"""Surveys: what closes, what is refused and which measurement is named; and the square grid."""

from fractions import Fraction
from typing import Any

import pytest

from lacunar.layout.records import Layout, MarkKind
from lacunar.measure.length import ZERO
from lacunar.model.faults import Fault
from tests.layout.laying_out import Spec, inches, laid_out, refused, run

SIDES = {"W1": 144, "W2": 180, "W3": 144, "W4": 180}
GRID = {"length": run(4, "half"), "width": run(3, "half")}


def surveyed(survey: Spec, **more: Any) -> Spec:
    grid = more.pop("grid", GRID)
    return {"room": {"survey": survey, "height": 108, **more}, "grid": grid}


def only_fault(spec: Spec) -> Fault:
    (fault,) = refused(spec)
    return fault


def wall(layout: Layout, name: str) -> Any:
    assert layout.crooked is not None
    return next(each for each in layout.crooked.walls if each.wall == name)


# A right triangle of 3, 4 and 5 times 36 in twice over: the room is a rectangle.
SQUARE = {"sides": {"W1": 108, "W2": 144, "W3": 108, "W4": 144}, "diagonals": {"rising": 180}}


def test_one_diagonal_leaves_nothing_to_check_and_that_is_said():
    layout = laid_out(surveyed(SQUARE))
    assert layout.crooked is not None
    assert layout.crooked.square
    assert layout.crooked.survey.closing_error is None
    assert "survey_not_checked" in [caution.code for caution in layout.cautions]


def test_diagonals_that_agree_close_to_nothing_and_correct_nothing():
    both = {**SQUARE, "diagonals": {"rising": 180, "falling": 180}}
    layout = laid_out(surveyed(both))
    assert layout.crooked is not None
    report = layout.crooked.survey
    assert report.closing_error is not None
    assert report.closing_error.value == ZERO
    assert report.lengths == ()
    assert [corner.angle.value.degrees for corner in report.corners] == [90] * 4


def test_a_small_closing_error_is_shared_out():
    both = {"sides": SIDES, "diagonals": {"rising": "230 3/4", "falling": "230 1/8"}}
    layout = laid_out(surveyed(both))
    assert layout.crooked is not None
    report = layout.crooked.survey
    assert [each.of for each in report.lengths] == ["W1", "W2", "W3", "W4", "rising", "falling"]
    assert report.closing_error is not None
    most = abs(report.closing_error.value)
    assert all(abs(each.adjusted.value - each.measured) < most for each in report.lengths)


@pytest.mark.parametrize(
    "given",
    [
        # One wall read a foot short; one diagonal three inches long.
        {"sides": {**SIDES, "W1": 132}, "diagonals": {"rising": 230.5, "falling": 230.5}},
        {"sides": SIDES, "diagonals": {"rising": 233.5, "falling": 230.5}},
    ],
)
def test_a_large_closing_error_names_the_least_single_change(given: Spec):
    fault = only_fault(surveyed(given))
    assert fault.code == "survey_does_not_close"
    changes = {
        name.removesuffix("_changes_by"): figure
        for name, figure in fault.figures.items()
        if name.endswith("_changes_by")
    }
    least = min(changes, key=lambda name: abs(changes[name]))  # type: ignore[arg-type]
    assert fault.pointer.endswith(f"/{least}")
    # Changed by what is told, the survey closes.
    part = "sides" if least.startswith("W") else "diagonals"
    mended = {**given, part: {**given[part]}}
    change = changes[least]
    mended[part][least] = f"{float(Fraction(given[part][least]) + change.inches):.9f}"  # type: ignore[union-attr]
    layout = laid_out(surveyed(mended, crooked={"visible_taper": 12}))
    assert layout.crooked is not None
    assert layout.crooked.survey.closing_error is not None
    assert abs(layout.crooked.survey.closing_error.value) < inches("1/1000")


def test_sides_that_make_no_triangle_are_named():
    fault = only_fault(surveyed({"sides": SIDES, "diagonals": {"rising": 330}}))
    assert fault.code == "survey_impossible"
    assert "rising" in fault.figures


def test_angles_that_make_no_full_turn_name_the_one_that_mends_it():
    right = {"W4-W1": 90, "W3-W4": 90, "W2-W3": 90, "W1-W2": 90}
    fault = only_fault(surveyed({"sides": SIDES, "angles": {**right, "W2-W3": 94}}))
    assert (fault.code, fault.pointer) == (
        "survey_does_not_close",
        "/room/survey/angles/W2-W3",
    )


def test_a_side_read_wrong_is_the_one_named():
    right = {"W4-W1": 90, "W3-W4": 90, "W2-W3": 90, "W1-W2": 90}
    fault = only_fault(surveyed({"sides": {**SIDES, "W2": 168}, "angles": right}))
    # Along one way two walls lie, and only a second look can tell which: the first is named.
    assert fault.code == "survey_does_not_close"
    assert fault.pointer in ("/room/survey/sides/W4", "/room/survey/sides/W2")
    assert fault.figures["left_if_W2"] == ZERO
    assert fault.figures["left_if_W1"] == inches("12")


def test_a_check_diagonal_of_points_is_held_against_them():
    points = {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 144, "y": 0},
        "W2-W3": {"x": 144, "y": 108},
        "W1-W2": {"x": 0, "y": 108},
    }
    assert laid_out(surveyed({"points": points, "diagonals": {"falling": 180}})).crooked
    fault = only_fault(surveyed({"points": points, "diagonals": {"falling": 182}}))
    assert fault.pointer == "/room/survey/diagonals/falling"


def test_corners_given_the_wrong_way_round_are_refused():
    points = {
        "W4-W1": {"x": 0, "y": 0},
        "W1-W2": {"x": 144, "y": 0},
        "W2-W3": {"x": 144, "y": 108},
        "W3-W4": {"x": 0, "y": 108},
    }
    assert only_fault(surveyed({"points": points})).code == "survey_folded"


TRAPEZOID = {
    "points": {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 180, "y": 0},
        "W2-W3": {"x": "181.5", "y": 144},
        "W1-W2": {"x": 0, "y": 144},
    }
}


def test_a_wall_out_by_an_inch_and_a_half_has_a_strip_that_tapers_so():
    """An invented wall as in a carpenter's account: truly square beams, the error at the walls."""
    layout = laid_out(surveyed(TRAPEZOID))
    strip = wall(layout, "W3")
    assert strip.at_end.value - strip.at_start.value == inches("1 1/2")
    assert strip.taper.value == inches("1 1/2")
    assert strip.seen
    assert {coffer.length.value for coffer in layout.coffers} == {layout.coffers[0].length.value}
    assert all(not wall(layout, name).taper.value for name in ("W1", "W2", "W4"))


def test_marks_are_from_the_wall_at_their_own_end():
    """W3 as control: W1 then lies off the grid, so that all marks move at one end."""
    layout = laid_out(surveyed(TRAPEZOID, crooked={"control": "W3"}))
    start, end = (marks.marks for marks in layout.marks if marks.run == "length")
    assert layout.crooked is not None
    length = layout.crooked.runs[0]
    moved = length.before_end.value - length.before_start.value
    assert moved != ZERO
    faces = [(one, other) for one, other in zip(start, end, strict=True) if one.kind != "wall"]
    assert all(other.exact.value - one.exact.value == moved for one, other in faces)
    assert (start[-1].exact.value, end[-1].exact.value) == (
        length.span_at_start.value,
        length.span_at_end.value,
    )


def test_a_bow_into_the_room_takes_from_the_clear_line():
    """Its middle lies 1/2 in before both ends, and is what the grid must clear."""
    survey = {**SQUARE, "bows": {"W3": {"in": "1/2"}}}
    layout = laid_out(surveyed(survey))
    assert layout.length.span.at_start.value == inches("143 1/2")
    assert wall(layout, "W3").scribe.value == inches("1/2")
    assert wall(layout, "W3").at_start.value == wall(layout, "W3").at_end.value


def test_a_bow_out_of_the_room_asks_for_a_wider_board():
    survey = {**SQUARE, "bows": {"W3": {"out": "1/2"}}}
    layout = laid_out(surveyed(survey))
    assert layout.length.span.at_start.value == inches("144")
    strip = wall(layout, "W3")
    assert strip.widest.value - strip.at_start.value == inches("1/2")


def test_a_bare_wall_out_of_square_is_refused():
    fault = only_fault(surveyed(TRAPEZOID, grid={"length": {"coffers": 4, "end": "none"}}))
    assert (fault.code, fault.pointer) == ("crooked_wall_bare", "/grid/length/end")


def test_both_ways_are_compared():
    layout = laid_out(surveyed(TRAPEZOID))
    assert layout.crooked is not None
    square, following = layout.crooked.modes
    assert (square.mode, square.chosen, following.chosen) == ("keep_square", True, False)
    assert square.shortest.value == square.longest.value
    # Four coffers share the inch and a half at the far end; theirs, between the half beams of 3 1/2
    # in at both walls, is 137 of 144 parts of that: 3/8 * 137/144 = 0.3568.
    spread = following.longest.value - following.shortest.value
    assert abs(spread - inches("3/8") * Fraction(137, 144)) < inches("1/1000")
    assert following.out_of_square.value.degrees > 0


def test_framing_is_taken_in_along_each_wall():
    survey = {**SQUARE, "sides": {"W1": 108, "W2": 144, "W3": 108, "W4": 144}}
    finish = {"W1": "1/2", "W2": "5/8", "W3": "1/2", "W4": "3/4"}
    layout = laid_out(surveyed(survey, measured_to="framing", wall_finish=finish))
    assert layout.length.span.at_start.value == inches("143")
    assert layout.width.span.at_start.value == inches("106 5/8")
    assert layout.crooked is not None
    assert layout.crooked.square


# W1 leans 2 in out over 150; W4 and W2 lie along the control line.
LEANING = {
    "points": {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 240, "y": 0},
        "W2-W3": {"x": 240, "y": 150},
        "W1-W2": {"x": -2, "y": 150},
    }
}
CASED = {
    "beams": {"crosswise": {"sides": "1x8", "bottom": "1x12"}, "lengthwise": "same"},
    "grid": {
        "length": {"coffers": [2, 2], "start": "half", "end": "half"},
        "width": run(3, "half"),
    },
}


def with_member(**member: object) -> Layout:
    told = {"name": "S1", "on": "length", "center": 120, "width": 4, "drop": 5, **member}
    room = surveyed(LEANING, members=[told], crooked={"control": "W4"})["room"]
    return laid_out({"room": room, **CASED})


def member_centers(layout: Layout) -> list[Fraction]:
    return [
        mark.exact.value.inches
        for marks in layout.marks
        for mark in marks.marks
        if mark.kind is MarkKind.MEMBER_CENTER
    ]


def test_a_member_square_to_the_grid_is_taped_at_both_walls():
    """W1 lies 2 in further out at W2: 120 from it below are 122 above, and nothing wanders."""
    layout = with_member(center_at_end=122)
    assert member_centers(layout) == [120, 122]
    (beam,) = (each for each in layout.beams if each.member)
    assert beam.member is not None
    assert beam.member.skew.value == ZERO
    assert "member_taken_along_wall" not in [caution.code for caution in layout.cautions]


def test_a_member_as_far_from_a_leaning_wall_at_both_ends_wanders_and_is_cautioned():
    layout = with_member()
    assert member_centers(layout) == [120, 120]
    (beam,) = (each for each in layout.beams if each.member)
    assert beam.member is not None
    assert beam.member.skew.value.inches == 2
    assert "member_taken_along_wall" in [caution.code for caution in layout.cautions]


def test_a_feature_is_where_it_was_taped_along_its_own_wall():
    """A door in W2, its center 60 from W1 there: 58 from the datum, its edges 18 to both sides."""
    door = {"name": "Door", "kind": "door", "wall": "W2", "center": 60, "width": 36, "head": 80}
    layout = laid_out(surveyed(LEANING, wall_features=[door], crooked={"control": "W4"}))
    (check,) = layout.wall_features
    assert [check.near.value.inches, check.far.value.inches] == [40, 76]


def following(survey: Spec, **more: Any) -> Spec:
    given = surveyed(survey, **more)
    given["room"]["crooked"] = {"mode": "follow_walls", **more.pop("crooked", {})}
    return given


def test_a_bare_wall_out_of_square_takes_part_in_a_grid_along_the_walls():
    layout = laid_out(following(TRAPEZOID, grid={"length": {"coffers": 4, "end": "none"}}))
    assert layout.crooked is not None
    assert layout.crooked.control is None
    last = layout.crooked.modes[-1].coffers[3]
    assert last.towards_w3.value > last.towards_w1.value


def test_walls_too_short_for_a_grid_along_them_are_refused():
    fault = only_fault(following(TRAPEZOID, grid={"length": {"coffers": 30}}))
    assert fault.pointer.startswith("/grid/length")


def test_excess_that_leaves_a_strip_nothing_is_refused():
    """W3 15 in out: half of that is more than the half beam there has."""
    out = {name: {**at} for name, at in TRAPEZOID["points"].items()}
    out["W2-W3"]["x"] = "195"
    fault = only_fault(surveyed({"points": out}, crooked={"excess": "split"}))
    assert (fault.code, fault.pointer) == ("strip_without_room", "/room/crooked/excess")


def test_excess_at_a_bare_wall_stays_where_it_lies():
    grid = {"length": {"coffers": 4, "start": "none"}, "width": run(3, "half")}
    crooked = {"control": "W1", "excess": "split"}
    layout = laid_out(surveyed(TRAPEZOID, crooked=crooked, grid=grid))
    assert layout.crooked is not None
    assert all(not each.moved.value for each in layout.crooked.runs)
    assert wall(layout, "W3").taper.value == inches("1 1/2")


def test_a_bow_is_scribed_where_the_grid_follows_the_walls():
    survey = {**TRAPEZOID, "bows": {"W3": {"in": "1/2"}}}
    strip = wall(laid_out(following(survey)), "W3")
    assert strip.taper.value == ZERO
    assert strip.scribe.value == inches("1/2")


def test_a_measured_coffer_goes_by_its_measures_and_the_others_by_the_plan():
    crown = {"face": "2 1/2", "spring_from_wall": 45}
    planned = laid_out({**following(TRAPEZOID), "crown": crown})
    assert planned.followed is not None
    sides = {"W1": 40, "W2": "38 1/2", "W3": 40, "W4": 38}
    taken = {
        "grid": planned.grid_id,
        "coffers": [{"coffer": "B2", "sides": sides, "diagonals": {"rising": "55 1/2"}}],
    }
    layout = laid_out({**following(TRAPEZOID), "crown": crown, "measured_openings": taken})
    assert layout.followed is not None
    assert layout.measured_openings is not None
    (opening,) = layout.measured_openings.openings
    assert layout.crooked is not None
    mode = next(each for each in layout.crooked.modes if each.chosen)
    coffer = next(each for each in mode.coffers if each.id == "B2")
    assert [side.planned.value for side in opening.sides] == [side.value for side in coffer.sides]
    assert "B2" not in [each.coffer for each in layout.followed.coffers]
    assert len(layout.followed.coffers) == len(planned.followed.coffers) - 1


def test_items_in_the_middle_of_coffers_that_taper_lie_between_their_corners():
    light = {"kind": "light", "pattern": "coffer_centers", "diameter": 6}
    layout = laid_out(following(TRAPEZOID, ceiling_items=[light]))
    for item, coffer in zip(layout.items.items, layout.coffers, strict=True):
        assert item.coffer == coffer.id
        middle = sum((corner.x.inches for corner in coffer.corners), Fraction(0)) / 4
        assert abs(item.x.value.inches - middle) < Fraction(1, 10**6)


def test_a_feature_beyond_the_clear_line_is_told_what_is_there_first():
    """W1 leans 40 in out: a window 20 from it above lies 20 short of the clear line."""
    out = {name: {**at} for name, at in LEANING["points"].items()}
    out["W1-W2"]["x"] = -40
    window = {"name": "W", "kind": "window", "wall": "W2", "center": 20, "width": 10}
    crooked = {"control": "W4", "visible_taper": 12}
    layout = laid_out(surveyed({"points": out}, crooked=crooked, wall_features=[window]))
    (check,) = layout.wall_features
    assert check.on == "WB-1"
