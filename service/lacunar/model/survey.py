"""A room as it was surveyed, wall by wall, and what its grid is to be square to."""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.openings import OutOfSquare

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


class GridMode(StrEnum):
    """How a grid lies between walls out of square: square all the same, or along the walls."""

    KEEP_SQUARE = "keep_square"
    FOLLOW_WALLS = "follow_walls"


class Excess(StrEnum):
    """Where what a room has beyond its clear line goes: where it lies, or half to each end."""

    END = "end"
    SPLIT = "split"


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

    mode: GridMode | None = None
    control: str | None = None
    excess: Excess | None = None
    visible_taper: Length | None = None
    out_of_square: OutOfSquare | None = None
    out_of_square_limit: Length | None = None


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
    """How a grid lies in a surveyed room.

    `control` is a wall, or a member by its name, that `keep_square` keeps square to; `excess` where
    what lies beyond the clear lines goes. A taper at a wall past `visible_taper` is told as one
    that is seen. Where the grid follows the walls, coffers whose corners are out by more than
    `out_of_square_limit` take their crown as `out_of_square` says.
    """

    mode: GridMode
    control: str
    excess: Excess
    visible_taper: Length
    out_of_square: OutOfSquare
    out_of_square_limit: Length

    @property
    def by_member(self) -> bool:
        """Whether the grid is square to a member, and not to a wall."""
        return self.control not in list(Wall)
