"""Sheet Z-101: the reflected ceiling plan with its sections, marks, legend, notes and cautions.

The largest standard scale at which everything stands clear is taken. Where the paper cannot hold
all blocks beside the plan, the rest goes on to continuation sheets (Z-101-2, …); where it cannot
hold the plan itself, a fault names a paper that would.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from lacunar.drawing.annotation import Block, TagsDoNotFit
from lacunar.drawing.dimensions import StringsDoNotFit
from lacunar.drawing.section.alike import cut_alike
from lacunar.drawing.section.records import SectionOf, SectionTrim
from lacunar.drawing.sheets import blocks as side_blocks
from lacunar.drawing.sheets.beside_plan import BAR_GAP, side_by_side
from lacunar.drawing.sheets.item_tables import items_table, wall_features_table
from lacunar.drawing.sheets.joist_arrow import joist_arrow
from lacunar.drawing.sheets.level_tables import level_tables
from lacunar.drawing.sheets.marks_tables import marks_in_parts, marks_table
from lacunar.drawing.sheets.obstacles import Obstacles, PaperTooSmall
from lacunar.drawing.sheets.opening_tables import (
    corner_tables,
    cut_rows,
    opening_rows,
    openings_tables,
)
from lacunar.drawing.sheets.outline_tables import outline_tables
from lacunar.drawing.sheets.pages import Page, SheetSource, placed_blocks, stacked, table_pages
from lacunar.drawing.sheets.placing import (
    COLUMN_GAP,
    Arrangement,
    band_below,
    below,
    beside,
    column_space,
    column_width,
    frame_box,
)
from lacunar.drawing.sheets.references import references_block
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.section_marks import marked_plan
from lacunar.drawing.sheets.survey_tables import survey_tables
from lacunar.drawing.sheets.tables import profile_table, rows_that_fit
from lacunar.drawing.sheets.title_block import title_block
from lacunar.drawing.sheets.word_tables import TableSpace
from lacunar.drawing.views.beam_section import SectionTooWide, beam_section
from lacunar.drawing.views.reflected_ceiling_plan import (
    MeasuredPlan,
    PlanView,
    measured_plan,
    reflected_ceiling_plan,
)
from lacunar.layout.tapering import crown_out_of_square

PLAN_PAD = 4.0
TITLE_GAP = 5.0
LARGEST_PLAN = 2
SMALLEST_PLAN = 200
SMALLEST_SECTION = 100
MOST_SECTION = 0.5
"""How much of the frame's height a section may take."""
WHOLE_WORTH = Fraction(3, 2)
"""How many times smaller a plan may be so that everything stands on one sheet: a standard step."""


def plan_pages(sheets: SheetSource) -> tuple[Page, ...]:
    """The pages of the reflected ceiling plan: one, or one and its continuations.

    Errors: `PaperTooSmall` where no standard scale makes the plan fit and stay legible.
    """
    beside_blocks = _blocks(sheets)
    plans = PlanScales(sheets)
    whole = _largest(plans, beside_blocks, continued=False)
    parted = _largest(plans, beside_blocks, continued=True)
    if whole and (parted is None or whole[0].scale.ratio <= WHOLE_WORTH * parted[0].scale.ratio):
        return _pages(sheets, *whole)
    parted = parted or _over_band(plans, beside_blocks)
    if parted:
        return _pages(sheets, *parted)
    raise PaperTooSmall(plans.obstacles.first)


class PlanScales:
    """The plan at every standard scale at which it is smaller than the frame, largest first.

    Plans are measured at once, and drawn only where they would be taken: each scale at most once,
    however many arrangements it is tried in.
    """

    def __init__(self, sheets: SheetSource) -> None:
        self.sheets = sheets
        self.obstacles = Obstacles()
        self.measured = tuple(_measured(sheets, self.obstacles))
        self._drawn: dict[Fraction, PlanView | None] = {}

    def drawn(self, plan: MeasuredPlan) -> PlanView | None:
        """The plan drawn; None where its ids do not fit at this scale."""
        ratio = plan.scale.ratio
        if ratio not in self._drawn:
            try:
                self._drawn[ratio] = reflected_ceiling_plan(plan, self.sheets.typeface)
            except TagsDoNotFit as error:
                self._drawn[ratio] = None
                self.obstacles.note(ratio, plan.scale.text, str(error))
        return self._drawn[ratio]

    def first(
        self, arrangements: Sequence[Arrangement], *, continued: bool
    ) -> tuple[PlanView, Arrangement] | None:
        """The largest plan that fits one of the arrangements with its title, and that one."""
        for plan in self.measured:
            under = _under(self.sheets, plan, continued=continued)
            width, height = _titled_size(plan, under)
            for arrangement in arrangements:
                area = arrangement.plan_area
                if width <= area.width and height <= area.height:
                    view = self.drawn(plan)
                    if view is None:
                        break
                    spare = (area.width - width, area.height - height)
                    marked = marked_plan(view, plan, self.sheets, spare)
                    return _titled(marked, under), arrangement
        return None


