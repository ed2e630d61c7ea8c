"""Rooms with other than four walls: their walls, where beams stand, whole and cut coffers."""

from fractions import Fraction
from typing import Any

import pytest

from lacunar.layout.outline_records import OutlinedRoom
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.faults import Fault, SpecRefused
from tests.layout.laying_out import Spec, laid_out

HALF = {"start": "half", "end": "half"}


def inch(amount: int | str | Fraction) -> Length:
    return Length.of_inches(Fraction(amount))


def sides(*given: Any) -> list[dict[str, Any]]:
    """Sides, each a length, or a length and the corner at its end."""
    return [
        {"length": each[0], "corner": each[1]} if isinstance(each, tuple) else {"length": each}
        for each in given
    ]


def room(outline: dict[str, Any], counts: tuple[int, int], **more: Any) -> Spec:
    ends = more.pop("ends", HALF)
    return {
        "room": {"height": 108, "outline": outline},
        "grid": {
            "length": {"coffers": counts[0], **ends},
            "width": {"coffers": counts[1], **ends},
        },
        **more,
    }


# 20 ft by 15 ft without its upper right corner, which is 8 ft by 6 ft.
ELL = {"sides": sides(180, 144, (72, 270), 96, 108, 240)}
# 18 ft by 14 ft with a chimney breast, 5 ft wide and 2 ft deep, 6 ft from the left.
BREAST = {"sides": sides(168, 72, (24, 270), (60, 270), 24, 84, 168, 216)}


def outlined(layout: Layout) -> OutlinedRoom:
    assert layout.outlined is not None
    return layout.outlined


def refused(spec: Spec) -> list[Fault]:
    with pytest.raises(SpecRefused) as caught:
        laid_out(spec)
    return list(caught.value.faults)


def test_walls_furthest_out_keep_their_names_and_others_follow():
    walls = outlined(laid_out(room(ELL, (5, 4)))).walls
    assert [wall.wall for wall in walls] == ["W1", "W2", "W5", "W6", "W3", "W4"]
    assert [wall.looks_as for wall in walls] == ["W1", "W2", "W3", "W2", "W3", "W4"]
    # W5 stands where the short top ends, 144; half of a beam of 7 in stands at it: 144 - 3 1/2.
    assert walls[2].at is not None
    assert walls[2].at.value == inch(144)
    assert walls[2].face is not None
    assert walls[2].face.value == inch("281/2")


def test_two_sides_in_line_furthest_out_are_one_wall():
    room_ = outlined(laid_out(room(BREAST, (4, 3))))
    names = [wall.wall for wall in room_.walls]
    assert names == ["W1", "W2", "W5", "W6", "W7", "W2", "W3", "W4"]


def test_walls_in_line_but_for_a_hair_are_one_wall():
    """The top right of the breast's is a sixteenth higher: both are W2, at the lower place."""
    outline = {"sides": sides(168, 72, (24, 270), (60, 270), "24 1/16", 84, "168 1/16", 216)}
    walls = outlined(laid_out(room(outline, (4, 3)))).walls
    tops = [wall for wall in walls if wall.wall == "W2"]
    assert len(tops) == 2
    assert {wall.at.value for wall in tops if wall.at} == {inch(168)}


def test_beams_stand_where_the_room_is():
    """By hand: centers at 48, 96, 144, 192; the notch begins at 144 and at 108 up.

    They end at the faces of half beams, 3 1/2 short of the walls.
    """
    spans = outlined(laid_out(room(ELL, (5, 4)))).spans
    ends = {span.beam: (span.start.value, span.end.value, span.end_at) for span in spans}
    assert ends["XB-2"] == (inch("7/2"), inch("353/2"), "W2")
    # XB-3 has its center on the notch's line, so only its half would go past 108.
    assert ends["XB-3"] == (inch("7/2"), inch("209/2"), "W6")
    assert ends["XB-4"] == (inch("7/2"), inch("209/2"), "W6")
    # LB-3 at 135 is above 108: it ends at W5.
    assert ends["LB-3"] == (inch("7/2"), inch("281/2"), "W5")


