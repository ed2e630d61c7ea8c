"""Divides both runs of a ceiling: half way, with nothing built yet."""

from collections.abc import Mapping
from dataclasses import dataclass

from lacunar.layout.backing_records import JoistLines
from lacunar.layout.families import Family
from lacunar.layout.fault_gathering import FaultGathering, refuse
from lacunar.layout.joists import joist_lines
from lacunar.layout.outline.columns import outline_of
from lacunar.layout.outline.rows import Outlined, outlined
from lacunar.layout.outline.walls import Region, region
from lacunar.layout.runs.fixed_things import fixed_things
from lacunar.layout.runs.frame import outlined_frame, run_frame
from lacunar.layout.runs.run_division import RunPlan, RunTask, divide_run, plan_run
from lacunar.layout.runs.run_faults import grid_faults
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.runs.wall_strips import (
    WallStrip,
    wall_conditions,
    wall_strips,
)
from lacunar.layout.survey.crooked_room import crooked_room
from lacunar.layout.survey.square_frame import SquareFrame, square_frame
from lacunar.layout.survey_records import CrookedRoom
from lacunar.measure.length import ZERO
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import END_WALL, START_WALL, RunName


@dataclass(frozen=True, slots=True)
class SetOut:
    """A ceiling half way: both runs divided, nothing built yet."""

    ceiling: Ceiling
    families: Mapping[RunName, Family]
    strips: Mapping[str, tuple[WallStrip, ...]]
    tasks: Mapping[RunName, RunTask]
    plans: Mapping[RunName, RunPlan]
    ends: Mapping[RunName, DividedEnds]
    surveyed: SquareFrame | None
    crooked: CrookedRoom | None
    outlined: Outlined | None


def set_out_runs(
    ceiling: Ceiling, families: Mapping[RunName, Family], faults: FaultGathering
) -> SetOut | None:
    """Turn a decided ceiling into its divided runs; None, with faults kept, where that fails."""
    strips = wall_strips(ceiling.grid, families)
    surveyed = square_frame(ceiling.room)
    outline = faults.attempt(_region, ceiling, families, strips)
    tasks: dict[RunName, RunTask] = {}
    plans: dict[RunName, RunPlan] = {}
    for name in RunName:
        task = faults.attempt(_task, ceiling, families[name], strips, outline or surveyed)
        plan = None if task is None else faults.attempt(plan_run, task)
        if task is not None and plan is not None:
            tasks[name], plans[name] = task, plan
    if len(plans) < len(RunName):
        return None
    refuse(list(grid_faults(*(sum(c.value for c in plans[name].counts) for name in RunName))))
    ends = {name: _both_ends(tasks[name], plans[name]) for name in RunName}
    crooked = crooked_room(ceiling.room, surveyed, strips, (tasks, plans)) if surveyed else None
    within = outlined(outline, ends) if outline else None
    return SetOut(ceiling, families, strips, tasks, plans, ends, surveyed, crooked, within)


def _region(
    ceiling: Ceiling,
    families: Mapping[RunName, Family],
    strips: Mapping[str, tuple[WallStrip, ...]],
) -> Region | None:
    """The room between its walls, where it has other than four."""
    outline = outline_of(ceiling.room)
    if outline is None:
        return None
    return region(ceiling.room, outline, strips, families, wall_conditions(ceiling.grid))


def _task(
    ceiling: Ceiling,
    family: Family,
    strips: Mapping[str, tuple[WallStrip, ...]],
    within: Region | SquareFrame | None,
) -> RunTask:
    if isinstance(within, Region):
        walls = START_WALL[family.run], END_WALL[family.run]
        finish = (within.finish_of(walls[0]), within.finish_of(walls[1]))
        frame = outlined_frame(ceiling.room, family.run, within.spans[family.run], finish)
    else:
        frame = run_frame(ceiling.room, family.run, within.runs[family.run] if within else None)
    return RunTask(
        run=ceiling.grid.run(family.run),
        frame=frame,
        beam_width=family.width,
        start_strips=strips[START_WALL[family.run]],
        end_strips=strips[END_WALL[family.run]],
        things=fixed_things(ceiling, frame, family),
    )


def _both_ends(task: RunTask, plan: RunPlan) -> DividedEnds:
    """A rectangle's run is the same at both ends, so it is divided once."""
    divided = divide_run(task, plan)
    return DividedEnds(task.frame, divided, divided)


def joists_above(set_out: SetOut) -> JoistLines | None:
    """Where the joists lie above the run across them; None where nothing is known of them."""
    joists = set_out.ceiling.room.joists
    if joists is None:
        return None
    frame = set_out.tasks[joists.on].frame
    before = frame.before_start.value if frame.before_start else ZERO
    return joist_lines(joists, frame.span.value, before)
