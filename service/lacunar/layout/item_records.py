"""What setting out ceiling items and wall features results in: immutable records.

Places are from the datum: `x` along the length run, `y` along the width run.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.ceiling_items import FeatureKind, ItemKind, Mobility, Mounting
from lacunar.model.room import RunName


class Meets(StrEnum):
    """What an item can be in conflict with."""

    BEAM = "beam"
    MOULDING = "moulding"
    JOIST = "joist"
    WALL = "wall"
    COLUMN = "column"
    ITEM = "item"


@dataclass(frozen=True, slots=True)
class ItemConflict:
    """What an item meets, and how far it reaches into it along a run, its clearance included.

    For another item it is the run along which they are parted sooner, for what lies aslant the run
    that a way off it lies along most nearly.
    """

    meets: Meets
    id: str
    along: RunName
    overlap: LengthFigure


@dataclass(frozen=True, slots=True)
class ClearPlace:
    """The nearest place at which an item meets nothing, and what proves it.

    `move_x` and `move_y` lead there. The margins are what is left free there beyond what must be,
    to the nearest of its kind; None where there is none of it.
    """

    x: Length
    y: Length
    coffer: str
    move_x: LengthFigure
    move_y: LengthFigure
    beam_margin: Length
    joist_margin: Length | None
    item_margin: Length | None


@dataclass(frozen=True, slots=True)
class CeilingItem:
    """One item at its place. `coffer` is where its center lies, None on a beam.

    `clear_height` is what is left below it where its drop is known. Without a conflict, or without
    any clear place, there is no `nearest_clear`.
    """

    id: str
    kind: ItemKind
    name: str
    x: LengthFigure
    y: LengthFigure
    length: Length
    width: Length
    round: bool
    clearance: Length
    mounting: Mounting
    mobility: Mobility
    coffer: str | None
    clear_height: LengthFigure | None
    conflicts: tuple[ItemConflict, ...]
    nearest_clear: ClearPlace | None


@dataclass(frozen=True, slots=True)
class ClearCount:
    """A number of coffers at which no beam of a run meets a fixed item, and what openings it has.

    `pitch` is from center to center of the beams; None where zones differ.
    """

    coffers: int
    smallest_opening: LengthFigure
    largest_opening: LengthFigure
    pitch: LengthFigure | None


@dataclass(frozen=True, slots=True)
class CountSearch:
    """The counts tried for a run, with its walls and given beams as they are, and those clear."""

    run: RunName
    fewest: int
    most: int
    clear: tuple[ClearCount, ...]


class Meeting(StrEnum):
    """How a beam's end stands to a wall feature."""

    CENTERED = "centered"
    WITHIN = "within"
    OVER_EDGE = "over_edge"


@dataclass(frozen=True, slots=True)
class BeamAtFeature:
    """A beam that ends over a wall feature.

    `offset` is from the feature's center to the beam's; `past_edge` how far the beam reaches past
    the feature's nearer edge, negative while it stays within. `over_head` is the height between
    the feature's head and the beam's lowest edge, negative where the beam hangs lower; None where
    no head was told.
    """

    beam: str
    meeting: Meeting
    offset: LengthFigure
    past_edge: LengthFigure
    over_head: LengthFigure | None


@dataclass(frozen=True, slots=True)
class WallFeatureCheck:
    """A wall feature, what its center falls on, and the beams that end over it.

    `on` is the id of the beam, or the row letter or column number, at its center; `off_center` how
    far that one's center lies beyond the feature's. `along_wall` is what stands along the wall
    itself and hangs lower than the head. In a room with other than four walls `side` is the number
    of the side it is in, `on` the id of the beam or coffer; in an angled one places are from its
    start.
    """

    name: str
    kind: FeatureKind
    wall: str
    near: LengthFigure
    far: LengthFigure
    on: str
    off_center: LengthFigure
    beams: tuple[BeamAtFeature, ...]
    along_wall: tuple[str, ...]
    side: int | None = None


@dataclass(frozen=True, slots=True)
class ItemLayout:
    """All ceiling items, and the counts that keep beams clear of the fixed ones."""

    items: tuple[CeilingItem, ...]
    counts_clear_of_fixed: tuple[CountSearch, ...]
