"""Beam sections show every part as large as their words say, and are drawn for beams of any size.

Sizes are from the trade: a 2x4 laid flat is 1 1/2 by 3 1/2, a 1x8 3/4 by 7 1/4, a 1x6 3/4 by 5 1/2
(American Softwood Lumber Standard, PS 20). A panel fitted before the sides keeps them down from the
ceiling by its thickness; one fitted before the backing keeps that down too.
"""

import json
import re
from fractions import Fraction
from xml.etree import ElementTree

import pytest

from lacunar.drawing.painters.svg import paint_svg
from lacunar.workflow.check import check_drawings
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import prepare

ROOM = {"length": "16'", "width": "12'", "height": "9'"}
SVG = "{http://www.w3.org/2000/svg}"
PANEL = {"kind": "sheet_goods", "thickness": "3/4"}
BOX = {"sides": "1x8", "bottom": "1x6", "bottom_joint": "between", "reveal": "1/4"}


def prepared(**spec):
    return prepare(json.dumps({"room": ROOM, **spec}).encode())


def first_section(ceiling):
    """The view of the first section on the emitted sheets, and its ratio."""
    return next(sections(ceiling))


def sections(ceiling):
    """The views of sections on the emitted sheets, each with its ratio."""
    sheets, typeface = compose_sheets(ceiling)
    for sheet in sheets.sheets:
        root = ElementTree.fromstring(paint_svg(sheet, typeface, fonts=None))
        for group in root.iter(f"{SVG}g"):
            if group.get("data-view") == "beam-section":
                yield group, float(group.get("data-scale"))


def rectangles(view, ratio):
    """The outlines in a section as (left, top, right, bottom) [in], from ceiling and left side."""
    (drawn,) = (g for g in view.iter(f"{SVG}g") if g.get("class") == "object")
    lines = [path.get("d") for path in drawn.iter(f"{SVG}path")]
    numbers = [[float(n) for n in re.findall(r"-?[\d.]+", line)] for line in lines]
    found = [
        (min(each[::2]), min(each[1::2]), max(each[::2]), max(each[1::2]))
        for line, each in zip(lines, numbers, strict=True)
        if line.endswith("Z")
    ]
    ceiling = numbers[0][1]
    left = min(box[0] for box in found)
    return [
        tuple(
            Fraction(round((value - origin) * ratio / 25.4 * 16), 16)
            for value, origin in zip(box, (left, ceiling, left, ceiling), strict=True)
        )
        for box in found
    ]


def test_backing_of_a_stock_is_drawn_as_thick_as_its_words_say():
    beams = {"crosswise": {**BOX, "sides": "1x6", "bottom": "1x4", "backing": "2x4"}}
    view, ratio = first_section(prepared(beams=beams))
    assert 'BACKING 1 1/2" x 3 1/2"' in "".join(view.itertext())
    assert (Fraction(3, 4), 0, Fraction(17, 4), Fraction(3, 2)) in rectangles(view, ratio)


@pytest.mark.parametrize(
    ("seat", "side_top", "backing_top"),
    [("between_sides", 0, 0), ("between_backing", "3/4", 0), ("above_backing", "3/4", "3/4")],
)
def test_sides_and_backing_hang_below_the_panel_that_is_fitted_before_them(
    seat, side_top, backing_top
):
    ceiling = prepared(beams={"crosswise": BOX}, panel={**PANEL, "seat": seat})
    view, ratio = first_section(ceiling)
    side_top, backing_top = Fraction(side_top), Fraction(backing_top)
    found = rectangles(view, ratio)
    assert 'SIDE 3/4" x 7 1/4"' in "".join(view.itertext())
    assert 'PANEL 3/4"' in "".join(view.itertext())
    assert (0, side_top, Fraction(3, 4), side_top + Fraction(29, 4)) in found
    # The bottom is 3/4 thick and 1/4 up from the lowest edge; the backing reaches down to it.
    backing = (Fraction(3, 4), backing_top, Fraction(25, 4), side_top + Fraction(25, 4))
    assert backing in found
    assert check_drawings(ceiling) == ()


@pytest.mark.parametrize(
    "box",
    [{"width": "20"}, {"width": "5'"}, {"drop": "9'"}],
    ids=["20 in wide", "5 ft wide", "9 ft deep"],
)
def test_a_section_of_a_large_beam_takes_a_smaller_scale(box):
    room = {"length": "20'", "width": "15'", "height": "16'"}
    assert check_drawings(prepared(room=room, beams={"crosswise": box})) == ()


def test_a_clad_member_is_drawn_with_what_is_on_it():
    member = {"on": "length", "center": "10'", "width": "3 1/2", "drop": 5, "cladding": "1/2"}
    room = {"length": "20'", "width": "15'", "height": "9'", "members": [member]}
    ceiling = prepared(room=room, beams={"crosswise": {**BOX, "bottom": "1x10", "width": 9}})
    # In the middle of 9 in: from 2 3/4 to 6 1/4 bare; with 1/2 in on each side and below it.
    bare = (Fraction(11, 4), 0, Fraction(25, 4), 5)
    clad = (Fraction(9, 4), 0, Fraction(27, 4), Fraction(11, 2))
    drawn = [rectangles(*section) for section in sections(ceiling)]
    assert any(bare in found and clad in found for found in drawn)
    assert check_drawings(ceiling) == ()
