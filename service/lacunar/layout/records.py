"""What setting out results in: immutable records, each length a figure with its reason.

Positions are measured from the datum (lower left corner, finished wall faces) along a run. A line
across a run has a position at each end of it, because rooms are not square: `EndPositions.at_start`
is where it meets the wall at which the *other* run starts, `at_end` where that run ends. In a
rectangular room both are equal.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from lacunar.layout.backing_records import Backing, Heights
from lacunar.layout.board_records import BoardLayout, SheetRip
from lacunar.layout.crossing_records import Crossing, CutPiece
from lacunar.layout.fitting_records import Fitting
from lacunar.layout.followed_records import FollowedWalls
from lacunar.layout.item_records import ItemLayout, WallFeatureCheck
from lacunar.layout.level_records import Levels
from lacunar.layout.moulding_records import Mouldings
from lacunar.layout.opening_records import MeasuredOpenings
from lacunar.layout.outline_records import OutlinedRoom
from lacunar.layout.survey_records import CrookedRoom
from lacunar.measure.figure import CountFigure, LengthFigure
from lacunar.measure.length import Length
from lacunar.model.beams import BottomJoint, FamilyProfile
from lacunar.model.ceiling import Ceiling
from lacunar.model.faults import FigureValue
from lacunar.model.room import RunName
from lacunar.model.stock import Stock
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class Point:
    """A place on the ceiling: `x` along the length run, `y` along the width run, from the datum."""

    x: Length
    y: Length


@dataclass(frozen=True, slots=True)
class EndPositions:
    """Where a line across a run crosses it, at the start and at the end of the other run."""

    at_start: LengthFigure
    at_end: LengthFigure


class ElementKind(StrEnum):
    """What a stretch of a run is."""

    SOFFIT = "soffit"
    WALL_BEAM = "wall_beam"
    COFFER = "coffer"
    BEAM = "beam"
    FIXED_BEAM = "fixed_beam"
    CASED_BEAM = "cased_beam"


@dataclass(frozen=True, slots=True)
class RunElement:
    """One stretch of a run, from its near side (towards the datum) to its far side.

    `id` is the beam's or wall beam's id; for a coffer stretch its row letter or column number.
    """

    kind: ElementKind
    id: str
    near: EndPositions
    far: EndPositions


@dataclass(frozen=True, slots=True)
class Zone:
    """The space between fixed things: how many coffers it holds and how it is shared.

    `start`, `end`, `clear_total` and `openings` are taken at the start of the other run.
    """

    number: int
    start: LengthFigure
    end: LengthFigure
    coffers: CountFigure
    clear_total: LengthFigure
    openings: tuple[LengthFigure, ...]


@dataclass(frozen=True, slots=True)
class RunLayout:
    """One run, divided: its span at each end, its zones, and what stands where, in order."""

    name: RunName
    span: EndPositions
    zones: tuple[Zone, ...]
    elements: tuple[RunElement, ...]


@dataclass(frozen=True, slots=True)
class ProfilePart:
    """One board of a beam profile: what it is, its thickness and width, and its stock."""

    name: Literal["side", "bottom", "backing", "upper_board"]
    thickness: LengthFigure
    width: LengthFigure
    stock: Stock | None
    quantity: int


@dataclass(frozen=True, slots=True)
class BeamProfile:
    """A beam's cross-section, every dimension with its sum.

    `id` such as `P1`; `used_by` the ids of the beams and wall beams that have it; `profile` how its
    family is built. `sides` is 2, or 1 for a wall beam: side boards of a box, edges seen of a flat
    beam. `finished_width` lies between finished side faces, or is that of a flat beam's wider board
    (for a wall beam: from the wall to its face), `overall_width` between the outermost edges,
    `drop` from the finished ceiling to the lowest edge, `net_depth` what of it hangs below the
    panel, `inside_width` and `inside_depth` within the box (None for a flat beam, which has no
    inside and no joint of its bottom), `girth` is the painted surface across.
    """

    id: str
    kind: Literal["box", "flat", "cased", "wall_half", "wall_full", "soffit"]
    profile: FamilyProfile
    sides: int
    bottom_joint: BottomJoint | None
    finished_width: LengthFigure
    overall_width: LengthFigure
    drop: LengthFigure
    net_depth: LengthFigure
    exposed_side: LengthFigure
    inside_width: LengthFigure | None
    inside_depth: LengthFigure | None
    girth: LengthFigure
    reveal: Length
    overhang: Length
    parts: tuple[ProfilePart, ...]
    used_by: tuple[str, ...]


def profiles_by_beam(profiles: Iterable[BeamProfile]) -> dict[str, BeamProfile]:
    """Turn profiles into the profile of each beam and wall beam, by its id."""
    return {beam: profile for profile in profiles for beam in profile.used_by}


@dataclass(frozen=True, slots=True)
class BeamPiece:
    """A stretch of beam between the things that stop it: the clear length between faces."""

    start: LengthFigure
    end: LengthFigure
    length: LengthFigure


@dataclass(frozen=True, slots=True)
class CasedMember:
    """The member inside a cased beam: its faces, its drop and how far the casing stands off it.

    It lies along the other run from `start` to `end`: `near`, `far`, `drop` and `drop_at_end` are
    at these, and so is `clad`, what is on it already, on each side and below. `shift` is of the
    casing's center off the middle of the member's, which wanders by `skew`; `cleat` is the
    thickness of what each side of the casing is fixed to.
    """

    name: str
    start: LengthFigure
    end: LengthFigure
    near: EndPositions
    far: EndPositions
    drop: Length
    drop_at_end: Length
    clad: Length
    cleat: Length
    skew: LengthFigure
    shift: LengthFigure
    shift_limit: LengthFigure


@dataclass(frozen=True, slots=True)
class Beam:
    """A beam along a grid line. `on` is the run its position is measured along.

    `through` says whether it runs wall to wall; if not it is cut between the beams it meets, and
    `pieces` are the clear lengths from the start of the other run. A beam that casings or deeper
    beams stop is cut by them alone; those run on to the wall, through what else stands there.
    """

    id: str
    kind: ElementKind
    on: RunName
    near: EndPositions
    far: EndPositions
    center: EndPositions
    width: LengthFigure
    profile: str
    through: bool
    pieces: tuple[BeamPiece, ...]
    member: CasedMember | None


@dataclass(frozen=True, slots=True)
class WallBeam:
    """What stands at a wall: a half or full beam, or a soffit (which may carry one on its face).

    `pieces` are its clear lengths between the faces that part it and those at its ends. `looks_as`
    is that of W1 to W4 which its wall is, or which looks the same way.
    """

    id: str
    wall: str
    looks_as: str
    kind: WallKind
    on: RunName
    near: EndPositions
    far: EndPositions
    width: LengthFigure
    profile: str
    pieces: tuple[BeamPiece, ...]


@dataclass(frozen=True, slots=True)
class Coffer:
    """One panelled recess. `corners` run from the one next the datum, counter-clockwise."""

    id: str
    row: int
    column: int
    corners: tuple[Point, Point, Point, Point]
    length: LengthFigure
    width: LengthFigure


@dataclass(frozen=True, slots=True)
class SeamBearing:
    """A seam that lies along the joists, `place` from its panel's near edge, in the first coffer.

    `offset` is how far beyond the nearest joist's center it lies, `bearing` what is left to that
    joist's nearer edge; None between joists, where a strip of `backing` has to carry it.
    """

    along: RunName
    place: LengthFigure
    offset: LengthFigure
    bearing: LengthFigure | None
    backing: LengthFigure | None


@dataclass(frozen=True, slots=True)
class PanelFit:
    """One size of sheet panel: which coffers it fills, its size, and the seams it needs.

    A seam runs where a piece exceeds the sheet in a direction; `seams` is pieces along less one,
    the better of both ways of turning the sheet, or that of the grain. `long_edge` is the run that
    the sheets' long edge lies along; seams are placed from the panel's edge next the datum.
    """

    coffers: tuple[str, ...]
    length: LengthFigure
    width: LengthFigure
    long_edge: RunName
    seams: CountFigure
    seams_along_length: tuple[LengthFigure, ...]
    seams_along_width: tuple[LengthFigure, ...]
    seam_bearings: tuple[SeamBearing, ...]


class MarkKind(StrEnum):
    """What a layout mark stands for."""

    WALL = "wall"
    FACE = "face"
    BACKING = "backing"
    CENTER = "center"
    MEMBER = "member"
    MEMBER_CENTER = "member_center"


@dataclass(frozen=True, slots=True)
class Mark:
    """A running position for a pole, floor or ceiling: exact, and rounded once from the datum.

    `side` is `near` or `far` for faces and backing, `at` for centers; `of` is the id it belongs to.
    `from_framing` is the same place from the framing of the start wall, None where the finish is
    unknown.
    """

    kind: MarkKind
    of: str
    side: Literal["near", "far", "at"]
    exact: LengthFigure
    mark: Length
    from_framing: LengthFigure | None
    mark_from_framing: Length | None


@dataclass(frozen=True, slots=True)
class RunMarks:
    """All marks of one run at one end (`start` or `end` of the other run), in order."""

    run: RunName
    end: Literal["start", "end"]
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class Clearance:
    """Headroom under one beam profile against the limit in the spec."""

    profile: str
    clear_height: LengthFigure
    limit: Length
    enough: bool


@dataclass(frozen=True, slots=True)
class Caution:
    """Advice about safety, code or craft. A caution is never a fault."""

    code: str
    text: str
    figures: Mapping[str, FigureValue]
    pointer: str = ""


@dataclass(frozen=True, slots=True)
class CasingChoice:
    """A cased beam centered and shifted, side by side: the openings each gives beside it."""

    beam: str
    chosen: str
    centered_openings: tuple[Length, ...]
    shifted_openings: tuple[Length, ...]
    shift: Length


# A layout is ordered and cautioned as a whole, once the rest of it is there.
NOT_YET_ORDERED = Fitting((), ())


@dataclass(frozen=True, slots=True)
class Layout:
    """Everything set out for one ceiling. `outline` runs counter-clockwise from the datum.

    `crooked` is None where the room was not surveyed, `followed` where the grid does not follow
    walls out of square, `outlined` where the room has four walls; else
    `coffers` are the whole ones, and those that walls cut are in there.
    `grid_id` names its grid; `measured_openings` is None where nothing was measured.
    """

    ceiling: Ceiling
    outline: tuple[Point, ...]
    length: RunLayout
    width: RunLayout
    beams: tuple[Beam, ...]
    wall_beams: tuple[WallBeam, ...]
    coffers: tuple[Coffer, ...]
    grid_id: str
    profiles: tuple[BeamProfile, ...]
    panels: tuple[PanelFit, ...]
    mouldings: Mouldings
    boards: BoardLayout | None
    sheet_rips: tuple[SheetRip, ...]
    marks: tuple[RunMarks, ...]
    headroom: tuple[Clearance, ...]
    heights: Heights
    levels: Levels | None
    backing: Backing
    casing_choices: tuple[CasingChoice, ...]
    crossings: tuple[Crossing, ...]
    pieces: tuple[CutPiece, ...]
    items: ItemLayout
    wall_features: tuple[WallFeatureCheck, ...]
    measured_openings: MeasuredOpenings | None
    crooked: CrookedRoom | None
    followed: FollowedWalls | None = None
    fitting: Fitting = NOT_YET_ORDERED
    cautions: tuple[Caution, ...] = ()
    outlined: OutlinedRoom | None = None

    def run(self, name: RunName) -> RunLayout:
        """The run of that name."""
        return self.length if name is RunName.LENGTH else self.width

    @property
    def profile_of(self) -> dict[str, BeamProfile]:
        """The profile of each beam and wall beam, by its id."""
        return profiles_by_beam(self.profiles)

    def profile(self, profile_id: str) -> BeamProfile:
        """The profile of that id."""
        return next(p for p in self.profiles if p.id == profile_id)
