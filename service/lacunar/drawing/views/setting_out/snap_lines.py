"""The lines that are snapped on the floor: faces and centers of beams, from wall to wall."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.ordinates import ENDS, place_at_wall
from lacunar.drawing.run_ends import End
from lacunar.layout.records import Beam, Mark, MarkKind, Point
from lacunar.model.room import RunName

Key = tuple[str, str]


@dataclass(frozen=True, slots=True)
class SnapLine:
    """A face or a center across a run, with its mark at the start and at the end of the other run.

    `parts` are the stretches in which it stands in the room: one, or several about what juts in.
    """

    run: RunName
    marks: tuple[Mark, Mark]
    parts: tuple[tuple[Pt, Pt], ...]

    @property
    def of(self) -> str:
        """The beam, or what stands at a wall, that it is of."""
        return self.marks[0].of

    @property
    def side(self) -> str:
        """Which side of it: `near`, `far`, or `at` for a center."""
        return self.marks[0].side


def snap_lines(frame: PlanFrame, run: RunName, kind: MarkKind) -> tuple[SnapLine, ...]:
    """All faces, or all centers, across a run."""
    start, end = (_marks(frame, run, each, kind) for each in ENDS)
    beams = {beam.id: beam for beam in frame.layout.beams}
    return tuple(
        SnapLine(
            run,
            (mark, end[key]),
            tuple(_parts(frame, run, (mark, end[key]), beams.get(mark.of))),
        )
        for key, mark in start.items()
    )


def _marks(frame: PlanFrame, run: RunName, end: End, kind: MarkKind) -> Mapping[Key, Mark]:
    found = next(each for each in frame.layout.marks if (each.run, each.end) == (run, end))
    return {(mark.of, mark.side): mark for mark in found.marks if mark.kind is kind}


def _parts(
    frame: PlanFrame, run: RunName, marks: tuple[Mark, Mark], beam: Beam | None
) -> Iterator[tuple[Pt, Pt]]:
    room = frame.layout.outlined
    if room is None:
        one, other = (
            place_at_wall(frame, run, end, mark.exact.value)
            for end, mark in zip(ENDS, marks, strict=True)
        )
        yield one, other
        return
    at = frame.on_paper(marks[0].exact.value)
    if beam is not None:
        for first, last in frame.stretches(beam):
            yield frame.along(run, at, first), frame.along(run, at, last)
        return
    for wall in room.walls:
        if wall.beam == marks[0].of and wall.face_start and wall.face_end:
            start, end = wall.face_start, wall.face_end
            yield frame.point(Point(start.x, start.y)), frame.point(Point(end.x, end.y))
