"""A price list as it was sent, with what was left open still open.

The field names are those of the document, so that a place in one is a pointer into the other.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.takeoff.estimate.words import LaborPer, MaterialPer, OtherPer, Work
from lacunar.takeoff.part_records import MaterialKind


class TaxedOn(StrEnum):
    """What tax is worked out on: lines as they cost, or with their share of all that is added."""

    COST = "cost"
    PRICE = "price"


@dataclass(frozen=True, slots=True)
class MaterialPriceSpec:
    """What one of something costs; `of` is its name, `kind` what it is, `length` that of a size."""

    per: MaterialPer
    price: Decimal
    of: str | None = None
    kind: MaterialKind | None = None
    length: Length | None = None
    taxed: bool | None = None


@dataclass(frozen=True, slots=True)
class WorkSpec:
    """What work costs: a price for one, or the hours one takes, at a rate by the hour."""

    per: LaborPer
    name: str | None = None
    of: tuple[Work, ...] | None = None
    price: Decimal | None = None
    hours: Fraction | None = None
    rate: Decimal | None = None
    quantity: Fraction | None = None
    taxed: bool | None = None


@dataclass(frozen=True, slots=True)
class LaborSpec:
    """Labor rates: what an hour costs, what each work takes, and frames beside coping."""

    rate: Decimal | None = None
    frame_share: Fraction | None = None
    work: tuple[WorkSpec, ...] = ()


@dataclass(frozen=True, slots=True)
class OtherSpec:
    """What else the job costs."""

    name: str
    per: OtherPer
    price: Decimal
    quantity: Fraction | None = None
    taxed: bool | None = None


@dataclass(frozen=True, slots=True)
class TaxSpec:
    """A share of what is flagged as taxed."""

    rate: Fraction
    on: TaxedOn | None = None


@dataclass(frozen=True, slots=True)
class PriceListSpec:
    """Prices, labor rates, and what is added: each a share, 0.1 for a tenth."""

    currency: str
    materials: tuple[MaterialPriceSpec, ...] = ()
    labor: LaborSpec = LaborSpec()
    others: tuple[OtherSpec, ...] = ()
    overhead: Fraction | None = None
    contingency: Fraction | None = None
    markup: Fraction | None = None
    margin: Fraction | None = None
    tax: TaxSpec | None = None
