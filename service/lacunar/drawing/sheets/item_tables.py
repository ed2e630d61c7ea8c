"""Tables of ceiling items and wall features: where each is, how large, and what it meets."""

from lacunar.drawing.annotation import Block
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.wording import SheetWording
from lacunar.layout.item_records import CeilingItem
from lacunar.layout.records import Layout
from lacunar.model.room import START_WALL, RunName


def item_tables(layout: Layout, space: TableSpace, wording: SheetWording) -> tuple[Block, ...]:
    """All items, then all wall features; nothing where there are none."""
    blocks: list[Block] = []
    if items := layout.items.items:
        columns = _items(items, wording)
        blocks.extend(in_blocks("item", "items", "CEILING ITEMS", columns, space))
    if layout.wall_features:
        columns = _features(layout, wording)
        blocks.extend(in_blocks("wall-feature", "wall-features", "WALL FEATURES", columns, space))
    return tuple(blocks)


def _items(items: tuple[CeilingItem, ...], wording: SheetWording) -> list[WordColumn]:
    length, width = (f"FROM {START_WALL[run]}" for run in RunName)
    return [
        WordColumn("ITEM", tuple(item.id for item in items)),
        WordColumn("KIND", tuple(item.kind.capitalize() for item in items)),
        WordColumn(length, tuple(wording.length(item.x.value) for item in items)),
        WordColumn(width, tuple(wording.length(item.y.value) for item in items)),
        WordColumn("SIZE", tuple(_size(item, wording) for item in items)),
        WordColumn("MEETS", tuple(_meets(item) for item in items)),
    ]


def _size(item: CeilingItem, wording: SheetWording) -> str:
    if item.round:
        return f"{wording.detail(item.length)} dia."
    return f"{wording.detail(item.length)} x {wording.detail(item.width)}"


def _meets(item: CeilingItem) -> str:
    return ", ".join(dict.fromkeys(each.id for each in item.conflicts)) or "-"


def _features(layout: Layout, wording: SheetWording) -> list[WordColumn]:
    found = layout.wall_features
    return [
        WordColumn("FEATURE", tuple(check.name for check in found)),
        WordColumn("WALL", tuple(check.wall for check in found)),
        WordColumn("FROM", tuple(wording.length(check.near.value) for check in found)),
        WordColumn("TO", tuple(wording.length(check.far.value) for check in found)),
        WordColumn("CENTER AT", tuple(check.on for check in found)),
    ]
