"""Walls on the plan: the heavy finish face, a hatched band outward of it, and what is in the wall.

A wall feature breaks the hatch between its jambs. What kind it is shows in the gap: a dashed line
for a door, whose head is below the ceiling; a line for a window's glass; a cross for a fireplace;
one diagonal for a cabinet.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.views.reflected_ceiling_plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.item_records import WallFeatureCheck
from lacunar.model.ceiling_items import FeatureKind
from lacunar.model.room import END_WALL, START_WALL, RunName

HATCH_PITCH = 1.8


@dataclass(frozen=True, slots=True)
class WallOnPaper:
    """A wall across run `on`: where its face is, and which way is out of the room (-1, 1)."""

    name: str
    on: RunName
    face: float
    out: int
    span: float

    def point(self, frame: PlanFrame, along: float, out: float) -> Pt:
        """The paper point so far along the wall and so far out of the room [mm]."""
        return frame.along(self.on, self.face + self.out * out, along)

    def band(self, frame: PlanFrame, first: float, last: float) -> tuple[Pt, ...]:
        """The corners of the hatched band from one place along the wall to another [mm]."""
        start, end = self.point(frame, first, 0.0), self.point(frame, last, WALL_BAND)
        left, top = min(start.x, end.x), min(start.y, end.y)
        return box_corners(left, top, abs(end.x - start.x), abs(end.y - start.y))


def walls_of(frame: PlanFrame) -> tuple[WallOnPaper, ...]:
    """The four walls, counted clockwise from the left."""
    length, width = RunName.LENGTH, RunName.WIDTH
    return (
        WallOnPaper(START_WALL[length], length, 0.0, -1, frame.span(width)),
        WallOnPaper(END_WALL[width], width, frame.span(width), 1, frame.span(length)),
        WallOnPaper(END_WALL[length], length, frame.span(length), 1, frame.span(width)),
        WallOnPaper(START_WALL[width], width, 0.0, -1, frame.span(length)),
    )


def wall_groups(frame: PlanFrame) -> tuple[Group, ...]:
    """Each wall, then each wall feature."""
    walls = walls_of(frame)
    checks = frame.layout.wall_features
    features = tuple(
        _feature(frame, wall, check, number)
        for number, check in enumerate(checks, start=1)
        for wall in walls
        if wall.name == check.wall
    )
    return (*(_wall(frame, wall) for wall in walls), *features)


def edges_on_paper(
    frame: PlanFrame, wall: WallOnPaper, check: WallFeatureCheck
) -> tuple[float, float]:
    """A feature's edges along its wall [mm of paper], no further than the room's corners."""
    near, far = (frame.on_paper(edge.value) for edge in (check.near, check.far))
    return max(near, 0.0), min(far, wall.span)


def _wall(frame: PlanFrame, wall: WallOnPaper) -> Group:
    gaps = [
        edges_on_paper(frame, wall, c) for c in frame.layout.wall_features if c.wall == wall.name
    ]
    lines = tuple(
        line
        for first, last in _between(sorted(gaps), wall.span)
        for line in diagonal_lines(wall.band(frame, first, last), HATCH_PITCH)
    )
    ends = (0.0, wall.span) if wall.out < 0 and wall.on is RunName.LENGTH else (wall.span, 0.0)
    if wall.on is RunName.WIDTH and wall.out > 0:
        ends = (0.0, wall.span)
    face = tuple(wall.point(frame, end, 0.0) for end in ends)
    return Group(
        "wall",
        (Segments(lines, style.HATCH), Polyline(face, style.WALL)),
        id=f"wall-{wall.name}",
        title=f"Wall {wall.name}, finish face",
        data={"wall": wall.name},
    )


def _between(gaps: Sequence[tuple[float, float]], span: float) -> Iterator[tuple[float, float]]:
    """What is left of a wall between the features in it."""
    at = 0.0
    for near, far in gaps:
        if near > at:
            yield at, near
        at = max(at, far)
    if at < span:
        yield at, span


def _feature(frame: PlanFrame, wall: WallOnPaper, check: WallFeatureCheck, number: int) -> Group:
    near, far = edges_on_paper(frame, wall, check)
    jambs = tuple(
        (wall.point(frame, edge, 0.0), wall.point(frame, edge, WALL_BAND)) for edge in (near, far)
    )
    corners = wall.band(frame, near, far)
    return Group(
        "wall-feature",
        (Segments(jambs, style.OBJECT), *feature_mark(check.kind, corners)),
        id=f"wall-feature-{number}",
        title=check.name,
        data={
            "id": check.name,
            "kind": check.kind.value,
            "wall": check.wall,
            "near-mm": decimal_mm(check.near.value),
            "far-mm": decimal_mm(check.far.value),
        },
    )


def feature_mark(kind: FeatureKind, corners: tuple[Pt, ...]) -> tuple[Element, ...]:
    """What stands in the gap of a kind of feature, between the corners of the gap."""
    upper_left, upper_right, lower_right, lower_left = corners
    if kind is FeatureKind.FIREPLACE:
        return (Segments(((upper_left, lower_right), (lower_left, upper_right)), style.FINE),)
    if kind is FeatureKind.CABINET:
        return (Segments(((lower_left, upper_right),), style.FINE),)
    middle = Pt((upper_left.x + lower_right.x) / 2, (upper_left.y + lower_right.y) / 2)
    ends = (Pt(upper_left.x, middle.y), Pt(upper_right.x, middle.y))
    if upper_right.x - upper_left.x < lower_left.y - upper_left.y:
        ends = (Pt(middle.x, upper_left.y), Pt(middle.x, lower_left.y))
    return (Polyline(ends, style.CLEARANCE if kind is FeatureKind.DOOR else style.FINE),)
