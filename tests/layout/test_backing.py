"""Joists, lines of backing and what is said of them, worked by hand."""

import pytest

from lacunar.layout.backing_records import BackingLine, JoistRelation
from lacunar.layout.records import Caution, Layout
from lacunar.model.fixing import BetweenJoists
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run

JOISTS = {"parallel_to": "width", "spacing": 16, "first": 8}


def framed(joists: Spec | None = None, **more: object) -> Spec:
    """192 x 144 under joists along the width; beams 5 wide, half beams at the walls."""
    return {
        "room": room(192, 144, joists={**JOISTS, **(joists or {})}),
        "beams": {"crosswise": box()},
        "grid": {"length": run(4, "half"), "width": run(3, "half")},
        **more,
    }


def line(layout: Layout, beam: str, side: str = "middle") -> BackingLine:
    return next(each for each in layout.backing.lines if (each.beam, each.side) == (beam, side))


def cautions(spec: Spec) -> dict[str, Caution]:
    return {caution.code: caution for caution in laid_out(spec).cautions}


# 8, 24, ... 184: (192 - 8)/16 = 11.5, so twelve joists; the next would be at 200.
def test_joists_from_the_first_to_the_last_in_the_room():
    joists = laid_out(framed()).backing.joists
    assert joists is not None
    assert joists.count.value == len(joists.joists) == 12
    assert [joist.center.value.inches for joist in joists.joists[::11]] == [8, 184]
    assert (joists.joists[0].id, joists.joists[-1].id) == ("J1", "J12")


# The first joist's center is from the finished wall, whatever else was measured to.
def test_a_joist_on_each_wall_counts():
    joists = laid_out(framed({"first": 0})).backing.joists
    assert joists is not None
    assert [joists.joists[0].center.value.inches, joists.joists[-1].center.value.inches] == [0, 192]


# Lengthwise beams run across joists along the width. LB-1 runs through from face to face of the
# half beams, 2 1/2 to 189 1/2, if lengthwise run through: all twelve joists, two screws each.
def test_a_beam_across_the_joists_is_fixed_to_each():
    spec = framed()
    spec["beams"]["through"] = "lengthwise"
    across = line(laid_out(spec), "LB-1")
    (piece,) = across.pieces
    assert across.relation is JoistRelation.ACROSS
    assert [place.value.inches for place in piece.places] == list(range(8, 192, 16))
    assert piece.fasteners is not None
    assert piece.fasteners.value == 24


# Cut between crosswise beams, LB-1's first piece lies from 2 1/2 to 45 1/2: joists at 8, 24, 40.
def test_a_piece_between_beams_has_its_own_crossings():
    spec = framed()
    spec["beams"]["through"] = "crosswise"
    pieces = line(laid_out(spec), "LB-1").pieces
    assert len(pieces) == 4
    assert [place.value.inches for place in pieces[0].places] == [8, 24, 40]


# XB-1 is centered at 48, between joists at 40 and 56; the wall beam at W1 has backing of 1 3/4 (2
# 1/2 less a side), its middle 7/8 from the wall: between the wall and the joist at 8, whose near
# face is at 7 1/4.
def test_lines_along_the_joists_lie_in_bays():
    layout = laid_out(framed())
    beam, wall = line(layout, "XB-1"), line(layout, "WB-1")
    assert beam.bay is not None
    assert wall.bay is not None
    assert (beam.bay.near, beam.bay.far, beam.bay.block.value) == ("J3", "J4", inches("14 1/2"))
    assert wall.position.value == inches("7/8")
    assert (wall.bay.near, wall.bay.far, wall.bay.block.value) == (None, "J1", inches("7 1/4"))
    # WB-3 mirrors it: 192 - 184 - 3/4 from the last joist's far face to the wall.
    end = line(layout, "WB-3").bay
    assert end is not None
    assert (end.near, end.far, end.block.value) == ("J12", None, inches("7 1/4"))


# A member 3 1/2 wide at 96 in a casing 7 wide, sides 3/4: inside from 93 1/4 to 98 3/4, the member
# from 94 1/4 to 97 3/4. Cleats of 3/4 on the sides leave it 1/4 of air: 93 5/8 and 98 3/8.
def test_a_casing_hangs_from_cleats_beside_its_member():
    spec = framed()
    spec["room"]["members"] = [
        {
            "on": "length",
            "center": 96,
            "width": 3.5,
            "drop": 3,
            "cased_width": 7,
            "clearance": "1/4",
        }
    ]
    spec["beams"] = {"crosswise": box("1x6", "1x6")}
    spec["grid"]["length"]["coffers"] = [2, 2]
    layout = laid_out(spec)
    positions = [line(layout, "XB-2", side).position.value for side in ("near", "far")]
    assert positions == [inches("93 5/8"), inches("98 3/8")]


def test_blocks_are_counted_where_blocking_is_let_in():
    layout = laid_out(framed({"ceiling": "open"}))
    beam = line(layout, "XB-1")
    assert beam.carried_by is BetweenJoists.BLOCKING
    # Crosswise beams are 139 long against 187: they are cut into three, between lengthwise ones, of
    # 43: 48 less 5. ceil(43/24) + 1 = 3 each.
    assert beam.blocks is not None
    assert (len(beam.pieces), beam.blocks.value) == (3, 9)


