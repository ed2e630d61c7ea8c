"""From places on the ceiling to places on paper: mirrored, so that the plan lies as the floor does.

A reflected ceiling plan shows the ceiling as a mirror on the floor would: `x` (the length run) goes
to the right and `y` (the width run) up the sheet, exactly as on the floor plan, never flipped.
"""

from dataclasses import dataclass

from lacunar.drawing.elements import Pt
from lacunar.layout.records import EndPositions, Layout, Point
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.room import RunName

WALL_BAND = 2.5
"""How deep the hatched band is that stands for a wall [mm]."""


@dataclass(frozen=True, slots=True)
class PlanFrame:
    """The datum's place on paper [mm] and the scale's ratio."""

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
        """The span of a run at the start of the other one [mm of paper]."""
        return self.on_paper(self.layout.run(run).span.at_start.value)

    def line_at(self, line: EndPositions, on: RunName, across: float) -> Pt:
        """Where a line across run `on` stands at `across` along the other run [mm of paper].

        A line is straight between its two ends, so a place between them is a plain proportion.
        """
        start = self.on_paper(line.at_start.value)
        end = self.on_paper(line.at_end.value)
        other = self.span(on.other)
        return self.along(on, start + (end - start) * across / other, across)

    def between(
        self,
        on: RunName,
        start: tuple[LengthFigure, Length],
        end: tuple[LengthFigure, Length],
    ) -> tuple[Pt, Pt]:
        """A line between two places, each along run `on` and along the other [mm of paper]."""
        first, last = (
            self.along(on, self.on_paper(along.value), self.on_paper(across))
            for along, across in (start, end)
        )
        return first, last

    def stretch(
        self, line: EndPositions, on: RunName, across: tuple[float, float]
    ) -> tuple[Pt, Pt]:
        """A line across run `on` from one place to another along the other run [mm of paper]."""
        return self.line_at(line, on, across[0]), self.line_at(line, on, across[1])