def test_whole_and_cut_coffers_of_an_ell():
    """By hand: openings 41 x 38; row C between 93.5 and 131.5 is cut at 108 - 3 1/2 = 104.5."""
    layout = laid_out(room(ELL, (5, 4)))
    room_ = outlined(layout)
    assert [coffer.id for coffer in room_.partial_coffers] == ["C4", "C5", "D3"]
    assert len(layout.coffers) == 15
    assert room_.coffers_left_out.value == 2  # D4 and D5 lie outside
    cut = room_.partial_coffers[0]
    assert (cut.reach_length.value, cut.reach_width.value) == (inch(41), inch(11))
    assert cut.area.value == Fraction(41 * 11, 144)
    assert [side.against for side in cut.sides] == ["LB-2", "XB-4", "WB-6", "XB-3"]
    # D3 has its whole size, but W5's beam stands where the grid's would: it counts as cut.
    assert room_.partial_coffers[2].sides[1].against == "WB-5"


def test_boards_meet_round_a_corner_that_juts_in():
    """By hand, sides 3/4 thick and half beams 3 1/2 wide, W6's beam running through.

    W6 is 96 long. Its side starts at the outer corner, 3 1/2 past the wall's, and goes to the wall
    behind WB-3: 96 + 3 1/2. W5 is 72 long, its side from behind W6's, 3 1/2 - 3/4 past the corner,
    to the side of WB-2, 3 1/2 short of the wall: 72 + 2 3/4 - 3 1/2.
    """
    layout = laid_out(room(ELL, (5, 4)))
    long = {
        place.beam: piece.length.value
        for piece in layout.pieces
        if piece.part == "side"
        for place in piece.places
    }
    assert long["WB-6"] == inch(96) + inch("7/2")
    assert long["WB-5"] == inch(72) + inch("11/4") - inch("7/2")


def test_crown_in_a_cut_coffer_turns_its_corners():
    """By hand: fit 1/16 shared by both ends takes 1/32 at an inside corner, adds it outside."""
    spec = room(BREAST, (4, 3), crown={"face": "3 1/4", "fit_total": "1/16"})
    coffer = next(c for c in outlined(laid_out(spec)).partial_coffers if c.id == "C2")
    corners = [side.corner.value.degrees for side in coffer.sides]
    assert sorted(corners) == [90, 90, 90, 90, 90, 270]
    by = {side.against: side for side in coffer.sides}
    front = by["WB-6"]  # from XB-2's face, 104 1/2, to the outer corner, 68 1/2: inside and outside
    assert front.length.value == inch(36)
    assert front.long_point is not None
    assert abs(front.long_point.value - inch(36)) <= inch("1/1000")
    beam = by["XB-2"]  # inside corners at both ends
    assert beam.long_point is not None
    assert abs(beam.long_point.value - (beam.length.value - inch("1/16"))) <= inch("1/1000")


def test_coped_crown_is_mitred_round_corners_that_jut_in():
    crown = {"face": "3 1/4", "method": "coped_in_place"}
    room_ = outlined(laid_out(room(BREAST, (4, 3), crown=crown)))
    joints = {corner.corner.value.degrees: corner.joint for corner in room_.corners}
    assert joints == {90: "coped", 270: "mitred"}


def test_an_angled_wall_has_a_beam_that_follows_it():
    """A corner cut off at 45 degrees: 40 in each way, 40 sqrt(2) = 56.57 long.

    Corners are 135. Set in by w the face is shorter at each end by w / tan(67.5) = 0.41421 w.
    """
    points = [(0, 0), (0, 200), (200, 200), (240, 160), (240, 0)]
    outline = {"points": [{"x": x, "y": y} for x, y in points]}
    (beam,) = outlined(laid_out(room(outline, (4, 3)))).angled_beams
    assert float(beam.at_wall.value.inches) == pytest.approx(40 * 2**0.5, abs=1e-4)
    shorter = 2 * 3.5 * (2**0.5 - 1)
    assert float(beam.at_face.value.inches) == pytest.approx(40 * 2**0.5 - shorter, abs=1e-3)
    assert beam.start_miter.value.degrees == pytest.approx(22.5, abs=1e-3)
    # Its side is 3/4 thick: longer at its back by 2 x 3/4 x 0.41421.
    back = float((beam.side_long.value - beam.side_short.value).inches)
    assert back == pytest.approx(1.5 * (2**0.5 - 1), abs=1e-3)


