"""Each run divided by itself, with every number of coffers: what can be told without a layout."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from lacunar.choosing.asked import Asked, RunLimits
from lacunar.choosing.candidates import Candidate, RunChoice, spec_of, wall_choices
from lacunar.layout.backing_records import JoistLines
from lacunar.layout.families import beam_families
from lacunar.layout.fault_gathering import FaultGathering
from lacunar.layout.items.places import PlacedItem, placed_items
from lacunar.layout.joists import among_joists
from lacunar.layout.records import ElementKind
from lacunar.layout.runs.run_division import DividedRun, RunTask, divide_run, plan_run
from lacunar.layout.set_out_runs import SetOut, joists_above, set_out_runs
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.ceiling import Ceiling
from lacunar.model.ceiling_items import WallFeature
from lacunar.model.choosing_limits import COUNTS_OF_A_RUN
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.grid import CoffersInAll, Parity
from lacunar.model.item_rules import run_along
from lacunar.model.room import END_WALL, RunName
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec


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
            for set_out in self._set_out(width):
                for run, (task, choice) in set_out.items():
                    for form in self._counted(task, choice):
                        found[run].setdefault(form.choice, form)
            kept = {run: _thinned(tuple(forms.values())) for run, forms in found.items()}
            length, across = kept[RunName.LENGTH], kept[RunName.WIDTH]
            thinned = any(len(kept[run]) < len(found[run]) for run in RunName)
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
                self.faults += [fault for fault in refused.faults if fault not in self.faults]
                continue
            yield {
                run: (_Divisible(set_out.tasks[run], along[run]), choice)
                for run, choice in ((RunName.LENGTH, length), (RunName.WIDTH, across))
            }

    def _counted(self, task: "_Divisible", choice: RunChoice) -> Iterator[RunForm]:
        """The run with each count whose openings are within the limits, or with the one told."""
        limits = self._asked.limits
        run = limits.of(task.task.run.name)
        for count in _counts(run, task.task):
            form = task.form(replace(choice, coffers=count))
            if count is None:
                yield from () if form is None else (form,)
            elif form is not None and form.smallest < limits.smallest_opening:
                return
            elif form is not None and form.largest <= limits.largest_opening:
                yield form


def spec_of_walls(
    spec: CeilingSpec, length: RunChoice, across: RunChoice, width: Length | None
) -> CeilingSpec:
    """The ceiling with those walls and that width of beam, its counts as it says."""
    return spec_of(spec, Candidate(length, across, width, None))


def _uncounted(asked: Asked, spec: CeilingSpec) -> CeilingSpec:
    """Where counts are tried, the run with as few coffers as can be: one for each zone."""
    grid = spec.grid
    for run in RunName:
        if asked.limits.of(run).fewest is not None:
            bare = replace(
                grid.run(run),
                coffers=None,
                largest_opening=None,
                wished_opening=None,
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


def _counts(limits: RunLimits, task: RunTask) -> Sequence[int | None]:
    if limits.fewest is None or limits.most is None:
        return (None,)
    return range(max(limits.fewest, len(task.things) + 1), limits.most + 1)


@dataclass(frozen=True, slots=True)
class _Divisible:
    """A run with what its beams are held against."""

    task: RunTask
    along: _Along

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
        joists, span = self.along.joists, self.task.frame.span.value
        if joists is None or not joists.joists:
            return 0
        places = [among_joists(beam.center.value, joists, span) for beam in divided.beams]
        return sum(place.bearing is None for place in places)

    def _off(self, feature: WallFeature, divided: DividedRun) -> Length:
        at_end = feature.wall in END_WALL.values()
        center = self.task.frame.place(feature.center, at_end=at_end).value
        over = [each for each in divided.stretches if each.near.value <= center <= each.far.value]
        found = min(over, key=lambda each: each.kind is not ElementKind.COFFER)
        return abs((found.near.value + found.far.value) / 2 - center)


def _of_parity(coffers: int, parity: Parity | None) -> bool:
    return parity is None or (coffers % 2 == 1) is (parity is Parity.ODD)


def _thinned(forms: tuple[RunForm, ...]) -> tuple[RunForm, ...]:
    """At most so many counts, spread evenly over all there are."""
    counts = sorted({form.coffers for form in forms})
    if len(counts) <= COUNTS_OF_A_RUN:
        return forms
    last = len(counts) - 1
    kept = {counts[last * n // (COUNTS_OF_A_RUN - 1)] for n in range(COUNTS_OF_A_RUN)}
    return tuple(form for form in forms if form.coffers in kept)
