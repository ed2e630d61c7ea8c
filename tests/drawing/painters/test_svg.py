import base64
import math
import re
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont
from svgwrite.validator2 import get_validator

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Face, Group, Pen, Polyline, Pt, Segments, Text
from lacunar.drawing.painters.fonts import FontStyles
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.typeface import Typeface
from tests.drawing.painters.fresh_process import run
from tests.drawing.painters.sample_sheets import TEXTS, sample_sheet

SVG = "{http://www.w3.org/2000/svg}"


def painted(typeface: Typeface, *more: Element) -> ElementTree.Element:
    return ElementTree.fromstring(
        paint_svg(sample_sheet("Z-101", 279.4, 215.9, *more), typeface, fonts=None)
    )


def test_one_unit_is_one_millimeter_of_paper(typeface: Typeface) -> None:
    root = painted(typeface)
    assert (root.get("width"), root.get("height")) == ("279.4mm", "215.9mm")
    assert root.get("viewBox") == "0 0 279.4 215.9"


def test_the_sheet_is_named_for_readers_that_cannot_see_it(typeface: Typeface) -> None:
    root = painted(typeface)
    first, second = root[0], root[1]
    assert (first.tag, first.text) == (f"{SVG}title", "Reflected ceiling plan")
    assert (second.tag, second.text) == (f"{SVG}desc", "A coffer, a line and four texts.")
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == f"{first.get('id')} {second.get('id')}"


def test_groups_carry_id_class_title_and_data(typeface: Typeface) -> None:
    root = painted(typeface)
    assert root.get("id") == "Z-101"
    assert root.get("data-scale") == "24"
    coffer = root.find(f"{SVG}g[@id='C-01']")
    assert coffer is not None
    assert coffer.get("class") == "coffer"
    assert coffer.findtext(f"{SVG}title") == "Coffer C-01"
    assert coffer.get("data-width") == "769/16 in"
    assert coffer.get("data-cut-length") == "4'-0 1/16\""


def test_ids_are_unique(typeface: Typeface) -> None:
    ids = [element.get("id") for element in painted(typeface).iter() if element.get("id")]
    assert len(ids) == len(set(ids)) > 3


@pytest.mark.parametrize("taken", ["C-01", "Z-101", "Z-101-title", "Z-101-desc"])
def test_an_id_given_twice_is_refused_by_name(typeface: Typeface, taken: str) -> None:
    with pytest.raises(ValueError, match=f"sheet 'Z-101'.*id '{taken}'"):
        painted(typeface, Group("coffer", (), id=taken))


def test_lines_are_one_path_each_of_absolute_moves_and_lines(typeface: Typeface) -> None:
    paths = [element.get("d", "") for element in painted(typeface).iter(f"{SVG}path")]
    assert paths == [
        "M30 40 L130 40",
        "M29 41 L31 39 M129 41 L131 39",
        "M30 90 L80 90 L80 140 Z",
    ]


def test_pens_stand_on_the_shapes_they_draw(typeface: Typeface) -> None:
    root = painted(typeface)
    line = root.find(f"{SVG}path")
    circle = root.find(f".//{SVG}circle")
    assert line is not None
    assert circle is not None
    assert (line.get("data-pen"), line.get("stroke-width")) == ("object", "0.35")
    assert line.get("stroke-dasharray") is None
    assert (circle.get("data-pen"), circle.get("stroke-dasharray")) == ("center", "7 1.2 1.2 1.2")
    assert all("stroke-width" not in group.attrib for group in root.iter(f"{SVG}g"))


def test_each_text_is_one_element_with_its_height_and_face(typeface: Typeface) -> None:
    texts = list(painted(typeface).iter(f"{SVG}text"))
    assert [text.text for text in texts] == [text.text for text in TEXTS]
    assert [float(text.get("data-height", "")) for text in texts] == [2.5, 3.5, 5.0, 2.5]
    assert [text.get("data-face") for text in texts] == ["regular", "medium", "semibold", "regular"]
    assert [text.get("text-anchor") for text in texts] == ["start", "middle", "end", "middle"]
    assert [text.get("transform") for text in texts] == [None, None, None, "rotate(-90 20 150)"]
    for text in texts:
        capitals = float(text.get("font-size", "")) * typeface.cap_height
        assert capitals == pytest.approx(float(text.get("data-height", "")), abs=0.001)


def test_a_user_text_cannot_break_the_file(typeface: Typeface) -> None:
    text = Text(Pt(1, 1), "<b>&\x00\ud800 ]]> \t end", 2.5)
    group = Group("note", (text,), title="a\x1bb", data={"name": "x\ufffe\ny"})
    element = painted(typeface, group).find(f".//{SVG}g[@class='note']")
    assert element is not None
    assert element.findtext(f"{SVG}text") == "<b>& ]]> end"
    assert element.findtext(f"{SVG}title") == "ab"
    assert element.get("data-name") == "x y"


