"""Lengths that are sold, by the price list: what has a price by the piece can be bought."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from lacunar.takeoff.buying.cut_materials import CutMaterial
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.cutting.said import StockLengthSpec
from lacunar.takeoff.estimate.finding import most_particular
from lacunar.takeoff.estimate.price_list import MaterialPrice
from lacunar.takeoff.estimate.words import MaterialPer


def sold_at(
    said: StockSaid, materials: Sequence[CutMaterial], prices: Sequence[MaterialPrice]
) -> StockSaid:
    """Turn what is said of stock into the same with the lengths that the price list has.

    What is said of a material's lengths stands. Of one that nothing is said of, the lengths that
    are priced by the piece are those that can be bought, at these prices: so its cutting plan costs
    least. Prices finer than hundredths are left out, and its plan takes the least length.
    """
    told = {row.material.casefold() for row in said.lengths}
    rows = tuple(
        row
        for material in materials
        if not material.is_sheet and material.name.casefold() not in told
        for row in _lengths(material, prices)
    )
    return replace(said, lengths=(*said.lengths, *rows))


def _lengths(material: CutMaterial, prices: Sequence[MaterialPrice]) -> Iterator[StockLengthSpec]:
    rows = most_particular(material.name, material.material, prices)
    if any(row.per is not MaterialPer.PIECE or row.length is None for row in rows):
        return
    in_cents = all(row.price * 100 % 1 == 0 for row in rows)
    for row in rows:
        if row.length is not None:
            cents = int(row.price * Decimal(100)) if in_cents else None
            yield StockLengthSpec(length=row.length, material=material.name, price=cents)
