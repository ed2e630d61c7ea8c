"""Each rule finds what it is for, where it is, and nothing where nothing is said."""

from dataclasses import replace
from fractions import Fraction

import pytest

from lacunar.model import limits
from lacunar.model.beams import BottomJoint
from lacunar.model.grid import Parity, WallCondition
from lacunar.model.panel import SheetSize
from lacunar.model.room import RunName
from lacunar.model.rule_case import Rule, RuleCase
from lacunar.model.rules import RULES, check
from lacunar.model.spec import (
    BoxSpec,
    CeilingSpec,
    FixedBeamSpec,
    GridSpec,
    MemberSpec,
    PanelSpec,
    RoomSpec,
    RunSpec,
)
from lacunar.model.spec_lengths import lengths_in
from lacunar.model.stock import read_stock
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
FIXED = FixedBeamSpec(center=inches(60))
SOFFIT = WallCondition(WallKind.SOFFIT)


def found(spec: CeilingSpec) -> set[tuple[str, str]]:
    """Code and pointer of every fault."""
    return {(fault.code, fault.pointer) for fault in check(spec)}


@pytest.mark.parametrize(
    "spec",
    [
        SOUND,
        # Too little headroom is a caution: the ceiling can be built.
        with_room(height=inches(80)),
        with_room(headroom=inches(110)),
        with_members(MEMBER, replace(MEMBER, on=RunName.WIDTH, name="S2")),
        with_box(bottom_joint=MITRED, sides=read_stock("1x6"), bottom=read_stock("1x8")),
        with_box(bottom_joint=UNDER, overhang=inches("1/4")),
        with_box(bottom_joint=UNDER, reveal=inches("1/4")),
        with_box(overhang=inches("1/4")),  # an overhang alone says where the bottom is
        with_box(bottom_joint=MITRED, reveal=inches(0), overhang=inches(0)),
        with_run(coffers=5, parity=Parity.ODD),
        with_run(coffers=(2, 3), fixed_beams=(FIXED,)),
        with_run(coffers=4, weights=(Fraction(1),) * 4),
        with_run(weights=(Fraction(1), Fraction(2))),
        with_run(coffers=3, held=inches(30)),
        with_run(held=inches(30), weights=(Fraction(2),) * 3),
        with_run(start=WallCondition(WallKind.SOFFIT, inches(12), WallKind.HALF)),
        replace(SOUND, panel=PanelSpec(sheet=SheetSize(inches(48), inches(48)))),
        with_run(coffers=limits.COFFERS_PER_RUN),
    ],
)
def test_sound_specs_pass(spec: CeilingSpec):
    assert found(spec) == set()


