"""Openings as measured: what follows for trim and panels, what is missing, what cannot be."""

from fractions import Fraction
from typing import Any

import pytest

from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from tests.layout.laying_out import Spec, box, laid_out, refused, room, run

inch = Length.of_inches

PLAIN: Spec = {
    # Beams 7 in wide: 192 / 3 - 7 = 57 and 144 / 2 - 7 = 65.
    "room": room(192, 144),
    "beams": {"crosswise": box("1x8", "1x6")},
    "grid": {"length": run(3, "half"), "width": run(2, "half")},
    "crown": {"face": "3 1/4", "spring_from_wall": 38, "fit_total": "1/16"},
    "panel": {"kind": "sheet_goods", "gap": "1/8"},
}
GRID = laid_out(PLAIN).grid_id


def coffer(identity: str, w1: Any, w2: Any, w3: Any, w4: Any, **diagonals: object) -> Spec:
    sides = zip(("W1", "W2", "W3", "W4"), (w1, w2, w3, w4), strict=True)
    told: Spec = {"coffer": identity, "sides": {w: size for w, size in sides if size is not None}}
    return {**told, "diagonals": diagonals} if diagonals else told


def with_measured(*coffers: Spec, **more: object) -> Spec:
    return {**PLAIN, "measured_openings": {"grid": GRID, "coffers": list(coffers), **more}}


def codes(layout: Layout) -> set[str]:
    return {caution.code for caution in layout.cautions}


def long_points(layout: Layout, identity: str) -> dict[str, Fraction]:
    trim = layout.mouldings.of(identity)
    return {
        wall: piece.long_point.value.inches
        for piece in trim.pieces
        if piece.moulding == "Crown"
        for wall in piece.toward
    }


def test_the_grid_has_a_name_that_only_its_coffers_decide():
    assert laid_out({**PLAIN, "crown": {"face": 2}, "name": "Other"}).grid_id == GRID
    wider = {**PLAIN, "room": room("192 1/64", 144)}
    assert laid_out(wider).grid_id != GRID
    # As long, and as many of as large coffers, but not at the same places.
    aside = {**PLAIN, "grid": {**PLAIN["grid"], "length": run(3, "half", start="full", end="none")}}
    assert laid_out(aside).grid_id != GRID
    metric = {**PLAIN, "units": "mm", "room": room("4876.8 mm", "3657.6 mm", 3048)}
    del metric["crown"], metric["panel"]
    assert laid_out(metric).grid_id == GRID


def test_frames_and_panels_follow_the_shorter_of_opposite_sides():
    layout = laid_out(with_measured(coffer("A2", "65 1/8", 57, "64 15/16", "56 7/8")))
    # Less 1/16 of fit: 56 7/8 and 64 15/16.
    assert long_points(layout, "A2") == {
        **dict.fromkeys(("W2", "W4"), Fraction("56.8125")),
        **dict.fromkeys(("W1", "W3"), Fraction("64.875")),
    }
    [panel] = [panel for panel in layout.panels if "A2" in panel.coffers]
    assert panel.length.value == inch(Fraction("56.625"))
    assert panel.width.value == inch(Fraction("64.6875"))
    # All others as planned, the measured coffer by itself.
    assert panel.coffers == ("A2",)
    assert set(long_points(layout, "A1").values()) == {Fraction("56.9375"), Fraction("64.9375")}
    assert layout.measured_openings is not None
    assert layout.measured_openings.not_measured == ("A1", "A3", "B1", "B2", "B3")


def test_differences_from_plan_are_told_and_large_ones_cautioned():
    layout = laid_out(with_measured(coffer("A1", 65, "57 1/8", 65, "56 7/8")))
    assert layout.measured_openings is not None
    [opening] = layout.measured_openings.openings
    told = [side.difference.value.inches for side in opening.sides if side.difference]
    assert told == [0, Fraction(1, 8), 0, Fraction(-1, 8)]
    assert "opening_far_from_plan" not in codes(layout)
    far = laid_out(with_measured(coffer("A1", 65, "57 3/8", 65, 57)))
    [caution] = [c for c in far.cautions if c.code == "opening_far_from_plan"]
    assert caution.figures["difference"] == inch(Fraction(3, 8))


