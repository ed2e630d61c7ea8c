"""The title block: the fields of ISO 7200, revision, input digest and projection symbol.

Labels and values are full-size letters: a field that cannot be read on a site print is not a field.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, arrow, fitted, rectangle
from lacunar.drawing.elements import Circle, Element, Face, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.typeface import Typeface

ROW = 8.9
LAST_ROW = 14.4
PAD = 1.6


class Projection(StrEnum):
    """How what is on a sheet is looked at, as its title block labels it."""

    REFLECTED = "REFLECTED"
    THIRD_ANGLE = "3RD ANGLE"
    PICTORIAL = "PICTORIAL"
    ON_FLOOR = "ON FLOOR"
    NONE = "NO VIEWS"


@dataclass(frozen=True, slots=True)
class TitleFields:
    """What one sheet's title block says; empty text leaves the field blank."""

    owner: str
    ceiling: str
    drawing: str
    number: str
    date: str
    status: str
    creator: str
    approver: str
    scale: str
    paper: str
    units: str
    digest: str
    revision: str
    sheet: str
    page: str
    projection: Projection = Projection.NONE


@dataclass(frozen=True, slots=True)
class _Cell:
    """A field's label, its value, and its share of the row's width."""

    name: str
    label: str
    value: str
    share: float
    face: Face = Face.SEMIBOLD


def title_block(fields: TitleFields, width: float, typeface: Typeface) -> Block:
    """The title block as a block `width` [mm] wide, drawn from its upper left corner."""
    rows = _rows(fields)
    height = ROW * len(rows) + LAST_ROW + ROW * 0.62
    children: list[Element] = [rectangle(0, 0, width, height)]
    y = 0.0
    for row in rows:
        children.extend(_row(row, y, width, typeface))
        y += ROW
        children.append(Polyline((Pt(0, y), Pt(width, y)), style.FINE))
    warning = "VERIFY IN THE FIELD. DO NOT SCALE."
    children.append(Text(Pt(PAD, y + 4.2), warning, style.TEXT, Face.MEDIUM))
    y += ROW * 0.62
    children.append(Polyline((Pt(0, y), Pt(width, y)), style.FINE))
    children.extend(_sheet_row(fields, y, width, typeface))
    group = Group("title-block", tuple(children), id="title-block", title="Title block")
    return Block(width, height, (group,))


def _rows(fields: TitleFields) -> tuple[tuple[_Cell, ...], ...]:
    return (
        (_Cell("owner", "OWNER", fields.owner, 1.0),),
        (_Cell("ceiling", "CEILING", fields.ceiling, 1.0),),
        (
            _Cell("drawing", "DRAWING", fields.drawing, 0.64),
            _Cell("type", "TYPE", "Shop drawing", 0.36),
        ),
        (
            _Cell("number", "NUMBER", fields.number, 0.5),
            _Cell("date", "DATE", fields.date, 0.5),
        ),
        (_Cell("status", "STATUS", fields.status, 1.0),),
        (
            _Cell("creator", "DRAWN BY", fields.creator, 0.5),
            _Cell("approver", "APPROVED BY", fields.approver, 0.5),
        ),
        (
            _Cell("scale", "SCALE", fields.scale, 0.36),
            _Cell("paper", "PAPER", fields.paper, 0.64),
        ),
        (
            _Cell("units", "UNITS", fields.units, 0.36),
            _Cell("digest", "INPUT DIGEST", fields.digest, 0.38),
            _Cell("projection", fields.projection.value, "", 0.26),
        ),
    )


def _row(row: Sequence[_Cell], top: float, width: float, typeface: Typeface) -> list[Element]:
    """The cells of a row: label over value, with a line between neighbors."""
    drawn: list[Element] = []
    left = 0.0
    for cell in row:
        room = cell.share * width
        if left:
            drawn.append(Polyline((Pt(left, top), Pt(left, top + ROW)), style.FINE))
        label = Text(Pt(left + PAD, top + 3.4), cell.label, style.TEXT)
        value = fitted(cell.value, room - 2 * PAD, style.TEXT, typeface, cell.face)
        texts: tuple[Element, ...] = (label,)
        if value:
            texts = (label, Text(Pt(left + PAD, top + 7.6), value, style.TEXT, cell.face))
        drawn.append(Group("field", texts, data={"field": cell.name, "value": cell.value}))
        if cell.name == "projection":
            drawn.extend(_projection_symbol(cell.label, Pt(left + room / 2, top + 4.8)))
        left += room
    return drawn


