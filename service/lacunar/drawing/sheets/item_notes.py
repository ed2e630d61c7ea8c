"""What ceiling items meet and where they would be clear, and what ends over wall features."""

from collections.abc import Iterator

from lacunar.drawing.annotation import Block, ColumnSpace, paragraph_blocks
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.item_records import CeilingItem, WallFeatureCheck
from lacunar.layout.records import Layout

# More places than these are a list, which belongs in the JSON and the explanation.
LISTED = 4


def item_notes(
    layout: Layout, column: ColumnSpace, wording: SheetWording, typeface: Typeface
) -> Iterator[Block]:
    """The sentences as a block of their own; nothing where there is nothing to tell."""
    if told := tuple(_sentences(layout, wording)):
        yield from paragraph_blocks("item-notes", "CEILING ITEMS AND WALLS", told, column, typeface)


def _sentences(layout: Layout, wording: SheetWording) -> Iterator[str]:
    """What items meet, the first of them; then what stands over wall features."""
    items = layout.items.items
    for item in [item for item in items if item.conflicts][:LISTED]:
        yield _conflict(item, wording)
    for check in layout.wall_features[:LISTED]:
        yield _feature(check, wording)


def _conflict(item: CeilingItem, wording: SheetWording) -> str:
    met = ", ".join(dict.fromkeys(each.id for each in item.conflicts))
    clear = item.nearest_clear
    if clear is None:
        return f"{item.id} meets {met}; no place on the ceiling is clear for it."
    place = f"{wording.length(clear.x)}, {wording.length(clear.y)}"
    return f"{item.id} meets {met}; the nearest clear place is {place}, in {clear.coffer}."


def _feature(check: WallFeatureCheck, wording: SheetWording) -> str:
    edges = f"{wording.length(check.near.value)} to {wording.length(check.far.value)}"
    ends = ", ".join(f"{beam.beam} ({beam.meeting.replace('_', ' ')})" for beam in check.beams)
    over = f"beams that end over it: {ends}" if ends else "no beam ends over it"
    return f"{check.name} at {check.wall}, {edges}: {over}."
