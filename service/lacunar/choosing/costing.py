"""What a layout costs: an estimate of it alone, as everybody gets it."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.choosing.asked import PricedBy
from lacunar.choosing.records import OptionCost
from lacunar.layout.records import Layout
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.buying.cut_materials import cut_materials
from lacunar.takeoff.buying.material_list import Listed, Planned, material_list
from lacunar.takeoff.buying.problems import Asked, problems
from lacunar.takeoff.buying.stock_rules import within_stock
from lacunar.takeoff.cutting.task import Guard
from lacunar.takeoff.estimate.estimate_records import Estimate
from lacunar.takeoff.estimate.estimated import estimate
from lacunar.takeoff.estimate.sold import sold_at
from lacunar.takeoff.taken_off import TakenOff


class ShortOfStock(Exception):
    """A layout cannot be made of the stock that is told; `refused` says why."""

    def __init__(self, refused: SpecRefused) -> None:
        super().__init__()
        self.refused = refused


@dataclass(frozen=True, slots=True)
class Costed:
    """What a layout costs, and what was assumed of stock for that."""

    cost: OptionCost
    assumptions: tuple[Assumption, ...]


class Estimator:
    """Estimates one layout after another by the same prices and from the same stock."""

    def __init__(self, by: PricedBy, guard: Guard) -> None:
        self._by, self._guard = by, guard

    def costed(self, layout: Layout, taken: TakenOff) -> Costed:
        """What a layout costs. Errors: `ShortOfStock`.

        Nothing is told of its plans, so that no length is tried alone and no boards are turned.
        """
        try:
            listed = self._listed(layout, taken)
        except SpecRefused as refused:
            raise ShortOfStock(refused) from None
        found = estimate([layout], taken, listed.materials, self._by.prices)
        return Costed(_cost(found), listed.assumptions)

    def _listed(self, layout: Layout, taken: TakenOff) -> Listed:
        materials = cut_materials(taken.parts, layout.ceiling.units)
        stock = sold_at(self._by.stock, materials, self._by.prices.materials)
        asked = problems([layout], taken.parts, stock)
        return material_list(taken, self._planned(asked), None)

    def _planned(self, asked: Asked) -> Planned:
        # The solver costs a tenth of a second to load, which nothing else should wait for.
        from lacunar.takeoff.cutting.lengths import plan_lengths
        from lacunar.takeoff.cutting.sheets import plan_sheets

        lengths = sheets = None
        try:
            if asked.lengths is not None:
                lengths = plan_lengths(asked.lengths, self._guard, alone=False)
            if asked.sheets is not None:
                sheets = plan_sheets(asked.sheets, self._guard)
        except SpecRefused as refused:
            raise SpecRefused(within_stock(refused.faults)) from None
        return Planned(asked, lengths, sheets)


def _cost(found: Estimate) -> OptionCost:
    totals = found.totals
    return OptionCost(
        currency=found.currency,
        materials=totals.materials,
        labor=totals.labor,
        others=totals.others,
        total=totals.total,
        complete=totals.complete,
        lacks=tuple(dict.fromkeys(_lacks(found))),
    )


def _lacks(found: Estimate) -> Iterator[str]:
    yield from (f"{each.section}: {each.name}" for each in found.unpriced)
    yield from (code.replace("_", " ") for code in found.not_counted)