@pytest.mark.parametrize(
    ("spec", "code", "pointer"),
    [
        (with_room(length=None), "name_missing", "/room/length"),
        (with_room(length=inches("1199/100")), "length_out_of_bounds", "/room/length"),
        (with_room(width=inches("360001/100")), "length_out_of_bounds", "/room/width"),
        (with_room(height=inches(47)), "length_out_of_bounds", "/room/height"),
        (with_members(replace(MEMBER, on=None)), "name_missing", "/room/members/0/on"),
        (with_members(replace(MEMBER, drop=None)), "name_missing", "/room/members/0/drop"),
        (
            with_members(replace(MEMBER, center=inches(1))),
            "member_outside_room",
            "/room/members/0/center",
        ),
        (
            # inside along the length of 243, outside along the width of 178
            with_members(replace(MEMBER, center=inches(177), on=RunName.WIDTH)),
            "member_outside_room",
            "/room/members/0/center",
        ),
        (
            with_members(replace(MEMBER, drop=inches(109))),
            "member_reaches_floor",
            "/room/members/0/drop",
        ),
        (
            # 3 1/2 wide and 1/4 of air each side is 4: no room for the sides themselves
            with_members(replace(MEMBER, clearance=inches("1/4"), cased_width=inches(4))),
            "casing_too_narrow",
            "/room/members/0/cased_width",
        ),
        (
            with_members(replace(MEMBER, name="S1"), replace(MEMBER, name="S1")),
            "label_doubled",
            "/room/members/1/name",
        ),
        (
            replace(
                with_run(fixed_beams=(replace(FIXED, name="S1"),)),
                room=with_members(replace(MEMBER, name="S1")).room,
            ),
            "label_doubled",
            "/grid/length/fixed_beams/0/name",
        ),
        (
            with_box(bottom_joint=MITRED, reveal=inches("1/4")),
            "reveal_on_mitred_bottom",
            "/beams/crosswise/reveal",
        ),
        (
            with_box(bottom_joint=BottomJoint.BETWEEN, overhang=inches("1/4")),
            "overhang_without_under",
            "/beams/crosswise/overhang",
        ),
        (
            with_box(bottom_joint=UNDER, overhang=inches("1/4"), reveal=inches("1/4")),
            "reveal_and_overhang",
            "/beams/crosswise/overhang",
        ),
        (
            with_box(bottom_joint=MITRED, sides=read_stock("1x6"), bottom=read_stock("5/4x6")),
            "mitred_thickness_differs",
            "/beams/crosswise/bottom",
        ),
        (
            # the lengthwise family takes its stock from the crosswise one, and its joint from none
            with_beams(
                crosswise=BoxSpec(sides=read_stock("1x6"), bottom=read_stock("5/4x6")),
                lengthwise=BoxSpec(bottom_joint=MITRED),
            ),
            "mitred_thickness_differs",
            "/beams/lengthwise/bottom",
        ),
        (
            with_box(width=inches(7), backing=read_stock("2x6")),
            "width_given_twice",
            "/beams/crosswise/width",
        ),
        (with_box(drop=inches(109)), "beam_reaches_floor", "/beams/crosswise/drop"),
        (with_box(drop=inches("1/4")), "length_out_of_bounds", "/beams/crosswise/drop"),
        (
            replace(SOUND, panel=PanelSpec(sheet=SheetSize(inches(96), inches(48)))),
            "sheet_edges_swapped",
            "/panel/sheet",
        ),
        (
            with_run(coffers=3, wished_opening=inches(40)),
            "counted_more_than_once",
            "/grid/length/wished_opening",
        ),
        (with_run(coffers=0), "count_below_one", "/grid/length/coffers"),
        (with_run(coffers=(0,)), "count_below_one", "/grid/length/coffers/0"),
        (with_run(coffers=61), "too_many_coffers", "/grid/length/coffers"),
        (
            # 31 by 30 is 930, more than 900 in all
            replace(SOUND, grid=GridSpec(RunSpec(coffers=31), RunSpec(coffers=30))),
            "too_many_coffers",
            "/grid",
        ),
        (with_run(coffers=(2, 2)), "zone_counts_differ", "/grid/length/coffers"),
        (
            with_run(coffers=1, fixed_beams=(FIXED,)),
            "fewer_coffers_than_zones",
            "/grid/length/coffers",
        ),
        (
            with_run(weights=(Fraction(1),), fixed_beams=(FIXED,)),
            "fewer_coffers_than_zones",
            "/grid/length/weights",
        ),
        (with_run(coffers=4, parity=Parity.ODD), "parity_contradicts_count", "/grid/length/parity"),
        (
            with_run(weights=(Fraction(1),) * 3, parity=Parity.EVEN),
            "parity_contradicts_count",
            "/grid/length/parity",
        ),
        (
            with_run(weights=(Fraction(1), Fraction(0))),
            "weight_not_a_share",
            "/grid/length/weights/1",
        ),
        (with_run(weights=(Fraction(1001),)), "weight_not_a_share", "/grid/length/weights/0"),
        (with_run(weights=()), "name_missing", "/grid/length/weights/0"),
        (
            with_run(coffers=3, weights=(Fraction(1),) * 4),
            "weights_differ_from_count",
            "/grid/length/weights",
        ),
        (
            with_run(largest_opening=inches(40), weights=(Fraction(1),)),
            "weights_with_opening",
            "/grid/length/weights",
        ),
        (with_run(coffers=2, held=inches(40)), "held_cannot_be", "/grid/length/held"),
        (
            with_run(coffers=3, held=inches(40), weights=(Fraction(1), Fraction(2), Fraction(1))),
            "held_cannot_be",
            "/grid/length/held",
        ),
        (
            with_run(coffers=6, held=inches(40), fixed_beams=(FIXED,)),
            "held_cannot_be",
            "/grid/length/held",
        ),
        (with_run(start=SOFFIT), "soffit_without_width", "/grid/length/start"),
        (
            with_run(fixed_beams=(FixedBeamSpec(center=None),)),
            "name_missing",
            "/grid/length/fixed_beams/0/center",
        ),
        (
            with_run(fixed_beams=(FixedBeamSpec(center=inches(243)),)),
            "fixed_beam_outside_room",
            "/grid/length/fixed_beams/0/center",
        ),
    ],
)
def test_each_fault_is_found_at_its_place(spec: CeilingSpec, code: str, pointer: str):
    assert found(spec) == {(code, pointer)}


