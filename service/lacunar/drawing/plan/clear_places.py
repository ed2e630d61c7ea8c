"""Clear places on the plan: what is drawn already, and where a word can stand beside a sign.

The paper is cut into square cells, each listing the lines and texts that touch it, so that a place
asks only what is near it.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import cos, floor, pi, sin

from lacunar.drawing import style
from lacunar.drawing.annotation import arrow
from lacunar.drawing.elements import (
    Circle,
    Element,
    Face,
    Fill,
    Polyline,
    Pt,
    Segments,
    Text,
    walk,
)
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.typeface import Typeface

CELL = 8.0
ROUND_SIDES = 48
"""A circle is held as a polygon: of the largest on a plan it comes within a tenth of a mm."""
GAP = 0.9
HEAD = 1.8
LEADER_REACHES = (4.0, 7.0, 11.0, 16.0)
LEADER_WAYS = ((1, -1), (1, 1), (-1, -1), (-1, 1), (1, 0), (-1, 0), (0, -1), (0, 1))
_BESIDE = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (1, -1), (-1, 1), (-1, -1))
_BELOW_BASELINE = 0.27
_SHARE_BEFORE = {"start": 0.0, "middle": 0.5, "end": 1.0}


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle on paper [mm]; `top` is the smaller y."""

    left: float
    top: float
    right: float
    bottom: float

    @classmethod
    def about(cls, center: Pt, width: float, height: float) -> "Box":
        """The rectangle of a size about its center."""
        x, y = width / 2, height / 2
        return cls(center.x - x, center.y - y, center.x + x, center.y + y)

    @classmethod
    def around(cls, points: Sequence[Pt]) -> "Box":
        """The smallest one about points."""
        xs, ys = [at.x for at in points], [at.y for at in points]
        return cls(min(xs), min(ys), max(xs), max(ys))

    @property
    def corners(self) -> tuple[Pt, ...]:
        """Its corners, in order about it."""
        return box_corners(self.left, self.top, self.right - self.left, self.bottom - self.top)

    @property
    def middle(self) -> Pt:
        """Half way across and half way down."""
        return Pt((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def grown(self, by: float) -> "Box":
        """The rectangle with `by` [mm] more on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def within(self, other: "Box") -> bool:
        """Whether it lies in another, edges included."""
        across = other.left <= self.left and self.right <= other.right
        return across and other.top <= self.top and self.bottom <= other.bottom

    def meets(self, other: "Box") -> bool:
        """Whether both have a place inside in common."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def is_passed_by(self, start: Pt, end: Pt) -> bool:
        """Whether a straight line comes inside: clipped to one pair of sides, then the other."""
        enters, leaves = 0.0, 1.0
        for at, way, low, high in (
            (start.x, end.x - start.x, self.left, self.right),
            (start.y, end.y - start.y, self.top, self.bottom),
        ):
            if way == 0:
                if not low < at < high:
                    return False
                continue
            first, second = sorted(((low - at) / way, (high - at) / way))
            enters, leaves = max(enters, first), min(leaves, second)
        return enters < leaves


Line = tuple[Pt, Pt]


class Occupied:
    """Lines and texts on paper; more can be added at any time."""

    def __init__(self, typeface: Typeface, elements: Iterable[Element] = ()) -> None:
        self._typeface = typeface
        self._lines: dict[tuple[int, int], list[Line]] = {}
        self._texts: dict[tuple[int, int], list[Box]] = {}
        self._leaders: dict[tuple[int, int], list[Line]] = {}
        self.add(elements)

    def add(self, elements: Iterable[Element]) -> None:
        """Take up everything that can be seen of some elements."""
        for element in walk(tuple(elements)):
            if isinstance(element, Text):
                area = text_box(element, self._typeface)
                for cell in _cells(area):
                    self._texts.setdefault(cell, []).append(area)
            leader = isinstance(element, Polyline) and element.pen == style.LEADER
            for line in _lines_of(element):
                for cell in _cells(_around(line)):
                    self._lines.setdefault(cell, []).append(line)
                    if leader:
                        self._leaders.setdefault(cell, []).append(line)

    def is_free(self, area: Box) -> bool:
        """Whether neither a line nor a text comes into a rectangle."""
        return self.is_free_of_texts(area) and not any(
            area.is_passed_by(*line) for cell in _cells(area) for line in self._lines.get(cell, ())
        )

    def is_free_of_texts(self, area: Box) -> bool:
        """Whether no text comes into a rectangle."""
        return not any(
            area.meets(text) for cell in _cells(area) for text in self._texts.get(cell, ())
        )

    def crosses_leader(self, line: Line) -> bool:
        """Whether a straight line would pass through a leader."""
        return any(
            lines_cross(line, leader)
            for cell in _cells(_around(line))
            for leader in self._leaders.get(cell, ())
        )

    def crosses_text(self, line: Line) -> bool:
        """Whether a straight line would run through a text."""
        return any(
            text.grown(style.TEXT_CLEARANCE).is_passed_by(*line)
            for cell in _cells(_around(line))
            for text in self._texts.get(cell, ())
        )


def text_box(text: Text, typeface: Typeface) -> Box:
    """The rectangle that a line of text takes up, what hangs below its baseline included."""
    width = typeface.width(text.text, text.height, text.face)
    plain = text.text.isascii() and text.text.upper() == text.text and "," not in text.text
    below = 0.0 if plain else _BELOW_BASELINE * typeface.font_size(text.height)
    before = width * _SHARE_BEFORE[text.anchor]
    if text.turned:
        end = text.at.y + before
        return Box(text.at.x - text.height, end - width, text.at.x + below, end)
    left = text.at.x - before
    return Box(left, text.at.y - text.height, left + width, text.at.y + below)


def _lines_of(element: Element) -> Iterator[Line]:
    match element:
        case Segments():
            yield from element.lines
        case Circle():
            yield from _closed(_polygon(element))
        case Polyline() if element.pen or element.fill is Fill.BLACK:
            if element.closed:
                yield from _closed(element.points)
            else:
                yield from zip(element.points, element.points[1:], strict=False)


def _closed(points: tuple[Pt, ...]) -> Iterator[Line]:
    yield from zip(points, (*points[1:], points[0]), strict=True)


def _polygon(circle: Circle) -> tuple[Pt, ...]:
    turns = (2 * pi * n / ROUND_SIDES for n in range(ROUND_SIDES))
    return tuple(
        circle.center.moved(circle.radius * cos(turn), circle.radius * sin(turn)) for turn in turns
    )


def _around(line: Line) -> Box:
    (start, end) = line
    return Box(min(start.x, end.x), min(start.y, end.y), max(start.x, end.x), max(start.y, end.y))


def _cells(area: Box) -> Iterator[tuple[int, int]]:
    for column in range(floor(area.left / CELL), floor(area.right / CELL) + 1):
        for row in range(floor(area.top / CELL), floor(area.bottom / CELL) + 1):
            yield column, row


@dataclass(frozen=True, slots=True)
class Label:
    """A word to be put by a sign: the sign's box, whether it is round, and where the word may be.

    In a sign that is `outlined` it may stand inside; a leader to one ends in an arrow. `led_out` is
    whether there may be a leader.
    """

    words: str
    sign: Box
    round: bool
    within: Box
    outlined: bool = False
    led_out: bool = True


def place_label(label: Label, busy: Occupied, typeface: Typeface) -> tuple[Element, ...]:
    """The word at the nearest clear place, with a leader where it is off; nothing if none is."""
    size = typeface.width(label.words, style.TEXT, Face.MEDIUM), style.TEXT
    for center, leader in _label_places(label, size):
        at = center.moved(0, style.TEXT / 2)
        word = Text(at, label.words, style.TEXT, Face.MEDIUM, "middle")
        box = text_box(word, typeface).grown(style.TEXT_CLEARANCE)
        if not box.within(label.within) or not busy.is_free(box):
            continue
        if leader and (busy.crosses_text(leader) or busy.crosses_leader(leader)):
            continue
        if leader is None:
            return (word,)
        head = (arrow(*leader, HEAD),) if label.outlined else ()
        return (Polyline(leader, style.LEADER), *head, word)
    return ()


def _label_places(
    label: Label, size: tuple[float, float]
) -> Iterator[tuple[Pt, tuple[Pt, Pt] | None]]:
    """The middles of places for a word, each with the leader it needs there; the best first."""
    wide, high = size
    sign, at = label.sign, label.sign.middle
    half_width, half_height = (sign.right - sign.left) / 2, (sign.bottom - sign.top) / 2
    if label.outlined:
        yield at, None
    for x, y in _BESIDE:
        yield at.moved(x * (half_width + GAP + wide / 2), y * (half_height + GAP + high / 2)), None
    if not label.led_out:
        return
    for reach in LEADER_REACHES:
        for x, y in LEADER_WAYS:
            share = 0.5**0.5 if label.round and x and y else 1.0
            edge = at.moved(x * half_width * share, y * half_height * share)
            end = edge.moved(x * reach, y * reach)
            center = end.moved(x * (wide / 2 + GAP), 0.0 if x else y * (high / 2 + GAP))
            yield center, (edge, end)


def lines_cross(one: Line, other: Line) -> bool:
    """Whether two lines pass through each other."""
    return _aside(one, other[0]) * _aside(one, other[1]) < 0 and (
        _aside(other, one[0]) * _aside(other, one[1]) < 0
    )


def _aside(line: Line, spot: Pt) -> float:
    start, end = line
    return (end.x - start.x) * (spot.y - start.y) - (end.y - start.y) * (spot.x - start.x)
