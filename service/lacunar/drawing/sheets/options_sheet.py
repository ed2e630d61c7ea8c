"""Sheet Z-111: the options of a ceiling as small plans beside each other, with their figures.

All plans have one scale: of those at which they are large enough to be read, the one that takes the
fewest sheets, and of these the largest.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from lacunar.drawing import style
from lacunar.drawing.annotation import (
    HEADING_HEIGHT,
    HEADING_RULE,
    Block,
    ColumnSpace,
    Tag,
    fitted,
    paragraph_blocks,
    wrapped,
)
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.paper import PaperSize, Scale, scales
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.pages import Page, stacked
from lacunar.drawing.sheets.placing import (
    BLOCK_GAP,
    COLUMN_GAP,
    FRAME_PAD,
    Box,
    column_width,
    flow,
    frame_box,
)
from lacunar.drawing.sheets.scale_bar import scale_bar
from lacunar.drawing.sheets.title_block import TitleFields, title_block
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.option_plan import option_plan, plan_size
from lacunar.layout.records import Layout
from lacunar.measure.units import Units

CARD_GAP = 8.0
TITLE_GAP = 2.0
BAR_LENGTH = 24.0
MOST_COLUMNS = 6
LARGEST_PLAN = 16
SMALLEST_PLAN = 200
# The figures stand to the right of the ring with the option's number.
INDENT = 9.0
LEAST_TEXT = 52.0
READABLE = 40.0
"""How wide a plan must be, its bars included [mm]."""
FIGURES_WIDTH = 56.0
LEAST_BETWEEN = 2.0


@dataclass(frozen=True, slots=True)
class CardFigure:
    """One figure of an option: what it is, how much, and whether no other option is better."""

    words: str
    value: str
    best: bool


@dataclass(frozen=True, slots=True)
class OptionCard:
    """What stands on the sheet of one option: its layout, what it is, and its figures."""

    number: int
    layout: Layout
    lines: tuple[str, ...]
    figures: tuple[CardFigure, ...]


@dataclass(frozen=True, slots=True)
class OptionPages:
    """What the pages are composed from; `notes` say what holds for all options."""

    cards: tuple[OptionCard, ...]
    notes: tuple[str, ...]
    size: PaperSize
    units: Units
    fields: TitleFields
    typeface: Typeface


@dataclass(frozen=True, slots=True)
class _Grid:
    """Cards in columns and rows, all of one size [mm], at one scale.

    `readable` says that plans are as large as a client can make something out on.
    """

    scale: Scale
    readable: bool
    columns: int
    rows: int
    cards: tuple[Block, ...]

    @property
    def pages(self) -> int:
        return -(-len(self.cards) // (self.columns * self.rows))


def option_pages(asked: OptionPages) -> tuple[Page, ...]:
    """The pages with all options. Errors: `PaperTooSmall` where not one fits at any scale."""
    area = _area(asked.size)
    grids = list(_grids(asked, area))
    if not grids:
        raise PaperTooSmall("An option's plan with its figures is larger than the paper.")
    grid = min(grids, key=lambda each: (not each.readable, each.pages, each.scale.ratio))
    size = grid.columns * grid.rows
    parts = [grid.cards[first : first + size] for first in range(0, len(grid.cards), size)]
    return tuple(_page(asked, grid, part, number) for number, part in enumerate(parts, start=1))


def _area(size: PaperSize) -> Box:
    """What the column with notes and title block leaves of the frame."""
    frame = frame_box(size)
    edge = frame.right - column_width(size) - COLUMN_GAP / 2
    return Box(
        frame.left + FRAME_PAD, frame.top + FRAME_PAD, edge - FRAME_PAD, frame.bottom - FRAME_PAD
    )


def _grids(asked: OptionPages, area: Box) -> Iterator[_Grid]:
    """Every scale at which cards stand in some number of columns."""
    for scale in scales(asked.units, smallest=SMALLEST_PLAN, largest=LARGEST_PLAN):
        widest = max(plan_size(card.layout, scale)[0] for card in asked.cards)
        for columns in range(1, min(MOST_COLUMNS, len(asked.cards)) + 1):
            width = (area.width - CARD_GAP * (columns - 1)) / columns
            if max(widest, INDENT + LEAST_TEXT) > width:
                break
            cards = tuple(_card(card, asked, scale, width) for card in asked.cards)
            height = max(card.height for card in cards)
            rows = int((area.height + CARD_GAP) // (height + CARD_GAP))
            if rows:
                yield _Grid(scale, widest >= READABLE, columns, rows, cards)


def _card(card: OptionCard, asked: OptionPages, scale: Scale, width: float) -> Block:
    """The plan over its title, figures and scale bar."""
    plan = option_plan(card.number, card.layout, scale)
    text_width = min(width, INDENT + FIGURES_WIDTH)
    bar = scale_bar(card.number, scale.ratio, asked.units, BAR_LENGTH)
    lower = Block(bar.width + INDENT, bar.height, bar.at(INDENT, 0.0))
    title = _title(card, width, text_width, asked.typeface)
    under = stacked((title, _figures(card.figures, text_width, asked.typeface), lower), TITLE_GAP)
    return replace(stacked((plan, under), TITLE_GAP), width=width)


def _title(card: OptionCard, width: float, text_width: float, typeface: Typeface) -> Block:
    """The option's number in a ring, its name over a rule, and what it is."""
    number = str(card.number)
    ring = Tag("option", number, number, round=True).drawn(Pt(3.4, 3.4), typeface)
    name = Text(Pt(INDENT, style.HEADING), f"OPTION {number}", style.HEADING, Face.SEMIBOLD)
    rule = Polyline((Pt(INDENT, HEADING_RULE), Pt(text_width, HEADING_RULE)), style.RULE)
    lines = [part for line in card.lines for part in wrapped(line, width - INDENT, typeface)]
    first = HEADING_HEIGHT + style.TEXT
    words = tuple(
        Text(Pt(INDENT, first + style.LINE_PITCH * n), line, style.TEXT)
        for n, line in enumerate(lines)
    )
    group = Group("option-title", (ring, name, rule, *words), id=f"option-title-{number}")
    return Block(width, HEADING_HEIGHT + style.LINE_PITCH * len(lines), (group,))


