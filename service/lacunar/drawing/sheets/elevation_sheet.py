"""Sheet Z-201: every wall as seen from inside, all at one scale."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block, paragraph_blocks
from lacunar.drawing.paper import Scale
from lacunar.drawing.sheets.blocks import listed
from lacunar.drawing.sheets.pages import Page, SheetSource
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.upright_titles import (
    cut_legend,
    hand_for,
    over_title,
    standard_scales,
    under_view,
    without_room,
)
from lacunar.drawing.sheets.view_pages import VIEW_GAP, TitledView, view_area, view_pages
from lacunar.drawing.upright.elevations import Elevation, elevations
from lacunar.drawing.views.wall_elevation import WallElevation
from lacunar.model.ceiling_items import FeatureKind
from lacunar.model.drawing import SheetNumber

READABLE = 50
"""The smallest scale that walls read well at, 1/4" = 1'-0" or 1:50 (common practice, no source)."""


def elevation_pages(source: SheetSource) -> tuple[Page, ...]:
    """The elevations of all walls on as many pages as they need.

    A wall that is longer than the paper at every scale is left out, and the notes say so.
    """
    walls = elevations(source.layout)
    made = [_Made(source, number, wall) for number, wall in enumerate(walls, start=1)]
    scale, fitting = _scale(source, made)
    views = [TitledView(each.name, each.number, scale, each.block(scale)) for each in fitting]
    notes = list(_notes(walls))
    for each, view in zip(fitting, views, strict=True):
        notes.extend(without_room(each.title(), each.elevation.cut, view.block))
    left_out = [each.title() for each in made if each not in fitting]
    if left_out:
        notes.append(f"Not drawn, being longer than this paper at any scale: {listed(left_out)}.")
    return view_pages(source, views, tuple(_blocks(source, walls, notes)))


class _Made:
    """One elevation, to be measured and drawn at any scale."""

    def __init__(self, source: SheetSource, number: int, elevation: Elevation) -> None:
        self.source = source
        self.number = number
        self.elevation = elevation
        self.name = elevation.cut.name

    def at(self, scale: Scale) -> tuple[WallElevation, Block]:
        hand = hand_for(self.source, self.number, scale)
        view = WallElevation(self.elevation, hand)
        return view, under_view(hand, self.title(), tuple(self._notes(view)))

    def size(self, scale: Scale) -> tuple[float, float]:
        view, under = self.at(scale)
        measured = Block(view.view.width, view.view.height, ())
        whole = over_title(measured, under)
        return whole.width, whole.height

    def block(self, scale: Scale) -> Block:
        view, under = self.at(scale)
        return over_title(view.drawn(), under)

    def title(self) -> str:
        part = self.name.removeprefix(f"elevation-{self.elevation.wall}").removeprefix("-")
        return f"WALL {self.elevation.wall}" + (f", PART {part}" if part else "")

    def _notes(self, view: WallElevation) -> Iterator[str]:
        if not view.view.tells_marks and self.elevation.cut.beams:
            yield f"MARKS: SEE {SheetNumber.PLAN.value}"


def _scale(source: SheetSource, made: Sequence[_Made]) -> tuple[Scale, Sequence[_Made]]:
    """The largest scale for two rows of views on a page, or for one where two would be too small.

    With the views that fit: all, or at the smallest scale those that do.
    """
    area = view_area(source)
    two, one = (
        _largest(source, made, (area.height - VIEW_GAP * (rows - 1)) / rows) for rows in (2, 1)
    )
    if one is not None and (two is None or two.ratio > READABLE >= one.ratio):
        return one, made
    if two is not None:
        return two, made
    smallest = standard_scales(source)[-1]
    return smallest, [each for each in made if _fits(source, each, smallest, area.height)]


def _largest(source: SheetSource, made: Sequence[_Made], tall: float) -> Scale | None:
    """The largest scale at which all views are no taller than so [mm]; None if there is none."""
    for scale in standard_scales(source):
        if all(_fits(source, each, scale, tall) for each in made):
            return scale
    return None


def _fits(source: SheetSource, view: _Made, scale: Scale, tall: float) -> bool:
    width, height = view.size(scale)
    return width <= view_area(source).width and height <= tall


def _blocks(
    source: SheetSource, walls: Sequence[Elevation], notes: Sequence[str]
) -> Iterator[Block]:
    column, typeface = column_space(source.size), source.typeface
    yield from paragraph_blocks("notes", "NOTES", notes, column, typeface)
    yield from cut_legend([wall.cut for wall in walls], column, typeface)


def _notes(walls: Sequence[Elevation]) -> Iterator[str]:
    yield "Walls are seen from inside the room, in their order round it, clockwise from W1."
    yield (
        "Beams that end at a wall are cut just before what stands along it. Figures above are"
        " their running marks from the run's start wall, as on the reflected ceiling plan."
    )
    yield "FFL is the finished floor level, from which heights are measured."
    features = [feature for wall in walls for feature in wall.features]
    if any(each.kind is FeatureKind.WINDOW for each in features):
        yield "Sills are as built: hidden lines go on where they are not given."
    if any(each.head is None for each in features):
        yield "Heads that are not given are measured on site."
