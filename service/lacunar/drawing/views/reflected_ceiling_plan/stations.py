"""Stations on the plan: a cross where the ceiling's height was measured, with its id beside it.

A station whose cross would run through a word, or whose id finds no clear place, is not marked:
the table tells the places of all.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import fitted
from lacunar.drawing.elements import (
    Circle,
    Element,
    Face,
    Group,
    Polyline,
    Pt,
    Segments,
    Text,
    walk,
)
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.level_records import StationLevel
from lacunar.layout.records import Point
from lacunar.model.room import RunName

ARM = 1.2
LONGEST_NAME = 20.0
CLEAR = 0.7
BELOW = 1 / 3
"""How far letters hang below their line, as a part of their height."""
LEAST_OFF = 0.6
REACHES = (LEAST_OFF, 2.0, 4.0, 7.0, 11.0)
DIRECTIONS = ((1, -1), (1, 1), (-1, -1), (-1, 1), (0, -1), (0, 1), (1, 0), (-1, 0))

Line = tuple[Pt, Pt]


@dataclass(frozen=True, slots=True)
class _Box:
    left: float
    top: float
    right: float
    bottom: float

    def grown(self, by: float) -> "_Box":
        return _Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def within(self, other: "_Box") -> bool:
        across = other.left <= self.left and self.right <= other.right
        return across and other.top <= self.top and self.bottom <= other.bottom

    def meets(self, other: "_Box") -> bool:
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom

    def crossed_by(self, line: Line) -> bool:
        """Whether a line passes through, by cutting it off at each side in turn."""
        (a, b), enters, leaves = line, 0.0, 1.0
        for start, end, low, high in (
            (a.x, b.x, self.left, self.right),
            (a.y, b.y, self.top, self.bottom),
        ):
            if start == end:
                if not low < start < high:
                    return False
                continue
            near, far = sorted(((low - start) / (end - start), (high - start) / (end - start)))
            enters, leaves = max(enters, near), min(leaves, far)
        return enters < leaves


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What is on the plan already: lines, and the boxes of words."""

    lines: tuple[Line, ...]
    words: tuple[_Box, ...]

    def near(self, area: _Box) -> "_Drawn":
        """What of it lies in an area."""
        return _Drawn(
            tuple(line for line in self.lines if area.crossed_by(line)),
            tuple(box for box in self.words if area.meets(box)),
        )

    def clear(self, box: _Box) -> bool:
        """Whether nothing runs into a box."""
        return not any(box.meets(word) for word in self.words) and not any(
            box.crossed_by(line) for line in self.lines
        )


def cross(at: Pt) -> Segments:
    """The sign of a station."""
    falling = (at.moved(-ARM, -ARM), at.moved(ARM, ARM))
    rising = (at.moved(-ARM, ARM), at.moved(ARM, -ARM))
    return Segments((falling, rising), style.OBJECT)


def station_marks(
    frame: PlanFrame, drawn: Sequence[Element], typeface: Typeface
) -> tuple[Group, ...]:
    """A cross and an id for every station that has room among what is drawn already."""
    if frame.layout.levels is None:
        return ()
    there = _on_paper(drawn, typeface)
    crosses = {
        number: (station, cross(frame.point(Point(station.x.value, station.y.value))))
        for number, station in enumerate(frame.layout.levels.stations, start=1)
    }
    free = {
        number: pair
        for number, pair in crosses.items()
        if not any(word.crossed_by(arm) for word in there.words for arm in pair[1].lines)
    }
    lines = (*there.lines, *(arm for _, sign in free.values() for arm in sign.lines))
    words = list(there.words)
    marks: list[Group] = []
    for number, (station, sign) in free.items():
        placed = _label(frame, station, _Drawn(lines, tuple(words)), typeface)
        if placed is None:
            lines = tuple(line for line in lines if line not in sign.lines)
            continue
        box, label = placed
        words.append(box)
        marks.append(
            Group(
                "station",
                (sign, *label),
                id=f"station-{number}",
                title=f"Station {station.id}",
                data={
                    "id": station.id,
                    "x-mm": decimal_mm(station.x.value),
                    "y-mm": decimal_mm(station.y.value),
                },
            )
        )
    return tuple(marks)


def _label(
    frame: PlanFrame, station: StationLevel, drawn: _Drawn, typeface: Typeface
) -> tuple[_Box, tuple[Element, ...]] | None:
    """The station's id at the nearest clear place within the room, with a leader if it is off."""
    at = frame.point(Point(station.x.value, station.y.value))
    shown = fitted(station.id, LONGEST_NAME, style.TEXT, typeface, Face.SEMIBOLD)
    wide = typeface.width(shown, style.TEXT, Face.SEMIBOLD)
    reach = ARM + max(REACHES) + wide + style.TEXT
    near = drawn.near(_Box(at.x, at.y, at.x, at.y).grown(reach))
    room = _Box(
        frame.origin.x,
        frame.origin.y - frame.span(RunName.WIDTH),
        frame.origin.x + frame.span(RunName.LENGTH),
        frame.origin.y,
    )
    for off, (right, down) in ((off, way) for off in REACHES for way in DIRECTIONS):
        out = ARM + off
        half = style.TEXT * (1 + BELOW) / 2
        x = at.x + right * (out + wide / 2)
        y = at.y + down * (out + half)
        box = _Box(x - wide / 2, y - half, x + wide / 2, y + half)
        if not box.grown(CLEAR).within(room) or not near.clear(box.grown(CLEAR)):
            continue
        text = Text(Pt(x, y - half + style.TEXT), shown, style.TEXT, Face.SEMIBOLD, "middle")
        if off == LEAST_OFF:
            return box, (text,)
        leader = (at, Pt(x - right * (wide / 2 + CLEAR), y - down * (half + CLEAR)))
        if not any(word.grown(CLEAR).crossed_by(leader) for word in near.words):
            return box, (Polyline(leader, style.LEADER), text)
    return None


def _on_paper(drawn: Sequence[Element], typeface: Typeface) -> _Drawn:
    lines: list[Line] = []
    words: list[_Box] = []
    for element in walk(tuple(drawn)):
        lines.extend(_lines(element))
        if isinstance(element, Text):
            words.append(_word(element, typeface))
        elif isinstance(element, Circle):
            around = element.center.x, element.center.y
            words.append(_Box(*around, *around).grown(element.radius))
    return _Drawn(tuple(lines), tuple(words))


def _lines(element: Element) -> Iterator[Line]:
    if isinstance(element, Segments):
        yield from element.lines
    elif isinstance(element, Polyline) and element.pen is not None:
        ends = element.points[1:] + (element.points[:1] if element.closed else ())
        yield from zip(element.points, ends, strict=False)


def _word(text: Text, typeface: Typeface) -> _Box:
    """The box of a line of text, with what hangs below its baseline."""
    wide = typeface.width(text.text, text.height, text.face)
    before = {"start": 0.0, "middle": wide / 2, "end": wide}[text.anchor]
    if text.turned:
        return _Box(
            text.at.x - text.height,
            text.at.y + before - wide,
            text.at.x + text.height * BELOW,
            text.at.y + before,
        )
    left = text.at.x - before
    return _Box(left, text.at.y - text.height, left + wide, text.at.y + text.height * BELOW)
