"""A room with other than four walls: its outline as it was measured, and what stands at its walls.

Sides are numbered clockwise from the datum, the first up the plan. Their walls have names of their
own: W1 to W4 are those furthest out to the left, top, right and bottom, whichever sides these are;
all others follow clockwise as W5 and so on.
"""

from dataclasses import dataclass

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class SideSpec:
    """One side, and the angle inside the room to the next."""

    length: Length | None = None
    corner: Angle | None = None


@dataclass(frozen=True, slots=True)
class CheckDiagonal:
    """What was measured between two corners: corner 1 is the datum, side 1 goes on from it."""

    from_corner: int | None
    to_corner: int | None
    length: Length | None


@dataclass(frozen=True, slots=True)
class WallStands:
    """What stands at a wall beyond W1 to W4."""

    wall: str
    stands: WallKind


@dataclass(frozen=True, slots=True)
class Surface:
    """What is known of a side beyond its line.

    `finish` is what is on its framing, `bow` how far its middle stands off the line between its
    corners, above zero into the room.
    """

    side: int | None
    finish: Length | None = None
    bow: Length | None = None


@dataclass(frozen=True, slots=True)
class OutlineSpec:
    """What was measured of a room with other than four square walls; see `Outline`."""

    sides: tuple[SideSpec, ...] | None = None
    points: tuple[Spot, ...] | None = None
    diagonals: tuple[CheckDiagonal, ...] = ()
    tolerance: Length | None = None
    walls: tuple[WallStands, ...] = ()
    surfaces: tuple[Surface, ...] = ()


@dataclass(frozen=True, slots=True)
class Side:
    """One side of an outline, and the angle inside the room at its end."""

    length: Length
    corner: Angle


@dataclass(frozen=True, slots=True)
class Outline:
    """An outline at what was measured to: `sides`, or `points`, either clockwise from the datum.

    `diagonals` check it; up to `tolerance` a gap is shared out. `walls` is what stands at walls
    from W5 on, where it is not what stands at the one of W1 to W4 that looks the same way;
    `surfaces` tell of sides what their finish is, where it is not that of this one, and bows.
    """

    sides: tuple[Side, ...]
    points: tuple[Spot, ...]
    diagonals: tuple[CheckDiagonal, ...]
    tolerance: Length
    walls: tuple[WallStands, ...]
    surfaces: tuple[Surface, ...] = ()

    def surface(self, side: int) -> Surface:
        """What is known of a side by its number."""
        return next((each for each in self.surfaces if each.side == side), Surface(side))
