"""The sheets with all options of a ceiling: pages composed, then counted, framed and titled."""

from dataclasses import dataclass, replace

from lacunar.drawing.elements import Sheet
from lacunar.drawing.paper import PAPER_SIZES, larger_papers
from lacunar.drawing.sheet_set import SheetOf, counted_page, finished_sheet, title_fields
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.options_sheet import OptionCard, OptionPages, option_pages
from lacunar.drawing.sheets.pages import Page
from lacunar.drawing.sheets.title_block import Projection
from lacunar.drawing.typeface import Typeface
from lacunar.model.ceiling import Ceiling
from lacunar.model.drawing import Paper
from lacunar.model.faults import Fault, SpecRefused

OPTIONS_SHEET = "Z-111"
OPTIONS_TITLE = "Options"

NOTES = (
    "Each plan is one way to lay out this room, looking up, drawn as in a mirror on the floor."
    " All have one scale. W1 is the wall at the left, W2 the upper one, W3 at the right, W4 the"
    " lower one.",
    "Gray is beams, white is coffers. Bars outside the walls are doors, windows, fireplaces and"
    " cabinets; circles are ceiling items; dashed lines are structural members.",
    "Bold figures are those in which no other option is better. Least square coffer: its longer"
    " side by its shorter; 1 is square. Joints: where beams meet or end, corners of mouldings,"
    " splices. Cuts: both ends of each board and moulding.",
    "Dimensions, marks and cautions stand on the sheets of the option that is chosen.",
)


@dataclass(frozen=True, slots=True)
class OptionSet:
    """What the sheets are composed from: the ceiling as it was sent, resolved, and its options.

    `digest` is that of the spec as it was sent.
    """

    ceiling: Ceiling
    cards: tuple[OptionCard, ...]
    digest: str


def compose_options(options: OptionSet, typeface: Typeface) -> tuple[Sheet, ...]:
    """Options as composed sheets on the paper the spec names.

    Parameters: `options`, at least one; `typeface`, the widths text is measured by. Errors:
    `SpecRefused` where the paper is too small, naming one that would do.
    """
    paper = options.ceiling.drawing.paper
    try:
        pages = _pages(options, typeface, paper)
    except PaperTooSmall as obstacle:
        raise SpecRefused([_too_small(options, typeface, str(obstacle))]) from None
    counted = [counted_page(page, number, len(pages)) for number, page in enumerate(pages, start=1)]
    words = f"{len(options.cards)} options for a coffered ceiling, as small plans with figures."
    of = SheetOf(options.ceiling, options.digest, words)
    return tuple(finished_sheet(page, PAPER_SIZES[paper], typeface, of) for page in counted)


def _pages(options: OptionSet, typeface: Typeface, paper: Paper) -> tuple[Page, ...]:
    size = PAPER_SIZES[paper]
    fields = title_fields(options.ceiling, options.digest, size)
    titled = replace(
        fields, drawing=OPTIONS_TITLE, sheet=OPTIONS_SHEET, projection=Projection.REFLECTED
    )
    units = options.ceiling.units
    return option_pages(OptionPages(options.cards, NOTES, size, units, titled, typeface))


def _too_small(options: OptionSet, typeface: Typeface, obstacle: str) -> Fault:
    """The fault that names the first larger paper on which the options fit, if there is one."""
    paper = options.ceiling.drawing.paper
    remedy = f"Not even the largest paper holds it. {obstacle}"
    for larger in larger_papers(paper):
        try:
            _pages(options, typeface, larger)
        except PaperTooSmall:
            continue
        remedy = f'Ask for "{larger.value}" paper: the options fit it at a standard scale.'
        break
    return Fault(
        code="paper_too_small",
        pointer="/drawing/paper",
        message="No option fits this paper at any standard scale with its figures.",
        figures={"paper": paper.value},
        remedy=remedy,
    )
