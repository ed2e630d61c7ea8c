"""Tables as wide as the sheet allows: cells that wrap, rows in groups, heads above each part."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, wrapped
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.sheets.titled_rows import TitledRows, grouped_parts
from lacunar.drawing.typeface import Typeface

GAP = 3.4
NARROW_GAP = 2.4
LONGEST_WORD = 26.0
"""What a column that wraps is at least given for its longest word [mm]; longer ones are cut up."""
WIDEST = 52.0
"""What a column that wraps is at most given [mm]: longer lines are hard to follow in a table."""
_HEAD_HEIGHT = 5.2
_ABOVE = 1.0
_BELOW = 1.6


@dataclass(frozen=True, slots=True)
class WideCell:
    """What stands in a cell, and as data what it tells exactly; empty: what stands there."""

    text: str
    value: str = ""


@dataclass(frozen=True, slots=True)
class WideColumn:
    """A column: its head, what its cells are named as data, whether they wrap, where they align."""

    head: str
    name: str
    wraps: bool = False
    anchor: Literal["start", "end"] = "end"


@dataclass(frozen=True, slots=True)
class WideRow:
    """One row: what it is of, and a cell to each column."""

    of: str
    cells: tuple[WideCell, ...]


@dataclass(frozen=True, slots=True)
class WideGroup:
    """Rows under a title of their own."""

    title: str
    rows: tuple[WideRow, ...]


@dataclass(frozen=True, slots=True)
class WideTable:
    """A table: what its rows are of, its title, its columns, and its rows in groups.

    `spared` are the names of columns that it can do without, on narrow paper.
    """

    kind: str
    title: str
    columns: tuple[WideColumn, ...]
    groups: tuple[WideGroup, ...]
    spared: tuple[str, ...] = ()

    def needs(self, typeface: Typeface, gap: float = GAP) -> float:
        """The least width at which all columns stand beside each other, a gap apart [mm]."""
        return sum(each.least for each in self._widths(typeface)) + gap * (len(self.columns) - 1)

    def narrow(self) -> "WideTable":
        """The table without the columns that it can do without."""
        all_of_them = enumerate(self.columns)
        kept = [place for place, column in all_of_them if column.name not in self.spared]
        groups = (
            replace(group, rows=tuple(_kept(row, kept) for row in group.rows))
            for group in self.groups
        )
        columns = tuple(self.columns[place] for place in kept)
        return replace(self, columns=columns, groups=tuple(groups))

    def blocks(self, space: ColumnSpace, typeface: Typeface) -> tuple[Block, ...]:
        """The table in parts no taller than the space, with heads, and a title above each group."""
        spots = self._spots(space.width, typeface)
        groups = [
            TitledRows(group.title, tuple(self._drawn(group, spots, space.width, typeface)))
            for group in self.groups
        ]
        top = Block(space.width, _HEAD_HEIGHT, tuple(_heads(self.columns, spots, space.width)))
        return grouped_parts(f"{self.kind}-table", self.title, groups, space, top)

    def _widths(self, typeface: Typeface) -> list["_Width"]:
        rows = [row for group in self.groups for row in group.rows]
        return [
            _width(column, [row.cells[place].text for row in rows], typeface)
            for place, column in enumerate(self.columns)
        ]

    def _spots(self, width: float, typeface: Typeface) -> list["_Spot"]:
        """Where columns stand: those that wrap share what others leave, the rest parts them."""
        widths = self._widths(typeface)
        gaps = len(widths) - 1
        gap = GAP if width >= self.needs(typeface) else NARROW_GAP
        given = _shared(widths, width - gap * gaps)
        gap += max(width - gap * gaps - sum(given), 0.0) / max(gaps, 1)
        spots: list[_Spot] = []
        x = 0.0
        for each in given:
            spots.append(_Spot(x, each))
            x += each + gap
        return spots

    def _drawn(
        self, group: WideGroup, spots: Sequence["_Spot"], width: float, typeface: Typeface
    ) -> Iterator[Block]:
        for row in group.rows:
            placed = zip(self.columns, spots, row.cells, strict=True)
            cells = [_cell(column, spot, cell, typeface) for column, spot, cell in placed]
            lines = max(count for count, _ in cells)
            height = _ABOVE + style.TEXT + style.LINE_PITCH * (lines - 1) + _BELOW
            rule = Polyline((Pt(0, height), Pt(width, height)), style.HATCH)
            children = (*(cell for _, cell in cells), rule)
            drawn = Group(f"{self.kind}-row", children, data={"of": row.of})
            yield Block(width, height, (drawn,))


def _kept(row: WideRow, places: Sequence[int]) -> WideRow:
    return replace(row, cells=tuple(row.cells[place] for place in places))


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where a column begins, and how wide it is [mm]."""

    left: float
    width: float

    def edge(self, column: WideColumn) -> float:
        """Where the text of the column keeps to."""
        return self.left if column.anchor == "start" else self.left + self.width