def test_a_side_that_was_not_measured_is_listed_and_that_run_stays_as_planned():
    layout = laid_out(with_measured(coffer("B3", 64, None, 64, 56)))
    assert layout.measured_openings is not None
    [opening] = layout.measured_openings.openings
    assert opening.missing == ("side toward W2", "a diagonal")
    assert (opening.squareness, opening.out_of_square) == ("unknown", None)
    assert long_points(layout, "B3")["W4"] == Fraction("56.9375")
    assert long_points(layout, "B3")["W1"] == Fraction("63.9375")
    assert {"openings_not_measured", "corners_not_measured"} <= codes(layout)


def leaning(**more: object) -> Layout:
    """A2 as a parallelogram leaning a lot: 57 x 65 with diagonals that differ."""
    return laid_out(with_measured(coffer("A2", 65, 57, 65, 57, rising="87 1/4"), **more))


def test_a_coffer_out_of_square_is_coped_or_mitred_as_asked_and_both_are_told():
    coped, mitred = leaning(), leaning(out_of_square="mitred_to_corners")
    for layout, chosen in ((coped, "coped_in_place"), (mitred, "mitred_to_corners")):
        assert layout.measured_openings is not None
        [crown] = layout.measured_openings.crown
        assert crown.chosen == chosen
        assert len(crown.coped) == len(crown.mitred) == len(crown.corners) == 4
        pieces = layout.mouldings.of("A2").pieces
        assert pieces == (crown.coped if chosen == "coped_in_place" else crown.mitred)
    # Coped pieces are as long as their sides and sprung in by 1/32, whatever the corners.
    assert set(long_points(coped, "A2").values()) == {Fraction("57.03125"), Fraction("65.03125")}
    assert coped.mouldings.of("A2").frame_passes_mouth is None
    # What goes in elsewhere stays what it is.
    ends = {piece.left_end for piece in coped.mouldings.of("A1").pieces}
    assert ends == {"mitred"}


def test_within_the_limit_a_coffer_takes_a_square_frame():
    layout = leaning(out_of_square_limit="2")
    assert layout.measured_openings is not None
    assert layout.measured_openings.openings[0].squareness == "square"
    assert layout.measured_openings.crown == ()
    assert layout.measured_openings.panels == ()
    assert {piece.left_end for piece in layout.mouldings.of("A2").pieces} == {"mitred"}


def test_unlike_sides_prove_a_coffer_out_of_square_without_a_diagonal():
    """Half of what they differ is the least a corner can be off; what to miter to is not known."""
    asked = {"out_of_square": "mitred_to_corners"}
    layout = laid_out(with_measured(coffer("A2", 65, "57 1/2", 65, 57), **asked))
    assert layout.measured_openings is not None
    [opening] = layout.measured_openings.openings
    assert opening.squareness == "out_of_square"
    assert opening.out_of_square is not None
    assert opening.out_of_square.value == inch(Fraction(1, 4))
    [crown] = layout.measured_openings.crown
    assert (crown.chosen, crown.mitred, crown.corners) == ("coped_in_place", (), ())
    assert long_points(layout, "A2")["W2"] == Fraction("57.53125")


def test_panels_that_go_in_before_the_sides_stay_as_planned():
    spec = with_measured(coffer("A2", 64, 56, 64, 56))
    spec["panel"] = {"kind": "sheet_goods", "seat": "between_backing"}
    layout = laid_out(spec)
    assert len(layout.panels) == 1
    assert "panels_before_measuring" in codes(layout)


def test_two_diagonals_that_agree_give_the_mean_of_their_corners():
    layout = laid_out(
        with_measured(coffer("A2", 65, 57, 65, 57, rising="86 7/16", falling="86 1/2"))
    )
    assert layout.measured_openings is not None
    [opening] = layout.measured_openings.openings
    assert opening.closing_error is not None
    for found in opening.corners:
        assert found.by_rising is not None
        assert found.by_falling is not None
        assert found.angle.value * 2 == found.by_rising.value + found.by_falling.value


