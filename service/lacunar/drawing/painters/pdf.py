"""A sheet set as one PDF: a page of its own size per sheet, with bookmark and page label.

Every page is the sheet's SVG, drawn by cairosvg on one surface of cairo, so the fonts are embedded
once. The bytes depend on the sheets, the record and the versions `engine` names, on nothing else:
the date is an input, never the clock. What cairo has no way to say is added by `pdf_catalog`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from importlib.metadata import version
from io import BytesIO
from typing import Any

from lacunar import __version__
from lacunar.drawing.elements import Sheet
from lacunar.drawing.painters.attributes import printable
from lacunar.drawing.painters.cairo_letters import lettering_cairo
from lacunar.drawing.painters.engine import (
    CAIROSVG_VERSION,
    STOCK_TEXT_VARIABLE,
    stock_text,
)
from lacunar.drawing.painters.pdf_catalog import completed
from lacunar.drawing.painters.svg import svg_tree
from lacunar.drawing.painters.unavailable import DrawingUnavailable
from lacunar.drawing.typeface import Typeface

_UNDATED = date(2000, 1, 1)
"""The creation date of a PDF whose record has none: PDF readers expect one."""

_CSS_DPI = 96
"""Any value gives the same page, since sheets are sized in millimeters."""


@dataclass(frozen=True, slots=True)
class PdfRecord:
    """What a PDF says of itself. `date` is the date of issue (ISO 8601) or empty."""

    title: str
    author: str
    subject: str
    keywords: tuple[str, ...] = ()
    date: str = ""


def paint_pdf(sheets: Sequence[Sheet], typeface: Typeface, record: PdfRecord) -> bytes:
    """The sheets, in order, as the pages of one PDF: the same bytes for the same input.

    Raises `CairoMissing`, `WrongFont` or another `DrawingUnavailable` where this machine cannot
    paint PDF, and `ValueError` for an empty set, for a sheet that cannot be painted, and for a
    date that is none.
    """
    if not sheets:
        raise ValueError("a PDF needs at least one sheet")
    documents = [svg_tree(sheet, typeface, fonts=None) for sheet in sheets]
    cairo = lettering_cairo(typeface)
    page_class = _page_class()
    target = BytesIO()
    surface = cairo.PDFSurface(target, 1, 1)
    # Later versions pack the objects away that are completed below.
    surface.restrict_to_version(cairo.PDF_VERSION_1_4)
    _set_properties(cairo, surface, record)
    for page, (sheet, document) in enumerate(zip(sheets, documents, strict=True), start=1):
        drawn = page_class(document, surface, _CSS_DPI)
        surface.set_page_label(sheet.id)
        link = f"page={page} pos=[0 0]"
        surface.add_outline(cairo.PDF_OUTLINE_ROOT, _bookmark(sheet), link)
        drawn.context.show_page()
    surface.finish()
    return completed(target.getvalue())


def _page_class() -> Any:
    """The class that draws a page; its module is imported only here, where cairo is known to be."""
    from lacunar.drawing.painters.cairo_pages import PlainPage, StockPage

    installed = version("cairosvg")
    if stock_text():
        return StockPage
    if installed != CAIROSVG_VERSION:
        raise DrawingUnavailable(
            f"PDF sheets are made for cairosvg {CAIROSVG_VERSION}, and {installed} is installed: "
            f"install cairosvg=={CAIROSVG_VERSION}, or set {STOCK_TEXT_VARIABLE}=1 to have the "
            "installed one draw the sheets its own way."
        )
    return PlainPage


def _bookmark(sheet: Sheet) -> str:
    title = printable(sheet.title)
    return title if title.startswith(sheet.id) else f"{sheet.id} {title}"


def _set_properties(cairo: Any, surface: Any, record: PdfRecord) -> None:
    created = date.fromisoformat(record.date) if record.date else _UNDATED
    properties = {
        cairo.PDF_METADATA_TITLE: record.title,
        cairo.PDF_METADATA_AUTHOR: record.author,
        cairo.PDF_METADATA_SUBJECT: record.subject,
        cairo.PDF_METADATA_KEYWORDS: ", ".join(record.keywords),
        cairo.PDF_METADATA_CREATOR: f"Lacunar {__version__}",
        cairo.PDF_METADATA_CREATE_DATE: f"{created.isoformat()}T00:00:00Z",
    }
    for key, text in properties.items():
        if text:
            surface.set_metadata(key, printable(text))
