"""Sheet Z-301: the room cut along both its runs, with heights and headroom."""

from collections.abc import Iterator, Mapping, Sequence

from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.elements import Group, walk
from lacunar.drawing.paper import Scale
from lacunar.drawing.reference_mark import Reference
from lacunar.drawing.sheets.blocks import listed
from lacunar.drawing.sheets.pages import Page, SheetSource
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.references import references_block
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.upright_titles import (
    cut_legend,
    hand_for,
    over_title,
    standard_scales,
    under_view,
    without_room,
)
from lacunar.drawing.sheets.view_pages import TitledView, view_area, view_pages
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.heights import level_name
from lacunar.drawing.upright.sections import section_cut
from lacunar.drawing.views.room_section import RoomSection
from lacunar.drawing.wording import SheetWording
from lacunar.layout.backing_records import Level
from lacunar.layout.records import ElementKind, Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.drawing import SheetNumber
from lacunar.model.room import RunName

SEEN_TOWARDS = {RunName.LENGTH: "W2", RunName.WIDTH: "W1"}
ROW = {RunName.LENGTH: "ROW", RunName.WIDTH: "COLUMN"}
"""What a section along a run goes through from end to end."""


def section_pages(source: SheetSource) -> tuple[Page, ...]:
    """Both sections at one scale, the largest at which each fits a page.

    A section that is longer than the paper at every scale is left out, and the notes say so.
    """
    made = [_Made(source, number, run) for number, run in enumerate(RunName, start=1)]
    scale, fitting = _scale(source, made)
    views: list[TitledView] = []
    waiting = dict(source.references)
    for each in fitting:
        block = each.block(scale, waiting)
        views.append(TitledView(each.cut.name, each.number, scale, block))
        # Each profile is marked once on the sheet.
        for name in _marked(block):
            waiting.pop(name)
    notes = list(_notes(source.layout, source.wording))
    for each, view in zip(fitting, views, strict=True):
        notes.extend(without_room(each.title, each.cut, view.block))
    left_out = [each.title for each in made if each not in fitting]
    if left_out:
        notes.append(f"Not drawn, being longer than this paper at any scale: {listed(left_out)}.")
    cuts = [each.cut for each in made]
    return view_pages(source, views, tuple(_blocks(source, cuts, notes)))


class _Made:
    """One section, to be measured and drawn at any scale."""

    def __init__(self, source: SheetSource, number: int, run: RunName) -> None:
        self.source = source
        self.number = number
        self.run = run
        self.cut = section_cut(source.layout, run)
        self.title = f"SECTION ALONG THE {run.value.upper()}"

    def at(self, scale: Scale) -> tuple[RoomSection, Block]:
        hand = hand_for(self.source, self.number, scale)
        view = RoomSection(self.cut, hand)
        return view, under_view(hand, self.title, tuple(self._notes(view)))

    def fits(self, scale: Scale) -> bool:
        area = view_area(self.source)
        view, under = self.at(scale)
        whole = over_title(Block(view.view.width, view.view.height, ()), under)
        return whole.width <= area.width and whole.height <= area.height

    def block(self, scale: Scale, references: Mapping[str, Reference]) -> Block:
        view, under = self.at(scale)
        return over_title(view.drawn(references), under)

    def _notes(self, view: RoomSection) -> Iterator[str]:
        row = _row_of(self.source.layout, self.run, self.cut.at or ZERO)
        yield f"THROUGH {ROW[self.run]} {row}, LOOKING TOWARDS {SEEN_TOWARDS[self.run]}"
        if not view.view.has_all_strings or self.source.layout.followed is not None:
            yield f"OPENINGS: SEE {SheetNumber.PLAN.value}"


def _marked(drawn: Block) -> Iterator[str]:
    """The names of the views that a drawn section has marks to."""
    for each in walk(drawn.children):
        if isinstance(each, Group) and each.kind == "reference":
            yield each.data["name"]


def _row_of(layout: Layout, run: RunName, at: Length) -> str:
    """The row or the column of coffers that a section along a run goes through."""
    rows = (e for e in layout.run(run.other).elements if e.kind is ElementKind.COFFER)
    return next(row.id for row in rows if row.near.at_start.value <= at <= row.far.at_start.value)


def _scale(source: SheetSource, made: Sequence[_Made]) -> tuple[Scale, Sequence[_Made]]:
    """The largest scale at which both sections fit, or the smallest and those that fit then."""
    tried = standard_scales(source)
    fitting: list[_Made] = []
    for scale in tried:
        fitting = [each for each in made if each.fits(scale)]
        if len(fitting) == len(made):
            return scale, made
    return tried[-1], fitting


def _blocks(
    source: SheetSource, cuts: Sequence[UprightCut], notes: Sequence[str]
) -> Iterator[Block]:
    column, typeface = column_space(source.size), source.typeface
    space = TableSpace(column.width, rows_that_fit(column.height), typeface)
    columns = heights_table(source.layout, source.wording)
    yield from in_blocks("height", "heights", "HEIGHTS ABOVE FFL", columns, space)
    yield from paragraph_blocks("notes", "NOTES", notes, column, typeface)
    yield from cut_legend(cuts, column, typeface)
    yield from references_block(source, column)


def heights_table(layout: Layout, wording: SheetWording) -> tuple[WordColumn, ...]:
    """Every level of the layout's stack from the top down, the headroom's limit, what is left."""
    heights = layout.heights
    rows = [(level_name(level), _words(level), level.height.value) for level in heights.levels]
    rows.append(("limit", "LIMIT", heights.limit))
    spare = heights.spare.value
    left = "OVER LIMIT" if spare >= ZERO else "UNDER LIMIT"
    rows.append(("spare", left, abs(spare)))
    return (
        WordColumn("WHAT", tuple(words for _, words, _ in rows)),
        WordColumn(
            "HEIGHT",
            tuple(wording.length(height) for _, _, height in rows),
            "height",
            tuple(wording.exact(wording.rounded(height)) for _, _, height in rows),
        ),
    )


def _words(level: Level) -> str:
    """What a level is called in the table of heights: its underside, but for the ceiling."""
    if level.kind == level.of:
        return {"joists": "JOISTS", "panel": "PANELS"}.get(level.kind, level.kind.upper())
    return level.of


def _notes(layout: Layout, wording: SheetWording) -> Iterator[str]:
    heights = layout.heights
    yield "FFL is the finished floor level. Heights are to undersides."
    where = ", ".join(heights.worst)
    kept = "is kept" if heights.spare.value >= ZERO else "IS NOT KEPT"
    edition = f" ({heights.code_edition})" if heights.code_edition else ""
    yield (
        f"Headroom is least under {where}: {wording.length(heights.worst_height.value)}. The limit"
        f" of {wording.length(heights.limit)}{edition} {kept}; the local code governs."
    )
    if layout.levels is not None and layout.levels.rise.value:
        yield (
            "Beams hang level from the lowest station of the ceiling, which is drawn; it rises"
            f" {wording.detail(layout.levels.rise.value)} above that at its highest."
        )
    if layout.crooked is not None and not layout.crooked.square:
        yield "Walls are out of square: they are drawn where the section meets them."
