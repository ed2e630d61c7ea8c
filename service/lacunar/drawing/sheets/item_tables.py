"""Tables of ceiling items and of wall features: their places, and what they meet.

Items that are alike stand under one line that says what they are, so that a row is a place. What
an item is in conflict with stands below its row. A table that is too tall goes on in the next part.
"""

from collections.abc import Iterator, Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, headed_parts, wrapped
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.run_ends import End, from_walls
from lacunar.drawing.sheets.tables import ROW_PITCH, Column, column_heads
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.item_records import CeilingItem, Meets, WallFeatureCheck
from lacunar.layout.records import Layout
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import END_WALL, RunName

HEADS = 5.4
INDENT = 5.0
GROUP_GAP = 1.2


def items_table(
    layout: Layout, space: ColumnSpace, wording: SheetWording, typeface: Typeface
) -> tuple[Block, ...]:
    """Every ceiling item with its place from the datum, in parts; none where there is no item."""
    width = space.width
    columns = (
        Column("ITEM", 0.0, "start"),
        Column("X, FROM W1", width * 0.46),
        Column("Y, FROM W4", width * 0.78),
        Column("IN", width),
    )
    rows: list[Block] = []
    for alike in _alike(layout.items.items):
        title = _lines(_what(alike, wording), width, typeface, Face.MEDIUM)
        first, *others = (_item_row(item, columns, (layout, wording), typeface) for item in alike)
        # A line that says what follows must not stand last in a part.
        rows.append(_under(title, first))
        rows.extend(others)
    heads = Block(width, HEADS, column_heads(columns, width, 0.0))
    return headed_parts("items-table", "CEILING ITEMS", rows, space, heads)


def _alike(items: Sequence[CeilingItem]) -> Iterator[tuple[CeilingItem, ...]]:
    """Items by what stands in the line above them, in the order of the first of each."""
    groups: dict[tuple[object, ...], list[CeilingItem]] = {}
    for item in items:
        size = (item.length, item.width, item.round, item.clearance)
        key = (item.kind, item.name, *size, item.mounting, item.mobility)
        groups.setdefault(key, []).append(item)
    return (tuple(group) for group in groups.values())


def _what(alike: Sequence[CeilingItem], wording: SheetWording) -> str:
    """What the items are: how many, size, clearance, and whether they can still be moved."""
    item = alike[0]
    size = f"{wording.detail(item.length)} x {wording.detail(item.width)}"
    if item.round:
        size = f"round, {wording.detail(item.length)}"
    count = f", {len(alike)} alike" if len(alike) > 1 else ""
    words = [f"{item.kind.upper()}{count}: {item.name or size}"]
    if item.name:
        words.append(size)
    words.extend((str(item.mounting), str(item.mobility)))
    if item.clearance > ZERO:
        words.append(f"{wording.detail(item.clearance)} kept clear")
    return ", ".join(words)


def _item_row(
    item: CeilingItem,
    columns: Sequence[Column],
    of: tuple[Layout, SheetWording],
    typeface: Typeface,
) -> Block:
    layout, wording = of
    places = (
        from_walls(layout, run, at.value) for run, at in zip(RunName, (item.x, item.y), strict=True)
    )
    cells = (item.id, *(wording.length(place) for place in places), item.coffer or _no_coffer(item))
    note = _conflict(item, layout, wording) if item.conflicts else ""
    data = {"of": item.id, "kind": item.kind.value}
    return _row("item-row", data, (columns, cells), note, typeface)


def _no_coffer(item: CeilingItem) -> str:
    """What an item's middle is over that is over no coffer."""
    on_beam = any(each.meets is Meets.BEAM for each in item.conflicts)
    return "BEAM" if on_beam or not item.conflicts else "-"


def _conflict(item: CeilingItem, layout: Layout, wording: SheetWording) -> str:
    met = ", ".join(dict.fromkeys(each.id for each in item.conflicts))
    clear = item.nearest_clear
    if clear is None:
        return f"Meets {met}; no place on the ceiling is clear for it."
    x, y = (
        wording.length(from_walls(layout, run, at))
        for run, at in zip(RunName, (clear.x, clear.y), strict=True)
    )
    return f"Meets {met}; the nearest clear place is {x}, {y}, in {clear.coffer}."


