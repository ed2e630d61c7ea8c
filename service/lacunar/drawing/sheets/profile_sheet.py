"""Sheet Z-501: each beam profile as large as fits, its parts in balloons, listed beside."""

from collections import Counter
from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block, ColumnSpace, paragraph_blocks
from lacunar.drawing.paper import Scale
from lacunar.drawing.section.alike import cut_alike
from lacunar.drawing.section.hatches import Substance
from lacunar.drawing.section.records import SectionOf, SectionTrim
from lacunar.drawing.sheets.blocks import listed
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked
from lacunar.drawing.sheets.part_marks import part_marks
from lacunar.drawing.sheets.parts_list import ListedPart, hatches_used, parts_list
from lacunar.drawing.sheets.placing import (
    BLOCK_GAP,
    FRAME_PAD,
    Box,
    column_width,
    frame_box,
)
from lacunar.drawing.sheets.references import profile_words
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.title_block import title_block
from lacunar.drawing.sheets.view_pages import TitledView, view_area, view_pages
from lacunar.drawing.views.profile_detail import (
    DetailOf,
    NamedPart,
    StringsDoNotFit,
    named_parts,
    profile_detail,
)
from lacunar.layout.records import Beam, BeamProfile, Layout, WallBeam
from lacunar.measure.length import ZERO

SMALLEST = 48
MOST_VIEWS = 16
"""So many sections are drawn; a ceiling with more has many casings that differ little."""
KINDS = {
    "box": "BOX BEAM",
    "flat": "FLAT BEAM",
    "cased": "CASED BEAM",
    "wall_half": "HALF BEAM AT A WALL",
    "wall_full": "FULL BEAM AT A WALL",
    "soffit": "SOFFIT",
}


def profile_pages(source: SheetSource) -> tuple[Page, ...]:
    """Each profile at the largest standard scale that fits, over as many pages as they need."""
    every = tuple(_details(source.layout))
    details, more = every[:MOST_VIEWS], len(every) - MOST_VIEWS
    if not details:
        return ()
    told = [named_parts(detail, source.wording) for detail in details]
    numbers = {
        part: number
        for number, part in enumerate(dict.fromkeys(p for parts in told for p in parts), start=1)
    }
    area = view_area(source)
    drawn = [_view(source, detail, numbers, area) for detail in details]
    views = [view for view in drawn if view is not None]
    lacking = (d.of.profile.id for d, view in zip(details, drawn, strict=True) if view is None)
    left_out = tuple(dict.fromkeys(lacking))
    shown = [parts for parts, view in zip(told, drawn, strict=True) if view is not None]
    counts = Counter(part for parts in shown for part in parts)
    taken = () if source.lists is None else source.lists.taken.parts
    parts = tuple(
        ListedPart(part, number, counts[part], part_marks(part, taken))
        for part, number in numbers.items()
        if counts[part]
    )
    notes = tuple(_notes(source.layout, left_out, more))
    return view_pages(source, views, tuple(_blocks(source, parts, notes)))


def _details(layout: Layout) -> Iterator[DetailOf]:
    """What is cut, numbered: each profile, and each way that members lie in one."""
    trim = SectionTrim(layout.mouldings.crown, layout.ceiling.flat_mouldings)
    number = 0
    for profile in layout.profiles:
        for at, beams in _cuts(layout, profile):
            number += 1
            of = SectionOf(number, profile, beams, layout.ceiling.panel, trim)
            yield DetailOf(of, at, layout)


def _cuts(
    layout: Layout, profile: BeamProfile
) -> Iterator[tuple[Beam | WallBeam, tuple[Beam, ...]]]:
    """Where a profile is cut: at its first beam, and once more beyond a member that ends."""
    for beams in cut_alike(layout, profile):
        yield beams[0], beams
        if beams[0].member and any(part.name == "backing" for part in profile.parts):
            yield beams[0], ()
    at_wall = next((wall for wall in layout.wall_beams if wall.profile == profile.id), None)
    if at_wall is not None and not any(beam.profile == profile.id for beam in layout.beams):
        yield at_wall, ()


