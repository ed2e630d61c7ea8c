"""The frame of the control line, and in it the rectangle of the narrowest clear lines.

The grid is laid out in that rectangle as in any square room. What the walls leave outside it is
taken up by what stands at them.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.survey.shape import Shape, fold_faults, surveyed_shape
from lacunar.layout.survey_records import CrookedRun
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, crossing, distance, settled, snapped, turn
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.room import END_WALL, START_WALL, WALLS, MeasuredTo, Room, RunName
from lacunar.model.survey import Crooked, FourSpots, Survey, Wall

CLEAR = Rule(
    "narrowest clear line: the innermost place of the end wall, less that of the start wall",
    "end_wall - start_wall",
)
GAP = Rule(
    "how far a wall lies from the clear rectangle, on the line of its edge across",
    "abs(edge - (from_place + (to_place - from_place) * (at - from_at) / (to_at - from_at)))",
)
WALL_TO_WALL = Rule(
    "span from wall to wall: the clear line, and what lies before and beyond it",
    "before + clear + beyond",
)

# The ends of each wall, as places in the four corners, in the direction of the run it lies along.
WALL_ENDS = {"W1": (0, 3), "W2": (3, 2), "W3": (1, 2), "W4": (0, 1)}


@dataclass(frozen=True, slots=True)
class SquareFrame:
    """A surveyed room from the clear rectangle's lower left corner, square to the control line.

    `corners` are those between finished faces; `gaps` are how far each wall lies outside the
    rectangle at the start and at the end of the run along it.
    """

    shape: Shape
    corners: FourSpots
    runs: Mapping[RunName, CrookedRun]
    gaps: Mapping[str, tuple[LengthFigure, LengthFigure]]
    approximate: bool

    def wall(self, wall: str) -> tuple[Spot, Spot]:
        """A wall's ends, in the direction of the run along it."""
        start, end = WALL_ENDS[wall]
        return self.corners[start], self.corners[end]

    @property
    def square(self) -> bool:
        """Whether every wall lies along the clear rectangle."""
        return not any(gap.value for pair in self.gaps.values() for gap in pair)


def square_frame(room: Room) -> SquareFrame | None:
    """Turn a surveyed room into its frame; None for a room that was not surveyed.

    Raises SpecRefused where the survey contradicts itself or leaves no clear rectangle.
    """
    if room.survey is None or room.crooked is None:
        return None
    shape = surveyed_shape(room.survey)
    refuse(list(fold_faults(shape)))
    finished, by_finish = _finished(shape.corners, room)
    turned, by_turn = _turned(finished, room.crooked)
    reached = {wall: settled(_innermost(turned, wall, room.survey)) for wall in WALLS}
    inner = {wall: place.length for wall, place in reached.items()}
    by_bow = any(place.approximate for place in reached.values())
    approximate = shape.approximate or by_finish or by_turn or by_bow
    low = Spot(inner["W1"], inner["W4"])
    clear = {name: inner[END_WALL[name]] - inner[START_WALL[name]] for name in RunName}
    if min(clear.values()) <= ZERO:
        raise SpecRefused([_too_crooked(room.crooked)])
    datum, right, top, left = (corner - low for corner in turned)
    corners = (datum, right, top, left)
    gaps = {wall: _gaps(corners, wall, clear, approximate=approximate) for wall in WALLS}
    runs = {name: _run(name, inner, gaps, approximate=approximate) for name in RunName}
    return SquareFrame(shape, corners, runs, gaps, approximate)


def _finished(corners: FourSpots, room: Room) -> tuple[FourSpots, bool]:
    """Move each wall's line inward by its finish, and cross the lines anew."""
    if room.measured_to is MeasuredTo.FINISH or room.wall_finish is None:
        return corners, False
    finish = dict(zip(WALLS, room.wall_finish, strict=True))
    lines, approximate = {}, False
    for wall, (start, end) in {"W4": (0, 1), "W3": (1, 2), "W2": (2, 3), "W1": (3, 0)}.items():
        way = corners[end] - corners[start]
        long = distance(corners[start], corners[end])
        inward = Spot(-way.y, way.x) * (finish[wall] / long.length)
        lines[wall] = (corners[start] + inward, corners[end] + inward)
        approximate = approximate or long.approximate
    met = [crossing(lines[one], lines[other]) for one, other in _MEETING]
    approximate = approximate or any(_long(spot) for spot in met)
    datum, right, top, left = (snapped(spot) for spot in met) if approximate else met
    return (datum, right, top, left), approximate


_MEETING = (("W4", "W1"), ("W3", "W4"), ("W2", "W3"), ("W1", "W2"))


