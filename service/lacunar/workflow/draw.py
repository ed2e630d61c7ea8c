"""From a layout to painted sheets: compose once, then paint each format asked for."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from lacunar.drawing.elements import Sheet
from lacunar.drawing.painters.dxf import paint_dxf
from lacunar.drawing.painters.fonts import load_font_styles, load_typeface
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.png import paint_png, pixels
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import SheetSet, compose
from lacunar.drawing.typeface import Typeface
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.limits import LEAST_DPI, PICTURE_PIXELS, USUAL_DPI
from lacunar.workflow.lists import DrawnLists, drawn_lists
from lacunar.workflow.prepare import Prepared


class DrawingFormat(StrEnum):
    """What sheets can be painted as."""

    SVG = "svg"
    PDF = "pdf"
    PNG = "png"
    DXF = "dxf"


USUAL_FORMATS = (DrawingFormat.SVG, DrawingFormat.PDF)
_OF_SHEETS = (DrawingFormat.SVG, DrawingFormat.DXF, DrawingFormat.PNG)


@dataclass(frozen=True, slots=True)
class Painting:
    """Which formats are painted, and how many pixels to the inch a picture has."""

    formats: tuple[DrawingFormat, ...] = USUAL_FORMATS
    dpi: int = USUAL_DPI


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
    painting: Painting,
    progress: Callable[[str], None],
) -> Iterator[PaintedFile]:
    """Each file of the set in turn, those of cairo last; `progress` is told what is being painted.

    Errors: `DrawingUnavailable` when PDF or PNG is asked for and cairo or the typeface is not in
    order; `SpecRefused` for a picture that would be too large.
    """
    sheets = sheet_set.sheets
    for wanted in (one for one in _OF_SHEETS if one in painting.formats):
        for number, sheet in enumerate(sheets, start=1):
            progress(f"{sheet.id} as {wanted.upper()}, {number} of {len(sheets)}")
            match wanted:
                case DrawingFormat.SVG:
                    content = painted_svg(sheet, typeface).encode()
                case DrawingFormat.DXF:
                    content = paint_dxf(sheet, typeface)
                case _:
                    content = painted_png(prepared, sheet, typeface, painting.dpi)
            yield PaintedFile(f"-{sheet.id}.{wanted}", content)
    if DrawingFormat.PDF in painting.formats:
        progress(f"{len(sheets)} sheet{'s' if len(sheets) > 1 else ''} as PDF")
        yield PaintedFile(".pdf", painted_pdf(prepared, sheets, typeface))


def painted_pdf(prepared: Prepared, sheets: tuple[Sheet, ...], typeface: Typeface) -> bytes:
    """Sheets of a ceiling as one PDF. Errors: `DrawingUnavailable`."""
    return paint_pdf(sheets, typeface, _record(prepared))


def painted_png(prepared: Prepared, sheet: Sheet, typeface: Typeface, dpi: int) -> bytes:
    """One sheet as a picture of its PDF.

    Errors: `SpecRefused` where it would have too many pixels; `DrawingUnavailable`.
    """
    if pixels(sheet.width, sheet.height, dpi) > PICTURE_PIXELS:
        raise SpecRefused([_too_large(sheet, dpi)])
    return paint_png(painted_pdf(prepared, (sheet,), typeface), dpi)


def _too_large(sheet: Sheet, dpi: int) -> Fault:
    fitting = (
        dots
        for dots in range(dpi, LEAST_DPI - 1, -1)
        if pixels(sheet.width, sheet.height, dots) <= PICTURE_PIXELS
    )
    most = next(fitting, None)
    return Fault(
        code="picture_too_large",
        pointer="/dpi",
        message=f"{sheet.id} has more than {PICTURE_PIXELS} pixels at {dpi} to the inch.",
        remedy=f"Ask for at most {most} dpi." if most else "Ask for a PDF.",
        figures={"sheet": sheet.id, "dpi": dpi, "most_dpi": most or 0},
    )


def _record(prepared: Prepared) -> PdfRecord:
    """What the PDF says about itself; its date is the drawing's date of issue, never the clock."""
    ceiling = prepared.layout.ceiling
    return PdfRecord(
        title=f"{ceiling.name}: shop drawings",
        author=ceiling.drawing.owner,
        subject=f"Shop drawing, input digest {prepared.digest}",
        date=ceiling.drawing.date,
    )
