"""Clear places on the plan: where a word can stand beside a sign without lying on anything."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Face, Polyline, Pt, Segments, Text, walk
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.model.room import RunName

CLEAR = 0.7
BELOW = 1 / 3
"""How far letters hang below their line, as a part of their height."""
LEAST_OFF = 0.6
REACHES = (LEAST_OFF, 2.0, 4.0, 7.0, 11.0)
DIRECTIONS = ((1, -1), (1, 1), (-1, -1), (-1, 1), (0, -1), (0, 1), (1, 0), (-1, 0))

Line = tuple[Pt, Pt]


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on paper, by its sides [mm], y down."""

    left: float
    top: float
    right: float
    bottom: float

    @classmethod
    def about(cls, at: Pt, wide: float, high: float) -> "Box":
        """The rectangle of a size about a point."""
        return cls(at.x - wide / 2, at.y - high / 2, at.x + wide / 2, at.y + high / 2)

    @property
    def middle(self) -> Pt:
        """The point in the middle."""
        return Pt((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def grown(self, by: float) -> "Box":
        """Larger on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def within(self, other: "Box") -> bool:
        """Whether it lies in another."""
        across = other.left <= self.left and self.right <= other.right
        return across and other.top <= self.top and self.bottom <= other.bottom

    def meets(self, other: "Box") -> bool:
        """Whether it lies on another."""
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
class Drawn:
    """What is on the plan already: lines, and the boxes of words."""

    lines: tuple[Line, ...]
    words: tuple[Box, ...]

    def near(self, area: Box) -> "Drawn":
        """What of it lies in an area."""
        return Drawn(
            tuple(line for line in self.lines if area.crossed_by(line)),
            tuple(box for box in self.words if area.meets(box)),
        )

    def clear(self, box: Box) -> bool:
        """Whether nothing runs into a box."""
        return not any(box.meets(word) for word in self.words) and not any(
            box.crossed_by(line) for line in self.lines
        )


@dataclass(frozen=True, slots=True)
class Label:
    """A word to be put beside a sign: the sign's middle, how far it reaches, and where to stay."""

    at: Pt
    words: str
    reach: float
    within: Box


def place_label(
    label: Label, drawn: Drawn, typeface: Typeface
) -> tuple[Box, tuple[Element, ...]] | None:
    """The word at the nearest clear place, with a leader if it is off; None where there is none."""
    at = label.at
    wide = typeface.width(label.words, style.TEXT, Face.SEMIBOLD)
    farthest = label.reach + max(REACHES) + wide + style.TEXT
    near = drawn.near(Box(at.x, at.y, at.x, at.y).grown(farthest))
    for off, (right, down) in ((off, way) for off in REACHES for way in DIRECTIONS):
        out = label.reach + off
        half = style.TEXT * (1 + BELOW) / 2
        x = at.x + right * (out + wide / 2)
        y = at.y + down * (out + half)
        box = Box(x - wide / 2, y - half, x + wide / 2, y + half)
        if not box.grown(CLEAR).within(label.within) or not near.clear(box.grown(CLEAR)):
            continue
        text = Text(Pt(x, y - half + style.TEXT), label.words, style.TEXT, Face.SEMIBOLD, "middle")
        if off == LEAST_OFF:
            return box, (text,)
        leader = (at, Pt(x - right * (wide / 2 + CLEAR), y - down * (half + CLEAR)))
        if not any(word.grown(CLEAR).crossed_by(leader) for word in near.words):
            return box, (Polyline(leader, style.LEADER), text)
    return None


def room_on_paper(frame: PlanFrame) -> Box:
    """The room between its finished walls, as drawn."""
    left, bottom = frame.origin.x, frame.origin.y
    along, up = (frame.span(run) for run in (RunName.LENGTH, RunName.WIDTH))
    return Box(left, bottom - up, left + along, bottom)


def on_paper(drawn: Sequence[Element], typeface: Typeface) -> Drawn:
    """What is drawn, as lines and the boxes of words and rings."""
    lines: list[Line] = []
    words: list[Box] = []
    for element in walk(tuple(drawn)):
        lines.extend(_lines(element))
        if isinstance(element, Text):
            words.append(_word(element, typeface))
        elif isinstance(element, Circle):
            around = element.center.x, element.center.y
            words.append(Box(*around, *around).grown(element.radius))
    return Drawn(tuple(lines), tuple(words))


def _lines(element: Element) -> Iterator[Line]:
    if isinstance(element, Segments):
        yield from element.lines
    elif isinstance(element, Polyline) and element.pen is not None:
        ends = element.points[1:] + (element.points[:1] if element.closed else ())
        yield from zip(element.points, ends, strict=False)


def _word(text: Text, typeface: Typeface) -> Box:
    """The box of a line of text, with what hangs below its baseline."""
    wide = typeface.width(text.text, text.height, text.face)
    before = {"start": 0.0, "middle": wide / 2, "end": wide}[text.anchor]
    if text.turned:
        return Box(
            text.at.x - text.height,
            text.at.y + before - wide,
            text.at.x + text.height * BELOW,
            text.at.y + before,
        )
    left = text.at.x - before
    return Box(left, text.at.y - text.height, left + wide, text.at.y + text.height * BELOW)
