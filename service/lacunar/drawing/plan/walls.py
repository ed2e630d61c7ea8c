"""Walls on the plan: the heavy finish face, a hatched band outward of it, and what is in the wall.

The room may have any number of corners, and its walls any direction: each wall runs clockwise from
corner to corner, and neighboring bands meet in a miter. A wall feature breaks the hatch between its
jambs. What kind it is shows in the gap: a dashed line for a door, whose head is below the ceiling;
a line for a window's glass; a cross for a fireplace; one diagonal for a cabinet.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import behind_wall
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.item_records import WallFeatureCheck
from lacunar.layout.records import Layout
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.model.ceiling_items import FeatureKind
from lacunar.model.room import RunName

HATCH_PITCH = 1.8
BLUNTEST = 0.5
"""How sharp a corner may be before its miter is held back: 1 plus the cosine of its turn."""
THIN = 0.01
"""A hatch thinner than this [mm] is none."""


@dataclass(frozen=True, slots=True)
class WallOnPaper:
    """A wall's face from corner to corner, clockwise; `miters` are its band's outer corners."""

    name: str
    start: Pt
    end: Pt
    miters: tuple[Pt, Pt]

    @property
    def span(self) -> float:
        """The length of its face [mm]."""
        return dist((self.start.x, self.start.y), (self.end.x, self.end.y))

    @property
    def outward(self) -> Pt:
        """The way out of the room, one millimeter of it: left of the way along the wall."""
        long = self.span
        return Pt((self.end.y - self.start.y) / long, (self.start.x - self.end.x) / long)

    def point(self, along: float, out: float) -> Pt:
        """The paper point so far along the wall and so far out of the room [mm]."""
        share, way = along / self.span, self.outward
        x = self.start.x + (self.end.x - self.start.x) * share + way.x * out
        y = self.start.y + (self.end.y - self.start.y) * share + way.y * out
        return Pt(x, y)

    def band(self, first: float, last: float) -> tuple[Pt, ...]:
        """The corners of the hatched band from one place along the wall to another [mm]."""
        near = self.miters[0] if first <= 0.0 else self.point(first, WALL_BAND)
        far = self.miters[1] if last >= self.span else self.point(last, WALL_BAND)
        return (self.point(first, 0.0), self.point(last, 0.0), far, near)


def walls_of(frame: PlanFrame) -> tuple[WallOnPaper, ...]:
    """All walls, clockwise from the one on the left that starts at the datum."""
    corners = [frame.point(corner) for corner in frame.layout.outline]
    clockwise = [corners[0], *corners[:0:-1]]
    count = len(clockwise)
    miters = [
        _miter(clockwise[number - 1], corner, clockwise[(number + 1) % count])
        for number, corner in enumerate(clockwise)
    ]
    names = wall_names(frame.layout)
    return tuple(
        WallOnPaper(
            names[number],
            corner,
            clockwise[(number + 1) % count],
            (miters[number], miters[(number + 1) % count]),
        )
        for number, corner in enumerate(clockwise)
    )


def wall_names(layout: Layout) -> tuple[str, ...]:
    """The names of the walls, clockwise; two in one line have the same."""
    if layout.outlined is not None:
        return tuple(wall.wall for wall in layout.outlined.walls)
    return tuple(f"W{number}" for number in range(1, len(layout.outline) + 1))


def _miter(before: Pt, corner: Pt, after: Pt) -> Pt:
    """Where the outer edges of two neighboring bands meet."""
    one, other = (
        WallOnPaper("", *ends, (corner, corner)).outward
        for ends in ((before, corner), (corner, after))
    )
    blunt = max(1 + one.x * other.x + one.y * other.y, BLUNTEST)
    return corner.moved(
        (one.x + other.x) * WALL_BAND / blunt, (one.y + other.y) * WALL_BAND / blunt
    )


def wall_groups(frame: PlanFrame) -> tuple[Group, ...]:
    """Each wall, then each wall feature."""
    walls = walls_of(frame)
    checks = frame.layout.wall_features
    features = tuple(
        _feature(frame, wall_of(walls, check), check, number)
        for number, check in enumerate(checks, start=1)
    )
    drawn = (_wall(frame, wall, side) for side, wall in enumerate(walls, start=1))
    return (*drawn, *features)


def wall_of(walls: Sequence[WallOnPaper], check: WallFeatureCheck) -> WallOnPaper:
    """The wall a feature is in."""
    if check.side is not None:
        return walls[check.side - 1]
    return next(wall for wall in walls if wall.name == check.wall)


def edges_on_paper(
    frame: PlanFrame, wall: WallOnPaper, check: WallFeatureCheck
) -> tuple[float, float]:
    """A feature's edges along its wall [mm of paper], no further than the room's corners."""
    if check.side is not None and frame.layout.outlined is not None:
        side = frame.layout.outlined.walls[check.side - 1]
        if side.angled:
            return frame.on_paper(check.near.value), frame.on_paper(check.far.value)
        upright = side.on is RunName.LENGTH
        start, end = (at.y if upright else at.x for at in (side.start, side.end))
    else:
        run = run_of_wall(check.wall).other
        start, end = (
            corner.x if run is RunName.LENGTH else corner.y for corner in frame.wall_ends(wall.name)
        )
    first, last = frame.on_paper(start), frame.on_paper(end)
    places = sorted(
        (frame.on_paper(edge.value) - first) / (last - first) * wall.span
        for edge in (check.near, check.far)
    )
    return max(places[0], 0.0), min(places[1], wall.span)


def _wall(frame: PlanFrame, wall: WallOnPaper, side: int) -> Group:
    gaps = [
        edges_on_paper(frame, wall, check)
        for check in frame.layout.wall_features
        if check.wall == wall.name and check.side in (None, side)
    ]
    way, odd = wall.outward, frame.layout.outlined is not None
    lines = tuple(
        line
        for first, last in _between(sorted(gaps), wall.span)
        for line in behind_wall(wall.band(first, last), way, HATCH_PITCH)
        if dist((line[0].x, line[0].y), (line[1].x, line[1].y)) > THIN
    )
    return Group(
        "wall",
        (Segments(lines, style.HATCH), Polyline((wall.start, wall.end), style.WALL)),
        id=f"wall-{wall.name}-{side}" if odd else f"wall-{wall.name}",
        title=f"Wall {wall.name}, finish face",
        data={"wall": wall.name, **({"side": str(side)} if odd else {})},
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
    jambs = tuple((wall.point(edge, 0.0), wall.point(edge, WALL_BAND)) for edge in (near, far))
    (inner, outer), (far_inner, far_outer) = jambs
    return Group(
        "wall-feature",
        (
            Segments(jambs, style.OBJECT),
            *feature_mark(check.kind, (inner, far_inner, far_outer, outer)),
        ),
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
    """What stands in the gap of a kind of feature, between its corners, in order about it.

    The first two lie along the wall.
    """
    one, two, three, four = corners
    if kind is FeatureKind.FIREPLACE:
        return (Segments(((one, three), (four, two)), style.FINE),)
    if kind is FeatureKind.CABINET:
        # The diagonal that rises to the right, whichever way the wall goes.
        rising = min((one, three), (four, two), key=_falls)
        return (Segments((rising,), style.FINE),)
    middles = (_middle(one, four), _middle(two, three))
    return (Polyline(middles, style.CLEARANCE if kind is FeatureKind.DOOR else style.FINE),)


def _falls(line: tuple[Pt, Pt]) -> float:
    """Below zero where a line rises to the right on paper."""
    start, end = line
    return (end.x - start.x) * (end.y - start.y)


def _middle(one: Pt, other: Pt) -> Pt:
    return Pt((one.x + other.x) / 2, (one.y + other.y) / 2)
