"""Boards over a ceiling; beams 5 wide, sides 3/4, boards with a cover of 5 and no tongue."""

from typing import Any

import pytest

from lacunar.model.boards import CenteredOn
from lacunar.model.room import RunName
from tests.layout.laying_out import Spec, box, decided, inches, laid_out, refused, room, run

BOARDS: Spec = {"kind": "boards", "cover": 5, "tongue": 0, "gap": "1/2", "parallel_to": "length"}
MEMBER = {"on": "length", "center": 50, "width": 2, "drop": 2, "clearance": "1/4"}


def spec(walls: object = "half", panel: Spec | None = None, **more: object) -> Spec:
    """100 long in two coffers, 60 wide in one."""
    return {
        "room": room(100, 60, **more),
        "beams": {"crosswise": box(allowance="1/8")},
        "grid": {"length": run(2, walls), "width": run(1, walls)},
        "panel": {**BOARDS, **(panel or {})},
    }


def boards(plain: Spec) -> Any:
    found = laid_out(plain).boards
    assert found is not None
    return found


def codes(plain: Spec) -> set[str]:
    return {caution.code for caution in laid_out(plain).cautions}


def test_courses_of_a_coffer_by_hand():
    # Half beams: openings (100 - 10)/2 = 45 and 60 - 5 = 55. Less a gap of 1/2 at each edge: boards
    # are 44 long and fill 54. ceil(54/5) = 11 courses, edges (54 - 9 * 5)/2 = 4 1/2.
    found = boards(spec())
    (field,) = found.fields
    assert field.coffers == ("A1", "A2")
    assert field.length.value == inches("44")
    assert field.courses.across.value == inches("54")
    assert (field.courses.courses.value, field.courses.centered_on) == (11, CenteredOn.BOARD)
    assert field.courses.edge.value == inches("4 1/2")
    assert field.boards.value == found.boards.value == 22
    assert found.lineal.value == inches("968")  # 22 * 44
    # 2 * 44 * 54 / 5
    assert found.coverage.value == inches("950 2/5")


def test_boards_the_other_way():
    # 54 long, across 44: ceil(44/5) = 9, edges (44 - 35)/2 = 4 1/2
    (field,) = boards(spec(panel={"parallel_to": "width"})).fields
    assert field.length.value == inches("54")
    assert (field.courses.courses.value, field.courses.edge.value) == (9, inches("4 1/2"))


def test_a_joint_asked_for_takes_one_course_more():
    # 12 courses: (54 - 10 * 5)/2 = 2, under half of 5
    plain = spec(panel={"centered_on": "joint"})
    (field,) = boards(plain).fields
    assert (field.courses.courses.value, field.courses.edge.value) == (12, inches("2"))
    assert "narrow_edge_boards" in codes(plain)
    assert "narrow_edge_boards" not in codes(spec())


def test_seats_decide_how_far_boards_reach():
    # between_backing: past each face by the side; at a wall by the play of 1/8 too, at a beam by
    # half of it. Width 55 + 2 * (3/4 + 1/8) - 1 = 55 3/4.
    (field,) = boards(spec(panel={"seat": "between_backing"})).fields
    assert field.courses.across.value == inches("55 3/4")


def test_coffers_of_one_size_are_one_field():
    plain = spec("none")
    plain["grid"]["length"] = run(3, "none", weights=[1, 2, 1])
    found = boards(plain)
    assert [(field.coffers, field.fields.value) for field in found.fields] == [
        (("A1", "A3"), 2),
        (("A2",), 1),
    ]


@pytest.mark.parametrize(
    ("walls", "expected"),
    [
        ("none", ("99", "59")),  # the room less a gap at each edge
        ("half", ("99", "59")),  # boards go on above wall beams
        # at soffits of 10 they end: 100 - 20 - 1, 60 - 20 - 1
        ({"soffit": 10, "then": "half"}, ("79", "39")),
    ],
)
def test_through_boards_reach_from_wall_to_wall(walls: object, expected: tuple[str, str]):
    (field,) = boards(spec(walls, {"run": "through"})).fields
    assert field.coffers == ("A1", "A2")
    assert (field.length.value, field.courses.across.value) == tuple(map(inches, expected))


def test_through_boards_are_parted_at_members():
    # The member's faces are 49 and 51: two fields 48 long, or 48 across.
    along = boards(spec("none", {"run": "through"}, members=[MEMBER]))
    (field,) = along.fields
    assert (field.fields.value, field.length.value) == (2, inches("48"))
    across = boards(spec("none", {"run": "through", "parallel_to": "width"}, members=[MEMBER]))
    assert across.fields[0].courses.across.value == inches("48")


def test_through_boards_lower_the_beams_by_their_thickness():
    lower = laid_out(spec(panel={"run": "through", "thickness": "3/4"})).profiles[0].drop.value
    higher = laid_out(spec(panel={"seat": "between_sides"})).profiles[0].drop.value
    assert lower - higher == inches("3/4")


def test_gaps_that_leave_no_boards():
    plain = spec("none")
    plain["grid"]["length"] = run([1, 1], fixed_beams=[{"center": 4}])  # a coffer of 1 1/2
    plain["panel"]["gap"] = "3/4"
    (fault,) = refused(plain)
    assert (fault.code, fault.pointer) == ("gap_too_large", "/panel/gap")


def test_a_named_board_has_its_published_cover_which_another_overrides():
    named = spec()
    named["panel"] = {"kind": "boards", "board": "1x6"}
    found = boards(named)
    assert (found.cover, found.tongue) == (inches("5 1/8"), inches("1/4"))
    assert found.overall_width.value == inches("5 3/8")
    # a dealer's face of 5 leaves 3/8 of the same board
    named["panel"]["cover"] = 5
    assert (boards(named).cover, boards(named).tongue) == (inches("5"), inches("3/8"))


