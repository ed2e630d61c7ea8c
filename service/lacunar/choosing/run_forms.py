"""Each run divided by itself, with every number of coffers: what can be told without a layout."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest
from math import isqrt
from typing import TypeVar

from lacunar.choosing.asked import Asked, Limits
from lacunar.choosing.candidates import Candidate, RunChoice, spec_of, wall_choices
from lacunar.layout.backing_records import JoistLines
from lacunar.layout.families import beam_families
from lacunar.layout.fault_gathering import FaultGathering
from lacunar.layout.items.places import PlacedItem, placed_items
from lacunar.layout.records import ElementKind
from lacunar.layout.runs.counts import opening_of
from lacunar.layout.runs.run_division import (
    DividedRun,
    RunTask,
    divide_run,
    plan_run,
    walls_of,
)
from lacunar.layout.set_out_runs import SetOut, joists_above, set_out_runs
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.ceiling import Ceiling
from lacunar.model.ceiling_items import WallFeature
from lacunar.model.choosing_limits import COMBINATIONS, COUNTS_OF_A_RUN
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.grid import CoffersInAll, Parity
from lacunar.model.item_rules import run_along
from lacunar.model.limits import OPENING
from lacunar.model.room import END_WALL, RunName
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec

Kind = TypeVar("Kind")


@dataclass(frozen=True, slots=True)
class RunForm:
    """One run divided: its choice, its openings, and what its beams do along it.

    `meets` is how many ceiling items with a place of their own its beams come too near;
    `between_joists` how many beams along the joists lie on none; `off_center` how far from the
    features to be centered on the middle of what is over them lies, of the worst one.
    """

    choice: RunChoice
    coffers: int
    smallest: Length
    largest: Length
    meets: int
    between_joists: int
    off_center: Length


@dataclass(frozen=True, slots=True)
class Forms:
    """All forms of both runs for one width of beam; `thinned` says that counts were left out."""

    beam_width: Length | None
    length: tuple[RunForm, ...]
    width: tuple[RunForm, ...]
    thinned: bool


@dataclass(frozen=True, slots=True)
class _Along:
    """What a run's beams are held against, besides the limits."""

    items: tuple[PlacedItem, ...]
    joists: JoistLines | None
    features: tuple[WallFeature, ...]


class FormBook:
    """Forms of all widths, and the faults of what could not even be divided."""

    def __init__(self, asked: Asked) -> None:
        self._asked = asked
        self.faults: list[Fault] = []

    def forms(self) -> Iterator[Forms]:
        """The forms of each width that is tried."""
        widths: tuple[Length | None, ...] = self._asked.limits.widths or (None,)
        for width in widths:
            found: dict[RunName, dict[RunChoice, RunForm]] = {run: {} for run in RunName}
            thinned = False
            for set_out in self._set_out(width):
                for run, (task, choice) in set_out.items():
                    forms, fewer = self._counted(task, choice)
                    thinned = thinned or fewer
                    found[run].update((form.choice, form) for form in forms)
            length, across = (tuple(found[run].values()) for run in RunName)
            yield Forms(width, length, across, thinned)

    def _set_out(
        self, width: Length | None
    ) -> Iterator[Mapping[RunName, tuple["_Divisible", RunChoice]]]:
        """Both runs ready to be divided, with each wall condition at least once."""
        limits = self._asked.limits
        sides = (wall_choices(limits.length), wall_choices(limits.width))
        for first, second in zip_longest(*sides):
            length, across = first or sides[0][-1], second or sides[1][-1]
            spec = _uncounted(self._asked, spec_of_walls(self._asked.spec, length, across, width))
            try:
                set_out, along = _ready(spec, self._asked.limits.center_on)
            except SpecRefused as refused:
                keep_faults(self.faults, refused)
                continue
            yield {
                run: (_Divisible(set_out.tasks[run], along[run]), choice)
                for run, choice in ((RunName.LENGTH, length), (RunName.WIDTH, across))
            }

    def _counted(self, task: "_Divisible", choice: RunChoice) -> tuple[list[RunForm], bool]:
        """The run with each count whose openings are within the limits, or with the one told.

        Of more counts than are tried some are left out, evenly; the second value tells.
        """
        limits = self._asked.limits
        run, most = limits.of(task.task.run.name), _counts_tried(limits)
        if run.fewest is None or run.most is None:
            form = task.form(choice)
            return ([] if form is None else [form]), False
        every = range(run.fewest, run.most + 1)
        counts = task.counts_within(every, limits) if task.alike else every
        tried = _spread(counts, most) if task.alike else counts
        forms = list(self._within(task, choice, tried))
        return _spread(forms, most), len(tried) < len(counts) or len(forms) > most

    def _within(
        self, task: "_Divisible", choice: RunChoice, counts: Sequence[int]
    ) -> Iterator[RunForm]:
        """The forms with these counts whose openings are within the limits."""
        limits = self._asked.limits
        for count in counts:
            form = task.form(replace(choice, coffers=count))
            if form is not None and form.smallest < limits.smallest_opening:
                return
            if form is not None and form.largest <= limits.largest_opening:
                yield form


def keep_faults(kept: list[Fault], refused: SpecRefused) -> None:
    """Keep faults that are not kept yet; of those that differ in their figures alone, the first."""
    known = {(fault.code, fault.pointer) for fault in kept}
    kept += [fault for fault in refused.faults if (fault.code, fault.pointer) not in known]


