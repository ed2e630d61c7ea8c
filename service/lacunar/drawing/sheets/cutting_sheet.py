"""Cutting diagrams: each way a stick or a sheet is cut, once, with how often it is cut so."""

from collections.abc import Iterator
from dataclasses import replace

from lacunar.drawing.annotation import Block, ColumnSpace
from lacunar.drawing.elements import Element, Group
from lacunar.drawing.lists import Stocked
from lacunar.drawing.paper import Scale
from lacunar.drawing.sheets.cut_rows import CutRows
from lacunar.drawing.sheets.list_notes import (
    assumed_texts,
    fault_texts,
    notes_beside,
    refused_pages,
)
from lacunar.drawing.sheets.pages import Page, SheetSource
from lacunar.drawing.sheets.placing import Box
from lacunar.drawing.sheets.scale_bar import scale_bar
from lacunar.drawing.sheets.titled_rows import grouped_parts
from lacunar.drawing.sheets.wide_pages import wide_pages, wide_space
from lacunar.drawing.views.sheet_cuts.look import HEAD, SIDE
from lacunar.drawing.views.stick_bars import BEFORE, BEHIND
from lacunar.drawing.wording import SheetWording
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.buying.cut_materials import TAPED

VIEW = "cutting-diagrams"
_LARGEST = 16
_NEEDS = 140.0
"""Bars and sheets stand beside the notes where they have so much room there [mm]."""
_FOOT = 9.0
_TITLES = 20.0
_ASSUMED = ("kerf", "end_trim", "edge_trim", "usable_offcut", "lengths", "sheets", "effort")


def cutting_pages(source: SheetSource) -> tuple[Page, ...]:
    """All diagrams on as many pages as they need; in words why not, where parts cannot be cut."""
    lists = source.lists
    if lists is None or not lists.taken.parts:
        return ()
    if lists.stocked is None:
        return refused_pages(source, fault_texts(lists.faults, source.wording))
    space = wide_space(source, _NEEDS, _FOOT)
    scale = _scale(source, lists.stocked, space.part)
    rows = CutRows(
        lists.stocked,
        lists.taken.parts,
        scale,
        space.part.width,
        source.wording,
        source.typeface,
    )
    told = (
        ("notes", "NOTES", tuple(_notes(lists.stocked, source.wording))),
        ("assumed", "ASSUMED", assumed_texts(_assumed(lists.stocked), source.wording)),
    )
    notes = notes_beside(told, space.note, source.typeface)
    titled = replace(source, fields=replace(source.fields, scale=scale.text))

    def finish(elements: tuple[Element, ...], area: Box) -> tuple[Element, ...]:
        return _as_view(elements, area, scale, source)

    return wide_pages(titled, space, _parts(rows, space.part), notes, finish)


def _parts(rows: CutRows, space: ColumnSpace) -> tuple[Block, ...]:
    sticks, sheets = list(rows.sticks()), list(rows.sheets())
    top = Block(space.width, 0.0, ())
    return (
        *(grouped_parts("sticks", "STICKS AND BOARDS", sticks, space, top) if sticks else ()),
        *(grouped_parts("cut-sheets", "SHEETS", sheets, space, top) if sheets else ()),
    )


def _scale(source: SheetSource, stocked: Stocked, space: ColumnSpace) -> Scale:
    """The largest standard scale at which every stick and sheet has room, else the smallest."""
    sticks, sheets = stocked.planned.lengths, stocked.planned.sheets
    longest = _most(stick.length for p in (sticks.plans if sticks else ()) for stick in p.sticks)
    flat = [sheet for plan in (sheets.plans if sheets else ()) for sheet in plan.sheets]
    length, width = _most(sheet.length for sheet in flat), _most(sheet.width for sheet in flat)
    standard = source.scales(smallest=200, largest=_LARGEST)
    for scale in standard:
        bar = BEFORE + longest / scale.ratio + BEHIND
        across = SIDE * 2 + length / scale.ratio
        tall = HEAD + width / scale.ratio + SIDE + _TITLES
        if max(bar, across) <= space.width and tall <= space.height:
            return scale
    return standard[-1]


def _most(lengths: Iterator[Length]) -> float:
    return float(max(lengths, default=ZERO).millimeters)


def _as_view(
    elements: tuple[Element, ...], area: Box, scale: Scale, source: SheetSource
) -> tuple[Element, ...]:
    """The diagrams of a page as its one view, with its scale bar at its foot."""
    data = {"view": VIEW, "scale": str(scale.ratio), "scale-text": scale.text}
    view = Group("view", elements, id="view-1", title="Cutting diagrams", data=data)
    bar = scale_bar(1, scale.ratio, source.wording.units, area.width / 3)
    return (view, *bar.at(area.left, area.bottom + _FOOT - bar.height))


def _notes(stocked: Stocked, wording: SheetWording) -> Iterator[str]:
    yield (
        "Each way of cutting is shown once, with how many are cut so. Pieces bear the marks and"
        " lengths of the cut list and are cut in the order shown, from the left end."
    )
    yield (
        f"Between two pieces lies one saw cut, {wording.detail(stocked.kerf)} and more where ends"
        " are mitred. What is hatched is left over; what is long enough for it is to be kept."
    )
    if stocked.planned.sheets is not None:
        yield (
            "Cuts of a sheet go from edge to edge of the part they cut, in the order of their"
            " numbers: 1a and 1b are what cut 1 leaves, left and right of a crosscut, lower and"
            " upper of a rip. Distances are from the left or lower edge to the saw, a hair full:"
            f" sizes are rounded up to {wording.detail(TAPED[wording.units])}."
        )
    joined = [
        f"{part.mark} of {part.pieces_each}"
        for line in stocked.listed.materials.lines
        for part in line.parts
        if part.pieces_each > 1
    ]
    if joined:
        yield (
            "Longer than all stock, and joined of equal pieces, scarfed at 45° where that is seen:"
            f" {', '.join(joined)}. Choose places for the joints where they are carried."
        )
    yield "Drawn for the stock that is assumed here. From other stock, parts are cut otherwise."


def _assumed(stocked: Stocked) -> Iterator[Assumption]:
    made = stocked.listed.assumptions
    return (each for each in made if each.pointer.rpartition("/")[2] in _ASSUMED)
