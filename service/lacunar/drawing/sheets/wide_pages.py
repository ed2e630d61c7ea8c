"""Pages of wide tables and rows: these beside the column of notes, or above it on narrow paper."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.pages import Page, SheetSource, table_pages
from lacunar.drawing.sheets.placing import (
    BLOCK_GAP,
    COLUMN_GAP,
    FRAME_PAD,
    Box,
    Placed,
    column_width,
    flow,
    frame_box,
)
from lacunar.drawing.sheets.title_block import title_block
from lacunar.drawing.sheets.wide_tables import NARROW_GAP, WideTable

WIDEST_TABLE = 330.0
"""From this width on a wide part is parted into two beside each other [mm]."""

Finish = Callable[[tuple[Element, ...], Box], tuple[Element, ...]]


@dataclass(frozen=True, slots=True)
class WideSpace:
    """Where wide parts stand on each page, where notes do, and the line between them [mm]."""

    areas: tuple[Box, ...]
    notes: tuple[Box, ...]
    corner: tuple[float, float]
    divider: tuple[Pt, Pt]

    @property
    def part(self) -> ColumnSpace:
        """How much room a wide part has."""
        return ColumnSpace(self.areas[0].width, self.areas[0].height)

    @property
    def note(self) -> ColumnSpace:
        """How much room a block of notes has."""
        return ColumnSpace(self.notes[0].width, self.notes[0].height)


def wide_space(source: SheetSource, needs: float, foot: float = 0.0) -> WideSpace:
    """The room on each page for parts that need a width [mm]; `foot` [mm] of it is kept free."""
    frame = frame_box(source.size)
    width = column_width(source.size)
    top = frame.bottom - title_block(source.fields, width, source.typeface).height
    corner = (frame.right - width, top)
    beside = _beside(source)
    if beside.width >= needs:
        column = Box(corner[0], beside.top, frame.right - FRAME_PAD / 2, top - BLOCK_GAP)
        line = beside.right + COLUMN_GAP / 2
        divider = (Pt(line, frame.top), Pt(line, frame.bottom))
        return WideSpace(_columns(beside, needs, foot), (column,), corner, divider)
    above = Box(beside.left, beside.top, frame.right - FRAME_PAD, top - BLOCK_GAP - foot)
    divider = (Pt(frame.left, top), Pt(corner[0], top))
    return WideSpace((above,), _below(beside, top, width), corner, divider)


def fitted_table(source: SheetSource, table: WideTable) -> tuple[WideTable, WideSpace]:
    """A table as the paper has room for it, and where it stands.

    On narrow paper it rather goes without what it can spare than without the height of the page.
    """
    needs = table.needs(source.typeface)
    beside = _beside(source).width
    if needs > beside:
        narrow = table.narrow()
        at_least = narrow.needs(source.typeface, NARROW_GAP)
        if at_least <= beside or needs > frame_box(source.size).width - 2 * FRAME_PAD:
            return narrow, wide_space(source, at_least)
    return table, wide_space(source, needs)


def _beside(source: SheetSource) -> Box:
    """The room to the left of the column of notes."""
    frame = frame_box(source.size)
    right = frame.right - column_width(source.size) - COLUMN_GAP
    return Box(frame.left + FRAME_PAD, frame.top + FRAME_PAD, right, frame.bottom - FRAME_PAD)


def _columns(area: Box, needs: float, foot: float) -> tuple[Box, ...]:
    """The area in as many equal columns as keep a good width for a table."""
    pitch = max(needs, WIDEST_TABLE) + 2 * COLUMN_GAP
    count = max(int((area.width + 2 * COLUMN_GAP) // pitch), 1)
    width = (area.width - 2 * COLUMN_GAP * (count - 1)) / count
    lefts = [area.left + n * (width + 2 * COLUMN_GAP) for n in range(count)]
    return tuple(Box(left, area.top, left + width, area.bottom - foot) for left in lefts)


def _below(area: Box, top: float, width: float) -> tuple[Box, ...]:
    """Columns of notes to the left of the title block."""
    count = max(int((area.width + COLUMN_GAP) // (width + COLUMN_GAP)), 1)
    lefts = [area.left + n * (width + COLUMN_GAP) for n in range(count)]
    return tuple(Box(left, top + FRAME_PAD, left + width, area.bottom) for left in lefts)


def wide_pages(
    source: SheetSource,
    space: WideSpace,
    parts: Sequence[Block],
    notes: Sequence[Block],
    finish: Finish | None = None,
) -> tuple[Page, ...]:
    """Pages that hold all parts in their order, with the notes as far as there is room.

    Parameters: `finish` makes a page's view of its parts, given the area they stand in. Errors:
    `PaperTooSmall` where one part alone is too tall.
    """
    pages: list[Page] = []
    waiting, left_over = tuple(parts), tuple(notes)
    while waiting:
        placed, waiting = flow(waiting, space.areas)
        if not placed:
            raise PaperTooSmall("A row of a list is higher than the paper.")
        under = () if waiting else _under(placed, space)
        beside, left_over = flow(left_over, (*space.notes, *under))
        shown = _elements(placed)
        if finish is not None:
            shown = finish(shown, space.areas[0])
        divider = Group("divider", (Polyline(space.divider, style.RULE),))
        fields = replace(source.fields, sheet=_number(source, len(pages) + 1))
        pages.append(Page(fields, (divider, *shown, *_elements(beside)), space.corner))
    return (*pages, *table_pages(source, left_over, len(pages) + 1))


def _under(placed: Sequence[Placed], space: WideSpace) -> tuple[Box, ...]:
    """Columns of notes under the last parts."""
    width = space.notes[0].width
    columns: list[Box] = []
    for area in space.areas:
        bottoms = [each.y + each.block.height for each in placed if each.x == area.left]
        top = max(bottoms, default=area.top - 2 * BLOCK_GAP) + 2 * BLOCK_GAP
        count = int((area.width + COLUMN_GAP) // (width + COLUMN_GAP))
        lefts = [area.left + n * (width + COLUMN_GAP) for n in range(count)]
        columns.extend(Box(left, top, left + width, area.bottom) for left in lefts)
    return tuple(columns)


def _number(source: SheetSource, page: int) -> str:
    return source.fields.sheet if page == 1 else f"{source.fields.sheet}-{page}"


def _elements(placed: Sequence[Placed]) -> tuple[Element, ...]:
    return tuple(e for each in placed for e in each.block.at(each.x, each.y))
