"""Paper mock-ups: what is seen of a beam laid flat, and that it prints true.

Stock sizes are those of the trade: a 1x6 is 3/4 by 5 1/2, a 1x4 3/4 by 3 1/2 (American Softwood
Lumber Standard, PS 20). The box of 1x6 and 1x4, 5 wide with a reveal of 1/4, is the one that a
trade article on box beams builds.
"""

import json
from fractions import Fraction

import pytest

from lacunar.drawing.elements import Text, walk
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.section.records import SectionOf, SectionTrim
from lacunar.drawing.section.room_side import room_side
from lacunar.drawing.sheet_set import compose
from lacunar.drawing.views.mock_up import unfolded
from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import Prepared, prepare
from tests.drawing.printed import lines_over_band, page_of

MM = 25.4
ARTICLE = {"sides": "1x6", "bottom": "1x4", "bottom_joint": "between", "reveal": "1/4"}
ONE_BY_SIX, ONE_BY_FOUR = {"sides": "1x6", "bottom": "1x6"}, {"sides": "1x4", "bottom": "1x4"}


def ceiling(box: dict[str, object], **more: object) -> Prepared:
    drawing = {"paper": "tabloid", "sheets": ["Z-101", "Z-702"], "mock_up": "roll"}
    document = {
        "room": {"length": 144, "width": 144, "height": 108},
        "beams": {"crosswise": box},
        "panel": {"kind": "existing"},
        "drawing": drawing,
        **more,
    }
    return prepare(json.dumps(document).encode())


def section(prepared: Prepared) -> SectionOf:
    layout = prepared.layout
    trim = SectionTrim(layout.mouldings.crown, layout.ceiling.flat_mouldings)
    return SectionOf(1, layout.profiles[0], (), layout.ceiling.panel, trim)


def fields(prepared: Prepared) -> list[tuple[str, Fraction]]:
    strip = unfolded(section(prepared))
    return [(field.words, field.size.inches) for field in strip.fields]


def test_a_box_with_its_bottom_between_is_folded_round_its_reveal():
    half = [("SIDE", Fraction(11, 2)), ("RETURN", Fraction(3, 4)), ("RETURN", Fraction(1, 4))]
    assert fields(ceiling(ARTICLE)) == [*half, ("BOTTOM", Fraction(7, 2)), *half[::-1]]


@pytest.mark.parametrize(
    ("box", "expected"),
    [
        # 5 1/2 down, across 5 1/2, up again.
        ({**ONE_BY_SIX, "bottom_joint": "mitred"}, ["11/2", "11/2", "11/2"]),
        # A 1x4 under sides 3 wide stands out 1/4: 3 1/2 down, a ledge, an edge, across.
        (
            {**ONE_BY_FOUR, "bottom_joint": "under", "overhang": "1/4"},
            ["7/2", "1/4", "3/4", "7/2", "3/4", "1/4", "7/2"],
        ),
        # Flush with the sides, the bottom's edge goes on in their face.
        ({**ONE_BY_FOUR, "bottom_joint": "under"}, ["17/4", "7/2", "17/4"]),
        # A flat beam of one board: an edge, its face, an edge.
        ({"profile": "flat", "bottom": "1x6"}, ["3/4", "11/2", "3/4"]),
        # A 1x6 on a 1x8 leaves 7/8 of it at each edge.
        (
            {"profile": "flat", "bottom": "1x6", "upper_board": "1x8"},
            ["3/4", "7/8", "3/4", "11/2", "3/4", "7/8", "3/4"],
        ),
    ],
    ids=["mitred", "overhang", "flush", "flat", "two boards"],
)
def test_beams_are_laid_flat_by_their_faces(box: dict[str, object], expected: list[str]):
    sizes = [size for _, size in fields(ceiling(box))]
    assert sizes == [Fraction(each) for each in expected]


