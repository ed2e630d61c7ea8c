"""Halls of many coffers and slender rooms on the largest papers, each held to every point."""

import json

import pytest

from lacunar.drawing.lifting import Lead, stands
from lacunar.model.faults import SpecRefused
from lacunar.workflow.check import check_drawings
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import prepare

INCH_BEAM = {"sides": "1x8", "bottom": "1x6", "bottom_joint": "between", "reveal": "1/4"}
MM_BEAM = {
    "sides": {"thickness": 19, "width": 140},
    "bottom": {"thickness": 19, "width": 100},
    "bottom_joint": "between",
    "reveal": 6,
}


def prepared(units, sides, coffers, paper, **parts):
    document = {
        "name": "Hall",
        "units": units,
        "room": {"length": sides[0], "width": sides[1], "height": 118 if units == "in" else 3000},
        "beams": {"crosswise": INCH_BEAM if units == "in" else MM_BEAM, "lengthwise": "same"},
        "grid": {"length": {"coffers": coffers[0]}, "width": {"coffers": coffers[1]}},
        "drawing": {"paper": paper},
        **parts,
    }
    return prepare(json.dumps(document).encode())


LARGE = [
    ("mm", (36000, 36000), (30, 30), "a1"),
    ("mm", (42000, 24000), (35, 20), "a1"),
    ("in", (1440, 1440), (30, 30), "arch_d"),
    ("in", (108, 1080), (3, 30), "arch_d"),
    ("in", (1080, 108), (30, 3), "arch_d"),
    ("in", (2000, 600), (60, 15), "arch_d"),
]


@pytest.mark.parametrize(("units", "sides", "coffers", "paper"), LARGE)
def test_a_large_or_slender_room_is_drawn_and_keeps_every_point(units, sides, coffers, paper):
    assert check_drawings(prepared(units, sides, coffers, paper)) == ()


def test_a_paper_too_small_names_the_one_that_would_do():
    with pytest.raises(SpecRefused) as refusal:
        compose_sheets(prepared("mm", (36000, 36000), (30, 30), "a3"))
    (fault,) = refusal.value.faults
    assert '"a1"' in fault.remedy


def test_where_no_paper_would_do_the_refusal_says_what_has_no_room_and_at_which_scale():
    with pytest.raises(SpecRefused) as refusal:
        compose_sheets(prepared("in", (720, 540), (45, 20), "arch_c"))
    (fault,) = refusal.value.faults
    assert fault.remedy.startswith(
        'Not even arch_d paper holds it. At 3/8" = 1\'-0" W4 has no room.'
    )


def test_figures_twice_as_wide_as_they_stand_apart_take_two_levels_in_turn():
    # Leaders 10 apart, figures 18 wide: on one level every other one fits, and those between pass.
    leads = [Lead(10.0 * n, 9.0) for n in range(1, 8)]
    found = stands(leads, 0.0, 80.0, 3)
    assert found is not None
    assert [stand.level for stand in found] == [1, 2, 1, 2, 1, 2, 1] or [
        stand.level for stand in found
    ] == [2, 1, 2, 1, 2, 1, 2]
    assert all(abs(s.middle - lead.at) < 1e-9 for s, lead in zip(found, leads, strict=True))


def test_a_heap_of_narrow_segments_has_room_for_two_on_each_level():
    # Leaders 1 apart, figures 20 wide: none passes another, so levels rise and fall again.
    leads = [Lead(40.0 + n, 10.0) for n in range(10)]
    found = stands(leads, 0.0, 90.0, 5)
    assert found is not None
    assert [stand.level for stand in found] == [1, 2, 3, 4, 5, 5, 4, 3, 2, 1]
    assert stands([*leads, Lead(50.0, 10.0)], 0.0, 90.0, 5) is None
