"""Tables of the cover: the index of sheets, what the ceiling is, revisions, abbreviations."""

from collections.abc import Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, headed_parts, wrapped
from lacunar.drawing.elements import Face, Group, Pt, Segments, Text
from lacunar.drawing.sheets.pages import NO_SCALE, IssuedSheet, SheetSource
from lacunar.drawing.sheets.tables import Column, column_heads
from lacunar.drawing.typeface import Typeface

NUMBER_WIDTH = 15.0
PAGES_WIDTH = 12.0
SCALE_WIDTH = 23.0
HEADS_HEIGHT = 5.6
ROW_PAD = 1.0
LABEL_SHARE = 0.46
LABEL_GAP = 4.0
BLANK_ROWS = 3
BLANK_ROW = 7.0
NOTED = "AS NOTED"


@dataclass(frozen=True, slots=True)
class IndexRow:
    """A sheet of the index: its number, its title, how many pages it has, and its scale."""

    number: str
    title: str
    pages: int
    scale: str


def index_rows(issued: Sequence[IssuedSheet]) -> tuple[IndexRow, ...]:
    """Turn pages into the sheets they are of: a page after the first has its number behind."""
    found: dict[str, list[IssuedSheet]] = {}
    for page in issued:
        found.setdefault("-".join(page.number.split("-")[:2]), []).append(page)
    return tuple(
        IndexRow(number, pages[0].title, len(pages), _scale(pages))
        for number, pages in found.items()
    )


def _scale(pages: Sequence[IssuedSheet]) -> str:
    """The scale of a sheet's drawings, if it is one; pages of tables have none."""
    scales = {page.scale for page in pages}
    drawn = scales - {NOTED, NO_SCALE}
    if scales == {NO_SCALE}:
        return NO_SCALE
    return drawn.pop() if len(drawn) == 1 else NOTED


def index_table(
    rows: Sequence[IndexRow], space: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """The index of the sheets that are issued, in their order."""
    columns = (
        Column("SHEET", 0.0, "start"),
        Column("TITLE", NUMBER_WIDTH, "start"),
        Column("PAGES", space.width - SCALE_WIDTH),
        Column("SCALE", space.width),
    )
    top = Block(space.width, HEADS_HEIGHT, column_heads(columns, space.width, 0.0))
    room = space.width - NUMBER_WIDTH - PAGES_WIDTH - SCALE_WIDTH
    drawn = [_index_row(row, columns, room, typeface) for row in rows]
    return headed_parts("sheet-index", "SHEETS OF THIS SET", drawn, space, top)


def _index_row(row: IndexRow, columns: Sequence[Column], room: float, typeface: Typeface) -> Block:
    lines = wrapped(row.title, room, typeface)
    texts = [
        Text(Pt(columns[1].at, style.TEXT + style.LINE_PITCH * n), line, style.TEXT)
        for n, line in enumerate(lines)
    ]
    cells = ((0, row.number), (2, str(row.pages)), (3, row.scale))
    texts += [
        Text(
            Pt(columns[at].at, style.TEXT),
            words,
            style.TEXT,
            Face.REGULAR if at else Face.SEMIBOLD,
            columns[at].anchor,
        )
        for at, words in cells
    ]
    data = {
        "of": row.number,
        "title": row.title,
        "pages": str(row.pages),
        "scale": row.scale,
    }
    height = style.LINE_PITCH * len(lines) + ROW_PAD
    return Block(columns[-1].at, height, (Group("sheet-row", tuple(texts), data=data),))


@dataclass(frozen=True, slots=True)
class Told:
    """A line of a table of two columns: what it is, its words, and its name and value as data."""

    label: str
    words: str
    name: str
    value: str


def told_table(
    kind: str, title: str, lines: Sequence[Told], space: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """Labels with what they are, both wrapped in their columns. `kind` is what it is known by."""
    widest = max(typeface.width(line.label, style.TEXT) for line in lines)
    left = min(widest + LABEL_GAP, space.width * LABEL_SHARE)
    rows = [_told_row(kind, line, (left, space.width), typeface) for line in lines]
    return headed_parts(kind, title, rows, space)


def _told_row(kind: str, line: Told, places: tuple[float, float], typeface: Typeface) -> Block:
    """A line of the table; `places` are where its words start and end [mm]."""
    left, width = places
    labels = wrapped(line.label, left - 2.0, typeface)
    words = wrapped(line.words, width - left, typeface, Face.SEMIBOLD)
    texts = tuple(
        Text(Pt(x, style.TEXT + style.LINE_PITCH * n), text, style.TEXT, face)
        for x, column, face in ((0.0, labels, Face.REGULAR), (left, words, Face.SEMIBOLD))
        for n, text in enumerate(column)
    )
    data = {"of": line.name, "value": line.value}
    height = style.LINE_PITCH * max(len(labels), len(words)) + ROW_PAD
    return Block(width, height, (Group(f"{kind}-row", texts, data=data),))


def revision_table(source: SheetSource, space: ColumnSpace) -> tuple[Block, ...]:
    """This revision as the title block has it, and rows for what is written in by hand."""
    drawing, typeface = source.layout.ceiling.drawing, source.typeface
    at = (0.0, space.width * 0.14, space.width * 0.42, space.width * 0.86)
    columns = tuple(
        Column(words, x, "start")
        for words, x in zip(("REV", "DATE", "CHANGE", "BY"), at, strict=True)
    )
    top = Block(space.width, HEADS_HEIGHT, column_heads(columns, space.width, 0.0))
    cells = (drawing.revision, drawing.date, drawing.status)
    rooms = (at[1] - 1.5, at[2] - at[1] - 1.5, at[3] - at[2] - 1.5)
    parts = [wrapped(words, room, typeface) for words, room in zip(cells, rooms, strict=True)]
    texts = tuple(
        Text(Pt(x, style.TEXT + style.LINE_PITCH * n), line, style.TEXT)
        for x, lines in zip(at, parts, strict=False)
        for n, line in enumerate(lines)
    )
    height = style.LINE_PITCH * max(1, *map(len, parts)) + ROW_PAD
    data = {"revision": drawing.revision, "date": drawing.date}
    first = Block(space.width, height, (Group("revision-row", texts, data=data),))
    blanks = tuple(_blank(space.width) for _ in range(BLANK_ROWS))
    return headed_parts("revisions", "REVISIONS", (first, *blanks), space, top)


def _blank(width: float) -> Block:
    """A row to be filled in by hand."""
    lines = ((Pt(0.0, BLANK_ROW - 0.6), Pt(width, BLANK_ROW - 0.6)),)
    return Block(width, BLANK_ROW, (Segments(lines, style.FINE),))
