"""Divides both runs of a ceiling: half way, with nothing built yet."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from lacunar.layout.backing_records import JoistLines
from lacunar.layout.families import Family
from lacunar.layout.fault_gathering import FaultGathering, refuse
from lacunar.layout.follow.grid import FollowedGrid, followed_grid
from lacunar.layout.joists import joist_lines
from lacunar.layout.outline.columns import outline_of
from lacunar.layout.outline.rows import Outlined, outlined
from lacunar.layout.outline.walls import Region, region
from lacunar.layout.runs.fixed_things import fixed_things
from lacunar.layout.runs.frame import RunFrame, outlined_frame, run_frame
from lacunar.layout.runs.run_division import RunPlan, RunTask, divide_run, plan_run
from lacunar.layout.runs.run_faults import grid_faults
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.runs.wall_strips import (
    WallStrip,
    wall_conditions,
    wall_strips,
)
from lacunar.layout.survey.along_walls import AlongWalls, along_walls
from lacunar.layout.survey.crooked_room import crooked_room
from lacunar.layout.survey.modes import Grids
from lacunar.layout.survey.square_frame import SquareFrame, square_frame
from lacunar.layout.survey_records import CrookedRoom
from lacunar.measure.length import ZERO
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import END_WALL, START_WALL, Room, RunName
from lacunar.model.survey import GridMode


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
    following: FollowedGrid | None = None


def set_out_runs(
    ceiling: Ceiling, families: Mapping[RunName, Family], faults: FaultGathering
) -> SetOut | None:
    """Turn a decided ceiling into its divided runs; None, with faults kept, where that fails."""
    strips = wall_strips(ceiling.grid, families)
    taken_up = {wall for wall, standing in strips.items() if standing}
    surveyed = square_frame(ceiling.room, taken_up)
    if surveyed is not None:
        return _surveyed(Built(ceiling, families, strips), surveyed, faults)
    built = Built(ceiling, families, strips)
    outline = faults.attempt(_region, ceiling, families, strips)
    found = _planned(built, outline, faults)
    if found is None:
        return None
    tasks, plans = found
    _refuse_grid(plans)
    ends = {name: _both_ends(tasks[name], plans[name]) for name in RunName}
    within = outlined(outline, ends) if outline else None
    return SetOut(ceiling, families, strips, tasks, plans, ends, None, None, within)


@dataclass(frozen=True, slots=True)
class Built:
    """A ceiling with its families of beams, and what stands at its walls."""

    ceiling: Ceiling
    families: Mapping[RunName, Family]
    strips: Mapping[str, tuple[WallStrip, ...]]


Planned = tuple[Mapping[RunName, RunTask], Mapping[RunName, RunPlan]]


def _planned(
    built: Built, within: Region | SquareFrame | None, faults: FaultGathering
) -> Planned | None:
    """The tasks and plans of both runs, square to each other; None where one fails."""
    tasks: dict[RunName, RunTask] = {}
    plans: dict[RunName, RunPlan] = {}
    for name in RunName:
        family = built.families[name]
        task = faults.attempt(_task, built.ceiling, family, built.strips, within)
        plan = None if task is None else faults.attempt(plan_run, task)
        if task is not None and plan is not None:
            tasks[name], plans[name] = task, plan
    return (tasks, plans) if len(plans) == len(RunName) else None


def _refuse_grid(plans: Mapping[RunName, RunPlan]) -> None:
    refuse(list(grid_faults(*(sum(c.value for c in plans[name].counts) for name in RunName))))


def _surveyed(built: Built, frame: SquareFrame, faults: FaultGathering) -> SetOut | None:
    """A surveyed room set out, both ways as far as each has room; faults are of the chosen one."""
    crooked, aside = built.ceiling.room.crooked, FaultGathering()
    follows = crooked is not None and crooked.mode is GridMode.FOLLOW_WALLS and not frame.square
    planned = _planned(built, frame, aside if follows else faults)
    along = _along(built, frame, faults if follows else aside)
    tasks, plans = planned or ({}, {})
    ends = {name: _both_ends(tasks[name], plans[name]) for name in tasks}
    following = None
    if follows and along is not None:
        clear = {name: _frame(built.ceiling.room, name, frame) for name in RunName}
        following = followed_grid(along, clear)
        tasks, plans, chosen = following.tasks, following.plans, following.ends
    elif not follows and planned is not None:
        chosen = ends
    else:
        return None
    _refuse_grid(plans)
    grids = Grids({name: each.at_start for name, each in ends.items()} or None, along)
    room, strips = crooked_room(built.ceiling.room, frame, built.strips, grids), built.strips
    runs = (tasks, plans, chosen)
    return SetOut(built.ceiling, built.families, strips, *runs, frame, room, None, following)


def _along(
    built: Built, frame: SquareFrame, faults: FaultGathering
) -> Mapping[RunName, AlongWalls] | None:
    """Both runs divided along their walls; None where one has no room there."""
    found: dict[RunName, AlongWalls] = {}
    for name in RunName:
        strips = built.strips[START_WALL[name]], built.strips[END_WALL[name]]
        family = built.families[name]
        along = faults.attempt(along_walls, built.ceiling, family, strips, frame)
        if along is not None:
            found[name] = along
    return found if len(found) == len(RunName) else None


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
        frame = _frame(ceiling.room, family.run, within)
    return RunTask(
        run=ceiling.grid.run(family.run),
        frame=frame,
        beam_width=family.width,
        start_strips=strips[START_WALL[family.run]],
        end_strips=strips[END_WALL[family.run]],
        things=fixed_things(ceiling, frame, family),
    )


def _frame(room: Room, name: RunName, within: SquareFrame | None) -> RunFrame:
    """A run's frame; in a room that is square to a member, with that member's one place."""
    frame = run_frame(room, name, within.runs[name] if within else None)
    if within is None or within.member_at is None or room.crooked is None:
        return frame
    member = next(each for each in room.members if each.name == room.crooked.control)
    if member.on is not name:
        return frame
    return replace(frame, kept_to=(member.name, within.member_at))


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