def _over_band(plans: PlanScales, blocks: Sequence[Block]) -> tuple[PlanView, Arrangement] | None:
    """The largest plan that fits over a band no higher than the title block; None if none does.

    The last resort: a plan as wide as the paper has its blocks on continuation sheets.
    """
    sheets = plans.sheets
    title = title_block(sheets.fields, column_width(sheets.size), sheets.typeface)
    band = band_below(frame_box(sheets.size), title.height, blocks, title)
    return plans.first((band,), continued=True)


def _largest(
    plans: PlanScales, blocks: Sequence[Block], *, continued: bool
) -> tuple[PlanView, Arrangement] | None:
    """The plan at the largest scale that fits the page, and how its blocks stand; None if none."""
    arrangements = tuple(_arrangements(plans.sheets, blocks, continued))
    return plans.first(arrangements, continued=continued)


def _measured(sheets: SheetSource, obstacles: Obstacles) -> Iterator[MeasuredPlan]:
    """The plan's size at every standard scale at which its figures are legible, largest first.

    Notes in `obstacles` which figure is not.
    """
    frame = frame_box(sheets.size)
    for scale in sheets.scales(smallest=SMALLEST_PLAN, largest=LARGEST_PLAN):
        try:
            plan = measured_plan(sheets.layout, scale, sheets.wording, sheets.typeface)
        except StringsDoNotFit as error:
            obstacles.note(scale.ratio, scale.text, f"figure {error}")
            continue
        if plan.width <= frame.width and plan.height <= frame.height:
            yield plan


def _under(sheets: SheetSource, plan: MeasuredPlan, *, continued: bool) -> Block:
    """The plan's title and scale bar; `continued` tells where to look for the rest."""
    notes = [sheets.wording.unit_note, "LOOKING UP, DRAWN AS IN A MIRROR ON THE FLOOR"]
    if continued:
        notes.append(f"CAUTIONS, MARKS AND NOTES: SEE {sheets.fields.sheet}-2")
    title = view_title(1, "REFLECTED CEILING PLAN", plan.scale, tuple(notes), sheets.typeface)
    bar = scale_bar(1, plan.scale.ratio, sheets.wording.units, 80.0)
    joists = sheets.layout.ceiling.room.joists
    if joists:
        arrow = joist_arrow(joists, sheets.wording, sheets.typeface)
        bar = side_by_side(arrow, bar, plan.width - title.width - BAR_GAP) or stacked(
            (arrow, bar), TITLE_GAP
        )
    return side_by_side(title, bar, plan.width) or stacked((title, bar), 2.0)


def _titled_size(plan: MeasuredPlan, under: Block) -> tuple[float, float]:
    """Width and height of the plan over its title, padding included [mm]."""
    lower = stacked((Block(plan.width, plan.height, ()), under), TITLE_GAP)
    return lower.width + 2 * PLAN_PAD, lower.height + 2 * PLAN_PAD


def _titled(view: PlanView, under: Block) -> PlanView:
    """The drawn plan over its title and scale bar, with room about them."""
    lower = stacked((view.block, under), TITLE_GAP)
    return replace(
        view,
        block=Block(
            lower.width + 2 * PLAN_PAD, lower.height + 2 * PLAN_PAD, lower.at(PLAN_PAD, PLAN_PAD)
        ),
    )


