"""The box of a text holds its letters, told by the outlines of the faces themselves."""

from io import BytesIO

import pytest
from fontTools.ttLib import TTFont

from lacunar.drawing.checker.lettering import Look, depth, text_box, turned
from lacunar.drawing.checker.shapes import Box, Spot
from lacunar.drawing.elements import Face
from lacunar.drawing.painters.fonts import checked_faces
from lacunar.drawing.typeface import Typeface


@pytest.mark.parametrize("face", list(Face))
def test_no_letter_reaches_below_its_depth(face: Face, typeface: Typeface) -> None:
    font = TTFont(BytesIO(checked_faces()[face]))
    em, outlines = font["head"].unitsPerEm, font["glyf"]
    # Round letters overshoot by up to a fortieth of an em, 0.09 mm at 2.5 mm capitals.
    for point, name in font.getBestCmap().items():
        lowest = getattr(outlines[name], "yMin", 0) if outlines[name].numberOfContours else 0
        assert depth(chr(point), 1.0, typeface) >= -lowest / em - 0.025, chr(point)


def test_plain_capitals_and_figures_stand_on_the_line(typeface: Typeface) -> None:
    assert depth("XB-1 10'-0\" 36.5", 3.582, typeface) == 0


def test_a_box_by_hand(typeface: Typeface) -> None:
    """Figures of the face advance 0.6 em or less each; told here by the typeface's own width."""
    width = typeface.width("12", 2.5, Face.MEDIUM)
    for anchor, left in (("start", 100.0), ("middle", 100 - width / 2), ("end", 100 - width)):
        look = Look(Face.MEDIUM, 2.5 / typeface.cap_height, anchor)
        box = text_box("12", Spot(100.0, 50.0), look, typeface)
        assert box == pytest.approx((left, 47.5, left + width, 50.0))


def test_a_quarter_turn_counter_clockwise_puts_the_top_left(typeface: Typeface) -> None:
    box = turned(Box(100, 47.5, 110, 50), -90, Spot(100, 50))
    assert box == pytest.approx((97.5, 40, 100, 50))
