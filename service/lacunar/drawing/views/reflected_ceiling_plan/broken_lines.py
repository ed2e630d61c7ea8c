"""Extension lines broken about the tags they come upon, as lines are about letters."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from lacunar.drawing.elements import Circle, Element, Group, Polyline, Pt, Segments
from lacunar.drawing.plan.clear_places import Box

APART = 0.8
"""How far a broken line keeps from a tag [mm]."""
SHORTEST = 1.0
"""What is left of a line is drawn from this length on [mm]."""

Line = tuple[Pt, Pt]


def tag_boxes(tag: Group) -> Iterator[Box]:
    """The rectangles about a tag's outlines, its leader left out."""
    for part in tag.children:
        if isinstance(part, Circle) and part.pen is not None:
            yield Box.about(part.center, 2 * part.radius, 2 * part.radius)
        elif isinstance(part, Polyline) and part.closed:
            xs, ys = [at.x for at in part.points], [at.y for at in part.points]
            yield Box(min(xs), min(ys), max(xs), max(ys))


def broken_about(string: Group, boxes: Sequence[Box]) -> Group:
    """A dimension string with its extension lines broken about rectangles."""
    keep_out = [box.grown(APART) for box in boxes]
    return replace(string, children=tuple(_broken(each, keep_out) for each in string.children))


def _broken(part: Element, keep_out: Sequence[Box]) -> Element:
    if not isinstance(part, Group) or part.kind != "extension-lines":
        return part
    return replace(
        part,
        children=tuple(
            replace(each, lines=tuple(_lines(each.lines, keep_out)))
            for each in part.children
            if isinstance(each, Segments)
        ),
    )


def _lines(lines: Sequence[Line], keep_out: Sequence[Box]) -> Iterator[Line]:
    for line in lines:
        left = [line]
        for box in keep_out:
            left = [rest for each in left for rest in _without(each, box)]
        yield from left


def _without(line: Line, box: Box) -> Iterator[Line]:
    """What is left of an upright or level line outside a rectangle."""
    if not box.is_passed_by(*line):
        yield line
        return
    start, end = line
    if start.x == end.x:
        low, high = sorted((start.y, end.y))
        if box.top - low >= SHORTEST:
            yield Pt(start.x, low), Pt(start.x, box.top)
        if high - box.bottom >= SHORTEST:
            yield Pt(start.x, box.bottom), Pt(start.x, high)
        return
    low, high = sorted((start.x, end.x))
    if box.left - low >= SHORTEST:
        yield Pt(low, start.y), Pt(box.left, start.y)
    if high - box.right >= SHORTEST:
        yield Pt(box.right, start.y), Pt(high, start.y)
