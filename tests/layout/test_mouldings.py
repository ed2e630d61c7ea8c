"""Crown and flat mouldings in coffers, beside their sums; sources where a case has one."""

from fractions import Fraction
from typing import Any

import pytest

from lacunar.layout.moulding_records import CofferTrim, MouldingPiece, PieceEnd
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from tests.layout.laying_out import Spec, box, inches, laid_out, refused, room, run

# Measured so that no trigonometry enters: 3, 4, 5.
CROWN = {"drop": 4, "projection": 3, "thickness": "1/2", "method": "bench_frame", "fit_total": 0.25}
SIDES = box("1x8", "1x6")  # 7 wide, 7 1/4 deep


def spec(**more: Any) -> Spec:
    """Two by two coffers without wall beams: (107 - 7) / 2 = 50 by (97 - 7) / 2 = 45."""
    return {
        "room": room(107, 97),
        "beams": {"crosswise": SIDES},
        "grid": {"length": run(2), "width": run(2)},
        **more,
    }


def framed(**crown: Any) -> Spec:
    """All half beams, so that every coffer has beams about it: 114/2 - 7 = 50, 104/2 - 7 = 45."""
    return {
        "room": room(114, 104),
        "beams": {"crosswise": SIDES},
        "grid": {"length": run(2, "half"), "width": run(2, "half")},
        "crown": {**CROWN, **crown},
    }


def only_trim(layout: Layout) -> CofferTrim:
    (trim,) = layout.mouldings.coffers
    return trim


def told(piece: MouldingPiece) -> tuple[object, ...]:
    return (
        piece.moulding,
        str(piece.along),
        piece.quantity,
        str(piece.left_end),
        str(piece.right_end),
        piece.long_point.value,
        piece.short_point.value,
    )


def test_a_bench_frame_by_hand():
    # Long points 50 - 1/4 and 45 - 1/4, short points 2 * 3 less, which is what is seen.
    trim = only_trim(laid_out(framed()))
    assert [told(piece) for piece in trim.pieces] == [
        ("Crown", "length", 2, "mitred", "mitred", inches("49 3/4"), inches("43 3/4")),
        ("Crown", "width", 2, "mitred", "mitred", inches("44 3/4"), inches("38 3/4")),
    ]
    assert (trim.seen_length.value, trim.seen_width.value) == (inches("43 3/4"), inches("38 3/4"))
    assert trim.coffers == ("A1", "A2", "B1", "B2")
    # 2 (49 3/4 + 44 3/4)
    assert trim.running_length is not None
    assert trim.running_length.value == inches("189")


def test_a_measured_crown_is_exact_but_for_its_angles():
    crown = laid_out(framed()).mouldings.crown
    assert crown is not None
    assert (crown.drop.value, crown.projection.value) == (inches("4"), inches("3"))
    assert not crown.drop.approximate
    assert crown.face.value == inches("5")  # 3, 4, 5
    # atan(3/4) = 36.8698976 degrees
    assert abs(crown.spring_from_wall.value.degrees - Fraction("36.8698976")) < Fraction(1, 10**7)
    # The back lies 1/2 behind the face: 4 - 0.5 / (3/5) down the side, 3 - 0.5 / (4/5) out.
    assert abs(crown.back_drop.value - inches("4") + inches("5/6")) < inches("1/100000")
    assert abs(crown.back_projection.value - inches("3") + inches("5/8")) < inches("1/100000")
    # The nailer keeps 1/8 off: 1/8 / (3/5) and 1/8 / (4/5) less.
    assert crown.nailer is not None
    expected = inches("19/6") - inches("5/24"), inches("19/8") - inches("5/32")
    assert abs(crown.nailer.height.value - expected[0]) < inches("1/100000")
    assert abs(crown.nailer.depth.value - expected[1]) < inches("1/100000")


def test_a_frame_drops_in_with_a_sixteenth():
    """A production method in a trade journal: a 43 opening takes a frame of 42 15/16."""
    # Half beams of 7: 100/2 - 7 = 43.
    layout = laid_out({**framed(fit_total="1/16"), "room": room(100, 100)})
    assert {piece.long_point.value for piece in only_trim(layout).pieces} == {inches("42 15/16")}


def test_crown_by_the_foot():
    """A builder's diary: over 300 ft in a room; twenty coffers of 45 take 15 ft each, 300 ft."""
    # 5 by 4 coffers of 45 and half beams of 7: 260 by 208.
    layout = laid_out(
        {
            "room": room(260, 208),
            "beams": {"crosswise": SIDES},
            "grid": {"length": run(5, "half"), "width": run(4, "half")},
            "crown": {**CROWN, "fit_total": 0},
        }
    )
    trim = only_trim(layout)
    assert trim.running_length is not None
    assert trim.running_length.value * len(trim.coffers) == Length.of_feet(300)


