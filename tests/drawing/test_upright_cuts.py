"""Sections and elevations of rooms worked by hand: what is cut, where, and what is told of it."""

import json
from fractions import Fraction
from typing import Any

import pytest

from lacunar.drawing.elements import Element, Group, Text, walk
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.paper import ARCHITECTURAL_SCALES, PAPER_SIZES, Scale
from lacunar.drawing.reference_mark import Reference
from lacunar.drawing.sheet_set import compose, title_fields
from lacunar.drawing.sheets.pages import SheetSource
from lacunar.drawing.sheets.section_sheet import section_pages
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.elevations import elevations
from lacunar.drawing.upright.plane import stretches
from lacunar.drawing.upright.sections import section_cut
from lacunar.drawing.upright.view import Hand
from lacunar.drawing.views.room_section import RoomSection
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.drawing import Paper
from lacunar.model.room import RunName
from lacunar.workflow.prepare import prepare

# 1x6 is dressed to 3/4 x 5 1/2 and 1x8 to 3/4 x 7 1/4 (US softwood lumber standard PS 20, Table 3,
# from memory): a beam of 1x8 sides with a 1x6 between them is 5 1/2 + 2 x 3/4 = 7 wide and hangs
# 7 1/4.
BEAMS = {"crosswise": {"sides": "1x8", "bottom": "1x6", "bottom_joint": "between"}}
GRID = {"length": {"coffers": 4}, "width": {"coffers": 3}}
FOUR = {"room": {"length": 240, "width": 180, "height": 108}, "beams": BEAMS, "grid": GRID}
ELL = [(0, 0), (0, 180), (120, 180), (120, 120), (240, 120), (240, 0)]
OUTLINE = {"points": [{"x": x, "y": y} for x, y in ELL]}
ODD = {"room": {"height": 108, "outline": OUTLINE}, "beams": BEAMS, "grid": GRID}


def layout_of(spec: dict[str, Any]) -> Layout:
    return prepare(json.dumps(spec).encode()).layout


def inches(length: Length) -> Fraction:
    return length.inches


def cuts(cut: UprightCut) -> dict[str, tuple[Fraction, Fraction]]:
    """What is cut, with both its faces from the left end of the view [in]."""
    return {beam.id: (inches(beam.near), inches(beam.far)) for beam in cut.beams}


def test_a_section_along_the_length_cuts_crosswise_beams_where_they_are_set_out():
    # Half beams of 3 1/2 at both walls: each opening 240/4 - 7 = 53, centers at 60, 120 and 180.
    cut = section_cut(layout_of(FOUR), RunName.LENGTH)
    half = Fraction(7, 2)
    assert cuts(cut) == {
        "WB-1": (0, half),
        "XB-1": (60 - half, 60 + half),
        "XB-2": (120 - half, 120 + half),
        "XB-3": (180 - half, 180 + half),
        "WB-3": (240 - half, 240),
    }
    assert {each.id for each in cut.behind} == {"LB-2"}


def test_sections_go_through_the_middle_of_a_row_of_coffers():
    layout = layout_of(FOUR)
    # Three rows: the middle one's center is half the width. Four columns: the second one's, 90.
    assert [section_cut(layout, run).at for run in RunName] == [Length.of_inches(90)] * 2


def test_a_section_along_the_width_is_seen_towards_w1():
    cut = section_cut(layout_of(FOUR), RunName.WIDTH)
    assert [end.wall for end in cut.ends] == ["W4", "W2"]
    assert {each.id for each in cut.behind} == {"XB-1"}


@pytest.mark.parametrize(
    ("wall", "left", "first", "near"),
    [
        ("W1", "W4", "LB-1", 60),
        ("W2", "W1", "XB-1", 60),
        ("W3", "W2", "LB-2", 60),
        ("W4", "W3", "XB-3", 60),
    ],
)
def test_walls_are_seen_from_inside_going_round_clockwise(
    wall: str, left: str, first: str, near: int
):
    (found,) = (each for each in elevations(layout_of(FOUR)) if each.wall == wall)
    assert found.cut.ends[0].wall == left
    beam = found.cut.beams[1]
    assert (beam.id, inches(beam.near)) == (first, near - Fraction(7, 2))
    assert {each.id for each in found.cut.behind} == {f"WB-{wall[1:]}"}


def test_a_surveyed_wall_is_seen_as_long_as_it_is():
    sides = {"W1": 180, "W2": 240, "W3": 178, "W4": 242}
    room = {"height": 108, "survey": {"sides": sides, "diagonals": {"rising": 300}}}
    found = {each.wall: each.cut.span for each in elevations(layout_of({**FOUR, "room": room}))}
    assert found == {wall: Length.of_inches(side) for wall, side in sides.items()}


