"""Flat mouldings and nailers in coffers that walls or columns cut."""

import pytest
import shapely

from lacunar.layout.outline_records import NAILER, PartialCoffer, SideStrip
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.moulding import FlatPlace
from lacunar.takeoff.part_records import EndCut, Part, PartKind
from lacunar.takeoff.quantities.quantity_records import QuantityKind
from lacunar.takeoff.taken_off import take_off
from tests.laws.random_outlines import random_outlines, with_measured
from tests.laws.test_outline_laws import laid
from tests.layout.laying_out import Spec, figures_in, laid_out
from tests.layout.test_columns import square, with_columns
from tests.layout.test_items_in_odd_rooms import CUT_OFF
from tests.layout.test_outlines import BREAST, ELL, inch, outlined, room
from tests.rule_evaluation import contradictions
from tests.takeoff.reconciling import unlike

HAIR = inch("1/1000")
FRIEZE = {"name": "Frieze", "thickness": "1/4", "width": 3}
BEAD = {"name": "Bead", "at": "bottom_edge", "thickness": "1/2", "width": "3/4"}
TRIM: Spec = {"crown": {"face": "2 1/2", "fit_total": 0}, "flat_mouldings": [FRIEZE, BEAD]}
# The corner that is cut off at 45 degrees is a bare wall; half beams 3 1/2 wide at all others.
BARE: Spec = {**CUT_OFF, "walls": [{"wall": "W5", "stands": "none"}]}


def parts_at(layout: Layout, coffer: str, side: int) -> dict[str, Part]:
    """The parts along a side of a coffer by their names."""
    return {
        part.name: part
        for part in take_off([layout]).parts
        for place in part.places
        if place.of == (coffer,) and place.at == str(side)
    }


def cut_coffer(layout: Layout, name: str) -> PartialCoffer:
    return next(c for c in outlined(layout).partial_coffers if c.id == name)


def side_at(coffer: PartialCoffer, against: str) -> int:
    return next(n for n, side in enumerate(coffer.sides, start=1) if side.against == against)


def sized(part: Part, cut_from: Length, between: Length) -> bool:
    return (
        abs(part.length.value - cut_from) <= HAIR and abs(part.short_length.value - between) <= HAIR
    )


def test_along_the_front_of_a_breast():
    """By hand: 36 in from an inside corner, 90, to an outside one, 270, between which a piece so
    far out as t is set t to one hand: 36 + t from point to point, 36 - t between its ends.

    The nailer lies on the frieze, set 1/4 to the same hand at its back too, so that it is 36 there.
    """
    layout = laid_out(room(BREAST, (4, 3), **TRIM))
    section = layout.mouldings.crown
    assert section is not None
    assert section.nailer is not None
    parts = parts_at(layout, "C2", side_at(cut_coffer(layout, "C2"), "WB-6"))
    depth = section.nailer.depth.value
    for name, out in (("Frieze", inch("1/4")), ("Bead", inch("1/2")), (NAILER, depth)):
        assert sized(parts[name], inch(36) + out, inch(36) - out), name
        corners = [end.corner for end in (parts[name].left, parts[name].right)]
        assert sorted(float(corner.degrees) for corner in corners if corner) == [90, 270]
        assert {parts[name].left.cut, parts[name].right.cut} == {EndCut.MITRED}


def test_along_a_bare_wall_and_up_to_it():
    """By hand: the opening is 233 by 173; x + y = 380 cuts 33 off both ways.

    The bare wall is 33 sqrt 2 = 46.669 long, its frieze at the front 2 / 4 tan 22.5 = 0.2071
    shorter. W3's side is 173 - 33 = 140 long. Its bead is mitred with W4's, 1/2 shorter at the
    front, and beveled by 45 against the bare wall, to the left of who faces it, 1/2 longer.
    """
    layout = laid_out(room(BARE, (1, 1), flat_mouldings=[FRIEZE, BEAD]))
    coffer = cut_coffer(layout, "A1")
    bare = parts_at(layout, "A1", side_at(coffer, "W5"))
    assert set(bare) == {"Frieze"}
    assert float(bare["Frieze"].length.value.inches) == pytest.approx(46.669, abs=1e-3)
    assert float(bare["Frieze"].short_length.value.inches) == pytest.approx(46.462, abs=1e-3)
    assert {end.corner.degrees for end in (bare["Frieze"].left, bare["Frieze"].right) if end.corner}
    at = next(n for n, s in enumerate(coffer.sides, start=1) if s.length.value == inch(140))
    bead = parts_at(layout, "A1", at)["Bead"]
    assert sized(bead, inch("281/2"), inch("279/2"))
    assert (bead.left.cut, bead.left.corner) == (EndCut.MITRED, None)
    assert bead.left.angle is not None
    assert float(bead.left.angle.degrees) == pytest.approx(45, abs=1e-6)
    assert bead.right.corner is not None
    assert bead.right.corner.degrees == 90