def test_a_spec_that_says_nothing_lacks_only_what_cannot_be_assumed():
    nothing = CeilingSpec(room=RoomSpec())
    assert found(nothing) == {
        ("name_missing", "/room/length"),
        ("name_missing", "/room/width"),
        ("height_missing", "/room/height"),
    }


def test_faults_of_different_rules_are_told_together():
    spec = replace(
        with_room(headroom=inches(6), members=(replace(MEMBER, width=None),)),
        grid=with_run(coffers=0, start=SOFFIT).grid,
    )
    assert len(found(spec)) == 4


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.__name__)
def test_a_rule_is_silent_about_what_could_not_be_read(rule: Rule):
    broken = replace(
        with_room(headroom=inches(6), members=(MemberSpec(None, None, None, None),)),
        beams=with_box(bottom_joint=MITRED, reveal=inches(1), overhang=inches(1)).beams,
        grid=with_run(coffers=0, weights=(), held=inches(3), start=SOFFIT).grid,
    )
    assert list(rule(RuleCase(broken, frozenset({""})))) == []
    assert list(rule(RuleCase(broken, frozenset({"/room", "/beams", "/grid"})))) == []


def test_only_what_lies_at_above_or_below_the_unreadable_is_passed_over():
    members = (MemberSpec(None, None, None, None), replace(MEMBER, drop=None))
    faults = check(with_members(*members), frozenset({"/room/members/0"}))
    assert [fault.pointer for fault in faults] == ["/room/members/1/drop"]
    # /room/members/1 is not below /room/members/10
    faults = check(with_members(*members[1:]), frozenset({"/room/members/00"}))
    assert [fault.pointer for fault in faults] == ["/room/members/0/drop"]


def test_zones_are_not_counted_while_a_member_has_no_run():
    spec = replace(with_run(coffers=(2, 2)), room=with_members(replace(MEMBER, on=None)).room)
    assert found(spec) == {("name_missing", "/room/members/0/on")}


def test_every_length_of_a_spec_is_bounded_from_both_sides():
    spec = replace(
        with_members(replace(MEMBER, clearance=inches(1), cased_width=inches(9))),
        beams=with_box(
            sides=read_stock("1x6"),
            bottom=read_stock("1x6"),
            backing=read_stock("2x4"),
            reveal=inches(1),
            overhang=inches(1),
            allowance=inches(1),
            width=inches(7),
            drop=inches(6),
        ).beams,
    )
    bound = list(lengths_in(spec))
    assert len({each.pointer for each in bound}) == len(bound)
    for each in bound:
        assert each.bounds.least < each.bounds.most
        assert each.bounds.reason