def test_a_line_across_an_ell_is_in_the_room_where_that_is():
    layout = layout_of(ODD)
    for at, ends in ((60, [(0, 240)]), (150, [(0, 120)])):
        found = stretches(layout, RunName.LENGTH, Length.of_inches(at))
        assert [(inches(one.at), inches(other.at)) for one, other in found] == ends


def test_an_elevation_ends_at_a_corner_that_juts_in():
    # W5 goes down from (120, 180) to (120, 120); there the room goes on to the right.
    (wall,) = (each for each in elevations(layout_of(ODD)) if each.wall == "W5")
    assert [end.wall for end in wall.cut.ends] == ["W2", ""]
    assert wall.cut.span == Length.of_inches(60)


def test_a_door_is_seen_from_the_left_corner_of_its_wall():
    # 20 from the datum on W4, which is seen from W3 on the left: 240 - 20 - 36/2 = 202.
    door = {"name": "Door", "kind": "door", "wall": "W4", "center": 20, "width": 36, "head": 80}
    layout = layout_of({**FOUR, "room": {**FOUR["room"], "wall_features": [door]}})
    (seen,) = (feature for each in elevations(layout) for feature in each.features)
    assert (inches(seen.near), inches(seen.far)) == (202, 238)


def texts(elements: tuple[Element, ...]) -> list[str]:
    return [each.text for each in walk(elements) if isinstance(each, Text)]


def hand(scale: Scale) -> Hand:
    layout = layout_of(FOUR)
    return Hand(1, scale, SheetWording.of(layout.ceiling), load_typeface())


def section(references: dict[str, Reference]) -> tuple[Element, ...]:
    cut = section_cut(layout_of(FOUR), RunName.LENGTH)
    (scale,) = (each for each in ARCHITECTURAL_SCALES if each.ratio == 24)
    return RoomSection(cut, hand(scale)).drawn(references).children


def test_a_section_tells_heights_headroom_and_its_limit():
    # 9'-0" less 7 1/4" is 8'-4 3/4"; over 7'-0", the least of a model code (IRC R305.1, from
    # memory), 1'-4 3/4" are left.
    told = texts(section({}))
    for figure in ("9'-0\"", "8'-4 3/4\"", '7 1/4"', "7'-0\"", "1'-4 3/4\""):
        assert figure in told
    assert "LIMIT 7'-0\", KEPT" in told


def test_a_headroom_that_is_not_kept_is_told():
    layout = layout_of({**FOUR, "room": {**FOUR["room"], "headroom": 102}})
    cut = section_cut(layout, RunName.LENGTH)
    drawn = RoomSection(cut, hand(ARCHITECTURAL_SCALES[6])).drawn({})
    assert "LIMIT 8'-6\", NOT KEPT" in texts(drawn.children)


def test_a_profile_that_is_drawn_elsewhere_is_marked_once_below_its_first_beam():
    reference = Reference("profile-P1", 3, "Z-501")
    drawn = section({"profile-P1": reference, "profile-P99": Reference("profile-P99", 9, "Z-501")})
    marks = [each for each in walk(drawn) if isinstance(each, Group) and each.kind == "reference"]
    assert [mark.data["name"] for mark in marks] == ["profile-P1"]
    assert texts(marks[0].children) == ["3", "Z-501"]


def test_a_profile_cut_by_both_sections_of_a_sheet_is_marked_by_one():
    prepared = prepare(json.dumps({**FOUR, "drawing": {"paper": "arch_d"}}).encode())
    paper, typeface = PAPER_SIZES[Paper.ARCH_D], load_typeface()
    fields = title_fields(prepared.layout.ceiling, prepared.digest, paper)
    references = {"profile-P1": Reference("profile-P1", 3, "Z-501")}
    pages = section_pages(SheetSource(prepared.layout, paper, fields, typeface, references))
    marks = [
        each
        for page in pages
        for each in walk(page.children)
        if isinstance(each, Group) and each.kind == "reference"
    ]
    assert len(marks) == 1


def test_a_room_too_long_for_its_paper_at_any_scale_says_so():
    """The plan alone decides what paper is too small: these sheets leave a view out instead."""
    room = {"length": "290'", "width": "12'", "height": "9'"}
    grid = {"length": {"coffers": 20}, "width": {"coffers": 1}}
    spec = {
        "room": room,
        "grid": grid,
        "drawing": {"paper": "letter", "sheets": ["Z-201", "Z-301"]},
    }
    prepared = prepare(json.dumps(spec).encode())
    sheets = compose(prepared.layout, prepared.digest, load_typeface()).sheets
    told = " ".join(text for sheet in sheets for text in texts(sheet.children))
    assert "Not drawn, being longer than this paper at any scale: WALL W2, WALL W4." in told
    assert "scale: SECTION ALONG THE LENGTH." in told
