"""A cutting problem as it was asked for, with what was left open still open.

The field names are those of the document, so that a place in one is a pointer into the other.
"""

from dataclasses import dataclass

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.takeoff.cutting.asked import EffortWord, Grain, SecondAim, Section


@dataclass(frozen=True, slots=True)
class StockLengthSpec:
    """A length that is sold; its price in cents."""

    length: Length
    id: str | None = None
    material: str = ""
    price: int | None = None
    supply: int | None = None


@dataclass(frozen=True, slots=True)
class OffcutSpec:
    """Lengths on hand; what each would bring, in cents."""

    length: Length
    id: str | None = None
    material: str = ""
    quantity: int = 1
    salvage_value: int | None = None


@dataclass(frozen=True, slots=True)
class CutPieceSpec:
    """Pieces of one length."""

    length: Length
    quantity: int = 1
    id: str | None = None
    material: str = ""


@dataclass(frozen=True, slots=True)
class MaterialSpec:
    """How pieces of a material are cut at their ends."""

    name: str
    section: Section | None = None
    miter: Angle | None = None
    width: Length | None = None
    nested: bool = False


@dataclass(frozen=True, slots=True)
class StockSheetSpec:
    """A sheet that is sold; its price in cents. Its grain lies along its length."""

    length: Length
    width: Length
    id: str | None = None
    material: str = ""
    price: int | None = None
    supply: int | None = None


@dataclass(frozen=True, slots=True)
class CutPanelSpec:
    """Panels of one size."""

    length: Length
    width: Length
    quantity: int = 1
    id: str | None = None
    material: str = ""
    grain: Grain | None = None


@dataclass(frozen=True, slots=True)
class CuttingSpec:
    """Pieces and stock, panels and sheets, and what holds for all."""

    units: Units = Units.INCH
    mark_to: Step | None = None
    stock: tuple[StockLengthSpec, ...] = ()
    offcuts: tuple[OffcutSpec, ...] = ()
    pieces: tuple[CutPieceSpec, ...] = ()
    materials: tuple[MaterialSpec, ...] = ()
    sheets: tuple[StockSheetSpec, ...] = ()
    panels: tuple[CutPanelSpec, ...] = ()
    kerf: Length | None = None
    end_trim: Length | None = None
    edge_trim: Length | None = None
    usable_offcut: Length | None = None
    most_lengths: int | None = None
    second_aim: SecondAim | None = None
    effort: EffortWord | None = None
