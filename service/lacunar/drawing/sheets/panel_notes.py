"""What the panel sheet says in words: which way things lie, and in what order they go up."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.wording import SheetWording
from lacunar.layout.board_records import BoardLayout
from lacunar.layout.records import Layout
from lacunar.layout.tapering import tapered_boards_of, tapered_panels_of
from lacunar.model.boards import BoardRun, Boards
from lacunar.model.panel import Seat
from lacunar.model.room import START_WALL

MOST_LISTED = 24
MOST_GROUPS = 12
_SEATS = {
    Seat.BETWEEN_SIDES: "between the sides of the beams, and go up after them",
    Seat.BETWEEN_BACKING: "between the backing, and go up before the sides",
    Seat.ABOVE_BACKING: "above the backing, and go up before it",
}


def panel_notes(layout: Layout, wording: SheetWording) -> Iterator[str]:
    """The sentences of the sheet, in the order of the work."""
    panel = layout.ceiling.panel
    what = "Boards" if panel.boards else "Panels"
    gap = f" A gap of {wording.detail(panel.gap)} is left at every edge." if panel.gap else ""
    yield f"{what} lie {_SEATS[panel.seat]}.{gap}"
    stages = [step.stage.replace("_", " ") for step in layout.fitting.steps]
    if stages:
        yield f"Order of fitting: {', '.join(stages)}."
    if panel.boards is not None:
        yield from _boards(layout, panel.boards, wording)
    else:
        yield from _sheets(layout)
    yield from _alike(layout)
    if layout.measured_openings is not None:
        yield (
            "The plan is drawn as planned; coffers that were measured have the sizes they were"
            " measured for in the tables."
        )
    yield "Measure each opening before cutting: what stands governs over what is drawn."


def _boards(layout: Layout, boards: Boards, wording: SheetWording) -> Iterator[str]:
    wall = START_WALL[boards.parallel_to.other]
    yield (
        f"Boards of {wording.size(boards.cover)} cover lie along the {boards.parallel_to} run, as"
        " the double arrows show."
    )
    if boards.run is BoardRun.THROUGH:
        yield "They run through above the beams, and are parted at soffits and members alone."
    yield (
        f"Laying starts toward {wall}, where the bar of the single arrow is: the first board is"
        " ripped with its tongue kept, all others follow at whole covers, the last is ripped to"
        " its face."
    )
    if layout.boards is not None:
        yield _edges(layout.boards)
    if any(True for _ in tapered_boards_of(layout)):
        yield (
            "In coffers that taper, boards lie along the middle between two sides, and both edge"
            " boards take half of the taper; start and end are as the run goes."
        )


def _edges(boards: BoardLayout) -> str:
    laid = [field.courses for field in boards.fields if field.courses.courses.value > 1]
    if all(each.edge.value * 2 > boards.cover for each in laid):
        return "Both edge boards of a field are alike, and wider than half a cover."
    return (
        "Both edge boards of a field are alike. Some are half a cover or less, because of what is"
        " to lie on the middle line."
    )


def _sheets(layout: Layout) -> Iterator[str]:
    grain = layout.ceiling.panel.grain
    if grain is not None:
        yield f"The grain lies along the {grain} run, as the double arrows show."
    if any(fit.seams.value for fit in layout.panels):
        yield "Seams are measured from the panel's edge next the datum."
    if any(each.backing for fit in layout.panels for each in fit.seam_bearings):
        yield "A seam between two joists rests on a strip of backing, let in before the panels."
    if any(True for _ in tapered_panels_of(layout)):
        yield "Panels of coffers out of square have their sides in a table, each toward its wall."


def _alike(layout: Layout) -> Iterator[str]:
    """Which coffers are alike, where there is more than one size of them."""
    fields = layout.boards.fields if layout.boards else layout.panels
    groups: list[Sequence[str]] = [each.coffers for each in fields if len(each.coffers) > 1]
    if len(fields) == 1 and groups:
        yield f"All {len(groups[0])} whole coffers are alike."
        return
    for coffers in groups[:MOST_GROUPS]:
        others = ", ".join(coffers[1 : MOST_LISTED + 1])
        more = len(coffers) - 1 - MOST_LISTED
        rest = f" and {more} more" if more > 0 else ""
        yield f"Like {coffers[0]}: {others}{rest}."
