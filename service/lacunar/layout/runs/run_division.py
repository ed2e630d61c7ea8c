"""Divides one run: where its fixed things stand, how many coffers there are, and every face."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate, pairwise

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.records import ElementKind, Zone
from lacunar.layout.runs.casing_shift import Play, shifts_to_equal
from lacunar.layout.runs.counts import zone_counts
from lacunar.layout.runs.division import ZoneSpace, clear_total, divide, past_beam, past_opening
from lacunar.layout.runs.fixed_things import FixedThing
from lacunar.layout.runs.frame import RunFrame, datum
from lacunar.layout.runs.run_faults import count_faults, place_faults, zone_faults
from lacunar.layout.runs.wall_strips import WallStrip
from lacunar.measure.figure import CountFigure, LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.model.grid import Run

FIXED_CENTER = Rule("center of a shifted beam: its member's, plus the shift", "member + shift")
FIXED_NEAR = Rule("near face of a beam with a given place", "center - width / 2")
BEFORE = Rule("near face: the far face less the width", "far - width")
BEAM_CENTER = Rule("center of a beam", "near + width / 2")


@dataclass(frozen=True, slots=True)
class RunTask:
    """What a run is divided from. Strips are in order from the wall into the room."""

    run: Run
    frame: RunFrame
    beam_width: LengthFigure
    start_strips: tuple[WallStrip, ...]
    end_strips: tuple[WallStrip, ...]
    things: tuple[FixedThing, ...]


@dataclass(frozen=True, slots=True)
class Stretch:
    """One stretch of a run at one end: what it is and both its faces."""

    kind: ElementKind
    near: LengthFigure
    far: LengthFigure


@dataclass(frozen=True, slots=True)
class BeamStretch(Stretch):
    """A beam across the run, with its center and width; a fixed one with its thing and shift."""

    center: LengthFigure
    width: LengthFigure
    thing: FixedThing | None = None
    shift: LengthFigure | None = None


@dataclass(frozen=True, slots=True)
class WallStretch(Stretch):
    """A soffit or wall beam."""

    strip: WallStrip


@dataclass(frozen=True, slots=True)
class DividedRun:
    """A run divided at one end of the run across it, every stretch in order from the datum."""

    zones: tuple[Zone, ...]
    stretches: tuple[Stretch, ...]

    @property
    def beams(self) -> tuple[BeamStretch, ...]:
        """The beams in the run, without those at the walls."""
        return tuple(each for each in self.stretches if isinstance(each, BeamStretch))


@dataclass(frozen=True, slots=True)
class RunPlan:
    """What holds for the whole run, whichever end it is divided at: counts and shifts.

    `centered` and `shifted` are the shifts if every casing stood centered, or were shifted to
    equal; `shifts` are those asked for.
    """

    counts: tuple[CountFigure, ...]
    shifts: tuple[LengthFigure, ...]
    centered: tuple[LengthFigure, ...]
    shifted: tuple[LengthFigure, ...]


def plan_run(task: RunTask) -> RunPlan:
    """Decide how many coffers each zone has and how far each casing is shifted.

    Counts are judged with every casing centered. Raises SpecRefused with every fault of the stage.
    """
    centered = tuple(given(ZERO) for _ in task.things)
    refuse(list(place_faults(task.frame, walls_of(task), task.things)))
    spaces = [end.value - start.value for start, end in _zone_faces(task, centered)]
    width = task.beam_width.value
    counts = zone_counts(task.run.count, task.run.parity, spaces, width)
    numbers = [count.value for count in counts]
    refuse([*count_faults(task.run, numbers), *zone_faults(task.run, spaces, numbers, width)])
    shifted = _shifts(task, spaces, counts, everything=True)
    shifts = _shifts(task, spaces, counts, everything=False)
    return RunPlan(counts, shifts, centered, shifted)


def walls_of(task: RunTask) -> tuple[LengthFigure, LengthFigure]:
    """The faces between which a run is divided: what stands at the walls is left out."""
    start, end = datum(), task.frame.span
    for strip in task.start_strips:
        start = past_beam(start, strip.width.value)
    for strip in task.end_strips:
        end = _before(end, strip.width.value)
    return start, end


def divide_run(task: RunTask, plan: RunPlan) -> DividedRun:
    """Divide a run at one end, by a plan for the whole of it."""
    placed = [_placed(*pair) for pair in zip(task.things, plan.shifts, strict=True)]
    zones = _zones(task, plan)
    stretches: list[Stretch] = list(_start_walls(task))
    for zone, after in zip(zones, [*placed, None], strict=True):
        stretches += _in_zone(zone, task.beam_width)
        if after is not None:
            stretches.append(after)
    stretches += _end_walls(task)
    return DividedRun(zones, tuple(stretches))


def divide_with(task: RunTask, plan: RunPlan, shifts: tuple[LengthFigure, ...]) -> DividedRun:
    """Divide a run as planned but for the shifts, to show what they change."""
    return divide_run(task, replace(plan, shifts=shifts))


def _before(far: LengthFigure, width: Length) -> LengthFigure:
    return BEFORE.gives(far.value - width, far=far.value, width=width)


def _placed(thing: FixedThing, shift: LengthFigure) -> BeamStretch:
    center = thing.center
    if shift.value:
        center = FIXED_CENTER.gives(
            center.value + shift.value, member=center.value, shift=shift.value
        )
    width = thing.width.value
    near = FIXED_NEAR.gives(center.value - width / 2, center=center.value, width=width)
    return BeamStretch(thing.kind, near, past_beam(near, width), center, thing.width, thing, shift)


def _zone_faces(
    task: RunTask, shifts: Sequence[LengthFigure]
) -> list[tuple[LengthFigure, LengthFigure]]:
    start, end = walls_of(task)
    placed = [_placed(*pair) for pair in zip(task.things, shifts, strict=True)]
    starts = [start, *(beam.far for beam in placed)]
    ends = [*(beam.near for beam in placed), end]
    return list(zip(starts, ends, strict=True))


def _weights(run: Run, counts: Sequence[int]) -> list[tuple[Fraction, ...]]:
    """Each zone's part of the run's weights; equal ones where none are given."""
    weights = run.weights or (Fraction(1),) * sum(counts)
    bounds = list(accumulate(counts, initial=0))
    return [weights[first:after] for first, after in pairwise(bounds)]


def _zones(task: RunTask, plan: RunPlan) -> tuple[Zone, ...]:
    weights = _weights(task.run, [count.value for count in plan.counts])
    faces = _zone_faces(task, plan.shifts)
    spaces = [
        ZoneSpace(start, end, count, share, task.run.held)
        for (start, end), count, share in zip(faces, plan.counts, weights, strict=True)
    ]
    width = task.beam_width.value
    return tuple(divide(number, space, width) for number, space in enumerate(spaces, start=1))


def _shifts(
    task: RunTask, spaces: Sequence[Length], counts: Sequence[CountFigure], *, everything: bool
) -> tuple[LengthFigure, ...]:
    """The shift of each fixed thing; `everything` shifts those too that were to be centered."""
    if not any(thing.shifts or everything for thing in task.things):
        return tuple(given(ZERO) for _ in task.things)
    numbers = [count.value for count in counts]
    width = task.beam_width.value
    clears = accumulate(
        clear_total(space, count, width) for space, count in zip(spaces, numbers, strict=True)
    )
    shares = accumulate(sum(part, Fraction(0)) for part in _weights(task.run, numbers))
    limits = [
        thing.shift_limit.value if thing.shifts or everything else ZERO for thing in task.things
    ]
    plays = [Play(*each) for each in zip(clears, shares, [*limits, ZERO], strict=True)]
    return shifts_to_equal(plays[:-1], plays[-1])


def _in_zone(zone: Zone, beam_width: LengthFigure) -> Iterator[Stretch]:
    near = zone.start
    for opening in zone.openings[:-1]:
        far = past_opening(near, opening.value)
        yield Stretch(ElementKind.COFFER, near, far)
        near = past_beam(far, beam_width.value)
        center = BEAM_CENTER.gives(
            far.value + beam_width.value / 2, near=far.value, width=beam_width.value
        )
        yield BeamStretch(ElementKind.BEAM, far, near, center, beam_width)
    yield Stretch(ElementKind.COFFER, near, zone.end)


def _start_walls(task: RunTask) -> Iterator[WallStretch]:
    near = datum()
    for strip in task.start_strips:
        far = past_beam(near, strip.width.value)
        yield WallStretch(strip.kind, near, far, strip)
        near = far


def _end_walls(task: RunTask) -> list[WallStretch]:
    far = task.frame.span
    found = []
    for strip in task.end_strips:
        near = _before(far, strip.width.value)
        found.append(WallStretch(strip.kind, near, far, strip))
        far = near
    return found[::-1]
