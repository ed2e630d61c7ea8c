"""Where an upright cut lies on paper: to the right along the plane, up from the finished floor."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.elements import Pt
from lacunar.drawing.upright.cut import CutBeam
from lacunar.measure.length import ZERO, Length

BAND = 2.5
"""How deep the hatched bands are that stand for walls and floor [mm]."""
CEILING_BAND = 3.0
JOIST_BAND = 7.0
"""How far what is above the ceiling is drawn, without joists and with them [mm]."""


@dataclass(frozen=True, slots=True)
class UprightPaper:
    """The scale's ratio, and where the cut's zero stands on the finished floor [mm of paper]."""

    ratio: Fraction
    left: float
    floor: float

    def on_paper(self, length: Length) -> float:
        """A length of the room as millimeters of paper."""
        return float(length.millimeters / self.ratio)

    def at(self, along: Length, up: Length) -> Pt:
        """A place along the plane and above the finished floor."""
        return Pt(self.left + self.on_paper(along), self.floor - self.on_paper(up))


def across(beam: CutBeam, x: Length) -> Length:
    """Where a place across a profile, from its near face, lies along the plane.

    A beam that the plane cuts aslant is seen as much wider; what stands at a wall keeps its face
    and reaches back to the wall.
    """
    width = beam.profile.finished_width.value
    if beam.at_wall is None:
        return beam.near + x * ((beam.far - beam.near) / width)
    if x == ZERO:
        return beam.near if beam.at_wall == "left" else beam.far
    off = width - x
    return beam.far - off if beam.at_wall == "left" else beam.near + off