def test_beside_a_panel_the_strip_goes_on_to_the_ceiling():
    panel = {"kind": "sheet_goods", "thickness": "1/4", "seat": "between_sides"}
    found = fields(ceiling(ARTICLE, panel=panel))
    assert found[:2] == [("PANEL", Fraction(1, 4)), ("SIDE", Fraction(21, 4))]
    assert found[-1] == ("PANEL", Fraction(1, 4))


def test_the_room_sees_crown_then_side_then_bottom():
    """Crown of 3 in drop and 2 in projection on the article's box, by hand."""
    crowned = ceiling(ARTICLE, crown={"drop": 3, "projection": 2})
    corners = [(x.inches, y.inches) for x, y in room_side(section(crowned))]
    inner, low = Fraction(17, 4), Fraction(11, 2)
    middle = Fraction(5, 2)
    expected = [(7, 0), (5, 3), (5, low), (inner, low), (inner, low - Fraction(1, 4))]
    assert corners == [*expected, (middle, low - Fraction(1, 4))]


def test_500_millimeters_of_a_printed_mock_up_are_500_within_a_tenth():
    """Sides of 200 and a bottom of 100, mitred: 500 from ceiling to ceiling."""
    box = {
        "sides": {"thickness": 18, "width": 200},
        "bottom": {"thickness": 18, "width": 100},
        "bottom_joint": "mitred",
    }
    document = {
        "units": "mm",
        "room": {"length": 3600, "width": 3600, "height": 2700},
        "beams": {"crosswise": box},
        "panel": {"kind": "existing"},
        "drawing": {"paper": "a3", "sheets": ["Z-702"], "mock_up": "roll"},
    }
    prepared = prepare(json.dumps(document).encode())
    found = lines_over_band(prepared, "mock-up-P1-beam-1", 500)
    assert found == pytest.approx([0, 200, 300, 500], abs=0.1)


def test_tiles_are_on_paper_any_office_has():
    tiles = {"paper": "arch_d", "sheets": ["Z-702"], "mock_up": "tiles"}
    document, number, sheet = page_of(ceiling(ARTICLE, drawing=tiles), "mock-up-P1-beam-1")
    assert document[number].get_size() == pytest.approx((11 * 72, 8.5 * 72), abs=0.01)
    assert sheet == "Z-702-2"


def test_notes_tell_of_chain_lines_and_crosses_where_there_are_any():
    told = []
    for panel, form in (("existing", "roll"), ("sheet_goods", "tiles")):
        drawing = {"paper": "tabloid", "sheets": ["Z-702"], "mock_up": form}
        prepared = ceiling(ARTICLE, panel={"kind": panel}, drawing=drawing)
        sheets = compose(prepared.layout, prepared.digest, load_typeface()).sheets
        said = " ".join(each.text for each in walk(sheets[0].children) if isinstance(each, Text))
        told.append(("Chain lines" in said, "crosses meet" in said))
    assert told == [(False, False), (True, True)]


def test_no_mock_up_is_drawn_unless_it_is_asked_for():
    plain = ceiling(ARTICLE, drawing={"paper": "tabloid"})
    numbers = [sheet.id for sheet in compose(plain.layout, plain.digest, load_typeface()).sheets]
    assert not any(number.startswith("Z-702") for number in numbers)


def test_beams_that_look_the_same_are_drawn_once_and_no_more_than_six():
    members = [
        {"on": "length", "center": 60 + 60 * n, "width": 3 + n / 2, "drop": 4, "casing": "centered"}
        for n in range(8)
    ]
    room = {"length": 600, "width": 144, "height": 108, "members": members}
    drawing = {"paper": "ansi_d", "sheets": ["Z-702"], "mock_up": "roll"}
    prepared = ceiling(ARTICLE, room=room, drawing=drawing)
    sheets = compose(prepared.layout, prepared.digest, load_typeface()).sheets
    ids = [getattr(child, "id", "") for sheet in sheets for child in sheet.children]
    assert sum(identity.endswith("-beam-1") for identity in ids) == 6
    assert check_drawings(prepared) == ()
