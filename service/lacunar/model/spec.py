"""The ceiling as it was asked for: the spec, with everything the caller may leave open left open.

These records have the field names of the JSON spec. `None` means "not said"; `assumptions.resolve`
turns a `CeilingSpec` into a `Ceiling` in which everything is decided and lists what it assumed.
"""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.beams import BottomJoint, Depth, FamilyProfile, Through
from lacunar.model.boards import (
    BoardName,
    BoardRun,
    BoardSpecies,
    CenteredOn,
    Cut,
    Fastening,
    Moisture,
)
from lacunar.model.ceiling_items import ItemSpec, WallFeatureSpec
from lacunar.model.columns import ColumnSpec
from lacunar.model.drawing import Paper, SheetNumber, StoryPoles
from lacunar.model.fasteners import FastenerKind
from lacunar.model.fixing import BetweenJoists, Service
from lacunar.model.grid import Parity, WallCondition
from lacunar.model.look import LookSpec
from lacunar.model.moulding import CrownSpec, FlatMouldingSpec
from lacunar.model.openings import OpeningsSpec
from lacunar.model.outline import OutlineSpec
from lacunar.model.panel import PanelKind, SeamPlaces, Seat, SheetSize
from lacunar.model.room import Casing, CeilingState, JoistKind, MeasuredTo, RunName
from lacunar.model.stations import LevelingSpec, StationSpec
from lacunar.model.stock import Stock
from lacunar.model.survey import CrookedSpec, SurveySpec
from lacunar.model.take_off import TakeOffSpec
from lacunar.model.woods import Species


@dataclass(frozen=True, slots=True)
class MemberSpec:
    """A structural member below the ceiling, to be cased; see `model.room.Member`."""

    on: RunName | None
    center: Length | None
    width: Length | None
    drop: Length | None
    name: str | None = None
    casing: Casing | None = None
    clearance: Length | None = None
    cased_width: Length | None = None
    center_at_end: Length | None = None
    drop_at_end: Length | None = None
    starts_at: Length | None = None
    ends_at: Length | None = None
    cladding: Length | None = None
    cleat: Length | None = None


@dataclass(frozen=True, slots=True)
class JoistsSpec:
    """The joists above the ceiling; see `model.room.Joists`."""

    parallel_to: RunName | None = None
    spacing: Length | None = None
    first: Length | None = None
    width: Length | None = None
    kind: JoistKind | None = None
    ceiling: CeilingState | None = None
    existing_finish: Length | None = None
    species: Species | None = None
    gravity: Fraction | None = None


@dataclass(frozen=True, slots=True)
class WoodSpec:
    """What boards are made of; see `model.fixing.Wood`."""

    species: Species | None = None
    gravity: Fraction | None = None
    moisture: Fraction | None = None


@dataclass(frozen=True, slots=True)
class FixingSpec:
    """How backing is fixed, and what beams weigh; see `model.fixing.Fixing`."""

    between_joists: BetweenJoists | None = None
    fastener: FastenerKind | None = None
    size: str | None = None
    length: Length | None = None
    at_crossing: int | None = None
    least_penetration: Length | None = None
    shim: Length | None = None
    block_through: Length | None = None
    block_spacing: Length | None = None
    end_distance: Length | None = None
    service: Service | None = None
    trim: WoodSpec = WoodSpec()
    backing: WoodSpec = WoodSpec()
    panel_gravity: Fraction | None = None


@dataclass(frozen=True, slots=True)
class RoomSpec:
    """The room; see `model.room.Room`. Length, width and height suffice, or height and a survey."""

    length: Length | None = None
    width: Length | None = None
    height: Length | None = None
    measured_to: MeasuredTo | None = None
    wall_finish: tuple[Length, Length, Length, Length] | None = None
    headroom: Length | None = None
    code_edition: str | None = None
    members: tuple[MemberSpec, ...] = ()
    joists: JoistsSpec | None = None
    survey: SurveySpec | None = None
    crooked: CrookedSpec | None = None
    outline: OutlineSpec | None = None
    stations: tuple[StationSpec, ...] = ()
    leveling: LevelingSpec | None = None
    ceiling_items: tuple[ItemSpec, ...] = ()
    wall_features: tuple[WallFeatureSpec, ...] = ()
    columns: tuple[ColumnSpec, ...] = ()


