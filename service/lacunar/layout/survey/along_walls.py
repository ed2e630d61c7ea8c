"""A run divided along both walls that it goes along, each by itself, and the lines that join both.

Places are from the corner at the start wall, along the wall; a line joins its place on one wall to
that on the other.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lacunar.layout.families import Family
from lacunar.layout.runs.fixed_things import fixed_things
from lacunar.layout.runs.frame import run_frame
from lacunar.layout.runs.run_division import (
    DividedRun,
    RunPlan,
    RunTask,
    Stretch,
    divide_run,
    plan_run,
)
from lacunar.layout.runs.wall_strips import WallStrip
from lacunar.layout.survey.report import apart
from lacunar.layout.survey.square_frame import SquareFrame
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, snapped
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import RunName

Line = tuple[Spot, Spot]
Strips = tuple[tuple[WallStrip, ...], tuple[WallStrip, ...]]

WALLS_ALONG = {RunName.LENGTH: ("W4", "W2"), RunName.WIDTH: ("W1", "W3")}
"""The walls along which a run is divided: at the start and at the end of the run across it."""


@dataclass(frozen=True, slots=True)
class AlongWall:
    """A run divided along one wall by itself; `rough` where its places are snapped."""

    task: RunTask
    divided: DividedRun
    wall: Line
    rough: bool

    def at(self, place: Length) -> Spot:
        """A place along the wall, as a place in the room."""
        start, end = self.wall
        spot = start + (end - start) * (place / self.task.frame.span.value)
        return snapped(spot) if self.rough else spot


@dataclass(frozen=True, slots=True)
class AlongWalls:
    """A run divided along the walls at which the run across it starts and ends."""

    name: RunName
    plan: RunPlan
    at_start: AlongWall
    at_end: AlongWall

    @property
    def pairs(self) -> Iterator[tuple[Stretch, Stretch]]:
        """Each stretch at both walls."""
        return zip(self.at_start.divided.stretches, self.at_end.divided.stretches, strict=True)

    def line(self, start: LengthFigure, end: LengthFigure) -> Line:
        """The line that joins two places on both walls."""
        return self.at_start.at(start.value), self.at_end.at(end.value)


def along_walls(ceiling: Ceiling, family: Family, strips: Strips, frame: SquareFrame) -> AlongWalls:
    """Divide a run along both walls by themselves, with the counts that the shorter one gives.

    Raises SpecRefused where a wall is too short for what is asked.
    """
    tasks = [
        _task(ceiling, family, strips, apart(*frame.wall(wall), approximate=frame.approximate))
        for wall in WALLS_ALONG[family.run]
    ]
    # Both are held against the rules; what the shorter wall has room for, the other has too.
    planned = sorted(
        ((task.frame.span.value, plan_run(task)) for task in tasks), key=lambda pair: pair[0]
    )
    plan, rough = planned[0][1], frame.approximate or not frame.square
    start, end = (
        AlongWall(task, divide_run(task, plan), frame.wall(wall), rough)
        for task, wall in zip(tasks, WALLS_ALONG[family.run], strict=True)
    )
    return AlongWalls(family.run, plan, start, end)


def _task(ceiling: Ceiling, family: Family, strips: Strips, span: LengthFigure) -> RunTask:
    """The task of a run on one wall's own line: places are as they are taped along it."""
    frame = replace(run_frame(ceiling.room, family.run), span=span)
    return RunTask(
        run=ceiling.grid.run(family.run),
        frame=frame,
        beam_width=family.width,
        start_strips=strips[0],
        end_strips=strips[1],
        things=fixed_things(ceiling, frame, family),
    )
