"""Materials by their prices: the most particular price of a thing counts, in the size bought."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.measure.figure import NumberFigure, Rule
from lacunar.measure.money import rounded
from lacunar.takeoff.estimate.estimate_records import (
    EstimateLine,
    EstimateSection,
    Unpriced,
    UnpricedReason,
)
from lacunar.takeoff.estimate.finding import most_particular
from lacunar.takeoff.estimate.needs import BoughtSize, Need
from lacunar.takeoff.estimate.price_list import MaterialPrice
from lacunar.takeoff.estimate.words import MaterialPer

BY_PRICE = Rule("amount by price, to the hundredth", "cents(quantity * price)")

STOCK = "/stock"
"""Where the prices stand that stock has."""

_BY_SIZE = (MaterialPer.PIECE, MaterialPer.SHEET, MaterialPer.PACK)


def material_lines(
    needs: Sequence[Need], prices: Sequence[MaterialPrice]
) -> Iterator[EstimateLine | Unpriced]:
    """Turn materials into lines, or into what has no price.

    Of prices by the piece or sheet, one for the size goes before one for any. Where there is none,
    that of the stock counts.
    """
    for need in needs:
        rows = most_particular(need.name, need.material, prices)
        if not rows:
            yield from _by_stock(need)
        elif rows[0].per in _BY_SIZE:
            yield from _by_size(need, rows)
        else:
            yield _by_amount(need, rows[0])


def _by_amount(need: Need, price: MaterialPrice) -> EstimateLine | Unpriced:
    amount = need.amounts.get(price.per)
    if amount is None:
        return _unpriced(need, UnpricedReason.NOT_TOLD_SO, price)
    return _line(need, need.name, amount, price)


def _by_size(need: Need, prices: Sequence[MaterialPrice]) -> Iterator[EstimateLine | Unpriced]:
    sizes = [size for size in need.sizes if size.per is prices[0].per]
    if not sizes:
        yield _unpriced(need, UnpricedReason.NOT_TOLD_SO, prices[0])
    for size in sizes:
        price = _of_size(size, prices)
        name = f"{need.name}, {size.name}"
        if price is None:
            yield Unpriced(
                section=EstimateSection.MATERIALS,
                name=name,
                reason=UnpricedReason.SIZE_NOT_PRICED,
                per=size.per,
                quantity=size.quantity,
                source=need.source,
            )
        else:
            yield _line(need, name, size.quantity, price)


def _of_size(size: BoughtSize, prices: Sequence[MaterialPrice]) -> MaterialPrice | None:
    by_length = {price.length: price for price in prices}
    return by_length.get(size.length) or by_length.get(None)


def _by_stock(need: Need) -> Iterator[EstimateLine | Unpriced]:
    """What the price list says nothing of, at the prices of the stock it was planned from."""
    if not need.sizes or any(size.price is None for size in need.sizes):
        yield _unpriced(need, UnpricedReason.NO_PRICE, None)
        return
    for size in need.sizes:
        if size.price is not None:
            at = MaterialPrice(STOCK, None, None, size.per, None, size.price, taxed=False)
            yield _line(need, f"{need.name}, {size.name}", size.quantity, at)


def _line(need: Need, name: str, quantity: NumberFigure, price: MaterialPrice) -> EstimateLine:
    return EstimateLine(
        section=EstimateSection.MATERIALS,
        name=name,
        per=price.per,
        quantity=quantity,
        hours=None,
        price=price.price,
        amount=rounded(
            BY_PRICE,
            quantity.value * Fraction(price.price),
            quantity=quantity.value,
            price=price.price,
        ),
        taxed=price.taxed,
        source=need.source,
        priced_at=price.pointer,
    )


def _unpriced(need: Need, reason: UnpricedReason, price: MaterialPrice | None) -> Unpriced:
    """By what it is priced by, or by the first measure that it is told in."""
    per = next(iter(need.amounts)) if price is None else price.per
    return Unpriced(
        section=EstimateSection.MATERIALS,
        name=need.name,
        reason=reason,
        per=per,
        quantity=need.amounts.get(per),
        source=need.source,
    )
