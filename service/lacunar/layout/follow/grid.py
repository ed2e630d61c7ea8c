"""A grid that follows the walls, as all others meet it: lines by where they cross two edges.

Each line joins its places on two walls. All else of a layout is told from the clear rectangle, so
a line is told by where it crosses the rectangle's edges, at the start and the end of the other run.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from lacunar.layout.runs.fixed_things import FixedThing
from lacunar.layout.runs.frame import RunFrame
from lacunar.layout.runs.run_division import BeamStretch, DividedRun, RunPlan, RunTask, Stretch
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.survey.along_walls import AlongWalls, Line
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, on_grid
from lacunar.model.room import RunName

AT_EDGE = Rule(
    "where a line that joins both walls crosses an edge of the clear rectangle",
    "from_place + (to_place - from_place) * (edge - from_at) / (to_at - from_at)",
)
FROM_CLEAR = Rule(
    "place from the clear line: from the wall, less how far that lies before it",
    "from_wall - before",
)


@dataclass(frozen=True, slots=True)
class FollowedGrid:
    """Both runs along their walls, and as they lie in the clear rectangle.

    `tasks` and `ends` are told from the rectangle, as in any other room; zones along the wall at
    the start of the other run.
    """

    along: Mapping[RunName, AlongWalls]
    tasks: Mapping[RunName, RunTask]
    ends: Mapping[RunName, DividedEnds]

    @property
    def plans(self) -> Mapping[RunName, RunPlan]:
        """The counts and shifts of each run."""
        return {name: along.plan for name, along in self.along.items()}


def followed_grid(
    along: Mapping[RunName, AlongWalls], clear: Mapping[RunName, RunFrame]
) -> FollowedGrid:
    """Turn runs divided along walls into a grid; `clear` are its runs as the rectangle has them."""
    tasks = {name: _task(along[name], clear[name]) for name in RunName}
    ends = {name: _ends(along[name], tasks[name], clear[name.other]) for name in RunName}
    return FollowedGrid(along, tasks, ends)


def along_run(spot: Spot, run: RunName) -> Length:
    """Where a place lies along a run."""
    return spot.x if run is RunName.LENGTH else spot.y


def at_edge(line: Line, run: RunName, edge: Length) -> LengthFigure:
    """Where a line across a run crosses an edge of the clear rectangle that lies along it."""
    first, last = (along_run(spot, run) for spot in line)
    low, high = (along_run(spot, run.other) for spot in line)
    place = first + (last - first) * ((edge - low) / (high - low))
    return AT_EDGE.approximates(
        on_grid(place), from_place=first, to_place=last, edge=edge, from_at=low, to_at=high
    )


def _task(along: AlongWalls, clear: RunFrame) -> RunTask:
    task = along.at_start.task
    things = tuple(_from_clear(thing, clear) for thing in task.things)
    return replace(task, frame=clear, things=things)


def _from_clear(thing: FixedThing, clear: RunFrame) -> FixedThing:
    """A thing that was placed from the wall, as it lies in the clear rectangle."""
    before, after = clear.before_start, clear.before_end
    if before is None or after is None:
        raise ValueError("the run was not surveyed")
    ends = thing.member_ends
    if ends is not None:
        ends = _moved(ends[0], before), _moved(ends[1], after)
    return replace(thing, center=_moved(thing.center, before), member_ends=ends)


def _moved(place: LengthFigure, before: LengthFigure) -> LengthFigure:
    return FROM_CLEAR.approximates(
        place.value - before.value, from_wall=place.value, before=before.value
    )


def _ends(along: AlongWalls, task: RunTask, across: RunFrame) -> DividedEnds:
    """A run's stretches where their faces cross the edges of the clear rectangle."""
    things = {thing.pointer: thing for thing in task.things}
    divided = []
    for end, edge in ((along.at_start, ZERO), (along.at_end, across.span.value)):
        stretches = tuple(
            _stretch(own, _faces(along, pair, edge), things)
            for own, pair in zip(end.divided.stretches, along.pairs, strict=True)
        )
        divided.append(DividedRun(end.divided.zones, stretches))
    return DividedEnds(task.frame, *divided)


def _faces(
    along: AlongWalls, pair: tuple[Stretch, Stretch], edge: Length
) -> tuple[LengthFigure, LengthFigure, LengthFigure | None]:
    start, end = pair
    near, far = (
        at_edge(along.line(*faces), along.name, edge)
        for faces in ((start.near, end.near), (start.far, end.far))
    )
    center = None
    if isinstance(start, BeamStretch) and isinstance(end, BeamStretch):
        center = at_edge(along.line(start.center, end.center), along.name, edge)
    return near, far, center


def _stretch(
    stretch: Stretch,
    faces: tuple[LengthFigure, LengthFigure, LengthFigure | None],
    things: Mapping[str, FixedThing],
) -> Stretch:
    near, far, center = faces
    if isinstance(stretch, BeamStretch) and center is not None:
        thing = things[stretch.thing.pointer] if stretch.thing else None
        return replace(stretch, near=near, far=far, center=center, thing=thing)
    return replace(stretch, near=near, far=far)
