"""The line that a grid is kept square to: a wall's, or a member's from wall to wall."""

from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, along, distance, snapped, turn
from lacunar.model.room import START_WALL, WALLS, MeasuredTo, Member, Room, RunName
from lacunar.model.survey import Crooked, FourSpots

# The ends of each wall, as places in the four corners, in the direction of the run it lies along.
WALL_ENDS = {"W1": (0, 3), "W2": (3, 2), "W3": (1, 2), "W4": (0, 1)}
# Along which walls a member's place on a run is taped: where the run across starts, where it ends.
_TAPED_ALONG = {RunName.LENGTH: ("W4", "W2"), RunName.WIDTH: ("W1", "W3")}


@dataclass(frozen=True, slots=True)
class ControlLine:
    """A line from `start` to `end` between the corners as surveyed, across the run `run`.

    `approximate` tells that its length, or a place on it, rests on a root that was cut off.
    """

    start: Spot
    end: Spot
    run: RunName
    by_member: bool
    approximate: bool

    def turned(self, spot: Spot, about: Spot) -> Spot:
        """A place, turned about another until this line lies square across its run."""
        way = self.end - self.start
        axis = Spot(way.y, -way.x) if self.run is RunName.LENGTH else way
        long, out = distance(self.start, self.end).length.inches, spot - about
        x, y = (Length.of_inches(each(axis, out) / long) for each in (along, turn))
        return Spot(x, y)


def control_line(room: Room, crooked: Crooked, corners: FourSpots) -> ControlLine:
    """Turn what the grid is to be square to into a line between the finished corners.

    A member's ends are as they were taped: from the wall its run starts at, along the walls where
    the other run starts and ends, or in their direction where it ends short of them.
    """
    if not crooked.by_member:
        start, end = (corners[place] for place in WALL_ENDS[crooked.control])
        run = RunName.LENGTH if crooked.control in ("W1", "W3") else RunName.WIDTH
        rough = distance(start, end).approximate
        return ControlLine(start, end, run, by_member=False, approximate=rough)
    member = next(each for each in room.members if each.name == crooked.control)
    start, end = (snapped(spot) for spot in _member_ends(room, member, corners))
    return ControlLine(start, end, member.on, by_member=True, approximate=True)


def _member_ends(room: Room, member: Member, corners: FourSpots) -> tuple[Spot, Spot]:
    own = START_WALL[member.on]
    first, last = (corners[place] for place in WALL_ENDS[own])
    at_start, at_end = first, last
    if member.starts_at is not None:
        at_start = first + _along(first, last, member.starts_at)
    if member.ends_at is not None:
        at_end = first + _along(first, last, member.ends_at)
    ends = []
    for wall, corner, center in zip(
        _TAPED_ALONG[member.on],
        (at_start, at_end),
        (member.center, member.center_at_end),
        strict=True,
    ):
        from_corner, to_corner = (corners[place] for place in WALL_ENDS[wall])
        finished = center - _finish(room, own)
        ends.append(corner + _along(from_corner, to_corner, finished))
    start, end = ends
    return start, end


def _along(start: Spot, end: Spot, length: Length) -> Spot:
    """The way of a length in the direction from one place to another."""
    return (end - start) * (length / distance(start, end).length)


def _finish(room: Room, wall: str) -> Length:
    """What a wall's finish takes of a place that was taped from the framing."""
    if room.measured_to is MeasuredTo.FINISH or room.wall_finish is None:
        return Length.of_inches(0)
    return room.wall_finish[WALLS.index(wall)]
