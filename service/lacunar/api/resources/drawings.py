"""Drawings: a ceiling's sheets."""

from lacunar.api import ceiling_examples
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation, Query
from lacunar.exchange.query_schema import DrawingQuery, SheetFile
from lacunar.model.limits import USUAL_DPI
from lacunar.workflow.download import download
from lacunar.workflow.prepare import prepare

_BINARY = {"type": "string", "format": "binary"}

_MEDIA = {
    SheetFile.PDF: Media("application/pdf", _BINARY, "All sheets, a page to each."),
    SheetFile.SVG: Media(
        "image/svg+xml", {"type": "string"}, "One sheet, in millimeters of paper, fonts and all."
    ),
    SheetFile.PNG: Media("image/png", _BINARY, "One sheet as a picture in grays, of its PDF."),
    SheetFile.DXF: Media(
        "image/vnd.dxf",
        _BINARY,
        "One sheet for programs that draw: views at true size with dimensions that measure, and"
        " the sheet itself as a layout.",
    ),
    SheetFile.ZIP: Media("application/zip", _BINARY, "Each sheet as an SVG, and `index.json`."),
    SheetFile.JSON: Media(
        JSON,
        {"$ref": "#/components/schemas/SheetIndex"},
        "The index of the set with cautions and assumptions; nothing is painted.",
    ),
}
_FILE_OF = {media.type: file for file, media in _MEDIA.items()}


def draw(asked: Asked) -> Answer:
    """A spec as its sheets."""
    query = asked.query
    prepared = prepare(asked.document, query.get("units"), query.get("paper"))
    file = download(
        prepared,
        _FILE_OF[asked.media],
        query.get("sheets", ()),
        query.get("dpi", USUAL_DPI),
    )
    return Answer(file.content, file.name)


def _chosen(query: Query) -> str | None:
    return _MEDIA[query["format"]].type if "format" in query else None


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/drawings",
        id="createDrawing",
        tag="Ceilings",
        summary="Draw a ceiling",
        description=(
            "Takes a ceiling's spec and answers with its dimensioned sheets: as one PDF, a single"
            " sheet as SVG, PNG or DXF, or each sheet as SVG in a ZIP with the index of the set."
            " The index can be had alone as JSON: sheets, cautions (the layout's, and those only"
            " drawing brings up) and assumptions. The same spec gives the same bytes."
            " Nothing is stored."
        ),
        media=tuple(_MEDIA.values()),
        statuses=(400, 406, 409, 413, 415, 422, 503),
        answer=draw,
        query=DrawingQuery(),
        chosen=_chosen,
        document="CeilingSpec",
        examples=ceiling_examples.EXAMPLES,
    ),
)
