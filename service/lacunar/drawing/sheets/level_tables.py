"""Tables and notes of stations: heights, shims, and sides where these go up to the ceiling."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import HEADING_HEIGHT, Block, fitted, heading
from lacunar.drawing.elements import Element, Face, Group, Pt, Text
from lacunar.drawing.sheets.tables import ROW_PITCH, Column, column_heads
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.level_records import Levels
from lacunar.model.room import START_WALL, RunName
from lacunar.model.stations import PanelsTo

COLUMN_GAP = 3.0
LONGEST_NAME = 22.0


@dataclass(frozen=True, slots=True)
class _Words:
    """One column in words: its head and what stands in each row."""

    head: str
    cells: tuple[str, ...]

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


def level_tables(
    levels: Levels | None, space: TableSpace, wording: SheetWording
) -> tuple[Block, ...]:
    """All stations, and each beam's sides at its stations where they go up to the ceiling."""
    if levels is None:
        return ()
    blocks = list(
        _in_blocks("stations", "STATIONS OF THE CEILING", _stations(levels, wording), space)
    )
    if levels.panels is PanelsTo.CEILING and levels.rise.value:
        rows = _sides(levels, wording)
        if rows[0].cells:
            blocks.extend(_in_blocks("station-sides", "SIDES AT STATIONS", rows, space))
    return tuple(blocks)


def _stations(levels: Levels, wording: SheetWording) -> list[_Words]:
    stations = levels.stations
    length, width = (f"FROM {START_WALL[run]}" for run in RunName)
    return [
        _Words("STATION", tuple(each.id for each in stations)),
        _Words(length, tuple(wording.length(each.x.value) for each in stations)),
        _Words(width, tuple(wording.length(each.y.value) for each in stations)),
        _Words("CEILING", tuple(wording.detail(each.ceiling.value) for each in stations)),
        _Words("SHIM", tuple(wording.detail(each.rise.value) for each in stations)),
    ]


def _sides(levels: Levels, wording: SheetWording) -> list[_Words]:
    places = [
        (level.beam, place)
        for level in levels.beams
        for place in level.places
        if place.station is not None
    ]
    return [
        _Words("BEAM", tuple(beam for beam, _ in places)),
        _Words("STATION", tuple(str(place.station) for _, place in places)),
        _Words("SIDE", tuple(wording.detail(place.side.value) for _, place in places)),
        _Words("SCRIBE", tuple(wording.detail(place.scribe.value) for _, place in places)),
    ]


def _in_blocks(
    name: str, title: str, columns: Sequence[_Words], space: TableSpace
) -> Iterator[Block]:
    """The columns as tables no wider than the space, each led by the first, in parts of rows."""
    first = _cut(columns[0], space)
    part = 0
    for group in _groups(first, [_cut(column, space) for column in columns[1:]], space):
        for start in range(0, len(first.cells), space.rows):
            part += 1
            shown = [_Words(c.head, c.cells[start : start + space.rows]) for c in group]
            identity = f"{name}-table" if part == 1 else f"{name}-table-{part}"
            words = title if part == 1 else f"{title}, GOING ON"
            yield _table(identity, words, shown, space)


def _cut(column: _Words, space: TableSpace) -> _Words:
    """A column whose words are cut to a bearable length; figures are never so long."""
    cells = tuple(
        fitted(cell, LONGEST_NAME, style.TEXT, space.typeface, Face.SEMIBOLD)
        for cell in column.cells
    )
    return _Words(column.head, cells)


def _groups(first: _Words, others: Sequence[_Words], space: TableSpace) -> list[list[_Words]]:
    groups: list[list[_Words]] = [[first]]
    taken = first.width(space.typeface)
    for column in others:
        width = column.width(space.typeface) + COLUMN_GAP
        if taken + width > space.width and len(groups[-1]) > 1:
            groups.append([first])
            taken = first.width(space.typeface)
        groups[-1].append(column)
        taken += width
    return groups


def _table(identity: str, title: str, columns: Sequence[_Words], space: TableSpace) -> Block:
    """One table: the first column from the left, all others evenly up to the right edge."""
    widths = [column.width(space.typeface) for column in columns]
    slack = (space.width - sum(widths)) / (len(columns) - 1)
    heads = [Column(columns[0].head, 0.0, "start")]
    right = widths[0]
    for column, width in zip(columns[1:], widths[1:], strict=True):
        right += slack + width
        heads.append(Column(column.head, right))
    drawn: list[Element] = []
    y = HEADING_HEIGHT + 5.4
    for cells in zip(*(column.cells for column in columns), strict=True):
        row = tuple(
            Text(
                Pt(head.at, y + style.TEXT),
                words,
                style.TEXT,
                Face.REGULAR if place else Face.SEMIBOLD,
                head.anchor,
            )
            for place, (head, words) in enumerate(zip(heads, cells, strict=True))
        )
        drawn.append(Group("station-row", row, data={"of": cells[0]}))
        y += ROW_PITCH
    children = (
        *heading(title, space.width),
        *column_heads(heads, space.width, HEADING_HEIGHT),
        *drawn,
    )
    return Block(space.width, y, (Group("stations-table", children, id=identity),))


def level_notes(levels: Levels | None, wording: SheetWording) -> tuple[str, ...]:
    """What the plane is, and what goes up to it or to the ceiling."""
    if levels is None or not levels.rise.value:
        return ()
    plane = (
        f"Reference plane: level, at the lowest station ({', '.join(levels.lowest)}). Sections are"
        " drawn there. Backing is shimmed down to the plane; the ceiling rises"
        f" {wording.detail(levels.rise.value)} above it."
    )
    if levels.panels is PanelsTo.PLANE:
        return (plane, "Panels hang in the plane, and sides end at it.")
    return (plane, "Panels follow the ceiling; sides go up to it and are scribed from their board.")
