"""What setting out mouldings results in: immutable records, each size a figure with its reason.

`left` and `right` are those of someone who faces a piece from inside the coffer.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, LengthFigure
from lacunar.measure.length import Length
from lacunar.model.room import RunName


class Hand(StrEnum):
    """One of two sides, to someone who stands at the saw or faces a piece in its place."""

    LEFT = "left"
    RIGHT = "right"


class Lies(StrEnum):
    """How crown lies on the saw: as it stands in its corner, upside down; or on its back."""

    NESTED = "nested"
    FLAT = "flat"


class Edge(StrEnum):
    """An edge of crown: the one on the ceiling, or the one on the wall or beam."""

    CEILING = "ceiling"
    WALL = "wall"


@dataclass(frozen=True, slots=True)
class SawCut:
    """One cut: of an `end` of a piece, seen in its place, to the side of the blade that is kept.

    `against_fence` is the edge at the fence; `table` the side its handle turns to; flat, the blade
    is tilted to the left, so that a saw that tilts but one way makes all four.
    """

    lies: Lies
    end: Hand
    against_fence: Edge
    table: Hand
    keep: Hand


@dataclass(frozen=True, slots=True)
class SawSettings:
    """How a saw is set for one corner, and whether it goes so far.

    `nested` is upside down, ceiling edge on the table and beam edge against the fence, as crown
    stands in its corner; `flat` is on its back. Miters are from a square cut, the bevel from
    upright. All have one size at an inside and an outside corner of the same walls, by the other
    hand; `cuts` tell which, none where the walls run straight on.
    """

    corner: Angle
    nested_miter: AngleFigure
    flat_miter: AngleFigure
    flat_bevel: AngleFigure
    nested_within_limits: bool
    flat_within_limits: bool
    cuts: tuple[SawCut, ...]


class Rake(StrEnum):
    """Which way a raked run goes, away from the corner where it meets a level one."""

    CLIMBS = "climbs"
    FALLS = "falls"


@dataclass(frozen=True, slots=True)
class RakedMeeting:
    """Whether level and raked runs of one profile meet in a flat joint, or how far they miss it.

    With the edges on the walls meeting in the corner, `raked_height` is how far above them the
    raked run's other edge passes the level run's, which is there by its own drop; `apart` the
    difference. `run_drop` and `run_face` are what a profile run for the rake would have, square to
    it and with the same projection; `wider` is by how much its face is wider, below zero narrower.
    None where the face is not known, where they meet, or where no profile can be run for the rake.
    """

    slope: Angle
    rake: Rake
    meets: bool
    raked_height: LengthFigure | None
    apart: LengthFigure | None
    run_drop: LengthFigure | None
    run_face: LengthFigure | None
    wider: LengthFigure | None


@dataclass(frozen=True, slots=True)
class SawSheet:
    """Saw settings with the crown they are for; without its face its sizes are not known.

    `ceiling_edge` is what the edge at the ceiling differs from the edge on the wall, at each mitred
    end. `fence_height` is the tallest crown that the saw takes nested, where that is known;
    `raked` is what comes of a raked run at the corner, if one was asked for.
    """

    spring_from_wall: AngleFigure
    settings: SawSettings
    face: LengthFigure | None
    drop: LengthFigure | None
    projection: LengthFigure | None
    ceiling_edge: LengthFigure | None
    fence_height: Length | None
    raked: RakedMeeting | None


@dataclass(frozen=True, slots=True)
class Nailer:
    """The largest strip of triangular section that leaves the clearance behind the crown.

    `height` lies against the side, `depth` against the ceiling or panel; its slant is the crown's
    spring.
    """

    height: LengthFigure
    depth: LengthFigure


@dataclass(frozen=True, slots=True)
class CrownSection:
    """Crown as it stands: every size with its reason.

    `back_drop` and `back_projection` are where its back meets side and ceiling; `land_opening` is
    what its flats open by where it stands at another spring than it is milled to. Without room
    behind it there is no `nailer`.
    """

    face: LengthFigure
    spring_from_wall: AngleFigure
    drop: LengthFigure
    projection: LengthFigure
    back_drop: LengthFigure
    back_projection: LengthFigure
    land_opening: LengthFigure | None
    nailer: Nailer | None
    saw: SawSettings


class PieceEnd(StrEnum):
    """How an end of a moulding is cut: at an inside corner mitred or coped, or square to butt."""

    MITRED = "mitred"
    COPED = "coped"
    SQUARE = "square"


@dataclass(frozen=True, slots=True)
class MouldingPiece:
    """A piece of moulding in one coffer, cut `quantity` times.

    `moulding` is "Crown" or a flat moulding's name; `along` the run it lies along; `toward` the
    walls toward which its sides of the coffer lie, one for each piece. `long_point` is its length
    at the edge on the beam, `short_point` at the edge that stands out furthest. A coped end is
    first mitred: its long point is the miter's.
    """

    moulding: str
    along: RunName
    toward: tuple[str, ...]
    quantity: int
    left_end: PieceEnd
    right_end: PieceEnd
    long_point: LengthFigure
    short_point: LengthFigure


@dataclass(frozen=True, slots=True)
class NailerPiece:
    """The strips behind the crown along one run of a coffer: how many, and how long."""

    along: RunName
    quantity: int
    length: LengthFigure


@dataclass(frozen=True, slots=True)
class CofferTrim:
    """What goes into the coffers of one size with the same about them.

    `seen_length` and `seen_width` are what the mouldings at the ceiling leave to be seen,
    `mouth_length` and `mouth_width` what overhangs and mouldings at the lower edges leave to pass
    things through. `nailers` go up behind the crown, those of the longer way first.
    `running_length` is the crown of one coffer, long points end to end.
    `frame_passes_mouth` says whether a bench frame can be lifted in level; None where there is no
    frame.
    """

    coffers: tuple[str, ...]
    seen_length: LengthFigure
    seen_width: LengthFigure
    mouth_length: LengthFigure
    mouth_width: LengthFigure
    pieces: tuple[MouldingPiece, ...]
    nailers: tuple[NailerPiece, ...]
    running_length: LengthFigure | None
    frame_passes_mouth: bool | None


@dataclass(frozen=True, slots=True)
class SideCover:
    """What mouldings leave to be seen of the sides of one profile."""

    profile: str
    side_left: LengthFigure


@dataclass(frozen=True, slots=True)
class Mouldings:
    """Crown and flat mouldings of a ceiling; without any, the coffers' openings as they are."""

    crown: CrownSection | None
    sides: tuple[SideCover, ...]
    coffers: tuple[CofferTrim, ...]

    def of(self, coffer: str) -> CofferTrim:
        """The trim of a coffer."""
        return next(trim for trim in self.coffers if coffer in trim.coffers)
