"""The frame of the control line, and in it the rectangle of the narrowest clear lines.

The grid is laid out in that rectangle as in any square room. What the walls leave outside it is
taken up by what stands at them.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.survey.control_line import WALL_ENDS, ControlLine, control_line
from lacunar.layout.survey.shape import Shape, fold_faults, surveyed_shape
from lacunar.layout.survey_records import CrookedRun
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, crossing, distance, on_grid, settled, snapped
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.room import END_WALL, START_WALL, WALLS, MeasuredTo, Room, RunName
from lacunar.model.survey import Crooked, Excess, FourSpots, GridMode, Survey

CLEAR = Rule(
    "narrowest clear line: the innermost place of the end wall, less that of the start wall",
    "end_wall - start_wall",
)
BEFORE = Rule(
    "how far a start wall lies before the clear rectangle, on the line of its edge across",
    "edge - (from_place + (to_place - from_place) * (at - from_at) / (to_at - from_at))",
)
BEYOND = Rule(
    "how far an end wall lies beyond the clear rectangle, on the line of its edge across",
    "from_place + (to_place - from_place) * (at - from_at) / (to_at - from_at) - edge",
)
MOVED = Rule(
    "moved along the run so that both strips are widened by as much at most: half of what the"
    " widest gap at the end wall is larger than that at the start wall, both unmoved",
    "(widest_at_end - widest_at_start) / 2",
)
ROUNDS = 6
"""So many times is the rectangle moved to share what lies beyond it; each mends a hundredth."""
MEMBER_PLACE = Rule(
    "place of the member that the grid is square to, from the clear line", "turned - clear_start"
)
WALL_TO_WALL = Rule(
    "span from wall to wall: the clear line, and what lies before and beyond it",
    "before + clear + beyond",
)


@dataclass(frozen=True, slots=True)
class SquareFrame:
    """A surveyed room from the clear rectangle's lower left corner, square to the control line.

    `corners` are those between finished faces; `gaps` are how far each wall lies outside the
    rectangle at the start and at the end of the run along it, below zero where excess that was
    shared brings it inside. `member_at` is the place of the member that the grid is square to.
    """

    shape: Shape
    corners: FourSpots
    runs: Mapping[RunName, CrookedRun]
    gaps: Mapping[str, tuple[LengthFigure, LengthFigure]]
    approximate: bool
    member_at: LengthFigure | None = None

    def wall(self, wall: str) -> tuple[Spot, Spot]:
        """A wall's ends, in the direction of the run along it."""
        start, end = WALL_ENDS[wall]
        return self.corners[start], self.corners[end]

    @property
    def square(self) -> bool:
        """Whether every wall lies along the clear rectangle."""
        return not any(gap.value for pair in self.gaps.values() for gap in pair)


def square_frame(room: Room, taken_up: Collection[str] = ()) -> SquareFrame | None:
    """Turn a surveyed room into its frame; None for a room that was not surveyed.

    Parameters: `room`; `taken_up`, the walls where something stands that takes up what lies
    between: excess is shared only between two of them. Raises SpecRefused where the survey
    contradicts itself or leaves no clear rectangle.
    """
    if room.survey is None or room.crooked is None:
        return None
    shape = surveyed_shape(room.survey)
    refuse(list(fold_faults(shape)))
    finished, by_finish = _finished(shape.corners, room)
    control = control_line(room, room.crooked, finished)
    turned, by_turn = _turned(finished, control)
    found = {wall: settled(_innermost(turned, wall, room.survey)) for wall in WALLS}
    inner = {wall: place.length for wall, place in found.items()}
    by_bow = any(place.approximate for place in found.values())
    approximate = shape.approximate or by_finish or by_turn or by_bow
    clear = {name: inner[END_WALL[name]] - inner[START_WALL[name]] for name in RunName}
    if min(clear.values()) <= ZERO:
        raise SpecRefused([_too_crooked(room.crooked)])
    moved = _moved(turned, (inner, clear), room.crooked, taken_up)
    reached = {wall: place + moved[run_across(wall)].value for wall, place in inner.items()}
    low = Spot(reached["W1"], reached["W4"])
    datum, right, top, left = (corner - low for corner in turned)
    corners = (datum, right, top, left)
    gaps = {wall: _gaps(corners, wall, clear, approximate=approximate) for wall in WALLS}
    runs = {name: _run(name, inner, gaps, moved[name], approximate=approximate) for name in RunName}
    member_at = _member_at(control, finished, low)
    return SquareFrame(shape, corners, runs, gaps, approximate, member_at)


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


