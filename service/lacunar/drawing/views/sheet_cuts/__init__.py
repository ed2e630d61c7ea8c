"""Sheets to scale as they are cut: panels, saw cuts in order, what is left, which way grain lies.

Places are those of the plan, from the sheet's lower left corner; between two panels there is as
much paper as the saw takes. Cuts bear their numbers at an end of their line.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, arrow
from lacunar.drawing.elements import Element, Face, Fill, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import diagonal_lines, outside_box
from lacunar.drawing.views.sheet_cuts.cut_lines import cut_lines, kind_word
from lacunar.drawing.views.sheet_cuts.look import HEAD, SIDE, Rectangle, SheetLook, Spot
from lacunar.drawing.wording import decimal_mm
from lacunar.measure.length import ZERO, Length
from lacunar.takeoff.cutting.sheet_records import CutSheet, PanelOnSheet, SheetCut, SheetOffcut

_INSET = 2.2
_HATCH = 2.6
_PITCH = 3.9
_AROUND = 0.6


@dataclass(frozen=True, slots=True)
class DrawnSheet:
    """A sheet to be drawn: its number among all, its material, and how many are cut so.

    `sizes` are length and width that the cut list tells, by mark.
    """

    number: int
    material: str
    sheet: CutSheet
    times: int
    sizes: Mapping[str, tuple[Length, Length]]


def sheet_cuts(drawn: DrawnSheet, look: SheetLook, width: float) -> tuple[Block, ...]:
    """One sheet as rows: the sheet, beside it its cuts and whatever has no room in it, in lines.

    Lines that have no room beside it, in a row `width` [mm] wide, follow as rows of their own.
    """
    sheet = drawn.sheet
    outline = Rectangle(ZERO, ZERO, sheet.length, sheet.width).on(sheet.width, look)
    cuts = cut_lines(sheet, outline, look)
    beside = _Beside([_cut_line(cut, look) for cut in sheet.cuts], cuts.numbers)
    children: tuple[Element, ...] = (
        *_heading(drawn, look),
        *(_panel(panel, drawn, look, beside) for panel in sheet.panels),
        *(_offcut(each, drawn, look, beside) for each in sheet.offcuts),
        Group("sheet-outline", (Polyline(outline.corners, style.OBJECT, closed=True),)),
        *cuts.drawn,
    )
    listed = _in_columns(beside.lines, outline, width, look)
    data = {
        "material": drawn.material,
        "stock": sheet.sheet,
        "length-mm": decimal_mm(sheet.length),
        "width-mm": decimal_mm(sheet.width),
        "times": str(drawn.times),
    }
    title = f"{drawn.times} x {look.by(sheet.length, sheet.width)}"
    group = Group("cut-sheet", children, id=f"sheet-{drawn.number}", title=title, data=data)
    drawing = Block(listed.right, outline.bottom + SIDE + 1.0, (group, *listed.beside))
    return (drawing, *listed.rows)


@dataclass(frozen=True, slots=True)
class _Listed:
    """Lines beside a sheet, as far as `right` [mm], and rows of those that have no room there."""

    beside: tuple[Text, ...]
    right: float
    rows: tuple[Block, ...]


def _in_columns(lines: Sequence[str], outline: Spot, width: float, look: SheetLook) -> _Listed:
    """Lines in columns beside the sheet, and in rows where there is no more room."""
    pitch = max(look.typeface.width(line, style.TEXT) for line in lines) + 6.0 if lines else 1.0
    deep = int((outline.bottom - HEAD) // _PITCH) + 1
    left = outline.right + SIDE + 5.0
    count = max(int((width - left) // pitch), 0) * deep
    beside = tuple(
        Text(
            Pt(left + pitch * (number // deep), HEAD + style.TEXT + _PITCH * (number % deep)),
            line,
            style.TEXT,
        )
        for number, line in enumerate(lines[:count])
    )
    across = max(int(width // pitch), 1)
    waiting = lines[count:]
    rows = tuple(
        Block(width, style.LINE_PITCH, _side_by_side(waiting[start : start + across], pitch))
        for start in range(0, len(waiting), across)
    )
    columns = -(-len(beside) // deep)
    right = width if rows else min(left + pitch * columns, width)
    return _Listed(beside, right, rows)


def _side_by_side(lines: Sequence[str], pitch: float) -> tuple[Text, ...]:
    return tuple(
        Text(Pt(SIDE + pitch * number, style.TEXT), line, style.TEXT)
        for number, line in enumerate(lines)
    )


def _cut_line(cut: SheetCut, look: SheetLook) -> str:
    """What is done at a cut: `2: rip 1a at 1'-7"`."""
    part = "the sheet" if cut.part == "sheet" else cut.part
    return f"{cut.number}: {kind_word(cut).lower()} {part} at {look.wording.detail(cut.at)}"


def _heading(drawn: DrawnSheet, look: SheetLook) -> Iterator[Element]:
    """How many sheets of which size, and the way of their grain."""
    times, size = f"{drawn.times} x", look.by(drawn.sheet.length, drawn.sheet.width)
    at = SIDE + look.typeface.width(times, style.TEXT, Face.SEMIBOLD) + 2.0
    yield Text(Pt(SIDE, style.TEXT + 0.4), times, style.TEXT, Face.SEMIBOLD)
    yield Text(Pt(at, style.TEXT + 0.4), size, style.TEXT)
    start = at + look.typeface.width(size, style.TEXT) + 6.0
    ends = Pt(start, 1.7), Pt(start + 10.0, 1.7)
    shaft = Polyline((ends[0].moved(1.0, 0), ends[1].moved(-1.0, 0)), style.FINE)
    heads = (arrow(ends[0], ends[1], 1.8), arrow(ends[1], ends[0], 1.8))
    words = Text(Pt(start + 12.0, style.TEXT + 0.4), "Grain", style.TEXT)
    yield Group("grain-arrow", (shaft, *heads, words))


def _panel(panel: PanelOnSheet, drawn: DrawnSheet, look: SheetLook, beside: "_Beside") -> Group:
    """A panel as a white area, with its mark and size if it has room for them."""
    lies = Rectangle(panel.x, panel.y, panel.length, panel.width)
    spot = lies.on(drawn.sheet.width, look)
    size = drawn.sizes[panel.panel]
    words = _fitting(panel.panel, look.by(*size), spot, look)
    if not words.tells_all:
        beside.lines.append(f"{panel.part}: {panel.panel}, {look.by(*size)}")
    area = Polyline(spot.corners, None, closed=True, fill=Fill.WHITE)
    data = {
        "mark": panel.panel,
        "part": panel.part,
        "x-mm": decimal_mm(panel.x),
        "y-mm": decimal_mm(panel.y),
        "length-mm": decimal_mm(panel.length),
        "width-mm": decimal_mm(panel.width),
        "turned": "yes" if panel.turned else "no",
    }
    return Group("sheet-panel", (area, *words.texts), data=data)


@dataclass(frozen=True, slots=True)
class _Words:
    """What is written in a part of a sheet, and whether it is all that is to be told of it."""

    texts: tuple[Text, ...]
    tells_all: bool


def _fitting(mark: str, size: str, spot: Spot, look: SheetLook) -> _Words:
    """Mark and size in two lines, or three; else the mark, upright or turned; else nothing."""
    first, _, second = size.partition(" x ")
    for lines in ((mark, size), (mark, f"{first} x", second)):
        texts = _stacked(lines, spot, look)
        if texts:
            return _Words(texts, tells_all=True)
    alone = _stacked((mark,), spot, look)
    if alone:
        return _Words(alone, tells_all=False)
    return _Words(_turned(mark, spot, look), tells_all=False)


def _stacked(lines: Sequence[str], spot: Spot, look: SheetLook) -> tuple[Text, ...]:
    """Lines about the middle of a part, the first in bold; nothing where they do not fit."""
    widths = [
        look.typeface.width(line, style.TEXT, Face.REGULAR if number else Face.SEMIBOLD)
        for number, line in enumerate(lines)
    ]
    height = style.TEXT + style.LINE_PITCH * (len(lines) - 1)
    if max(widths) > spot.width - 2 * _INSET or height > spot.height - 2 * _INSET + 1.0:
        return ()
    first = spot.middle.y - height / 2 + style.TEXT
    return tuple(
        Text(
            Pt(spot.middle.x, first + style.LINE_PITCH * number),
            line,
            style.TEXT,
            Face.REGULAR if number else Face.SEMIBOLD,
            "middle",
        )
        for number, line in enumerate(lines)
    )


def _turned(mark: str, spot: Spot, look: SheetLook) -> tuple[Text, ...]:
    across = look.typeface.width(mark, style.TEXT, Face.SEMIBOLD)
    if spot.width - 2 * _AROUND < style.TEXT or across > spot.height - 2 * _INSET:
        return ()
    at = spot.middle.moved(style.TEXT / 2, 0)
    return (Text(at, mark, style.TEXT, Face.SEMIBOLD, "middle", turned=True),)


@dataclass(slots=True)
class _Beside:
    """Lines to be written beside a sheet, and where numbers of cuts stand in it."""

    lines: list[str]
    numbers: tuple[Spot, ...]


def _offcut(left_over: SheetOffcut, drawn: DrawnSheet, look: SheetLook, beside: _Beside) -> Group:
    """What is left in one part, hatched about its size, or with its size in a line."""
    lies = Rectangle(left_over.x, left_over.y, left_over.length, left_over.width)
    spot = lies.on(drawn.sheet.width, look)
    words = "To keep" if left_over.usable else "Left over"
    size = look.by(left_over.length, left_over.width)
    texts = _stacked((words, size), spot, look)
    clear = list(beside.numbers)
    if texts:
        clear.append(_about(texts, look))
    else:
        beside.lines.append(f"{left_over.part}: {words.lower()}, {size}")
    hatch = diagonal_lines(spot.corners, _HATCH)
    for box in clear:
        hatch = outside_box(hatch, box.corners)
    area = Polyline(spot.corners, None, closed=True, fill=Fill.WHITE)
    data = {
        "x-mm": decimal_mm(left_over.x),
        "y-mm": decimal_mm(left_over.y),
        "length-mm": decimal_mm(left_over.length),
        "width-mm": decimal_mm(left_over.width),
    }
    return Group("sheet-offcut", (area, Segments(hatch, style.HATCH), *texts), data=data)


def _about(texts: Sequence[Text], look: SheetLook) -> Spot:
    """The room of lines about one middle, and a little more."""
    width = max(look.typeface.width(text.text, text.height, text.face) for text in texts)
    top = min(text.at.y for text in texts) - style.TEXT - 1.0
    bottom = max(text.at.y for text in texts) + 1.4
    return Spot(texts[0].at.x - width / 2 - 1.0, top, width + 2.0, bottom - top)
