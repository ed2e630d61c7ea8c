"""The control line and the one square to it: what a laser is set up on before any mark is made.

Both stand off their walls by a round length, clear of what lies along these. In a grid that follows
the walls nothing is square to anything, and there are none.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Group, Polyline, Pt
from lacunar.drawing.hatching import outside_box
from lacunar.drawing.plan.clear_places import Box, Label, Occupied, place_label
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import across_rings
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.room import END_WALL, START_WALL, RunName

OFFSET = {Units.INCH: Length.of_inches(12), Units.MILLIMETER: Length.of_millimeters(300)}
"""How far the lines are snapped off their walls."""
RING = 1.6


@dataclass(frozen=True, slots=True)
class LaserLine:
    """A line across a run: its wall, how far off that it is, and where that is along the run."""

    run: RunName
    wall: str
    offset: Length
    at: Length


def control_wall(layout: Layout) -> str:
    """The wall that the grid is square to; the lower one where none is told."""
    crooked = layout.crooked
    if crooked is None or crooked.square or crooked.control_by != "wall":
        return START_WALL[RunName.WIDTH]
    return crooked.control or START_WALL[RunName.WIDTH]


def laser_lines(layout: Layout, units: Units) -> tuple[LaserLine, ...]:
    """The control line, then the one square to it; none where the grid follows the walls."""
    if layout.followed is not None:
        return ()
    walls = [*START_WALL.items(), *END_WALL.items()]
    control = next(
        ((run, wall) for run, wall in walls if wall == control_wall(layout)),
        (RunName.WIDTH, START_WALL[RunName.WIDTH]),
    )
    square = control[0].other
    offset = OFFSET[units]
    found = []
    for run, wall in (control, (square, START_WALL[square])):
        span = layout.run(run).span.at_start.value
        at = offset if wall == START_WALL[run] else span - offset
        found.append(LaserLine(run, wall, offset, at))
    return tuple(found)


def drawn_lasers(frame: PlanFrame, units: Units, tags: Sequence[tuple[Pt, ...]]) -> Iterator[Group]:
    """Both lines from wall to wall, broken about tags, and a ring where a laser stands."""
    lines = laser_lines(frame.layout, units)
    for line in lines:
        parts = _in_room(frame, line)
        for box in tags:
            parts = outside_box(parts, box)
        yield Group(
            "laser-line",
            tuple(Polyline(part, style.CONTROL) for part in parts),
            id=f"laser-line-{line.run.value}",
            data={
                "on": line.run.value,
                "wall": line.wall,
                "offset-mm": decimal_mm(line.offset),
                "at-mm": decimal_mm(line.at),
            },
        )
    if lines:
        yield Group("laser", (Circle(_crossing(frame, lines), RING, style.OBJECT),), id="laser")


def laser_words(
    frame: PlanFrame, units: Units, busy: Occupied, typeface: Typeface
) -> Iterator[Group]:
    """What stands where the lines cross, beside it where there is room: the notes say it too."""
    lines = laser_lines(frame.layout, units)
    if not lines:
        return
    (left, right), (low, high) = (frame.reach(run) for run in RunName)
    room = Box(
        frame.origin.x + left, frame.origin.y - high, frame.origin.x + right, frame.origin.y - low
    )
    at = Box.about(_crossing(frame, lines), 2 * RING, 2 * RING)
    label = Label("LASER", at, round=True, within=room)
    if placed := place_label(label, busy, typeface):
        yield Group("laser-words", placed, id="laser-words")


def _crossing(frame: PlanFrame, lines: Sequence[LaserLine]) -> Pt:
    one, other = lines
    return frame.along(one.run, frame.on_paper(one.at), frame.on_paper(other.at))


def _in_room(frame: PlanFrame, line: LaserLine) -> tuple[tuple[Pt, Pt], ...]:
    """The stretches of a line that lie in the room."""
    at = frame.on_paper(line.at)
    if frame.layout.outlined is None:
        start, end = frame.from_wall_to_wall(line.run, line.at)
        return ((frame.along(line.run, at, start), frame.along(line.run, at, end)),)
    ring = [frame.point(corner) for corner in frame.layout.outline]
    return tuple(across_rings([ring], line.run, frame.along(line.run, at, 0.0)))
