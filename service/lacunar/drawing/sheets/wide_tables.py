"""Tables as wide as the sheet allows: cells that wrap, rows in groups, heads above each part."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, headed_parts, wrapped
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.typeface import Typeface

GAP = 3.4
LONGEST_WORD = 26.0
"""What a column that wraps is at least given for its longest word [mm]; longer ones are cut up."""
WIDEST = 62.0
"""What a column that wraps is at most given [mm]: longer lines are hard to follow in a table."""
_HEAD_HEIGHT = 5.2
_TITLE_HEIGHT = 6.4
_ABOVE = 1.0
_BELOW = 1.6


@dataclass(frozen=True, slots=True)
class WideCell:
    """What stands in a cell, and as data what it tells exactly; empty: what stands there."""

    text: str
    value: str = ""


@dataclass(frozen=True, slots=True)
class WideColumn:
    """A column: its head, the name its cells have as data, whether words wrap, its straight edge."""

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
    """A table: what its rows are of, its title, its columns, and its rows in groups."""

    kind: str
    title: str
    columns: tuple[WideColumn, ...]
    groups: tuple[WideGroup, ...]

    def needs(self, typeface: Typeface) -> float:
        """The least width at which all columns stand beside each other [mm]."""
        return sum(least for least, _ in self._widths(typeface)) + GAP * (len(self.columns) - 1)

    def blocks(self, space: ColumnSpace, typeface: Typeface) -> tuple[Block, ...]:
        """The table in parts no taller than the space, heads above each, a title above each group."""
        spots = self._spots(space.width, typeface)
        rows = [
            under_title(group.title, drawn, space.width) if first else drawn
            for group in self.groups
            for first, drawn in self._drawn(group, spots, space.width, typeface)
        ]
        top = Block(space.width, _HEAD_HEIGHT, tuple(_heads(self.columns, spots, space.width)))
        return headed_parts(f"{self.kind}-table", self.title, rows, space, top)

    def _widths(self, typeface: Typeface) -> list[tuple[float, float]]:
        """What each column needs, and what it would take to wrap nothing [mm]."""
        rows = [row for group in self.groups for row in group.rows]
        return [
            _widths(column, [row.cells[place].text for row in rows], typeface)
            for place, column in enumerate(self.columns)
        ]

    def _spots(self, width: float, typeface: Typeface) -> list["_Spot"]:
        """Where columns stand: those that wrap share what others leave, the rest parts them."""
        widths = self._widths(typeface)
        left = width - GAP * (len(widths) - 1)
        least, most = (sum(pair[place] for pair in widths) for place in (0, 1))
        share = min(max((left - least) / (most - least), 0.0), 1.0) if most > least else 0.0
        given = [low + (high - low) * share for low, high in widths]
        gap = GAP + max(left - sum(given), 0.0) / max(len(widths) - 1, 1)
        spots: list[_Spot] = []
        x = 0.0
        for each in given:
            spots.append(_Spot(x, each))
            x += each + gap
        return spots

    def _drawn(
        self, group: WideGroup, spots: Sequence["_Spot"], width: float, typeface: Typeface
    ) -> Iterator[tuple[bool, Block]]:
        for number, row in enumerate(group.rows):
            placed = zip(self.columns, spots, row.cells, strict=True)
            cells = [_cell(column, spot, cell, typeface) for column, spot, cell in placed]
            lines = max(count for count, _ in cells)
            height = _ABOVE + style.TEXT + style.LINE_PITCH * (lines - 1) + _BELOW
            rule = Polyline((Pt(0, height), Pt(width, height)), style.HATCH)
            drawn = Group(
                f"{self.kind}-row", (*(cell for _, cell in cells), rule), data={"of": row.of}
            )
            yield number == 0, Block(width, height, (drawn,))


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where a column begins, and how wide it is [mm]."""

    left: float
    width: float

    def edge(self, column: WideColumn) -> float:
        """Where the text of the column keeps to."""
        return self.left if column.anchor == "start" else self.left + self.width


def _widths(column: WideColumn, texts: Sequence[str], typeface: Typeface) -> tuple[float, float]:
    face = _face(column)
    head = typeface.width(column.head, style.TEXT, Face.MEDIUM)
    whole = max((typeface.width(text, style.TEXT, face) for text in texts), default=0.0)
    if not column.wraps:
        return max(head, whole), max(head, whole)
    words = (word for text in texts for word in text.split(" "))
    longest = max((typeface.width(word, style.TEXT, face) for word in words), default=0.0)
    least = max(head, min(longest, LONGEST_WORD))
    return least, max(least, min(whole, WIDEST))


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
    lines = wrapped(cell.text, room, typeface, face) if column.wraps else [cell.text]
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


def under_title(title: str, row: Block, width: float) -> Block:
    """A row under the title of those it is the first of, which is never parted from it."""
    words = Text(Pt(0, _TITLE_HEIGHT - 1.6), title, style.TEXT, Face.SEMIBOLD)
    rule = Polyline((Pt(0, _TITLE_HEIGHT), Pt(width, _TITLE_HEIGHT)), style.FINE)
    children = (words, rule, *row.at(0, _TITLE_HEIGHT))
    return Block(width, _TITLE_HEIGHT + row.height, children)
