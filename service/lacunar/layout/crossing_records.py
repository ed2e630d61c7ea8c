"""Beams where they meet, and the boards they are cut from: kinds of crossing, ends, pieces."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length

BoardPart = Literal["side", "bottom", "upper_board"]


class BoardCut(StrEnum):
    """How the end of a board is cut.

    `mitred` slants through the thickness of a side, or across a bottom; `pointed` slants from both
    edges to the middle; `notched` is square, with its lower corner taken out for a bottom that
    stands out; `scarfed` slants through the thickness of a bottom, to be lapped.
    """

    SQUARE = "square"
    MITRED = "mitred"
    POINTED = "pointed"
    NOTCHED = "notched"
    SCARFED = "scarfed"


class EndsAt(StrEnum):
    """What the end of a board lies against."""

    WALL = "wall"
    SOFFIT = "soffit"
    SIDE = "side"
    BOARD_EDGE = "board_edge"
    BOARD_END = "board_end"
    WALL_BEHIND = "wall_behind"
    SPLICE = "splice"
    OPEN_CORNER = "open_corner"


@dataclass(frozen=True, slots=True)
class BoardEnd:
    """One end of a board: how it is cut, what it lies against, and where.

    `past` is how far its long point reaches past the face of what stops the beam there (below zero:
    it stays short of it), `past_short` the same of its short point. `angle` is from a square cut.
    `notch_along` and `notch_up` are the corner taken out, along the board and up from its lower
    edge.
    """

    cut: BoardCut
    ends_at: EndsAt
    past: LengthFigure
    past_short: LengthFigure
    angle: Angle | None = None
    notch_along: Length | None = None
    notch_up: Length | None = None


class CrossingKind(StrEnum):
    """What a crossing looks like from below, or what a beam ends at."""

    CROSS = "cross"
    TEE = "tee"
    ELL = "ell"
    END_AT_WALL = "end_at_wall"
    END_AT_SOFFIT = "end_at_soffit"
    OUTSIDE_CORNER = "outside_corner"
    ANGLED_CORNER = "angled_corner"
    END_AT_ANGLED_WALL = "end_at_angled_wall"


@dataclass(frozen=True, slots=True)
class CrossingPlace:
    """Where a kind of crossing occurs: ids of the beam that runs through and of the stopped one.

    At the end of a beam, `through` is the wall or soffit.
    """

    through: str
    stopped: str


@dataclass(frozen=True, slots=True)
class CrossingEnd:
    """The end that a board of one of the two beams has at a crossing."""

    beam: Literal["through", "stopped"]
    part: BoardPart
    end: BoardEnd


@dataclass(frozen=True, slots=True)
class Crossing:
    """One distinct way in which beams meet or end, and everywhere it occurs.

    `id` such as `K1`; `through` and `stopped` the profiles that meet, `through` None at a wall or
    soffit. `runs_past` are the boards of the beam that runs through which are not cut there; `ends`
    how all others end.
    """

    id: str
    kind: CrossingKind
    through: str | None
    stopped: str
    runs_past: tuple[BoardPart, ...]
    ends: tuple[CrossingEnd, ...]
    places: tuple[CrossingPlace, ...]


@dataclass(frozen=True, slots=True)
class PiecePlace:
    """Where one piece goes: the beam, which side of it, and its long points along the other run."""

    beam: str
    side: Literal["near", "far"] | None
    start: Length
    end: Length


@dataclass(frozen=True, slots=True)
class CutPiece:
    """Boards of beams that are alike on the bench, and where each of them goes.

    `length` is between long points, `short_length` between short points; `start` is the end towards
    the datum.
    """

    part: BoardPart
    profile: str
    quantity: int
    length: LengthFigure
    short_length: LengthFigure
    start: BoardEnd
    end: BoardEnd
    places: tuple[PiecePlace, ...]