@dataclass(frozen=True, slots=True)
class _Width:
    """What a column can do with, what it needs, and what it would take to wrap nothing [mm]."""

    bare: float
    least: float
    most: float


def _width(column: WideColumn, texts: Sequence[str], typeface: Typeface) -> _Width:
    face = _face(column)
    head = typeface.width(column.head, style.TEXT, Face.MEDIUM)
    whole = max((typeface.width(text, style.TEXT, face) for text in texts), default=0.0)
    if not column.wraps:
        return _Width(*(max(head, whole),) * 3)
    words = (word for text in texts for word in text.split(" "))
    longest = max((typeface.width(word, style.TEXT, face) for word in words), default=0.0)
    least = max(head, min(longest, LONGEST_WORD))
    return _Width(head, least, max(least, min(whole, WIDEST)))


def _shared(widths: Sequence[_Width], room: float) -> list[float]:
    """How wide columns are in so much room [mm]: all alike between two of their widths."""
    bare, least, most = (
        sum(each) for each in zip(*((w.bare, w.least, w.most) for w in widths), strict=True)
    )
    if room < least:
        share = max((room - bare) / (least - bare), 0.0) if least > bare else 0.0
        return [each.bare + (each.least - each.bare) * share for each in widths]
    share = min((room - least) / (most - least), 1.0) if most > least else 0.0
    return [each.least + (each.most - each.least) * share for each in widths]


def _face(column: WideColumn) -> Face:
    return Face.SEMIBOLD if column.name == "mark" else Face.REGULAR


def _heads(
    columns: Sequence[WideColumn], spots: Sequence[_Spot], width: float
) -> Iterator[Element]:
    for column, spot in zip(columns, spots, strict=True):
        at = Pt(spot.edge(column), style.TEXT)
        yield Text(at, column.head, style.TEXT, Face.MEDIUM, column.anchor)
    yield Polyline((Pt(0, 4.2), Pt(width, 4.2)), style.RULE)


def _cell(
    column: WideColumn, spot: _Spot, cell: WideCell, typeface: Typeface
) -> tuple[int, Element]:
    """A cell with its words in lines, and how many these are."""
    face = _face(column)
    # A hair more, so that what the width was measured by fits it whatever adding up does.
    room = spot.width + 0.01
    lines = list(_lines(cell.text, room, typeface, face)) if column.wraps else [cell.text]
    texts = tuple(
        Text(
            Pt(spot.edge(column), _ABOVE + style.TEXT + style.LINE_PITCH * number),
            line,
            style.TEXT,
            face,
            column.anchor,
        )
        for number, line in enumerate(lines)
    )
    data = {"name": column.name, "value": cell.value or cell.text}
    return max(len(lines), 1), Group("cell", texts, data=data)


def _lines(text: str, room: float, typeface: Typeface, face: Face) -> Iterator[str]:
    """The text in lines, broken behind commas, and within what is too long even so."""
    line = ""
    phrases = text.split(", ")
    for number, phrase in enumerate(phrases, start=1):
        told = phrase if number == len(phrases) else f"{phrase},"
        longer = f"{line} {told}" if line else told
        if typeface.width(longer, style.TEXT, face) <= room:
            line = longer
            continue
        if line:
            yield line
        *whole, line = wrapped(told, room, typeface, face) or [""]
        yield from whole
    yield line
