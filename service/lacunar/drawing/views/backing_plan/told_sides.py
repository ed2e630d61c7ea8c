"""What is told about the backing plan: both faces of backing, joists, each from its start wall."""

from collections.abc import Iterator
from math import ceil

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.ordinates import ENDS, PITCH, Figure, Side, place_at_wall
from lacunar.drawing.run_ends import End, RunEnd, unlike
from lacunar.drawing.wording import SheetWording
from lacunar.layout.backing.lines import backing_stretches
from lacunar.layout.backing_records import Joist, JoistLines
from lacunar.layout.records import MarkKind
from lacunar.model.room import RunName

TOLD = (MarkKind.WALL, MarkKind.BACKING)


def told_sides(frame: PlanFrame, wording: SheetWording) -> Iterator[Side]:
    """The sides of the plan: backing at the start of each run, at its end too where walls differ.

    Joists stand at the end of the run across which they lie.
    """
    joists = frame.layout.backing.joists
    for run in RunName:
        for end in ENDS:
            figures: list[Figure] = []
            if end == "start" or unlike(frame.layout, run, TOLD):
                figures += _backing(frame, run, end)
                figures += _cleats(frame, run, end, wording)
            if end == "end" and joists is not None and joists.on is run:
                figures += _joists(frame, joists, wording)
            if figures:
                yield Side(run, end, tuple(sorted(figures, key=lambda figure: figure.exact)))


def _backing(frame: PlanFrame, run: RunName, end: End) -> Iterator[Figure]:
    """The faces of backing, and both walls, as marked."""
    marks = next(each for each in frame.layout.marks if (each.run, each.end) == (run, end))
    for mark in marks.marks:
        if mark.kind in TOLD:
            yield Figure.of_mark(mark, place_at_wall(frame, run, end, mark.exact.value))


def _cleats(frame: PlanFrame, run: RunName, end: End, wording: SheetWording) -> Iterator[Figure]:
    """The middles of cleats, which have no marks of their own."""
    if frame.layout.followed is not None:
        return
    for beam in frame.layout.beams:
        if beam.on is not run or beam.member is None:
            continue
        for side, middle, _ in backing_stretches(beam, frame.layout.profile(beam.profile)):
            if side != "middle":
                place = RunEnd.of(frame.layout, run, end).from_wall("", middle)
                at = place_at_wall(frame, run, end, place)
                yield Figure(beam.id, "cleat", side, wording.rounded(place), place, at)


def _joists(frame: PlanFrame, joists: JoistLines, wording: SheetWording) -> Iterator[Figure]:
    """Joists by their ids and places; so many of them that their words have room."""
    pitch = frame.on_paper(joists.spacing)
    for joist in joists.joists[:: max(1, ceil(PITCH / pitch))]:
        yield _joist(frame, joists.on, joist, wording)


def _joist(frame: PlanFrame, on: RunName, joist: Joist, wording: SheetWording) -> Figure:
    center = joist.center.value
    if frame.layout.followed is not None:
        at: Pt = frame.along(on, frame.on_paper(center), frame.span(on.other))
        return Figure(joist.id, "joist", "at", wording.rounded(center), center, at, joist.id, False)
    place = RunEnd.of(frame.layout, on, "end").from_wall("", joist.center)
    at = place_at_wall(frame, on, "end", place)
    return Figure(joist.id, "joist", "at", wording.rounded(place), place, at, joist.id)
