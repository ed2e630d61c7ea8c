"""What an estimate is made of: immutable records; every amount is a figure with its reason."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from lacunar.layout.records import Caution
from lacunar.measure.figure import MoneyFigure, NumberFigure
from lacunar.takeoff.estimate.words import LaborPer, MaterialPer, OtherPer, Work

Per = MaterialPer | LaborPer | OtherPer


class EstimateSection(StrEnum):
    """What is paid for."""

    MATERIALS = "materials"
    LABOR = "labor"
    OTHERS = "others"


class UnpricedReason(StrEnum):
    """Why something has no amount: no price, a measure it is not told in, a size not priced."""

    NO_PRICE = "no_price"
    NOT_TOLD_SO = "not_told_so"
    SIZE_NOT_PRICED = "size_not_priced"


@dataclass(frozen=True, slots=True)
class EstimateLine:
    """One amount: so many of something, at a price for one.

    `per` is what `quantity` counts and `price` is for; of labor told in hours `hours` is all that
    is worked and `price` is for an hour. `source` is what is behind it: part marks, or of labor
    what was counted; `priced_at` the place of the price in the price list.
    """

    section: EstimateSection
    name: str
    per: Per
    quantity: NumberFigure
    hours: NumberFigure | None
    price: Decimal
    amount: MoneyFigure
    taxed: bool
    source: tuple[str, ...]
    priced_at: str


@dataclass(frozen=True, slots=True)
class Unpriced:
    """What no price was found for, so that the total is less than it will be.

    `per` is what its price is for, or could be where there is none; `quantity` how much there is by
    that, None where it is not told so.
    """

    section: EstimateSection
    name: str
    reason: UnpricedReason
    per: Per
    quantity: NumberFigure | None
    source: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LaborCount:
    """How much there is of some work, whether or not it is paid by that.

    `source` is what was counted: part marks, ids of crossings with the number of their ceiling, or
    numbers of ceilings.
    """

    per: LaborPer
    of: Work | None
    count: NumberFigure
    source: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Totals:
    """From what is paid for to the total, in this order; each amount is rounded once.

    `cost` is direct, overhead and contingency; `selling_price` what that comes to with markup or
    margin, `profit` the difference. `taxable` is what tax is a share of. `hours` are all that are
    told in hours. Where not `complete`, something has no price or was not taken off.
    """

    materials: MoneyFigure
    labor: MoneyFigure
    others: MoneyFigure
    direct: MoneyFigure
    overhead: MoneyFigure
    contingency: MoneyFigure
    cost: MoneyFigure
    selling_price: MoneyFigure
    profit: MoneyFigure
    taxable: MoneyFigure
    tax: MoneyFigure
    total: MoneyFigure
    hours: NumberFigure
    complete: bool


@dataclass(frozen=True, slots=True)
class Estimate:
    """What ceilings cost: lines, what has no price, all that labor is counted by, and totals.

    `not_counted` are codes of cautions about what is built and not in the take-off;
    `unused_prices` the places in the price list of prices that nothing was priced by.
    """

    currency: str
    lines: tuple[EstimateLine, ...]
    unpriced: tuple[Unpriced, ...]
    counts: tuple[LaborCount, ...]
    totals: Totals
    not_counted: tuple[str, ...]
    unused_prices: tuple[str, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True)
class LineDifference:
    """What a line comes to in both estimates; None in the one that does not have it."""

    section: EstimateSection
    name: str
    base: Decimal | None
    alternate: Decimal | None
    difference: Decimal


@dataclass(frozen=True, slots=True)
class Comparison:
    """An alternate beside the estimate it is an alternate to.

    `lines` are those that differ; `direct`, `selling_price` and `total` are by how much these do,
    below zero where the alternate is less; `hours` likewise. `comparable` says that both are
    complete.
    """

    lines: tuple[LineDifference, ...]
    direct: Decimal
    selling_price: Decimal
    total: Decimal
    hours: NumberFigure
    comparable: bool
