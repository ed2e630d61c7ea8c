"""The list beside views with balloons: each part by its number, with its size and what it is of."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, fitted, headed_parts, rectangle, wrapped
from lacunar.drawing.elements import Face, Group, Pt, Text
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.section.hatches import Hatch, Substance, hatched
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.profile_detail import NamedPart
from lacunar.drawing.views.profile_detail.balloons import ring
from lacunar.drawing.wording import SheetWording, decimal_mm

INDENT = 9.4
GAP = 2.0
SAMPLE = (14.0, 6.0)


@dataclass(frozen=True, slots=True)
class ListedPart:
    """A part, its number, in how many views it is, and what a take-off calls it."""

    part: NamedPart
    number: int
    views: int
    marks: str = ""


def parts_list(
    listed: Sequence[ListedPart], column: ColumnSpace, wording: SheetWording, typeface: Typeface
) -> tuple[Block, ...]:
    """The parts in the order of their balloons, in as many blocks as the column needs."""
    rows = [_row(each, column.width, wording, typeface) for each in listed]
    return headed_parts("parts-list", "PARTS, T x W", rows, column)


def _row(each: ListedPart, width: float, wording: SheetWording, typeface: Typeface) -> Block:
    part = each.part
    size = _size(part, wording)
    room = width - INDENT - typeface.width(size, style.TEXT, Face.MEDIUM) - GAP
    words = fitted(part.words, room, style.TEXT, typeface, Face.SEMIBOLD)
    told = ", ".join(text for text in (part.substance, part.remark, each.marks) if text)
    lines = wrapped(told[:1].upper() + told[1:], width - INDENT, typeface) if told else ()
    y = 2.0 + style.TEXT
    texts = [
        Text(Pt(INDENT, y), words, style.TEXT, Face.SEMIBOLD),
        *([Text(Pt(width, y), size, style.TEXT, Face.MEDIUM, "end")] if size else []),
        *(
            Text(Pt(INDENT, y + style.LINE_PITCH * number), line, style.TEXT)
            for number, line in enumerate(lines, start=1)
        ),
    ]
    tag = ring(each.number)
    radius = tag.long_side(typeface) / 2
    balloon = tag.drawn(Pt(radius, y - style.TEXT / 2), typeface).children
    sizes = {"thickness-mm": part.thickness, "width-mm": part.width}
    data = {
        "number": str(each.number),
        "part": part.name,
        "views": str(each.views),
        **{name: decimal_mm(length) for name, length in sizes.items() if length is not None},
    }
    row = Group("balloon-row", (*balloon, *texts), data=data)
    height = max(2 * radius + 1.6, y + style.LINE_PITCH * len(lines) + 1.2)
    return Block(width, height, (row,))


def _size(part: NamedPart, wording: SheetWording) -> str:
    """Thickness by width; what is missing of it is not told."""
    sizes = [wording.size(each) for each in (part.thickness, part.width) if each is not None]
    return " x ".join(sizes)


def hatches_used(
    substances: Sequence[Substance], column: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """What each hatch on the sheet stands for."""
    rows = [_sample(each, column.width, typeface) for each in substances]
    return headed_parts("hatches", "AS CUT", rows, column)


def _sample(substance: Substance, width: float, typeface: Typeface) -> Block:
    pitch = 3.0 if substance is Substance.EXISTING else 1.3
    corners = box_corners(0.4, 1.0, *SAMPLE)
    lines = wrapped(substance.value, width - SAMPLE[0] - 2 * GAP, typeface)
    words = tuple(_lines(lines, SAMPLE[0] + 2 * GAP, 1.0 + SAMPLE[1] / 2))
    drawn = hatched(Hatch(substance, pitch=pitch), corners)
    row = Group(
        "hatch-row",
        (*drawn, rectangle(0.4, 1.0, *SAMPLE), *words),
        data={"substance": substance.name.lower()},
    )
    return Block(width, max(SAMPLE[1] + 2.4, style.LINE_PITCH * len(lines) + 1.4), (row,))


def _lines(lines: Sequence[str], x: float, middle: float) -> Iterator[Text]:
    first = middle - style.LINE_PITCH * (len(lines) - 1) / 2 + style.TEXT / 2
    for number, line in enumerate(lines):
        yield Text(Pt(x, first + style.LINE_PITCH * number), line, style.TEXT)