def _figures(figures: Sequence[CardFigure], width: float, typeface: Typeface) -> Block:
    """A row to each figure: what it is on the left, how much on the right."""
    drawn: list[Element] = []
    for row, figure in enumerate(figures):
        y = row * style.LINE_PITCH + style.TEXT
        face = Face.SEMIBOLD if figure.best else Face.REGULAR
        room = width - INDENT - typeface.width(figure.value, style.TEXT, face) - LEAST_BETWEEN
        words = fitted(figure.words, room, style.TEXT, typeface, Face.REGULAR)
        texts = (
            Text(Pt(INDENT, y), words, style.TEXT),
            Text(Pt(width, y), figure.value, style.TEXT, face, "end"),
        )
        drawn.append(Group("option-figure", texts))
    return Block(width, len(figures) * style.LINE_PITCH, tuple(drawn))


def _page(asked: OptionPages, grid: _Grid, cards: Sequence[Block], number: int) -> Page:
    frame, area = frame_box(asked.size), _area(asked.size)
    sheet = asked.fields.sheet if number == 1 else f"{asked.fields.sheet}-{number}"
    fields = replace(asked.fields, sheet=sheet, scale=grid.scale.text)
    width = column_width(asked.size)
    title = title_block(fields, width, asked.typeface)
    corner = (frame.right - width, frame.bottom - title.height)
    edge = area.right + FRAME_PAD
    line = Polyline((Pt(edge, frame.top), Pt(edge, frame.bottom)), style.RULE)
    children: list[Element] = [Group("divider", (line,))]
    column = Box(corner[0], frame.top + FRAME_PAD, frame.right - FRAME_PAD, corner[1] - BLOCK_GAP)
    space = ColumnSpace(column.width, column.height)
    notes = paragraph_blocks("notes", "NOTES", asked.notes, space, asked.typeface)
    placed, left_over = flow(notes, (column,))
    if left_over:
        raise PaperTooSmall("The notes are higher than the paper.")
    for each in placed:
        children += each.block.at(each.x, each.y)
    card_height = max(card.height for card in grid.cards)
    for place, card in enumerate(cards):
        row, at = divmod(place, grid.columns)
        x = area.left + at * (card.width + CARD_GAP)
        children += card.at(x, area.top + row * (card_height + CARD_GAP))
    return Page(fields, tuple(children), corner)
