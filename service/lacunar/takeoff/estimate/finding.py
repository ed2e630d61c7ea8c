"""Which prices are of a material: those that say most of what it is."""

from collections.abc import Sequence

from lacunar.takeoff.estimate.price_list import MaterialPrice, named
from lacunar.takeoff.part_records import Material, MaterialKind


def most_particular(
    name: str, material: Material | None, prices: Sequence[MaterialPrice]
) -> list[MaterialPrice]:
    """Turn a material into its prices, one for each size or one for all.

    Parameters: `name` that no other material has; `material`, None of what no part is cut from. A
    price by that name goes before one by the trade name, which materials of other sizes may share;
    that before one by kind; and of two alike, one that says the kind too.
    """
    ranked = [(_told(name, material, price), price) for price in prices]
    told = max((rank for rank, _ in ranked), default=0)
    return [price for rank, price in ranked if rank == told > 0]


def _told(name: str, material: Material | None, price: MaterialPrice) -> int:
    """How much of what a material is a price says; 0 where it is of something else."""
    kind: MaterialKind | None = None if material is None else material.kind
    if price.kind not in (None, kind):
        return 0
    says_kind = int(price.kind is not None)
    if price.of is None:
        return says_kind
    if named(price.of) == named(name):
        return 4 + says_kind
    if material is not None and named(price.of) == named(material.name):
        return 2 + says_kind
    return 0
