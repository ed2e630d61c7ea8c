"""Sticks as bars to scale: pieces with marks and lengths, saw cuts between them, what is left.

Pieces lie where the plan has them, to the exact length, so that between two of them there is as
much paper as the saw takes.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby, pairwise

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, wrapped
from lacunar.drawing.elements import Element, Face, Fill, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.measure.length import ZERO, Length
from lacunar.takeoff.cutting.plan_records import PieceOnStick, Stick

BAR = 9.0
"""How high a bar is drawn, whatever its stock is wide: two lines of text stand in it [mm]."""
BEFORE = 18.5
"""What stands before a bar: how many times it is cut so, and the length of its stock [mm]."""
BEHIND = 22.0
"""What stands behind the longest bar: what is left of each [mm]."""
_GAP = 3.0
_INSET = 0.9
_HATCH = 2.2
_LED = 4.2
"""From a bar down to the labels that are led out of it [mm]."""
_BRACKET = 0.9
_APART = 2.6
_MOST_LINES = 9


@dataclass(frozen=True, slots=True)
class DrawnStick:
    """A stick to be drawn: its number among all, how many are cut so, and its pieces' lengths.

    `lengths` are those that the cut list tells, by mark; a piece of a joined part has its own.
    """

    number: int
    material: str
    stick: Stick
    times: int
    lengths: Mapping[str, Length]


@dataclass(frozen=True, slots=True)
class BarLook:
    """How bars are drawn: `ratio` millimeters of stick to one of paper, in how wide a column [mm].

    `longest` is how long the longest of the bars is on paper [mm].
    """

    ratio: Fraction
    width: float
    longest: float
    wording: SheetWording
    typeface: Typeface

    def on_paper(self, length: Length) -> float:
        """A length to scale [mm]."""
        return float(length.millimeters) / self.ratio


@dataclass(frozen=True, slots=True)
class _Run:
    """Pieces in a row that are alike, from their left edge to their right one [mm]."""

    mark: str
    length: str
    pieces: tuple[PieceOnStick, ...]
    left: float
    right: float

    @property
    def words(self) -> str:
        """How many, the mark and the length."""
        count = len(self.pieces)
        return f"{count} x {self.mark} {self.length}" if count > 1 else f"{self.mark} {self.length}"


def stick_bar(drawn: DrawnStick, look: BarLook) -> Block:
    """One stick as a row: how many, the bar, what is left, and under it what is led out of it."""
    stick = drawn.stick
    runs = [
        _run(mark, tuple(pieces), drawn, look)
        for mark, pieces in groupby(stick.pieces, key=lambda piece: piece.piece)
    ]
    led = [run for run in runs if not _fits(run, look)]
    height, labels = _led_out(led, runs, look)
    children = (
        *_before(drawn, look),
        *_offcut(stick, look),
        _outline(stick, look),
        *(piece for run in runs for piece in _pieces(run, look)),
        *labels,
    )
    data = {
        "material": drawn.material,
        "stock": stick.stock,
        "length-mm": decimal_mm(stick.length),
        "times": str(drawn.times),
        "offcut-mm": decimal_mm(stick.offcut),
    }
    title = f"{drawn.times} x {look.wording.detail(stick.length)}"
    group = Group("stick", children, id=f"stick-{drawn.number}", title=title, data=data)
    return Block(look.width, BAR + height + 3.4, (group,))


def _run(mark: str, pieces: tuple[PieceOnStick, ...], drawn: DrawnStick, look: BarLook) -> _Run:
    length = drawn.lengths.get(mark, pieces[0].length)
    left, right = pieces[0].start, pieces[-1].end
    at = BEFORE + look.on_paper(left), BEFORE + look.on_paper(right)
    return _Run(mark, look.wording.detail(length), pieces, *at)


def _fits(run: _Run, look: BarLook) -> bool:
    """Whether mark and length stand within each piece."""
    room = look.on_paper(run.pieces[0].end - run.pieces[0].start) - 2 * _INSET
    return max(_mark_width(run, look), look.typeface.width(run.length, style.TEXT)) <= room


def _mark_width(run: _Run, look: BarLook) -> float:
    return look.typeface.width(run.mark, style.TEXT, Face.SEMIBOLD)


def _before(drawn: DrawnStick, look: BarLook) -> tuple[Element, ...]:
    times = Text(Pt(0, 3.6), f"{drawn.times} x", style.TEXT, Face.SEMIBOLD)
    length = look.wording.detail(drawn.stick.length)
    return (times, Text(Pt(0, 7.6), length, style.TEXT))


def _outline(stick: Stick, look: BarLook) -> Group:
    corners = box_corners(BEFORE, 0, look.on_paper(stick.length), BAR)
    return Group("stick-outline", (Polyline(corners, style.FINE, closed=True),))


def _pieces(run: _Run, look: BarLook) -> Iterator[Group]:
    """Each piece of a run as an outline, with as much of its label as it has room for."""
    inside = _fits(run, look)
    for piece in run.pieces:
        left = BEFORE + look.on_paper(piece.start)
        width = look.on_paper(piece.end - piece.start)
        outline = Polyline(box_corners(left, 0, width, BAR), style.OBJECT, closed=True)
        middle = left + width / 2
        texts = _both(run, middle) if inside else _mark_alone(run, middle, width, look)
        data = {
            "mark": piece.piece,
            "start-mm": decimal_mm(piece.start),
            "length-mm": decimal_mm(piece.length),
        }
        yield Group("stick-piece", (outline, *texts), data=data)


def _both(run: _Run, middle: float) -> tuple[Text, ...]:
    return (
        Text(Pt(middle, 3.9), run.mark, style.TEXT, Face.SEMIBOLD, "middle"),
        Text(Pt(middle, 7.7), run.length, style.TEXT, anchor="middle"),
    )


def _mark_alone(run: _Run, middle: float, width: float, look: BarLook) -> tuple[Text, ...]:
    """The mark by itself, upright or turned; nothing in a piece that is too small for it."""
    across = _mark_width(run, look)
    half = style.TEXT / 2
    if across <= width - 2 * _INSET:
        at = Pt(middle, BAR / 2 + half)
        return (Text(at, run.mark, style.TEXT, Face.SEMIBOLD, "middle"),)
    if width - 2 * _INSET >= style.TEXT and across <= BAR - 2 * _INSET:
        at = Pt(middle + half, BAR / 2)
        return (Text(at, run.mark, style.TEXT, Face.SEMIBOLD, "middle", turned=True),)
    return ()


def _offcut(stick: Stick, look: BarLook) -> Iterator[Element]:
    """What is left, hatched, and how long it is behind the longest bar; kept where it is usable."""
    left = BEFORE + look.longest + _GAP
    if stick.offcut > ZERO:
        yield _hatched(stick, look)
    if not look.wording.detailed(stick.offcut):
        yield Text(Pt(left, 3.6), "Nothing left", style.TEXT)
        return
    words = "To keep" if stick.usable else "Left over"
    yield Text(Pt(left, 3.6), words, style.TEXT)
    yield Text(Pt(left, 7.6), look.wording.detail(stick.offcut), style.TEXT)


def _hatched(stick: Stick, look: BarLook) -> Group:
    start = look.on_paper(stick.length - stick.offcut)
    corners = box_corners(BEFORE + start, 0, look.on_paper(stick.offcut), BAR)
    area = Polyline(corners, None, closed=True, fill=Fill.WHITE)
    hatch = Segments(diagonal_lines(corners, _HATCH), style.HATCH)
    data = {"length-mm": decimal_mm(stick.offcut)}
    return Group("stick-offcut", (area, hatch), data=data)


def _led_out(
    led: Sequence[_Run], runs: Sequence[_Run], look: BarLook
) -> tuple[float, tuple[Element, ...]]:
    """Labels under the bar for what has none in it, and how much room they take [mm].

    Each is led to its pieces; where they have no room beside each other, all pieces are told in
    words instead, from the left on.
    """
    if not led:
        return 0.0, ()
    widths = [look.typeface.width(run.words, style.TEXT) for run in led]
    taken = sum(widths) + _APART * (len(led) - 1)
    if taken > look.width - BEFORE:
        return _in_words(runs, look)
    middles = [(run.left + run.right) / 2 for run in led]
    places = _spread_out(middles, widths, look.width)
    top = BAR + _LED
    labels: list[Element] = []
    for run, middle, place in zip(led, middles, places, strict=True):
        text = Text(Pt(place, top + style.TEXT), run.words, style.TEXT, anchor="middle")
        foot = BAR + _BRACKET
        leader = Polyline((Pt(middle, foot), Pt(place, top - 0.7)), style.LEADER)
        ends = (Pt(run.left, foot), Pt(run.right, foot))
        labels.append(Group("led-out", (Polyline(ends, style.FINE), leader, text)))
    return _LED + style.TEXT + 0.6, tuple(labels)


def _spread_out(middles: Sequence[float], widths: Sequence[float], right: float) -> list[float]:
    """Where labels of these widths stand, each as near under its pieces as the others let it."""
    before = [0.0]
    for one, other in pairwise(widths):
        before.append(before[-1] + (one + other) / 2 + _APART)
    wishes = [middle - offset for middle, offset in zip(middles, before, strict=True)]
    low, high = BEFORE + widths[0] / 2, right - widths[-1] / 2 - before[-1]
    spots = spread(wishes, 0.0, low, high)
    return [spot + offset for spot, offset in zip(spots, before, strict=True)]


def _in_words(runs: Sequence[_Run], look: BarLook) -> tuple[float, tuple[Element, ...]]:
    told = "From the left: " + "; ".join(run.words for run in runs)
    lines = wrapped(told, look.width - BEFORE, look.typeface)
    if len(lines) > _MOST_LINES:
        lines = [*lines[:_MOST_LINES], "and more: the cutting plan tells all of them."]
    texts = tuple(
        Text(Pt(BEFORE, BAR + 1.4 + style.TEXT + style.LINE_PITCH * number), line, style.TEXT)
        for number, line in enumerate(lines)
    )
    return 1.4 + style.LINE_PITCH * len(lines), (Group("led-out", texts),)
