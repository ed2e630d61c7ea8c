"""Beam profiles: every board and dimension, at the walls, in casings and under panels."""

import pytest

from lacunar.layout.records import BeamProfile, Layout
from tests.layout.laying_out import Spec, box, inches, laid_out, refused, room, run

THREE_BY_THREE = {"length": run(3, "half"), "width": run(3, "full")}


def spec(**beam: object) -> Spec:
    """Half beams at the ends of the length run, full ones at the ends of the width run."""
    return {
        "room": room(200, 160, 144),
        "beams": {"crosswise": box(**beam)},
        "grid": THREE_BY_THREE,
    }


def of_kind(layout: Layout, kind: str) -> BeamProfile:
    (found,) = [profile for profile in layout.profiles if profile.kind == kind]
    return found


def sizes(profile: BeamProfile) -> dict[str, str]:
    """The widths of a profile's boards, as text."""
    return {part.name: str(part.width.value.inches) for part in profile.parts}


def test_wall_variants_of_a_bottom_between_the_sides():
    layout = laid_out(spec(allowance="1/8"))
    # 5 wide: inside 5 - 1 1/2 = 3 1/2, backing 3 1/2 - 1/8
    assert sizes(of_kind(layout, "box")) == {"side": "11/2", "bottom": "7/2", "backing": "27/8"}
    # half: 2 1/2 - 3/4 = 1 3/4, backing 1 3/4 - 1/8
    assert sizes(of_kind(layout, "wall_half")) == {
        "side": "11/2",
        "bottom": "7/4",
        "backing": "13/8",
    }
    # full: 5 - 3/4 = 4 1/4, backing 4 1/4 - 1/8; a 1x4 gives 3 1/2, so the next board, a 1x5
    full = of_kind(layout, "wall_full")
    assert sizes(full) == {"side": "11/2", "bottom": "17/4", "backing": "33/8"}
    assert full.parts[1].stock is not None
    assert full.parts[1].stock.name == "1x5"


def test_wall_variants_have_one_side_and_less_girth():
    layout = laid_out(spec())
    # 5 + 2 * 5 1/2 = 16; 2 1/2 + 5 1/2 = 8; 5 + 5 1/2 = 10 1/2
    girths = {profile.kind: profile.girth.value for profile in layout.profiles}
    assert girths == {"box": inches("16"), "wall_half": inches("8"), "wall_full": inches("10 1/2")}
    assert {profile.kind: profile.sides for profile in layout.profiles} == {
        "box": 2,
        "wall_half": 1,
        "wall_full": 1,
    }


@pytest.mark.parametrize(
    ("offset", "width", "overall", "half", "half_overall"),
    [
        # a 1x8 of 7 1/4 set out 1/2 on both sides: 6 1/4; half 3 1/8, its bottom 3 5/8
        ({"overhang": "1/2"}, "6 1/4", "7 1/4", "3 1/8", "3 5/8"),
        # set in 1/4 on both sides: 7 3/4; half 3 7/8, its bottom 3 5/8
        ({"reveal": "1/4"}, "7 3/4", "7 3/4", "3 7/8", "3 7/8"),
    ],
)
def test_bottom_under_the_sides(
    offset: dict[str, str], width: str, overall: str, half: str, half_overall: str
):
    plain = {"bottom": "1x8", "bottom_joint": "under", "reveal": 0}
    layout = laid_out(spec(**{**plain, **offset}))
    beam, wall = of_kind(layout, "box"), of_kind(layout, "wall_half")
    assert beam.finished_width.value == inches(width)
    assert beam.overall_width.value == inches(overall)
    assert sizes(beam)["bottom"] == "29/4"
    assert wall.finished_width.value == inches(half)
    assert wall.overall_width.value == inches(half_overall)
    assert sizes(wall)["bottom"] == "29/8"
    # side 5 1/2, bottom 3/4: 6 1/4 deep, 5 1/2 inside
    assert beam.drop.value == inches("6 1/4")
    assert beam.inside_depth.value == inches("5 1/2")


def test_mitred_bottom():
    layout = laid_out(spec(bottom="1x8", bottom_joint="mitred"))
    beam = of_kind(layout, "box")
    # as wide as the bottom 7 1/4, as deep as the side 5 1/2; inside 5 3/4 by 4 3/4
    assert beam.finished_width.value == beam.overall_width.value == inches("7 1/4")
    assert beam.drop.value == inches("5 1/2")
    assert beam.inside_width.value == inches("5 3/4")
    assert beam.inside_depth.value == inches("4 3/4")
    assert sizes(of_kind(layout, "wall_full"))["bottom"] == "29/4"