def test_coped_pieces_by_hand():
    # Sprung in 1/32 over; each coped end takes the projection of 3 off at the ceiling.
    trim = only_trim(laid_out(framed(method="coped_in_place", sprung_allowance="1/32")))
    assert [told(piece) for piece in trim.pieces] == [
        ("Crown", "length", 1, "square", "square", inches("50 1/32"), inches("50 1/32")),
        ("Crown", "width", 1, "coped", "square", inches("45 1/32"), inches("42 1/32")),
        ("Crown", "length", 1, "coped", "square", inches("50 1/32"), inches("47 1/32")),
        ("Crown", "width", 1, "coped", "coped", inches("45 1/32"), inches("39 1/32")),
    ]
    assert trim.seen_length.value == inches("44")  # 50 - 2 * 3: nothing is lost to a fit
    assert trim.frame_passes_mouth is None


def test_going_round_each_coped_end_meets_a_piece_that_is_there():
    trim = only_trim(laid_out(framed(method="coped_in_place")))
    ends = [(piece.left_end, piece.right_end) for piece in trim.pieces]
    for (_, right), (left, _) in zip(ends, ends[1:] + ends[:1], strict=True):
        # At a corner one piece is square into it and the other coped to it.
        assert {left, right} == {PieceEnd.SQUARE, PieceEnd.COPED}


def test_flats_behind_the_crown_take_two_thicknesses_each():
    flats = [
        {"name": "Frieze", "thickness": "3/4", "width": 5},
        {"name": "Bead", "thickness": "1/4", "width": 4},
    ]
    trim = only_trim(laid_out({**framed(), "flat_mouldings": flats}))
    lengths = {
        (piece.moulding, str(piece.along)): (piece.long_point.value, piece.short_point.value)
        for piece in trim.pieces
    }
    # 50; 50 - 2 * 3/4 = 48 1/2; 48 1/2 - 2 * 1/4 = 48; less the fit of 1/4 for the frame.
    assert lengths["Frieze", "length"] == (inches("50"), inches("48 1/2"))
    assert lengths["Bead", "length"] == (inches("48 1/2"), inches("48"))
    assert lengths["Crown", "length"] == (inches("47 3/4"), inches("41 3/4"))
    assert trim.seen_length.value == inches("41 3/4")


def test_without_crown_flats_alone_leave_what_is_seen():
    trims = laid_out(spec(flat_mouldings=[{"thickness": "3/4", "width": 5}])).mouldings.coffers
    assert {trim.seen_length.value for trim in trims} == {inches("48 1/2")}
    assert {trim.running_length for trim in trims} == {None}


def test_without_mouldings_what_is_seen_is_the_opening():
    layout = laid_out(spec())
    assert layout.mouldings.crown is None
    assert layout.mouldings.sides == ()
    for trim in layout.mouldings.coffers:
        assert (trim.seen_length.value, trim.seen_width.value) == (inches("50"), inches("45"))
        assert (trim.mouth_length.value, trim.mouth_width.value) == (inches("50"), inches("45"))
        assert trim.pieces == ()


def test_the_mouth_is_less_by_overhang_and_moulding_where_there_is_a_beam():
    beams = {"crosswise": box("1x8", "1x8", bottom_joint="under", overhang="1/2", width=6)}
    flats = [{"at": "bottom_edge", "thickness": "5/8", "width": 1}]
    layout = laid_out(
        {
            "room": room(106, 96),
            "beams": beams,
            "grid": {"length": run(2), "width": run(2, "half")},
            "flat_mouldings": flats,
        }
    )
    # Length: (106 - 6) / 2 = 50 between a bare wall and one beam: 50 - 1/2 - 5/8.
    # Width: 96 / 2 - 6 = 42 between beams: 42 - 2 (1/2 + 5/8).
    for trim in layout.mouldings.coffers:
        assert trim.mouth_length.value == inches("48 7/8")
        assert trim.mouth_width.value == inches("39 3/4")


