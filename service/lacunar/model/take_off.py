"""What a take-off goes by: allowances, waste, spacings, coverages; as asked for and as decided.

None of it changes what is built. Of what was asked for, None means "not said".
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.writing import decimal_text
from lacunar.model.stock import Stock


class InsulationOver(StrEnum):
    """What insulation is counted over, if any."""

    NONE = "none"
    COFFERS = "coffers"
    ROOM = "room"


class FinishKind(StrEnum):
    """What beams, mouldings and panels are finished with."""

    NONE = "none"
    PAINT = "paint"
    PRIMER_AND_PAINT = "primer_and_paint"


class CoverageUnit(StrEnum):
    """What area a volume of primer or paint covers is told in."""

    SQUARE_FEET_PER_GALLON = "ft2/gal"
    SQUARE_METERS_PER_LITER = "m2/L"


# A foot is 0.3048 m exactly, a US gallon 231 cubic inches, so 3.785411784 L exactly.
SQUARE_METERS_IN_SQUARE_FOOT = Fraction(3048, 10000) ** 2
LITERS_IN_GALLON = Fraction(3785411784, 10**9)


@dataclass(frozen=True, slots=True)
class Coverage:
    """How much one coat of a volume covers."""

    amount: Fraction
    unit: CoverageUnit

    @property
    def text(self) -> str:
        """As it is written in a spec.

        >>> Coverage(Fraction(350), CoverageUnit.SQUARE_FEET_PER_GALLON).text
        '350 ft2/gal'
        """
        return f"{decimal_text(self.amount, 4)} {self.unit}"

    @property
    def square_feet_per_gallon(self) -> Fraction:
        """The same in square feet to a US gallon."""
        if self.unit is CoverageUnit.SQUARE_FEET_PER_GALLON:
            return self.amount
        return self.amount * LITERS_IN_GALLON / SQUARE_METERS_IN_SQUARE_FOOT


@dataclass(frozen=True, slots=True)
class WasteSpec:
    """Shares of what is needed that are added for waste, as asked for; see `Waste`."""

    beams: Fraction | None = None
    framing: Fraction | None = None
    mouldings: Fraction | None = None
    sheets: Fraction | None = None
    boards: Fraction | None = None
    finish: Fraction | None = None


@dataclass(frozen=True, slots=True)
class NailSpacingSpec:
    """The most between nails, as asked for; see `NailSpacing`."""

    sides: Length | None = None
    bottoms: Length | None = None
    mouldings: Length | None = None
    panels: Length | None = None
    boards: Length | None = None


@dataclass(frozen=True, slots=True)
class AdhesiveSpec:
    """Adhesive as asked for; see `Adhesive`."""

    bead_per_cartridge: Length | None = None
    bead_spacing: Length | None = None


@dataclass(frozen=True, slots=True)
class FinishSpec:
    """Primer and paint as asked for; see `Finish`."""

    kind: FinishKind | None = None
    primer_coats: int | None = None
    paint_coats: int | None = None
    primer_coverage: Coverage | None = None
    paint_coverage: Coverage | None = None


@dataclass(frozen=True, slots=True)
class TakeOffSpec:
    """What a take-off goes by, as asked for; see `TakeOff`."""

    length_allowance: Length | None = None
    width_allowance: Length | None = None
    blocking: Stock | None = None
    cleat_width: Length | None = None
    waste: WasteSpec = WasteSpec()
    nail_spacing: NailSpacingSpec = NailSpacingSpec()
    adhesive: AdhesiveSpec = AdhesiveSpec()
    insulation: InsulationOver | None = None
    finish: FinishSpec = FinishSpec()


@dataclass(frozen=True, slots=True)
class Waste:
    """Shares of what is needed that are added for waste: 0.1 is a tenth more.

    `beams` are sides, bottoms and flat boards; `framing` is backing, cleats, blocks and nailers;
    `finish` is adhesive, insulation, primer and paint.
    """

    beams: Fraction
    framing: Fraction
    mouldings: Fraction
    sheets: Fraction
    boards: Fraction
    finish: Fraction


@dataclass(frozen=True, slots=True)
class NailSpacing:
    """The most between two nails of a row [length], by what is nailed."""

    sides: Length
    bottoms: Length
    mouldings: Length
    panels: Length
    boards: Length


@dataclass(frozen=True, slots=True)
class Adhesive:
    """How long a bead one cartridge gives, and how far apart beads lie behind a panel."""

    bead_per_cartridge: Length
    bead_spacing: Length


@dataclass(frozen=True, slots=True)
class Finish:
    """Primer and paint: how often, and how far they go."""

    kind: FinishKind
    primer_coats: int
    paint_coats: int
    primer_coverage: Coverage
    paint_coverage: Coverage


@dataclass(frozen=True, slots=True)
class TakeOff:
    """What a take-off goes by, decided.

    `length_allowance` is what every part is cut longer than its net length, `width_allowance` what
    every ripped part is ripped wider. `blocking` is the stock of blocks between joists and of the
    strips that carry seams; `cleat_width` how wide a casing's cleats are.
    """

    length_allowance: Length
    width_allowance: Length
    blocking: Stock
    cleat_width: Length
    waste: Waste
    nail_spacing: NailSpacing
    adhesive: Adhesive
    insulation: InsulationOver
    finish: Finish