def wall_features_table(
    layout: Layout, space: ColumnSpace, wording: SheetWording, typeface: Typeface
) -> tuple[Block, ...]:
    """Every wall feature with its edges and the beams that end over it, in parts."""
    width = space.width
    columns = (
        Column("AT", 0.0, "start"),
        Column("FROM", width * 0.34),
        Column("TO", width * 0.62),
        Column("AT ITS CENTER", width),
    )
    rows = []
    for check in layout.wall_features:
        edges = (wording.length(each) for each in _edges(layout, check))
        cells = (check.wall, *edges, _at_center(check))
        data = {"of": check.name, "kind": check.kind.value, "wall": check.wall}
        note = f"{check.name}: {_ends(check)}."
        rows.append(_row("wall-feature-row", data, (columns, cells), note, typeface))
    heads = Block(width, HEADS, column_heads(columns, width, 0.0))
    return headed_parts("wall-features-table", "WALL FEATURES", rows, space, heads)


def _edges(layout: Layout, check: WallFeatureCheck) -> tuple[Length, Length]:
    """A feature's edges along its wall, in a crooked room as they are taped."""
    if check.side is not None:
        return check.near.value, check.far.value
    run = run_of_wall(check.wall).other
    end: End = "end" if check.wall in END_WALL.values() else "start"
    near, far = (from_walls(layout, run, edge.value, end) for edge in (check.near, check.far))
    return near, far


def _at_center(check: WallFeatureCheck) -> str:
    """A beam's id, or the row or column of coffers; in an odd room the coffer's own."""
    if "-" in check.on or check.side is not None:
        return check.on
    return f"COLUMN {check.on}" if check.on.isdigit() else f"ROW {check.on}"


def _ends(check: WallFeatureCheck) -> str:
    """The beams that end over a feature, each with how it does."""
    ends = ", ".join(f"{beam.beam} ({beam.meeting.replace('_', ' ')})" for beam in check.beams)
    return f"beams that end over it: {ends}" if ends else "no beam ends over it"


def _row(
    kind: str,
    data: dict[str, str],
    table: tuple[Sequence[Column], Sequence[str]],
    note: str,
    typeface: Typeface,
) -> Block:
    """A table row, and its note below it."""
    columns, cells = table
    first = Text(Pt(0, style.TEXT), cells[0], style.TEXT, Face.SEMIBOLD)
    others = (
        Text(Pt(column.at, style.TEXT), cell, style.TEXT, anchor=column.anchor)
        for column, cell in zip(columns[1:], cells[1:], strict=True)
    )
    width = columns[-1].at
    below = _lines(note, width - INDENT, typeface, Face.REGULAR) if note else None
    words: tuple[Element, ...] = below.at(INDENT, ROW_PITCH) if below else ()
    height = ROW_PITCH + (below.height if below else 0.0)
    return Block(width, height, (Group(kind, (first, *others, *words), data=data),))


def _lines(text: str, width: float, typeface: Typeface, face: Face) -> Block:
    """A text in lines no wider than `width` [mm]."""
    lines = wrapped(text, width, typeface, face)
    words = tuple(
        Text(Pt(0, style.LINE_PITCH * n + style.TEXT), line, style.TEXT, face)
        for n, line in enumerate(lines)
    )
    return Block(width, style.LINE_PITCH * len(lines) + 0.6, words)


def _under(title: Block, row: Block) -> Block:
    """A row under the line that says what its group is, with a rule between."""
    top = GROUP_GAP
    rule = Polyline((Pt(0, top + title.height), Pt(row.width, top + title.height)), style.FINE)
    start = top + title.height + 1.0
    children = (*title.at(0, top), rule, *row.at(0, start))
    return Block(row.width, start + row.height, children)
