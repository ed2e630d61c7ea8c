"""Sheet Z-103: the backing plan, with what backing is fixed to and how."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, dot, paragraph_blocks
from lacunar.drawing.elements import Element, Fill, Polyline, Pt
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.clear_places import Box
from lacunar.drawing.plan.ordinates import RunningPlan
from lacunar.drawing.sheets.backing_notes import backing_notes
from lacunar.drawing.sheets.backing_tables import backing_tables
from lacunar.drawing.sheets.beside_plan import (
    TITLE_GAP,
    PlanAtScale,
    fitted_plan,
    pages_beside,
    side_by_side,
)
from lacunar.drawing.sheets.joist_arrow import joist_arrow
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked, table_pages
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.plan_key import KeyEntry, key_blocks
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace
from lacunar.drawing.views.backing_plan import (
    FiguresDoNotFit,
    backing_plan,
    measured_backing_plan,
)
from lacunar.drawing.views.backing_plan.keep_out import zone_sign
from lacunar.layout.records import Layout

NO_ROOM = "This paper holds no plan of the backing at a standard scale: go by the tables."


def backing_pages(source: SheetSource) -> tuple[Page, ...]:
    """The backing plan at the largest standard scale that fits, and its tables.

    Tables alone where the paper holds the plan at no scale; nothing where nothing is backed.
    """
    layout = source.layout
    if not _has_backing(layout):
        return ()

    def at_scale(scale: Scale) -> PlanAtScale:
        plan = measured_backing_plan(layout, scale, source.wording, source.typeface)

        def drawn() -> Block | None:
            try:
                return backing_plan(plan, 1, source.wording, source.typeface)
            except FiguresDoNotFit:
                return None

        return PlanAtScale(plan.width, plan.height, _under(source, plan), drawn)

    plan = fitted_plan(source, at_scale)
    if plan is None:
        return table_pages(source, tuple(_blocks(source, planned=False)), 1)
    return pages_beside(source, plan, tuple(_blocks(source, planned=True)), "backing")


def _has_backing(layout: Layout) -> bool:
    backed = any(part.name == "backing" for each in layout.profiles for part in each.parts)
    return backed or bool(layout.backing.lines)


def _under(source: SheetSource, plan: RunningPlan) -> Block:
    """The plan's title, the joists' arrow and the scale bar."""
    wording = source.wording
    notes = (wording.unit_note, "RUNNING DIMENSIONS TO THE FACES OF THE BACKING")
    title = view_title(1, "BACKING PLAN", plan.scale, notes, source.typeface)
    bar = scale_bar(1, plan.scale.ratio, wording.units, 40.0)
    joists = source.layout.ceiling.room.joists
    if joists is None:
        return stacked((title, bar), 2.0)
    arrow = joist_arrow(joists, wording, source.typeface, drawn=True)
    width = max(plan.width, title.width)
    row = side_by_side(title, arrow, width)
    if row is not None:
        return stacked((row, bar), 2.0)
    lower = side_by_side(arrow, bar, width) or stacked((arrow, bar), 2.0)
    return stacked((title, lower), TITLE_GAP)


def _blocks(source: SheetSource, *, planned: bool) -> Iterator[Block]:
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    layout, wording = source.layout, source.wording
    tables = tuple(backing_tables(layout, space, wording))
    first = [] if planned else [NO_ROOM]
    notes = [*first, *backing_notes(layout, wording)]
    yield from tables[:1]
    if planned:
        yield from key_blocks(tuple(_key(layout)), column, source.typeface)
    yield from paragraph_blocks("notes", "FIXING", notes, column, source.typeface)
    yield from tables[1:]


def _key(layout: Layout) -> Iterator[KeyEntry]:
    """The signs the plan has."""
    yield KeyEntry("backing", "Backing; a thin line beside it: finished face", _backing_sign)
    if layout.backing.joists is not None:
        yield KeyEntry("joist", "Joist: both its edges; at a small scale its middle", _joist_sign)
    if any(line.blocks for line in layout.backing.lines):
        yield KeyEntry("blocking", "Block let in between two joists", _block_sign)
    if any(piece.places for line in layout.backing.lines for piece in line.pieces):
        yield KeyEntry("fixed-at", "Fixed here", _fixed_sign)
    if layout.items.items:
        yield KeyEntry("keep-out", "Keep out: a ceiling item and its clearance", _zone_sign)


def _backing_sign(middle: Pt) -> tuple[Element, ...]:
    corners = box_corners(middle.x - 6.0, middle.y - 1.2, 12.0, 2.4)
    ends = (Pt(middle.x - 6.0, middle.y + 2.0), Pt(middle.x + 6.0, middle.y + 2.0))
    return (
        Polyline(corners, style.OBJECT, closed=True, fill=Fill.TINT),
        Polyline(ends, style.FINE),
    )


def _joist_sign(middle: Pt) -> tuple[Element, ...]:
    ends = (
        (Pt(middle.x - 6.0, middle.y + d), Pt(middle.x + 6.0, middle.y + d)) for d in (-0.8, 0.8)
    )
    return tuple(Polyline(pair, style.HIDDEN) for pair in ends)


def _block_sign(middle: Pt) -> tuple[Element, ...]:
    return (Polyline((Pt(middle.x - 4.0, middle.y), Pt(middle.x + 4.0, middle.y)), style.CUT),)


def _fixed_sign(middle: Pt) -> tuple[Element, ...]:
    return (dot(middle),)


def _zone_sign(middle: Pt) -> tuple[Element, ...]:
    return zone_sign(Box.about(middle, 8.0, 4.4))