def test_a_beam_ends_slanted_at_an_angled_wall():
    points = [(0, 0), (0, 200), (160, 200), (240, 120), (240, 0)]
    outline = {"points": [{"x": x, "y": y} for x, y in points]}
    layout = laid_out(room(outline, (4, 3)))
    span = next(s for s in outlined(layout).spans if s.beam == "XB-3")
    assert span.end_slant is not None
    # At 45 degrees the longer side goes on by the beam's whole width, 7.
    assert float(span.end_slant.value.inches) == pytest.approx(7, abs=1e-3)
    assert span.end_longer == "near"
    cuts = {
        (place.side, piece.end.cut)
        for piece in layout.pieces
        if piece.part == "side"
        for place in piece.places
        if place.beam == "XB-3" and piece.end.angle is not None
    }
    assert cuts == {("near", "mitred"), ("far", "mitred")}


def test_zones_share_a_fixed_beam_that_is_counted_once():
    """A fixed beam in line with the notch: three coffers before it and two after."""
    spec = room(ELL, (5, 4))
    spec["grid"]["length"] = {
        "coffers": [3, 2],
        "fixed_beams": [{"center": 140.5}],
        **HALF,
    }
    layout = laid_out(spec)
    kinds = [(beam.id, beam.kind) for beam in layout.beams if beam.kind == "fixed_beam"]
    assert kinds == [("XB-3", "fixed_beam")]
    assert [zone.coffers.value for zone in layout.length.zones] == [3, 2]


def test_what_stands_at_an_inner_wall_can_be_told():
    spec = room({**ELL, "walls": [{"wall": "W5", "stands": "none"}]}, (5, 4))
    walls = {wall.wall: wall for wall in outlined(laid_out(spec)).walls}
    assert walls["W5"].beam is None
    assert walls["W6"].beam == "WB-5"


def test_small_gaps_are_shared_out_over_the_sides_that_run_along_them():
    """240 below, 144 + 96 1/4 above: a quarter over, shared by the transit rule."""
    spec = room({"sides": sides(180, 144, (72, 270), "96 1/4", 108, 240)}, (5, 4))
    room_ = outlined(laid_out(spec))
    assert room_.closing_error is not None
    assert room_.closing_error.value == inch("1/4")
    adjusted = {each.side: each.adjusted.value for each in room_.corrections}
    assert set(adjusted) == {2, 4, 6}  # the sides along the length, and no other
    total = 144 + Fraction(385, 4) + 240
    assert adjusted[2] == inch(144 - Fraction(1, 4) * 144 / total)
    assert adjusted[6] == inch(240 + Fraction(1, 4) * 240 / total)
    assert all(wall.corner.value.degrees in (90, 270) for wall in room_.walls)


