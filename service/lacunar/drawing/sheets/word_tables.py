"""Tables of words: columns as wide as what stands in them, in parts where they are long or wide."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import GOING_ON, HEADING_HEIGHT, Block, fitted, heading
from lacunar.drawing.elements import Element, Face, Group, Pt, Text
from lacunar.drawing.sheets.tables import ROW_PITCH, Column, column_heads
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.measure.length import Length

COLUMN_GAP = 3.0
LONGEST_NAME = 22.0


@dataclass(frozen=True, slots=True)
class WordColumn:
    """One column in words: its head and what stands in each row.

    A column with a `name` bears it, and the exact value of each of its cells, as data.
    """

    head: str
    cells: tuple[str, ...]
    name: str = ""
    values: tuple[str, ...] = ()

    def width(self, typeface: Typeface) -> float:
        """What it takes up across [mm]."""
        head = typeface.width(self.head, style.TEXT, Face.MEDIUM)
        return max(head, *(typeface.width(cell, style.TEXT, Face.SEMIBOLD) for cell in self.cells))


@dataclass(frozen=True, slots=True)
class TableSpace:
    """What a table may take up: its width [mm] and how many rows a block holds."""

    width: float
    rows: int
    typeface: Typeface


def to_be_measured(rows: int) -> WordColumn:
    """A column in which what the tape says is written by hand."""
    return WordColumn("MEASURED", ("_________",) * rows)


def counts_column(head: str, name: str, numbers: Sequence[int]) -> WordColumn:
    """A column of counts, of which none is a dash."""
    texts = tuple(map(str, numbers))
    return WordColumn(head, tuple(text if text != "0" else "-" for text in texts), name, texts)


def lengths_column(
    head: str, name: str, lengths: Sequence[Length], wording: SheetWording
) -> WordColumn:
    """A column of lengths, each rounded as it is printed."""
    exact = tuple(wording.exact(wording.rounded(length)) for length in lengths)
    return WordColumn(head, tuple(map(wording.length, lengths)), name, exact)


def in_blocks(
    kind: str, name: str, title: str, columns: Sequence[WordColumn], space: TableSpace
) -> Iterator[Block]:
    """The columns as tables no wider than the space, each led by the first, in parts of rows.

    `kind` is what a row is of, `name` what the tables are known by.
    """
    first = _cut(columns[0], space)
    part = 0
    for group in _groups(first, [_cut(column, space) for column in columns[1:]], space):
        for start in range(0, len(first.cells), space.rows):
            part += 1
            shown = [_part(column, slice(start, start + space.rows)) for column in group]
            identity = f"{name}-table" if part == 1 else f"{name}-table-{part}"
            words = title if part == 1 else title + GOING_ON
            yield _table((kind, identity), words, shown, space)


def _cut(column: WordColumn, space: TableSpace) -> WordColumn:
    """A column whose words are cut to a bearable length; figures, which have values, never are."""
    if column.values:
        return column
    cells = tuple(
        fitted(cell, LONGEST_NAME, style.TEXT, space.typeface, Face.SEMIBOLD)
        for cell in column.cells
    )
    return WordColumn(column.head, cells, column.name, column.values)


def _part(column: WordColumn, rows: slice) -> WordColumn:
    return WordColumn(column.head, column.cells[rows], column.name, column.values[rows])


def _groups(
    first: WordColumn, others: Sequence[WordColumn], space: TableSpace
) -> list[list[WordColumn]]:
    groups: list[list[WordColumn]] = [[first]]
    taken = first.width(space.typeface)
    for column in others:
        width = column.width(space.typeface) + COLUMN_GAP
        if taken + width > space.width and len(groups[-1]) > 1:
            groups.append([first])
            taken = first.width(space.typeface)
        groups[-1].append(column)
        taken += width
    return groups


def _table(
    named: tuple[str, str], title: str, columns: Sequence[WordColumn], space: TableSpace
) -> Block:
    """One table: the first column from the left, all others evenly up to the right edge."""
    kind, identity = named
    widths = [column.width(space.typeface) for column in columns]
    slack = (space.width - sum(widths)) / (len(columns) - 1)
    heads = [Column(columns[0].head, 0.0, "start")]
    right = widths[0]
    for column, width in zip(columns[1:], widths[1:], strict=True):
        right += slack + width
        heads.append(Column(column.head, right))
    drawn: list[Element] = []
    y = HEADING_HEIGHT + 5.4
    for number, of in enumerate(columns[0].cells):
        row = tuple(
            _cell(column, number, Pt(head.at, y + style.TEXT), head)
            for head, column in zip(heads, columns, strict=True)
        )
        drawn.append(Group(f"{kind}-row", row, data={"of": of}))
        y += ROW_PITCH
    children = (
        *heading(title, space.width),
        *column_heads(heads, space.width, HEADING_HEIGHT),
        *drawn,
    )
    table = Group(f"{kind}s-table", children, id=identity)
    return Block(space.width, y, (table,), identity.partition("-table")[0])


def _cell(column: WordColumn, number: int, at: Pt, head: Column) -> Element:
    face = Face.SEMIBOLD if head.anchor == "start" else Face.REGULAR
    text = Text(at, column.cells[number], style.TEXT, face, head.anchor)
    if not column.name:
        return text
    return Group("cell", (text,), data={"name": column.name, "value": column.values[number]})
