"""What measured openings result in: immutable records, each size a figure with its reason."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from lacunar.layout.moulding_records import MouldingPiece, SawSettings
from lacunar.measure.figure import AngleFigure, LengthFigure
from lacunar.model.openings import OutOfSquare


class Squareness(StrEnum):
    """What is known of a coffer's corners."""

    SQUARE = "square"
    OUT_OF_SQUARE = "out_of_square"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class MeasuredSide:
    """A side of a coffer, `toward` a wall; without a measurement there is no difference."""

    toward: str
    planned: LengthFigure
    measured: LengthFigure | None
    difference: LengthFigure | None


@dataclass(frozen=True, slots=True)
class MeasuredDiagonal:
    """A diagonal of a coffer, rising or falling to the right on the plan."""

    name: Literal["rising", "falling"]
    planned: LengthFigure
    measured: LengthFigure | None
    difference: LengthFigure | None


@dataclass(frozen=True, slots=True)
class OpeningCorner:
    """A corner `between` the sides toward two walls, by each diagonal and by both.

    `lean` is how far the longer of its sides stands off square at its other end.
    """

    between: tuple[str, str]
    angle: AngleFigure
    by_rising: AngleFigure | None
    by_falling: AngleFigure | None
    lean: LengthFigure


@dataclass(frozen=True, slots=True)
class MeasuredOpening:
    """A coffer as measured. `sides` toward W1 to W4; `corners` from the one next the datum.

    `fit_length` and `fit_width` are what a square frame or panel is sized by: the shorter of
    opposite sides, or the planned size where one of them was not measured. `corners` are empty
    without a diagonal. `out_of_square` is the greatest lean, or half of what opposite sides differ
    where no corner is known; `missing` what was not measured.
    """

    coffer: str
    sides: tuple[MeasuredSide, MeasuredSide, MeasuredSide, MeasuredSide]
    diagonals: tuple[MeasuredDiagonal, MeasuredDiagonal]
    fit_length: LengthFigure
    fit_width: LengthFigure
    corners: tuple[OpeningCorner, ...]
    closing_error: LengthFigure | None
    out_of_square: LengthFigure | None
    squareness: Squareness
    missing: tuple[str, ...]

    def side(self, number: int) -> LengthFigure:
        """The side from corner `number` on: as measured, or else as planned."""
        found = self.sides[3 - number]
        return found.planned if found.measured is None else found.measured


@dataclass(frozen=True, slots=True)
class CornerCut:
    """How the saw is set for a corner of a coffer that is out of square."""

    between: tuple[str, str]
    saw: SawSettings


@dataclass(frozen=True, slots=True)
class OutOfSquareCrown:
    """Crown of a coffer out of square both ways, and which one was chosen.

    `mitred` is empty, and `corners` too, where no diagonal was measured.
    """

    coffer: str
    chosen: OutOfSquare
    coped: tuple[MouldingPiece, ...]
    mitred: tuple[MouldingPiece, ...]
    corners: tuple[CornerCut, ...]


@dataclass(frozen=True, slots=True)
class PanelCorner:
    """A corner of a tapered panel within the rectangle it is cut from, from its lower left one."""

    between: tuple[str, str]
    along: LengthFigure
    up: LengthFigure


@dataclass(frozen=True, slots=True)
class TaperedPanel:
    """A panel that is no rectangle: its sides toward W1 to W4, and what it is cut from.

    It lies in the rectangle with its side toward W4 parallel to the rectangle's lower edge.
    """

    coffer: str
    sides: tuple[LengthFigure, LengthFigure, LengthFigure, LengthFigure]
    length: LengthFigure
    width: LengthFigure
    corners: tuple[PanelCorner, ...]


@dataclass(frozen=True, slots=True)
class TaperedRip:
    """An edge board: its face at both ends, `start` next the start of the run that it lies along.

    Nothing, or less, is a board that runs out to a point before it gets there.
    """

    toward: str
    start: LengthFigure
    end: LengthFigure


@dataclass(frozen=True, slots=True)
class TaperedCourse:
    """One course of boards: the length of both its edges, and what it is cut from square."""

    number: int
    near_edge: LengthFigure
    far_edge: LengthFigure
    cut_from: LengthFigure


@dataclass(frozen=True, slots=True)
class TaperedField:
    """Boards of a coffer out of square: they lie along the middle between two opposite sides.

    So both edge boards take half of the taper. `turned` is how far the middle line is turned from
    the near side; `start_cut` and `end_cut` are how far end cuts are off square; courses count from
    the near side.
    """

    coffer: str
    turned: AngleFigure
    start_cut: AngleFigure
    end_cut: AngleFigure
    edges: tuple[TaperedRip, TaperedRip]
    courses: tuple[TaperedCourse, ...]


@dataclass(frozen=True, slots=True)
class MeasuredOpenings:
    """All openings that were measured, what follows where they are not square, and what is missing.

    `not_measured` are the coffers of the grid that stand as planned.
    """

    grid: str
    openings: tuple[MeasuredOpening, ...]
    not_measured: tuple[str, ...]
    crown: tuple[OutOfSquareCrown, ...]
    panels: tuple[TaperedPanel, ...]
    boards: tuple[TaperedField, ...]
