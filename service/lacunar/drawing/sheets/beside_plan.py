"""A plan at the largest standard scale that fits beside a column of tables and notes."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Pt
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.sheets.pages import (
    NamedView,
    Page,
    SheetSource,
    placed_blocks,
    stacked,
    table_pages,
)
from lacunar.drawing.sheets.placing import Arrangement, Box, beside, column_width, frame_box
from lacunar.drawing.sheets.title_block import title_block
from lacunar.model.room import RunName

PAD = 4.0
TITLE_GAP = 5.0
BAR_GAP = 18.0
LARGEST, SMALLEST = 2, 200


@dataclass(frozen=True, slots=True)
class PlanAtScale:
    """A plan before it is drawn: its size [mm], what stands under it, and how to draw it.

    `drawn` gives None where something on it has no room at this scale.
    """

    width: float
    height: float
    under: Block
    drawn: Callable[[], Block | None]


@dataclass(frozen=True, slots=True)
class FittedPlan:
    """A plan over its title, at the scale it fits at."""

    scale: Scale
    block: Block


def fitted_plan(source: SheetSource, at_scale: Callable[[Scale], PlanAtScale]) -> FittedPlan | None:
    """The plan at the largest standard scale that fits beside a column; None where none does."""
    area = _arranged(source, ()).plan_area
    for scale in source.scales(smallest=SMALLEST, largest=LARGEST):
        if not _room_fits(source, scale, area):
            continue
        plan = at_scale(scale)
        tall = plan.height + TITLE_GAP + plan.under.height + 2 * PAD
        if max(plan.width, plan.under.width) + 2 * PAD > area.width or tall > area.height:
            continue
        drawn = plan.drawn()
        if drawn is not None:
            return FittedPlan(scale, stacked((drawn, plan.under), TITLE_GAP))
    return None


def _room_fits(source: SheetSource, scale: Scale, area: Box) -> bool:
    """Whether the room by itself has room; sooner told than what stands about it."""
    bare = PlanFrame(source.layout, scale.ratio, Pt(0.0, 0.0))
    wide, tall = (high - low for low, high in (bare.reach(run) for run in RunName))
    return wide <= area.width and tall <= area.height


def pages_beside(
    source: SheetSource, plan: FittedPlan, blocks: Sequence[Block], name: str
) -> tuple[Page, ...]:
    """The plan's page, known by `name`, with blocks beside it, and pages for what is left over.

    Errors: `PaperTooSmall` where a block is taller than the paper.
    """
    arrangement = _arranged(source, blocks)
    area, corner = arrangement.plan_area, arrangement.placed[-1]
    x = area.left + (area.width - plan.block.width) / 2
    y = area.top + (area.height - plan.block.height) / 2
    page = Page(
        replace(source.fields, scale=plan.scale.text),
        (*plan.block.at(x, y), *placed_blocks(arrangement)),
        (corner.x, corner.y),
        (NamedView(name, 1),),
    )
    return (page, *table_pages(source, arrangement.left_over, 2))


def _arranged(source: SheetSource, blocks: Sequence[Block]) -> Arrangement:
    title = title_block(source.fields, column_width(source.size), source.typeface)
    return beside(frame_box(source.size), 1, tuple(blocks), title)


def side_by_side(left: Block, right: Block, width: float) -> Block | None:
    """Two blocks in a row at most `width` [mm] wide, on one bottom line; None if it has no room."""
    if left.width + BAR_GAP + right.width > width:
        return None
    height = max(left.height, right.height)
    places = (
        *left.at(0, height - left.height),
        *right.at(left.width + BAR_GAP, height - right.height),
    )
    return Block(left.width + BAR_GAP + right.width, height, places)