def test_boards_longer_than_stock_are_cautioned():
    plain = spec("none", {"run": "through"})
    assert "boards_longer_than_stock" not in codes(plain)
    plain["room"] = room(16 * 12 + 2, 60)  # 16'-1" after the gaps
    assert "boards_longer_than_stock" in codes(plain)


MOVEMENT = {"species": "red_oak", "now": 10, "driest": 6, "dampest": 12, "trim_cover": "3/4"}


def moving(**changes: object) -> Spec:
    return spec(panel={"movement": {**MOVEMENT, **changes}})


def test_movement_of_nailed_boards_is_one_boards():
    found = boards(moving()).movement
    # 5 * .00369 * 4 and 5 * .00369 * 2; trim 3/4 less gap 1/2
    assert float(found.shrink.value.inches) == pytest.approx(0.0738)
    assert float(found.swell.value.inches) == pytest.approx(0.0369)
    assert found.lap.value == inches("1/4")
    assert not codes(moving()) & {"shrinkage_past_trim", "swelling_past_gaps"}


def test_movement_of_floating_boards_is_the_fields():
    floating = moving(fastening="floating")
    found = boards(floating).movement
    assert found.moving_width.value == inches("54")
    # 54 * .00369 * 4 = .797, more than the lap of 1/4; 54 * .00369 * 2 = .399, less than 1 in gaps
    assert float(found.shrink.value.inches) == pytest.approx(0.79704)
    assert "shrinkage_past_trim" in codes(floating)
    assert "swelling_past_gaps" not in codes(floating)
    floating["panel"]["gap"] = "1/16"
    assert "swelling_past_gaps" in codes(floating)


def test_quartersawn_boards_move_less():
    flat, quarter = (boards(moving(cut=cut)).movement for cut in ("flatsawn", "quartersawn"))
    assert quarter.shrink.value / flat.shrink.value == pytest.approx(158 / 369)


def test_boards_that_are_drier_than_they_will_ever_be_do_not_shrink():
    found = boards(moving(now=6, driest=8)).movement
    assert found.shrink.value == inches("0")
    assert found.swell.value > inches("0")


@pytest.mark.parametrize(
    "changes",
    [
        {"now": "14.01"},
        {"driest": "5.9"},
        {"dampest": {"humidity": 80, "temperature": "70 F"}},  # 16 percent
    ],
)
def test_outside_of_the_published_moistures_no_movement_is_given(changes: Spec):
    plain = moving(**changes)
    found = boards(plain).movement
    assert (found.shrink, found.swell) == (None, None)
    assert "movement_not_worked_out" in codes(plain)
    assert "movement_not_worked_out" not in codes(moving(now=14))


def test_air_decides_moisture():
    air = {"humidity": 30, "temperature": "70 F"}
    found = boards(moving(driest=air)).movement
    assert float(found.driest.percent.value) == pytest.approx(6.17, abs=0.01)
    assert found.driest.percent.approximate
    assert found.shrink.approximate


def test_grain_decides_how_sheets_are_turned():
    # Openings 45 x 55: along the width run a sheet of 48 x 96 needs no seam, along the length run
    # ceil(45/96) + ceil(55/48) - 2 = 1, at half of 55 - 1/8.
    sheet: Spec = {"kind": "sheet_goods", "gap": "1/16"}
    plain = spec()
    plain["panel"] = sheet
    (panel,) = laid_out(plain).panels
    assert (panel.long_edge, panel.seams.value) == (RunName.WIDTH, 0)
    plain["panel"] = {**sheet, "grain": "length"}
    (panel,) = laid_out(plain).panels
    assert (panel.long_edge, panel.seams.value) == (RunName.LENGTH, 1)
    assert [seam.value for seam in panel.seams_along_width] == [inches("27 7/16")]
    plain["panel"]["seams"] = "sheet_edge"
    (panel,) = laid_out(plain).panels
    assert [seam.value for seam in panel.seams_along_width] == [inches("48")]


def test_sides_from_sheets_tell_what_a_sheet_gives():
    plain = spec()
    plain["panel"] = {"kind": "existing"}
    plain["beams"]["crosswise"]["sides"] = {"nominal": "3/4 sheet", "width": 6}
    found = {(rip.part, rip.strips.value) for rip in laid_out(plain).sheet_rips}
    assert found == {("side", 7)}
    assert "strip_lost_to_kerf" in codes(plain)
    plain["beams"]["crosswise"]["sides"]["width"] = "5 7/8"
    (rip,) = laid_out(plain).sheet_rips
    assert rip.strips.value == 8
    assert "strip_lost_to_kerf" not in codes(plain)


def test_boards_of_lumber_are_no_rips():
    assert laid_out(spec()).sheet_rips == ()


def test_boards_are_weighed():
    # Two coffers boarded 44 by 54: 33 sq ft; 3/4 thick at gravity .42: 3/48 * 62.4 * .42 lb each.
    plain = {**spec(panel={"thickness": "3/4"}), "fixing": {"panel_gravity": 0.42}}
    weighed = laid_out(plain).backing.weights
    assert weighed is not None
    assert float(weighed.panels_pounds.value) == pytest.approx(33 / 16 * 62.4 * 0.42)


def test_fasteners_through_boards_above_the_backing_are_longer():
    fixing = {"fastener": "wood_screw"}
    lengths = []
    for thickness in ("1/4", "1 1/4"):
        panel = {"run": "through", "thickness": thickness}
        fixed = decided({**spec(panel=panel), "fixing": fixing}).fixing
        assert fixed is not None
        lengths.append(fixed.length)
    assert lengths[1] > lengths[0]  # by one or more of the lengths they are sold in
