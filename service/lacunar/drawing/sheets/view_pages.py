"""Pages of views in rows, tables and notes in the column over the title block."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Element
from lacunar.drawing.paper import Scale
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.pages import NamedView, Page, SheetSource, placed_blocks, table_pages
from lacunar.drawing.sheets.placing import Arrangement, Box, beside, column_width, frame_box
from lacunar.drawing.sheets.title_block import title_block

VIEW_PAD = 6.0
VIEW_GAP = 12.0


@dataclass(frozen=True, slots=True)
class TitledView:
    """A view with its title under it, as one block; no `scale` for what is not to scale."""

    name: str
    number: int
    scale: Scale | None
    block: Block


def view_area(source: SheetSource) -> Box:
    """How much room views have on a page [mm]: beside the column over the title block."""
    area = _arranged(source, ()).plan_area
    return Box(
        area.left + VIEW_PAD, area.top + VIEW_PAD, area.right - VIEW_PAD, area.bottom - VIEW_PAD
    )


def view_pages(
    source: SheetSource, views: Sequence[TitledView], blocks: Sequence[Block]
) -> tuple[Page, ...]:
    """Views in rows over as many pages as they need, in their order, with blocks beside them.

    Errors: `PaperTooSmall` where a view alone is larger than `view_area`, or a block than a column.
    """
    pages: list[Page] = []
    waiting, beside_them = list(views), tuple(blocks)
    while waiting:
        arrangement = _arranged(source, beside_them)
        rows = _rows(waiting, view_area(source))
        if not rows:
            raise PaperTooSmall("A view is larger than the paper.")
        pages.append(_page(source, rows, arrangement, len(pages) + 1))
        waiting = waiting[sum(map(len, rows)) :]
        beside_them = arrangement.left_over
    return (*pages, *table_pages(source, beside_them, len(pages) + 1))


def _arranged(source: SheetSource, blocks: Sequence[Block]) -> Arrangement:
    title = title_block(source.fields, column_width(source.size), source.typeface)
    return beside(frame_box(source.size), 1, blocks, title)


def _rows(views: Sequence[TitledView], area: Box) -> list[list[TitledView]]:
    """The first views in rows, as many as the area holds."""
    rows: list[list[TitledView]] = []
    left_over = area.height
    waiting = list(views)
    while waiting:
        row: list[TitledView] = []
        while waiting and _row_width([*row, waiting[0]]) <= area.width:
            row.append(waiting.pop(0))
        if not row or _row_height(row) > left_over:
            break
        rows.append(row)
        left_over -= _row_height(row) + VIEW_GAP
    return rows


def _row_width(row: Sequence[TitledView]) -> float:
    return sum(view.block.width for view in row) + VIEW_GAP * (len(row) - 1)


def _row_height(row: Sequence[TitledView]) -> float:
    return max(view.block.height for view in row)


def _page(
    source: SheetSource, rows: list[list[TitledView]], arrangement: Arrangement, number: int
) -> Page:
    """One page: rows spread over its height, views over their row's width, titles in a line."""
    area = view_area(source)
    spare = area.height - sum(map(_row_height, rows))
    children: list[Element] = []
    y = area.top + spare / (len(rows) + 1)
    for row in rows:
        height = _row_height(row)
        room = (area.width - sum(view.block.width for view in row)) / (len(row) + 1)
        x = area.left + room
        for view in row:
            children.extend(view.block.at(x, y + height - view.block.height))
            x += view.block.width + room
        y += height + spare / (len(rows) + 1)
    sheet = source.fields.sheet if number == 1 else f"{source.fields.sheet}-{number}"
    shown = [view for row in rows for view in row]
    corner = arrangement.placed[-1]
    return Page(
        replace(source.fields, sheet=sheet, scale=_scale(shown)),
        (*children, *placed_blocks(arrangement)),
        (corner.x, corner.y),
        tuple(NamedView(view.name, view.number) for view in shown),
    )


def _scale(views: Sequence[TitledView]) -> str:
    """What the title block says of the scale of views on one page."""
    texts = {view.scale.text if view.scale else "NOT TO SCALE" for view in views}
    return texts.pop() if len(texts) == 1 else "AS NOTED"
