"""Sheet Z-104: the panel plan, with what fills the coffers."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.elements import Element, Polyline, Pt
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.directions import direction_of, double_arrow
from lacunar.drawing.plan.ordinates import RunningPlan
from lacunar.drawing.sheets.beside_plan import PlanAtScale, fitted_plan, pages_beside
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked, table_pages
from lacunar.drawing.sheets.panel_notes import panel_notes
from lacunar.drawing.sheets.panel_tables import panel_tables
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.plan_key import KeyEntry, key_blocks
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace
from lacunar.drawing.views.panel_plan import (
    TagsDoNotFit,
    measured_panel_plan,
    panel_plan,
    start_sign,
)
from lacunar.layout.records import Layout
from lacunar.model.panel import PanelKind, Seat
from lacunar.model.room import RunName

NO_ROOM = "This paper holds no plan of what fills the coffers: go by the tables."
ARROW = 10.0


def panel_pages(source: SheetSource) -> tuple[Page, ...]:
    """The panel plan at the largest standard scale that fits, and its tables.

    Tables alone where the paper holds the plan at no scale; nothing where the ceiling that is there
    shows.
    """
    layout = source.layout
    if layout.ceiling.panel.kind is PanelKind.EXISTING:
        return ()

    def at_scale(scale: Scale) -> PlanAtScale:
        plan = measured_panel_plan(layout, scale, source.wording, source.typeface)

        def drawn() -> Block | None:
            try:
                return panel_plan(plan, 1, source.wording, source.typeface)
            except TagsDoNotFit:
                return None

        return PlanAtScale(plan.width, plan.height, _under(source, plan), drawn)

    plan = fitted_plan(source, at_scale)
    if plan is None:
        return table_pages(source, tuple(_blocks(source, planned=False)), 1)
    return pages_beside(source, plan, tuple(_blocks(source, planned=True)), "panels")


def _under(source: SheetSource, plan: RunningPlan) -> Block:
    notes = (source.wording.unit_note, "LOOKING UP, DRAWN AS IN A MIRROR ON THE FLOOR")
    name = "BOARD PLAN" if source.layout.ceiling.panel.boards else "PANEL PLAN"
    title = view_title(1, name, plan.scale, notes, source.typeface)
    return stacked((title, scale_bar(1, plan.scale.ratio, source.wording.units, 60.0)), 2.0)


def _blocks(source: SheetSource, *, planned: bool) -> Iterator[Block]:
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    layout, wording = source.layout, source.wording
    tables = tuple(panel_tables(layout, space, wording))
    first = [] if planned else [NO_ROOM]
    yield from tables[:1]
    if planned:
        yield from key_blocks(tuple(_key(layout)), column, source.typeface)
    notes = [*first, *panel_notes(layout, wording)]
    yield from paragraph_blocks("notes", "NOTES", notes, column, source.typeface)
    yield from tables[1:]


def _key(layout: Layout) -> Iterator[KeyEntry]:
    """The signs the plan has."""
    run = direction_of(layout)
    if run is not None:
        what = "Boards lie" if layout.ceiling.panel.boards else "The grain lies"

        def along(middle: Pt) -> tuple[Element, ...]:
            return double_arrow(middle, ARROW if run is RunName.LENGTH else 5.6, run)

        yield KeyEntry("direction", f"{what} this way", along)
    if layout.ceiling.panel.boards is not None:
        yield KeyEntry("laying-start", "Boards start at the bar, and go on this way", _start_sign)
        yield KeyEntry("joint", "Joint between two boards", _joint_sign)
    elif any(fit.seams.value for fit in layout.panels):
        yield KeyEntry("seam", "Seam between two sheets", _seam_sign)
    if layout.ceiling.panel.seat is not Seat.BETWEEN_SIDES:
        yield KeyEntry("hidden-edge", "Edge that a beam will hide", _hidden_sign)


def _start_sign(middle: Pt) -> tuple[Element, ...]:
    return start_sign(middle.moved(0.0, 2.5), middle.moved(0.0, -2.5))


def _level(middle: Pt) -> tuple[Pt, Pt]:
    return middle.moved(-6.0, 0.0), middle.moved(6.0, 0.0)


def _joint_sign(middle: Pt) -> tuple[Element, ...]:
    return (Polyline(_level(middle), style.FINE),)


def _seam_sign(middle: Pt) -> tuple[Element, ...]:
    return (Polyline(_level(middle), style.OBJECT),)


def _hidden_sign(middle: Pt) -> tuple[Element, ...]:
    return (Polyline(_level(middle), style.HIDDEN),)
