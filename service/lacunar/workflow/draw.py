"""From a layout to painted sheets: compose once, then paint each format asked for."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from lacunar.drawing.elements import Sheet
from lacunar.drawing.painters.fonts import load_font_styles, load_typeface
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import SheetSet, compose
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.lists import DrawnLists, drawn_lists
from lacunar.workflow.prepare import Prepared


class DrawingFormat(StrEnum):
    """What sheets can be painted as."""

    SVG = "svg"
    PDF = "pdf"


@dataclass(frozen=True, slots=True)
class PaintedFile:
    """A finished file: the end of its name (`-Z-101.svg`, `.pdf`) and its bytes."""

    suffix: str
    content: bytes


def compose_sheets(
    prepared: Prepared, lists: DrawnLists | None = None
) -> tuple[SheetSet, Typeface]:
    """The ceiling's sheets, composed, with the typeface they were measured by.

    Parameters: `prepared`; `lists` of it, made here where its sheets need some that are not given.
    """
    typeface = load_typeface()
    lists = lists or drawn_lists(prepared)
    told = None if lists is None else lists.told
    return compose(prepared.layout, prepared.digest, typeface, told), typeface


def painted_svg(sheet: Sheet, typeface: Typeface) -> str:
    """One sheet as SVG text that stands by itself, fonts and all."""
    return paint_svg(sheet, typeface, fonts=load_font_styles())


def paint(
    prepared: Prepared,
    sheet_set: SheetSet,
    typeface: Typeface,
    formats: tuple[DrawingFormat, ...],
    progress: Callable[[str], None],
) -> Iterator[PaintedFile]:
    """Each file of the set in turn, SVG before PDF; `progress` is told what is being painted.

    Errors: `DrawingUnavailable` when PDF is asked for and cairo or the typeface is not in order.
    """
    sheets = sheet_set.sheets
    if DrawingFormat.SVG in formats:
        for number, sheet in enumerate(sheets, start=1):
            progress(f"{sheet.id} as SVG, {number} of {len(sheets)}")
            yield PaintedFile(f"-{sheet.id}.svg", painted_svg(sheet, typeface).encode())
    if DrawingFormat.PDF in formats:
        progress(f"{len(sheets)} sheet{'s' if len(sheets) > 1 else ''} as PDF")
        yield PaintedFile(".pdf", painted_pdf(prepared, sheets, typeface))


def painted_pdf(prepared: Prepared, sheets: tuple[Sheet, ...], typeface: Typeface) -> bytes:
    """Sheets of a ceiling as one PDF. Errors: `DrawingUnavailable`."""
    return paint_pdf(sheets, typeface, _record(prepared))


def _record(prepared: Prepared) -> PdfRecord:
    """What the PDF says about itself; its date is the drawing's date of issue, never the clock."""
    ceiling = prepared.layout.ceiling
    return PdfRecord(
        title=f"{ceiling.name}: shop drawings",
        author=ceiling.drawing.owner,
        subject=f"Shop drawing, input digest {prepared.digest}",
        date=ceiling.drawing.date,
    )
