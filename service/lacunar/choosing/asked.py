"""What is asked of a search: as it was said, and with everything decided."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.choosing.records import Criterion
from lacunar.measure.length import Length
from lacunar.model.beams import Through
from lacunar.model.room import RunName
from lacunar.model.spec import CeilingSpec
from lacunar.model.wall_kind import WallKind
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.estimate.price_list import PriceList


@dataclass(frozen=True, slots=True)
class CountsSpec:
    """The fewest and the most coffers along a run; None: not said."""

    fewest: int | None = None
    most: int | None = None


@dataclass(frozen=True, slots=True)
class ChoicesSpec:
    """Within which limits a ceiling may be varied, as it was said; None and nothing: not said."""

    length_coffers: CountsSpec | None = None
    width_coffers: CountsSpec | None = None
    smallest_opening: Length | None = None
    largest_opening: Length | None = None
    walls: tuple[WallKind, ...] | None = None
    beam_widths: tuple[Length, ...] | None = None
    through: tuple[Through, ...] | None = None
    center_on: tuple[str, ...] | None = None
    crown_lengths: tuple[Length, ...] | None = None
    weights: tuple[tuple[Criterion, Fraction], ...] = ()
    most_laid_out: int | None = None
    nudges_of: int | None = None

    def counts(self, run: RunName) -> CountsSpec | None:
        """What was said of the coffers along a run."""
        return self.length_coffers if run is RunName.LENGTH else self.width_coffers


@dataclass(frozen=True, slots=True)
class RunLimits:
    """What is tried along a run.

    `fewest` and `most` are None where the count is as the ceiling says; `walls` are what is tried
    at both its walls, without those that the ceiling tells unless `told_too`; empty: as it says.
    """

    run: RunName
    fewest: int | None
    most: int | None
    walls: tuple[WallKind, ...]
    told_too: bool


@dataclass(frozen=True, slots=True)
class Limits:
    """A search with nothing open. `widths` and `through` are empty: as the ceiling says."""

    length: RunLimits
    width: RunLimits
    smallest_opening: Length
    largest_opening: Length
    widths: tuple[Length, ...]
    through: tuple[Through, ...]
    center_on: tuple[str, ...]
    crown_lengths: tuple[Length, ...]
    weights: tuple[tuple[Criterion, Fraction], ...]
    most_laid_out: int
    nudges_of: int | None

    def of(self, run: RunName) -> RunLimits:
        """What is tried along a run."""
        return self.length if run is RunName.LENGTH else self.width


@dataclass(frozen=True, slots=True)
class PricedBy:
    """What options are priced by: a price list with nothing open, and what is said of stock."""

    prices: PriceList
    stock: StockSaid


@dataclass(frozen=True, slots=True)
class Asked:
    """A ceiling, and a search for its options with nothing open.

    `priced_by` of None: nothing is told of what options cost.
    """

    spec: CeilingSpec
    limits: Limits
    priced_by: PricedBy | None = None
