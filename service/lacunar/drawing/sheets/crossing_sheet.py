"""Sheet Z-502: every distinct crossing of beams, seen from below."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block, paragraph_blocks, wrapped
from lacunar.drawing.paper import Scale
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked
from lacunar.drawing.sheets.placing import Box, column_space
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.view_pages import TitledView, view_area, view_pages
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.views.crossing import crossing_number, crossing_view
from lacunar.drawing.views.crossing.words import notes_under, place_in_words
from lacunar.layout.crossing_records import Crossing, CrossingKind

LARGEST, USUAL, SMALLEST = 4, 10, 48
"""From 3 in to the foot, or 1:5, to 1 1/2 in or 1:10; smaller what has no room even so."""
MOST_DRAWN = 48
MOST_NAMED = 8
TITLE_WIDTH = 125.0
TITLE_GAP = 4.0
BAR_GAP = 2.0
BAR = 40.0

_KINDS = {
    CrossingKind.CROSS: "CROSS",
    CrossingKind.TEE: "TEE",
    CrossingKind.ELL: "CORNER",
    CrossingKind.END_AT_WALL: "AT WALL",
    CrossingKind.END_AT_SOFFIT: "AT SOFFIT",
    CrossingKind.OUTSIDE_CORNER: "OUTER CORNER",
    CrossingKind.ANGLED_CORNER: "ANGLED CORNER",
    CrossingKind.END_AT_ANGLED_WALL: "AT ANGLED WALL",
}


def crossing_pages(source: SheetSource) -> tuple[Page, ...]:
    """Every crossing at its first place, at the largest scale that takes the fewest pages.

    A crossing that fits at no scale, or is one too many, is told of in the notes.
    """
    crossings = source.layout.crossings
    if not crossings:
        return ()
    tried = []
    for most in source.scales(smallest=USUAL, largest=LARGEST):
        views, left_out = _views(source, crossings, most)
        tried.append(view_pages(source, views, _blocks(source, left_out)))
        if len(tried[-1]) == 1:
            break
    return min(tried, key=len)


def _views(
    source: SheetSource, crossings: Sequence[Crossing], most: Scale
) -> tuple[list[TitledView], list[Crossing]]:
    """The crossings as views, none larger than this scale, and those that are not drawn."""
    area = view_area(source)
    views, left_out = [], list(crossings[MOST_DRAWN:])
    for crossing in crossings[:MOST_DRAWN]:
        view = _largest(source, crossing, most, area)
        if view is None:
            left_out.append(crossing)
        else:
            views.append(view)
    return views, left_out


def _largest(source: SheetSource, crossing: Crossing, most: Scale, area: Box) -> TitledView | None:
    for scale in source.scales(smallest=SMALLEST, largest=LARGEST):
        if scale.ratio < most.ratio:
            continue
        drawn = crossing_view(source.layout, crossing, scale, source.wording, source.typeface)
        if drawn is None:
            return None
        block = _titled(source, crossing, drawn, scale)
        if block.width <= area.width and block.height <= area.height:
            number = crossing_number(crossing)
            return TitledView(f"crossing-{crossing.id}", number, scale, block)
    return None


def _titled(source: SheetSource, crossing: Crossing, drawn: Block, scale: Scale) -> Block:
    name = f"{crossing.id}: {place_in_words(crossing.places[0])}"
    notes = tuple(
        line
        for note in notes_under(source.layout, crossing, source.wording)
        for line in wrapped(note, TITLE_WIDTH, source.typeface)
    )
    number = crossing_number(crossing)
    title = view_title(number, name, scale, notes, source.typeface)
    bar = scale_bar(number, scale.ratio, source.wording.units, BAR)
    return stacked((drawn, stacked((title, bar), BAR_GAP)), TITLE_GAP)


def _blocks(source: SheetSource, left_out: Sequence[Crossing]) -> tuple[Block, ...]:
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    table = in_blocks("crossing", "crossings", "CROSSINGS", _columns(source), space)
    notes = tuple(_notes(source, left_out))
    return (*table, *paragraph_blocks("notes", "NOTES", notes, column, source.typeface))


def _columns(source: SheetSource) -> tuple[WordColumn, ...]:
    crossings = source.layout.crossings
    kinds = tuple(each.kind.value for each in crossings)
    counts = tuple(str(len(each.places)) for each in crossings)
    return (
        WordColumn("ID", tuple(each.id for each in crossings)),
        WordColumn("KIND", tuple(_KINDS[each.kind] for each in crossings), "kind", kinds),
        WordColumn("THROUGH", tuple(each.through or "-" for each in crossings)),
        WordColumn("ENDS", tuple(each.stopped for each in crossings)),
        WordColumn("PLACES", counts, "places", counts),
    )


def _notes(source: SheetSource, left_out: Sequence[Crossing]) -> Iterator[str]:
    yield (
        "Crossings are drawn as they are seen from below, and lie as on the plan: as in a mirror on"
        " the floor."
    )
    yield (
        "Each distinct one is drawn at the first of its places; all others are alike, also where"
        " they lie the other way round. The table tells profiles and counts."
    )
    if source.layout.followed is not None:
        yield "The beam that runs through lies along the sheet; the other at its angle to it."
    yield "Dashed edges are hidden by the bottom. Gray edges are those of sides."
    yield "Lengths of all boards, to long and to short points, are in the cut list."
    if any(beam.member for beam in source.layout.beams):
        yield "Structural members inside casings are never to be cut, notched or drilled."
    if left_out:
        yield f"{not_drawn([each.id for each in left_out])} The table has them."


def not_drawn(names: Sequence[str]) -> str:
    """A sentence that names what a sheet leaves out, or tells how many there are of it."""
    if len(names) <= MOST_NAMED:
        return f"Not drawn here: {', '.join(names)}."
    return f"Not drawn here: {len(names)}, from {names[0]} to {names[-1]}."
