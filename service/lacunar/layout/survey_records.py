"""What a survey comes to, and how a square grid lies in a crooked room: immutable records."""

from dataclasses import dataclass
from typing import Literal

from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, LengthFigure
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.room import RunName
from lacunar.model.stock import Stock

Mode = Literal["keep_square", "follow_walls"]


@dataclass(frozen=True, slots=True)
class LengthCorrection:
    """A measured side or diagonal, and what it was taken for so that the survey closes."""

    of: str
    measured: Length
    adjusted: LengthFigure


@dataclass(frozen=True, slots=True)
class AngleCorrection:
    """A measured corner angle, and what it was taken for."""

    of: str
    measured: Angle
    adjusted: AngleFigure


@dataclass(frozen=True, slots=True)
class SurveyedCorner:
    """A corner between finished faces, named by its walls, with its angle inside the room."""

    id: str
    angle: AngleFigure


@dataclass(frozen=True, slots=True)
class SurveyedWall:
    """A wall between finished faces: its length, and how far its middle bows into the room."""

    wall: str
    length: LengthFigure
    bow: Length


@dataclass(frozen=True, slots=True)
class SurveyReport:
    """A survey closed. `closing_error` is None where nothing was measured that could contradict."""

    kind: Literal["diagonals", "angles", "points"]
    closing_error: LengthFigure | None
    tolerance: Length
    lengths: tuple[LengthCorrection, ...]
    angles: tuple[AngleCorrection, ...]
    corners: tuple[SurveyedCorner, ...]
    walls: tuple[SurveyedWall, ...]
    rising: LengthFigure
    falling: LengthFigure


@dataclass(frozen=True, slots=True)
class CrookedRun:
    """A run in a crooked room, at both ends of the run across it.

    `clear` is the narrowest clear line, which is divided; `moved` how far it was moved towards the
    end wall, so that both ends have their share of the excess; `before_start` and
    `before_end` are how far the start wall lies before it, `span_at_start` and `span_at_end` from
    wall to wall.
    """

    run: RunName
    clear: LengthFigure
    moved: LengthFigure
    before_start: LengthFigure
    before_end: LengthFigure
    span_at_start: LengthFigure
    span_at_end: LengthFigure


@dataclass(frozen=True, slots=True)
class StripBoard:
    """A board of a beam at a wall: its width at both ends of the clear line along it.

    `widest` is what it is ripped to before it is tapered and scribed; `stock` what that takes: the
    beam's own, or the next wider one of its kind. `too_narrow` if there is none.
    """

    part: Literal["bottom", "upper_board"]
    at_start: LengthFigure
    at_end: LengthFigure
    widest: LengthFigure
    stock: Stock
    too_narrow: bool


@dataclass(frozen=True, slots=True)
class CrookedWall:
    """What a wall's strip must take up: its width at the ends of the clear lines along it.

    `strip` is the id of the wall beam or soffit there, None at a bare wall, whose widths are those
    of the gap; `taper` is the difference of both, `seen` whether it is past the threshold, `scribe`
    what is to be left on the edge at the wall, `widest` the board to start from.
    """

    wall: str
    strip: str | None
    at_start: LengthFigure
    at_end: LengthFigure
    taper: LengthFigure
    seen: bool
    scribe: LengthFigure
    widest: LengthFigure
    boards: tuple[StripBoard, ...] = ()


@dataclass(frozen=True, slots=True)
class ModeCorner:
    """A corner of a coffer: where it lies, and its angle inside the coffer."""

    at: Spot
    angle: AngleFigure


@dataclass(frozen=True, slots=True)
class ModeCoffer:
    """A coffer in one way of laying out: four corners, sides by the wall each looks to, diagonals.

    `corners` are counter-clockwise from the one next the datum, `rising` the diagonal from there;
    `out_of_square` is the most that any of its corners is off a right angle.
    """

    id: str
    corners: tuple[ModeCorner, ModeCorner, ModeCorner, ModeCorner]
    towards_w1: LengthFigure
    towards_w2: LengthFigure
    towards_w3: LengthFigure
    towards_w4: LengthFigure
    rising: LengthFigure
    falling: LengthFigure
    out_of_square: AngleFigure

    @property
    def sides(self) -> tuple[LengthFigure, LengthFigure, LengthFigure, LengthFigure]:
        """Its sides towards W1, W2, W3 and W4."""
        return self.towards_w1, self.towards_w2, self.towards_w3, self.towards_w4


@dataclass(frozen=True, slots=True)
class CrookedMode:
    """One way of laying a grid out in a crooked room, to be held against the other.

    `keep_square`: beams square to the control line, coffers equal, walls take up the rest.
    `follow_walls`: each wall's line divided by itself, coffers with four unlike corners.
    """

    mode: Mode
    chosen: bool
    shortest: LengthFigure
    longest: LengthFigure
    narrowest: LengthFigure
    widest: LengthFigure
    out_of_square: AngleFigure
    coffers: tuple[ModeCoffer, ...]


@dataclass(frozen=True, slots=True)
class CrookedRoom:
    """How the grid lies in a surveyed room. `square` if all walls are, so that nothing tapers.

    `mode` is the way the grid is laid out; kept square, `control` is the wall or, where
    `control_by` says so, the member that it is square to. `grid_diagonal` is both diagonals of the
    clear rectangle, by which a square grid is checked.
    """

    survey: SurveyReport
    mode: Mode
    control: str | None
    control_by: Literal["wall", "member"] | None
    square: bool
    grid_diagonal: LengthFigure
    runs: tuple[CrookedRun, ...]
    walls: tuple[CrookedWall, ...]
    modes: tuple[CrookedMode, ...]
