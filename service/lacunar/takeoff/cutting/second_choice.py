"""Plans that cost no more: the one with the fewest different patterns, or with the most kept.

Here every piece is cut exactly as often as wanted, so that no pattern needs mending afterwards.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from lacunar.takeoff.cutting.pattern_choice import entries, is_plan, whole_shares
from lacunar.takeoff.cutting.solver import has_solution, infinity, make_whole, new_solver
from lacunar.takeoff.cutting.task import Chosen, Column, Guard, Shop, cost_of

Keeps = Callable[[Column], int]
"""What one piece of stock cut by a pattern keeps for later."""


@dataclass(frozen=True, slots=True)
class SecondChoice:
    """The choice between plans of the patterns given that cost no more than `start`."""

    shop: Shop
    columns: Sequence[Column]
    start: Chosen
    guard: Guard

    def plainest(self) -> Chosen:
        """The plan with the fewest different patterns that is found at once."""
        solver = self._model()
        top = len(self.shop.demand) + len(self.shop.supplies) + 1
        solver.addRow(-infinity(), len(self.start) - 1, 0, [], [])
        for place, column in enumerate(self.columns):
            often = column.times(self.shop.demand)
            solver.addRow(-infinity(), 0.0, 1, [place], [1.0])
            solver.addCol(1.0, 0.0, 1.0, 2, [top, top + 1 + place], [1.0, -float(often)])
        make_whole(solver, range(2 * len(self.columns)))
        found = self._solved(solver)
        return found if found is not None and len(found) < len(self.start) else self.start

    def keeping_most(self, keeps: Keeps) -> Chosen:
        """The plan that keeps most for later."""
        solver = self._model()
        for place, column in enumerate(self.columns):
            solver.changeColCost(place, -float(keeps(column)))
        make_whole(solver, range(len(self.columns)))
        found = self._solved(solver)
        if found is None or _kept(found, keeps) <= _kept(self.start, keeps):
            return self.start
        return found

    def _model(self) -> Any:
        """Rows: kinds of pieces, stocks, the cost; a column for each pattern, without a cost."""
        shop = self.shop
        solver = new_solver(mip_max_nodes=1, time_limit=self.guard.left())
        for n in shop.demand:
            solver.addRow(n, n, 0, [], [])
        for there in shop.supplies:
            solver.addRow(-infinity(), infinity() if there is None else there, 0, [], [])
        solver.addRow(-infinity(), cost_of(self.start, shop.prices), 0, [], [])
        top = len(shop.demand) + len(shop.supplies)
        for column in self.columns:
            rows, numbers = entries(column, len(shop.demand))
            if shop.prices[column.stock]:
                rows.append(top)
                numbers.append(float(shop.prices[column.stock]))
            solver.addCol(0.0, 0.0, infinity(), len(rows), rows, numbers)
        return solver

    def _solved(self, solver: Any) -> Chosen | None:
        """A plan that is found and costs no more; what the solver says is held against both."""
        solver.run()
        self.guard.over()
        if not has_solution(solver):
            return None
        found = whole_shares(self.columns, solver)
        prices = self.shop.prices
        if not is_plan(self.shop, found) or cost_of(found, prices) > cost_of(self.start, prices):
            return None
        return found


def _kept(chosen: Chosen, keeps: Keeps) -> int:
    return sum(keeps(column) * times for column, times in chosen.items())