def spec_of_walls(
    spec: CeilingSpec, length: RunChoice, across: RunChoice, width: Length | None
) -> CeilingSpec:
    """The ceiling with those walls and that width of beam, its counts as it says."""
    return spec_of(spec, Candidate(length, across, width, None))


def _uncounted(asked: Asked, spec: CeilingSpec) -> CeilingSpec:
    """Where counts are tried, the run with as few coffers as can be, which always fit."""
    grid = spec.grid
    for run in RunName:
        if asked.limits.of(run).fewest is not None:
            bare = replace(
                grid.run(run),
                coffers=None,
                largest_opening=None,
                wished_opening=grid.run(run).held or OPENING.most,
            )
            grid = replace(grid, **{str(run): bare})
    return replace(spec, grid=grid)


def _ready(spec: CeilingSpec, center_on: Sequence[str]) -> tuple[SetOut, dict[RunName, _Along]]:
    faults = check(spec)
    if faults:
        raise SpecRefused(faults)
    ceiling = resolve(spec).ceiling
    gathering = FaultGathering()
    set_out = set_out_runs(ceiling, beam_families(ceiling.beams), gathering)
    gathering.refuse_if_any()
    assert set_out is not None, "runs that cannot be divided leave faults"
    return set_out, {run: _along(run, ceiling, set_out, center_on) for run in RunName}


def _along(run: RunName, ceiling: Ceiling, set_out: SetOut, center_on: Sequence[str]) -> _Along:
    room = ceiling.room
    frames = {name: task.frame for name, task in set_out.tasks.items()}
    placed = placed_items([item for item in room.ceiling_items if item.x is not None], (), frames)
    joists = joists_above(set_out)
    features = tuple(
        each
        for each in room.wall_features
        if each.name in center_on and run_along(each.wall) is run
    )
    return _Along(placed, joists if joists and joists.on is run else None, features)


def _counts_tried(limits: Limits) -> int:
    """How many counts of a run are tried, so that all combinations stay within their bound."""
    ways = max(1, len(limits.widths)) * max(1, len(limits.through))
    for run in RunName:
        ways *= max(1, len(limits.of(run).walls))
    return max(2, min(COUNTS_OF_A_RUN, isqrt(COMBINATIONS // ways)))


def _spread(some: Sequence[Kind], most: int) -> list[Kind]:
    """At most so many of some, spread evenly from the first to the last."""
    if len(some) <= most:
        return list(some)
    return [some[(len(some) - 1) * n // (most - 1)] for n in range(most)]


@dataclass(frozen=True, slots=True)
class _Divisible:
    """A run with what its beams are held against."""

    task: RunTask
    along: _Along

    @property
    def alike(self) -> bool:
        """Whether all openings of the run are alike, whatever their number."""
        run = self.task.run
        return not self.task.things and run.held is None and run.weights is None

    def counts_within(self, counts: range, limits: Limits) -> list[int]:
        """The counts of a run of like openings that give such as are within the limits.

        They follow from its span, without dividing it: (N + W) / n - W.
        """
        start, end = walls_of(self.task)
        space, width = end.value - start.value, self.task.beam_width.value
        least, most = limits.smallest_opening, limits.largest_opening
        return [count for count in counts if least <= opening_of(space, count, width) <= most]

    def form(self, choice: RunChoice) -> RunForm | None:
        """The run divided by a choice; None where that cannot be."""
        task = self.task
        if choice.coffers is not None:
            counted = replace(task.run, count=CoffersInAll(choice.coffers), parity=None)
            task = replace(task, run=counted)
        try:
            plan = plan_run(task)
        except SpecRefused:
            return None
        divided = divide_run(task, plan)
        coffers = sum(zone.coffers.value for zone in divided.zones)
        if not _of_parity(coffers, self.task.run.parity):
            return None
        openings = [opening.value for zone in divided.zones for opening in zone.openings]
        return RunForm(
            choice=choice,
            coffers=coffers,
            smallest=min(openings),
            largest=max(openings),
            meets=self._meets(divided),
            between_joists=self._between(divided),
            off_center=max(
                (self._off(each, divided) for each in self.along.features), default=ZERO
            ),
        )

    def _meets(self, divided: DividedRun) -> int:
        run = self.task.run.name
        found = 0
        for item in self.along.items:
            center, away = item.center(run), item.half(run) + item.asked.clearance
            found += any(
                beam.near.value - away < center < beam.far.value + away for beam in divided.beams
            )
        return found

    def _between(self, divided: DividedRun) -> int:
        joists = self.along.joists
        if joists is None or not joists.joists:
            return 0
        first, last = joists.joists[0].center.value, len(joists.joists) - 1
        found = 0
        for beam in divided.beams:
            beyond = beam.center.value - first
            nearest = min(max((beyond + joists.spacing / 2) // joists.spacing, 0), last)
            found += abs(beyond - joists.spacing * nearest) > joists.width / 2
        return found

    def _off(self, feature: WallFeature, divided: DividedRun) -> Length:
        at_end = feature.wall in END_WALL.values()
        center = self.task.frame.place(feature.center, at_end=at_end).value
        over = [each for each in divided.stretches if each.near.value <= center <= each.far.value]
        found = min(over, key=lambda each: each.kind is not ElementKind.COFFER)
        return abs((found.near.value + found.far.value) / 2 - center)


def _of_parity(coffers: int, parity: Parity | None) -> bool:
    return parity is None or (coffers % 2 == 1) is (parity is Parity.ODD)
