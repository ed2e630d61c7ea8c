"""Columns that stand free in a room: rectangles along both runs, or polygons."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, turn
from lacunar.measure.polygon import Polygon, area, box_of, edges, is_simple

FEWEST_CORNERS = 3


@dataclass(frozen=True, slots=True)
class ColumnSpec:
    """A column as it was told; see `Column`."""

    name: str | None = None
    x: Length | None = None
    y: Length | None = None
    length: Length | None = None
    width: Length | None = None
    points: tuple[Spot, ...] | None = None


@dataclass(frozen=True, slots=True)
class Column:
    """A column between its finished faces, from the datum as the room was measured.

    Either its center, `x` along the length run and `y` along the width run, with its size along
    both, or its corners as `points`, in either direction.
    """

    name: str
    x: Length | None
    y: Length | None
    length: Length | None
    width: Length | None
    points: tuple[Spot, ...]

    @property
    def corners(self) -> Polygon:
        """Its corners, counter-clockwise.

        >>> inch = Length.of_inches
        >>> Column("C", inch(50), inch(40), inch(10), inch(8), ()).corners[0]
        Spot(x=Length(45 in), y=Length(36 in))
        """
        if self.points:
            return counter_clockwise(self.points)
        if self.x is None or self.y is None or self.length is None or self.width is None:
            raise ValueError("the column has not passed the rules")
        half = Spot(self.length, self.width) * Fraction(1, 2)
        at = Spot(self.x, self.y)
        return box_of(at - half, at + half)


def counter_clockwise(points: Sequence[Spot]) -> Polygon:
    """The same corners in the order in which what is within lies to the left."""
    return tuple(points) if area(points) > 0 else tuple(reversed(points))


def is_convex(points: Sequence[Spot]) -> bool:
    """Whether no corner of a polygon turns inward, nor lies in line with those beside it."""
    if not is_simple(points) or not area(points):
        return False
    lines = list(edges(counter_clockwise(points)))
    return all(
        turn(lines[at - 1][1] - lines[at - 1][0], line[1] - line[0]) > 0
        for at, line in enumerate(lines)
    )
