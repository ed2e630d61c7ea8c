"""Crossings and the boards at them, worked by hand: what a joiner would measure on the bench.

Common practice, no source: a board that butts ends at what is in its way; a through side runs past;
a joint is hidden behind a beam that ends at the board, or else scarfed. The sums stand beside each
case.
"""

import json

import pytest

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused

# 16 ft by 12 ft with half beams 3 1/2 in wide at all walls: 7 in beams of 3/4 in boards, 5 1/2 in
# bottoms. The length run has 192 - 2 * 3 1/2 - 7 = 178 clear, so 2 coffers of 89; the width run
# 144 - 7 - 7 = 130, so 2 of 65. The beam down the middle of the room is 130 + 7 = 137 clear, from
# half beam to half beam, that along it 185.
BOX = {"sides": "1x8", "bottom": "1x6", "bottom_joint": "between", "reveal": "1/4"}


def laid_out(box=None, look=None, grid=None, stock=None, room=None, **beams):
    """The layout of the room above with something told otherwise."""
    document = {
        "room": {"length": 192, "width": 144, "height": 108, **(room or {})},
        "beams": {"crosswise": box or BOX, "through": "crosswise", "look": look or {}, **beams},
        "grid": grid or {"length": {"coffers": 2}, "width": {"coffers": 2}},
        "stock": stock or {},
    }
    return lay_out(resolve(read_spec(json.dumps(document).encode())).ceiling)


def boards(layout, part, beam):
    """Long and short points and the two cuts of a beam's boards, each once."""
    return {
        (piece.length.value, piece.short_length.value, piece.start.cut, piece.end.cut)
        for piece in layout.pieces
        if piece.part == part and any(place.beam == beam for place in piece.places)
    }


def inches(text):
    whole, _, part = text.partition(" ")
    top, _, bottom = (part or "0").partition("/")
    return Length.of_inches(int(whole)) + Length.of_inches(int(top)) / int(bottom or 1)


def kinds(layout):
    """How many places each kind of crossing has."""
    found = {}
    for crossing in layout.crossings:
        found[crossing.kind] = found.get(crossing.kind, 0) + len(crossing.places)
    return found


def test_a_stopped_beam_ends_at_the_sides_of_the_one_that_runs_through():
    layout = laid_out()
    # LB-1 is cut in two between the faces of XB-1: 192/2 - 3 1/2 - 3 1/2 = 89.
    assert boards(layout, "side", "LB-1") == {(inches("89"), inches("89"), "square", "square")}
    assert boards(layout, "bottom", "LB-1") == {(inches("89"), inches("89"), "square", "square")}
    # XB-1 runs between the half beams at W2 and W4: 144 - 2 * 3 1/2 = 137.
    assert boards(layout, "side", "XB-1") == {(inches("137"), inches("137"), "square", "square")}


def test_the_bottom_of_a_stopped_beam_reaches_the_edge_of_a_bottom_set_in():
    # Bottoms under the sides and 1/4 set in: beams of 5 1/2 + 2 * 1/4 = 6, coffers of 192/2 - 6 =
    # 90. The bottom of LB-1 passes below the sides of XB-1 and of the half beam up to the edges of
    # their bottoms, 1/4 behind the faces: 90 + 2 * 1/4.
    layout = laid_out({**BOX, "bottom_joint": "under"})
    assert boards(layout, "bottom", "LB-1") == {
        (inches("90 1/2"), inches("90 1/2"), "square", "square")
    }
    assert boards(layout, "side", "LB-1") == {(inches("90"), inches("90"), "square", "square")}


def test_the_bottom_of_a_stopped_beam_ends_at_the_edge_of_a_bottom_that_stands_out():
    # 1/2 out on both sides: 89 - 2 * 1/2.
    box = {"sides": "1x8", "bottom": "1x8", "bottom_joint": "under", "overhang": "1/2", "width": 6}
    layout = laid_out(box)
    # With 6 in beams the coffers are 192/2 - 6 = 90 long.
    assert boards(layout, "bottom", "LB-1") == {(inches("89"), inches("89"), "square", "square")}


def test_a_side_is_notched_for_a_bottom_that_stands_out_of_the_beam_it_ends_at():
    # The crosswise bottoms stand 1/2 out under the sides, 3/4 thick; the lengthwise sides reach
    # down as far as they do, so that a corner 1/2 along and 3/4 up is taken out.
    out = {"sides": "1x6", "bottom": "1x8", "bottom_joint": "under", "overhang": "1/2", "width": 6}
    lengthwise = {"sides": "1x8", "bottom": "1x6", "width": 6, "drop": "6 1/4"}
    lengthwise |= {"bottom_joint": "between", "overhang": 0, "reveal": 0}
    layout = laid_out({**out, "drop": "6 1/4"}, lengthwise=lengthwise)
    piece = next(p for p in layout.pieces if p.part == "side" and p.places[0].beam == "LB-1")
    assert {piece.start.cut, piece.end.cut} == {"notched"}
    assert piece.end.notch_along == inches("0 1/2")
    assert piece.end.notch_up == inches("0 3/4")


def test_sides_per_coffer_close_each_corner_with_one_long_and_one_short_board():
    # Each coffer is 89 x 65. In its corners the sides of the crosswise beams, which run through,
    # go on behind the ends of the others: 65 + 3/4 where only one end is at a beam that they pass,
    # at both ends here, so 65 + 2 * 3/4; the others are 89.
    layout = laid_out(look={"sides": "per_coffer"})
    assert boards(layout, "side", "XB-1") == {
        (inches("65 3/4"), inches("65 3/4"), "square", "square")
    }
    assert boards(layout, "side", "LB-1") == {(inches("89"), inches("89"), "square", "square")}
    # The bottom of LB-1 passes between its own sides to the edge of that of XB-1, 3/4 behind the
    # face; at the half beam, whose side runs past, it ends at the face: 89 + 3/4.
    assert {length for length, *_ in boards(layout, "bottom", "LB-1")} == {inches("90 1/2")}


