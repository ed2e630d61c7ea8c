"""Columns in a room: their faces as walls that the room goes round, and what they meet."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, count

from lacunar.layout.outline.wall import Wall
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import ORIGIN, Spot
from lacunar.measure.polygon import (
    Polygon,
    area,
    contains,
    edges,
    extent,
    outside,
    overlap,
)
from lacunar.model.faults import Fault
from lacunar.model.outline import Outline
from lacunar.model.room import MeasuredTo, Room, RunName


@dataclass(frozen=True, slots=True)
class StandingColumn:
    """A column in the room: its corners counter-clockwise, and its faces as walls.

    Going along a face from its start, the room is to the right, as along any wall.
    """

    name: str
    number: int
    corners: Polygon
    faces: tuple[Wall, ...]

    def within(self, run: RunName, near: Length, far: Length) -> bool:
        """Whether it lies between two places along a run."""
        low, high = self.reach(run)
        return near <= low and high <= far

    def reach(self, run: RunName) -> tuple[Length, Length]:
        """From where to where it goes along a run."""
        low, high = extent(self.corners)
        return (low.x, high.x) if run is RunName.LENGTH else (low.y, high.y)


def outline_of(room: Room) -> Outline | None:
    """The outline of a room that has one, or that has four square walls and columns in it."""
    if room.outline is not None or not room.columns:
        return room.outline
    low, high = ORIGIN, Spot(room.length, room.width)
    points = (low, Spot(low.x, high.y), high, Spot(high.x, low.y))
    return Outline(sides=(), points=points, diagonals=(), tolerance=ZERO, walls=())


def standing_columns(
    room: Room, finish: tuple[Length | None, Length | None], sides: int
) -> tuple[StandingColumn, ...]:
    """Turn the columns of a room into how they stand in it.

    Parameters: `room`; `finish` of W1 and W4, from whose framing places were measured where the
    room was; `sides`, the number of its walls' sides, from which those of columns go on.
    """
    numbers = count(sides + 1)
    shift = ORIGIN
    if room.measured_to is MeasuredTo.FRAMING:
        shift = Spot(finish[0] or ZERO, finish[1] or ZERO)
    found = []
    for number, column in enumerate(room.columns):
        corners = tuple(at - shift for at in column.corners)
        faces = tuple(Wall.of_column(column.name, next(numbers), line) for line in edges(corners))
        found.append(StandingColumn(column.name, number, corners, faces))
    return tuple(found)


def column_faults(columns: Sequence[StandingColumn], free: Polygon) -> Iterator[Fault]:
    """Faults of columns that do not stand free between what is at the walls, or meet."""
    for column in columns:
        inside = all(contains(free, corner) for corner in column.corners)
        if not inside or overlap(free, column.corners) != area(column.corners):
            yield Fault(
                code="column_at_wall",
                pointer=f"/room/columns/{column.number}",
                message=f"{column.name} meets a wall, or what stands at one.",
                remedy="Tell a column at a wall as a part of the outline, or let nothing stand at"
                " the wall beside it.",
                figures={"column": column.name},
            )
    for one, other in combinations(columns, 2):
        if _meet(one.corners, other.corners):
            yield Fault(
                code="columns_meet",
                pointer=f"/room/columns/{other.number}",
                message=f"{one.name} and {other.name} touch or overlap.",
                remedy="Tell them as one column, by its corners.",
                figures={"column": one.name, "other": other.name},
            )


def _meet(one: Polygon, other: Polygon) -> bool:
    touching = [contains(one, at) for at in other] + [contains(other, at) for at in one]
    return any(touching) or bool(overlap(one, other))


def near(columns: Sequence[StandingColumn], polygon: Polygon) -> list[StandingColumn]:
    """The columns that may take something of a polygon."""
    return [each for each in columns if boxes_touch(extent(each.corners), extent(polygon))]


def boxes_touch(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    """Whether two upright rectangles touch or overlap."""
    return (
        one[0].x <= other[1].x
        and other[0].x <= one[1].x
        and one[0].y <= other[1].y
        and other[0].y <= one[1].y
    )


def around(polygon: Polygon, columns: Sequence[StandingColumn]) -> tuple[Polygon, ...]:
    """Turn a polygon into what columns leave of it, in pieces that touch along edges."""
    pieces: tuple[Polygon, ...] = (polygon,)
    for column in columns:
        pieces = tuple(part for each in pieces for part in outside(each, column.corners))
    return pieces