def test_against_a_wall_that_goes_nearly_straight_on_an_end_is_square():
    """W5 falls back by 14 degrees from W2: a bevel to it would make a bead two inches longer."""
    corners = ((0, 0), (0, 180), (200, 180), (240, 170), (240, 0))
    outline = {
        "points": [{"x": x, "y": y} for x, y in corners],
        "walls": [{"wall": "W5", "stands": "none"}],
    }
    layout = laid_out(room(outline, (1, 1), flat_mouldings=[BEAD]))
    coffer = cut_coffer(layout, "A1")
    at = side_at(coffer, coffer.sides[side_at(coffer, "W5")].against)
    part = parts_at(layout, "A1", at)["Bead"]
    assert (part.left.cut, part.right.cut) == (EndCut.MITRED, EndCut.SQUARE)
    assert part.length.value == coffer.sides[at - 1].length.value


@pytest.mark.parametrize("outline", [BREAST, BARE, CUT_OFF])
def test_fronts_at_the_ceiling_are_shapely_s_buffer_of_the_coffer(outline: Spec):
    layout = laid_out(room(outline, (2, 2), **TRIM))
    for coffer in outlined(layout).partial_coffers:
        own = shapely.Polygon([(float(s.x.inches), float(s.y.inches)) for s in coffer.corners])
        for name, out in fronts(layout).items():
            inner = own.buffer(-out, join_style="mitre", mitre_limit=50)
            told = sum(front(strip) for side in coffer.sides for strip in named(side.strips, name))
            assert told == pytest.approx(inner.length, abs=1e-2)


def fronts(layout: Layout) -> dict[str, float]:
    """How far the front of each strip at the ceiling lies from the side [in]."""
    flat = layout.ceiling.flat_mouldings[0]
    assert flat.at is FlatPlace.CEILING
    section = layout.mouldings.crown
    assert section is not None
    assert section.nailer is not None
    behind = float(flat.thickness.inches)
    return {flat.name: behind, NAILER: behind + float(section.nailer.depth.value.inches)}


def named(strips: tuple[SideStrip, ...], name: str) -> list[SideStrip]:
    return [strip for strip in strips if strip.moulding == name]


def front(strip: SideStrip) -> float:
    return float(strip.short_point.value.inches)


def test_round_a_column_there_is_a_frieze_and_no_bead():
    """10 by 10: each frieze 10 at the column and 10 + 2 / 4 at its front, outside corners all."""
    layout = laid_out(with_columns(square(90, 90, 10), **TRIM))
    about = [
        part
        for part in take_off([layout]).parts
        if part.kind is PartKind.FLAT_MOULDING
        and {end.corner.degrees for end in (part.left, part.right) if end.corner} == {270}
    ]
    assert {part.name for part in about} == {"Frieze"}
    assert sum(part.quantity for part in about) == 4
    assert all(sized(part, inch("21/2"), inch(10)) for part in about)


def test_a_side_without_room_is_told_and_not_counted():
    """C4 of the ell is 41 by 11: a frieze 6 thick has 41 - 12 left one way, 11 - 12 the other."""
    layout = laid_out(room(ELL, (5, 4), flat_mouldings=[{**FRIEZE, "thickness": 6}]))
    codes = [caution.code for caution in layout.cautions]
    assert codes.count("cut_coffer_strips_without_room") == 1
    coffer = cut_coffer(layout, "C4")
    for number, side in enumerate(coffer.sides, start=1):
        assert ("Frieze" in parts_at(layout, "C4", number)) == (side.length.value == inch(41))
    layout = laid_out(room(ELL, (5, 4), flat_mouldings=[{**FRIEZE, "thickness": 5}]))
    assert "cut_coffer_strips_without_room" not in [caution.code for caution in layout.cautions]


def test_what_mouldings_cover_of_a_cut_coffer_is_not_painted_twice():
    """One coffer, a frieze of 1/4: what is seen is what shapely leaves of it a quarter in."""
    layout = laid_out(
        room(BARE, (1, 1), flat_mouldings=[FRIEZE], take_off={"finish": {"kind": "paint"}})
    )
    (area,) = (
        quantity.need
        for quantity in take_off([layout]).quantities
        if quantity.kind is QuantityKind.PAINTED_AREA and quantity.used_for == "coffers"
    )
    corners = cut_coffer(layout, "A1").corners
    own = shapely.Polygon([(float(s.x.inches), float(s.y.inches)) for s in corners])
    seen = own.buffer(-0.25, join_style="mitre").area / 144
    assert float(area.value) == pytest.approx(seen, rel=1e-6)


def test_strips_of_random_odd_rooms_are_what_their_layouts_tell():
    for number, spec in enumerate(random_outlines(5, 31)):
        trimmed = {**spec, "flat_mouldings": [FRIEZE, BEAD]}
        layout = laid(trimmed)
        if layout is None:
            continue
        if number % 3 == 0:
            layout = laid(with_measured(trimmed, layout)) or layout
        assert unlike(layout, take_off([layout]).parts) == [], trimmed
        sides = [side for c in outlined(layout).coffers_as_cut for side in c.all_sides]
        figures = [f for side in sides for strip in side.strips for f in figures_in(strip)]
        assert [line for figure in figures for line in contradictions(figure)] == []
