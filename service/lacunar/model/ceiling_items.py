"""What hangs in or below the ceiling, and what the walls have: as asked for, and as decided.

`None` in a spec record means "not said". An item's place is that of its center; a pattern makes
several items of one spec.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import Length


class ItemKind(StrEnum):
    """What a ceiling item is."""

    LIGHT = "light"
    FAN = "fan"
    DIFFUSER = "diffuser"
    RETURN = "return"
    DETECTOR = "detector"
    SPRINKLER = "sprinkler"
    SPEAKER = "speaker"
    HATCH = "hatch"


class ItemPattern(StrEnum):
    """How many of an item there are: one, one in the middle of each coffer, or rows and columns."""

    SINGLE = "single"
    COFFER_CENTERS = "coffer_centers"
    GRID = "grid"


class Mounting(StrEnum):
    """Whether an item's body goes up between the joists, or stays below the ceiling."""

    RECESSED = "recessed"
    SURFACE = "surface"


class Mobility(StrEnum):
    """Whether an item can still be moved."""

    FIXED = "fixed"
    MOVABLE = "movable"


@dataclass(frozen=True, slots=True)
class ItemSpec:
    """A ceiling item as asked for; see `Item`."""

    kind: ItemKind | None = None
    name: str | None = None
    pattern: ItemPattern | None = None
    x: Length | None = None
    y: Length | None = None
    diameter: Length | None = None
    length: Length | None = None
    width: Length | None = None
    clearance: Length | None = None
    mounting: Mounting | None = None
    mobility: Mobility | None = None
    drop: Length | None = None
    coffers: tuple[str, ...] = ()
    columns: int | None = None
    rows: int | None = None
    length_pitch: Length | None = None
    width_pitch: Length | None = None


@dataclass(frozen=True, slots=True)
class Item:
    """A ceiling item, or a pattern of like ones, decided.

    `x` and `y` are the center from the datum as the room was measured, of a grid the one next the
    datum; None for coffer centers, which `coffers` names (none: all). A round item has a
    `diameter`, any other a `length` and a `width` along those runs. `clearance` is kept free on
    every side towards beams, mouldings, walls and other items; `drop` is how far it hangs below
    the finished ceiling, where that was told. `columns`, `rows` and the pitches are those of a
    grid.
    """

    kind: ItemKind
    name: str
    pattern: ItemPattern
    x: Length | None
    y: Length | None
    diameter: Length | None
    length: Length | None
    width: Length | None
    clearance: Length
    mounting: Mounting
    mobility: Mobility
    drop: Length | None
    coffers: tuple[str, ...]
    columns: int | None
    rows: int | None
    length_pitch: Length | None
    width_pitch: Length | None

    @property
    def extents(self) -> tuple[Length, Length]:
        """How much it takes up along the length run and along the width run [length]."""
        along, up = self.diameter or self.length, self.diameter or self.width
        if along is None or up is None:
            raise ValueError("an item without a size has not passed the rules")
        return along, up


class FeatureKind(StrEnum):
    """What a wall has that beams should meet well."""

    DOOR = "door"
    WINDOW = "window"
    FIREPLACE = "fireplace"
    CABINET = "cabinet"


@dataclass(frozen=True, slots=True)
class WallFeatureSpec:
    """A wall feature as asked for; see `WallFeature`."""

    kind: FeatureKind | None = None
    name: str | None = None
    wall: str | None = None
    center: Length | None = None
    width: Length | None = None
    head: Length | None = None


@dataclass(frozen=True, slots=True)
class WallFeature:
    """A door, window, fireplace or cabinet at a wall.

    `center` is measured along the run that the wall lies along, from the datum's end of it, as the
    room was measured; `head` is its upper edge above the finished floor, None where not told.
    """

    kind: FeatureKind
    name: str
    wall: str
    center: Length
    width: Length
    head: Length | None
