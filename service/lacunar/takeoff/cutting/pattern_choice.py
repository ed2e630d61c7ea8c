"""An integer program over patterns that are known: the cheapest plan, and whether it is proven."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, gcd
from typing import Any

from lacunar.takeoff.cutting.solver import (
    has_solution,
    infinity,
    is_infeasible,
    is_optimal,
    make_whole,
    new_solver,
)
from lacunar.takeoff.cutting.task import Chosen, Column, Guard, Shop, cost_of, left_of, rest_of

_WHOLE = 1e-6


@dataclass(frozen=True, slots=True)
class Found:
    """A plan, or None; and whether the program proved that no plan of its patterns is cheaper."""

    chosen: Chosen | None
    proven: bool


def cheaper_of(shop: Shop, columns: Sequence[Column], most: int, nodes: int, guard: Guard) -> Found:
    """A plan that costs at most `most`, made of the patterns given, or the proof of none.

    Prices often differ by a common step (all end in .49, say). How many pieces of stock are taken
    then decides which totals there can be, so that each number of them is a case of its own, whose
    totals lie a whole step apart. The first plan found is given back, as with it fewer patterns
    are left that could be in a better one.
    """
    cases = _Cases(shop, columns, nodes, guard)
    if cases.step <= 1:
        return cases.solve(None, most)
    proven = True
    for number, bound in cases.numbers(most):
        if bound > most:
            continue
        found = cases.solve(number, most)
        if found.chosen is not None:
            return Found(found.chosen, False)
        proven = proven and found.proven
    return Found(None, proven)


class _Cases:
    """The integer program over patterns, to be asked for any number of pieces of stock.

    How many are taken of each stock are whole numbers of their own, so that the search can part
    cases by them first.
    """

    def __init__(self, shop: Shop, columns: Sequence[Column], nodes: int, guard: Guard) -> None:
        self._shop, self._columns, self._nodes, self._guard = shop, columns, nodes, guard
        first = min(shop.prices)
        self.step = gcd(*(price - first for price in shop.prices))
        self._first = first

    def numbers(self, most: int) -> list[tuple[int, int]]:
        """How many pieces of stock a plan of at most that cost can take, and the least it costs.

        By linear programs, whose least costs rise to both sides of the cheapest number.
        """
        solver = self._model(whole=False)
        top = len(self._shop.demand) + len(self._shop.prices)
        solver.run()
        if not is_optimal(solver):
            return []
        taken = list(solver.getSolution().col_value)[len(self._columns) :]
        middle = floor(sum(taken))
        found: list[tuple[int, int]] = []
        for start, way in ((middle, -1), (middle + 1, 1)):
            number = start
            while number >= 0:
                solver.changeRowBounds(top, number, number)
                solver.run()
                if not is_optimal(solver):
                    break
                cost = solver.getInfo().objective_function_value
                if cost > most + _WHOLE:
                    break
                found.append((number, self._on_step(cost, number)))
                number += way
        return sorted(found, key=lambda each: (each[1], each[0]))

    def _on_step(self, cost: float, number: int) -> int:
        """The least total of that many pieces of stock that is not below a cost."""
        base = self._first * number
        return base + self.step * max(0, ceil((cost - base) / self.step - _WHOLE))

    def solve(self, number: int | None, most: int) -> Found:
        """The cheapest plan with that many pieces of stock, or with any number."""
        if self._guard.over():
            return Found(None, False)
        shop = self._shop
        solver = self._model(whole=True, nodes=max(1, self._nodes))
        top = len(shop.demand) + len(shop.prices)
        if number is not None:
            solver.changeRowBounds(top, number, number)
            spare = (most - self._first * number) // self.step
            solver.changeRowBounds(top + 2, -infinity(), spare)
        else:
            solver.changeRowBounds(top + 1, -infinity(), most)
        solver.run()
        self._guard.over()
        self._nodes -= max(0, solver.getInfo().mip_node_count)
        if not has_solution(solver):
            return Found(None, is_infeasible(solver))
        chosen = whole_shares(self._columns, solver)
        if not is_plan(shop, chosen) or cost_of(chosen, shop.prices) > most:
            return Found(None, False)
        return Found(chosen, is_optimal(solver))

    def _model(self, *, whole: bool, nodes: int = 0) -> Any:
        """Rows: kinds of pieces; numbers of each stock; of all; their cost; cost in steps."""
        shop = self._shop
        kinds, stocks = len(shop.demand), len(shop.prices)
        limits = {"mip_max_nodes": nodes, "mip_max_improving_sols": 1}
        solver = new_solver(**limits, time_limit=self._guard.left()) if whole else new_solver()
        for n in shop.demand:
            solver.addRow(n, infinity(), 0, [], [])
        for _ in range(stocks):
            solver.addRow(0.0, 0.0, 0, [], [])
        for _ in range(3):
            solver.addRow(-infinity(), infinity(), 0, [], [])
        for column in self._columns:
            rows, numbers = entries(column, kinds)
            solver.addCol(0.0, 0.0, infinity(), len(rows), rows, numbers)
        for k, (price, there) in enumerate(zip(shop.prices, shop.supplies, strict=True)):
            end = infinity() if there is None else there
            steps = (price - self._first) // max(1, self.step)
            parts = {kinds + k: -1, kinds + stocks: 1}
            parts |= {kinds + stocks + 1: price} if price else {}
            parts |= {kinds + stocks + 2: steps} if steps else {}
            numbers = [float(each) for each in parts.values()]
            solver.addCol(float(price), 0.0, end, len(parts), list(parts), numbers)
        if whole:
            make_whole(solver, range(len(self._columns) + stocks))
        return solver


def is_plan(shop: Shop, chosen: Chosen) -> bool:
    """Whether everything that is wanted is cut, from no more stock than there is."""
    left = left_of(shop.supplies, chosen)
    return not any(rest_of(shop.demand, chosen)) and all(n is None or n >= 0 for n in left)


def entries(column: Column, kinds: int) -> tuple[list[int], list[float]]:
    """The rows of a pattern's pieces, and that of its stock, with how many of each it has."""
    rows = [kind for kind, n in enumerate(column.counts) if n]
    numbers = [float(column.counts[kind]) for kind in rows]
    return [*rows, kinds + column.stock], [*numbers, 1.0]


def whole_shares(columns: Sequence[Column], solver: Any) -> Chosen:
    """How often each pattern is cut in the solution; what a float says is rounded, then checked."""
    values = list(solver.getSolution().col_value)[: len(columns)]
    return {column: round(x) for column, x in zip(columns, values, strict=True) if round(x)}
