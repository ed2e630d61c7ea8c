"""Ceiling items and wall features in rooms whose figures are worked by hand beside each check."""

from fractions import Fraction
from typing import Any

import pytest

from lacunar.layout.item_records import CeilingItem, Meeting, Meets
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from tests.layout.laying_out import Spec, box, inches, laid_out, refused, room, run

RETURN = {"kind": "return", "length": 14, "width": 8, "mounting": "surface"}


def ceiling(items: list[Spec], **more: Any) -> Spec:
    """12 by 16 ft, 4 by 3 coffers of 43 in between beams 5 in wide, half beams at the walls."""
    features = more.pop("features", [])
    joists = more.pop("joists", None)
    extra = {"joists": joists} if joists else {}
    return {
        "room": room(192, 144, ceiling_items=items, wall_features=features, **extra),
        "beams": {"crosswise": box()},
        "grid": {"length": run(4, "half"), "width": run(3, "half")},
        **more,
    }


def only(layout: Layout) -> CeilingItem:
    (item,) = layout.items.items
    return item


def test_lights_in_the_middle_of_each_coffer():
    """A builder's own 3 by 4 grid in a room of 12 by 16 ft: with half beams at the walls every
    module is 48 in, so the lights are at 24, 72, 120 and 168 in (by hand)."""
    items = laid_out(ceiling([{"kind": "light", "diameter": 6}])).items.items
    assert [item.id for item in items] == [f"L-{n}" for n in range(1, 13)]
    places = {(item.x.value.inches, item.y.value.inches) for item in items}
    assert places == {(x, y) for x in (24, 72, 120, 168) for y in (24, 72, 120)}
    assert all(not item.conflicts and item.nearest_clear is None for item in items)


def test_the_same_lights_as_a_grid_and_in_named_coffers():
    grid = {"kind": "light", "diameter": 6, "x": 24, "y": 24, "columns": 4, "rows": 3}
    items = laid_out(ceiling([{**grid, "length_pitch": 48, "width_pitch": 48}])).items.items
    assert [item.coffer for item in items[:5]] == ["A1", "A2", "A3", "A4", "B1"]
    assert (items[-1].x.value, items[-1].y.value) == (inches("168"), inches("120"))
    named = laid_out(ceiling([{"kind": "fan", "diameter": 40, "coffers": ["B2", "B3"]}]))
    assert [(i.id, i.coffer) for i in named.items.items] == [("F-1", "B2"), ("F-2", "B3")]


def test_a_return_on_a_beam_moves_to_the_nearer_side():
    """XB-1 is 45 1/2 to 50 1/2. At 50 a return 14 long reaches from 43 to 57: into the beam by
    min(57 - 45 1/2, 50 1/2 - 43) = 7 1/2, and clear of it from 50 1/2 + 7 = 57 1/2 on."""
    item = only(laid_out(ceiling([{**RETURN, "x": 50, "y": 72}])))
    (conflict,) = item.conflicts
    assert (conflict.meets, conflict.id) == (Meets.BEAM, "XB-1")
    assert conflict.overlap.value == inches("7 1/2")
    clear = item.nearest_clear
    assert clear is not None
    assert (clear.x, clear.y, clear.coffer) == (inches("57 1/2"), inches("72"), "B2")
    assert (clear.move_x.value, clear.move_y.value) == (inches("7 1/2"), inches("0"))
    assert clear.beam_margin == inches("0")


def test_clearance_and_overhang_keep_it_further_off():
    """A bottom that stands out 1/4 and a clearance of 2: clear from 50 1/2 + 1/4 + 7 + 2 on."""
    beams = {"crosswise": {**box(), "bottom_joint": "under", "overhang": "1/4", "bottom": "1x6"}}
    spec = ceiling([{**RETURN, "x": 50, "y": 72, "clearance": 2}], beams=beams)
    item = only(laid_out(spec))  # 5 1/2 - 2 x 1/4 = 5 in wide, as before
    assert item.nearest_clear is not None
    assert item.nearest_clear.x == inches("59 3/4")


def test_crown_keeps_it_further_off():
    """At its measured sizes crown stands out 2; a frame smaller by 1/16 covers 2 1/32 a side."""
    crown = {"drop": "2 1/2", "projection": 2, "fit_total": "1/16"}
    item = only(laid_out(ceiling([{**RETURN, "x": 50, "y": 72}], crown=crown)))
    assert {each.meets for each in item.conflicts} == {Meets.BEAM, Meets.MOULDING}
    assert item.nearest_clear is not None
    assert item.nearest_clear.x == inches("59 17/32")