def _sheet_row(fields: TitleFields, top: float, width: float, typeface: Typeface) -> list[Element]:
    """The sheet's number in the largest letters, its revision, and which of how many it is."""
    first, second = width * 0.50, width * 0.67
    cells = (
        ("sheet", "SHEET", fields.sheet, (0.0, first), style.SHEET_NUMBER),
        ("revision", "REV", fields.revision, (first, second), style.TITLE),
        ("page", "PAGE", fields.page, (second, width), style.TITLE),
    )
    drawn: list[Element] = [
        Segments(tuple((Pt(x, top), Pt(x, top + LAST_ROW)) for x in (first, second)), style.FINE)
    ]
    for name, label, value, (left, right), height in cells:
        texts = [Text(Pt(left + PAD, top + 3.5), label, style.TEXT)]
        if typeface.width(value, height, Face.SEMIBOLD) > right - left - 2 * PAD:
            # The page of a long set is told in full, though not as large.
            height = style.HEADING
        shown = fitted(value, right - left - 2 * PAD, height, typeface, Face.SEMIBOLD)
        if shown:
            # Letters may have tails: they must stay clear of the frame below.
            baseline = top + LAST_ROW - 2.4
            texts.append(Text(Pt(left + PAD, baseline), shown, height, Face.SEMIBOLD))
        drawn.append(Group("field", tuple(texts), data={"field": name, "value": value}))
    return drawn


def _projection_symbol(label: str, center: Pt) -> Iterator[Group]:
    if label in (Projection.REFLECTED, Projection.ON_FLOOR):
        yield _plan_symbol(center, reflected=label == Projection.REFLECTED)
    if label == Projection.THIRD_ANGLE:
        yield _third_angle_symbol(center.moved(0, 1.2))


def _third_angle_symbol(center: Pt) -> Group:
    """A cone cut off, from the side and, on the side it is seen from, from its small end.

    After ISO 5456-2 (from memory).
    """
    ends, cone = center.moved(-4.0, 0), (center.moved(1.6, 0), center.moved(6.4, 0))
    small, large = 0.9, 1.8
    corners = (
        *(cone[0].moved(0, small), cone[0].moved(0, -small)),
        *(cone[1].moved(0, -large), cone[1].moved(0, large)),
    )
    axis = (cone[0].moved(-0.8, 0), cone[1].moved(0.8, 0))
    return Group(
        "projection-symbol",
        (
            Circle(ends, small, style.FINE),
            Circle(ends, large, style.FINE),
            Polyline(corners, style.FINE, closed=True),
            Segments((axis,), style.FINE),
        ),
        id="projection-symbol",
        title="Third-angle projection: each view lies on the side it is seen from",
    )


def _plan_symbol(center: Pt, *, reflected: bool) -> Group:
    """A chain line, the plane, with an arrow at each end, a double one for mirrored projection.

    After ISO 2594, which tells a reflected plan from a plain one by doubled arrowheads; from memory
    of its description.
    """
    words = "Reflected plan: as in a mirror on the floor" if reflected else "Plan, as on the floor"
    strokes = [(-7.0, -2.0), (-0.6, 0.6), (2.0, 7.0)]
    chain = [(center.moved(a, 0), center.moved(b, 0)) for a, b in strokes]
    shafts: list[tuple[Pt, Pt]] = []
    heads: list[Element] = []
    for x in (-6.0, 6.0):
        top, tip = center.moved(x, 0), center.moved(x, 3.2)
        shafts.append((top, tip))
        tips = (tip, tip.moved(0, -1.3)) if reflected else (tip,)
        heads.extend(arrow(at, top, 1.3) for at in tips)
    return Group(
        "projection-symbol",
        (Segments((*chain, *shafts), style.FINE), *heads),
        id="projection-symbol",
        title=words,
    )
