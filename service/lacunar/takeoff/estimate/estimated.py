"""Estimates ceilings: the one function of this folder that others call, beside its records."""

from collections.abc import Iterator, Sequence

from lacunar.layout.names import first_few
from lacunar.layout.records import Caution, Layout
from lacunar.takeoff.estimate.estimate_records import (
    Estimate,
    EstimateLine,
    LaborCount,
    Unpriced,
)
from lacunar.takeoff.estimate.labor_counts import labor_counts
from lacunar.takeoff.estimate.labor_lines import labor_lines, other_lines
from lacunar.takeoff.estimate.material_lines import STOCK, material_lines
from lacunar.takeoff.estimate.needs import Need, needs_of
from lacunar.takeoff.estimate.price_list import PriceList
from lacunar.takeoff.estimate.totals import totals
from lacunar.takeoff.material_records import MaterialList
from lacunar.takeoff.taken_off import TakenOff

# Cautions of take-offs that tell of something that is built and not counted.
NOT_COUNTED = frozenset({"tapers_not_taken_off", "fasteners_not_counted"})


def estimate(
    layouts: Sequence[Layout], taken: TakenOff, materials: MaterialList, prices: PriceList
) -> Estimate:
    """Turn ceilings, their take-off and what is bought for it into an estimate.

    Parameters: `layouts`, `taken` and `materials` of the same ceilings; `prices`.
    """
    counts = labor_counts(layouts, taken, materials)
    needs = needs_of(materials, taken.quantities)
    found = list(_priced(counts, len(layouts), needs, prices))
    lines = tuple(each for each in found if isinstance(each, EstimateLine))
    unpriced = tuple(each for each in found if isinstance(each, Unpriced))
    by_stock = [line.name for line in lines if line.priced_at == STOCK]
    used = {line.priced_at for line in lines}
    codes = [each.code for each in materials.cautions if each.code in NOT_COUNTED]
    not_counted = tuple(dict.fromkeys(codes))
    return Estimate(
        currency=prices.currency,
        lines=lines,
        unpriced=unpriced,
        counts=counts,
        totals=totals(lines, prices.added, complete=not unpriced and not not_counted),
        not_counted=not_counted,
        unused_prices=tuple(pointer for pointer in _pointers(prices) if pointer not in used),
        cautions=(*materials.cautions, *_cautions(prices, by_stock)),
    )


def _priced(
    counts: Sequence[LaborCount], ceilings: int, needs: Sequence[Need], prices: PriceList
) -> Iterator[EstimateLine | Unpriced]:
    yield from material_lines(needs, prices.materials)
    yield from labor_lines(counts, prices.labor)
    yield from other_lines(counts, ceilings, prices.others)


def _pointers(prices: PriceList) -> dict[str, None]:
    """The place of every price, each once."""
    materials = (price.pointer for price in prices.materials)
    return dict.fromkeys((*materials, *(rate.pointer for rate in prices.labor)))


def _cautions(prices: PriceList, by_stock: Sequence[str]) -> Iterator[Caution]:
    """What money alone cannot tell."""
    if prices.added.tax:
        yield Caution(
            code="tax_is_local",
            text="What is taxed, and on which amount, differs from place to place: ask whoever"
            " keeps the books.",
            figures={"rate": str(prices.added.tax)},
        )
        if by_stock:
            yield Caution(
                code="stock_prices_not_taxed",
                text="Lines at the prices that stock has are not taxed: only the price list says"
                " what is.",
                figures={"lines": first_few(by_stock)},
            )
