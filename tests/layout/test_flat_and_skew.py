"""Flat beams, and casings about members that run skew, sag, are clad or end short of a wall."""

from itertools import product

import pytest

from lacunar.layout.records import MarkKind
from lacunar.model.faults import SpecRefused
from tests.layout.laying_out import decided, inches, laid_out

ROOM = {"length": 240, "width": 180, "height": 108}


def beams(layout, kind):
    return next(profile for profile in layout.profiles if profile.kind == kind)


def flat_ceiling(**more):
    return {"room": ROOM, "beams": {"crosswise": {"profile": "flat", "bottom": "1x6", **more}}}


# A 1x6 is 3/4 by 5 1/2, a 1x8 7 1/4 wide (American Softwood Lumber Standard, PS 20). Centered on
# the 1x8 it leaves (7 1/4 - 5 1/2)/2 = 7/8 on each side; at a wall half: 3 5/8, the face board
# 3 5/8 - 7/8 = 2 3/4.
def test_two_boards_as_sold_make_a_flat_beam():
    layout = laid_out(flat_ceiling(upper_board="1x8"))
    flat, half = beams(layout, "flat"), beams(layout, "wall_half")
    assert (flat.finished_width.value, flat.drop.value) == (inches("7 1/4"), inches("1 1/2"))
    assert flat.reveal == inches("7/8")
    assert flat.inside_width is None
    assert flat.inside_depth is None
    assert {part.name: part.width.value for part in half.parts} == {
        "bottom": inches("2 3/4"),
        "upper_board": inches("3 5/8"),
    }
    assert not [m for run in layout.marks for m in run.marks if m.kind is MarkKind.BACKING]
    assert layout.backing.forms.in_all.value == 0


@pytest.mark.parametrize(
    ("width", "reveal", "overhang", "start"),
    [
        (width, *edges, start)
        for width, edges, start in product(
            ("5", "5 1/4"), (("1/4", "0"), ("0", "3/8"), ("0", "0")), ("half", "full")
        )
    ],
)
def test_boards_and_edges_sum_to_the_flat_profile(width, reveal, overhang, start):
    spec = flat_ceiling(upper_board="1x6", width=width, reveal=reveal, overhang=overhang)
    spec["grid"] = {"length": {"start": start}}
    for profile in laid_out(spec).profiles:
        parts = {part.name: part for part in profile.parts}
        whole = profile.finished_width.value
        assert parts["bottom"].width.value + inches(reveal) * profile.sides == whole
        assert parts["upper_board"].width.value + inches(overhang) * profile.sides == whole
        assert sum((p.thickness.value for p in profile.parts), inches("0")) == profile.drop.value


# Inside: 3 1/2 + 2 (1/2 + 1/4 + 3/4) + 1 = 7 1/2; with sides of 3/4: 9. It stands about 121 1/2.
# Deep: 6 + 1/2 + 1/4 + bottom 3/4 + reveal 1/4 = 7 3/4. The clad member goes from 118 3/4 at its
# start to 124 1/4 at its end; its faces, unclad: 119 1/4 and 120 1/4 next the datum.
def test_a_casing_goes_round_a_member_that_is_skew_clad_and_sags():
    member = {"on": "length", "center": 121, "center_at_end": 122, "width": "3 1/2", "drop": 5}
    member |= {"drop_at_end": 6, "cladding": "1/2", "clearance": "1/4", "cleat": "3/4"}
    spec = {"room": {**ROOM, "members": [{**member, "starts_at": 36}]}}
    spec["room"]["joists"] = {"parallel_to": "width", "first": 8}
    layout = laid_out({**spec, "beams": {"crosswise": {"sides": "1x10", "reveal": "1/4"}}})
    beam = next(beam for beam in layout.beams if beam.member)
    assert beam.width.value == inches("9")
    assert beam.center.at_start.value == inches("121 1/2")
    assert (beam.member.near.at_start.value, beam.member.near.at_end.value) == (
        inches("119 1/4"),
        inches("120 1/4"),
    )
    assert beam.member.shift_limit.value == inches("0")
    # The cleats go as far as the member; the empty box before it has backing in its middle.
    lines = {each.side: each for each in layout.backing.lines if each.beam == beam.id}
    assert lines["near"].pieces[0].start.value == inches("36")
    assert lines["middle"].pieces[-1].end.value == inches("36")
    marks = {run.end: run.marks for run in layout.marks if run.run == "length"}
    ends = {end: {m.kind for m in marks[end] if m.of == beam.id} for end in marks}
    assert MarkKind.BACKING in ends["start"]
    assert MarkKind.MEMBER in ends["end"]


def member_ceiling(**more):
    member = {"on": "length", "center": 121, "width": "3 1/2", "drop": 5, **more}
    return {"room": {**ROOM, "members": [member]}, "beams": {"crosswise": {"sides": "1x10"}}}


# Measured to framing with 1/2 in of plaster on every wall: 36 from the framing is 35 1/2 from the
# datum, 150 is 149 1/2; a member from wall to wall has the finished span, 180 - 1.
def test_where_a_member_starts_and_ends_is_measured_as_the_room_was():
    ceiling = member_ceiling(starts_at=36, ends_at=150)
    ceiling["room"] |= {"measured_to": "framing", "wall_finish": "1/2"}
    member = next(beam.member for beam in laid_out(ceiling).beams if beam.member)
    assert (member.start.value, member.end.value) == (inches("35 1/2"), inches("149 1/2"))
    whole = member_ceiling()
    whole["room"] |= {"measured_to": "framing", "wall_finish": "1/2"}
    member = next(beam.member for beam in laid_out(whole).beams if beam.member)
    assert (member.start.value, member.end.value) == (inches("0"), inches("179"))


@pytest.mark.parametrize(
    "extent", [{"ends_at": "1/4"}, {"starts_at": "1/4"}, {"ends_at": 180}, {"starts_at": "179 1/2"}]
)
@pytest.mark.parametrize("finish", [{"wall_finish": "1/2"}, {}], ids=["said", "usual"])
def test_a_member_within_the_finish_of_a_wall_is_refused(extent, finish):
    ceiling = member_ceiling(**extent)
    ceiling["room"] |= {"measured_to": "framing", **finish}
    with pytest.raises(SpecRefused) as refusal:
        decided(ceiling)
    assert [fault.code for fault in refusal.value.faults] == ["member_extent_outside_room"]


@pytest.mark.parametrize(("cleat", "told"), [("0", True), ("3/4", False)])
def test_sides_without_a_line_to_be_fixed_to_are_cautioned(cleat, told):
    codes = [each.code for each in laid_out(member_ceiling(cleat=cleat)).cautions]
    assert ("casing_sides_without_cleats" in codes) is told


@pytest.mark.parametrize(
    ("through", "told"), [("crosswise", True), ("lengthwise", False), ("longer", False)]
)
def test_flat_beams_that_were_to_run_through_boxes_are_cautioned(through, told):
    ceiling = flat_ceiling()
    ceiling["beams"] |= {"lengthwise": {"profile": "box", "sides": "1x6"}, "through": through}
    layout = laid_out(ceiling)
    assert ("flat_beams_cannot_run_through" in [each.code for each in layout.cautions]) is told
    assert all(beam.through is (beam.on == "width") for beam in layout.beams)