def test_a_width_asked_for_is_ripped_from_the_bottom():
    beam = of_kind(laid_out(spec(bottom="1x6", width=6)), "box")
    assert sizes(beam)["bottom"] == "9/2"
    assert beam.parts[1].stock is not None
    assert beam.parts[1].stock.name == "1x6"


@pytest.mark.parametrize(
    ("seat", "drop", "exposed", "depth", "girth"),
    [
        # sides 5 1/2, panel 1/2, bottom 3/4, beam 5 wide
        ("between_sides", "5 1/2", "5", "4 3/4", "15"),
        ("between_backing", "6", "5 1/2", "5 1/4", "16"),
        ("above_backing", "6", "5 1/2", "4 3/4", "16"),
    ],
)
def test_where_a_panel_sits_decides_what_it_takes_of_the_beam(
    seat: str, drop: str, exposed: str, depth: str, girth: str
):
    panel = {"kind": "sheet_goods", "seat": seat, "thickness": "1/2", "gap": 0}
    beam = of_kind(laid_out({**spec(), "panel": panel}), "box")
    assert beam.drop.value == inches(drop)
    assert sizes(beam)["side"] == "11/2"
    assert beam.exposed_side.value == inches(exposed)
    assert beam.inside_depth.value == inches(depth)
    assert beam.girth.value == inches(girth)


def test_a_drop_asked_for_counts_from_the_ceiling_whatever_the_panel_takes():
    panel = {"kind": "sheet_goods", "seat": "above_backing", "thickness": "1/2"}
    beam = of_kind(laid_out({**spec(drop=5), "panel": panel}), "box")
    assert beam.drop.value == inches("5")
    assert sizes(beam)["side"] == "9/2"


def test_backing_laid_flat_keeps_its_thickness_and_gives_the_width():
    beam = of_kind(laid_out(spec(backing="2x4", bottom="1x6")), "box")
    backing = beam.parts[2]
    assert backing.stock is not None
    assert (backing.name, backing.stock.name) == ("backing", "2x4")
    assert backing.thickness.value == inches("1 1/2")
    assert backing.width.value == inches("3 1/2")


def cased(member: dict[str, object], **beams: object) -> Spec:
    """A member across the length run, in a room of 200 x 100."""
    plain = {"on": "length", "center": 100, "width": 3.5, "drop": 5, "clearance": "1/4", "cleat": 0}
    return {
        "room": room(200, 100, 144, members=[{**plain, **member}]),
        "beams": beams,
        "grid": {"length": run([1, 2]), "width": run(1)},
    }


def test_a_casing_is_as_wide_as_its_family_or_as_its_member_needs():
    family = box("1x8", bottom="1x6")  # 7 wide
    narrow = of_kind(laid_out(cased({}, crosswise=family)), "cased")
    assert narrow.finished_width.value == inches("7")
    # 6 + 2 * 1/4 + 2 * 3/4 = 8; its bottom of 6 1/2 from the next board, a 1x7
    wide = of_kind(laid_out(cased({"width": 6}, crosswise=family)), "cased")
    assert wide.finished_width.value == inches("8")
    assert sizes(wide) == {"side": "29/4", "bottom": "13/2"}
    assert wide.parts[1].stock is not None
    assert wide.parts[1].stock.name == "1x7"


def test_equal_depth_takes_the_deepest_and_stepped_lets_each_be():
    # member 6 + clearance 1/4 + bottom 3/4 + reveal 1/4 = 7 1/4, just a 1x8; asked of the family: 6
    family = box("1x8", bottom="1x6", drop=6, reveal="1/4")
    equal = laid_out(cased({"drop": 6}, crosswise=family, depth="equal"))
    assert {profile.drop.value for profile in equal.profiles} == {inches("7 1/4")}
    stepped = laid_out(cased({"drop": 6}, crosswise=family, depth="stepped"))
    assert {profile.kind: profile.drop.value for profile in stepped.profiles} == {
        "box": inches("6"),
        "cased": inches("7 1/4"),
    }


def test_a_casing_is_never_shallower_than_its_family():
    family = box("1x8", bottom="1x6")
    stepped = laid_out(cased({"drop": 2}, crosswise=family, depth="stepped"))
    assert {profile.drop.value for profile in stepped.profiles} == {inches("7 1/4")}


