"""What was said about stock for a whole take-off, with what was left open still open."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.takeoff.cutting.asked import EffortWord, SecondAim
from lacunar.takeoff.cutting.said import OffcutSpec, StockLengthSpec, StockSheetSpec


class PackUnit(StrEnum):
    """What a pack is said to hold so many of; `gal` is a US gallon."""

    COUNT = "count"
    CARTRIDGE = "cartridge"
    GALLON = "gal"
    LITER = "L"
    SQUARE_FOOT = "ft2"
    SQUARE_METER = "m2"


@dataclass(frozen=True, slots=True)
class PackSize:
    """How much one pack holds."""

    amount: Fraction
    unit: PackUnit


@dataclass(frozen=True, slots=True)
class PackSpec:
    """In what packs something is sold that is counted, spread or poured."""

    of: str
    holds: PackSize


@dataclass(frozen=True, slots=True)
class StockSaid:
    """Lengths, sheets and packs that are sold, offcuts on hand, and what holds for all.

    The field names are those of the document, so that a place in one is a pointer into the other.
    """

    units: Units | None = None
    lengths: tuple[StockLengthSpec, ...] = ()
    offcuts: tuple[OffcutSpec, ...] = ()
    sheets: tuple[StockSheetSpec, ...] = ()
    packs: tuple[PackSpec, ...] = ()
    kerf: Length | None = None
    end_trim: Length | None = None
    edge_trim: Length | None = None
    usable_offcut: Length | None = None
    most_lengths: int | None = None
    second_aim: SecondAim | None = None
    effort: EffortWord | None = None
