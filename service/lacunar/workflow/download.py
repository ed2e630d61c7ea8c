"""The sheets of a ceiling as one file: a PDF of the set, one sheet, an archive, or their index."""

import zipfile
from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO

from lacunar.drawing.elements import Sheet
from lacunar.drawing.painters.dxf import paint_dxf
from lacunar.drawing.painters.engine import engine
from lacunar.drawing.sheet_set import SheetSet
from lacunar.drawing.typeface import Typeface
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import SheetFile
from lacunar.exchange.sheet_index import SetIndex, index_to_json
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.limits import USUAL_DPI
from lacunar.workflow.draw import compose_sheets, painted_pdf, painted_png, painted_svg
from lacunar.workflow.prepare import Prepared

# The first moment the format can tell (its date is no clock: same input, same bytes).
_ARCHIVE_TIME = (1980, 1, 1, 0, 0, 0)
_READABLE_BY_ALL = 0o644 << 16


@dataclass(frozen=True, slots=True)
class Download:
    """One finished file with the name it is to be saved under."""

    name: str
    content: bytes


def download(
    prepared: Prepared, file: SheetFile, chosen: Sequence[str], dpi: int = USUAL_DPI
) -> Download:
    """The sheets of a ceiling in one file: `svg`, `png` and `dxf` hold exactly one, others any.

    Parameters: `prepared`; `file`; `chosen`, ids of sheets, none for the whole set; `dpi` of a
    picture. An archive holds each sheet as an SVG, and the index as `index.json`; `json` is the
    index alone, and has no name to be saved under. Errors: `SpecRefused` for a sheet the set does
    not have, more than one for a file of one, or too large a picture; `DrawingUnavailable` for a
    PDF or PNG where cairo is missing.
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
        case SheetFile.PNG:
            only = _only(sheets)
            picture = painted_png(prepared, only, typeface, dpi)
            return Download(f"{stem}-{only.id}.png", picture)
        case SheetFile.DXF:
            only = _only(sheets)
            return Download(f"{stem}-{only.id}.dxf", paint_dxf(only, typeface))
        case SheetFile.ZIP:
            index = _index(prepared, sheet_set, sheets)
            return Download(f"{stem}.zip", _archive(sheets, index, typeface))
        case SheetFile.JSON:
            return Download("", _index(prepared, sheet_set, sheets))


def _index(prepared: Prepared, sheet_set: SheetSet, sheets: Sequence[Sheet]) -> bytes:
    """The index of the sheets that are sent, and all that is to be heeded of the set."""
    sent = {sheet.id for sheet in sheets}
    listed = tuple(entry for entry in sheet_set.index if entry.number in sent)
    index = SetIndex(
        sheets=listed,
        cautions=(*prepared.layout.cautions, *sheet_set.cautions),
        assumptions=prepared.assumptions,
        digest=prepared.digest,
    )
    step = prepared.layout.ceiling.mark_to
    return json_bytes({**index_to_json(index, step), "engine": dict(engine())})


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
        message=f"Such a file is one sheet, and {len(sheets)} are chosen.",
        remedy=f"Name one of {names}, or ask for a PDF or an archive.",
        figures={"sheets": len(sheets), "known": names},
    )
    raise SpecRefused([fault])


def _archive(sheets: tuple[Sheet, ...], index: bytes, typeface: Typeface) -> bytes:
    target = BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as archive:
        for sheet in sheets:
            archive.writestr(_entry(f"{sheet.id}.svg"), painted_svg(sheet, typeface).encode())
        archive.writestr(_entry("index.json"), index)
    return target.getvalue()


def _entry(name: str) -> zipfile.ZipInfo:
    entry = zipfile.ZipInfo(name, _ARCHIVE_TIME)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.create_system = 3  # Unix, on whatever system this runs
    entry.external_attr = _READABLE_BY_ALL
    return entry
