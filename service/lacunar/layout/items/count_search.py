"""Searches the numbers of coffers at which no beam of a run meets a fixed item."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.item_records import ClearCount, CountSearch
from lacunar.layout.items.places import PlacedItem
from lacunar.layout.runs.run_division import DividedRun, RunTask, divide_run, plan_run
from lacunar.layout.runs.run_faults import LEAST_OPENING
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model import limits
from lacunar.model.ceiling_items import Mobility
from lacunar.model.faults import SpecRefused
from lacunar.model.grid import CoffersInAll
from lacunar.model.room import RunName

PITCH = Rule("module: an opening and a beam", "opening + beam_width")


@dataclass(frozen=True, slots=True)
class CountTask:
    """Runs with what their beams' lower edges stand out, to be tried with other counts."""

    runs: Mapping[RunName, RunTask]
    beyond: Mapping[RunName, Length]


def clear_counts(task: CountTask, items: Sequence[PlacedItem]) -> tuple[CountSearch, ...]:
    """Turn runs and fixed items into the counts that keep every beam clear of every fixed item.

    Walls, members and fixed beams stay as they are; openings stay at 6 in or more. Nothing is
    searched without a fixed item, nor on a run whose openings are held or weighed.
    """
    fixed = [item for item in items if item.asked.mobility is Mobility.FIXED]
    if not fixed:
        return ()
    return tuple(
        _search(run_task, task.beyond[run], fixed)
        for run, run_task in task.runs.items()
        if run_task.run.held is None and run_task.run.weights is None
    )


def _search(task: RunTask, beyond: Length, fixed: Sequence[PlacedItem]) -> CountSearch:
    divided = dict(_divided(task))
    clear = tuple(
        _clear_count(count, run, task)
        for count, run in divided.items()
        if _is_clear(run, task.run.name, beyond, fixed)
    )
    fewest = len(task.things) + 1
    return CountSearch(task.run.name, fewest, max(divided, default=fewest), clear)


def _divided(task: RunTask) -> Iterator[tuple[int, DividedRun]]:
    """The run divided with each count, as long as openings stay large enough for a hand."""
    for count in range(len(task.things) + 1, limits.COFFERS_PER_RUN + 1):
        tried = replace(task, run=replace(task.run, count=CoffersInAll(count), parity=None))
        try:
            divided = divide_run(tried, plan_run(tried))
        except SpecRefused:
            return
        if min(opening.value for opening in _openings(divided)) < LEAST_OPENING:
            return
        yield count, divided


def _openings(divided: DividedRun) -> list[LengthFigure]:
    return [opening for zone in divided.zones for opening in zone.openings]


def _is_clear(
    divided: DividedRun, run: RunName, beyond: Length, fixed: Sequence[PlacedItem]
) -> bool:
    for item in fixed:
        center, away = item.center(run), item.half(run) + item.asked.clearance + beyond
        for beam in divided.beams:
            if beam.near.value - away < center < beam.far.value + away:
                return False
    return True


def _clear_count(count: int, divided: DividedRun, task: RunTask) -> ClearCount:
    openings = sorted(_openings(divided), key=lambda opening: opening.value)
    width = task.beam_width.value
    pitch = None
    if openings[0].value == openings[-1].value and width > ZERO:
        opening = openings[0].value
        pitch = PITCH.gives(opening + width, opening=opening, beam_width=width)
    return ClearCount(count, openings[0], openings[-1], pitch)
