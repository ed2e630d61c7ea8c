"""Sheet Z-702: a mock-up of beams and mouldings in paper, on a roll or as tiles."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.section.records import SectionOf, SectionTrim
from lacunar.drawing.sheets.blocks import listed
from lacunar.drawing.sheets.full_size import (
    LONGEST_STRIP,
    PRINT_NOTE,
    numbered,
    rolled,
    tallest_strip,
    tile_paper,
    tiled,
)
from lacunar.drawing.sheets.pages import FullSizePage, Page, SheetSource, table_pages
from lacunar.drawing.sheets.placing import column_space, frame_box
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.views.mock_up import (
    PaperStrip,
    Sheeting,
    card,
    moulding_strips,
    strip_pieces,
    unfolded,
)
from lacunar.layout.records import Layout
from lacunar.model.drawing import MockUp

MOST_PROFILES = 6
"""So many profiles are drawn at full size; more would be a book of paper."""
ROLL_HEIGHT = 600.0
"""How long a mock-up on a roll is along the beam, with its words: it goes on a plotter of 24 in."""
NOTES = (
    "A mock-up shows how deep beams look in the room before any is built. Cut each strip along its"
    " heavy edges, fold it at the dashed lines, and tape it up; print it again to go on longer.",
    "Cut a card along its heavy line and hold it to wall and ceiling.",
    "Work overhead in twos, from a platform and not from a ladder.",
)
SEAT_NOTE = "Chain lines are where the panel's lower face will be."
TILE_NOTE = "Lay each piece over the one before it so that the crosses meet."
CROWN_NOTE = (
    "Tape crown by both its edges so that they stand off as printed. It shows the moulding's face"
    " flat: how it is milled is not known."
)


@dataclass(frozen=True, slots=True)
class _MockedUp:
    """A profile that is drawn, and those that look the same."""

    of: SectionOf
    strip: PaperStrip
    profiles: tuple[str, ...]


def mock_up_pages(source: SheetSource) -> tuple[Page | FullSizePage, ...]:
    """What strips there are, then the strips; nothing unless the spec asks for them."""
    form = source.layout.ceiling.drawing.mock_up
    every = _mocked_up(source.layout)
    if form is MockUp.NONE or not every:
        return ()
    shown, more = every[:MOST_PROFILES], every[MOST_PROFILES:]
    sheeting = _sheeting(source, form)
    mouldings = tuple(moulding_strips(shown[0].of, source.wording))
    strips = [each.strip for each in shown] + list(mouldings)
    blocks = [block for strip in strips for block in strip_pieces(strip, sheeting)]
    blocks += [block for each in shown for block in card(each.of, sheeting)]
    pages = rolled(source, blocks) if form is MockUp.ROLL else tiled(source, blocks)
    tables = table_pages(source, tuple(_blocks(source, (shown, more), strips)), 1)
    return (*tables, *numbered(source, tuple(pages), len(tables) + 1))


def _sheeting(source: SheetSource, form: MockUp) -> Sheeting:
    if form is MockUp.ROLL:
        return Sheeting(LONGEST_STRIP, ROLL_HEIGHT, source.wording, source.typeface)
    longest = frame_box(tile_paper(source.size)).width
    return Sheeting(longest, tallest_strip(source.size), source.wording, source.typeface)


def _mocked_up(layout: Layout) -> tuple[_MockedUp, ...]:
    """The profiles of beams that look different from the room."""
    trim = SectionTrim(layout.mouldings.crown, layout.ceiling.flat_mouldings)
    alike: dict[tuple[object, ...], _MockedUp] = {}
    for number, profile in enumerate(layout.profiles, start=1):
        if profile.kind not in ("box", "flat", "cased"):
            continue
        of = SectionOf(number, profile, (), layout.ceiling.panel, trim)
        strip = unfolded(of)
        first = alike.setdefault(strip.fields, _MockedUp(of, strip, ()))
        alike[strip.fields] = replace(first, profiles=(*first.profiles, profile.id))
    return tuple(alike.values())


def _blocks(
    source: SheetSource,
    profiles: tuple[Sequence[_MockedUp], Sequence[_MockedUp]],
    strips: Sequence[PaperStrip],
) -> Iterator[Block]:
    """The strips in a table, and how they are used."""
    shown, more = profiles
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    rows = [(strip.name, strip.length) for strip in strips]
    rows += [(f"CARD {each.of.profile.id}", each.of.profile.drop.value) for each in shown]
    columns = (
        WordColumn("STRIP", tuple(name for name, _ in rows)),
        WordColumn("ACROSS", tuple(source.wording.detail(length) for _, length in rows)),
    )
    yield from in_blocks("mock-up", "mock-up", "STRIPS TO CUT OUT", columns, space)
    crown = source.layout.mouldings.crown
    notes = [*NOTES]
    if any("seat" in strip.kinds for strip in strips):
        notes.append(SEAT_NOTE)
    if source.layout.ceiling.drawing.mock_up is MockUp.TILES:
        notes.append(TILE_NOTE)
    notes += [PRINT_NOTE, *([CROWN_NOTE] if crown is not None else [])]
    notes += [
        f"{each.strip.name} is that of {listed(each.profiles)}, which look the same."
        for each in shown
        if len(each.profiles) > 1
    ]
    if more:
        names = [name for each in more for name in each.profiles]
        notes.append(f"Not drawn at full size: {listed(names)}. See the beam profiles.")
    yield from paragraph_blocks("notes", "NOTES", tuple(notes), column, source.typeface)
