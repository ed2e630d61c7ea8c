"""Zones between things that have a place, and what makes a run impossible."""

import pytest

from tests.layout.laying_out import Spec, box, inches, laid_out, openings, refused, room, run

FIVE = box()


def along(length: object, cut: Spec, **more: object) -> Spec:
    """One run to look at, beams 5 wide; the other is one coffer of 60."""
    return {
        "room": room(length, 60, **more),
        "beams": {"crosswise": FIVE},
        "grid": {"length": cut, "width": run(1)},
    }


def member(center: object, **more: object) -> Spec:
    """A member that fits in a casing 5 wide: 3 + 2 * 1/4 + 1 1/2 = 5."""
    return {
        "on": "length",
        "center": center,
        "width": 3,
        "drop": 3,
        "clearance": "1/4",
        "cleat": 0,
        **more,
    }


def test_weights_share_each_zone():
    # 200 - 5 = 195; 95 1/2 and 94 1/2 by the beam at 98: 1:2 would be 31 1/6 each share
    spec = along(200, run(4, weights=[1, 2, 1, 1], fixed_beams=[{"center": 98}]))
    first, second, third, fourth = openings(laid_out(spec))
    # zone 1: 0 to 95 1/2, less 5: 90 1/2; zone 2: 100 1/2 to 200, less 5: 94 1/2
    assert (first, second) == (inches("30 1/6"), inches("60 1/3"))
    assert third == fourth == inches("47 1/4")


def test_a_fixed_beam_may_have_a_width_of_its_own():
    spec = along(200, run([1, 1], fixed_beams=[{"center": 98, "width": 8}]))
    layout = laid_out(spec)
    assert openings(layout) == [inches("94"), inches("98")]
    (beam,) = layout.beams
    assert (str(beam.kind), beam.width.value) == ("fixed_beam", inches("8"))
    # 8 - 1 1/2 = 6 1/2 of bottom, from the next board: a 1x7
    assert layout.profiles[0].parts[1].stock.name == "1x7"


def test_a_total_is_split_over_the_zones():
    # Zones of 60 and 135 around a beam at 62 1/2: 1 and 3 with openings of 60 and 41 2/3 beat
    # 2 and 2 with 27 1/2 and 65.
    layout = laid_out(along(200, run(4, fixed_beams=[{"center": "62 1/2"}])))
    assert [zone.coffers.value for zone in layout.length.zones] == [1, 3]


def test_a_casing_stays_centered_unless_asked_and_both_are_shown():
    # 1 3/4 of play: (6 1/2 + 2 - 3)/2 - 1/4 with an asked width of 8 1/2: inside 7
    cut = run([1, 1])
    centered = laid_out(along(200, cut, members=[member(101, cased_width="8 1/2")]))
    assert openings(centered) == [inches("96 3/4"), inches("94 3/4")]
    (choice,) = centered.casing_choices
    assert (choice.beam, choice.chosen) == ("XB-1", "centered")
    assert choice.centered_openings == (inches("96 3/4"), inches("94 3/4"))
    assert choice.shifted_openings == (inches("95 3/4"), inches("95 3/4"))
    assert choice.shift == -inches("1")


def test_a_shift_stops_at_its_limit():
    # Inside 8 1/2 - 1 1/2 = 7; (7 - 3)/2 - 1/4 = 1 3/4; 3 would be wanted.
    wanted = member(103, cased_width="8 1/2", casing="shift_to_equal")
    layout = laid_out(along(200, run([1, 1]), members=[wanted]))
    assert layout.beams[0].member.shift.value == -inches("1 3/4")
    # 103 - 1 3/4 - 4 1/4 = 97, and 200 - 105 1/2 = 94 1/2
    assert openings(layout) == [inches("97"), inches("94 1/2")]


def test_a_fixed_beam_between_two_casings_is_not_moved_for_them():
    members = [
        member(51, cased_width=9, casing="shift_to_equal"),
        member(150, cased_width=9, casing="shift_to_equal"),
    ]
    cut = run([1, 1, 1, 1], fixed_beams=[{"center": 100}])
    layout = laid_out(along(200, cut, members=members))
    # Each side of the fixed beam by itself: 97 1/2 - 9 = 88 1/2, two of 44 1/4. The first casing
    # would stand at 44 1/4 + 4 1/2 = 48 3/4, 2 1/4 back, but its play is (7 1/2 - 3)/2 - 1/4 = 2.
    # The other at 102 1/2 + 44 1/4 + 4 1/2 = 151 1/4, which is 1 1/4 on.
    assert [beam.center.at_start.value for beam in layout.beams] == [
        inches("49"),
        inches("100"),
        inches("151 1/4"),
    ]
    assert openings(layout) == [inches(x) for x in ("44 1/2", "44", "44 1/4", "44 1/4")]


