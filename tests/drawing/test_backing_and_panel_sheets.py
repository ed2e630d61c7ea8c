"""Sheets of backing and of panels: what stands on them, by hand-worked rooms and odd papers."""

import re
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import drawn_set, found

FEET = {"room": {"length": 192, "width": 144, "height": 108}}
GRID = {"length": {"coffers": 4}, "width": {"coffers": 3}}
BACKING, PANELS = ["Z-103"], ["Z-104"]


def texts(spec: dict[str, Any], sheets: list[str], paper: str = "ansi_c") -> str:
    """All words on sheets of a spec, which pass the checker, in a row."""
    svgs, answer = drawn_set({**spec, "drawing": {"paper": paper}}, sheets)
    assert not found(svgs, answer)
    return " ".join(re.findall(r">([^<>]+)</text>", "".join(svgs))).replace("&quot;", '"')


def test_backing_is_told_from_the_start_wall():
    """Beams 7 in wide stand every 48 in; sides of 3/4 in leave 5 1/2 in of backing: by hand.

    First beam: 48 - 2 3/4 = 45 1/4 and 48 + 2 3/4 = 50 3/4; half beams: 3 1/2 - 3/4 = 2 3/4.
    """
    told = texts({**FEET, "grid": GRID}, BACKING)
    for figure in ("3'-9 1/4\"", "4'-2 3/4\"", '2 3/4"', "16'-0\""):
        assert f" {figure} " in told, figure


def test_forms_are_those_of_four_by_three_coffers():
    """(m-1)(n-1) crosses, 2(m-1) + 2(n-1) tees, 4 ells, (m+1)n + (n+1)m middles: 6, 10, 4, 31."""
    svgs, _ = drawn_set({**FEET, "grid": GRID, "drawing": {"paper": "ansi_c"}}, BACKING)
    told = "".join(svgs)
    for form, count in (("CROSSES", 6), ("TEES", 10), ("ELLS", 4), ("MIDDLES", 31)):
        row = told.split(f'data-of="{form}"')[1].split("</g>")[0]
        assert f">{count}<" in row


def test_joists_that_are_not_told_are_to_be_found():
    assert "Joists are not known yet." in texts({**FEET, "grid": GRID}, BACKING)


def test_blocks_are_as_long_as_the_bay_is_wide():
    """Joists 16 in apart and 1 1/2 in wide leave 14 1/2 in between them: by hand."""
    joists = {"parallel_to": "width", "spacing": 16, "first": 8, "ceiling": "open"}
    room = {**FEET["room"], "joists": joists}
    told = texts({"room": room, "grid": GRID, "fixing": {"between_joists": "blocking"}}, BACKING)
    assert "1'-2 1/2" in told
    assert "J1: 8" in told
    assert "J2: 2'-0" in told


def test_fasteners_of_a_metric_ceiling_carry_kilograms():
    """A box of 18 mm boards about a block of 136 mm, of which a lag screw passes through 38 mm.

    What one holds, 257.8 lb by the published formula, is 116.9 kg: times 0.45359237, by hand.
    """
    joists = {"parallel_to": "length", "spacing": 600, "first": 310, "width": 60, "ceiling": "open"}
    box = {
        "sides": {"thickness": 18, "width": 160},
        "bottom": {"thickness": 18, "width": 144},
        "bottom_joint": "between",
        "reveal": 6,
    }
    spec = {
        "units": "mm",
        "room": {"length": 6200, "width": 4800, "height": 2900, "joists": joists},
        "beams": {"crosswise": box},
        "grid": GRID,
        "fixing": {"between_joists": "blocking", "fastener": "lag_screw", "size": "1/4"},
    }
    told = texts(spec, BACKING)
    assert "HOLDS, KG" in told
    assert " 116.9 " in told
    assert ", LB" not in told
    assert "pass through 38 of" in told


def test_flat_beams_without_joists_have_nothing_to_be_backed():
    flat = {"crosswise": {"profile": "flat", "bottom": "1x6"}, "lengthwise": "same"}
    spec = {**FEET, "grid": GRID, "beams": flat, "drawing": {"paper": "ansi_c"}}
    svgs, _ = drawn_set(spec, ["Z-101", "Z-103"])
    assert not any('data-sheet="Z-103"' in svg for svg in svgs)


def test_rips_of_an_opening_of_41_inches():
    """Opening 192 / 4 - 7 = 41; boards across 144 / 3 - 7 = 41, less two gaps of 1/8: 40 3/4.

    Covers of 5 in: 9 courses, 7 of them whole, (40 3/4 - 35) / 2 = 2 7/8 for each edge: by hand.
    """
    panel = {"kind": "boards", "cover": 5, "parallel_to": "length", "gap": "1/8"}
    told = texts({**FEET, "grid": GRID, "panel": panel}, PANELS)
    assert "9 COURSES, 3'-4 3/4" in told
    assert "EDGES 2 7/8" in told
    assert " 12X " in told
    assert "wider than half a cover" in told


def test_half_a_cover_that_was_asked_for_is_told():
    panel = {"kind": "boards", "cover": 5, "parallel_to": "length", "centered_on": "joint"}
    assert "Some are half a cover or less" in texts({**FEET, "grid": GRID, "panel": panel}, PANELS)


def test_seams_between_joists_rest_on_strips():
    """Sheets of 24 in along joists 16 in apart that no seam can reach: a strip to each."""
    joists = {"parallel_to": "width", "spacing": 24, "first": 12}
    panel = {"kind": "sheet_goods", "sheet": {"width": 15, "length": 15}}
    room = {**FEET["room"], "joists": joists}
    told = texts({"room": room, "grid": GRID, "panel": panel}, PANELS)
    assert "STRIP 3'-4" in told


def test_the_ceiling_that_is_there_has_no_panel_sheet():
    spec = {**FEET, "grid": GRID, "panel": {"kind": "existing"}, "drawing": {"paper": "ansi_c"}}
    svgs, _ = drawn_set(spec, ["Z-101", "Z-104"])
    assert not any('data-sheet="Z-104"' in svg for svg in svgs)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_paper_too_small_for_the_plan_still_has_the_tables(paper: str):
    """A hall of 40 coffers by 4 on the smallest paper: the sheets never refuse what has tables."""
    room = {"length": 2000, "width": 300, "height": 144}
    spec = {
        "room": room,
        "grid": {"length": {"coffers": 40}, "width": {"coffers": 4}},
        "panel": {"kind": "boards", "cover": 5, "parallel_to": "length"},
    }
    told = texts(spec, ["Z-103", "Z-104"], paper)
    assert "FORMS" in told
    assert "FIRST RIP" in told
