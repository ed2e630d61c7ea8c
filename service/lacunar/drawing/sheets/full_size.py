"""Pages of strips at full size: each strip on its own length of a roll, or several to a tile.

They have no frame and no title block, which would be in the way of the scissors, but two check bars
by which a print is found to be true, and a line at the foot that says what they are of.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, fitted
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.paper import ISO_PAPERS, PAPER_SIZES, PaperSize
from lacunar.drawing.sheets.pages import FullSizePage, SheetSource
from lacunar.drawing.sheets.placing import frame_box
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.measure.length import Length
from lacunar.model.drawing import Paper

LONGEST_PAGE = Length.of_feet(16)
"""Many readers of PDF show no page longer than 200 in (its classic limit of user space)."""
ROLL_MARGIN = 15.0
LONGEST_STRIP = float(LONGEST_PAGE.millimeters) - 2 * ROLL_MARGIN
"""The longest strip that a page of a roll holds [mm]."""
LEAST_WIDTH = 254.0
"""How wide a page of a roll is at least, for its bars and its line of words [mm]."""
STRIP_GAP = 6.0
FOOT = 14.0
"""What the check bars and the line of words take at the foot of a page [mm]."""
BARS = (
    (Length.of_inches(6), '6"'),
    (Length.of_millimeters(150), "150 mm"),
)
BETWEEN_WORDS = " · "
PRINT_NOTE = (
    "Print at 100 percent, not fitted to the page. Both check bars of every page must measure what"
    " they say; if they do not, throw the page away."
)


def tile_paper(size: PaperSize) -> PaperSize:
    """The smallest paper of the same family: what every office printer has."""
    return PAPER_SIZES[Paper.A4 if size.paper in ISO_PAPERS else Paper.LETTER]


def tallest_strip(size: PaperSize) -> float:
    """How tall a strip may be to go on a tile [mm]."""
    return frame_box(tile_paper(size)).height - FOOT


def rolled(source: SheetSource, strips: Sequence[Block]) -> Iterator[FullSizePage]:
    """A page of its own length to each strip."""
    for block in strips:
        height = block.height + FOOT + 2 * ROLL_MARGIN
        foot = height - ROLL_MARGIN
        yield FullSizePage(
            source.fields,
            (*block.at(ROLL_MARGIN, ROLL_MARGIN), *_check_bars(ROLL_MARGIN, foot)),
            max(block.width, LEAST_WIDTH) + 2 * ROLL_MARGIN,
            height,
            None,
            ROLL_MARGIN,
            foot,
        )


def tiled(source: SheetSource, strips: Sequence[Block]) -> Iterator[FullSizePage]:
    """As many strips to a page of paper that any office prints as it holds; none taller than it."""
    size = tile_paper(source.size)
    frame = frame_box(size)
    waiting = list(strips)
    while waiting:
        y, children = frame.top, list[Element]()
        while waiting and y + waiting[0].height <= frame.bottom - FOOT:
            block = waiting.pop(0)
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


def numbered(
    source: SheetSource, pages: Sequence[FullSizePage], first: int
) -> Iterator[FullSizePage]:
    """The pages as the drawing's pages from `first` on."""
    for number, page in enumerate(pages, start=first):
        sheet = source.fields.sheet if number == 1 else f"{source.fields.sheet}-{number}"
        fields = replace(source.fields, sheet=sheet, scale="FULL SIZE")
        yield replace(page, fields=fields)


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
    """The line of words that takes the place of a title block; a long name is cut to its room."""
    fields = page.fields
    before = (f"{fields.sheet}, PAGE {fields.page}",)
    after = (
        fields.drawing,
        f"REV {fields.revision}",
        fields.date,
        f"DIGEST {fields.digest}",
        "PRINT AT 100 %",
    )
    taken = typeface.width(_in_line((*before, BETWEEN_WORDS, *after)), style.TEXT, Face.MEDIUM)
    room = page.width - 2 * page.left - taken
    name = fitted(fields.ceiling, room, style.TEXT, typeface, Face.MEDIUM)
    words = _in_line((*before, name, *after))
    text = Text(Pt(page.left, page.foot), words, style.TEXT, Face.MEDIUM)
    data = {"sheet": fields.sheet, "digest": fields.digest, "page": fields.page}
    return Group("page-foot", (text,), id="page-foot", data=data)


def _in_line(said: Iterable[str]) -> str:
    return BETWEEN_WORDS.join(each for each in said if each)
