"""From places on the ceiling to places on paper: mirrored, so that the plan lies as the floor does.

A reflected ceiling plan shows the ceiling as a mirror on the floor would: `x` (the length run) goes
to the right and `y` (the width run) up the sheet, exactly as on the floor plan, never flipped.
"""

from dataclasses import dataclass

from lacunar.drawing.elements import Pt
from lacunar.layout.records import Beam, BeamPiece, EndPositions, Layout, Point
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import END_WALL, START_WALL, RunName

WALL_BAND = 2.5
"""How deep the hatched band is that stands for a wall [mm]."""


@dataclass(frozen=True, slots=True)
class PlanFrame:
    """Where all places are from, on paper [mm], and the scale's ratio.

    That is the datum in a square room; in a crooked one, the clear rectangle's lower left corner.
    """

    layout: Layout
    ratio: int
    origin: Pt

    def on_paper(self, length: Length) -> float:
        """A length of the room as millimeters of paper."""
        return float(length.millimeters / self.ratio)

    def point(self, point: Point) -> Pt:
        """A place on the ceiling as a point on paper."""
        return self.origin.moved(self.on_paper(point.x), -self.on_paper(point.y))

    def along(self, run: RunName, position: float, across: float) -> Pt:
        """The paper point at `position` along a run and `across` along the other [mm of paper]."""
        if run is RunName.LENGTH:
            return self.origin.moved(position, -across)
        return self.origin.moved(across, -position)

    def span(self, run: RunName) -> float:
        """The span of a run that is divided [mm of paper]."""
        return self.on_paper(self.clear(run))

    def reach(self, run: RunName) -> tuple[float, float]:
        """The room's outermost places along a run, the lower one first [mm of paper]."""
        places = [self.on_paper(_along(corner, run)) for corner in self.layout.outline]
        return min(places), max(places)

    def wall_ends(self, wall: str) -> tuple[Point, Point]:
        """The corners a wall goes between, clockwise round the room; `W1` starts at the datum."""
        corners = self.layout.outline
        number, count = int(wall.removeprefix("W")), len(corners)
        return corners[(count - number + 1) % count], corners[count - number]

    def face_at(self, wall: str, run: RunName, across: float) -> float:
        """Where a wall's face lies along a run, at `across` along the other one [mm of paper].

        In a room with other than four walls, the place of the wall furthest out.
        """
        if self.layout.outlined is not None:
            return 0.0 if wall == START_WALL[run] else self.span(run)
        start, end = (
            (self.on_paper(_along(corner, run)), self.on_paper(_along(corner, run.other)))
            for corner in self.wall_ends(wall)
        )
        return start[0] + (end[0] - start[0]) * (across - start[1]) / (end[1] - start[1])

    def from_wall_to_wall(self, on: RunName, position: Length) -> tuple[float, float]:
        """Where a line across run `on` meets the walls of the other run [mm of paper]."""
        at, other = self.on_paper(position), on.other
        return (
            self.face_at(START_WALL[other], other, at),
            self.face_at(END_WALL[other], other, at),
        )

    def stretches(self, beam: Beam) -> tuple[tuple[float, float], ...]:
        """From where to where a beam stands along the other run, wall to wall [mm of paper]."""
        room = self.layout.outlined
        if room is None:
            return (self.from_wall_to_wall(beam.on, beam.center.at_start.value),)
        return tuple(
            (self.on_paper(span.start.value), self.on_paper(span.end.value))
            for span in room.spans
            if span.beam == beam.id
        )

    def piece_ends(self, on: RunName, face: EndPositions, piece: BeamPiece) -> tuple[float, float]:
        """Where a face of a beam's piece starts and ends along the beam [mm of paper].

        A piece that ends at a clear line goes on to the wall itself; in a grid that follows the
        walls it is told as far as it goes.
        """
        at, other = self.on_paper(face.at_start.value), on.other
        start, end = piece.start.value, piece.end.value
        if self.layout.followed is not None:
            return self.on_paper(start), self.on_paper(end)
        return (
            self.on_paper(start) if start else self.face_at(START_WALL[other], other, at),
            self.face_at(END_WALL[other], other, at)
            if end == self.clear(other)
            else self.on_paper(end),
        )

    def clear(self, run: RunName) -> Length:
        """The span of a run that is divided: between walls, or between clear lines."""
        return self.layout.run(run).span.at_start.value

    def line_at(self, line: EndPositions, on: RunName, across: float) -> Pt:
        """Where a line across run `on` stands at `across` along the other run [mm of paper].

        A line is straight between its two ends, so a place between them is a plain proportion.
        """
        start = self.on_paper(line.at_start.value)
        end = self.on_paper(line.at_end.value)
        other = self.span(on.other)
        return self.along(on, start + (end - start) * across / other, across)

    def member_face(
        self, on: RunName, face: EndPositions, ends: tuple[LengthFigure, LengthFigure]
    ) -> tuple[Pt, Pt]:
        """A member's face between its ends along the other run, or the walls it ends at."""
        start, end = (each.value for each in ends)
        near, far = (self.on_paper(each.value) for each in (face.at_start, face.at_end))
        first, last = self.on_paper(start), self.on_paper(end)
        if start == ZERO:
            first = self.from_wall_to_wall(on, face.at_start.value)[0]
        if end == self.clear(on.other):
            last = self.from_wall_to_wall(on, face.at_end.value)[1]
        return self.along(on, near, first), self.along(on, far, last)

    def stretch(
        self, line: EndPositions, on: RunName, across: tuple[float, float]
    ) -> tuple[Pt, Pt]:
        """A line across run `on` from one place to another along the other run [mm of paper]."""
        return self.line_at(line, on, across[0]), self.line_at(line, on, across[1])


def _along(point: Point, run: RunName) -> Length:
    return point.x if run is RunName.LENGTH else point.y
