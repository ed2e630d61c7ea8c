"""Where an upright view has its zero on paper, read off its floor, and what belongs where."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import dist

from lacunar.drawing.checker.facts import WALLS_OF_RUN, LayoutFacts
from lacunar.drawing.checker.outline_facts import SideFacts
from lacunar.drawing.checker.plan_frame import ratio
from lacunar.drawing.checker.records import GroupRead
from lacunar.drawing.checker.subject import Subject

SECTION, ELEVATION = "section", "elevation"
ONWARD = ("W1", "W2")
"""Walls of four that are seen from inside with their run going to the right."""

Places = Mapping[str, Fraction | float]


@dataclass(frozen=True, slots=True)
class UprightFrame:
    """A view, how much smaller than life it is, its floor, and where its zero is across [mm]."""

    view: GroupRead
    ratio: float
    zero: float
    floor: float
    ends: tuple[float, float]

    def x(self, along: Fraction | float) -> float:
        """Where a place along the view belongs on paper."""
        return self.zero + float(along) / self.ratio

    def y(self, up: Fraction | float) -> float:
        """Where a height above the floor belongs on paper."""
        return self.floor - float(up) / self.ratio


def upright_frames(subject: Subject, kind: str) -> Iterator[UprightFrame]:
    """The views of a kind with a scale and a floor that says from where to where it goes."""
    sheet = subject.sheet
    for view in sheet.of_kind("view"):
        scale = ratio(view)
        if view.data.get("view") != kind or scale is None:
            continue
        for floor in sheet.of_kind("floor-line", view):
            lines = [p for p in sheet.own_paths(floor) if p.pen and p.pen.name == "wall"]
            try:
                start = float(floor.data.get("start-mm", ""))
            except ValueError:
                continue
            for line in lines:
                left = line.spots[0]
                ends = (left.x, line.spots[-1].x)
                yield UprightFrame(view, scale, left.x - start / scale, left.y, ends)


def places_in_section(facts: LayoutFacts, view: GroupRead) -> Places:
    """Where faces of beams across a run lie along a section of it, by the names marks have."""
    run = view.data.get("run", "")
    other = "width" if run == "length" else "length"
    share = Fraction(view.data.get("at-mm", "0")) / facts.spans[other].at_start
    return {
        f"{beam.id}:{side}": line.at_start + (line.at_end - line.at_start) * share
        for beam in (*facts.beams, *facts.wall_beams)
        if beam.on == run
        for side, line in (("near", beam.near), ("far", beam.far))
    }


@dataclass(frozen=True, slots=True)
class WallSeen:
    """A wall as it is seen from inside: its length, and where places along its run lie in it.

    `run` is empty for an angled one; `end` is the end of the other run that it lies at; `left` and
    `right` are where its corners are along the run, or at which its tape starts and ends.
    """

    run: str
    end: str
    length: float
    left: Fraction
    right: Fraction

    def along(self, place: Fraction) -> float:
        """How far from its left corner a place along its run is seen."""
        return float((place - self.left) / (self.right - self.left)) * self.length


def wall_seen(facts: LayoutFacts, view: GroupRead, *, taped: bool) -> WallSeen | None:
    """The wall that an elevation says it shows; None where there is no such wall.

    `taped`: places are told from the start wall as at that end, else from where all places are.
    """
    wall, odd = view.data.get("wall", ""), facts.outline_facts
    if odd is not None:
        sides = (side for side in odd.sides if side.side == view.data.get("side"))
        return next((_side_seen(side) for side in sides if side.wall == wall), None)
    runs = [run for run, walls in WALLS_OF_RUN.items() if wall in walls]
    if not runs:
        return None
    run = "width" if runs[0] == "length" else "length"
    end = "start" if wall == WALLS_OF_RUN[runs[0]][0] else "end"
    corners = facts.wall_ends(wall)
    length = dist(*([float(x) for x in corner] for corner in corners))
    if taped:
        span = facts.span(run, end)
        left, right = (Fraction(0), span) if wall in ONWARD else (span, Fraction(0))
    else:
        along = 0 if run == "length" else 1
        left, right = (corner[along] for corner in corners)
    return WallSeen(run, end, length, left, right)


def _side_seen(side: SideFacts) -> WallSeen:
    start, end = side.ends
    length = dist(*([float(x) for x in corner] for corner in side.ends))
    if not side.on:
        return WallSeen("", "", length, Fraction(0), Fraction(length))
    run = "width" if side.on == "length" else "length"
    along = 0 if run == "length" else 1
    at = "start" if side.looks_as in ("W1", "W4") else "end"
    return WallSeen(run, at, length, start[along], end[along])


def places_on_wall(facts: LayoutFacts, view: GroupRead) -> Places:
    """Where marked faces and walls of a run lie along an elevation, from its left corner."""
    wall = wall_seen(facts, view, taped=True)
    if wall is None or not wall.run:
        return {}
    found: dict[str, Fraction | float] = {}
    for mark in facts.marks.get((wall.run, wall.end), ()):
        if mark.kind in ("wall", "face"):
            name = mark.of if mark.kind == "wall" else f"{mark.of}:{mark.side}"
            found[name] = wall.along(mark.exact)
    return found
