"""Sheet Z-901: a corner in the order of fitting, with what each step is beside it."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.paper import NOT_TO_SCALE
from lacunar.drawing.sheets.cover_tables import Told, told_table
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.scale_bar import view_title
from lacunar.drawing.sheets.view_pages import TitledView, view_area, view_pages
from lacunar.drawing.solids.corner import Corner, corner_of
from lacunar.drawing.views.exploded_corner import Pulled, exploded_corner, pulled_corner
from lacunar.layout.fitting_records import Stage
from lacunar.layout.records import Layout

TITLE_GAP = 4.0
SPARE = 0.5
"""What is left about the picture [mm]: it is as large as just fits, to the last digit."""
STEPS = {
    Stage.SKIN: "SKIN OVER THE CEILING, TO FASTEN TO",
    Stage.SNAP_LINES: "LINES SNAPPED",
    Stage.BLOCKING: "BLOCKING BETWEEN JOISTS",
    Stage.BACKING: "BACKING",
    Stage.CASING_CLEATS: "CLEATS BESIDE MEMBERS",
    Stage.SIDES: "SIDES",
    Stage.FOLDED_BEAMS: "SIDES AND BOTTOM AS ONE, FOLDED",
    Stage.BOTTOMS: "BOTTOMS",
    Stage.EDGE_MOULDINGS: "FLAT MOULDINGS AT THE LOWER EDGES",
    Stage.PANELS: "PANELS",
    Stage.BOARDS: "BOARDS",
    Stage.CEILING_MOULDINGS: "FLAT MOULDINGS AT THE CEILING",
    Stage.CROWN_NAILERS: "NAILERS BEHIND THE CROWN",
    Stage.CROWN_FRAMES: "CROWN FRAMES",
    Stage.COPED_CROWN: "CROWN, COPED IN PLACE",
}


def exploded_pages(source: SheetSource) -> tuple[Page, ...]:
    """The corner with its steps; no page where no coffer has a beam beside it."""
    corner = corner_of(source.layout)
    pulled = pulled_corner(corner) if corner else ()
    if corner is None or not pulled:
        return ()
    area = view_area(source)
    notes = (_which(corner), "PULLED APART DOWNWARD IN THE ORDER OF FITTING")
    title = view_title(1, "EXPLODED CORNER", NOT_TO_SCALE, notes, source.typeface)
    room = area.width - SPARE, area.height - title.height - TITLE_GAP - SPARE
    drawn = exploded_corner(pulled, room, source.typeface)
    view = TitledView("exploded-corner", 1, None, stacked((drawn, title), TITLE_GAP))
    return view_pages(source, (view,), tuple(_blocks(source, pulled)))


def _which(corner: Corner) -> str:
    ids = " AND ".join(name for name in corner.ids.values() if name)
    return f"COFFER {corner.coffer.id} AT {ids}, AS SEEN FROM BELOW"


def _blocks(source: SheetSource, pulled: Sequence[Pulled]) -> Iterator[Block]:
    """The steps with what each waits for, and what the picture leaves out."""
    space = column_space(source.size)
    shown = {each.step.number for each in pulled}
    lines = tuple(_steps(source.layout, shown))
    yield from told_table("fitting", "IN THIS ORDER", lines, space, source.typeface)
    yield from paragraph_blocks("notes", "NOTES", _notes(), space, source.typeface)


def _steps(layout: Layout, shown: set[int]) -> Iterator[Told]:
    for step in layout.fitting.steps:
        words = STEPS[step.stage]
        if step.needs:
            words += f", AFTER {', '.join(str(wait.number) for wait in step.needs)}"
        if step.number not in shown:
            words += " (NOT PICTURED)"
        yield Told(str(step.number), words, str(step.number), step.stage.value)


def _notes() -> tuple[str, ...]:
    return (
        "Lengths of parts are cut short in the picture; widths, thicknesses and angles are theirs.",
        "Work overhead in twos, from a platform with a rail, with eyes protected. What is hung is"
        " held by framing; where local codes or a licensed engineer ask for more, they govern.",
    )
