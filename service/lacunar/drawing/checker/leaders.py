"""The points on leaders: none crosses another or a dimension line, and each begins at its tag."""

from collections.abc import Iterator
from math import dist

from lacunar.drawing.checker.dimension_lines import dimension_lines
from lacunar.drawing.checker.records import Finding, GroupRead, Path, SheetRead
from lacunar.drawing.checker.shapes import Box, Spot, Stroke, extent, nearest
from lacunar.drawing.checker.subject import Subject

MEETING = 0.05
"""How near its end a line may reach another and still only meet it [mm]."""
AT_TAG = 0.3
"""How far from a tag's outline its leader may begin [mm]."""

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


def leaders_begin_at_tags(subject: Subject) -> Iterator[Finding]:
    """Point 84: a tag's leader begins at the tag's outline, not short of it and not inside."""
    sheet = subject.sheet
    for tag in sheet.of_kind("tag"):
        paths = sheet.own_paths(tag)
        leaders = [each for each in paths if each.pen and each.pen.name == "leader"]
        for leader in (each for each in leaders if not each.closed):
            ends = [spot for stroke in leader.strokes() for spot in (stroke.start, stroke.end)]
            off = _least_off(sheet, tag, paths, ends)
            if off is not None and off > AT_TAG:
                yield sheet.finding(84, tag.id, f"its leader begins {off:.2f} mm from it")


def _least_off(
    sheet: SheetRead, tag: GroupRead, paths: list[Path], ends: list[Spot]
) -> float | None:
    """How far the nearest end of a leader is from a tag's outline; None for a tag without one."""
    rings = [ring for ring in sheet.rings_in(tag) if ring.pen]
    boxes = [path.around for path in paths if path.closed]
    offs = [abs(dist(end, ring.center) - ring.radius) for end in ends for ring in rings]
    offs += [_off_box(box, end) for end in ends for box in boxes]
    return min(offs, default=None)


def _off_box(box: Box, spot: Spot) -> float:
    """How far a place is from the edge of a box, outside it or inside."""
    inside = min(spot.x - box.left, box.right - spot.x, spot.y - box.top, box.bottom - spot.y)
    return inside if inside > 0 else nearest(box, spot)


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