@pytest.mark.parametrize(("mounting", "meets"), [("recessed", {Meets.JOIST}), ("surface", set())])
def test_only_recessed_items_meet_joists(mounting: str, meets: set[Meets]):
    """Joists at 8, 24, 40 and so on: a light in the middle of a coffer, at 24, is on one. Its 6 in
    are clear of 24 ± 3/4 from 24 - 3/4 - 3 = 20 1/4 down (the nearer the datum of two)."""
    joists = {"parallel_to": "width", "spacing": 16, "first": 8}
    light = {"kind": "light", "diameter": 6, "coffers": ["A1"], "mounting": mounting}
    item = only(laid_out(ceiling([light], joists=joists)))
    assert {each.meets for each in item.conflicts} == meets
    if item.nearest_clear is not None:
        assert item.nearest_clear.x == inches("20 1/4")
        assert item.conflicts[0].overlap.value == inches("3 3/4")
        # To the joist at 8: 20 1/4 - 3 - 8 3/4; to the one at 24: nothing.
        assert item.nearest_clear.joist_margin == inches("0")


def test_two_items_keep_the_larger_clearance():
    """Squares of 10 and 6 need 5 + 3 + 2 between centers and have 8: too close by 2."""
    layout = laid_out(
        ceiling(
            [
                {"kind": "speaker", "diameter": 10, "x": 24, "y": 24, "clearance": 2},
                {"kind": "light", "diameter": 6, "x": 32, "y": 24},
            ]
        )
    )
    light = layout.items.items[1]
    assert [(each.meets, each.id) for each in light.conflicts] == [(Meets.ITEM, "SK-1")]
    assert light.conflicts[0].overlap.value == inches("2")
    assert light.nearest_clear is not None
    assert light.nearest_clear.move_x.value == inches("2")
    assert light.nearest_clear.item_margin == inches("0")


def test_an_item_larger_than_every_coffer_has_no_clear_place():
    layout = laid_out(ceiling([{"kind": "hatch", "length": 44, "width": 20, "x": 72, "y": 72}]))
    assert only(layout).conflicts
    assert only(layout).nearest_clear is None
    assert "no_clear_place" in {caution.code for caution in layout.cautions}


def test_counts_that_keep_beams_clear_of_a_vent():
    """A return 20 long about 48 in a run of 192 with half beams, 5 in wide: beams are centered at
    multiples of 192/n. One within 48 ± 12 1/2 meets it, from 35 1/2 to 60 1/2: none do at n = 1
    and 2 (96); 3 has 64: clear; 4 has 48; 5 has 38.4; from 6 on a module of at most 32 is tried:
    6 has 32 and 64, clear; 7 has 54.9; 8 has 48; and so on (by hand)."""
    vent = {**RETURN, "length": 20, "x": 48, "y": 72, "mobility": "fixed"}
    along, up = laid_out(ceiling([vent])).items.counts_clear_of_fixed
    by_hand = [
        n
        for n in range(1, 18)
        if not any(Fraction(71, 2) < Fraction(192 * k, n) < Fraction(121, 2) for k in range(1, n))
    ]
    assert by_hand[:4] == [1, 2, 3, 6]
    # 192/17 - 5 = 6.3 is the last opening of at least 6 in.
    assert (along.fewest, along.most) == (1, 17)
    assert [each.coffers for each in along.clear] == by_hand
    third = along.clear[2]
    assert third.pitch is not None
    assert (third.smallest_opening.value, third.pitch.value) == (inches("59"), inches("64"))
    assert up.run == "width"


def test_without_a_fixed_item_no_count_is_searched():
    assert laid_out(ceiling([{**RETURN, "x": 24, "y": 24}])).items.counts_clear_of_fixed == ()


