"""What is decided for the places a spec leaves open. Widths of boards: PS 20, dressed dry."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.assumptions import Resolution, resolve
from lacunar.model.beams import BottomJoint, Depth
from lacunar.model.drawing import Paper
from lacunar.model.grid import CoffersInAll, CoffersPerZone, LargestOpening, WishedOpening
from lacunar.model.panel import PanelKind, Seat
from lacunar.model.room import MeasuredTo, RunName
from lacunar.model.spec import (
    BeamsSpec,
    BoxSpec,
    CeilingSpec,
    FixedBeamSpec,
    MemberSpec,
    PanelSpec,
)
from lacunar.model.stock import actual_stock, read_stock
from lacunar.model.wall_kind import WallKind
from tests.model.specs import (
    MEMBER,
    SOUND,
    inches,
    with_beams,
    with_box,
    with_members,
    with_room,
    with_run,
)

UNDER = BottomJoint.UNDER
MITRED = BottomJoint.MITRED


def millimeters(amount: str | int) -> Length:
    return Length.of_millimeters(Fraction(amount))


def metric(spec: CeilingSpec) -> CeilingSpec:
    return replace(spec, units=Units.MILLIMETER)


def assumed(resolution: Resolution) -> dict[str, Any]:
    """What was assumed, by pointer."""
    return {each.pointer: each.value for each in resolution.assumptions}


def test_a_room_alone_gives_a_ceiling_and_the_list_of_all_that_was_assumed():
    resolution = resolve(SOUND)
    assert assumed(resolution) == {
        "/units": "in",
        "/name": "Coffered ceiling",
        "/mark_to": "1/16",
        "/drawing/sheets": "all",
        "/drawing/legible_at": "full_size",
        "/drawing/story_poles": "table",
        "/drawing/mock_up": "none",
        "/room/measured_to": "finish",
        "/room/headroom": inches(84),
        "/grid/length/wished_opening": inches(48),
        "/grid/length/start": "half",
        "/grid/length/end": "half",
        "/grid/width/wished_opening": inches(48),
        "/grid/width/start": "half",
        "/grid/width/end": "half",
        "/beams/through": "longer",
        "/beams/depth": "equal",
        "/beams/look/sides": "continuous",
        "/beams/look/corners": "butted",
        "/beams/look/bottoms": "butted",
        "/beams/look/splices": "scarfed",
        "/beams/crosswise/profile": "box",
        "/beams/crosswise/bottom_joint": "between",
        "/beams/crosswise/reveal": inches("1/4"),
        "/beams/crosswise/sides": "1x6",
        "/beams/crosswise/bottom": "1x6",
        "/beams/crosswise/allowance": inches(0),
        "/beams/lengthwise": "same",
        "/panel/kind": "existing",
        "/stock/kerf": inches("1/8"),
        "/stock/longest_board": inches(192),
        "/drawing/paper": "tabloid",
        "/drawing/revision": "-",
    }
    assert all(each.reason for each in resolution.assumptions)
    assert resolution.ceiling.beams.lengthwise == resolution.ceiling.beams.crosswise
    assert resolution.ceiling.drawing.owner == ""


def test_a_metric_room_gets_metric_sizes_and_not_converted_ones():
    resolution = resolve(metric(SOUND))
    ceiling = resolution.ceiling
    crosswise = ceiling.beams.crosswise
    assert ceiling.mark_to.text == "1 mm"
    assert ceiling.drawing.paper is Paper.A3
    assert crosswise.sides == actual_stock(
        millimeters(18), millimeters(140), units=Units.MILLIMETER
    )
    assert crosswise.bottom.width == millimeters(120)
    assert crosswise.reveal == millimeters(6)
    assert ceiling.room.headroom == millimeters(2134)
    assert ceiling.grid.length.count == WishedOpening(millimeters(1200))
    assert ceiling.panel.sheet.width == millimeters(1220)
    assert ceiling.stock.kerf == millimeters(3)


def test_headroom_names_where_it_comes_from_and_who_governs():
    (reason,) = (
        each.reason for each in resolve(SOUND).assumptions if each.pointer == "/room/headroom"
    )
    assert "International Residential Code" in reason
    assert "local code governs" in reason


def test_a_finish_is_assumed_only_where_the_tape_did_not_touch_it():
    assert resolve(SOUND).ceiling.room.wall_finish is None
    framing = resolve(with_room(measured_to=MeasuredTo.FRAMING))
    assert framing.ceiling.room.wall_finish == (inches("1/2"),) * 4
    assert assumed(framing)["/room/wall_finish"] == inches("1/2")
    spec = metric(with_room(measured_to=MeasuredTo.FRAMING))
    assert resolve(spec).ceiling.room.wall_finish == (millimeters("12.5"),) * 4


def test_members_and_fixed_beams_get_the_next_free_names():
    spec = replace(
        with_members(MEMBER, replace(MEMBER, name="S1"), MEMBER),
        grid=with_run(
            fixed_beams=(FixedBeamSpec(center=inches(9)), FixedBeamSpec(center=inches(90)))
        ).grid,
    )
    ceiling = resolve(spec).ceiling
    assert [member.name for member in ceiling.room.members] == ["S2", "S1", "S3"]
    assert [beam.name for beam in ceiling.grid.length.fixed_beams] == ["FB-1", "FB-2"]


@pytest.mark.parametrize(
    ("fields", "count"),
    [
        ({"coffers": 5}, CoffersInAll(5)),
        ({"coffers": (5,)}, CoffersPerZone((5,))),
        ({"largest_opening": inches(40)}, LargestOpening(inches(40))),
        ({"wished_opening": inches(40)}, WishedOpening(inches(40))),
        ({"weights": (Fraction(1), Fraction(2))}, CoffersInAll(2)),
        ({"held": inches(30)}, WishedOpening(inches(30))),
        ({}, WishedOpening(inches(48))),
    ],
)
def test_coffers_are_counted_by_what_was_said(fields: dict[str, Any], count: object):
    assert resolve(with_run(**fields)).ceiling.grid.length.count == count


def test_walls_that_were_described_are_left_alone():
    run = resolve(with_run()).ceiling.grid.length
    assert run.start.kind is run.end.kind is WallKind.HALF


@pytest.mark.parametrize(
    ("said", "joint", "reveal", "overhang"),
    [
        ({}, BottomJoint.BETWEEN, "1/4", "0"),
        ({"bottom_joint": UNDER}, UNDER, "0", "0"),
        ({"overhang": inches("3/8")}, UNDER, "0", "3/8"),
        ({"bottom_joint": UNDER, "reveal": inches("3/8")}, UNDER, "3/8", "0"),
        ({"bottom_joint": MITRED}, MITRED, "0", "0"),
        ({"reveal": inches(0)}, BottomJoint.BETWEEN, "0", "0"),
    ],
)
def test_offsets_follow_from_the_joint(
    said: dict[str, Any], joint: BottomJoint, reveal: str, overhang: str
):
    box = resolve(with_box(**said)).ceiling.beams.crosswise
    assert (box.bottom_joint, box.reveal, box.overhang) == (joint, inches(reveal), inches(overhang))


@pytest.mark.parametrize(
    ("drop", "joint", "sides"),
    [
        # The sides go to the lowest edge: 3 1/2 is a 1x4, 3 9/16 wants a 1x6 (5 1/2); a 1x5 would
        # do, but few yards keep it (common practice, no source).
        ("7/2", BottomJoint.BETWEEN, "1x4"),
        ("57/16", BottomJoint.BETWEEN, "1x6"),
        ("8", MITRED, "1x10"),
        # With the bottom under them, 3/4 less: 8 - 3/4 = 7 1/4, a 1x8.
        ("8", UNDER, "1x8"),
        # No common width: 12 is more than a 1x12's 11 1/4, but a 1x14 has 13 1/4.
        ("12", BottomJoint.BETWEEN, "1x14"),
        # No published width at all.
        ("16", BottomJoint.BETWEEN, "3/4 x 16 in"),
    ],
)
def test_a_drop_alone_gets_sides_that_make_it(drop: str, joint: BottomJoint, sides: str):
    box = resolve(with_box(drop=inches(drop), bottom_joint=joint)).ceiling.beams.crosswise
    assert (box.drop, box.sides.name) == (inches(drop), sides)


@pytest.mark.parametrize(
    ("width", "joint", "bottom"),
    [
        ("5", BottomJoint.BETWEEN, "1x4"),  # 5 - 2 * 3/4 = 3 1/2
        ("7", BottomJoint.BETWEEN, "1x6"),  # 7 - 2 * 3/4 = 5 1/2
        ("7", UNDER, "1x8"),  # 7 wants 7 1/4
        ("11/2", MITRED, "1x6"),
    ],
)
def test_a_width_alone_gets_a_bottom_that_makes_it(width: str, joint: BottomJoint, bottom: str):
    box = resolve(with_box(width=inches(width), bottom_joint=joint)).ceiling.beams.crosswise
    assert (box.width, box.bottom.name) == (inches(width), bottom)


def test_backing_decides_the_bottom():
    # A 2x6 is 5 1/2 wide, with 1/8 of play 5 5/8 between the sides: more than a 1x6.
    box = resolve(with_box(backing=read_stock("2x6"))).ceiling.beams.crosswise
    assert (box.width, box.bottom.name) == (None, "1x6")
    spec = with_box(backing=read_stock("2x6"), allowance=inches("1/8"))
    assert resolve(spec).ceiling.beams.crosswise.bottom.name == "1x8"


def test_the_other_board_is_of_the_same_thickness():
    box = resolve(with_box(sides=read_stock("5/4x8"))).ceiling.beams.crosswise
    assert box.bottom.name == "5/4x6"
    box = resolve(with_box(bottom=read_stock("4/4", inches(6)))).ceiling.beams.crosswise
    assert box.sides == read_stock("4/4", inches("11/2"))


def test_a_deep_member_gets_sides_that_hide_it():
    # 5 1/2 deep, 1/4 of air, a bottom of 3/4 set up 1/4: 6 3/4, which a 1x8 (7 1/4) covers.
    resolution = resolve(with_members(replace(MEMBER, drop=inches("11/2"))))
    beams = resolution.ceiling.beams
    assert beams.crosswise.sides.name == beams.lengthwise.sides.name == "1x8"
    # A bottom under the sides needs none of their width: 5 1/2 + 1/4 = 5 3/4, still a 1x8; with
    # no air, a 1x6 does.
    spec = with_members(replace(MEMBER, drop=inches("11/2"), clearance=inches(0)))
    under = replace(spec, beams=with_box(bottom_joint=UNDER).beams)
    assert resolve(under).ceiling.beams.crosswise.sides.name == "1x6"


def test_a_shallow_member_does_not_make_beams_shallower_than_usual():
    box = resolve(with_members(replace(MEMBER, drop=inches(1)))).ceiling.beams.crosswise
    assert box.sides.name == "1x6"


def test_a_member_deeper_than_the_drop_that_is_given_is_hidden_all_the_same():
    # 4 is asked for; the member needs 6 + 1/4 + 3/4 + 1/4 = 7 1/4, which is a 1x8 to the hair.
    spec = replace(with_members(MEMBER), beams=with_box(drop=inches(4)).beams)
    assert resolve(spec).ceiling.beams.crosswise.sides.name == "1x8"


def test_metric_sides_about_a_member_are_rounded_up_to_whole_centimeters():
    # 140 + 6 + 18 + 6 = 170
    member = replace(MEMBER, drop=millimeters(140))
    box = resolve(metric(with_members(member))).ceiling.beams.crosswise
    assert box.sides.width == millimeters(170)
    member = replace(MEMBER, drop=millimeters(141))
    box = resolve(metric(with_members(member))).ceiling.beams.crosswise
    assert box.sides.width == millimeters(180)


def test_a_wide_member_gets_a_wide_bottom_and_all_other_beams_stay_as_they_are():
    # 9 wide and 1/4 of air each side is 9 1/2 between the sides: a 1x12, since a 1x10 has 9 1/4.
    resolution = resolve(with_members(replace(MEMBER, width=inches(9))))
    box = resolution.ceiling.beams.crosswise
    assert (box.bottom.name, box.width) == ("1x12", inches(7))
    assert assumed(resolution)["/beams/crosswise/width"] == inches(7)


def test_a_member_of_usual_width_leaves_the_width_to_the_stock():
    assert resolve(with_members(MEMBER)).ceiling.beams.crosswise.width is None


def test_a_wide_fixed_beam_gets_a_bottom_that_makes_it():
    beam = FixedBeamSpec(center=inches(100), width=inches(10))
    box = resolve(with_run(fixed_beams=(beam,))).ceiling.beams.crosswise
    assert (box.bottom.name, box.width) == ("1x10", inches(7))  # 10 - 2 * 3/4 = 8 1/2


def test_stock_that_was_given_is_never_changed():
    spec = replace(with_members(MEMBER), beams=with_box(sides=read_stock("1x4")).beams)
    assert resolve(spec).ceiling.beams.crosswise.sides.name == "1x4"


def test_the_lengthwise_family_takes_over_what_it_leaves_open_group_by_group():
    spec = with_beams(
        crosswise=BoxSpec(
            sides=read_stock("1x8"),
            bottom=read_stock("1x8"),
            bottom_joint=UNDER,
            overhang=inches("1/4"),
            allowance=inches("1/16"),
        ),
        lengthwise=BoxSpec(bottom=read_stock("1x4")),
    )
    resolution = resolve(spec)
    box = resolution.ceiling.beams.lengthwise
    # The joint comes along; the size is its own, so its sides are not the other family's but made
    # as deep: 7 1/4 + 3/4 under, so again a side of 7 1/4.
    assert (box.bottom_joint, box.overhang, box.allowance) == (UNDER, inches("1/4"), inches("1/16"))
    assert (box.bottom.name, box.sides.name) == ("1x4", "1x8")
    assert assumed(resolution)["/beams/lengthwise/overhang"] == inches("1/4")


def test_stepped_beams_need_not_reach_the_other_family_nor_its_members():
    beams = BeamsSpec(
        crosswise=BoxSpec(sides=read_stock("1x12")),
        lengthwise=BoxSpec(bottom=read_stock("1x4")),
        depth=Depth.STEPPED,
    )
    member = replace(MEMBER, drop=inches(9))
    stepped = resolve(replace(with_members(member), beams=beams)).ceiling.beams
    assert stepped.lengthwise.sides.name == "1x6"
    equal = replace(beams, depth=Depth.EQUAL)
    beams_made = resolve(replace(with_members(member), beams=equal)).ceiling.beams
    assert beams_made.lengthwise.sides.name == "1x12"


def test_a_crosswise_family_left_open_reaches_the_lengthwise_one():
    spec = with_beams(lengthwise=BoxSpec(sides=read_stock("1x10")))
    assert resolve(spec).ceiling.beams.crosswise.sides.name == "1x10"


def test_an_empty_name_says_none():
    resolution = resolve(with_members(replace(MEMBER, name="")))
    assert resolution.ceiling.room.members[0].name == "S1"
    assert assumed(resolution)["/room/members/0/name"] == "S1"


def test_same_as_the_other_assumes_nothing_more():
    spec = with_beams(crosswise=BoxSpec(), lengthwise=BoxSpec())
    assert "/beams/lengthwise" not in assumed(resolve(spec))


def test_a_described_sheet_is_a_panel():
    resolution = resolve(replace(SOUND, panel=PanelSpec(seat=Seat.ABOVE_BACKING)))
    assert resolution.ceiling.panel.kind is PanelKind.SHEET_GOODS
    assert {"/panel/kind", "/panel/sheet/width", "/panel/thickness"} <= assumed(resolution).keys()


def test_without_a_sheet_nothing_is_assumed_about_one():
    assert not {"/panel/gap", "/panel/thickness"} & assumed(resolve(SOUND)).keys()


@pytest.mark.parametrize(
    "spec",
    [
        with_room(length=None),
        with_members(MemberSpec(on=None, center=inches(9), width=inches(2), drop=inches(2))),
        with_members(MemberSpec(on=RunName.WIDTH, center=None, width=inches(2), drop=inches(2))),
        with_run(fixed_beams=(FixedBeamSpec(center=None),)),
    ],
)
def test_what_cannot_be_assumed_is_not_invented(spec: CeilingSpec):
    with pytest.raises(ValueError, match="has not passed the rules"):
        resolve(spec)
