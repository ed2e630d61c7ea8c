"""Marks of a grid that follows the walls, and the most that each stretch of it takes up."""

from collections.abc import Iterator
from dataclasses import replace

from lacunar.layout.records import RunMarks, Zone
from lacunar.layout.runs.marks import run_marks
from lacunar.layout.runs.run_division import BeamStretch, DividedRun, Stretch
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.survey.along_walls import AlongWalls
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.rounding import Step
from lacunar.model.beams import Box

LARGER = Rule("the larger opening, at one wall or at the other", "max(at_start, at_end)")


def marks_along_walls(along: AlongWalls, box: Box | None, step: Step) -> Iterator[RunMarks]:
    """Turn a run divided along both walls into its marks, each along its own wall from the corner.

    Parameters: as of `run_marks`.
    """
    for end, number in ((along.at_start, 0), (along.at_end, 1)):
        ends = DividedEnds(end.task.frame, end.divided, end.divided)
        yield run_marks(ends, box, step)[number]


def at_the_most(ends: DividedEnds) -> DividedRun:
    """Turn a run whose ends differ into one whose openings are the larger of both.

    What stands between keeps its place and width at the start of the other run.
    """
    stretches = tuple(_widest(start, end) for start, end in ends.pairs)
    zones = zip(ends.at_start.zones, ends.at_end.zones, strict=True)
    return DividedRun(tuple(_larger(*pair) for pair in zones), stretches)


def _widest(start: Stretch, end: Stretch) -> Stretch:
    if isinstance(start, BeamStretch):
        return start
    return replace(
        start,
        near=min(start.near, end.near, key=lambda place: place.value),
        far=max(start.far, end.far, key=lambda place: place.value),
    )


def _larger(start: Zone, end: Zone) -> Zone:
    pairs = zip(start.openings, end.openings, strict=True)
    return replace(start, openings=tuple(_of_both(*pair) for pair in pairs))


def _of_both(one: LengthFigure, other: LengthFigure) -> LengthFigure:
    tell = LARGER.approximates if one.approximate or other.approximate else LARGER.gives
    return tell(max(one.value, other.value), at_start=one.value, at_end=other.value)
