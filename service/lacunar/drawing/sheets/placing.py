"""Placing blocks on a page: columns beside the plan, or a band of columns below it.

A placing is found by trying, never by shrinking: blocks keep their size, and what does not fit is
handed back so that the caller can try another scale, another arrangement or another sheet.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from lacunar.drawing.annotation import Block, ColumnSpace
from lacunar.drawing.paper import PaperSize

BLOCK_GAP = 6.0
COLUMN_GAP = 6.0
FRAME_PAD = 5.0
HAIR = 1e-6
"""What a block that just fills a column may be over, from sums of many rows [mm]."""
BAND_STEP = 4.0
COLUMN_WIDTHS = ((300.0, 77.0), (500.0, 88.0), (float("inf"), 96.0))
"""Up to which paper width [mm] how wide the columns are [mm]."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on the page [mm]."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """From left to right [mm]."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom [mm]."""
        return self.bottom - self.top


@dataclass(frozen=True, slots=True)
class Placed:
    """A block and where its upper left corner stands on the page [mm]."""

    block: Block
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Where the plan may stand, where blocks stand, and the line between them."""

    plan_area: Box
    placed: tuple[Placed, ...]
    divider: Box | None
    left_over: tuple[Block, ...] = ()


def frame_box(size: PaperSize) -> Box:
    """The drawing frame of a paper size [mm]."""
    return Box(size.filing, size.margin, size.width - size.margin, size.height - size.margin)


def column_width(size: PaperSize) -> float:
    """The width of the columns beside the plan, wider on wider paper [mm]."""
    return next(column for widest, column in COLUMN_WIDTHS if size.width <= widest)


def column_space(size: PaperSize) -> ColumnSpace:
    """How much room a column has for blocks, where it has the frame's whole height."""
    width = column_width(size) - FRAME_PAD
    return ColumnSpace(width, frame_box(size).height - 2 * FRAME_PAD)


def flow(
    blocks: Sequence[Block], columns: Sequence[Box]
) -> tuple[tuple[Placed, ...], tuple[Block, ...]]:
    """Blocks one under the other down each column in turn, and those for which there was no room.

    A column takes the blocks in their order, passing over those too tall for what is left of it,
    and over parts of a series whose earlier part was passed over.
    """
    placed: list[Placed] = []
    waiting = list(blocks)
    for column in columns:
        y = column.top
        passed_over: list[Block] = []
        for block in waiting:
            held_back = block.series and any(block.series == b.series for b in passed_over)
            if y + block.height <= column.bottom + HAIR and not held_back:
                placed.append(Placed(block, column.left, y))
                y += block.height + BLOCK_GAP
            else:
                passed_over.append(block)
        waiting = passed_over
    return tuple(placed), tuple(waiting)


def beside(frame: Box, count: int, blocks: Sequence[Block], title: Block) -> Arrangement:
    """`count` columns on the right, the title block in the lower right corner."""
    width = title.width
    lefts = [frame.right - width - n * (width + COLUMN_GAP) for n in range(count)][::-1]
    columns = [
        Box(left, frame.top + FRAME_PAD, left + width, frame.bottom - FRAME_PAD) for left in lefts
    ]
    corner = Placed(title, frame.right - width, frame.bottom - title.height)
    columns[-1] = Box(columns[-1].left, columns[-1].top, frame.right, corner.y - BLOCK_GAP)
    # The title block touches the frame; the blocks above it stand a little in from the line.
    inset = [Box(c.left, c.top, c.right, c.bottom) for c in columns]
    placed, left_over = flow(blocks, inset)
    edge = lefts[0] - COLUMN_GAP / 2
    area = Box(frame.left, frame.top, edge, frame.bottom)
    return Arrangement(area, (*placed, corner), Box(edge, frame.top, edge, frame.bottom), left_over)


def below(frame: Box, blocks: Sequence[Block], title: Block) -> Arrangement | None:
    """A band of columns under the plan, as low as the blocks allow; None where they never fit."""
    height = title.height
    while height < frame.height / 2:
        band = band_below(frame, height, blocks, title)
        if not band.left_over:
            return band
        height += BAND_STEP
    return None


def band_below(frame: Box, height: float, blocks: Sequence[Block], title: Block) -> Arrangement:
    """A band of columns of a height [mm] under the plan, the title block in its right corner."""
    width = title.width
    count = int((frame.width - FRAME_PAD + COLUMN_GAP) // (width + COLUMN_GAP))
    lefts = [frame.right - width - n * (width + COLUMN_GAP) for n in range(count)][::-1]
    corner = Placed(title, frame.right - width, frame.bottom - title.height)
    top = frame.bottom - height
    columns = [Box(x, top + FRAME_PAD, x + width, frame.bottom - FRAME_PAD) for x in lefts]
    columns[-1] = Box(lefts[-1], top + FRAME_PAD, frame.right, corner.y - BLOCK_GAP)
    placed, left_over = flow(blocks, columns)
    area = Box(frame.left, frame.top, frame.right, top)
    edge = Box(frame.left, top, frame.right, top)
    return Arrangement(area, (*placed, corner), edge, left_over)
