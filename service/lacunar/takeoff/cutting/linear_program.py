"""The linear program over the patterns known so far, of which duals and shares are asked."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from lacunar.takeoff.cutting.solver import infinity, new_solver
from lacunar.takeoff.cutting.task import Column, Shop

# What it costs to leave a piece uncut, in the dearest stock: never paid where a plan exists.
_UNCUT = 10.0


@dataclass(frozen=True, slots=True)
class Shares:
    """An optimum of the program: its cost, the worth of each piece, the share of each pattern.

    Costs are parts of the dearest stock's price.
    """

    cost: float
    worth: tuple[float, ...]
    shares: tuple[float, ...]
    uncut: float


class PatternProgram:
    """Patterns as columns; a row for each kind of piece, one for each stock there is an end of."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop
        self.columns: list[Column] = []
        self._known: set[Column] = set()
        self.unit = max(*shop.prices, 1)
        self._kinds = len(shop.demand)
        self._limited = [k for k, there in enumerate(shop.supplies) if there is not None]
        self._solver = new_solver(presolve="off")
        self._endless = infinity()
        for n in shop.demand:
            self._solver.addRow(n, self._endless, 0, [], [])
        for k in self._limited:
            self._solver.addRow(-self._endless, shop.supplies[k], 0, [], [])
        for kind in range(self._kinds):
            self._solver.addCol(_UNCUT, 0.0, self._endless, 1, [kind], [1.0])

    def add(self, columns: Iterable[Column]) -> int:
        """Put in the patterns that are new; how many they were."""
        new = 0
        for column in columns:
            if column in self._known or not any(column.counts):
                continue
            self._known.add(column)
            self.columns.append(column)
            rows = [kind for kind, n in enumerate(column.counts) if n]
            numbers = [float(column.counts[kind]) for kind in rows]
            if column.stock in self._limited:
                rows.append(self._kinds + self._limited.index(column.stock))
                numbers.append(1.0)
            price = self._shop.prices[column.stock] / self.unit
            self._solver.addCol(price, 0.0, self._endless, len(rows), rows, numbers)
            new += 1
        return new

    def demand(self, rest: Sequence[int], left: Sequence[int | None]) -> None:
        """Ask for what is still wanted, from what is left; patterns with too much are shut out."""
        for kind, n in enumerate(rest):
            self._solver.changeRowBounds(kind, n, self._endless)
        for row, stock in enumerate(self._limited):
            self._solver.changeRowBounds(self._kinds + row, -self._endless, left[stock] or 0)
        for place, column in enumerate(self.columns):
            fits = all(n <= most for n, most in zip(column.counts, rest, strict=True) if n)
            self._solver.changeColBounds(self._kinds + place, 0.0, self._endless if fits else 0.0)

    def solve(self) -> Shares:
        """The optimum."""
        self._solver.run()
        solution = self._solver.getSolution()
        values = list(solution.col_value)
        return Shares(
            self._solver.getInfo().objective_function_value,
            tuple(max(0.0, dual) for dual in solution.row_dual[: self._kinds]),
            tuple(values[self._kinds :]),
            sum(values[: self._kinds]),
        )

    def duals(self) -> tuple[tuple[float, ...], dict[int, float]]:
        """The worth of each kind, and of one more stick of each stock there is an end of."""
        rows = list(self._solver.getSolution().row_dual)
        more = {k: max(0.0, -rows[self._kinds + i]) for i, k in enumerate(self._limited)}
        return tuple(rows[: self._kinds]), more