def test_mitred_corners_make_backs_longer_than_faces_by_the_other_side():
    layout = laid_out(look={"sides": "per_coffer", "corners": "mitred"})
    assert boards(layout, "side", "LB-1") == {(inches("90 1/2"), inches("89"), "mitred", "mitred")}
    piece = next(p for p in layout.pieces if p.part == "side" and p.places[0].beam == "LB-1")
    assert piece.start.angle.tenths == "45.0°" or piece.start.angle.degrees == 45


def test_pointed_bottoms_meet_in_the_middle_of_the_crossing():
    # Bottoms 5 1/2 wide between 7 in faces: points reach 3 1/2 past the face, their shoulders 3/4.
    layout = laid_out(look={"sides": "per_coffer", "bottoms": "mitred"})
    lengths = {(long, short) for long, short, *_ in boards(layout, "bottom", "LB-1")}
    # At the half beam they end at its bottom's edge, 3/4 behind the face: 89 + 3 1/2 + 3/4.
    assert lengths == {(inches("93 1/4"), inches("90 1/2"))}
    assert kinds(layout)["cross"] == 1


def test_half_beams_meet_in_the_corners_of_the_room():
    layout = laid_out()
    # Those at W1 and W3 are of the crosswise family, which runs through: on to W2 and W4, 144 long;
    # those at W2 and W4 end between them, at their sides: 192 - 2 * 3 1/2 = 185.
    assert {length for length, *_ in boards(layout, "side", "WB-1")} == {inches("144")}
    assert {length for length, *_ in boards(layout, "side", "WB-2")} == {inches("185")}
    assert {length for length, *_ in boards(layout, "bottom", "WB-2")} == {inches("185")}


def test_mitred_corners_of_the_room_follow_the_bottoms():
    # Half beams: 3 1/2 less a 3/4 side leaves bottoms of 2 3/4. Their inner edges lie 3/4 behind
    # the faces: 185 + 2 * 3/4; at the walls 2 * 2 3/4 more, which is the wall's 192 in all.
    layout = laid_out(look={"corners": "mitred"})
    assert boards(layout, "bottom", "WB-2") == {
        (inches("192"), inches("186 1/2"), "mitred", "mitred")
    }


def test_a_casing_runs_on_to_the_walls_through_what_stands_there():
    member = {"on": "length", "center": 96, "width": 3, "drop": 4, "cleat": 0}
    grid = {"length": {"coffers": [1, 1]}, "width": {"coffers": 2}}
    layout = laid_out(grid=grid, room={"members": [member]}, through="lengthwise")
    casing = next(beam for beam in layout.beams if beam.member)
    assert {length for length, *_ in boards(layout, "side", casing.id)} == {inches("144")}
    # The half beams at W2 and W4 end at the casing: 192/2 - 3 1/2 = 92 1/2 to the wall, which they
    # run on to past the half beams at W1 and W3, whose 3 1/2 are in it.
    assert {length for length, *_ in boards(layout, "side", "WB-2")} == {inches("92 1/2")}


def test_counts_are_those_of_the_forms():
    layout = laid_out(grid={"length": {"coffers": 4}, "width": {"coffers": 3}})
    # 4 x 3 coffers with beams at all walls: 3 * 2 crosses, 2 * 3 + 2 * 2 tees, 4 ells.
    assert kinds(layout) == {"cross": 6, "tee": 10, "ell": 4}
    bare = {"start": "none", "end": "none"}
    layout = laid_out(
        grid={"length": {"coffers": 4, **bare}, "width": {"coffers": 3, **bare}},
    )
    assert kinds(layout) == {"cross": 6, "end_at_wall": 10}


def test_a_side_is_parted_behind_the_middle_of_a_beam_that_ends_at_it():
    # The half beam at W2 is 185 long, boards 10 ft: XB-1 ends at its middle, 92 1/2 from each end.
    layout = laid_out(stock={"longest_board": 120}, through="lengthwise")
    lengths = sorted(long for long, *_ in boards(layout, "side", "WB-2"))
    assert lengths == [inches("96")]  # on to the walls: 192 in two halves
    ends = [end.ends_at for p in layout.pieces for end in (p.start, p.end) if p.part == "side"]
    assert "splice" in ends


def test_a_board_without_a_hidden_joint_is_scarfed_or_refused():
    grid = {"length": {"coffers": 1}, "width": {"coffers": 1}}
    layout = laid_out(grid=grid, stock={"longest_board": 120})
    # A side of 192 - 2 * 3 1/2 = 185 in two parts that lap by its thickness: (185 + 3/4) / 2.
    assert (inches("92 7/8"), inches("92 1/8")) in {
        (long, short) for long, short, *_ in boards(layout, "side", "WB-2")
    }
    assert "boards_scarfed" in [caution.code for caution in layout.cautions]
    with pytest.raises(SpecRefused) as refused:
        laid_out(grid=grid, stock={"longest_board": 120}, look={"splices": "at_crossings"})
    assert {fault.code for fault in refused.value.faults} == {"board_longer_than_stock"}


def test_mitred_bottoms_need_sides_that_do_not_run_between_them():
    with pytest.raises(SpecRefused) as refused:
        laid_out(look={"bottoms": "mitred"})
    assert [fault.code for fault in refused.value.faults] == ["sides_between_mitred_bottoms"]
