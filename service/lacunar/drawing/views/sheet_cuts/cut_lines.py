"""Saw cuts on a sheet: a line each, with its number at an edge of the sheet or in the line."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Face, Group, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, outside_box
from lacunar.drawing.views.sheet_cuts.look import Rectangle, SheetLook, Spot
from lacunar.takeoff.cutting.asked import Grain
from lacunar.takeoff.cutting.sheet_records import CutSheet, SheetCut

_OFF = 1.0
_AROUND = 0.7
_BROKEN_FROM = 9.0
"""A line is broken for its number where it is at least so long [mm]."""

Number = tuple[Pt, Spot]


@dataclass(frozen=True, slots=True)
class CutLines:
    """The cuts of a sheet as drawn, and the room their numbers take, which hatching keeps clear."""

    drawn: tuple[Group, ...]
    numbers: tuple[Spot, ...]


def cut_lines(sheet: CutSheet, outline: Spot, look: SheetLook) -> CutLines:
    """Each cut in turn; a number that has no room stands in the lines beside the sheet alone."""
    drawn: list[Group] = []
    taken: list[Spot] = []
    all_lines = [_line(cut, sheet, look) for cut in sheet.cuts]
    for cut, line in zip(sheet.cuts, all_lines, strict=True):
        in_the_way = [_along(other) for other in all_lines if other is not line]
        in_the_way += [_along(edge) for edge in pairwise((*outline.corners, outline.corners[0]))]
        places = _places(line, cut, outline, look)
        number = next((at for at in places if _clear(at[1], (*in_the_way, *taken))), None)
        lines: tuple[tuple[Pt, Pt], ...] = (line,)
        texts: tuple[Element, ...] = ()
        if number is not None:
            at, box = number
            taken.append(box)
            lines = outside_box(lines, box.corners)
            texts = (Text(at, str(cut.number), style.TEXT, Face.SEMIBOLD, "middle"),)
        data = {"number": str(cut.number), "kind": kind_word(cut).lower()}
        drawn.append(Group("sheet-cut", (Segments(lines, style.CUT), *texts), data=data))
    return CutLines(tuple(drawn), tuple(taken))


def kind_word(cut: SheetCut) -> str:
    """What the cut is called: along the grain, or across it."""
    return "Crosscut" if cut.across is Grain.LENGTH else "Rip"


def _line(cut: SheetCut, sheet: CutSheet, look: SheetLook) -> tuple[Pt, Pt]:
    """Where the middle of the saw goes, from one edge of its part to the other."""
    part = Rectangle(cut.x, cut.y, cut.length, cut.width).on(sheet.width, look)
    along = look.on_paper(cut.at + look.kerf / 2)
    if cut.across is Grain.LENGTH:
        x = part.left + along
        return Pt(x, part.bottom), Pt(x, part.top)
    y = part.bottom - along
    return Pt(part.left, y), Pt(part.right, y)


def _places(line: tuple[Pt, Pt], cut: SheetCut, outline: Spot, look: SheetLook) -> Iterator[Number]:
    """Where a cut's number may stand: beside the sheet at an end of its line, else in the line."""
    width = look.typeface.width(str(cut.number), style.TEXT, Face.SEMIBOLD)
    start, end = line
    if cut.across is Grain.LENGTH:
        if end.y <= outline.top + _AROUND:
            yield _number(Pt(end.x, outline.top - _OFF - style.TEXT / 2), width)
        if start.y >= outline.bottom - _AROUND:
            yield _number(Pt(start.x, outline.bottom + _OFF + style.TEXT / 2), width)
    else:
        if start.x <= outline.left + _AROUND:
            yield _number(Pt(outline.left - _OFF - width / 2, start.y), width)
        if end.x >= outline.right - _AROUND:
            yield _number(Pt(outline.right + _OFF + width / 2, end.y), width)
    if abs(end.x - start.x) + abs(end.y - start.y) >= _BROKEN_FROM:
        for share in (0.5, 0.25, 0.75):
            along = (end.x - start.x) * share, (end.y - start.y) * share
            yield _number(start.moved(*along), width)


def _number(middle: Pt, width: float) -> Number:
    """The baseline of a number about a point, and the room it takes."""
    corners = box_corners(
        middle.x - width / 2 - _AROUND,
        middle.y - style.TEXT / 2 - _AROUND,
        width + 2 * _AROUND,
        style.TEXT + 2 * _AROUND,
    )
    box = Spot(corners[0].x, corners[0].y, width + 2 * _AROUND, style.TEXT + 2 * _AROUND)
    return middle.moved(0, style.TEXT / 2), box


def _along(line: tuple[Pt, Pt]) -> Spot:
    """The room of an upright or level line, as wide as the pen draws it."""
    (one, other), half = line, style.CUT.width / 2
    left, top = min(one.x, other.x), min(one.y, other.y)
    return Spot(
        left - half,
        top - half,
        abs(other.x - one.x) + style.CUT.width,
        abs(other.y - one.y) + style.CUT.width,
    )


def _clear(box: Spot, taken: Sequence[Spot]) -> bool:
    return all(
        box.right <= other.left
        or other.right <= box.left
        or box.bottom <= other.top
        or other.bottom <= box.top
        for other in taken
    )