def _turned(corners: FourSpots, control: ControlLine) -> tuple[FourSpots, bool]:
    """Turn the room about its datum corner until the control line lies along its axis."""
    found = [control.turned(corner, corners[0]) for corner in corners]
    approximate = control.approximate or any(_long(spot) for spot in found)
    datum, right, top, left = (snapped(spot) for spot in found) if approximate else found
    return (datum, right, top, left), approximate


def _member_at(control: ControlLine, corners: FourSpots, low: Spot) -> LengthFigure | None:
    """Where the member lies that the grid is square to: both its ends are at one place."""
    if not control.by_member:
        return None
    at = control.turned(control.start, corners[0])
    place = settled(at.x if control.run is RunName.LENGTH else at.y)
    start = low.x if control.run is RunName.LENGTH else low.y
    rough = control.approximate or place.approximate
    tell = MEMBER_PLACE.approximates if rough else MEMBER_PLACE.gives
    return tell(place.length - start, turned=place.length, clear_start=start)


def run_across(wall: str) -> RunName:
    """The run that a wall lies across."""
    return RunName.LENGTH if wall in ("W1", "W3") else RunName.WIDTH


def _moved(
    turned: FourSpots,
    lines: tuple[Mapping[str, Length], Mapping[RunName, Length]],
    crooked: Crooked,
    taken_up: Collection[str],
) -> Mapping[RunName, LengthFigure]:
    """How far the clear rectangle is moved along each run to share the excess to both ends.

    Moved along one run, it meets the walls of the other at other places; a few rounds settle that.
    """
    inner, clear = lines
    moved = {name: given(ZERO) for name in RunName}
    if crooked.excess is not Excess.SPLIT or crooked.mode is not GridMode.KEEP_SQUARE:
        return moved
    for _ in range(ROUNDS):
        x, y = (moved[name].value for name in RunName)
        low = Spot(inner["W1"] + x, inner["W4"] + y)
        datum, right, top, left = (corner - low for corner in turned)
        gaps = {
            wall: _gaps((datum, right, top, left), wall, clear, approximate=True) for wall in WALLS
        }
        moved = {name: _half_way(name, gaps, moved[name].value, taken_up) for name in RunName}
    return moved


def _half_way(
    name: RunName,
    gaps: Mapping[str, tuple[LengthFigure, LengthFigure]],
    moved: Length,
    taken_up: Collection[str],
) -> LengthFigure:
    """How far to move so that the widest gaps at both walls of a run are alike.

    `gaps` are from where the rectangle is `moved` to already.
    """
    walls = START_WALL[name], END_WALL[name]
    if not all(wall in taken_up for wall in walls):
        return given(ZERO)
    start, end = (max(gap.value for gap in gaps[wall]) for wall in walls)
    start, end = start - moved, end + moved
    return MOVED.approximates(on_grid((end - start) / 2), widest_at_end=end, widest_at_start=start)


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
    across = run_across(wall)
    ends = wall == END_WALL[across]
    edge, outward, rule = (clear[across], 1, BEYOND) if ends else (ZERO, -1, BEFORE)
    start, end = (corners[place] for place in WALL_ENDS[wall])
    first, last = (_across(spot, wall) for spot in (start, end))
    low, high = (_along(spot, wall) for spot in (start, end))
    outside = (
        (at, settled((first + (last - first) * ((at - low) / (high - low)) - edge) * outward))
        for at in (ZERO, clear[across.other])
    )
    near, far = (
        (rule.approximates if approximate or gap.approximate else rule.gives)(
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
    moved: LengthFigure,
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
    return CrookedRun(name, clear, moved, before[0], before[1], spans[0], spans[1])


def _rough(*figures: LengthFigure) -> bool:
    return any(figure.approximate for figure in figures)


def _too_crooked(crooked: Crooked) -> Fault:
    return Fault(
        code="room_too_crooked",
        pointer="/room/survey",
        message=f"The walls leave no rectangle square to {crooked.control}.",
        remedy="Look whether sides or corners were exchanged, or name another control line.",
    )