@pytest.mark.parametrize(
    ("center", "meeting", "offset", "past"),
    [(48, Meeting.CENTERED, "0", "-13 1/2"), (50, Meeting.WITHIN, "-2", "-11 1/2")],
)
def test_beams_over_a_door(center: int, meeting: Meeting, offset: str, past: str):
    """XB-1 is 45 1/2 to 50 1/2; a door 32 wide at 48 is 32 to 64, at 50 it is 34 to 66. At 48 the
    edges are 45 1/2 - 32 = 13 1/2 off; at 50 the nearer one is 45 1/2 - 34 = 11 1/2 off."""
    door = {"kind": "door", "wall": "W4", "center": center, "width": 32, "head": 80}
    (check,) = laid_out(ceiling([], features=[door])).wall_features
    (beam,) = check.beams
    assert (beam.beam, beam.meeting) == ("XB-1", meeting)
    assert (beam.offset.value, beam.past_edge.value) == (signed(offset), signed(past))
    # 120 high, less a drop of 5 1/2, less the head at 80.
    assert beam.over_head is not None
    assert beam.over_head.value == inches("34 1/2")


def signed(text: str) -> Length:
    return -inches(text[1:]) if text.startswith("-") else inches(text)


def test_a_beam_over_a_jamb_and_below_a_head_is_cautioned():
    """A window from 30 to 48 cuts XB-1 (45 1/2 to 50 1/2): 2 1/2 past its edge. Its head at 116 is
    1 1/2 above the beam's lowest edge at 114 1/2, and so is that of the half beam at W4."""
    window = {"kind": "window", "wall": "W4", "center": 39, "width": 18, "head": 116}
    layout = laid_out(ceiling([], features=[window]))
    (check,) = layout.wall_features
    assert check.beams[0].meeting is Meeting.OVER_EDGE
    assert check.beams[0].past_edge.value == inches("2 1/2")
    assert check.beams[0].over_head is not None
    assert check.beams[0].over_head.value == -inches("1 1/2")
    assert check.along_wall == ("WB-4",)
    codes = {caution.code for caution in layout.cautions}
    assert {"beam_over_edge_of_feature", "beam_below_head"} <= codes


def test_a_coffer_is_centered_on_a_fireplace():
    """Coffer 2 of 48 in modules has its middle at 72: on center with a fireplace there."""
    fireplace = {"kind": "fireplace", "wall": "W2", "center": 72, "width": 40}
    (check,) = laid_out(ceiling([], features=[fireplace])).wall_features
    assert (check.on, check.off_center.value, check.beams) == ("2", inches("0"), ())


@pytest.mark.parametrize(
    ("kind", "code"),
    [
        ("detector", "detectors_under_beams"),
        ("sprinkler", "detectors_under_beams"),
        ("light", "wiring_and_fan_boxes"),
    ],
)
def test_cautions_that_always_go_with_an_item(kind: str, code: str):
    layout = laid_out(ceiling([{"kind": kind, "diameter": 4, "x": 24, "y": 24}]))
    assert code in {caution.code for caution in layout.cautions}


def test_the_word_of_the_fire_code_for_the_ceiling():
    """Beams 5 1/2 deep at 48 in: over 4 in deep and over 36 in apart, which NFPA 72 calls beams (a
    training center's page on beams and joists). It is a word to ask with, never a verdict."""
    layout = laid_out(ceiling([{"kind": "detector", "diameter": 5, "x": 24, "y": 24}]))
    text = next(c.text for c in layout.cautions if c.code == "detectors_under_beams")
    assert "one with beams (over 4 in deep, over 36 in apart)" in text


def test_a_fan_that_hangs_too_low():
    """120 less 40 is 80, under the usual limit of 84."""
    fan = {"kind": "fan", "diameter": 40, "coffers": ["B2"], "drop": 40}
    layout = laid_out(ceiling([fan]))
    height = only(layout).clear_height
    assert height is not None
    assert height.value == inches("80")
    assert "item_below_headroom" in {caution.code for caution in layout.cautions}


@pytest.mark.parametrize(
    ("item", "code", "pointer"),
    [
        ({"x": 3, "y": 24}, "item_outside_room", "/room/ceiling_items/0"),
        ({"coffers": ["A1", "D1"]}, "coffer_not_there", "/room/ceiling_items/0/coffers/1"),
        (
            {"x": 9, "y": 9, "columns": 60, "rows": 60, "length_pitch": 1, "width_pitch": 1},
            "too_many_items",
            "/room/ceiling_items",
        ),
    ],
)
def test_items_that_have_no_place(item: Spec, code: str, pointer: str):
    (fault,) = refused(ceiling([{**RETURN, **item}]))
    assert (fault.code, fault.pointer) == (code, pointer)
