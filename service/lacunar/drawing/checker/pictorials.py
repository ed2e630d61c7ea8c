"""Points on pictures: every line lies on an edge of what is laid out, at that edge's height."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist, hypot

from lacunar.drawing.checker.pictorial_edges import EdgeBook
from lacunar.drawing.checker.pictorial_facts import Line, Place
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject

OFF = 0.04
"""How far a line may lie off its edge on paper [mm]: coordinates are written to a thousandth."""
LEVEL = 0.01
"""Heights are written to a thousandth of a millimeter of the room."""


@dataclass(frozen=True, slots=True)
class _Picture:
    """Where the datum stands, and how far a millimeter along each axis goes on paper."""

    datum: Spot
    length: Place
    width: Place
    height: Place

    def place(self, spot: Spot, level: float) -> Place:
        """Where in the room a spot of the picture lies, at a height."""
        right = spot.x - self.datum.x - self.height[0] * level
        down = spot.y - self.datum.y - self.height[1] * level
        (a, c), (b, d) = self.length, self.width
        whole = a * d - b * c
        return (right * d - b * down) / whole, (a * down - right * c) / whole

    @property
    def size(self) -> float:
        """The most that a millimeter of the room is on paper."""
        return max(hypot(*self.length), hypot(*self.width))


def edges_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 110: each line of the ceiling from below lies on an edge of what it says it is of.

    That is at a height where the beam, coffer, wall or column has edges, and along one of these.
    """
    sheet, known = subject.sheet, subject.facts.pictorial
    for view in sheet.of_kind("pictorial"):
        picture = _picture(subject, view)
        groups = list(sheet.of_kind("edges", view))
        if picture is None or known is None or not groups:
            yield sheet.finding(110, view.id, "has no axes, no datum or no lines to go by")
            continue
        book = EdgeBook(subject.facts, known)
        for group in groups:
            message = _fault(subject, book, picture, group)
            if message:
                yield sheet.finding(110, group.id, f"{group.data.get('of')}: {message}")
        shown = {group.data.get("of") for group in groups}
        for beam in (*subject.facts.beams, *subject.facts.wall_beams):
            if beam.id not in shown:
                yield sheet.finding(110, view.id, f"nothing of {beam.id} is to be seen")


def _picture(subject: Subject, view: GroupRead) -> _Picture | None:
    rings = [
        ring
        for group in subject.sheet.of_kind("datum", view)
        for ring in subject.sheet.rings_in(group)
    ]
    try:
        axes = [_pair(view.data[f"{name}-axis"]) for name in ("length", "width", "height")]
    except (KeyError, ValueError):
        return None
    return _Picture(rings[0].center, *axes) if len(rings) == 1 else None


def _pair(text: str) -> Place:
    right, down = (float(number) for number in text.split())
    return right, down


def _fault(subject: Subject, book: EdgeBook, picture: _Picture, group: GroupRead) -> str:
    """What is wrong with a group of lines; empty where they lie as they should."""
    try:
        low, high = (float(group.data[name]) for name in ("low-mm", "high-mm"))
    except (KeyError, ValueError):
        return "does not say at which heights its lines are"
    of, kind = group.data.get("of", ""), group.data.get("kind", "")
    heights = book.heights(kind, of)
    level = abs(high - low) <= LEVEL
    if not heights or not min(heights) - LEVEL <= low <= high <= max(heights) + LEVEL:
        return f"its lines are at {low} to {high} mm, beyond where that is"
    if level and min(abs(low - each) for each in heights) > LEVEL:
        return f"its lines are at {low} mm, where that has no edge"
    at_low, at_high = (book.lines(kind, of, height) for height in (low, high))
    for path in subject.sheet.paths_in(group):
        start, end = (
            picture.place(spot, height)
            for spot, height in zip((path.spots[0], path.spots[-1]), (low, high), strict=True)
        )
        if level:
            on = _along_one(at_low, (start, end), picture)
        else:
            on = _along_one(at_low, (start,), picture) and _along_one(at_high, (end,), picture)
        if not on:
            return f"a line at {low} to {high} mm lies on none of its edges"
    return ""


def _along_one(lines: Sequence[Line], places: Sequence[Place], picture: _Picture) -> bool:
    """Whether all places lie on one of the lines, as far as can be seen on paper."""
    return any(all(_off(line, at) * picture.size <= OFF for at in places) for line in lines)


def _off(line: Line, at: Place) -> float:
    """How far a place lies off a line that goes on at both ends [mm]."""
    (ax, ay), (bx, by) = line
    long = dist((ax, ay), (bx, by))
    return (
        abs((bx - ax) * (at[1] - ay) - (by - ay) * (at[0] - ax)) / long
        if long
        else dist(at, line[0])
    )
