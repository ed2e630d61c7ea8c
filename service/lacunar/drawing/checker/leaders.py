"""The point on leaders: none crosses another, and none crosses a dimension line."""

from collections.abc import Iterator

from lacunar.drawing.checker.dimension_lines import dimension_lines
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.shapes import Spot, Stroke, extent
from lacunar.drawing.checker.subject import Subject

MEETING = 0.05
"""How near its end a line may reach another and still only meet it [mm]."""

Line = tuple[str, Stroke]


def leaders_apart(subject: Subject) -> Iterator[Finding]:
    """Point 41: a leader crosses no other leader and no dimension line."""
    sheet = subject.sheet
    leaders: list[Line] = [
        (sheet.place(path.group), stroke)
        for path in sheet.paths
        if path.pen and path.pen.name == "leader"
        for stroke in path.strokes()
    ]
    lines: list[Line] = [
        (each.group.id, Stroke(each.start, each.end, 0.0)) for each in dimension_lines(sheet)
    ]
    for number, (where, stroke) in enumerate(leaders):
        for other, across in (*leaders[number + 1 :], *lines):
            if crosses(stroke, across):
                yield sheet.finding(41, where, f"its leader crosses a line of {other}")


def crosses(one: Stroke, other: Stroke) -> bool:
    """Whether two lines pass through each other, rather than meet at an end of either."""
    if not _near(one, other):
        return False
    sides = (
        _aside(other, one.start) * _aside(other, one.end),
        _aside(one, other.start) * _aside(one, other.end),
    )
    return sides[0] < 0 and sides[1] < 0


def _near(one: Stroke, other: Stroke) -> bool:
    first = extent((one.start, one.end))
    return first.grown(MEETING).overlaps(extent((other.start, other.end)).grown(MEETING))


def _aside(line: Stroke, spot: Spot) -> float:
    """On which side of a line a place is, below 0 on the right; 0 where it is as good as on it."""
    (x1, y1), (x2, y2), _ = line
    length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
    if not length:
        return 0.0
    off = ((x2 - x1) * (spot.y - y1) - (y2 - y1) * (spot.x - x1)) / length
    return off if abs(off) > MEETING else 0.0