def _view(
    source: SheetSource, detail: DetailOf, numbers: dict[NamedPart, int], area: Box
) -> TitledView | None:
    """A profile over its title at the largest scale that fits; None where none does.

    Balloons stand in one column, in two where nothing fits with one.
    """
    return next(
        (
            TitledView(_name(detail), detail.of.number, scale, whole)
            for staggered in (False, True)
            for scale in source.scales(smallest=SMALLEST, largest=1)
            if (whole := _titled(source, detail, scale, numbers, staggered)) is not None
            and whole.width <= area.width
            and whole.height <= area.height
        ),
        None,
    )


def _titled(
    source: SheetSource,
    detail: DetailOf,
    scale: Scale,
    numbers: dict[NamedPart, int],
    staggered: bool,
) -> Block | None:
    """A profile over its title and bar; None where its figures are not legible at this scale."""
    wording, typeface, number = source.wording, source.typeface, detail.of.number
    try:
        block = profile_detail(detail, scale, numbers, (wording, typeface), staggered)
    except StringsDoNotFit:
        return None
    words = f"BEAM PROFILE {profile_words(_name(detail))}"
    title = view_title(number, words, scale, tuple(_title_notes(source, detail)), typeface)
    bar = scale_bar(number, scale.ratio, wording.units, 40.0)
    return stacked((block, stacked((title, bar), 2.0)), 5.0)


def _name(detail: DetailOf) -> str:
    """What other sheets call the view: by its profile, where that has one view alone."""
    profile = detail.of.profile
    cuts = list(_cuts(detail.layout, profile))
    name = f"profile-{profile.id}"
    place = cuts.index((detail.at, detail.of.beams))
    return name if place == 0 else f"{name}-{place + 1}"


def _title_notes(source: SheetSource, detail: DetailOf) -> Iterator[str]:
    """Which beams have a profile, and how much headroom is left below it."""
    profile, wording = detail.of.profile, source.wording
    ids = [beam.id for beam in detail.of.beams] or list(profile.used_by)
    yield f"{KINDS[profile.kind]}: {listed(ids).upper()}"
    if detail.member is None and profile.kind == "cased":
        yield f"BEYOND THE MEMBER IN {detail.at.id}"
    clear = next(each for each in source.layout.headroom if each.profile == profile.id)
    height = f"CLEAR HEIGHT {wording.length(clear.clear_height.value)}"
    short = "" if clear.enough else f", LESS THAN {wording.length(clear.limit)} WISHED FOR"
    yield height + short
    if any(part.name == "joist" for part in named_parts(detail, wording)):
        yield f"JOISTS AS AT {detail.at.id}"


def _blocks(
    source: SheetSource, parts: Sequence[ListedPart], notes: tuple[str, ...]
) -> Iterator[Block]:
    width = column_width(source.size) - FRAME_PAD
    title = title_block(source.fields, column_width(source.size), source.typeface)
    # What stands beside views stands over the title block.
    height = frame_box(source.size).height - title.height - FRAME_PAD - BLOCK_GAP
    column = ColumnSpace(width, height)
    yield from parts_list(parts, column, source.wording, source.typeface)
    used = {each.part.substance for each in parts}
    substances = [each for each in Substance if each.value in used]
    yield from hatches_used(substances, column, source.typeface)
    yield from paragraph_blocks("notes", "NOTES", notes, column, source.typeface)


def _notes(layout: Layout, left_out: Sequence[str], more: int) -> Iterator[str]:
    yield "The heavy line is what is seen from the room. Finished faces govern; backing follows."
    if any(wall.width.value > ZERO for wall in layout.wall_beams):
        yield "At a wall, the wall is drawn left of the beam, whichever side it is on."
    if layout.mouldings.crown is not None or layout.ceiling.flat_mouldings:
        yield (
            "Of mouldings the sizes are known and not how they are milled: each is drawn as the"
            " envelope of its sizes. Hold the moulding itself against it."
        )
    if layout.levels is not None:
        yield (
            "Drawn at the lowest place of the ceiling. Elsewhere backing is shimmed and sides are"
            " taller: see the stations."
        )
    if any(beam.member for beam in layout.beams):
        yield "Members are not cut, notched or drilled. Open one up before sides are ripped."
    if left_out:
        yield f"At no scale of this paper legible, and left out: {listed(left_out)}."
    if more > 0:
        yield f"{more} more sections of casings that differ little are left out."
