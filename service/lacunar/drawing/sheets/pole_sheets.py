"""Sheet Z-701: story poles as tables, and at full size on a roll or as tiles to tape together."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, paragraph_blocks
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.paper import ISO_PAPERS, PAPER_SIZES, PaperSize
from lacunar.drawing.sheets.pages import FullSizePage, Page, SheetSource, table_pages
from lacunar.drawing.sheets.placing import FRAME_PAD, column_width, frame_box
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks, to_be_measured
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.story_pole import Pole, PolePiece, pole_pieces, poles, strip
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import Mark, MarkKind
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.drawing import Paper, StoryPoles

TABLED = (MarkKind.WALL, MarkKind.FACE, MarkKind.CENTER)
LONGEST_PAGE = Length.of_feet(16)
"""Many readers of PDF show no page longer than 200 in (its classic limit of user space)."""
ROLL_MARGIN = 15.0
STRIP_GAP = 6.0
FOOT = 14.0
"""What the check bars and the line of words take at the foot of a page [mm]."""
BARS = (
    (Length.of_inches(6), '6"'),
    (Length.of_millimeters(150), "150 mm"),
)
BAR_GAP = 18.0

NOTES = (
    "The figures govern: paper creeps with damp and heat. Hold each strip to a tape before use.",
    "Set the start of a pole to the finished face of its start wall. Faces and walls are numbered;"
    " what is hatched is beam. Chain lines are centers, dashed lines members in casings, and short"
    " lines at the lower edge backing.",
    "On the floor the printed side is up, held to the ceiling it is down. Never turn a strip end"
    " for end: its start stays at the start wall.",
)
FULL_SIZE_NOTES = (
    "Print at 100 percent, not fitted to the page. Both check bars of every page must measure what"
    " they say; if they do not, throw the page away.",
    "Lay each piece over the one before it so that the crosses meet. Where it starts stands printed"
    " at its left edge: hold that to the tape too, so that no error is carried on.",
)


def pole_sheets(source: SheetSource) -> tuple[Page | FullSizePage, ...]:
    """The tables of a ceiling's poles, then their strips if the spec asks for them.

    Errors: `PaperTooSmall` where the paper does not hold a block of a table.
    """
    form = source.layout.ceiling.drawing.story_poles
    tables = table_pages(source, tuple(_blocks(source, form)), 1)
    if form is StoryPoles.TABLE:
        return tables
    strips = _roll(source) if form is StoryPoles.ROLL else _tiles(source)
    return (*tables, *_numbered(source, tuple(strips), len(tables) + 1))


def _numbered(
    source: SheetSource, pages: Sequence[FullSizePage], first: int
) -> Iterator[FullSizePage]:
    for number, page in enumerate(pages, start=first):
        sheet = f"{source.fields.sheet}-{number}"
        fields = replace(source.fields, sheet=sheet, scale="FULL SIZE")
        yield replace(page, fields=fields)


def _blocks(source: SheetSource, form: StoryPoles) -> Iterator[Block]:
    width = column_width(source.size) - FRAME_PAD
    column = ColumnSpace(width, frame_box(source.size).height - 2 * FRAME_PAD)
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    for pole in poles(source.layout):
        columns = _columns(pole, source.wording)
        yield from in_blocks("pole", pole.identity, pole.name, columns, space)
    notes = NOTES if form is StoryPoles.TABLE else NOTES + FULL_SIZE_NOTES
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
    side = {"near": " NEAR", "far": " FAR", "at": " CENTER"}[mark.side]
    return mark.of + ("" if mark.kind is MarkKind.WALL else side)


def _pieces(pole: Pole, longest: float, units: Units) -> tuple[PolePiece, ...]:
    faces = [mark.mark for mark in pole.of_kind(MarkKind.FACE, MarkKind.WALL)]
    return pole_pieces(pole.length, faces, Length.of_millimeters(int(longest)), units)


def _roll(source: SheetSource) -> Iterator[FullSizePage]:
    """A page of its own length to each piece, no longer than readers show."""
    longest = float(LONGEST_PAGE.millimeters) - 2 * ROLL_MARGIN
    for pole in poles(source.layout):
        for piece in _pieces(pole, longest, source.wording.units):
            block = strip(pole, piece, source.wording, source.typeface)
            height = block.height + FOOT + 2 * ROLL_MARGIN
            foot = height - ROLL_MARGIN
            yield FullSizePage(
                source.fields,
                (*block.at(ROLL_MARGIN, ROLL_MARGIN), *_check_bars(ROLL_MARGIN, foot)),
                block.width + 2 * ROLL_MARGIN,
                height,
                None,
                ROLL_MARGIN,
                foot,
            )


def _tiles(source: SheetSource) -> Iterator[FullSizePage]:
    """As many strips to a page of paper that any office prints as it holds."""
    size = tile_paper(source.size)
    frame = frame_box(size)
    blocks = [
        strip(pole, piece, source.wording, source.typeface)
        for pole in poles(source.layout)
        for piece in _pieces(pole, frame.width, source.wording.units)
    ]
    while blocks:
        y, children = frame.top, list[Element]()
        while blocks and y + blocks[0].height <= frame.bottom - FOOT:
            block = blocks.pop(0)
            children.extend(block.at(frame.left, y))
            y += block.height + STRIP_GAP
        children.extend(_check_bars(frame.left, frame.bottom))
        yield FullSizePage(
            source.fields,
            tuple(children),
            size.width,
            size.height,
            size.paper,
            frame.left,
            frame.bottom,
        )


def tile_paper(size: PaperSize) -> PaperSize:
    """The smallest paper of the same family: what every office printer has."""
    return PAPER_SIZES[Paper.A4 if size.paper in ISO_PAPERS else Paper.LETTER]


def _check_bars(left: float, foot: float) -> Iterator[Group]:
    """Bars of known length, by which a print is found to be true."""
    y, x = foot - style.TEXT - 5.0, left
    for length, words in BARS:
        width = float(length.millimeters)
        ends = (Pt(x, y), Pt(x + width, y))
        stops = tuple((at.moved(0.0, -1.6), at.moved(0.0, 1.6)) for at in ends)
        said = Text(Pt(x + width + 1.6, y + style.TEXT / 2), words, style.TEXT, Face.MEDIUM)
        yield Group(
            "check-bar",
            (Polyline(ends, style.OBJECT), Segments(stops, style.OBJECT), said),
            data={"length-mm": decimal_mm(length)},
        )
        # Both do not stand side by side on the smallest paper.
        y -= 4.4


def page_foot(page: FullSizePage, typeface: Typeface) -> Group:
    """The line of words that takes the place of a title block."""
    fields = page.fields
    said = (
        f"{fields.sheet}, PAGE {fields.page}",
        fields.ceiling,
        fields.drawing,
        f"REV {fields.revision}",
        fields.date,
        f"DIGEST {fields.digest}",
        "PRINT AT 100 %",
    )
    words = " · ".join(each for each in said if each)
    text = Text(Pt(page.left, page.foot), words, style.TEXT, Face.MEDIUM)
    data = {"sheet": fields.sheet, "digest": fields.digest, "page": fields.page}
    return Group("page-foot", (text,), id="page-foot", data=data)