@dataclass(frozen=True, slots=True)
class BoxSpec:
    """A family of beams; see `model.beams.Box` and `model.beams.Flat`."""

    sides: Stock | None = None
    bottom: Stock | None = None
    backing: Stock | None = None
    bottom_joint: BottomJoint | None = None
    reveal: Length | None = None
    overhang: Length | None = None
    allowance: Length | None = None
    width: Length | None = None
    drop: Length | None = None
    profile: FamilyProfile | None = None
    upper_board: Stock | None = None

    @property
    def flat(self) -> bool:
        """Whether it is to be flat; a family is of boxes unless it is told otherwise."""
        return self.profile is FamilyProfile.FLAT


@dataclass(frozen=True, slots=True)
class BeamsSpec:
    """The two families. `lengthwise` of None is the same as the crosswise family."""

    crosswise: BoxSpec | None = None
    lengthwise: BoxSpec | None = None
    through: Through | None = None
    depth: Depth | None = None
    look: LookSpec | None = None


@dataclass(frozen=True, slots=True)
class FixedBeamSpec:
    """A beam that lines up with something; see `model.grid.FixedBeam`."""

    center: Length | None
    name: str | None = None
    width: Length | None = None


@dataclass(frozen=True, slots=True)
class RunSpec:
    """How one run is divided; see `model.grid.Run`.

    At most one of `coffers`, `largest_opening`, `wished_opening` says how many coffers there are;
    `coffers` is a total or one count per zone.
    """

    coffers: int | tuple[int, ...] | None = None
    largest_opening: Length | None = None
    wished_opening: Length | None = None
    parity: Parity | None = None
    weights: tuple[Fraction, ...] | None = None
    held: Length | None = None
    start: WallCondition | None = None
    end: WallCondition | None = None
    fixed_beams: tuple[FixedBeamSpec, ...] = ()


@dataclass(frozen=True, slots=True)
class GridSpec:
    """Both runs."""

    length: RunSpec = RunSpec()
    width: RunSpec = RunSpec()

    def run(self, name: RunName) -> RunSpec:
        """The run of that name."""
        return self.length if name is RunName.LENGTH else self.width


@dataclass(frozen=True, slots=True)
class MovementSpec:
    """What decides how much boards move; see `model.boards.Movement`."""

    species: BoardSpecies | None = None
    cut: Cut | None = None
    coefficient: Fraction | None = None
    fastening: Fastening | None = None
    now: Moisture | None = None
    driest: Moisture | None = None
    dampest: Moisture | None = None
    trim_cover: Length | None = None


@dataclass(frozen=True, slots=True)
class PanelSpec:
    """What fills a coffer; see `model.panel.Panel` and `model.boards.Boards`."""

    kind: PanelKind | None = None
    sheet: SheetSize | None = None
    thickness: Length | None = None
    seat: Seat | None = None
    gap: Length | None = None
    grain: RunName | None = None
    seams: SeamPlaces | None = None
    board: BoardName | None = None
    cover: Length | None = None
    tongue: Length | None = None
    parallel_to: RunName | None = None
    run: BoardRun | None = None
    centered_on: CenteredOn | None = None
    movement: MovementSpec | None = None


@dataclass(frozen=True, slots=True)
class StockSpec:
    """What is true of all stock; see `model.ceiling.StockRules`."""

    kerf: Length | None = None
    longest_board: Length | None = None
    longest_sheet: Length | None = None


@dataclass(frozen=True, slots=True)
class DrawingSpec:
    """Paper and title-block fields; see `model.drawing.Drawing`."""

    paper: Paper | None = None
    sheets: tuple[SheetNumber, ...] | None = None
    story_poles: StoryPoles | None = None
    number: str | None = None
    revision: str | None = None
    date: str | None = None
    status: str | None = None
    owner: str | None = None
    creator: str | None = None
    approver: str | None = None


@dataclass(frozen=True, slots=True)
class CeilingSpec:
    """One room's whole job as asked for."""

    room: RoomSpec
    name: str | None = None
    units: Units | None = None
    mark_to: Step | None = None
    beams: BeamsSpec = BeamsSpec()
    grid: GridSpec = GridSpec()
    panel: PanelSpec | None = None
    fixing: FixingSpec | None = None
    stock: StockSpec = StockSpec()
    drawing: DrawingSpec = DrawingSpec()
    crown: CrownSpec | None = None
    flat_mouldings: tuple[FlatMouldingSpec, ...] = ()
    measured_openings: OpeningsSpec | None = None
    take_off: TakeOffSpec | None = None
