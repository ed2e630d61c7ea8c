"""What mitred ends do to sizes: a longer saw cut, and where pieces are nested a shared one.

Mitred at A across a face of width w, a piece's two edges differ by w * tan A at each end, and the
saw cut takes kerf / cos A along the stick. Nested pieces of long point l, turned over one by one,
take l - w * tan A + kerf / cos A each of a stick that is longer by one saw cut less w * tan A.
(Plane geometry.)
"""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from lacunar.measure.angle import Angle, over_cosine, over_tangent
from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.takeoff.cutting.asked import Material, Terms

SQUARE = Angle.of_degrees(0)
_RIGHT = Angle.of_degrees(90)

# What has no exact form is rounded to what a tape shows, to the side on which pieces still fit.
_GRID = {
    Units.INCH: Length.of_inches(Fraction(1, 64)),
    Units.MILLIMETER: Length.of_millimeters(Fraction(1, 10)),
}


@dataclass(frozen=True, slots=True)
class EndCuts:
    """What lies between two pieces along a stick: the saw cut, and how far they lie in each other.

    The lead from one piece's end to the next one's start is `saw - shared`.
    """

    saw: Length
    shared: Length

    def size(self, length: Length) -> Length:
        """What a piece takes of a stick."""
        return length + self.saw - self.shared

    def capacity(self, length: Length, terms: Terms) -> Length:
        """What a stick has for pieces."""
        return length - terms.end_trim * 2 + self.saw - self.shared


def end_cuts(material: Material, terms: Terms) -> EndCuts:
    """The cuts between pieces of a material."""
    if not material.miter:
        return EndCuts(terms.kerf, ZERO)
    grid = _GRID[terms.units]
    saw = over_cosine(terms.kerf, material.miter)
    shared = ZERO
    if material.nested and material.width is not None:
        shared = grid * floor(over_tangent(material.width, _RIGHT - material.miter) / grid)
    return EndCuts(grid * ceil(saw / grid), shared)