@pytest.mark.parametrize(
    ("joists", "fixing", "way"),
    [
        ({"ceiling": "closed"}, {}, BetweenJoists.SKIN),
        ({"ceiling": "open"}, {}, BetweenJoists.BLOCKING),
        ({}, {"between_joists": "anchors"}, BetweenJoists.ANCHORS),
        ({}, {"between_joists": "blocking"}, BetweenJoists.BLOCKING),
    ],
)
def test_what_carries_a_beam_between_joists_is_said(joists: Spec, fixing: Spec, way: BetweenJoists):
    spec = framed(joists, fixing=fixing)
    assert line(laid_out(spec), "XB-1").carried_by is way
    caution = cautions(spec)["beams_between_joists"]
    assert caution.figures["carried_by"] == str(way)
    for alternative in ("blocking", "anchors" if way is not BetweenJoists.BLOCKING else "open"):
        assert alternative in caution.text


# 4 in of screw less 1/8 of shims, 1 1/2 of 2x4 and 5/8 of finish: 1 3/4.
def test_penetration_is_what_is_left_of_the_fastener():
    spec = framed({"existing_finish": "5/8"}, fixing={"length": 4, "shim": "1/8"})
    spec["beams"] = {"crosswise": box(backing="2x4")}
    assert {hold.penetration.value for hold in laid_out(spec).backing.holds} == {inches("1 3/4")}


# The same with a panel of 1/4 above the backing.
def test_a_panel_above_the_backing_takes_from_the_penetration():
    spec = framed({"existing_finish": "5/8"}, fixing={"length": 4, "shim": "1/8"})
    spec["beams"] = {"crosswise": box(backing="2x4")}
    spec["panel"] = {"kind": "sheet_goods", "seat": "above_backing", "thickness": "1/4"}
    assert {hold.penetration.value for hold in laid_out(spec).backing.holds} == {inches("1 1/2")}


def test_a_short_fastener_is_told_and_never_reaches_less_than_nothing():
    spec = framed(fixing={"length": 1})
    (hold, *_) = laid_out(spec).backing.holds
    assert (hold.penetration.value, hold.withdrawal_pounds.value) == (inches("0"), 0)
    assert cautions(spec)["fastener_not_deep_enough"].figures["penetration"] == inches("0")


def test_weights_without_joists_are_weights_alone():
    spec = framed(fixing={})
    del spec["room"]["joists"]
    backing = laid_out(spec).backing
    assert backing.weights is not None
    assert (backing.joists, backing.holds) == (None, ())
    assert {each.relation for each in backing.lines} == {JoistRelation.UNKNOWN}
    assert all(piece.fasteners is None for each in backing.lines for piece in each.pieces)


def test_forms_and_heights_are_told_of_every_ceiling_and_nothing_else():
    layout = laid_out({"room": room(192, 144)})
    assert (layout.backing.lines, layout.backing.weights) == ((), None)
    assert layout.backing.forms.ells.value == 4
    assert [level.kind for level in layout.heights.levels][:1] == ["ceiling"]


# Floor to joists: 120 and 1/2 of finish; ceiling 120; panel 1/4 below; member 3 below; beams 5 1/2.
def test_heights_are_a_stack_from_the_joists_down():
    spec = framed(panel={"kind": "sheet_goods", "thickness": "1/4"})
    spec["room"]["members"] = [{"name": "S1", "on": "length", "center": 96, "width": 2, "drop": 3}]
    spec["beams"] = {"crosswise": box("1x6", "1x6")}
    spec["grid"]["length"]["coffers"] = [2, 2]
    heights = laid_out(spec).heights
    told = [(level.kind, level.height.value) for level in heights.levels]
    assert told[:4] == [
        ("joists", inches("120 1/2")),
        ("ceiling", inches("120")),
        ("panel", inches("119 3/4")),
        ("member", inches("117")),
    ]
    assert {height for kind, height in told if kind == "beam"} == {inches("114 1/2")}
    assert heights.worst_height.value == inches("114 1/2")
    assert (heights.most_drop.value, heights.spare.value) == (inches("36"), inches("30 1/2"))


def test_trusses_are_for_their_designer():
    found = cautions(framed({"kind": "truss"}))
    assert "designer" in found["trusses_are_engineered"].text
    assert "trusses_are_engineered" not in cautions(framed())


def test_a_first_joist_far_from_the_wall_is_doubted():
    assert "first_joist_far_in" in cautions(framed({"first": 20}))
    assert "first_joist_far_in" not in cautions(framed({"first": 16}))


# Joists of 6 ft: a piece of 43 in crosses one or none.
def test_pieces_under_one_joist_are_told():
    spec = framed({"spacing": 72, "first": 8})
    spec["beams"]["through"] = "crosswise"
    caution = cautions(spec)["piece_under_one_joist"]
    assert "LB-1" in str(caution.figures["beams"])


# A No. 10 screw keeps 2 1/2 diameters of .190 from an edge: .475. With joists from 7 5/8 the one at
# 48 - 3/8 - 16 k ... first 15 3/8: joists at 47 3/8; XB-1 at 48 is 5/8 beyond, 1/8 from the edge.
def test_a_line_near_a_joists_edge_is_told():
    spec = framed({"first": "15 3/8"})
    caution = cautions(spec)["fastener_near_joist_edge"]
    assert caution.figures["edge_distance"] == inches("0.475")
    assert line(laid_out(spec), "XB-1").bearing is not None


def test_strength_is_shown_and_left_to_others():
    caution = cautions(framed())["fixing_to_be_judged"]
    assert "engineer or the code official decides" in " ".join(caution.text.split())
    assert {"pounds_per_foot", "withdrawal_pounds_each"} <= caution.figures.keys()
    assert not any(word in caution.text.lower() for word in ("safe", "enough", "passes", "fails"))


def test_no_head_is_published_for_lag_screws_and_nails():
    for fastener in ("lag_screw", "nail"):
        (hold, *_) = laid_out(framed(fixing={"fastener": fastener})).backing.holds
        assert hold.pull_through_pounds is None
