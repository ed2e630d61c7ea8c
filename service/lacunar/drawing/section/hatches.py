"""How materials that are cut through are hatched, each with its word: weight and way, never color.

Close slant lines for finish wood, crossed diagonals for framing, lines along the faces for sheet
goods, dots for a finish on walls and ceilings, wide slant lines for what is there already: common
drafting practice (no source). Of two parts that touch, one is hatched another way.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Fill, Pt, Segments
from lacunar.drawing.hatching import diagonal_lines, falling_lines

LINES_APART = 1.1
"""How far apart lines along the faces of sheet goods are [mm]."""
DOTS_APART = 2.4
DOT = 0.2
TRIANGLE = 3
THINNEST = 0.9
"""What is thinner on paper is left blank [mm]."""


class Substance(StrEnum):
    """What something is made of, as far as a hatch tells, in words."""

    FINISH_WOOD = "Finish wood"
    FRAMING = "Rough framing"
    SHEET = "Sheet goods"
    FINISH = "Ceiling finish: gypsum board or plaster"
    EXISTING = "Existing"


class Way(StrEnum):
    """Which way slant lines rise, to the right or to the left."""

    RISING = "rising"
    FALLING = "falling"


@dataclass(frozen=True, slots=True)
class Hatch:
    """A hatch: what it stands for, which way its lines rise and how far they are apart [mm].

    Lines of sheet goods lie along their longer faces, but where they are `level` in any case.
    """

    substance: Substance
    way: Way = Way.RISING
    pitch: float = 1.3
    level: bool = False


def hatched(hatch: Hatch, corners: tuple[Pt, ...]) -> tuple[Element, ...]:
    """An area, told by its corners, filled with its hatch; nothing where it is too thin for one."""
    xs, ys = [at.x for at in corners], [at.y for at in corners]
    if min(max(xs) - min(xs), max(ys) - min(ys)) < THINNEST:
        return ()
    if hatch.substance is Substance.FINISH:
        dots = _dots(min(xs), max(xs), min(ys), max(ys))
        return tuple(Circle(at, DOT, None, Fill.BLACK) for at in dots)
    lines = tuple(_lines(hatch, corners))
    return (Segments(lines, style.HATCH),) if lines else ()


def _lines(hatch: Hatch, corners: tuple[Pt, ...]) -> Iterator[tuple[Pt, Pt]]:
    if hatch.substance is Substance.FRAMING:
        if len(corners) == TRIANGLE:
            middle = Pt((corners[1].x + corners[2].x) / 2, (corners[1].y + corners[2].y) / 2)
            yield corners[0], middle
        else:
            yield corners[0], corners[2]
            yield corners[1], corners[3]
    elif hatch.substance is Substance.SHEET and _is_rectangle(corners):
        yield from _along_faces(corners, hatch.level)
    elif hatch.way is Way.RISING:
        yield from diagonal_lines(corners, hatch.pitch)
    else:
        yield from falling_lines(corners, hatch.pitch)


def _is_rectangle(corners: tuple[Pt, ...]) -> bool:
    """Whether corners are those of something square, from its upper left one on."""
    one, two, three, four = corners
    return one.y == two.y and two.x == three.x and three.y == four.y and four.x == one.x


def _along_faces(corners: tuple[Pt, ...], level: bool) -> Iterator[tuple[Pt, Pt]]:
    """Lines evenly apart along the longer faces of a rectangle, or level ones."""
    upper_left, _, lower_right, _ = corners
    width, height = lower_right.x - upper_left.x, lower_right.y - upper_left.y
    level = level or width >= height
    count = max(1, int((height if level else width) / LINES_APART))
    for number in range(1, count + 1):
        share = number / (count + 1)
        if level:
            start = upper_left.moved(0.0, height * share)
            yield start, start.moved(width, 0.0)
        else:
            start = upper_left.moved(width * share, 0.0)
            yield start, start.moved(0.0, height)


def _dots(left: float, right: float, top: float, bottom: float) -> Iterator[Pt]:
    """Dots in rows, every other one set over by half."""
    rows = max(1, int((bottom - top) / (DOTS_APART * 0.8)))
    for row in range(rows):
        y = top + (bottom - top) * (row + 0.5) / rows
        x = left + DOTS_APART * (0.5 if row % 2 else 1.0)
        while x < right - DOT:
            yield Pt(x, y)
            x += DOTS_APART
