"""Price lists with nothing open."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.takeoff.estimate.said import TaxedOn
from lacunar.takeoff.estimate.words import LaborPer, MaterialPer, OtherPer, Work
from lacunar.takeoff.part_records import MaterialKind


@dataclass(frozen=True, slots=True)
class MaterialPrice:
    """What one costs of what has this name or is of this kind; `pointer` is its place."""

    pointer: str
    of: str | None
    kind: MaterialKind | None
    per: MaterialPer
    length: Length | None
    price: Decimal
    taxed: bool


def named(of: str | None) -> str | None:
    """A name as it is looked for: however it is spaced and capitalized.

    >>> named("Finish  nail")
    'finish nail'
    """
    return " ".join(of.split()).casefold() if of else None


@dataclass(frozen=True, slots=True)
class FrameShare:
    """What bench frames take of coping: `of_coping` tells frames by it, else coping by frames."""

    share: Fraction
    of_coping: bool


@dataclass(frozen=True, slots=True)
class LaborRate:
    """What one of some work costs.

    `hours` is what one takes at `price` an hour, None where `price` is for one; `quantity` is how
    many hours are given, None where they are counted. `beside` is how it follows from what another
    rate says. `pays_for` is what is no longer without a price.
    """

    pointer: str
    name: str
    per: LaborPer
    of: tuple[Work, ...]
    price: Decimal
    hours: Fraction | None
    quantity: Fraction | None
    taxed: bool
    pays_for: tuple[Work, ...]
    beside: FrameShare | None = None


@dataclass(frozen=True, slots=True)
class OtherPrice:
    """What else costs, and how many of it there are; None where that is counted."""

    pointer: str
    name: str
    per: OtherPer
    price: Decimal
    quantity: Fraction | None
    taxed: bool


@dataclass(frozen=True, slots=True)
class Added:
    """What is added to what is paid for, as shares; `margin` None where `markup` says it."""

    overhead: Fraction
    contingency: Fraction
    markup: Fraction
    margin: Fraction | None
    tax: Fraction
    taxed_on: TaxedOn


@dataclass(frozen=True, slots=True)
class PriceList:
    """All prices, each with its place in the document."""

    currency: str
    materials: tuple[MaterialPrice, ...]
    labor: tuple[LaborRate, ...]
    others: tuple[OtherPrice, ...]
    added: Added
