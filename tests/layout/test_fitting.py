"""The order of fitting beside what a hand would do; the order is common practice, no source."""

from typing import Any

import pytest

from lacunar.layout.fitting_records import Because, FittingStep, Stage
from lacunar.layout.records import Layout
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run


def spec(**more: Any) -> Spec:
    """Two by two coffers of 50 by 45 in, half beams at the walls."""
    return {
        "room": room(114, 104),
        "beams": {"crosswise": box("1x8", "1x6")},
        "grid": {"length": run(2, "half"), "width": run(2, "half")},
        **more,
    }


# A bottom under the sides that stands out 1/4 in; 5 in between side faces from a 1x6.
STANDING_OUT = {"crosswise": box("1x8", "1x6", bottom_joint="under", width=5, overhang=0.25)}
FRAME = {
    "drop": 4,
    "projection": 3,
    "thickness": "1/2",
    "method": "bench_frame",
    "fit_total": "1/16",
}
EDGE = [{"name": "Bead", "at": "bottom_edge", "thickness": "1/4", "width": "3/4"}]


def stages(layout: Layout) -> list[str]:
    return [str(step.stage) for step in layout.fitting.steps]


def step(layout: Layout, stage: Stage) -> FittingStep:
    (found,) = (each for each in layout.fitting.steps if each.stage is stage)
    return found


def waits(layout: Layout, stage: Stage) -> dict[Stage, Because]:
    return {wait.stage: wait.because for wait in step(layout, stage).needs}


def stops(layout: Layout) -> set[tuple[str, str]]:
    """Which beam stops which, as the crossings have it."""
    return {
        (place.through, place.stopped)
        for crossing in layout.crossings
        if crossing.through is not None
        for place in crossing.places
    }


@pytest.mark.parametrize("through", ["longer", "crosswise", "lengthwise"])
def test_no_beam_goes_up_before_one_that_stops_it(through: str):
    # Common practice, no source: what runs through stands before what is cut in between is
    # measured, here a casing across the room, which stops the beams at the walls too.
    joined = room(114, 104)
    joined["members"] = [{"name": "S1", "on": "length", "center": 57, "width": 3, "drop": 5}]
    beams = {"crosswise": box("1x8", "1x6"), "through": through}
    layout = laid_out(
        spec(
            room=joined, beams=beams, grid={"length": run([1, 1], "half"), "width": run(2, "half")}
        )
    )
    pairs = stops(layout)
    assert ("XB-1", "WB-4") in pairs
    for each in (Stage.SIDES, Stage.BOTTOMS):
        of = step(layout, each).of
        assert len(of) == len(set(of)) == len(layout.beams) + len(layout.wall_beams)
        assert [(a, b) for a, b in pairs if of.index(a) > of.index(b)] == []


def test_bare_beams():
    assert stages(laid_out(spec())) == ["snap_lines", "backing", "sides", "bottoms"]


@pytest.mark.parametrize(
    ("seat", "expected"),
    [
        ("above_backing", ["snap_lines", "panels", "backing", "sides", "bottoms"]),
        ("between_backing", ["snap_lines", "backing", "panels", "sides", "bottoms"]),
        ("between_sides", ["snap_lines", "backing", "sides", "bottoms", "panels"]),
    ],
)
def test_the_seat_says_when_panels_go_up(seat: str, expected: list[str]):
    panel = {"kind": "sheet_goods", "seat": seat, "sheet": {"width": 60, "length": 120}}
    assert stages(laid_out(spec(panel=panel))) == expected


def test_through_boards_go_up_before_there_are_beams():
    layout = laid_out(spec(panel={"kind": "boards", "board": "1x6", "run": "through"}))
    assert stages(layout) == ["snap_lines", "boards", "backing", "sides", "bottoms"]
    assert waits(layout, Stage.BACKING)[Stage.BOARDS] is Because.FIXED_THROUGH_IT


def test_frames_that_pass_go_up_last():
    layout = laid_out(spec(crown=FRAME))
    assert stages(layout)[-3:] == ["bottoms", "crown_nailers", "crown_frames"]
    (passing,) = layout.fitting.passing
    assert passing.too_small_after is None
    assert (passing.length.value, passing.mouth_length.value) == (inches("49 15/16"), inches("50"))


def test_frames_go_up_before_bottoms_that_stand_out():
    # Openings 114/2 - 5 = 52 and 104/2 - 5 = 47; between bottoms 51 1/2 and 46 1/2; frames 1/16
    # less than the openings.
    layout = laid_out(spec(beams=STANDING_OUT, crown=FRAME))
    assert stages(layout)[-2:] == ["crown_frames", "bottoms"]
    (passing,) = layout.fitting.passing
    assert passing.too_small_after is Stage.BOTTOMS
    assert passing.between_bottoms_length.value == inches("51 1/2")
    assert passing.length.value == inches("51 15/16")
    wait = step(layout, Stage.BOTTOMS).needs[-1]
    assert (wait.stage, wait.because) == (Stage.CROWN_FRAMES, Because.MOUTH_TOO_SMALL)
    assert wait.coffers == ("A1", "A2", "B1", "B2")


