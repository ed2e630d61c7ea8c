"""PNG pictures, read back with a library of pictures and held against the PDF's own pixels."""

import io
from dataclasses import replace

import PIL.Image
import pypdfium2
import pytest

from lacunar.drawing import style
from lacunar.drawing.elements import Polyline, Pt
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.png import paint_png, pixels
from lacunar.drawing.typeface import Typeface
from tests.drawing.painters.fresh_process import run
from tests.drawing.painters.sample_sheets import sample_sheet

RECORD = PdfRecord("Music room", "", "")


@pytest.fixture(scope="module")
def pdf(typeface: Typeface) -> bytes:
    return paint_pdf([sample_sheet()], typeface, RECORD)


@pytest.mark.parametrize("dpi", [20, 96, 97, 150, 301])
def test_it_shows_the_pixels_of_the_pdf(pdf: bytes, dpi: int) -> None:
    picture = PIL.Image.open(io.BytesIO(paint_png(pdf, dpi)))
    due = pypdfium2.PdfDocument(pdf)[0].render(scale=dpi / 72, grayscale=True).to_pil()
    assert (picture.mode, picture.size) == ("L", due.size)
    assert picture.tobytes() == due.tobytes()
    assert picture.info["dpi"] == pytest.approx((dpi, dpi), rel=1e-3)
    assert set(picture.info) == {"dpi"}
    # The page is 11 x 8 1/2 in; a last pixel that is only partly paper counts.
    assert picture.size == pytest.approx((11 * dpi, 8.5 * dpi), abs=1.0)
    assert picture.width * picture.height == pytest.approx(pixels(279.4, 215.9, dpi), rel=1e-2)


def test_a_line_is_where_the_sheet_has_it(typeface: Typeface) -> None:
    """At 254 dpi ten pixels are a millimeter."""
    sheet = replace(sample_sheet(), children=(Polyline((Pt(30, 40), Pt(130, 40)), style.WALL),))
    content = paint_png(paint_pdf([sheet], typeface, RECORD), 254)
    picture = PIL.Image.open(io.BytesIO(content))
    left, top, right, bottom = PIL.Image.eval(picture, lambda gray: 255 - gray).getbbox() or ()
    assert (left, right) == pytest.approx((300, 1300), abs=1)
    assert (top, bottom) == pytest.approx((396.5, 403.5), abs=1)


@pytest.mark.parametrize("dpi", [-1, 0, 19, 601])
def test_a_resolution_out_of_bounds_is_refused(pdf: bytes, dpi: int) -> None:
    with pytest.raises(ValueError, match=f"{dpi} dpi is not within 20 and 600"):
        paint_png(pdf, dpi)


PRINT_PNG = """
import sys
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.png import paint_png
from tests.drawing.painters.sample_sheets import sample_sheet
pdf = paint_pdf([sample_sheet()], load_typeface(), PdfRecord("Music room", "", ""))
sys.stdout.buffer.write(paint_png(pdf, 96))
"""


def test_the_same_page_gives_the_same_bytes_in_every_process(pdf: bytes) -> None:
    assert run(PRINT_PNG, PYTHONHASHSEED="3") == paint_png(pdf, 96)