def test_another_grid_is_refused_with_the_orphans():
    spec = with_measured(coffer("A2", 65, 57, 65, 57), coffer("C1", 65, 57, 65, 57))
    spec["measured_openings"]["grid"] = "0123456789"
    [fault] = refused(spec)
    assert (fault.code, fault.pointer) == ("measured_in_other_grid", "/measured_openings/grid")
    assert fault.figures == {
        "measured_in": "0123456789",
        "grid": GRID,
        "measured": "A2, C1",
        "orphans": "C1",
    }


@pytest.mark.parametrize(
    ("told", "code", "pointer"),
    [
        (coffer("C9", 65, 57, 65, 57), "coffer_not_in_grid", "coffers/0/coffer"),
        (
            # 57 + 65 = 122 is less than the diagonal.
            coffer("A2", 65, 57, 65, 57, rising=123),
            "opening_cannot_close",
            "coffers/0/diagonals/rising",
        ),
        (
            # A corner of acos((57^2 + 65^2 - 50^2) / 7410) = 48.0 degrees.
            coffer("A2", 65, 57, 65, 57, falling=50),
            "opening_cannot_close",
            "coffers/0/diagonals",
        ),
        (
            coffer("A2", 65, 57, 65, 57, rising="87 7/16", falling="86 7/16"),
            "opening_does_not_close",
            "coffers/0",
        ),
    ],
)
def test_what_cannot_be_is_refused(told: Spec, code: str, pointer: str):
    *_, last = faults = refused(with_measured(told))
    assert {fault.code for fault in faults} == {code}
    assert last.pointer == f"/measured_openings/{pointer}"


def test_a_contradiction_names_what_to_take_again():
    """The rising diagonal read an inch too long: all else is as planned, so it is the one."""
    told = coffer("A2", 65, 57, 65, 57, rising="87 7/16", falling="86 7/16")
    [fault] = refused(with_measured(told))
    assert fault.figures["take_again"] == "rising"
    # The square root of 57^2 + 65^2 is 86.4523.
    at = fault.figures["would_close_at"]
    assert isinstance(at, Length)
    assert abs(at.inches - Fraction("86.467")) < Fraction(1, 100)
    assert "the rising diagonal" in fault.remedy


def test_every_opening_that_cannot_close_is_told_at_once():
    bad = {"rising": 123}
    faults = refused(
        with_measured(coffer("A1", 65, 57, 65, 57, **bad), coffer("B1", 65, 57, 65, 57, **bad))
    )
    assert {fault.pointer.split("/")[3] for fault in faults} == {"0", "1"}


def test_the_order_of_fitting_knows_which_coffers_are_coped():
    stages = {step.stage: step.of for step in leaning().fitting.steps}
    assert stages["coped_crown"] == ("A2",)
    assert stages["crown_frames"] == ("A1", "A3", "B1", "B2", "B3")
    mitred = {step.stage for step in leaning(out_of_square="mitred_to_corners").fitting.steps}
    assert "coped_crown" not in mitred


def test_panels_are_held_against_the_mouth_that_was_measured():
    """Overhangs of 1/4 leave 56 3/8 of 56 7/8; the panel is 56 7/8 less two gaps of 1/8."""
    spec = {
        **PLAIN,
        "beams": {"crosswise": box("1x8", "1x8", bottom_joint="under", overhang="1/4")},
    }
    grid = laid_out(spec).grid_id
    [planned] = {coffer.length.value for coffer in laid_out(spec).coffers}
    taken = planned - inch(Fraction(1, 8))
    sides = {"W1": 60, "W2": f"{taken.inches} in", "W3": 60, "W4": f"{taken.inches} in"}
    section = {"grid": grid, "coffers": [{"coffer": "A1", "sides": sides}]}
    layout = laid_out({**spec, "measured_openings": section})
    [panel] = [p for p in layout.fitting.passing if p.piece == "panel" and "A1" in p.coffers]
    assert panel.between_bottoms_length.value == taken - inch(Fraction(1, 2))
    assert panel.length.value == taken - inch(Fraction(1, 4))
