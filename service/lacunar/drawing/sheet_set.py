"""The sheet set: every page composed, then counted, framed and titled.

Pages are composed before anything is painted, and numbered last, so that "3 of 7" is always true.
They are composed from the last sheet to the first: a sheet refers to those after it, which have
more detail, and the cover lists them all.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Sheet, Text, walk
from lacunar.drawing.enlarging import enlarged
from lacunar.drawing.lists import Lists
from lacunar.drawing.paper import HALF_SIZE, PAPER_SIZES, PaperSize, larger_papers
from lacunar.drawing.reference_mark import Reference
from lacunar.drawing.sheets.backing_sheet import backing_pages
from lacunar.drawing.sheets.cover_sheet import cover_pages
from lacunar.drawing.sheets.crossing_sheet import crossing_pages
from lacunar.drawing.sheets.crown_sheet import crown_pages
from lacunar.drawing.sheets.cut_list_sheet import cut_list_pages
from lacunar.drawing.sheets.cutting_sheet import cutting_pages
from lacunar.drawing.sheets.elevation_sheet import elevation_pages
from lacunar.drawing.sheets.exploded_sheet import exploded_pages
from lacunar.drawing.sheets.full_size import page_foot
from lacunar.drawing.sheets.materials_sheet import material_pages
from lacunar.drawing.sheets.mock_up_sheets import mock_up_pages
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.pages import ROLL, FullSizePage, IssuedSheet, Page, SheetSource
from lacunar.drawing.sheets.panel_sheet import panel_pages
from lacunar.drawing.sheets.placing import column_width, frame_box
from lacunar.drawing.sheets.plan_sheet import plan_pages
from lacunar.drawing.sheets.pole_sheets import pole_sheets
from lacunar.drawing.sheets.profile_sheet import profile_pages
from lacunar.drawing.sheets.section_sheet import section_pages
from lacunar.drawing.sheets.setting_out_sheet import setting_out_pages
from lacunar.drawing.sheets.title_block import Projection, TitleFields, title_block
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Caution, Layout
from lacunar.measure.units import Units
from lacunar.model.ceiling import Ceiling
from lacunar.model.drawing import Paper, PrintSize, SheetNumber
from lacunar.model.faults import Fault, SpecRefused

AnyPage = Page | FullSizePage


@dataclass(frozen=True, slots=True)
class SheetOfSet:
    """A sheet that a set can have: its number, its title, what composes its pages, how one looks.

    There are no pages where a ceiling has nothing to show on it.
    """

    number: SheetNumber
    title: str
    pages: Callable[[SheetSource], tuple[AnyPage, ...]]
    projection: Projection


SHEETS = (
    SheetOfSet(SheetNumber.COVER, "Cover", cover_pages, Projection.PICTORIAL),
    SheetOfSet(SheetNumber.PLAN, "Reflected ceiling plan", plan_pages, Projection.REFLECTED),
    SheetOfSet(SheetNumber.SETTING_OUT, "Setting out", setting_out_pages, Projection.ON_FLOOR),
    SheetOfSet(SheetNumber.BACKING, "Backing and joists", backing_pages, Projection.REFLECTED),
    SheetOfSet(SheetNumber.PANELS, "Panels and boards", panel_pages, Projection.REFLECTED),
    SheetOfSet(SheetNumber.ELEVATIONS, "Wall elevations", elevation_pages, Projection.THIRD_ANGLE),
    SheetOfSet(SheetNumber.SECTIONS, "Sections", section_pages, Projection.THIRD_ANGLE),
    SheetOfSet(SheetNumber.PROFILES, "Beam profiles", profile_pages, Projection.THIRD_ANGLE),
    SheetOfSet(SheetNumber.CROSSINGS, "Crossings", crossing_pages, Projection.REFLECTED),
    SheetOfSet(SheetNumber.CROWN, "Crown frames", crown_pages, Projection.THIRD_ANGLE),
    SheetOfSet(SheetNumber.CUT_LIST, "Cut list", cut_list_pages, Projection.NONE),
    SheetOfSet(SheetNumber.CUTTING, "Cutting diagrams", cutting_pages, Projection.NONE),
    SheetOfSet(SheetNumber.MATERIALS, "Material list", material_pages, Projection.NONE),
    SheetOfSet(SheetNumber.STORY_POLES, "Story poles", pole_sheets, Projection.NONE),
    SheetOfSet(SheetNumber.MOCK_UP, "Paper mock-up", mock_up_pages, Projection.NONE),
    SheetOfSet(SheetNumber.EXPLODED, "Exploded corner", exploded_pages, Projection.PICTORIAL),
)
"""All sheets in the order of the set."""


@dataclass(frozen=True, slots=True)
class SheetEntry:
    """A sheet as an index of the set lists it: number, title, page in the set, paper and scale.

    `paper` is None for a page of a roll, which is as long as what is on it; `scale` is that of the
    drawing as it is written on the sheet, `AS NOTED` where there are several, or `NONE`.
    """

    number: str
    title: str
    page: str
    paper: Paper | None
    scale: str


@dataclass(frozen=True, slots=True)
class SheetSet:
    """All sheets of a ceiling in order, their index, and cautions that only drawing brings up."""

    sheets: tuple[Sheet, ...]
    index: tuple[SheetEntry, ...]
    cautions: tuple[Caution, ...]


def compose(
    layout: Layout, digest: str, typeface: Typeface, lists: Lists | None = None
) -> SheetSet:
    """A layout as composed sheets on the paper its spec names, those that it names.

    Parameters: `digest` of the resolved spec, printed on every sheet; `typeface`, the widths text
    is measured by; `lists`, without which there are no sheets of parts and stock. Errors:
    `SpecRefused` where the paper is too small, naming one that would do, or where none of the
    sheets named has anything to show.
    """
    paper = layout.ceiling.drawing.paper
    size = paper_size(layout.ceiling, paper)
    fields = title_fields(layout.ceiling, digest, size)
    source = SheetSource(layout, size, fields, typeface, lists=lists)
    try:
        pages = _pages(source)
    except PaperTooSmall as error:
        raise SpecRefused([_too_small(source, str(error))]) from None
    if not pages:
        raise SpecRefused([_nothing_to_show(layout)])
    total = len(pages)
    counted = [counted_page(page, number, total) for number, page in enumerate(pages, start=1)]
    sheets = tuple(
        finished_sheet(page, size, typeface, _sheet_of(layout, digest, page)) for page in counted
    )
    index = tuple(
        SheetEntry(
            number=page.fields.sheet,
            title=page.fields.drawing,
            page=page.fields.page,
            paper=page.paper if isinstance(page, FullSizePage) else paper,
            scale=page.fields.scale,
        )
        for page in counted
    )
    return SheetSet(sheets, index, letters_not_drawn(sheets, typeface))


def _pages(
    source: SheetSource, among: frozenset[SheetNumber] = frozenset(SheetNumber)
) -> tuple[AnyPage, ...]:
    """The pages of all sheets issued `among` these, composed from the last to the first."""
    pages: tuple[AnyPage, ...] = ()
    issued = among.intersection(source.layout.ceiling.drawing.sheets)
    for sheet in reversed(SHEETS):
        if sheet.number not in issued:
            continue
        titled = replace(
            source.fields,
            drawing=sheet.title,
            sheet=sheet.number.value,
            projection=sheet.projection,
        )
        own = sheet.pages(replace(source, fields=titled))
        pages = (*own, *pages)
        source = replace(
            source,
            references={**{each.name: each for each in _references(own)}, **source.references},
            issued=(*_issued(own), *source.issued),
        )
    return pages


def _references(pages: Sequence[AnyPage]) -> Iterator[Reference]:
    """Where the named views of pages stand."""
    for page in pages:
        for view in page.views if isinstance(page, Page) else ():
            yield Reference(view.name, view.number, page.fields.sheet)


def _issued(pages: Sequence[AnyPage]) -> Iterator[IssuedSheet]:
    for page in pages:
        yield IssuedSheet(page.fields.sheet, page.fields.drawing, page.fields.scale)


def _nothing_to_show(layout: Layout) -> Fault:
    return Fault(
        code="no_sheets",
        pointer="/drawing/sheets",
        message="This ceiling has nothing to show on the sheets that are named.",
        remedy="Name others too, like Z-101, or leave this out for all of them.",
        figures={"sheets": ", ".join(layout.ceiling.drawing.sheets)},
    )


def paper_size(ceiling: Ceiling, paper: Paper) -> PaperSize:
    """The paper that is composed on: a smaller one where all is to be enlarged in the end."""
    size = PAPER_SIZES[paper]
    return size.composed_on(HALF_SIZE) if ceiling.drawing.legible_at is PrintSize.HALF else size


def _too_small(source: SheetSource, obstacle: str) -> Fault:
    """The fault that names the first larger paper on which the plan fits, if there is one.

    Else it tells what has no room on the largest, `obstacle` if that is the paper asked for.
    """
    paper = source.size.paper
    largest = paper
    for larger in larger_papers(paper):
        size = paper_size(source.layout.ceiling, larger)
        fields = replace(source.fields, paper=size.text)
        tried = replace(source, size=size, fields=fields)
        try:
            # A plan by itself is sooner found to have no room than the whole set it is in.
            _pages(tried, frozenset((SheetNumber.PLAN,)))
            _pages(tried)
        except PaperTooSmall as error:
            largest, obstacle = larger, str(error)
            continue
        remedy = f'Ask for "{larger.value}" paper: the plan fits it at a standard scale.'
        break
    else:
        remedy = (
            f"Not even {largest.value} paper holds it. {obstacle}"
            " Ask for fewer coffers, or for a part of the room."
        )
    return Fault(
        code="paper_too_small",
        pointer="/drawing/paper",
        message="The plan does not fit this paper at any standard scale with legible figures.",
        figures={"paper": paper.value},
        remedy=remedy,
    )


def title_fields(ceiling: Ceiling, digest: str, size: PaperSize) -> TitleFields:
    """What the title block says of a ceiling; title, sheet, scale and page are filled in later."""
    drawing = ceiling.drawing
    return TitleFields(
        owner=drawing.owner,
        ceiling=ceiling.name,
        drawing="",
        number=drawing.number,
        date=drawing.date,
        status=drawing.status,
        creator=drawing.creator,
        approver=drawing.approver,
        scale="",
        paper=size.text,
        units="ft-in" if ceiling.units is Units.INCH else "mm",
        digest=digest[:12],
        revision=drawing.revision,
        sheet="",
        page="",
    )


def counted_page(page: AnyPage, number: int, total: int) -> AnyPage:
    """The page with which of how many it is."""
    return replace(page, fields=replace(page.fields, page=f"{number} / {total}"))


@dataclass(frozen=True, slots=True)
class SheetOf:
    """What a sheet is of: the ceiling, the digest of its spec, and the sheet in a sentence."""

    ceiling: Ceiling
    digest: str
    words: str


def _sheet_of(layout: Layout, digest: str, page: AnyPage) -> SheetOf:
    words = _description(layout, page.fields.drawing, SheetWording.of(layout.ceiling))
    return SheetOf(layout.ceiling, digest, words)


def finished_sheet(page: AnyPage, size: PaperSize, typeface: Typeface, of: SheetOf) -> Sheet:
    """A page as a finished sheet: with frame and title block, or with a line at its foot."""
    wording = SheetWording.of(of.ceiling)
    width, height, paper = size.width, size.height, size.paper.value
    second = wording.second_step
    children: tuple[Element, ...]
    half_size = size.enlargement == HALF_SIZE and isinstance(page, Page)
    if isinstance(page, FullSizePage):
        width, height, paper = page.width, page.height, page.paper.value if page.paper else ROLL
        children = (*page.children, page_foot(page, typeface))
    else:
        title = title_block(page.fields, column_width(size), typeface)
        on_paper = (_frame(size), *page.children, *title.at(*page.title_at))
        children = enlarged(on_paper, size.enlargement)
        width, height = (float(side * size.enlargement) for side in (width, height))
    return Sheet(
        id=page.fields.sheet,
        title=f"{page.fields.sheet} {page.fields.drawing}: {of.ceiling.name}",
        description=of.words,
        width=width,
        height=height,
        children=children,
        data={
            "sheet": page.fields.sheet,
            "paper": paper,
            "units": wording.units.value,
            "step": wording.step.text,
            **({"second-units": second.units.value} if second else {}),
            **({"half-size": "legible"} if half_size else {}),
            "digest": of.digest,
        },
    )


def _frame(size: PaperSize) -> Group:
    box = frame_box(size)
    corners = (
        Pt(box.left, box.top),
        Pt(box.right, box.top),
        Pt(box.right, box.bottom),
        Pt(box.left, box.bottom),
    )
    return Group("frame", (Polyline(corners, style.FRAME, closed=True),), id="frame")


def _description(layout: Layout, drawing: str, wording: SheetWording) -> str:
    """The sheet in a sentence, for readers that cannot see it."""
    room = layout.ceiling.room
    coffers = [(coffer.row, coffer.column) for coffer in layout.coffers]
    if layout.outlined is not None:
        coffers += [(coffer.row, coffer.column) for coffer in layout.outlined.partial_coffers]
    rows, columns = (max(numbers) for numbers in zip(*coffers, strict=True))
    return (
        f"{drawing} of a room {wording.length(room.length)} by "
        f"{wording.length(room.width)}: {columns} by {rows} coffers, "
        f"{len(layout.beams)} beams, {len(layout.wall_beams)} wall beams."
    )


def letters_not_drawn(sheets: tuple[Sheet, ...], typeface: Typeface) -> tuple[Caution, ...]:
    """A caution for each letter the typeface lacks: it prints as an empty box."""
    texts = [e.text for sheet in sheets for e in walk(sheet.children) if isinstance(e, Text)]
    missing = dict.fromkeys(letter for text in texts for letter in typeface.missing(text))
    return tuple(
        Caution(
            code="letter_not_drawn",
            text=f"The sheet's typeface has no letter U+{ord(letter):04X}; it prints as a box.",
            figures={"letter": letter},
        )
        for letter in missing
    )
