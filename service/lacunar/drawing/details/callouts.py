"""Words in a column beside a detail, each led to its place, so that no leader crosses another."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2

from lacunar.drawing import style
from lacunar.drawing.annotation import dot, wrapped
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Text
from lacunar.drawing.typeface import Typeface

GAP = 6.4
"""From the detail to the words [mm]: room for leaders to bend."""
ELBOW = 2.6
ROW_GAP = 1.4


@dataclass(frozen=True, slots=True)
class Callout:
    """A leader's place in the detail, and the words at its other end."""

    target: Pt
    words: str


@dataclass(frozen=True, slots=True)
class Column:
    """Where words stand: their edge next the detail [mm], how wide they may be, on which side.

    `middle` is the height about which the column is spread.
    """

    at: float
    width: float
    middle: float
    left: bool = False


def place_callouts(
    callouts: Sequence[Callout], column: Column, typeface: Typeface
) -> tuple[Element, ...]:
    """Callouts one under the other, in an order in which their leaders do not cross."""
    lines = [wrapped(each.words, column.width, typeface) for each in callouts]
    heights = [len(texts) * style.LINE_PITCH + ROW_GAP for texts in lines]
    y = column.middle - (sum(heights) - ROW_GAP) / 2
    waiting = list(range(len(callouts)))
    drawn: list[Element] = []
    away = 1 if column.left else -1
    while waiting:
        elbow = Pt(column.at + away * ELBOW, y + style.TEXT / 2)
        number = _topmost(waiting, callouts, elbow)
        waiting.remove(number)
        target = callouts[number].target
        line = (target, elbow, Pt(column.at + away * 0.6, elbow.y))
        words = _words(lines[number], Pt(column.at, y), left=column.left)
        drawn.append(Group("leader", (Polyline(line, style.LEADER), dot(target), *words)))
        y += heights[number]
    return tuple(drawn)


def _topmost(waiting: Sequence[int], callouts: Sequence[Callout], elbow: Pt) -> int:
    """The target with all others below its leader: those then stay on the other side of it."""

    def steepness(number: int) -> float:
        target = callouts[number].target
        return atan2(target.y - elbow.y, abs(elbow.x - target.x))

    return min(waiting, key=steepness)


def _words(texts: Sequence[str], at: Pt, *, left: bool) -> tuple[Text, ...]:
    return tuple(
        Text(
            at.moved(0.0, style.TEXT + n * style.LINE_PITCH),
            text,
            style.TEXT,
            anchor="end" if left else "start",
        )
        for n, text in enumerate(texts)
    )
