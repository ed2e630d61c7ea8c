"""The two sections of a room: along each run through the middle of a row of coffers."""

from lacunar.drawing.upright.cut import Side, UprightCut
from lacunar.drawing.upright.plane import (
    Crossing,
    Plane,
    between,
    cut_between,
    stretches,
)
from lacunar.layout.records import ElementKind, EndPositions, Layout, RunElement
from lacunar.measure.length import Length
from lacunar.model.room import RunName

Stretch = tuple[Crossing, Crossing]


def section_name(run: RunName) -> str:
    """What the section along a run is called among the views of a set."""
    return f"section-{run.value}"


def section_cut(layout: Layout, run: RunName) -> UprightCut:
    """Turn a layout into its section along a run.

    It is seen with the run's start wall on the left: along the length run towards W2, along the
    width run towards W1.
    """
    at, ends = _line(layout, run)
    plane = Plane(layout, run, at, onward=run is RunName.LENGTH)
    share = at / layout.run(run.other).span.at_start.value

    def places(_: str, __: Side, line: EndPositions) -> Length:
        return between(line, share)

    return cut_between(plane, ends, places, section_name(run))


def _line(layout: Layout, run: RunName) -> tuple[Length, Stretch]:
    """Where the section goes: through the row of coffers that has most of the room in one piece.

    Of rows that are alike, the one next the middle.
    """
    rows = [e for e in layout.run(run.other).elements if e.kind is ElementKind.COFFER]
    middle = (len(rows) - 1) / 2
    order = sorted(range(len(rows)), key=lambda number: abs(number - middle))
    lines = [(at, _longest(layout, run, at)) for at in (_middle(rows[n]) for n in order)]
    return max(lines, key=lambda line: line[1][1].at - line[1][0].at)


def _middle(row: RunElement) -> Length:
    ends = (row.near.at_start, row.near.at_end, row.far.at_start, row.far.at_end)
    return sum((each.value for each in ends[1:]), ends[0].value) / len(ends)


def _longest(layout: Layout, run: RunName, at: Length) -> Stretch:
    return max(stretches(layout, run, at), key=lambda ends: ends[1].at - ends[0].at)