def test_of_two_families_without_a_drop_the_wider_sides_are_ripped():
    beams = {"crosswise": box("1x8"), "lengthwise": box("1x6"), "depth": "equal"}
    grid = {"length": run(2), "width": run(2)}
    layout = laid_out({"room": room(200, 160, 144), "beams": beams, "grid": grid})
    assert {profile.drop.value for profile in layout.profiles} == {inches("5 1/2")}
    assert "sides_ripped_to_equal_depth" in {caution.code for caution in layout.cautions}
    stepped = laid_out(
        {"room": room(200, 160, 144), "beams": {**beams, "depth": "stepped"}, "grid": grid}
    )
    assert [p.drop.value for p in stepped.profiles] == [inches("7 1/4"), inches("5 1/2")]
    assert "sides_ripped_to_equal_depth" not in {caution.code for caution in stepped.cautions}


def test_a_family_without_beams_has_no_say_in_the_depth():
    beams = {"crosswise": box("1x8"), "lengthwise": box("1x4"), "depth": "equal"}
    grid = {"length": run(2), "width": run(1)}
    layout = laid_out({"room": room(200, 100, 144), "beams": beams, "grid": grid})
    assert {profile.drop.value for profile in layout.profiles} == {inches("7 1/4")}
    assert "sides_ripped_to_equal_depth" not in {caution.code for caution in layout.cautions}


def test_equal_beams_share_a_profile_and_every_beam_has_one():
    layout = laid_out(spec())
    assert [profile.id for profile in layout.profiles] == ["P1", "P2", "P3"]
    users = [user for profile in layout.profiles for user in profile.used_by]
    beams = [*layout.beams, *layout.wall_beams]
    assert sorted(users) == sorted(beam.id for beam in beams)
    for beam in beams:
        assert beam.id in layout.profile(beam.profile).used_by


def test_a_soffit_is_a_plain_block_as_deep_as_the_beams():
    grid = {"length": run(2, {"soffit": 12, "then": "half"}), "width": run(1)}
    layout = laid_out({"room": room(200, 100), "beams": {"crosswise": box()}, "grid": grid})
    soffit = of_kind(layout, "soffit")
    assert soffit.finished_width.value == inches("12")
    assert soffit.drop.value == inches("5 1/2")
    assert soffit.parts == ()


@pytest.mark.parametrize(
    ("beam", "code", "place"),
    [
        # between 3/4 sides: 1 1/2 is no inside
        ({"width": "1 1/2"}, "beam_too_narrow", "width"),
        # 5 1/2 asked of a 1x4 bottom that gives 5
        ({"width": "5 1/2"}, "stock_too_narrow", "bottom"),
        ({"drop": 6}, "stock_too_narrow", "sides"),
        ({"drop": "3/4"}, "beam_too_shallow", "drop"),
        ({"drop": 5, "reveal": "4 1/4"}, "beam_too_shallow", "drop"),
        # inside a half beam there is 2 1/2 - 3/4 = 1 3/4
        ({"allowance": "1 3/4"}, "no_room_for_backing", "allowance"),
        # 2 - 3/4 - 0 = 1 1/4 inside, a 2x4 is 1 1/2 thick
        ({"backing": "2x4", "drop": 2}, "backing_too_thick", "backing"),
        (
            {"bottom": "1x8", "bottom_joint": "under", "reveal": "3/4"},
            "reveal_too_large",
            "reveal",
        ),
    ],
)
def test_boxes_that_cannot_be_built(beam: dict[str, object], code: str, place: str):
    faults = refused(spec(**beam))
    assert (code, f"/beams/crosswise/{place}") in {(fault.code, fault.pointer) for fault in faults}


def test_a_panel_between_the_sides_as_thick_as_they_are_deep_hides_the_beam():
    panel = {"kind": "sheet_goods", "seat": "between_sides", "thickness": 2}
    (fault,) = refused({**spec(drop=2), "panel": panel})
    assert (fault.code, fault.pointer) == ("beam_too_shallow", "/beams/crosswise/drop")


def test_boards_that_would_do_are_named():
    (fault,) = refused(spec(drop=6))
    # 6 is more than a 1x6 (5 1/2): a 1x7 (6 1/2), 1x8 (7 1/4) or 1x9 (8 1/4)
    assert "1x7 or 1x8 or 1x9" in fault.remedy
    assert fault.figures == {"needed": inches("6"), "stock_width": inches("5 1/2"), "stock": "1x6"}
