"""What a room with other than four walls comes to: its walls, and the coffers that they cut."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from lacunar.layout.board_records import Courses
from lacunar.layout.moulding_records import PieceEnd, SawSettings
from lacunar.measure.figure import AngleFigure, CountFigure, LengthFigure, NumberFigure
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.room import RunName
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class OutlineCorrection:
    """A side as measured, and what it was taken for so that the outline closes."""

    side: int
    measured: Length
    adjusted: LengthFigure


@dataclass(frozen=True, slots=True)
class OutlineCheck:
    """What was measured between two corners, what the sides make it, and the difference."""

    from_corner: int
    to_corner: int
    measured: Length
    computed: LengthFigure
    off: LengthFigure


@dataclass(frozen=True, slots=True)
class OutlineWall:
    """One side of the outline as a wall.

    `wall` is its name; two sides in one line furthest out share it. `side` is its number in the
    spec, `looks_as` that of W1 to W4 which looks the same way, or nearly. `start` and `end` are its
    corners, clockwise, `corner` the angle inside the room at its end. `angled` if it lies along
    neither run; else `on` is the run across which it stands, `at` its place there, the innermost,
    and `face` that of what stands at it, each with its mark. `beam` is the id of that, `face_start`
    and `face_end` the corners of its face. `bow` is how far its middle stands into the room,
    `scribe` what that leaves to be fitted, `widest` what the strip from the wall to the face takes.
    """

    wall: str
    side: int
    looks_as: str
    start: Spot
    end: Spot
    length: LengthFigure
    corner: AngleFigure
    angled: bool
    stands: WallKind
    beam: str | None
    on: RunName | None
    at: LengthFigure | None
    at_mark: Length | None
    face: LengthFigure | None
    face_mark: Length | None
    face_start: Spot | None
    face_end: Spot | None
    taper: LengthFigure | None
    finish: Length | None
    bow: Length
    scribe: LengthFigure
    widest: LengthFigure


class Joint(StrEnum):
    """How two pieces of crown meet in a corner."""

    MITRED = "mitred"
    COPED = "coped"


NAILER = "Nailer"
"""What the strip behind the crown is called among the strips of a side."""


@dataclass(frozen=True, slots=True)
class SideStrip:
    """A flat moulding, or the nailer behind the crown, along a side of a cut coffer.

    `moulding` is its name. Ends are as seen from inside the coffer: mitred to the strip beside, or
    square to butt; `left_cut` and `right_cut` are the angles between the side and each cut, so that
    an end against a wall that is not square to the side is beveled to it. `long_point` is at the
    edge on the side, `short_point` at that which stands out, the longer one at corners that jut in;
    `cut_from` and `between_ends` as those of crown. Without `has_room` there is none of it.
    """

    moulding: str
    left_end: PieceEnd
    right_end: PieceEnd
    left_cut: AngleFigure
    right_cut: AngleFigure
    long_point: LengthFigure
    short_point: LengthFigure
    cut_from: LengthFigure
    between_ends: LengthFigure
    has_room: bool


@dataclass(frozen=True, slots=True)
class PartialSide:
    """A side of a coffer that a wall cuts, from `start` to `end`, and its corner at the end.

    `against` is the id of the beam or wall beam there, or the name of a bare wall. The rest is its
    crown, None without: its ends as seen from inside the coffer, and whether it is shorter than the
    shortest piece that is to be cut. `cut_from` is between the points furthest out at both ends,
    whichever edge they are on, `between_ends` between those furthest in. `strips` are its flat
    mouldings and the nailer behind the crown.
    """

    start: Spot
    end: Spot
    length: LengthFigure
    against: str
    corner: AngleFigure
    left_end: PieceEnd | None
    right_end: PieceEnd | None
    long_point: LengthFigure | None
    short_point: LengthFigure | None
    too_short: bool | None
    cut_from: LengthFigure | None
    between_ends: LengthFigure | None
    strips: tuple[SideStrip, ...] = ()


@dataclass(frozen=True, slots=True)
class PartialCorner:
    """A distinct corner that crown turns in cut coffers, with how it meets there and the saw."""

    corner: AngleFigure
    juts_in: bool
    joint: Joint
    settings: SawSettings
    coffers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CourseLength:
    """Boards of one length in a cut coffer, counted from the first course."""

    length: LengthFigure
    boards: int


@dataclass(frozen=True, slots=True)
class PartialHole:
    """Where a column stands free in a coffer: the coffer's sides about it, clockwise."""

    sides: tuple[PartialSide, ...]

    @property
    def corners(self) -> tuple[Spot, ...]:
        """Its corners, clockwise."""
        return tuple(side.start for side in self.sides)