def test_mouldings_at_the_lower_edge_end_square_at_a_bare_wall():
    flats = [{"name": "Cap", "at": "bottom_edge", "thickness": 1, "width": 2}]
    layout = laid_out(spec(flat_mouldings=flats))
    trim = layout.mouldings.of("A1")
    # A1 has bare walls W1 and W4; its beams are to the right (far along the length) and above.
    # Along the length, on the beam above (the far side across the width): facing it from inside,
    # the wall W1 is at the left hand. Along the width, on the beam to the right: facing it, W4 is
    # at the right hand.
    assert [told(piece) for piece in trim.pieces] == [
        ("Cap", "length", 1, "square", "mitred", inches("50"), inches("49")),
        ("Cap", "width", 1, "mitred", "square", inches("45"), inches("44")),
    ]
    # B2, across the room, has its beams to the left and below.
    assert [told(piece) for piece in layout.mouldings.of("B2").pieces] == [
        ("Cap", "length", 1, "square", "mitred", inches("50"), inches("49")),
        ("Cap", "width", 1, "mitred", "square", inches("45"), inches("44")),
    ]
    # A2 has them to the left and above: the hands change.
    assert [told(piece)[3:5] for piece in layout.mouldings.of("A2").pieces] == [
        ("mitred", "square"),
        ("square", "mitred"),
    ]


def test_a_second_moulding_at_the_edge_is_less_by_a_thickness_at_each_beam():
    flats = [{"at": "bottom_edge", "thickness": 1, "width": 2}] * 2
    pieces = laid_out(spec(flat_mouldings=flats)).mouldings.of("A1").pieces
    along = [piece for piece in pieces if str(piece.along) == "length"]
    # 50, then 50 - 1 at the one end where there is a beam.
    assert [piece.long_point.value for piece in along] == [inches("50"), inches("49")]


def test_a_frame_larger_than_its_mouth_is_told_and_cautioned():
    flats = [{"at": "bottom_edge", "thickness": "3/4", "width": 1}]
    layout = laid_out({**framed(), "flat_mouldings": flats})
    # 50 - 2 * 3/4 = 48 1/2 is less than the frame's 49 3/4.
    assert only_trim(layout).mouth_length.value == inches("48 1/2")
    assert only_trim(layout).frame_passes_mouth is False
    assert "frame_larger_than_mouth" in {caution.code for caution in layout.cautions}
    assert only_trim(laid_out(framed())).frame_passes_mouth is True


def test_a_smaller_drop_changes_the_spring_and_opens_the_flats():
    # Face 5 at a drop of 3 stands at acos(3/5) = 53.1301 degrees; milled to 53 it is 0.1301 off:
    # flats of 3/8 open by 0.375 sin 0.1301 = 0.00085.
    asked = {"face": 5, "drop": 3, "spring_from_wall": 53, "land": "3/8"}
    layout = laid_out({**framed(), "crown": asked})
    crown = layout.mouldings.crown
    assert crown is not None
    assert abs(crown.spring_from_wall.value.degrees - Fraction("53.13010235")) < Fraction(1, 10**7)
    assert abs(crown.projection.value - inches("4")) < inches("1/100000")
    assert crown.land_opening is not None
    assert abs(float(crown.land_opening.value.inches) - 0.00085) < 0.00001


def test_flats_that_open_visibly_are_cautioned_and_too_far_is_a_fault():
    def tipped(drop: str) -> Spec:
        return {**framed(), "crown": {"face": 5, "drop": drop, "spring_from_wall": 45, "land": 0.5}}

    # Milled to 45: 5 cos 45 = 3.5355. At 3 1/4 it stands at 49.46, 4.46 off: 0.5 sin 4.46 = 0.0389.
    codes = {caution.code for caution in laid_out(tipped("3 1/4")).cautions}
    assert "crown_flats_open" in codes
    # At 2 1/2 at 60, 15 off: 0.5 sin 15 = 0.129, over 1/16.
    (fault,) = refused(tipped("2 1/2"))
    assert (fault.code, fault.pointer) == ("spring_changed_too_far", "/crown/drop")
    assert fault.figures["stands_at"] == "60°"


def test_what_is_left_of_a_side():
    # 7 1/4 exposed, 4 of crown, 1 of moulding: 2 1/4.
    flats = [{"at": "bottom_edge", "thickness": "1/4", "width": 1}]
    covers = laid_out({**framed(), "flat_mouldings": flats}).mouldings.sides
    assert {cover.side_left.value for cover in covers} == {inches("2 1/4")}