def _turned(corners: FourSpots, crooked: Crooked) -> tuple[FourSpots, bool]:
    """Turn the room about its datum corner until the control line lies along its axis."""
    start, end = WALL_ENDS[crooked.control]
    way = corners[end] - corners[start]
    axis = way if crooked.control in (Wall.W2, Wall.W4) else Spot(way.y, -way.x)
    long = distance(corners[start], corners[end])
    found = []
    for corner in corners:
        out = corner - corners[0]
        x = Length.of_inches(along(axis, out) / long.length.inches)
        y = Length.of_inches(turn(axis, out) / long.length.inches)
        found.append(Spot(x, y))
    approximate = long.approximate or any(_long(spot) for spot in found)
    datum, right, top, left = (snapped(spot) for spot in found) if approximate else found
    return (datum, right, top, left), approximate


def _long(spot: Spot) -> bool:
    return settled(spot.x).approximate or settled(spot.y).approximate


def _innermost(corners: FourSpots, wall: str, survey: Survey) -> Length:
    """The place of a wall furthest into the room, across its run: at an end, or on its bow.

    A bow is taken as a parabola of the middle's height m over the straight line, whose ends differ
    by t: it is highest at (t + 4 m) / 8 m of the way, if that lies between the ends.
    """
    start, end = (_across(corners[place], wall) for place in WALL_ENDS[wall])
    inward = 1 if wall in ("W1", "W4") else -1
    bow = survey.bows[WALLS.index(wall)]
    return furthest_in(start * inward, end * inward, bow) * inward


def furthest_in(start: Length, end: Length, bow: Length) -> Length:
    """How far into the room [length] a wall reaches whose ends do by `start` and `end`.

    Parameters: `bow`, how far its middle stands off the line between them, above zero inward.
    """
    lean = end - start
    if bow > ZERO and abs(lean) < bow * 4:
        share = (lean + bow * 4) / (bow * 8)
        return start + lean * share + bow * (4 * share * (1 - share))
    return max(start, end)


def _across(spot: Spot, wall: str) -> Length:
    return spot.x if wall in ("W1", "W3") else spot.y


def _along(spot: Spot, wall: str) -> Length:
    return spot.y if wall in ("W1", "W3") else spot.x


def _gaps(
    corners: FourSpots, wall: str, clear: Mapping[RunName, Length], *, approximate: bool
) -> tuple[LengthFigure, LengthFigure]:
    """How far a wall lies outside the rectangle, at the two edges across it."""
    across = RunName.LENGTH if wall in ("W1", "W3") else RunName.WIDTH
    edge = clear[across] if wall == END_WALL[across] else ZERO
    start, end = (corners[place] for place in WALL_ENDS[wall])
    first, last = (_across(spot, wall) for spot in (start, end))
    low, high = (_along(spot, wall) for spot in (start, end))
    outside = (
        (at, settled(abs(edge - (first + (last - first) * ((at - low) / (high - low))))))
        for at in (ZERO, clear[across.other])
    )
    near, far = (
        (GAP.approximates if approximate or gap.approximate else GAP.gives)(
            gap.length,
            edge=edge,
            from_place=first,
            to_place=last,
            at=at,
            from_at=low,
            to_at=high,
        )
        for at, gap in outside
    )
    return near, far


def _run(
    name: RunName,
    inner: Mapping[str, Length],
    gaps: Mapping[str, tuple[LengthFigure, LengthFigure]],
    *,
    approximate: bool,
) -> CrookedRun:
    start, end = inner[START_WALL[name]], inner[END_WALL[name]]
    tell = CLEAR.approximates if approximate else CLEAR.gives
    clear = tell(end - start, end_wall=end, start_wall=start)
    before, beyond = gaps[START_WALL[name]], gaps[END_WALL[name]]
    spans = [
        (WALL_TO_WALL.approximates if _rough(one, clear, other) else WALL_TO_WALL.gives)(
            one.value + clear.value + other.value,
            before=one.value,
            clear=clear.value,
            beyond=other.value,
        )
        for one, other in zip(before, beyond, strict=True)
    ]
    return CrookedRun(name, clear, before[0], before[1], spans[0], spans[1])


def _rough(*figures: LengthFigure) -> bool:
    return any(figure.approximate for figure in figures)


def _too_crooked(crooked: Crooked) -> Fault:
    return Fault(
        code="room_too_crooked",
        pointer="/room/survey",
        message=f"The walls leave no rectangle square to {crooked.control}.",
        remedy="Look whether sides or corners were exchanged, or name another control line.",
    )
