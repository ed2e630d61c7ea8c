"""The sheets of a ceiling as one file to be sent: a PDF of the set, one sheet, or an archive."""

import zipfile
from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO

from lacunar.drawing.elements import Sheet
from lacunar.drawing.typeface import Typeface
from lacunar.exchange.query_schema import SheetFile
from lacunar.model.faults import Fault, SpecRefused
from lacunar.workflow.draw import compose_sheets, painted_pdf, painted_svg
from lacunar.workflow.prepare import Prepared

# The first moment the format can tell (its date is no clock: same input, same bytes).
_ARCHIVE_TIME = (1980, 1, 1, 0, 0, 0)
_READABLE_BY_ALL = 0o644 << 16


@dataclass(frozen=True, slots=True)
class Download:
    """One finished file with the name it is to be saved under."""

    name: str
    content: bytes


def download(prepared: Prepared, file: SheetFile, chosen: Sequence[str]) -> Download:
    """The sheets of a ceiling in one file: `pdf` and `zip` hold any number, `svg` exactly one.

    Parameters: `prepared`; `file`; `chosen`, ids of sheets, none for the whole set. An archive
    holds each sheet as an SVG. Errors: `SpecRefused` for a sheet the set does not have or more
    than one for an SVG; `DrawingUnavailable` for a PDF where cairo is missing.
    """
    sheet_set, typeface = compose_sheets(prepared)
    sheets = _chosen(sheet_set.sheets, chosen)
    stem = f"ceiling-{prepared.digest[:12]}"
    match file:
        case SheetFile.PDF:
            return Download(f"{stem}.pdf", painted_pdf(prepared, sheets, typeface))
        case SheetFile.SVG:
            only = _only(sheets)
            return Download(f"{stem}-{only.id}.svg", painted_svg(only, typeface).encode())
        case SheetFile.ZIP:
            return Download(f"{stem}.zip", _archive(sheets, typeface))


def _chosen(sheets: tuple[Sheet, ...], chosen: Sequence[str]) -> tuple[Sheet, ...]:
    known = [sheet.id for sheet in sheets]
    unknown = [sheet_id for sheet_id in dict.fromkeys(chosen) if sheet_id not in known]
    if unknown:
        raise SpecRefused(_not_in_set(sheet_id, known) for sheet_id in unknown)
    return tuple(sheet for sheet in sheets if not chosen or sheet.id in chosen)


def _not_in_set(sheet_id: str, known: list[str]) -> Fault:
    return Fault(
        code="sheet_not_in_set",
        pointer="/sheets",
        message=f"The set has no sheet {sheet_id}.",
        remedy=f"Ask for one of {', '.join(known)}.",
        figures={"sheet": sheet_id, "known": ", ".join(known)},
    )


def _only(sheets: tuple[Sheet, ...]) -> Sheet:
    if len(sheets) == 1:
        return sheets[0]
    names = ", ".join(sheet.id for sheet in sheets)
    fault = Fault(
        code="more_sheets_than_one",
        pointer="/sheets",
        message=f"An SVG is one sheet, and {len(sheets)} are chosen.",
        remedy=f"Name one of {names}, or ask for a PDF or an archive.",
        figures={"sheets": len(sheets), "known": names},
    )
    raise SpecRefused([fault])


def _archive(sheets: tuple[Sheet, ...], typeface: Typeface) -> bytes:
    target = BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as archive:
        for sheet in sheets:
            entry = zipfile.ZipInfo(f"{sheet.id}.svg", _ARCHIVE_TIME)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.create_system = 3  # Unix, on whatever system this runs
            entry.external_attr = _READABLE_BY_ALL
            archive.writestr(entry, painted_svg(sheet, typeface).encode())
    return target.getvalue()
