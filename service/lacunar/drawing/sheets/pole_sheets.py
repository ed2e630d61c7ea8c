"""Sheet Z-701: story poles as tables, and at full size on a roll or as tiles to tape together."""

from collections.abc import Iterator

from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.full_size.pieces import Piece, pieces_of
from lacunar.drawing.sheets.full_size import (
    LONGEST_STRIP,
    PRINT_NOTE,
    numbered,
    rolled,
    tile_paper,
    tiled,
)
from lacunar.drawing.sheets.pages import FullSizePage, Page, SheetSource, table_pages
from lacunar.drawing.sheets.placing import column_space, frame_box
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks, to_be_measured
from lacunar.drawing.views.story_pole import Pole, poles, strip
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Mark, MarkKind
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.drawing import StoryPoles

TABLED = (MarkKind.WALL, MarkKind.FACE, MarkKind.CENTER)

TABLE_NOTES = (
    "Carry the marks on to a straight strip of wood, one to each run, all from one end and none"
    " added up. Name each mark, and hatch what is beam.",
    "Set the start of a pole to the finished face of its start wall. On the floor or"
    " held to the ceiling, never turn the pole end for end: its start stays at the start wall.",
)
NOTES = (
    "The figures govern: paper creeps with damp and heat. Hold each strip to a tape before use.",
    "Set the start of a pole to the finished face of its start wall. Faces and walls are numbered;"
    " what is hatched is beam. Chain lines are centers, dashed lines members in casings, and short"
    " lines at the lower edge backing.",
    "On the floor the printed side is up, held to the ceiling it is down. Never turn a strip end"
    " for end: its start stays at the start wall.",
)
PIECES_NOTE = (
    "Lay each piece over the one before it so that the crosses meet. Where it starts stands printed"
    " at its left edge: hold that to the tape too, so that no error is carried on."
)


def pole_sheets(source: SheetSource) -> tuple[Page | FullSizePage, ...]:
    """The tables of a ceiling's poles, then their strips if the spec asks for them.

    Errors: `PaperTooSmall` where the paper does not hold a block of a table.
    """
    form = source.layout.ceiling.drawing.story_poles
    tables = table_pages(source, tuple(_blocks(source, form)), 1)
    if form is StoryPoles.TABLE:
        return tables
    on_roll = form is StoryPoles.ROLL
    longest = LONGEST_STRIP if on_roll else frame_box(tile_paper(source.size)).width
    strips = [
        strip(pole, piece, source.wording, source.typeface)
        for pole in poles(source.layout)
        for piece in _pieces(pole, longest, source.wording.units)
    ]
    pages = rolled(source, strips) if on_roll else tiled(source, strips)
    return (*tables, *numbered(source, tuple(pages), len(tables) + 1))


def _blocks(source: SheetSource, form: StoryPoles) -> Iterator[Block]:
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    for pole in poles(source.layout):
        columns = _columns(pole, source.wording)
        yield from in_blocks("pole", pole.identity, pole.name, columns, space)
    notes = TABLE_NOTES if form is StoryPoles.TABLE else (*NOTES, PRINT_NOTE, PIECES_NOTE)
    yield from paragraph_blocks("notes", "NOTES", notes, column, source.typeface)


def _columns(pole: Pole, wording: SheetWording) -> tuple[WordColumn, ...]:
    """What stands on a pole, from its start: name, running number, and room for the tape's."""
    marks = tuple(pole.of_kind(*TABLED))
    return (
        WordColumn("LINE", tuple(_line(mark) for mark in marks)),
        WordColumn(
            "RUNNING",
            tuple(wording.length(mark.mark) for mark in marks),
            "running",
            tuple(wording.exact(mark.mark) for mark in marks),
        ),
        to_be_measured(len(marks)),
    )


def _line(mark: Mark) -> str:
    side = {"near": " NEAR", "far": " FAR", "at": " MID"}[mark.side]
    return mark.of + ("" if mark.kind is MarkKind.WALL else side)


def _pieces(pole: Pole, longest: float, units: Units) -> tuple[Piece, ...]:
    faces = [mark.mark for mark in pole.of_kind(MarkKind.FACE, MarkKind.WALL)]
    return pieces_of(pole.length, faces, Length.of_millimeters(int(longest)), units)
