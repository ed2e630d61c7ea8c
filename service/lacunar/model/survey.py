"""A room as it was surveyed, wall by wall, and what its grid is to be square to."""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot

CORNERS = ("W4-W1", "W3-W4", "W2-W3", "W1-W2")
"""The corners by the walls that meet there, counter-clockwise from the datum."""

FourLengths = tuple[Length, Length, Length, Length]
FourAngles = tuple[Angle, Angle, Angle, Angle]
FourSpots = tuple[Spot, Spot, Spot, Spot]


class Wall(StrEnum):
    """The four walls, clockwise from the left of the plan."""

    W1 = "W1"
    W2 = "W2"
    W3 = "W3"
    W4 = "W4"


@dataclass(frozen=True, slots=True)
class DiagonalsSpec:
    """`rising` from the datum to the corner of W2 and W3, `falling` from W1 and W2 to W3 and W4."""

    rising: Length | None = None
    falling: Length | None = None


@dataclass(frozen=True, slots=True)
class SurveySpec:
    """What was measured of a room that may not be square; see `Survey`."""

    sides: FourLengths | None = None
    diagonals: DiagonalsSpec | None = None
    angles: FourAngles | None = None
    points: FourSpots | None = None
    bows: FourLengths | None = None
    tolerance: Length | None = None


@dataclass(frozen=True, slots=True)
class CrookedSpec:
    """How a grid lies in a crooked room; see `Crooked`."""

    control: Wall | None = None
    visible_taper: Length | None = None


@dataclass(frozen=True, slots=True)
class Survey:
    """What was measured: four `sides` (W1 to W4) with diagonals or angles, or four `points`.

    `angles` and `points` are by `CORNERS`; `bows` are how far the middle of each wall stands off
    the straight line between its ends, above zero into the room; `tolerance` is the largest
    closing error that is shared out.
    """

    sides: FourLengths | None
    diagonals: DiagonalsSpec
    angles: FourAngles | None
    points: FourSpots | None
    bows: FourLengths
    tolerance: Length


@dataclass(frozen=True, slots=True)
class Crooked:
    """What the grid is square to, and from where a taper at a wall is told as one that is seen."""

    control: Wall
    visible_taper: Length
