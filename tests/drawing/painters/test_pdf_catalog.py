"""What a PDF says of itself beside what cairo can say: language, printing, date, identity."""

import ctypes
import re
from pathlib import Path

import pypdfium2
import pypdfium2.raw as pdfium
import pytest

from lacunar.drawing.elements import Text, walk
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.pdf_catalog import completed
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.draw import compose_sheets, painted_pdf
from lacunar.workflow.prepare import prepare
from tests.drawing.painters.sample_sheets import sample_sheet

CEILINGS = Path(__file__).parents[3] / "examples" / "ceilings"
RECORD = PdfRecord("Music room: coffered ceiling", "Owner & Co", "", date="2026-03-02")


@pytest.fixture(scope="module")
def pdf(typeface: Typeface) -> bytes:
    sheets = [sample_sheet("Z-101"), sample_sheet("Z-102", 841, 594), sample_sheet("Z-701")]
    return paint_pdf(sheets, typeface, RECORD)


def objects_by_table(pdf: bytes) -> dict[int, bytes]:
    """Each object where the table at the end says it is."""
    at = int(pdf.rsplit(b"startxref", 1)[1].split()[0])
    count = int(pdf[at:].split(b"\n", 2)[1].split()[1])
    rows = pdf[at:].split(b"\n", 2)[2]
    found = {}
    for number in range(1, count):
        place = int(rows[20 * number : 20 * number + 10])
        found[number] = pdf[place : pdf.index(b"endobj", place)]
        assert found[number].startswith(b"%d 0 obj" % number)
    return found


def test_the_table_says_where_each_object_is(pdf: bytes) -> None:
    assert pdf.startswith(b"%PDF-1.4")
    assert len(objects_by_table(pdf)) == pdf.count(b" 0 obj")


def test_the_catalog_tells_language_and_asks_to_be_printed_at_full_size(pdf: bytes) -> None:
    trailer = pdf[pdf.rindex(b"trailer") :]
    root = objects_by_table(pdf)[int(re.search(rb"/Root (\d+)", trailer)[1])]  # type: ignore[index]
    assert b"/Lang (en-US)" in root
    assert b"/PrintScaling /None" in root
    assert b"/DisplayDocTitle true" in root
    # Told by the reader as well: PDFium offers what a viewer would do on printing.
    document = pypdfium2.PdfDocument(pdf)
    assert pdfium.FPDF_VIEWERREF_GetPrintScaling(document.raw) == 0


def test_pdfium_reads_the_language(pdf: bytes) -> None:
    document = pypdfium2.PdfDocument(pdf)
    length = pdfium.FPDFCatalog_GetLanguage(document.raw, None, 0)
    buffer = (ctypes.c_ushort * (length // 2))()
    pdfium.FPDFCatalog_GetLanguage(document.raw, buffer, length)
    assert bytes(buffer).decode("utf-16-le").rstrip("\0") == "en-US"


def test_date_title_and_identity_are_as_the_format_has_them(pdf: bytes) -> None:
    properties = pypdfium2.PdfDocument(pdf).get_metadata_dict()
    assert properties["CreationDate"] == "D:20260302000000Z"
    assert properties["Title"] == "Music room: coffered ceiling"
    assert re.fullmatch(r"cairo [0-9.]+", properties["Producer"])
    assert re.search(rb"/ID \[<([0-9a-f]{32})> <\1>\]", pdf)


def test_each_face_is_embedded_once_for_all_pages(typeface: Typeface, pdf: bytes) -> None:
    """Cairo keeps letters beyond Latin-1 apart, so a face can be there in two parts, never more."""
    faces = re.findall(rb"/FontName /\w+\+([\w-]+)", pdf)
    assert {one.decode() for one in faces} == {
        family.replace(" ", "") for family in typeface.family.values()
    }
    alone = paint_pdf([sample_sheet("Z-101")], typeface, RECORD)
    assert pdf.count(b"/FontFile2") == alone.count(b"/FontFile2") == len(faces)
    assert pdf.count(b"/ToUnicode") == len(faces)


def test_each_page_has_one_box_and_it_is_the_paper(pdf: bytes) -> None:
    kinds = (b"Media", b"Crop", b"Bleed", b"Trim", b"Art")  # ISO 32000-1, 14.11.2
    boxes = [name for name in re.findall(rb"/(\w+)Box ", pdf) if name in kinds]
    assert boxes == [b"Media"] * 3
    sizes = [page.get_size() for page in pypdfium2.PdfDocument(pdf)]
    # 841 x 594 mm are 2383.937 x 1683.780 points of 1/72 in.
    assert sizes[1] == pytest.approx((2383.937, 1683.780), abs=0.001)


@pytest.mark.parametrize("ceiling", ["music_room", "sommerhaus"])
def test_every_text_of_a_set_can_be_found_in_its_pdf(ceiling: str) -> None:
    """PDFium hands out any space as the plain one, and parts of a line by their places."""
    prepared = prepare((CEILINGS / f"{ceiling}.json").read_bytes())
    sheet_set, letters = compose_sheets(prepared)
    document = pypdfium2.PdfDocument(painted_pdf(prepared, sheet_set.sheets, letters))
    count = 0
    for page, sheet in zip(document, sheet_set.sheets, strict=True):
        read = page.get_textpage().get_text_range()
        for text in (one.text for one in walk(sheet.children) if isinstance(one, Text)):
            assert all(part.strip() in read for part in text.split("\N{THIN SPACE}"))
            count += 1
    assert count > 300


def test_it_tells_no_path_host_or_person_that_nobody_put_in(pdf: bytes) -> None:
    telling = re.compile(rb"://|/home/|/Users/|[A-Z]:\\|\w@\w")
    plain = re.sub(rb"stream\r?\n.*?endstream", b"", pdf, flags=re.DOTALL)
    assert not telling.search(plain)


@pytest.mark.parametrize("pdf", [b"", b"%PDF-1.7\n1 0 obj\nendobj\nstartxref\n9\n%%EOF\n"])
def test_a_file_of_another_form_is_refused(pdf: bytes) -> None:
    with pytest.raises(ValueError, match="plain table"):
        completed(pdf)
