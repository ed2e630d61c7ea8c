"""Pricing: patterns that would make the plan cheaper are found until there is none.

Each round asks the linear program for the worth of each kind of piece, rounds it down to whole
numbers, and asks the shop what can be held at most of that. The answer gives both new patterns and
a bound that needs no linear program to be checked (`certificate`). Worths are smoothed towards
those of the best bound so far, which spares rounds.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.takeoff.cutting.certificate import SCALE, PriceSums, Weights, weigh
from lacunar.takeoff.cutting.linear_program import PatternProgram, Shares
from lacunar.takeoff.cutting.task import Column, Effort, Guard, Priced, Shop

_SMOOTHING = 0.8
_SLACK = 1e-7


@dataclass(frozen=True, slots=True)
class Bound:
    """What was proven: the best weights found, and the least total of prices that they allow."""

    weights: Weights
    least: int


@dataclass(slots=True)
class Pricing:
    """Column generation over a shop; `bound` is the best so far."""

    shop: Shop
    program: PatternProgram
    sums: PriceSums
    bound: Bound

    def run(self, effort: Effort, guard: Guard, target: int) -> Shares:
        """Price until nothing makes it cheaper, the bound meets `target`, or effort is out."""
        shares = self.program.solve()
        center: Sequence[float] | None = None
        for turn in range(effort.rounds):
            if guard.over() or self.bound.least >= target or self._meets(shares):
                break
            smooth = center is not None and turn < effort.rounds // 2
            worth = _mixed(shares.worth, center) if smooth and center else shares.worth
            priced = self._price(worth)
            better = self._note(worth, priced)
            new = self.program.add(self._useful(priced))
            if better or center is None:
                center = worth
            if not new and smooth:
                center = None
                continue
            if not new:
                break
            shares = self.program.solve()
        return shares

    def _price(self, worth: Sequence[float]) -> Priced:
        return self.shop.best(scaled(worth), self.shop.demand)

    def _note(self, worth: Sequence[float], priced: Priced) -> bool:
        shop = self.shop
        found = weigh(scaled(worth), priced.best, shop.demand, shop.prices, shop.supplies)
        if found.proven <= self.bound.weights.proven:
            return False
        self.bound = Bound(found, max(self.bound.least, self.sums.least_from(found.proven)))
        return True

    def _useful(self, priced: Priced) -> list[Column]:
        worths, more = self.program.duals()
        prices, unit = self.shop.prices, self.program.unit
        return [
            column
            for column in priced.columns
            if prices[column.stock] / unit + more.get(column.stock, 0.0)
            < sum(n * worths[kind] for kind, n in enumerate(column.counts) if n) - _SLACK
        ]

    def _meets(self, shares: Shares) -> bool:
        """Whether the program can become no cheaper than the bound, once rounded up."""
        if shares.uncut > _SLACK:
            return False
        reached = Fraction(shares.cost * self.program.unit).limit_denominator(10**6)
        return self.bound.least >= self.sums.least_from(reached - Fraction(1, 10**6))


def scaled(worth: Sequence[float]) -> tuple[int, ...]:
    """Worths as whole numbers, rounded down."""
    return tuple(int(each * SCALE) for each in worth)


def _mixed(worth: Sequence[float], center: Sequence[float]) -> tuple[float, ...]:
    return tuple(
        _SMOOTHING * old + (1 - _SMOOTHING) * new for old, new in zip(center, worth, strict=True)
    )
