"""Openings as they were measured once the beams were up, from which trim is finally cut.

A coffer lies like the room: each side is told by the wall it lies towards. Of the two diagonals,
`rising` runs on the plan from the corner of W4 and W1 to that of W2 and W3, `falling` from the
corner of W1 and W2 to that of W3 and W4.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import Length
from lacunar.model.outline import CheckDiagonal

SidesTaken = tuple[Length | None, Length | None, Length | None, Length | None]
"""What was measured towards W1, W2, W3 and W4; None where nothing was."""

NOT_TAKEN: SidesTaken = (None, None, None, None)


class OutOfSquare(StrEnum):
    """How crown goes into a coffer that is too far out of square for a square frame."""

    COPED_IN_PLACE = "coped_in_place"
    MITRED_TO_CORNERS = "mitred_to_corners"


@dataclass(frozen=True, slots=True)
class CutSideTaken:
    """What was measured along a side of a cut coffer, by its number in the layout, from 1."""

    side: int | None
    length: Length | None


@dataclass(frozen=True, slots=True)
class MeasuredCofferSpec:
    """What was measured of one coffer, as told; see `MeasuredCoffer`."""

    coffer: str | None = None
    sides: SidesTaken = NOT_TAKEN
    rising: Length | None = None
    falling: Length | None = None
    cut_sides: tuple[CutSideTaken, ...] = ()
    cut_diagonals: tuple[CheckDiagonal, ...] = ()


@dataclass(frozen=True, slots=True)
class OpeningsSpec:
    """Measured openings as told; see `Openings`."""

    grid: str | None = None
    coffers: tuple[MeasuredCofferSpec, ...] | None = None
    out_of_square_limit: Length | None = None
    closing_limit: Length | None = None
    difference_limit: Length | None = None
    out_of_square: OutOfSquare | None = None


@dataclass(frozen=True, slots=True)
class MeasuredCoffer:
    """What was measured of one coffer: sides and diagonals, None where nothing was.

    Of a cut coffer `cut_sides` by their numbers, corner 1 being where side 1 starts, and
    `cut_diagonals` from corner to corner.
    """

    coffer: str
    sides: SidesTaken
    rising: Length | None
    falling: Length | None
    cut_sides: tuple[CutSideTaken, ...] = ()
    cut_diagonals: tuple[CheckDiagonal, ...] = ()

    @property
    def by_walls(self) -> bool:
        """Whether anything was told by the walls that sides lie toward."""
        return any(each is not None for each in (*self.sides, self.rising, self.falling))

    @property
    def by_numbers(self) -> bool:
        """Whether anything was told by the numbers of sides and corners."""
        return bool(self.cut_sides or self.cut_diagonals)


@dataclass(frozen=True, slots=True)
class Openings:
    """Measured openings and how they are judged.

    `grid` is the grid they were measured against. Up to `out_of_square_limit`, how far a side
    stands off square at its other end, a coffer takes a square frame and panel; beyond it crown
    goes in as `out_of_square` says. Past `closing_limit` two diagonals contradict each other. A
    size further than `difference_limit` from the plan is cautioned.
    """

    grid: str
    coffers: tuple[MeasuredCoffer, ...]
    out_of_square_limit: Length
    closing_limit: Length
    difference_limit: Length
    out_of_square: OutOfSquare