@dataclass(frozen=True, slots=True)
class PartialCoffer:
    """A coffer that walls or columns cut: its sides counter-clockwise, and what fills it.

    `reach_length` and `reach_width` are those of the rectangle about it, `panel_length` and
    `panel_width` of the piece that a panel is cut from; `courses` what boards are cut to. None of
    these where nothing fills it, or the other does. `panel_corners` are those of the panel from the
    lower left corner of that piece, counter-clockwise. `laid` are the courses side by side across
    the rectangle, their middle on its middle, None without boards. `holes` are about columns in it,
    and `crown_meets` is whether two runs of its crown would take the same place.
    """

    id: str
    row: int
    column: int
    sides: tuple[PartialSide, ...]
    area: NumberFigure
    reach_length: LengthFigure
    reach_width: LengthFigure
    panel_length: LengthFigure | None
    panel_width: LengthFigure | None
    courses: tuple[CourseLength, ...]
    holes: tuple[PartialHole, ...] = ()
    crown_meets: bool = False
    panel_corners: tuple[Spot, ...] = ()
    laid: Courses | None = None

    @property
    def all_sides(self) -> tuple[PartialSide, ...]:
        """Its sides, and those about columns in it."""
        return (*self.sides, *(side for hole in self.holes for side in hole.sides))

    @property
    def corners(self) -> tuple[Spot, ...]:
        """Its corners, counter-clockwise."""
        return tuple(side.start for side in self.sides)


@dataclass(frozen=True, slots=True)
class MeasuredCutSide:
    """A side of a cut coffer by its number; without a measurement there is no difference."""

    side: int
    planned: LengthFigure
    measured: LengthFigure | None
    difference: LengthFigure | None


@dataclass(frozen=True, slots=True)
class MeasuredCutDiagonal:
    """What was measured across a cut coffer, from corner to corner."""

    from_corner: int
    to_corner: int
    planned: LengthFigure
    measured: LengthFigure
    difference: LengthFigure


@dataclass(frozen=True, slots=True)
class MeasuredCutCoffer:
    """A cut coffer as measured.

    `as_measured` is what all that goes into it is cut to, None while not all of its corners
    are known; `missing` is what would tell them. `closing_error` is the most that any measurement
    disagrees with the corners that the others make, None where none is over.
    """

    coffer: str
    sides: tuple[MeasuredCutSide, ...]
    diagonals: tuple[MeasuredCutDiagonal, ...]
    closing_error: LengthFigure | None
    missing: tuple[str, ...]
    as_measured: PartialCoffer | None


@dataclass(frozen=True, slots=True)
class AngledBeam:
    """A beam at an angled wall: its corners, how long it is at the wall and at its face.

    `side_long` and `side_short` are of its side, `bottom_long` and `bottom_short` of its bottom,
    at the long and the short points; both are mitred by `start_miter` and `end_miter`, from square,
    as is its backing, None for a flat beam.
    """

    id: str
    wall: str
    profile: str
    corners: tuple[Spot, ...]
    width: LengthFigure
    at_wall: LengthFigure
    at_face: LengthFigure
    side_long: LengthFigure
    side_short: LengthFigure
    bottom_long: LengthFigure
    bottom_short: LengthFigure
    backing_long: LengthFigure | None
    backing_short: LengthFigure | None
    start_miter: AngleFigure
    end_miter: AngleFigure


@dataclass(frozen=True, slots=True)
class BeamSpan:
    """Where a beam stands in the room, from `start` to `end` along it, by what it ends at.

    At an angled wall `start` and `end` are where its full width ends; it goes on to a slanted end,
    by `start_slant` or `end_slant` beyond that on its longer side.
    """

    beam: str
    on: RunName
    start: LengthFigure
    end: LengthFigure
    start_at: str
    end_at: str
    start_slant: LengthFigure | None
    end_slant: LengthFigure | None
    start_longer: Literal["near", "far"] | None
    end_longer: Literal["near", "far"] | None


@dataclass(frozen=True, slots=True)
class RoomColumn:
    """A column in the room, its corners counter-clockwise.

    `left` and `right` are its outermost places along the length run, `lower` and `upper` those
    along the width run, each with its mark. `stands_in` are beams that it is wholly within and that
    go on about it, `stops` those that end at it, `leaves_beside` those of them that are not wholly
    in its way, `cuts` the coffers that it takes something of.
    """

    name: str
    corners: tuple[Spot, ...]
    left: LengthFigure
    left_mark: Length
    right: LengthFigure
    right_mark: Length
    lower: LengthFigure
    lower_mark: Length
    upper: LengthFigure
    upper_mark: Length
    area: NumberFigure
    stands_in: tuple[str, ...]
    stops: tuple[str, ...]
    leaves_beside: tuple[str, ...]
    cuts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OutlinedRoom:
    """A room with other than four walls, or with columns in it.

    `closing_error` is None where points were given. `spans` are of beams and of beams at walls,
    `beams_left_out` those of the grid that stand nowhere in the room, `coffers_left_out` its
    coffers outside. The `area` is that between walls less that of columns.
    """

    closing_error: LengthFigure | None
    corrections: tuple[OutlineCorrection, ...]
    checks: tuple[OutlineCheck, ...]
    walls: tuple[OutlineWall, ...]
    area: NumberFigure
    spans: tuple[BeamSpan, ...]
    partial_coffers: tuple[PartialCoffer, ...]
    corners: tuple[PartialCorner, ...]
    angled_beams: tuple[AngledBeam, ...]
    coffers_left_out: CountFigure
    beams_left_out: tuple[str, ...]
    columns: tuple[RoomColumn, ...] = ()
    measured: tuple[MeasuredCutCoffer, ...] = ()

    @property
    def coffers_as_cut(self) -> tuple[PartialCoffer, ...]:
        """The cut coffers that things are cut to: as measured, or else as planned."""
        known = {each.coffer: each.as_measured for each in self.measured}
        return tuple(known.get(coffer.id) or coffer for coffer in self.partial_coffers)
