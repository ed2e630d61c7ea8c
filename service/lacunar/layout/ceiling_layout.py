"""Sets out a whole ceiling: the one function other stages call."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from lacunar.layout.backing.ceiling_backing import backing
from lacunar.layout.backing.lines import SetOutBeams
from lacunar.layout.backing.weights import HungPanel
from lacunar.layout.beams.drops import Drops, DropTask, drops
from lacunar.layout.beams.headroom import floor_faults, headroom
from lacunar.layout.beams.heights import heights
from lacunar.layout.beams.profile_book import (
    ProfileBook,
    beam_orders,
    family_orders,
    profile_book,
    wall_order,
)
from lacunar.layout.beams.through import CrossedRun, pieces, stops, through_family
from lacunar.layout.board_records import BoardLayout
from lacunar.layout.cautions import cautions
from lacunar.layout.families import Family, beam_families
from lacunar.layout.fault_gathering import FaultGathering, refuse
from lacunar.layout.mouldings.coffer_mouldings import MouldingTask, mouldings
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.panels.boards import board_layout
from lacunar.layout.panels.sheet_goods import PanelRun, panels
from lacunar.layout.panels.sheet_rips import sheet_rips
from lacunar.layout.records import Beam, BeamPiece, Layout, PanelFit, Point, WallBeam
from lacunar.layout.runs.casing_choices import casing_choices
from lacunar.layout.runs.coffers import coffers
from lacunar.layout.runs.fixed_things import FixedThing, fixed_things
from lacunar.layout.runs.frame import run_frame
from lacunar.layout.runs.marks import run_marks
from lacunar.layout.runs.run_division import RunPlan, RunTask, divide_run, plan_run
from lacunar.layout.runs.run_faults import grid_faults
from lacunar.layout.runs.run_records import DividedEnds, beam_record, run_layout, wall_beams
from lacunar.layout.runs.wall_strips import WallStrip, run_of_wall, wall_strips
from lacunar.layout.survey.crooked_room import crooked_room
from lacunar.layout.survey.square_frame import SquareFrame, square_frame
from lacunar.layout.survey_records import CrookedRoom
from lacunar.measure.length import ZERO
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import END_WALL, START_WALL, WALLS, RunName


@dataclass(frozen=True, slots=True)
class _SetOut:
    """A ceiling half way: both runs divided, nothing built yet."""

    ceiling: Ceiling
    families: Mapping[RunName, Family]
    strips: Mapping[str, tuple[WallStrip, ...]]
    tasks: Mapping[RunName, RunTask]
    plans: Mapping[RunName, RunPlan]
    ends: Mapping[RunName, DividedEnds]
    surveyed: SquareFrame | None
    crooked: CrookedRoom | None


def lay_out(ceiling: Ceiling) -> Layout:
    """Turn a decided ceiling into where everything stands.

    Raises SpecRefused with every fault of the stage that fails: beam widths; then both runs
    together with the beams' stock; then what is built on them.

    >>> from lacunar.measure.length import Length
    >>> from lacunar.model.assumptions import resolve
    >>> from lacunar.model.spec import CeilingSpec, RoomSpec
    >>> room = RoomSpec(Length.of_feet(16), Length.of_feet(12), Length.of_feet(9))
    >>> layout = lay_out(resolve(CeilingSpec(room)).ceiling)
    >>> len(layout.coffers), layout.coffers[0].length.value  # half beams: 192/4 - 7 = 144/3 - 7
    (12, Length(41 in))
    """
    families = beam_families(ceiling.beams)
    faults = FaultGathering()
    set_out = _divide(ceiling, families, faults)
    if set_out is None:
        _judge_boxes(ceiling, families, faults)
        faults.refuse_if_any()
        raise AssertionError("runs that cannot be divided leave faults")
    book = _build(set_out, faults)
    faults.refuse_if_any()
    return _layout(set_out, book)


def _divide(
    ceiling: Ceiling, families: Mapping[RunName, Family], faults: FaultGathering
) -> _SetOut | None:
    strips = wall_strips(ceiling.grid, families)
    surveyed = square_frame(ceiling.room)
    tasks: dict[RunName, RunTask] = {}
    plans: dict[RunName, RunPlan] = {}
    for name in RunName:
        task = faults.attempt(_task, ceiling, families[name], strips, surveyed)
        plan = None if task is None else faults.attempt(plan_run, task)
        if task is not None and plan is not None:
            tasks[name], plans[name] = task, plan
    if len(plans) < len(RunName):
        return None
    refuse(list(grid_faults(*(sum(c.value for c in plans[name].counts) for name in RunName))))
    ends = {name: _both_ends(tasks[name], plans[name]) for name in RunName}
    crooked = crooked_room(ceiling.room, surveyed, strips, (tasks, plans)) if surveyed else None
    return _SetOut(ceiling, families, strips, tasks, plans, ends, surveyed, crooked)


def _task(
    ceiling: Ceiling,
    family: Family,
    strips: Mapping[str, tuple[WallStrip, ...]],
    surveyed: SquareFrame | None,
) -> RunTask:
    frame = run_frame(ceiling.room, family.run, surveyed.runs[family.run] if surveyed else None)
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


def _judge_boxes(
    ceiling: Ceiling, families: Mapping[RunName, Family], faults: FaultGathering
) -> None:
    """Find what is wrong with the beams themselves, though the runs could not be divided."""
    stack = panel_stack(ceiling.panel)
    none_cased: dict[RunName, tuple[FixedThing, ...]] = dict.fromkeys(RunName, ())
    depths = drops(DropTask(ceiling.beams.depth, list(families.values()), none_cased, stack))
    profile_book(family_orders(families, depths), stack, faults)


def _used_families(set_out: _SetOut) -> list[Family]:
    """The families that have a beam anywhere, at a wall or between."""
    return [
        family
        for name, family in set_out.families.items()
        if set_out.ends[name].at_start.beams
        or set_out.tasks[name].start_strips
        or set_out.tasks[name].end_strips
    ]


def _drops(set_out: _SetOut) -> Drops:
    casings = {
        name: [thing for thing in task.things if thing.member is not None]
        for name, task in set_out.tasks.items()
    }
    stack = panel_stack(set_out.ceiling.panel)
    depth = set_out.ceiling.beams.depth
    return drops(DropTask(depth, _used_families(set_out), casings, stack))


def _build(set_out: _SetOut, faults: FaultGathering) -> ProfileBook:
    depths = _drops(set_out)
    families = set_out.families
    orders = [
        order
        for name in RunName
        for order in beam_orders(set_out.ends[name], families[name], depths)
    ]
    for wall in WALLS:
        family = families[run_of_wall(wall)]
        orders += [(strip.id, wall_order(strip, family, depths)) for strip in set_out.strips[wall]]
    return profile_book(orders, panel_stack(set_out.ceiling.panel), faults)


def _layout(set_out: _SetOut, book: ProfileBook) -> Layout:
    ceiling, ends = set_out.ceiling, set_out.ends
    clearances = headroom(ceiling.room, book.profiles)
    refuse(list(floor_faults(clearances)))
    divided = {name: ends[name].at_start for name in RunName}
    found = coffers(divided[RunName.LENGTH], divided[RunName.WIDTH])
    panel_runs = {name: PanelRun(divided[name], set_out.families[name].box) for name in RunName}
    runs = {name: run_layout(ends[name]) for name in RunName}
    profiles = {profile.id: profile for profile in book.profiles}
    beams = SetOutBeams(runs, tuple(_beams(set_out, book)), _wall_beams(ends, book), profiles)
    fitted = panels(ceiling.panel, panel_runs, found)
    boards = board_layout(ceiling.panel, panel_runs, found)
    layout = Layout(
        ceiling=ceiling,
        outline=_outline(set_out),
        length=runs[RunName.LENGTH],
        width=runs[RunName.WIDTH],
        beams=beams.beams,
        wall_beams=beams.wall_beams,
        coffers=found,
        profiles=book.profiles,
        panels=fitted,
        mouldings=mouldings(MouldingTask(ceiling, runs, book.profiles, found)),
        boards=boards,
        sheet_rips=sheet_rips(book.profiles, ceiling.stock.kerf),
        marks=tuple(
            marks
            for name in RunName
            for marks in run_marks(ends[name], set_out.families[name].box, ceiling.mark_to)
        ),
        headroom=clearances,
        heights=heights(ceiling, clearances, runs, beams.beams),
        backing=backing(ceiling, beams, tuple(_hung(fitted, boards))),
        casing_choices=tuple(
            choice
            for name in RunName
            for choice in casing_choices(set_out.tasks[name], set_out.plans[name], ends[name])
        ),
        cautions=(),
        crooked=set_out.crooked,
    )
    return replace(layout, cautions=tuple(cautions(layout)))


def _hung(fitted: tuple[PanelFit, ...], boards: BoardLayout | None) -> Iterator[HungPanel]:
    """What is to be weighed of the panels, whatever they are made of."""
    for panel in fitted:
        yield HungPanel(len(panel.coffers), panel.length.value, panel.width.value)
    for field in boards.fields if boards else ():
        yield HungPanel(field.fields.value, field.length.value, field.courses.across.value)


def _outline(set_out: _SetOut) -> tuple[Point, ...]:
    if set_out.surveyed:
        return tuple(Point(corner.x, corner.y) for corner in set_out.surveyed.corners)
    ends = set_out.ends
    length = ends[RunName.LENGTH].frame.span.value
    width = ends[RunName.WIDTH].frame.span.value
    return Point(ZERO, ZERO), Point(length, ZERO), Point(length, width), Point(ZERO, width)


def _wall_beams(ends: Mapping[RunName, DividedEnds], book: ProfileBook) -> tuple[WallBeam, ...]:
    found = [beam for name in RunName for beam in wall_beams(ends[name], book.of)]
    ids = list(book.of)
    return tuple(sorted(found, key=lambda beam: ids.index(beam.id)))


def _beams(set_out: _SetOut, book: ProfileBook) -> Iterator[Beam]:
    """Every beam with its pieces, which beams of a family that are stopped alike share."""
    ends = set_out.ends
    runs = {name: CrossedRun.of(name, ends[name].at_start) for name in RunName}
    through = through_family(set_out.ceiling.beams.through, runs)
    for name in RunName:
        along = runs[name.other]
        cut: dict[tuple[int, ...], tuple[BeamPiece, ...]] = {}
        for beam in ends[name].beams:
            stopping = tuple(
                index
                for index, crossing in enumerate(along.crossed)
                if stops(crossing, beam[1], family_runs_through=through is name.other)
            )
            if stopping not in cut:
                cut[stopping] = pieces(along, [along.crossed[index] for index in stopping])
            yield beam_record(beam, name, book.of[beam[0]], cut[stopping])