def _arrangements(
    sheets: SheetSource, blocks: Sequence[Block], allow_left_over: bool
) -> Iterator[Arrangement]:
    """Ways to stand blocks on the page, those that leave the plan most room first."""
    frame = frame_box(sheets.size)
    title = title_block(sheets.fields, column_width(sheets.size), sheets.typeface)
    if allow_left_over:
        yield beside(frame, 1, blocks, title)
        return
    band = below(frame, blocks, title)
    if band:
        yield band
    for count in (1, 2, 3):
        if frame.width - count * (title.width + COLUMN_GAP) > title.width / 2:
            arrangement = beside(frame, count, blocks, title)
            if not arrangement.left_over:
                yield arrangement


def _blocks(sheets: SheetSource) -> tuple[Block, ...]:
    """Everything that stands beside the plan, in the order a reader needs it."""
    layout, wording, typeface = sheets.layout, sheets.wording, sheets.typeface
    column = column_space(sheets.size)
    width = column.width
    most = rows_that_fit(column.height)
    space = TableSpace(width, most, typeface)
    tables = tuple(marks_table(part, space, wording) for part in marks_in_parts(layout, most))
    return (
        *_sections(sheets, width),
        profile_table(layout.profiles, width, wording),
        *tables,
        *survey_tables(layout, space, wording),
        *outline_tables(layout, space, wording),
        *_openings(sheets, width, most),
        *level_tables(layout, space, wording),
        *side_blocks.cautions(layout, column, typeface),
        *side_blocks.legend(layout, column, typeface),
        *side_blocks.notes(layout, column, wording, typeface),
        *items_table(layout, column, wording, typeface),
        *wall_features_table(layout, column, wording, typeface),
        *references_block(sheets, column),
    )


def _openings(sheets: SheetSource, width: float, most: int) -> tuple[Block, ...]:
    """Tables of openings as measured, and of corners that crown is mitred to."""
    found = sheets.layout.measured_openings
    rows = (*opening_rows(found.openings), *cut_rows(sheets.layout.outlined)) if found else ()
    return (
        *openings_tables(rows, width, most, sheets.wording),
        *corner_tables(tuple(crown_out_of_square(sheets.layout)), width, most),
    )


def _sections(sheets: SheetSource, width: float) -> Iterator[Block]:
    """A titled section of each box or cased profile, numbered on from the plan."""
    number = 2
    trim = SectionTrim(sheets.layout.mouldings.crown, sheets.layout.ceiling.flat_mouldings)
    for profile in sheets.layout.profiles:
        if profile.kind in ("box", "flat", "cased"):
            for beams in cut_alike(sheets.layout, profile):
                of = SectionOf(number, profile, beams, sheets.layout.ceiling.panel, trim)
                yield _section(sheets, of, width)
                number += 1


def _section(sheets: SheetSource, of: SectionOf, width: float) -> Block:
    """One section at the largest standard scale that fits the column, over its title and bar."""
    wording, typeface = sheets.wording, sheets.typeface
    tallest = frame_box(sheets.size).height * MOST_SECTION
    for scale in sheets.scales(smallest=SMALLEST_SECTION, largest=2):
        try:
            block = beam_section(of, scale, wording, typeface, width)
        except SectionTooWide:
            continue
        if block.height <= tallest:
            break
    else:
        raise PaperTooSmall(f"The section of profile {of.profile.id} is wider than a column.")
    title = view_title(of.number, f"BEAM SECTION {of.profile.id}", scale, _beams_of(of), typeface)
    bar = scale_bar(of.number, scale.ratio, wording.units, 40.0)
    return stacked((block, stacked((title, bar), 2.0)), 3.0)


def _beams_of(of: SectionOf) -> tuple[str, ...]:
    """The line that says which beams a section is of."""
    ids = [beam.id for beam in of.beams]
    return (f"BEAM{'S' if len(ids) > 1 else ''} {side_blocks.listed(ids).upper()}",)


def _pages(sheets: SheetSource, view: PlanView, arrangement: Arrangement) -> tuple[Page, ...]:
    """The plan's page, then continuation pages for what was left over."""
    area = arrangement.plan_area
    x = area.left + (area.width - view.block.width) / 2
    y = area.top + (area.height - view.block.height) / 2
    fields = replace(sheets.fields, scale=view.scale.text)
    children = (*view.block.at(x, y), *placed_blocks(arrangement))
    corner = arrangement.placed[-1]
    page = Page(fields, children, (corner.x, corner.y))
    return (page, *table_pages(sheets, arrangement.left_over, 2))