@pytest.mark.parametrize(
    ("more", "code", "pointer"),
    [
        # 7 1/4 exposed against 7 1/2.
        ({"crown": {**CROWN, "drop": 7.5}}, "mouldings_taller_than_side", "/crown"),
        # 4 of crown and 3 1/2 of moulding make 7 1/2.
        (
            {"flat_mouldings": [{"at": "bottom_edge", "thickness": 1, "width": 3.5}]},
            "mouldings_taller_than_side",
            "/crown",
        ),
        # 45 - 1/4 - 2 * 23 is below nothing.
        ({"crown": {**CROWN, "projection": 23}}, "mouldings_fill_coffer", "/crown"),
        # Crown of 4 on a flat of 3 1/2.
        (
            {"flat_mouldings": [{"thickness": 1, "width": 3.5}]},
            "moulding_without_bearing",
            "/flat_mouldings/0/width",
        ),
        # Four of 6 on each of two sides take 48 of 45.
        (
            {"flat_mouldings": [{"at": "bottom_edge", "thickness": 6, "width": 1}] * 4},
            "mouth_closed",
            "/flat_mouldings",
        ),
        # atan(23 / 1/2) is 88.8 degrees.
        ({"crown": {"drop": 0.5, "projection": 23}}, "angle_out_of_bounds", "/crown/drop"),
    ],
)
def test_what_cannot_be_fitted_is_refused(more: Spec, code: str, pointer: str):
    faults = {(fault.code, fault.pointer) for fault in refused({**framed(), **more})}
    assert (code, pointer) in faults


@pytest.mark.parametrize(
    ("crown", "code"),
    [
        ({"face": 3, "spring_from_wall": 52}, "spring_from_ceiling"),
        ({"drop": 2, "projection": 3, "most_miter": 30}, "saw_cannot_miter"),
        ({"drop": 4, "projection": 3, "shortest_piece": 40}, "short_crown_pieces"),
        ({"drop": 7.125, "projection": 4}, "sides_nearly_covered"),  # 7 1/4 - 7 1/8 = 1/8
    ],
)
def test_what_a_careful_hand_would_say(crown: Spec, code: str):
    layout = laid_out({**framed(), "crown": crown})
    assert code in {caution.code for caution in layout.cautions}
    quiet = {caution.code for caution in laid_out(framed()).cautions}
    assert code not in quiet


def test_saw_limits_are_held_against_a_square_corner():
    # 36.87 degrees: flat miter atan(0.6) = 30.96, bevel asin(0.8 / sqrt 2) = 34.45.
    def within(**limits: Any) -> tuple[bool, bool]:
        crown = laid_out(framed(**limits)).mouldings.crown
        assert crown is not None
        return crown.saw.nested_within_limits, crown.saw.flat_within_limits

    assert within(most_miter=45, most_bevel=45) == (True, True)
    assert within(most_miter=44, most_bevel=45) == (False, True)
    assert within(most_miter=45, most_bevel=34) == (True, False)
    assert within(most_miter=30, most_bevel=45) == (False, False)


def test_crown_fills_its_corner_where_it_is_thicker_than_that():
    crown = laid_out(framed(thickness=3)).mouldings.crown
    assert crown is not None
    assert crown.nailer is None
    assert crown.back_drop.value == inches("0")


def test_crown_sits_below_a_panel_between_the_sides():
    # A panel of 1/2 between the sides leaves 6 3/4 exposed: crown of 6 7/8 no longer fits.
    panel = {"kind": "sheet_goods", "seat": "between_sides", "thickness": "1/2"}
    crown = {"drop": 6.875, "projection": 4}
    assert laid_out({**framed(), "crown": crown})
    (fault,) = refused({**framed(), "crown": crown, "panel": panel})
    assert fault.figures["exposed_side"] == inches("6 3/4")


def test_the_settings_of_a_frame_are_for_square_corners():
    asked = {"face": "3 1/4", "spring_from_wall": 38}
    crown = laid_out({**framed(), "crown": asked}).mouldings.crown
    assert crown is not None
    assert crown.saw.corner == Angle.of_degrees(90)
    assert crown.saw.flat_miter.value.tenths == "31.6°"


def test_nailers_go_from_side_to_side_along_the_longer_way_and_between_them_across():
    # Common practice, no source. Coffers of 64 x 48 bare: the long ones 64, the others 48 less both
    # depths, which are those of the section.
    spec = {
        "room": room(64, 48),
        "beams": {"crosswise": box("1x8")},
        "grid": {"length": run(1), "width": run(1)},
        "crown": {"face": "3 1/4", "spring_from_wall": 38, "thickness": "5/8"},
    }
    layout = laid_out(spec)
    (trim,) = layout.mouldings.coffers
    crown = layout.mouldings.crown
    assert crown is not None
    assert crown.nailer is not None
    long, short = trim.nailers
    assert (long.along, long.quantity, long.length.value) == ("length", 2, inches("64"))
    assert short.length.value == inches("48") - crown.nailer.depth.value * 2
    assert short.length.approximate
