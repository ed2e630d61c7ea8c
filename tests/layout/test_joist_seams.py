"""Seams of sheets on joists, beside their sums."""

from fractions import Fraction
from typing import Any

import pytest

from lacunar.layout.joists import among_joists, joist_lines
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.room import CeilingState, JoistKind, Joists, RunName
from tests.layout.laying_out import Spec, inches, laid_out, room, run


def spec(first: object, spacing: object = 16, **panel: Any) -> Spec:
    """One coffer of 120 by 40 in without beams; joists cross its length."""
    joists = {"parallel_to": "width", "first": first, "spacing": spacing, "width": "1 1/2"}
    return {
        "room": room(120, 40, joists=joists),
        "grid": {"length": run(1), "width": run(1)},
        "panel": {"kind": "sheet_goods", "seat": "above_backing", "gap": 0, **panel},
    }


def places(layout: Layout) -> list[Length]:
    return [seam.value for seam in layout.panels[0].seams_along_length]


def codes(layout: Layout) -> set[str]:
    return {caution.code for caution in layout.cautions}


def test_a_seam_goes_to_the_joist_next_to_where_it_would_lie():
    # 120 from sheets of 96: in equal parts at 60. Joists at 8, 24, 40, 56, 72: 56 is nearest.
    layout = laid_out(spec(8))
    assert places(layout) == [inches("56")]
    (bearing,) = layout.panels[0].seam_bearings
    assert (bearing.offset.value, bearing.backing) == (inches("0"), None)
    assert bearing.bearing is not None
    assert bearing.bearing.value == inches("3/4")
    assert "seams_between_joists" not in codes(layout)


def test_a_seam_after_a_whole_sheet_goes_back_to_the_last_joist_in_reach():
    # At 96 the sheet ends; joists at 6, 22, ... 86, 102: 102 is nearer to no sheet, 86 in reach.
    assert places(laid_out(spec(6, seams="sheet_edge"))) == [inches("86")]


def test_no_piece_is_longer_than_its_sheet():
    # Sheets of 48: three pieces, seams near 40 and 80. Joists every 24 from 12: 36, 60, 84. With 36
    # and 84 the middle piece is just 48; the sum of 4 and 4 is the least.
    layout = laid_out(spec(12, 24, sheet={"width": 48, "length": 48}))
    assert places(layout) == [inches("36"), inches("84")]


def test_where_sheets_do_not_reach_seams_stay_and_a_strip_is_named():
    # Sheets of 64: one seam between 56 and 64; joists at 24 and 72 are out of reach. In equal parts
    # at 60, 12 short of 72; the strip is as long as the coffer is wide.
    sheet = {"width": 64, "length": 64}
    layout = laid_out(spec(24, 48, sheet=sheet))
    assert places(layout) == [inches("60")]
    (bearing,) = layout.panels[0].seam_bearings
    assert bearing.bearing is None
    assert bearing.offset.value == Length.of_inches(-12)
    assert bearing.backing is not None
    assert bearing.backing.value == inches("40")
    (caution,) = (c for c in layout.cautions if c.code == "seams_between_joists")
    assert (caution.figures["strips"], caution.figures["strip"]) == (1, inches("40"))


def test_seams_across_joists_need_none():
    asked = spec(8)
    asked["room"]["joists"] = {"parallel_to": "length", "first": 8}
    layout = laid_out(asked)
    assert places(layout) == [inches("60")]
    assert layout.panels[0].seam_bearings == ()


def test_coffers_of_one_size_with_other_seams_are_told_apart():
    # Coffers of 60 from 0 and from 65; sheets of 48; joists every 16 from 8; seams near 30. In the
    # first 24 is nearest; in the second 88 and 104 are at 23 and 39 from its edge, and 23 is.
    asked = spec(8, sheet={"width": 48, "length": 48}, seat="between_sides")
    asked["room"]["length"] = 125
    asked["grid"]["length"] = run(2)
    asked["beams"] = {"crosswise": {"sides": "1x6", "bottom": "1x4", "bottom_joint": "between"}}
    layout = laid_out(asked)
    seams = {p.coffers: [s.value for s in p.seams_along_length] for p in layout.panels}
    assert seams == {("A1",): [inches("24")], ("A2",): [inches("23")]}


@pytest.mark.parametrize(("panels", "off", "left"), [(1, "1/8", "5/8"), (4, "1/2", "1/4")])
def test_gaps_push_seams_off_the_joists(panels: int, off: str, left: str):
    """Panels of 48 in, three joists each, with gaps of 1/8, from a builder's account: off a grid of
    16 in by 1/2 after four, of a bearing of 3/4."""
    width = Length.of_inches(Fraction(3, 2))
    told = Joists(
        parallel_to=RunName.WIDTH,
        spacing=inches("16"),
        first=inches("0"),
        width=width,
        kind=JoistKind.LUMBER,
        ceiling=CeilingState.OPEN,
        existing_finish=inches("0"),
        species=None,
        gravity=Fraction(42, 100),
    )
    span = inches("240")
    seam = (inches("48") + inches("1/8")) * panels
    found = among_joists(seam, joist_lines(told, span), span)
    assert found.offset.value == inches(off)
    assert found.bearing is not None
    assert found.bearing.value == inches(left)
