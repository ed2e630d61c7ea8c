import ctypes
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Literal

import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from lacunar.drawing.elements import Face, Text
from lacunar.drawing.painters import cairo_letters, pdf
from lacunar.drawing.painters.engine import CAIROSVG_VERSION, STOCK_TEXT_VARIABLE
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.unavailable import CairoMissing, DrawingUnavailable
from lacunar.drawing.paper import PAPER_SIZES
from lacunar.drawing.typeface import Typeface
from tests.drawing.painters.fresh_process import run
from tests.drawing.painters.sample_sheets import DIMENSION, TEXTS, sample_sheet

RECORD = PdfRecord("Music room", "Owner & Co", "Coffered ceiling", ("coffer", "beam"), "2026-03-02")
Anchor = Literal["start", "middle", "end"]
MM = 72 / 25.4
"""Points per millimeter: a point is 1/72 in (ISO 32000-1, 8.3.2.3), an inch 25.4 mm."""


def painted(typeface: Typeface, *sheets_of: str) -> pypdfium2.PdfDocument:
    sheets = [sample_sheet(sheet_id) for sheet_id in sheets_of or ("Z-101",)]
    return pypdfium2.PdfDocument(paint_pdf(sheets, typeface, RECORD))


def stroked_lines(page: pypdfium2.PdfPage) -> Iterator[tuple[float, float, float, float]]:
    """The straight lines of two points on a page [mm from its upper left corner]."""
    height = page.get_height()
    for shape in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_PATH]):
        if pdfium.FPDFPath_CountSegments(shape.raw) == 2:
            matrix = shape.get_matrix()
            ends = []
            for index in range(2):
                x, y = ctypes.c_float(), ctypes.c_float()
                segment = pdfium.FPDFPath_GetPathSegment(shape.raw, index)
                assert pdfium.FPDFPathSegment_GetPoint(segment, x, y)
                across, up = matrix.on_point(x.value, y.value)
                ends += [across / MM, (height - up) / MM]
            yield ends[0], ends[1], ends[2], ends[3]


def test_every_paper_keeps_its_size(typeface: Typeface) -> None:
    sizes = list(PAPER_SIZES.values())
    sheets = [
        sample_sheet(f"Z-{number}", size.width, size.height)
        for number, size in enumerate(sizes, start=101)
    ]
    document = pypdfium2.PdfDocument(paint_pdf(sheets, typeface, RECORD))
    assert len(document) == len(sizes) == 10
    for page, size in zip(document, sizes, strict=True):
        left, bottom, right, top = page.get_mediabox()
        assert (left, bottom) == (0, 0)
        assert right / MM == pytest.approx(size.width, abs=0.1)
        assert top / MM == pytest.approx(size.height, abs=0.1)
        assert page.get_cropbox() == page.get_mediabox()


def test_a_line_of_100_mm_measures_100_mm(typeface: Typeface) -> None:
    lines = list(stroked_lines(painted(typeface)[0]))
    assert len(lines) == 1
    assert lines[0] == pytest.approx((30.0, 40.0, 130.0, 40.0), abs=0.01)


def test_every_text_can_be_read_back(typeface: Typeface) -> None:
    """PDFium hands out every kind of space as the plain one."""
    text = painted(typeface)[0].get_textpage().get_text_range()
    for element in TEXTS:
        assert element.text.replace("\u2009", " ") in text