@pytest.mark.parametrize(
    ("outline", "code", "pointer"),
    [
        # 4 in over: the tape slipped, on a side along the length.
        (
            {"sides": sides(180, 144, (72, 270), 100, 108, 240)},
            "outline_does_not_close",
            "/room/outline/sides/1/length",
        ),
        # A corner that juts in, told as 90, makes one half turn too few.
        (
            {"sides": sides(180, 144, 72, 96, 108, 240)},
            "outline_does_not_close",
            "/room/outline/sides",
        ),
        (
            {
                **ELL,
                "diagonals": [{"from_corner": 1, "to_corner": 3, "length": 232}],
            },
            "outline_does_not_close",
            "/room/outline/diagonals/0/length",
        ),
        (
            {"points": [{"x": x, "y": y} for x, y in [(0, 0), (240, 0), (240, 180), (0, 180)]]},
            "outline_folded",
            "/room/outline",
        ),
        (
            {"points": [{"x": x, "y": y} for x, y in [(0, 90), (90, 180), (180, 90), (90, 0)]]},
            "outline_wall_missing",
            "/room/outline",
        ),
        (
            {**ELL, "walls": [{"wall": "W9", "stands": "none"}]},
            "outline_wall_unknown",
            "/room/outline/walls/0/wall",
        ),
        (
            {"sides": sides(90, 240, (90, 180), 90, 330, 180)},
            "outline_does_not_close",
            "/room/outline/sides",
        ),
    ],
)
def test_what_cannot_be_a_room_is_refused(outline: dict[str, Any], code: str, pointer: str):
    faults = refused(room(outline, (5, 4)))
    assert (faults[0].code, faults[0].pointer) == (code, pointer)
    assert faults[0].remedy


def test_checks_are_told_with_what_they_are_off():
    """By Pythagoras the way from corner 1 to corner 3 is the root of 144^2 + 180^2 = 230.5125."""
    checks = {"diagonals": [{"from_corner": 1, "to_corner": 3, "length": "230 3/8"}]}
    (check,) = outlined(laid_out(room({**ELL, **checks}, (5, 4)))).checks
    assert float(check.computed.value.inches) == pytest.approx(230.5125, abs=1e-3)
    assert float(check.off.value.inches) == pytest.approx(-0.1375, abs=1e-3)


def test_forms_are_counted_where_they_stand():
    """By hand, for the ell: 10 crosses, 14 tees, 6 ells; 23 pieces upright and 24 level between."""
    forms = laid_out(room(ELL, (5, 4))).backing.forms
    counts = (forms.crosses, forms.tees, forms.ells, forms.wall_ends, forms.mid_spans)
    assert [count.value for count in counts] == [10, 14, 6, 0, 47]


def test_boards_and_panels_of_a_cut_coffer_are_cut_from_what_it_reaches():
    panel = {"kind": "boards", "cover": 5, "parallel_to": "length", "gap": 0}
    coffer = next(
        c
        for c in outlined(laid_out(room(BREAST, (4, 3), panel=panel))).partial_coffers
        if c.id == "C2"
    )
    # 49 across: 10 courses. Below the breast's front, 25 in, boards are 47 long, above it 11.
    lengths = [(course.length.value, course.boards) for course in coffer.courses]
    assert [length for length, _ in lengths] == [inch(47), inch(11)]
    assert sum(boards for _, boards in lengths) == 10
    sheets = {"kind": "sheet_goods", "seat": "between_sides", "gap": "1/16"}
    coffer = outlined(laid_out(room(ELL, (5, 4), panel=sheets))).partial_coffers[0]
    assert coffer.panel_length is not None
    assert coffer.panel_length.value == inch(41) - inch("1/8")


def test_items_are_held_against_what_stands_where_they_are():
    """In the breast is no room; above the ell's notch no beam stands that could be met."""
    spec = room(BREAST, (4, 3))
    spec["room"]["ceiling_items"] = [
        {"kind": "light", "name": "in the breast", "x": 100, "y": 155, "diameter": 6},
        {"kind": "light", "name": "at its cheek", "x": 67, "y": 150, "diameter": 6},
        {"kind": "light", "name": "clear", "x": 85, "y": 130, "diameter": 6},
        {"kind": "light", "name": "on a beam", "x": 108, "y": 100, "diameter": 6},
    ]
    found = {
        item.name: {(each.meets.value, each.id) for each in item.conflicts}
        for item in laid_out(spec).items.items
    }
    assert {("wall", "W5"), ("wall", "W6"), ("wall", "W7")} <= found["in the breast"]
    assert found["at its cheek"] == {("beam", "WB-5")}
    assert found["clear"] == set()
    assert found["on a beam"] == {("beam", "XB-2")}
    cut = {item.name: item.coffer for item in laid_out(spec).items.items}
    assert cut["clear"] == "C2"
