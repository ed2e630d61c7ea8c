"""The room a line of text takes on paper, from font metrics alone.

Advance widths, capital height and the depth of `g` or `y` come with the typeface. Brackets, slashes
and commas dip a little below the baseline too, and marks under letters may hang deeper; how far is
tabled here, and a test holds the table against the outlines of the faces.
"""

from math import cos, radians, sin
from typing import NamedTuple

from lacunar.drawing.checker.shapes import Box, Spot, extent
from lacunar.drawing.elements import Face
from lacunar.drawing.typeface import Typeface

DESCENDING = frozenset("gjpqyµ¡¿†‡\N{CEDILLA}")
DIPPING = frozenset("$(),/;@Q[\\]_{|}¢¦§¶⌀\N{SINGLE LOW-9 QUOTATION MARK}„")
# In parts of the font size.
DIP = 0.18
HANGING = 0.27

# How much of a text lies before its place, by the name of the anchor.
SHARE_BEFORE = {"start": 0.0, "middle": 0.5, "end": 1.0}


def depth(text: str, font_size: float, typeface: Typeface) -> float:
    """How far the text reaches below its baseline [mm]; every marked letter as if marked below."""
    if any(character.isalpha() and not character.isascii() for character in text):
        return font_size * HANGING
    if not DESCENDING.isdisjoint(text):
        return font_size * typeface.descent
    return 0.0 if DIPPING.isdisjoint(text) else font_size * DIP


class Look(NamedTuple):
    """How a text is set: its face, its font size [mm], and which part of it lies at its place."""

    face: Face
    font_size: float
    anchor: str


def text_box(text: str, at: Spot, look: Look, typeface: Typeface) -> Box:
    """The upright box of unturned text: advance width, from capital height down to its depth."""
    height = look.font_size * typeface.cap_height
    width = typeface.width(text, height, look.face)
    left = at.x - width * SHARE_BEFORE[look.anchor]
    return Box(left, at.y - height, left + width, at.y + depth(text, look.font_size, typeface))


def turned(box: Box, angle: float, about: Spot) -> Box:
    """The upright box around a box turned clockwise by `angle` [degrees] about a place."""
    cosine, sine = cos(radians(angle)), sin(radians(angle))
    corners = (
        (x - about.x, y - about.y) for x in (box.left, box.right) for y in (box.top, box.bottom)
    )
    return extent(
        [Spot(about.x + x * cosine - y * sine, about.y + x * sine + y * cosine) for x, y in corners]
    )