def bad_elements(value: float) -> Iterator[Element]:
    yield Polyline((Pt(0, 0), Pt(value, 0)), style.OBJECT)
    yield Segments(((Pt(0, value), Pt(1, 1)),), style.TICK)
    yield Circle(Pt(1, 1), value, style.FINE)
    yield Circle(Pt(value, 1), 1, style.FINE)
    yield Text(Pt(1, value), "x", 2.5)
    yield Text(Pt(1, 1), "x", value)
    yield Polyline((Pt(0, 0), Pt(1, 0)), Pen("broken", value))
    yield Polyline((Pt(0, 0), Pt(1, 0)), Pen("broken", 0.25, (1.0, value)))


@pytest.mark.parametrize("value", [math.nan, math.inf, 20_000.0])
def test_no_number_that_makes_a_line_vanish_gets_through(typeface: Typeface, value: float) -> None:
    for element in bad_elements(value):
        with pytest.raises(ValueError, match="sheet 'Z-101' cannot be painted"):
            painted(typeface, element)


@pytest.mark.parametrize("points", [(), (Pt(1.0, 1.0),)])
def test_a_line_without_length_is_refused(typeface: Typeface, points: tuple[Pt, ...]) -> None:
    with pytest.raises(ValueError, match="no length"):
        painted(typeface, Polyline(points, style.OBJECT))


@pytest.mark.parametrize("width", [0.0, -5.0, math.nan])
def test_a_sheet_without_extent_is_refused(typeface: Typeface, width: float) -> None:
    with pytest.raises(ValueError, match="on paper"):
        paint_svg(replace(sample_sheet(), width=width), typeface, fonts=None)


def test_structure_and_values_are_svg_by_svgwrites_own_tables(typeface: Typeface) -> None:
    """Svgwrite's tables follow SVG 1.1, which knows no `data-`, `aria-` and `role` attributes."""
    validator = get_validator("full", debug=True)
    for parent in painted(typeface).iter():
        tag = parent.tag.removeprefix(SVG)
        known = {
            key: value
            for key, value in parent.attrib.items()
            if not key.startswith(("data-", "aria-")) and key != "role"
        }
        validator.check_all_svg_attribute_values(tag, known)
        for child in parent:
            validator.check_valid_children(tag, child.tag.removeprefix(SVG))


def test_a_browser_gets_the_faces_the_sheet_uses_and_no_other(
    typeface: Typeface, font_styles: FontStyles
) -> None:
    bare = replace(sample_sheet(), children=TEXTS[:2])
    document = paint_svg(bare, typeface, fonts=font_styles)
    rules = re.findall(
        r'@font-face\{font-family:"([^"]+)"[^}]*base64,([A-Za-z0-9+/=]+)\)', document
    )
    assert [family for family, _ in rules] == [
        typeface.family[Face.REGULAR],
        typeface.family[Face.MEDIUM],
    ]
    for (family, data), face in zip(rules, (Face.REGULAR, Face.MEDIUM), strict=True):
        font = TTFont(BytesIO(base64.b64decode(data)))
        assert font["name"].getDebugName(1) == family
        glyphs = font.getBestCmap()
        assert {
            chr(point): font["hmtx"][glyph][0] / font["head"].unitsPerEm
            for point, glyph in glyphs.items()
        } == typeface.advances[face]


def test_a_browser_is_told_not_to_kern(typeface: Typeface, font_styles: FontStyles) -> None:
    document = paint_svg(sample_sheet(), typeface, fonts=font_styles)
    ElementTree.fromstring(document)
    assert (
        "svg{font-kerning:none;font-variant-ligatures:none;text-rendering:geometricPrecision}"
        in document
    )
    assert "<style" not in paint_svg(sample_sheet(), typeface, fonts=None)


PRINT_SVG = """
import sys
from lacunar.drawing.painters.fonts import load_font_styles, load_typeface
from lacunar.drawing.painters.svg import paint_svg
from tests.drawing.painters.fresh_process import run
from tests.drawing.painters.sample_sheets import sample_sheet
document = paint_svg(sample_sheet(), load_typeface(), fonts=load_font_styles())
sys.stdout.buffer.write(document.encode("utf-8"))
"""


def test_the_same_sheet_gives_the_same_bytes_in_every_process(
    typeface: Typeface, font_styles: FontStyles
) -> None:
    here = paint_svg(sample_sheet(), typeface, fonts=font_styles).encode("utf-8")
    for seed in ("1", "2"):
        assert run(PRINT_SVG, PYTHONHASHSEED=seed) == here
