"""Sheet Z-001: the cover, with the index of the set and the ceiling as it will be seen."""

from collections.abc import Iterator
from dataclasses import replace

from lacunar.drawing.annotation import Block, ColumnSpace
from lacunar.drawing.paper import NOT_TO_SCALE
from lacunar.drawing.plan.clear_places import Box as ClearBox
from lacunar.drawing.plan.clear_places import Occupied
from lacunar.drawing.sheets.blocks import cautions
from lacunar.drawing.sheets.cover_facts import abbreviation_lines, data_lines
from lacunar.drawing.sheets.cover_tables import (
    index_rows,
    index_table,
    revision_table,
    told_table,
)
from lacunar.drawing.sheets.pages import (
    NO_SCALE,
    IssuedSheet,
    Page,
    SheetSource,
    placed_blocks,
    stacked,
    table_pages,
)
from lacunar.drawing.sheets.placing import (
    BLOCK_GAP,
    COLUMN_GAP,
    FRAME_PAD,
    Arrangement,
    Box,
    beside,
    column_width,
    flow,
    frame_box,
)
from lacunar.drawing.sheets.scale_bar import view_title
from lacunar.drawing.sheets.title_block import title_block
from lacunar.drawing.views.key_plan import key_plan
from lacunar.drawing.views.pictorial import ceiling_from_below, has_crown

PAD = 5.0
TITLE_GAP = 3.0
PICTURE_SHARE = 0.58
LEAST_KEY = 80.0
MOST_KEY = 0.5
"""Of the width beside the column, what the key plan takes up at most."""
MOST_TRIES = 4


def cover_pages(source: SheetSource) -> tuple[Page, ...]:
    """The cover; what has no room on it goes on on pages of its own, which the index counts too."""
    count = 1
    title = title_block(source.fields, column_width(source.size), source.typeface)
    arrangement = beside(frame_box(source.size), 1, (), title)
    area = arrangement.plan_area
    picture = _picture(source, (area.width - 2 * PAD, area.height * PICTURE_SHARE - PAD))
    for _ in range(MOST_TRIES):
        pages = _composed(source, arrangement, picture, count)
        if len(pages) == count:
            break
        count = len(pages)
    return pages


def _composed(
    source: SheetSource, arrangement: Arrangement, picture: Block, count: int
) -> tuple[Page, ...]:
    """The pages, with an index that says there are so many of them.

    As few columns stand beside the key plan as hold what the one above the title block does not.
    """
    area, corner = arrangement.plan_area, arrangement.placed[-1]
    column = Box(corner.x, area.top + FRAME_PAD, corner.x, corner.y - BLOCK_GAP)
    width = column_width(source.size) - FRAME_PAD
    under = Box(area.left + PAD, area.top + PAD + picture.height, area.right, area.bottom)
    heights = column.height, under.height - BLOCK_GAP - FRAME_PAD
    blocks = tuple(_blocks(source, heights, count))
    for beside_key in range(int((under.width - LEAST_KEY) // (width + COLUMN_GAP)) + 1):
        columns = tuple(_columns(under, width, beside_key))
        placed, left_over = flow(blocks, (column, *columns))
        if not left_over:
            break
    room = (under.width - beside_key * (width + COLUMN_GAP) - PAD, under.height - PAD)
    key = _key_plan(source, (min(room[0], area.width * MOST_KEY), room[1] - BLOCK_GAP))
    children = (
        *picture.at(area.left + (area.width - picture.width) / 2, area.top + PAD),
        *key.at(under.left + (room[0] - key.width) / 2, area.bottom - PAD - key.height),
        *(e for p in placed for e in p.block.at(p.x, p.y)),
        *placed_blocks(arrangement),
    )
    fields = replace(source.fields, scale="NOT TO SCALE")
    return (Page(fields, children, (corner.x, corner.y)), *table_pages(source, left_over, 2))


def _columns(under: Box, width: float, count: int) -> Iterator[Box]:
    """So many columns at the right end of what is left under the picture."""
    for number in range(count, 0, -1):
        left = under.right - number * (width + COLUMN_GAP)
        yield Box(left, under.top + BLOCK_GAP, left + width, under.bottom - FRAME_PAD)


def _picture(source: SheetSource, room: tuple[float, float]) -> Block:
    """The picture with its title, as large as fits in a room [mm]."""
    layout = source.layout
    notes = ["IN PARALLEL PROJECTION, NEAR WALLS TAKEN AWAY"]
    if layout.mouldings.crown is not None and not has_crown(layout):
        notes.append("CROWN IS LEFT OUT FOR CLARITY")
    name = "THE CEILING FROM BELOW"
    title = view_title(1, name, NOT_TO_SCALE, tuple(notes), source.typeface)
    drawn = ceiling_from_below(layout, room, source.typeface)
    return _in_its_corner(source, drawn, title, room)


def _key_plan(source: SheetSource, room: tuple[float, float]) -> Block:
    """The key plan with its title under it, as large as fits in a room [mm]."""
    notes = ("AS IN A MIRROR ON THE FLOOR, BEAMS GRAY",)
    title = view_title(2, "KEY PLAN", NOT_TO_SCALE, notes, source.typeface)
    less = room[0], room[1] - title.height - TITLE_GAP
    return stacked((key_plan(source.layout, less, source.typeface), title), TITLE_GAP)


def _in_its_corner(
    source: SheetSource, picture: Block, title: Block, room: tuple[float, float]
) -> Block:
    """The picture with its title in the lower left corner that it leaves empty, or under it."""
    left = (room[0] - picture.width) / 2
    drawn = picture.at(left, 0.0)
    top = picture.height - title.height
    corner = ClearBox(0.0, top, title.width, picture.height).grown(TITLE_GAP)
    if Occupied(source.typeface, drawn).is_free(corner):
        return Block(room[0], picture.height, (*drawn, *title.at(0.0, top)))
    less = (room[0], room[1] - title.height - TITLE_GAP)
    drawn_again = ceiling_from_below(source.layout, less, source.typeface)
    return stacked((drawn_again, title), TITLE_GAP)


def _blocks(source: SheetSource, heights: tuple[float, float], count: int) -> Iterator[Block]:
    """Index, data, cautions, revisions and ids, in parts no taller than their columns.

    `heights` are of the column above the title block, and of those beside the key plan.
    """
    typeface = source.typeface
    width = column_width(source.size) - FRAME_PAD
    space, lower = (ColumnSpace(width, height) for height in heights)
    fields = source.fields
    own = IssuedSheet(fields.sheet, fields.drawing, "NOT TO SCALE")
    more = (IssuedSheet(fields.sheet, fields.drawing, NO_SCALE),) * (count - 1)
    yield from index_table(index_rows((own, *more, *source.issued)), space, typeface)
    data = tuple(data_lines(source))
    yield from told_table("ceiling-data", "ROOM AND CEILING", data, space, typeface)
    yield from cautions(source.layout, lower, typeface)
    yield from revision_table(source, space)
    uses = tuple(abbreviation_lines(source))
    yield from told_table("abbreviations", "IDS AND SIGNS", uses, space, typeface)