@pytest.mark.parametrize(
    ("spec", "code", "pointer"),
    [
        # 8 coffers with 7 beams of 5 in 30
        (along(30, run(8)), "no_room_left", "/grid/length/coffers"),
        (
            along(30, run([1, 9], fixed_beams=[{"center": 8}])),
            "no_room_left",
            "/grid/length/coffers/1",
        ),
        (
            along(100, run(2, {"soffit": 50})),
            "no_room_left",
            "/grid/length/start",
        ),
        (
            # (20 + 5)/(1 + 5) = 4.2: 5 coffers, whose 4 beams take all 20
            along(20, {"largest_opening": 1, "start": "none", "end": "none"}),
            "no_room_left",
            "/grid/length/largest_opening",
        ),
        (
            along(3000, {"largest_opening": 24, "start": "none", "end": "none"}),
            "too_many_coffers",
            "/grid/length/largest_opening",
        ),
        (
            along(200, run([1, 1], "half", fixed_beams=[{"center": 3}])),
            "fixed_beam_outside_run",
            "/grid/length/fixed_beams/0/center",
        ),
        (
            along(200, run([1, 1, 1], fixed_beams=[{"center": 100}]), members=[member(103)]),
            "fixed_beams_overlap",
            "/room/members/0/center",
        ),
        (
            along(200, run([1, 1, 1], fixed_beams=[{"center": 100}]), members=[member(105)]),
            "zone_too_small",
            "/room/members/0/center",
        ),
        (
            along(200, run([1, 1], fixed_beams=[{"center": "197 1/2"}])),
            "zone_too_small",
            "/grid/length/fixed_beams/0/center",
        ),
        (
            along(200, run([1, 1], fixed_beams=[{"center": 90, "width": 1}])),
            "beam_too_narrow",
            "/grid/length/fixed_beams/0/width",
        ),
        # 3 + 2 * 1/4 + 1 1/2 = 5
        (
            along(200, run([1, 1]), members=[member(100, cased_width="4 15/16")]),
            "casing_too_narrow",
            "/room/members/0/cased_width",
        ),
        # 5 coffers in 200: 180 between the beams, three of 60 take it all
        (along(200, run(5, held=60)), "held_too_large", "/grid/length/held"),
        (
            along(100, {"wished_opening": 48, "held": 48, "start": "none", "end": "none"}),
            "held_cannot_be",
            "/grid/length/held",
        ),
    ],
)
def test_runs_that_cannot_be_divided(spec: Spec, code: str, pointer: str):
    assert (code, pointer) in {(fault.code, fault.pointer) for fault in refused(spec)}


def test_a_full_run_says_how_many_coffers_would_fit():
    (fault,) = refused(along(30, run(8)))
    # (30 + 5)/(6 + 5) = 3.18: three of 6 2/3
    assert fault.figures["coffers_that_fit"] == 3
    assert "at most 3" in fault.remedy
    assert laid_out(along(30, run(3)))


def test_a_run_in_which_nothing_fits_says_so():
    # zone 1 is 4 1/2 wide: (4 1/2 + 5)/11 is less than one
    (fault,) = refused(along(30, run([2, 1], fixed_beams=[{"center": 7}])))
    assert (fault.figures["zone"], fault.figures["coffers_that_fit"]) == (1, 0)
    assert "not even one" in fault.remedy


def test_faults_of_both_runs_and_of_the_beams_leave_together():
    spec = {
        "room": room(30, 30),
        "beams": {"crosswise": box(drop=6)},
        "grid": {"length": run(8), "width": run(9)},
    }
    assert [(fault.code, fault.pointer) for fault in refused(spec)] == [
        ("no_room_left", "/grid/length/coffers"),
        ("no_room_left", "/grid/width/coffers"),
        ("stock_too_narrow", "/beams/crosswise/sides"),
    ]


def test_too_many_coffers_in_all():
    cut = {"largest_opening": 36, "start": "none", "end": "none"}
    spec = {"room": room(1800, 1800), "grid": {"length": cut, "width": cut}}
    (fault,) = refused(spec)
    assert (fault.code, fault.pointer) == ("too_many_coffers", "/grid")


def test_every_fault_has_figures_and_a_remedy():
    for spec in (
        along(30, run(8)),
        along(100, run(2, {"soffit": 50})),
        along(200, run(5, held=60)),
    ):
        for fault in refused(spec):
            assert fault.figures
            assert fault.remedy.endswith(".")
