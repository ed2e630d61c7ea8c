"""What follows of a grid that follows walls out of square: immutable records."""

from dataclasses import dataclass

from lacunar.layout.opening_records import OutOfSquareCrown, TaperedField, TaperedPanel
from lacunar.measure.figure import AngleFigure, LengthFigure, NumberFigure
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.openings import OutOfSquare


@dataclass(frozen=True, slots=True)
class FollowedFace:
    """A face of a piece of beam, from its start to its end."""

    start: Spot
    end: Spot
    length: LengthFigure


@dataclass(frozen=True, slots=True)
class FollowedPiece:
    """A piece of a beam between what stops it, by its four corners.

    `start_cut` and `end_cut` are how far the ends are off a square cut, above zero where the far
    face goes further there.
    """

    near: FollowedFace
    far: FollowedFace
    start_cut: AngleFigure
    end_cut: AngleFigure


@dataclass(frozen=True, slots=True)
class FollowedBeam:
    """A beam, wall beam or soffit as it lies: its center line from wall to wall, and its pieces.

    Of what stands at a wall, `center` is its face into the room.
    """

    id: str
    center: tuple[Spot, Spot]
    pieces: tuple[FollowedPiece, ...]


@dataclass(frozen=True, slots=True)
class CofferTaper:
    """A coffer whose corners are its own: what it is out of square by, and if that is too much.

    `out_of_square` is how far a side stands off square at its other end, the most of any corner;
    `tapers` whether frames and panels go by its corners.
    """

    coffer: str
    out_of_square: LengthFigure
    tapers: bool


@dataclass(frozen=True, slots=True)
class FollowedWalls:
    """A grid laid out along the walls: beams aslant, and what goes into coffers that taper.

    `room` and `openings` are areas [ft2], between the walls and of all coffers.
    """

    out_of_square: OutOfSquare
    out_of_square_limit: Length
    room: NumberFigure
    openings: NumberFigure
    beams: tuple[FollowedBeam, ...]
    coffers: tuple[CofferTaper, ...]
    crown: tuple[OutOfSquareCrown, ...]
    panels: tuple[TaperedPanel, ...]
    boards: tuple[TaperedField, ...]
