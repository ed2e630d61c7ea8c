"""Pages before they are counted: what they are composed from, and pages of tables and lists."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.lists import Lists
from lacunar.drawing.paper import PaperSize, Scale, scales
from lacunar.drawing.reference_mark import Reference
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.placing import (
    BLOCK_GAP,
    COLUMN_GAP,
    FRAME_PAD,
    Arrangement,
    Box,
    column_width,
    flow,
    frame_box,
)
from lacunar.drawing.sheets.title_block import TitleFields, title_block
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.model.drawing import Paper

ROLL = "roll"
"""What paper is called that is as long as what is on it."""
NO_SCALE = "NONE"
"""What a page of words and tables says of its scale."""


@dataclass(frozen=True, slots=True)
class IssuedSheet:
    """A sheet that is issued, as an index lists it: its number, title and scale."""

    number: str
    title: str
    scale: str


@dataclass(frozen=True, slots=True)
class SheetSource:
    """What the pages of one drawing are composed from.

    A set is composed from its last sheet to its first: `references` are the named views of the
    sheets after this one, `issued` these sheets in the order of the set. `lists` is None where no
    sheet that is issued asks for parts or stock.
    """

    layout: Layout
    size: PaperSize
    fields: TitleFields
    typeface: Typeface
    references: Mapping[str, Reference] = field(default_factory=dict)
    issued: tuple[IssuedSheet, ...] = ()
    lists: Lists | None = None

    @property
    def wording(self) -> SheetWording:
        """How lengths are written on them."""
        return SheetWording.of(self.layout.ceiling)

    def scales(self, *, smallest: int, largest: int) -> tuple[Scale, ...]:
        """Standard scales from `largest` to `smallest` drawing, for the paper composed on."""
        return tuple(
            replace(scale, ratio=scale.ratio * self.size.enlargement)
            for scale in scales(self.wording.units, smallest=smallest, largest=largest)
        )


@dataclass(frozen=True, slots=True)
class NamedView:
    """A view that other sheets refer to: its name among all of a set, its number on its sheet."""

    name: str
    number: int


@dataclass(frozen=True, slots=True)
class Page:
    """One composed page: its title fields (its page count still to come), and what stands on it."""

    fields: TitleFields
    children: tuple[Element, ...]
    title_at: tuple[float, float]
    views: tuple[NamedView, ...] = ()


@dataclass(frozen=True, slots=True)
class FullSizePage:
    """A page of strips to cut out: no frame and no title block, a line of words at its foot.

    `width` and `height` [mm]; `paper` is None for a piece of a roll. The line stands `foot` from
    the upper edge and `left` from the left one [mm].
    """

    fields: TitleFields
    children: tuple[Element, ...]
    width: float
    height: float
    paper: Paper | None
    left: float
    foot: float


def stacked(blocks: Sequence[Block], gap: float) -> Block:
    """Blocks one under the other as one block."""
    children: list[Element] = []
    y = 0.0
    for block in blocks:
        children.extend(block.at(0, y))
        y += block.height + gap
    return Block(max(b.width for b in blocks), y - gap, tuple(children))


def placed_blocks(arrangement: Arrangement) -> tuple[Element, ...]:
    """The blocks but for the title block, and the line between them and the plan."""
    elements = [e for p in arrangement.placed[:-1] for e in p.block.at(p.x, p.y)]
    line = arrangement.divider
    if line:
        ends = (Pt(line.left, line.top), Pt(line.right, line.bottom))
        elements.append(Group("divider", (Polyline(ends, style.RULE),)))
    return tuple(elements)


def table_pages(source: SheetSource, blocks: Sequence[Block], first: int) -> tuple[Page, ...]:
    """Pages of columns that hold all blocks; the first of them is the drawing's page `first`.

    Errors: `PaperTooSmall` where one block alone is higher than the paper.
    """
    pages: list[Page] = []
    waiting = tuple(blocks)
    while waiting:
        page, waiting = _table_page(source, waiting, first + len(pages))
        pages.append(page)
    return tuple(pages)


def _table_page(
    source: SheetSource, blocks: Sequence[Block], number: int
) -> tuple[Page, tuple[Block, ...]]:
    """A page of columns for blocks that had no room, and those that still have none."""
    frame = frame_box(source.size)
    width = column_width(source.size)
    sheet = source.fields.sheet if number == 1 else f"{source.fields.sheet}-{number}"
    title = title_block(replace(source.fields, sheet=sheet), width, source.typeface)
    count = int((frame.width - FRAME_PAD + COLUMN_GAP) // (width + COLUMN_GAP))
    corner = (frame.right - width, frame.bottom - title.height)
    columns = []
    for n in range(count):
        left = frame.left + FRAME_PAD + n * (width + COLUMN_GAP)
        meets_title = left + width > corner[0] - COLUMN_GAP / 2
        bottom = corner[1] - BLOCK_GAP if meets_title else frame.bottom - FRAME_PAD
        columns.append(Box(left, frame.top + FRAME_PAD, left + width, bottom))
    placed, left_over = flow(blocks, columns)
    if not placed:
        raise PaperTooSmall("A table or a list is higher than the paper.")
    children = tuple(e for p in placed for e in p.block.at(p.x, p.y))
    scale = "AS NOTED" if _has_views(children) else NO_SCALE
    return Page(replace(source.fields, scale=scale, sheet=sheet), children, corner), left_over


def _has_views(elements: Sequence[Element]) -> bool:
    """Whether anything is drawn to a scale among what else is words."""
    return any(
        isinstance(each, Group) and (each.kind == "view" or _has_views(each.children))
        for each in elements
    )
