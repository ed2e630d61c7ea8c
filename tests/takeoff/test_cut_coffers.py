"""What is taken off in coffers that walls or columns cut, and at angled walls."""

from fractions import Fraction

import pytest
import shapely

from lacunar.layout.records import Layout
from lacunar.takeoff.part_records import EndCut, Part, PartKind
from lacunar.takeoff.taken_off import take_off
from tests.laws.random_outlines import random_outlines
from tests.laws.test_outline_laws import laid
from tests.layout.laying_out import Spec, laid_out
from tests.layout.test_columns import square, with_columns
from tests.layout.test_items_in_odd_rooms import CUT_OFF
from tests.layout.test_outlines import BREAST, ELL, inch, outlined, room
from tests.takeoff.reconciling import unlike

CROWN = {"face": "2 1/2", "fit_total": 0}


def taken(spec: Spec) -> tuple[Layout, tuple[Part, ...]]:
    layout = laid_out(spec)
    return layout, take_off([layout]).parts


def of(parts: tuple[Part, ...], kind: PartKind, where: str) -> list[Part]:
    return [part for part in parts if part.kind is kind and any(where in p.of for p in part.places)]


def test_crown_about_a_column_is_cut_from_its_outer_edge():
    """Four pieces mitred at outside corners: 10 and 12 at the column, longer by the projection out
    on the ceiling at both ends.
    """
    spec = with_columns({"x": 90, "y": 90, "length": 10, "width": 12}, crown=CROWN)
    layout, parts = taken(spec)
    section = layout.mouldings.crown
    assert section is not None
    out = section.projection.value * 2
    about = [
        part
        for part in of(parts, PartKind.CROWN, "B2")
        if part.left.corner is not None and part.left.corner.degrees == 270
    ]
    assert sum(part.quantity for part in about) == 4
    lengths = {(part.short_length.value, part.length.value) for part in about}
    assert {short for short, _ in lengths} == {inch(10), inch(12)}
    assert all(abs(long - short - out) <= inch("1/1000") for short, long in lengths)
    assert {part.left.cut for part in about} == {EndCut.MITRED}


def test_a_piece_between_an_inside_and_an_outside_corner_keeps_its_length_at_both_edges():
    """Along the front of a breast: what the inside corner takes off the outer edge the outside one
    adds, so that from point to point it is longer than its side by one projection.
    """
    layout, parts = taken(room(BREAST, (4, 3), crown=CROWN))
    coffer = next(c for c in outlined(layout).partial_coffers if c.id == "C2")
    front = next(n for n, s in enumerate(coffer.sides, start=1) if s.against == "WB-6")
    (part,) = (
        part
        for part in of(parts, PartKind.CROWN, "C2")
        if any(place.of == ("C2",) and place.at == str(front) for place in part.places)
    )
    section = layout.mouldings.crown
    assert section is not None
    assert abs(part.length.value - inch(36) - section.projection.value) <= inch("1/1000")
    assert abs(inch(36) - section.projection.value - part.short_length.value) <= inch("1/1000")
    corners = {part.left.corner, part.right.corner}
    assert {corner.degrees for corner in corners if corner} == {90, 270}


def test_panels_of_cut_coffers_have_their_corners():
    """C4 of the ell is 41 by 11 between sides; a gap of 1/16 at each edge."""
    panel = {"kind": "sheet_goods", "seat": "between_sides", "gap": "1/16"}
    _, parts = taken(room(ELL, (5, 4), panel=panel))
    (part,) = of(parts, PartKind.PANEL, "C4")
    wide, high = inch(41) - inch("1/8"), inch(11) - inch("1/8")
    assert part.tapered
    zero = inch(0)
    assert {(at.x, at.y) for at in part.corners} == {
        (zero, zero), (wide, zero), (wide, high), (zero, high)
    }  # fmt: skip


@pytest.mark.parametrize("seat", ["between_sides", "between_backing", "above_backing"])
def test_panel_corners_are_shapely_s_buffer_of_the_coffer(seat: str):
    panel = {"kind": "sheet_goods", "seat": seat, "gap": "1/16"}
    layout, parts = taken(room(BREAST, (4, 3), panel=panel))
    for coffer in outlined(layout).partial_coffers:
        (part,) = of(parts, PartKind.PANEL, coffer.id)
        assert coffer.panel_length is not None
        past = float((coffer.panel_length.value - coffer.reach_length.value).inches) / 2
        own = shapely.Polygon([(float(s.x.inches), float(s.y.inches)) for s in coffer.corners])
        wanted = own.buffer(past, join_style="mitre")
        told = shapely.Polygon([(float(s.x.inches), float(s.y.inches)) for s in part.corners])
        moved = shapely.affinity.translate(told, *wanted.bounds[:2])
        assert moved.symmetric_difference(wanted).area == pytest.approx(0, abs=1e-3)


def test_boards_of_cut_coffers_are_counted():
    panel = {"kind": "boards", "cover": 5, "parallel_to": "length", "gap": 0}
    _, parts = taken(room(BREAST, (4, 3), panel=panel))
    counted = {
        (part.length.value, place.quantity)
        for part in of(parts, PartKind.BOARD, "C2")
        for place in part.places
        if place.of == ("C2",)
    }
    # 49 across make ten courses, five of them above the breast's front.
    assert sum(quantity for _, quantity in counted) == 10
    assert {length for length, _ in counted} == {inch(47), inch(11)}


def test_beams_at_angled_walls_have_their_boards_mitred():
    layout, parts = taken(room(CUT_OFF, (4, 3)))
    (beam,) = outlined(layout).angled_beams
    (side,) = of(parts, PartKind.SIDE, beam.id)
    (bottom,) = of(parts, PartKind.BOTTOM, beam.id)
    (backing,) = of(parts, PartKind.BACKING, beam.id)
    assert (side.length.value, side.short_length.value) == (
        beam.side_long.value,
        beam.side_short.value,
    )
    for part in (side, bottom, backing):
        assert part.left.cut is EndCut.MITRED
        assert part.left.angle is not None
        assert float(part.left.angle.degrees) == pytest.approx(22.5, abs=1e-3)
    # By hand: each edge is longer by 2 tan 22.5 = 0.8284 of how far it lies behind the face.
    behind = (bottom.length.value - beam.at_face.value).inches
    profile = layout.profile(beam.profile)
    width = sum(p.width.value.inches for p in profile.parts if p.name == "bottom")
    thick = Fraction(3, 4)
    assert float(behind) == pytest.approx(0.828427 * float(width + thick), abs=1e-3)


def test_no_caution_is_left_for_what_is_counted():
    layout = laid_out(room(CUT_OFF, (4, 3)))
    codes = {caution.code for caution in take_off([layout]).cautions}
    assert not any("cut_coffer" in code for code in codes)


def test_a_panel_larger_than_a_sheet_is_cautioned():
    layout = laid_out(with_columns(square(90, 90, 10), panel={"kind": "sheet_goods"}))
    codes = {caution.code for caution in take_off([layout]).cautions}
    assert "cut_panels_larger_than_sheet" in codes  # 53 and more is over 48 both ways


def test_parts_of_random_odd_rooms_are_what_their_layouts_tell():
    for spec in random_outlines(14, 6):
        layout = laid(spec)
        if layout is not None:
            assert unlike(layout, take_off([layout]).parts) == [], spec