@pytest.mark.parametrize(("anchor", "share"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_a_text_is_anchored_by_its_advance(
    typeface: Typeface, anchor: Anchor, share: float
) -> None:
    text = replace(TEXTS[0], anchor=anchor, at=replace(TEXTS[0].at, x=100.0, y=60.0))
    sheet = replace(sample_sheet(), children=(text,))
    page = pypdfium2.PdfDocument(paint_pdf([sheet], typeface, RECORD))[0]
    x, y = ctypes.c_double(), ctypes.c_double()
    assert pdfium.FPDFText_GetCharOrigin(page.get_textpage().raw, 0, x, y)
    start = 100.0 - share * typeface.width(text.text, text.height, text.face)
    assert x.value / MM == pytest.approx(start, abs=0.01)
    assert (page.get_height() - y.value) / MM == pytest.approx(60.0, abs=0.01)


def test_capitals_are_as_tall_as_asked(typeface: Typeface) -> None:
    sheet = replace(sample_sheet(), children=(replace(TEXTS[2], text="H", height=7.0),))
    page = pypdfium2.PdfDocument(paint_pdf([sheet], typeface, RECORD))[0]
    _, bottom, _, top = page.get_textpage().get_charbox(0)
    assert (top - bottom) / MM == pytest.approx(7.0, abs=0.02)


def test_all_fonts_are_ours_and_embedded(typeface: Typeface) -> None:
    names = set()
    for shape in painted(typeface)[0].get_objects(filter=[pdfium.FPDF_PAGEOBJ_TEXT]):
        font = pdfium.FPDFTextObj_GetFont(shape.raw)
        length = pdfium.FPDFFont_GetBaseFontName(font, None, 0)
        buffer = ctypes.create_string_buffer(length)
        pdfium.FPDFFont_GetBaseFontName(font, buffer, length)
        assert pdfium.FPDFFont_GetIsEmbedded(font) == 1
        names.add(buffer.value.decode().split("+")[-1])
    assert names == {typeface.family[face].replace(" ", "") for face in Face}


def test_nothing_is_drawn_as_a_picture(typeface: Typeface) -> None:
    assert not list(painted(typeface)[0].get_objects(filter=[pdfium.FPDF_PAGEOBJ_IMAGE]))


def test_each_sheet_has_a_bookmark_and_a_page_label(typeface: Typeface) -> None:
    document = painted(typeface, "Z-001", "Z-101", "Z-201")
    labels = [document.get_page_label(index) for index in range(len(document))]
    assert labels == ["Z-001", "Z-101", "Z-201"]
    bookmarks = [(mark.get_title(), mark.get_dest().get_index()) for mark in document.get_toc()]
    assert bookmarks == [
        ("Z-001 Reflected ceiling plan", 0),
        ("Z-101 Reflected ceiling plan", 1),
        ("Z-201 Reflected ceiling plan", 2),
    ]


def test_the_record_is_in_the_properties(typeface: Typeface) -> None:
    properties = painted(typeface).get_metadata_dict()
    assert properties["Title"] == "Music room"
    assert properties["Author"] == "Owner & Co"
    assert properties["Subject"] == "Coffered ceiling"
    assert properties["Keywords"] == "coffer, beam"
    assert properties["Creator"].startswith("Lacunar ")
    assert "20260302000000" in properties["CreationDate"]


def test_an_undated_set_has_a_fixed_date(typeface: Typeface) -> None:
    data = paint_pdf([sample_sheet()], typeface, PdfRecord("Room", "", "", ()))
    properties = pypdfium2.PdfDocument(data).get_metadata_dict()
    assert "20000101000000" in properties["CreationDate"]
    assert properties["Author"] == ""


def test_a_date_that_is_none_is_refused(typeface: Typeface) -> None:
    with pytest.raises(ValueError, match="isoformat"):
        paint_pdf([sample_sheet()], typeface, replace(RECORD, date="next week"))


def test_an_empty_set_is_refused(typeface: Typeface) -> None:
    with pytest.raises(ValueError, match="at least one sheet"):
        paint_pdf([], typeface, RECORD)


PRINT_PDF = f"""
import sys
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.engine import CAIROSVG_VERSION, STOCK_TEXT_VARIABLE
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from tests.drawing.painters.sample_sheets import sample_sheet
data = paint_pdf([sample_sheet(), sample_sheet("Z-102", 841, 594)], load_typeface(), {RECORD!r})
sys.stdout.buffer.write(data)
"""


def test_the_same_sheets_give_the_same_bytes_in_every_process(
    typeface: Typeface, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Another hash seed, another cache folder, another font configuration: the same bytes."""
    here = paint_pdf([sample_sheet(), sample_sheet("Z-102", 841, 594)], typeface, RECORD)
    cache = str(tmp_path_factory.mktemp("a cache & more"))
    assert run(PRINT_PDF, PYTHONHASHSEED="1", LACUNAR_CACHE=cache) == here
    assert run(PRINT_PDF, PYTHONHASHSEED="2", FONTCONFIG_FILE="/etc/fonts/fonts.conf") == here


def grays(typeface: Typeface, texts: Sequence[Text]) -> bytes:
    """The sample sheet with other texts at 96 dpi, a byte of gray per pixel."""
    plain = sample_sheet()
    sheet = replace(plain, children=(*texts, *(c for c in plain.children if c != DIMENSION)))
    page = pypdfium2.PdfDocument(paint_pdf([sheet], typeface, RECORD))[0]
    return bytes(page.render(scale=96 / 72, grayscale=True).buffer)


@pytest.mark.parametrize(
    ("anchored", "most"),
    [(False, 5), (True, 4000)],
    ids=["from the start: the same", "in the middle and at the end: moved by 0.3 mm at most"],
)
def test_whole_texts_look_as_cairosvg_draws_them(
    typeface: Typeface, monkeypatch: pytest.MonkeyPatch, anchored: bool, most: int
) -> None:
    texts = [text if anchored else replace(text, anchor="start") for text in TEXTS]
    whole = grays(typeface, texts)
    monkeypatch.setenv(STOCK_TEXT_VARIABLE, "1")
    stock = grays(typeface, texts)
    assert len(whole) == len(stock) > 800_000
    assert sum(abs(a - b) > 32 for a, b in zip(whole, stock, strict=True)) <= most


WITHOUT_CAIRO = """
import ctypes.util, sys, types

class NoLibrary:
    def dlopen(self, name):
        raise OSError(f"cannot load library {name!r}")

library = types.ModuleType("cairocffi.ffi")
library.ffi = NoLibrary()
sys.modules["cairocffi.ffi"] = library
ctypes.util.find_library = lambda name: None

from lacunar.drawing.painters.engine import engine
from lacunar.drawing.painters.fonts import load_font_styles, load_typeface
from lacunar.drawing.painters.engine import CAIROSVG_VERSION, STOCK_TEXT_VARIABLE
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.painters.unavailable import CairoMissing
from tests.drawing.painters.sample_sheets import sample_sheet

typeface = load_typeface()
document = paint_svg(sample_sheet(), typeface, fonts=load_font_styles())
assert document.endswith("</svg>\\n")
assert engine()["cairo"] == "missing"
try:
    paint_pdf([sample_sheet()], typeface, PdfRecord("Room", "", ""))
except CairoMissing as missing:
    print(missing)
"""


def test_without_cairo_there_is_svg_and_a_sentence_what_to_install() -> None:
    complaint = run(WITHOUT_CAIRO).decode().strip()
    assert "cairo" in complaint
    assert "install" in complaint
    assert complaint.count("\n") == 0
    assert "SVG sheets need nothing more" in complaint


def test_a_cairo_too_old_is_said_so(typeface: Typeface, monkeypatch: pytest.MonkeyPatch) -> None:
    cairo = cairo_letters.load_cairo()
    monkeypatch.setattr(cairo, "cairo_version", lambda: 11400)
    with pytest.raises(CairoMissing, match=r"cairo 1\.16 or newer"):
        paint_pdf([sample_sheet()], typeface, RECORD)


AFTER_OTHER_TEXT = """
import os
os.environ["FONTCONFIG_FILE"] = os.environ["OTHER_FONTS"]
import cairocffi
context = cairocffi.Context(cairocffi.PDFSurface(None, 9, 9))
context.select_font_face("sans-serif")
context.show_text("drawn before")

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.engine import CAIROSVG_VERSION, STOCK_TEXT_VARIABLE
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.unavailable import WrongFont
from tests.drawing.painters.sample_sheets import sample_sheet
try:
    paint_pdf([sample_sheet()], load_typeface(), PdfRecord("Room", "", ""))
except WrongFont as wrong:
    print(wrong)
"""


def test_with_a_font_that_is_not_ours_nothing_is_drawn(
    tmp_path_factory: pytest.TempPathFactory,
) -> None:
    """Whoever draws text earlier in the process fixes the fonts that cairo can see."""
    other = tmp_path_factory.mktemp("fonts") / "fonts.conf"
    other.write_text("<fontconfig><dir>/nowhere</dir></fontconfig>")
    complaint = run(AFTER_OTHER_TEXT, OTHER_FONTS=str(other)).decode().strip()
    assert "cairo gave another" in complaint
    assert complaint.count("\n") == 0


def test_a_single_letter_of_another_width_is_noticed(typeface: Typeface) -> None:
    medium = {**typeface.advances[Face.MEDIUM], "g": typeface.advances[Face.MEDIUM]["g"] + 0.001}
    other = replace(typeface, advances={**typeface.advances, Face.MEDIUM: medium})
    with pytest.raises(DrawingUnavailable, match="cairo gave another"):
        paint_pdf([sample_sheet()], other, RECORD)


def test_a_damaged_font_configuration_is_written_anew(
    typeface: Typeface, monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory
) -> None:
    cache = tmp_path_factory.mktemp("cache")
    first = run(PRINT_PDF, LACUNAR_CACHE=str(cache))
    (configuration,) = cache.glob("*/fonts.conf")
    content = configuration.read_bytes()
    configuration.write_text("<fontconfig><dir>/usr/share/fonts</dir></fontconfig>")
    assert run(PRINT_PDF, LACUNAR_CACHE=str(cache)) == first
    assert configuration.read_bytes() == content


def test_another_cairosvg_may_not_be_reached_into(
    typeface: Typeface, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = paint_pdf([sample_sheet()], typeface, RECORD)
    monkeypatch.setattr(pdf, "version", lambda package: "2.10.0")
    with pytest.raises(DrawingUnavailable, match=re.escape(f"cairosvg=={CAIROSVG_VERSION}")):
        paint_pdf([sample_sheet()], typeface, RECORD)
    monkeypatch.setenv(STOCK_TEXT_VARIABLE, "1")
    stock = paint_pdf([sample_sheet()], typeface, RECORD)
    assert stock.startswith(b"%PDF-")
    assert stock != whole
