"""Sheet Z-102: the setting-out plan for the crew that snaps its lines on the floor."""

from collections.abc import Iterator
from math import floor

from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.ordinates import RunningPlan
from lacunar.drawing.sheets.beside_plan import PlanAtScale, fitted_plan, pages_beside
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks, to_be_measured
from lacunar.drawing.views.setting_out import (
    FiguresDoNotFit,
    setting_out,
    setting_out_plan,
)
from lacunar.drawing.views.setting_out.laser_lines import laser_lines
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout, MarkKind
from lacunar.measure.angle import hypotenuse
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.room import RunName


def setting_out_pages(source: SheetSource) -> tuple[Page, ...]:
    """The setting-out plan at the largest standard scale that fits beside its notes.

    Errors: `PaperTooSmall` where no scale does.
    """

    def at_scale(scale: Scale) -> PlanAtScale:
        plan = setting_out(source.layout, scale, source.wording, source.typeface)

        def drawn() -> Block | None:
            try:
                return setting_out_plan(plan, 1, source.wording, source.typeface)
            except FiguresDoNotFit:
                return None

        return PlanAtScale(plan.width, plan.height, _under(source, plan), drawn)

    plan = fitted_plan(source, at_scale)
    if plan is None:
        raise PaperTooSmall("The running dimensions of the setting-out plan have no room.")
    return pages_beside(source, plan, tuple(_blocks(source)), "setting-out")


def _under(source: SheetSource, plan: RunningPlan) -> Block:
    notes = (
        source.wording.unit_note,
        "RUNNING DIMENSIONS FROM THE START WALL AT EACH END",
        "DRAWN AS ON THE FLOOR",
    )
    title = view_title(1, "SETTING-OUT PLAN", plan.scale, notes, source.typeface)
    return stacked((title, scale_bar(1, plan.scale.ratio, source.wording.units, 60.0)), 2.0)


def _blocks(source: SheetSource) -> Iterator[Block]:
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    columns = checks(source.layout, source.wording)
    yield from in_blocks("check", "checks", "TO CHECK BY", columns, space)
    yield from _in_both_units(source, space)
    steps = tuple(_steps(source.layout, source.wording))
    yield from paragraph_blocks("notes", "IN THIS ORDER", steps, column, source.typeface)


def _in_both_units(source: SheetSource, space: TableSpace) -> Iterator[Block]:
    """Every running mark in both units, where a spec asks for second ones."""
    wording = source.wording
    if wording.second_step is None:
        return
    found = {
        mark.mark
        for marks in source.layout.marks
        for mark in marks.marks
        if mark.kind in (MarkKind.FACE, MarkKind.CENTER, MarkKind.WALL)
    }
    marks = tuple(sorted(found))
    columns = (
        WordColumn(
            "MARK",
            tuple(wording.length(mark) for mark in marks),
            "mark",
            tuple(wording.exact(mark) for mark in marks),
        ),
        WordColumn(
            wording.second_step.units.value.upper(),
            tuple(f"[{wording.second(mark)}]" for mark in marks),
            "second",
            tuple(wording.exact(mark) for mark in marks),
        ),
    )
    yield from in_blocks("both-units", "both-units", "MARKS IN BOTH UNITS", columns, space)


def checks(layout: Layout, wording: SheetWording) -> tuple[WordColumn, ...]:
    """What is taped: both diagonals, and a right angle at the datum where the grid is square."""
    rows = list(diagonals(layout))
    if layout.followed is None:
        three, four, five = right_angle(layout, wording.units)
        rows += [("3 OF 3-4-5", three), ("4 OF 3-4-5", four), ("5 OF 3-4-5", five)]
    return (
        WordColumn("CHECK", tuple(name for name, _ in rows)),
        WordColumn(
            "LENGTH",
            tuple(wording.length(length) for _, length in rows),
            "length",
            tuple(wording.exact(wording.rounded(length)) for _, length in rows),
        ),
        to_be_measured(len(rows)),
    )


def diagonals(layout: Layout) -> tuple[tuple[str, Length], ...]:
    """The room's diagonals from corner to corner; none where it has other than four corners.

    `rising` goes from the datum to the corner of W2 and W3.
    """
    crooked = layout.crooked
    if layout.outlined is not None:
        return ()
    if crooked is not None:
        return (("RISING", crooked.survey.rising.value), ("FALLING", crooked.survey.falling.value))
    exact = hypotenuse(*(layout.run(run).span.at_start.value for run in RunName))
    return (("RISING", exact), ("FALLING", exact))


def right_angle(layout: Layout, units: Units) -> tuple[Length, Length, Length]:
    """The largest triangle of 3, 4 and 5 whole feet, or tenths of a meter, that the room holds."""
    step = Length.of_feet(1) if units is Units.INCH else Length.of_millimeters(100)
    spans = sorted(layout.run(run).span.at_start.value for run in RunName)
    most = max(1, min(floor(spans[0] / (step * 3)), floor(spans[1] / (step * 4))))
    return step * 3 * most, step * 4 * most, step * 5 * most


def _steps(layout: Layout, wording: SheetWording) -> Iterator[str]:
    if layout.outlined is None:
        yield "Tape the room's diagonals, rising from the datum and falling, before anything else."
    lasers = laser_lines(layout, wording.units)
    if not lasers:
        yield "Mark each wall by itself, from its start corner, and join the marks of two walls."
    else:
        control, square = lasers
        yield (
            f"Snap the control line {wording.length(control.offset)} off {control.wall}, parallel"
            f" to it, and square to it a line {wording.length(square.offset)} off {square.wall}:"
            " set a laser where they cross, or the right angle of the table. All else is square to"
            " them."
        )
    yield (
        "Hold the tape at the finished face of the start wall and mark both faces of every beam at"
        " one end of the run, all from that one place; then at the other end."
    )
    yield (
        "Snap each line through its two marks, and each center half way between its faces. Tape the"
        " coffers: what is more than a step off is set out again, not shared."
    )
    if layout.outlined is not None:
        yield "Faces at inner walls without a running dimension are set off from their own wall."
    yield "Carry the lines up with a plumb laser. Finished faces govern; backing follows from them."
    yield "Work overhead in twos, and mark where wires and pipes are before anything is driven."