def test_frames_go_up_before_mouldings_at_the_edges_and_after_bottoms_that_let_them_pass():
    layout = laid_out(spec(crown=FRAME, flat_mouldings=EDGE))
    assert stages(layout)[-4:] == ["bottoms", "crown_nailers", "crown_frames", "edge_mouldings"]
    assert waits(layout, Stage.EDGE_MOULDINGS)[Stage.CROWN_FRAMES] is Because.MOUTH_TOO_SMALL


def test_coped_crown_waits_for_no_mouth():
    coped = {**FRAME, "method": "coped_in_place"}
    layout = laid_out(spec(beams=STANDING_OUT, crown=coped))
    assert stages(layout)[-3:] == ["bottoms", "crown_nailers", "coped_crown"]
    assert layout.fitting.passing == ()


def test_panels_larger_than_the_mouth_go_up_before_bottoms_and_it_is_said():
    panel = {"kind": "sheet_goods", "seat": "between_sides", "sheet": {"width": 60, "length": 120}}
    layout = laid_out(spec(beams=STANDING_OUT, panel=panel))
    assert stages(layout)[-2:] == ["panels", "bottoms"]
    assert "panel_larger_than_mouth" in {caution.code for caution in layout.cautions}


def test_a_panel_in_pieces_is_held_against_the_mouth_by_its_largest_piece():
    # 52 by 47 less two gaps of 1/8: parted in two along the length, 25 7/8 by 46 3/4; between the
    # bottoms 51 1/2 by 46 1/2, so it is still too wide; a gap of 1/4 makes it 46 1/2, which passes.
    panel = {"kind": "sheet_goods", "seat": "between_sides", "sheet": {"width": 48, "length": 48}}
    for gap, length, after in (("1/8", "25 7/8", Stage.BOTTOMS), ("1/4", "25 3/4", None)):
        layout = laid_out(spec(beams=STANDING_OUT, panel={**panel, "gap": gap}))
        (passing,) = layout.fitting.passing
        assert passing.length.value == inches(length)
        assert passing.too_small_after is after


def test_only_the_coffers_whose_mouth_is_too_small_are_named():
    # A bare wall at the start: A1 and B1 have a bottom at one side only, and a frame that is 1/4 in
    # smaller passes 52 + 2 1/2 - 1/4 along the length; the others lose 1/2 in.
    grid = {"length": {"coffers": 2, "start": "none", "end": "half"}, "width": run(1, "none")}
    crown = {**FRAME, "fit_total": "1/4"}
    layout = laid_out(spec(beams=STANDING_OUT, grid=grid, crown=crown))
    stuck = {p.coffers: p.too_small_after for p in layout.fitting.passing}
    assert stuck == {("A1",): None, ("A2",): Stage.BOTTOMS}
    assert step(layout, Stage.BOTTOMS).needs[-1].coffers == ("A2",)


def test_folded_beams_go_up_in_one():
    layout = laid_out(spec(beams={"crosswise": box("1x8", "1x8", bottom_joint="mitred")}))
    assert stages(layout) == ["snap_lines", "backing", "folded_beams"]


def joists(ceiling: str) -> dict[str, Any]:
    return {"parallel_to": "width", "spacing": 16, "first": 3, "ceiling": ceiling}


def test_blocking_goes_up_by_the_lines_and_before_what_closes_it_off():
    panel = {"kind": "sheet_goods", "seat": "above_backing"}
    layout = laid_out(
        spec(
            room=room(114, 104, joists=joists("open")),
            fixing={"between_joists": "blocking"},
            panel=panel,
        )
    )
    assert stages(layout)[:4] == ["snap_lines", "blocking", "panels", "backing"]
    assert waits(layout, Stage.PANELS)[Stage.BLOCKING] is Because.CLOSED_OFF_AFTER


def test_a_skin_goes_up_before_lines_are_snapped_on_it():
    layout = laid_out(
        spec(room=room(114, 104, joists=joists("closed")), fixing={"between_joists": "skin"})
    )
    assert stages(layout)[:3] == ["skin", "snap_lines", "backing"]


def test_members_have_cleats_beside_them_and_beams_stand_in_their_turn():
    member = {"name": "S1", "on": "length", "center": 57, "width": 2, "drop": 4}
    layout = laid_out(spec(room=room(114, 104, members=[member])))
    assert step(layout, Stage.CASING_CLEATS).of == ("XB-1",)
    assert "XB-1" not in step(layout, Stage.BACKING).of
    assert step(layout, Stage.SIDES).of == ("XB-1", "WB-2", "WB-4", "WB-1", "WB-3", "LB-1")


def test_no_beam_goes_up_before_the_one_its_sides_butt_against():
    """Common practice, no source: what runs through is hung first, what butts is fitted to it."""
    layout = laid_out(spec(room=room(200, 150)))
    up = step(layout, Stage.SIDES).of
    butting = [
        place
        for crossing in layout.crossings
        if any(each.beam == "stopped" and each.end.ends_at == "side" for each in crossing.ends)
        for place in crossing.places
    ]
    assert any(place.through.startswith("WB") for place in butting)
    assert all(up.index(place.through) < up.index(place.stopped) for place in butting)
