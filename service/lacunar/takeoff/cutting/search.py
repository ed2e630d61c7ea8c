"""From a shop to the cheapest plan that is found, with what was proven of it.

First plans that are found quickly; then pricing, which gives the bound; dives, until a plan meets
the bound; an integer program over the patterns known; last, where the bound is not met, one over
every pattern that a cheaper plan could hold, which either finds it or proves that there is none.
"""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.takeoff.cutting.asked import Proof
from lacunar.takeoff.cutting.certificate import PriceSums, Weights
from lacunar.takeoff.cutting.column_generation import Bound, Pricing
from lacunar.takeoff.cutting.dives import Diver
from lacunar.takeoff.cutting.linear_program import PatternProgram
from lacunar.takeoff.cutting.pattern_choice import cheaper_of, is_plan
from lacunar.takeoff.cutting.second_choice import Keeps, SecondChoice
from lacunar.takeoff.cutting.task import (
    Chosen,
    Column,
    Effort,
    Guard,
    Shop,
    add,
    cost_of,
    left_of,
)

# A better plan is looked for in these parts of the gap, from the bound up.
_PARTS_OF_GAP = (8, 4, 2, 1)
# With no more patterns than this, all of the gap at once.
_FEW = 250
# Dives before the first try at a proof.
_FIRST_DIVES = 2
# Patterns among which plans that cost the same are sought.
_SECOND_COLUMNS = 30


@dataclass(frozen=True, slots=True)
class Outcome:
    """The best plan found; its cost; the least any plan can cost, with the weights that prove it.

    `bound` is what the weights prove, `least` what is known: the cost itself once a search proved
    it. `proof` is None where neither was reached.
    """

    chosen: Chosen
    cost: int
    weights: Weights
    bound: int
    least: int
    proof: Proof | None


class Search:
    """One search; it keeps the best plan there is.

    Of plans that cost the same it takes the one with the fewest patterns, or if `keeps` tells what
    a pattern keeps for later, the one that keeps most.
    """

    def __init__(
        self, shop: Shop, effort: Effort, guard: Guard, keeps: Keeps | None = None
    ) -> None:
        self._shop, self._effort, self._guard, self._keeps = shop, effort, guard, keeps
        self._best: Chosen | None = None
        self._cost = 0
        self._searched = False

    def run(self, stop_at: int | None = None) -> Outcome | None:
        """The outcome; None where no plan was found with the stock there is.

        Where the bound shows that no plan costs less than `stop_at`, the search ends there.
        """
        for filled in self._shop.fill(self._shop.demand, self._shop.supplies):
            self._offer(filled)
        pricing = self._priced()
        worth_it = stop_at is None or pricing.bound.least < stop_at
        if worth_it and not self._enough(pricing.bound):
            self._improve(pricing)
        if self._best is None:
            return None
        plain = self._second(pricing) if worth_it else self._best
        return self._outcome(plain, pricing.bound)

    def _offer(self, chosen: Chosen) -> None:
        if self._best is not None and cost_of(chosen, self._shop.prices) > self._cost * 2:
            return
        tidy = stripped(self._shop, chosen)
        cost = cost_of(tidy, self._shop.prices)
        if (self._best is None or cost < self._cost) and is_plan(self._shop, tidy):
            self._best, self._cost = tidy, cost

    def _enough(self, bound: Bound) -> bool:
        return self._best is not None and self._cost <= bound.least

    def _priced(self) -> Pricing:
        shop = self._shop
        program = PatternProgram(shop)
        program.add(self._best or ())
        program.add(shop.singles())
        most = self._cost if self._best is not None else sum(shop.demand) * max(shop.prices)
        sums = PriceSums(shop.prices, most)
        none = Weights((0,) * len(shop.demand), (0,) * len(shop.prices), Fraction(0), Fraction(0))
        pricing = Pricing(shop, program, sums, Bound(none, 0))
        pricing.run(self._effort, self._guard, most)
        return pricing

    def _improve(self, pricing: Pricing) -> None:
        """Dives, then proof; more dives and a larger program only where these did not settle it."""
        half = min(_FIRST_DIVES, self._effort.dives)
        self._dive(pricing, range(half))
        self._search_all(pricing, max(1, self._effort.nodes // 4))
        self._dive(pricing, range(half, self._effort.dives))
        self._choose(pricing)
        self._search_all(pricing, self._effort.nodes)

    def _settled(self, pricing: Pricing) -> bool:
        return self._guard.over() or self._searched or self._enough(pricing.bound)

    def _dive(self, pricing: Pricing, numbers: range) -> None:
        diver = Diver(self._shop, pricing.program, self._offer)
        for number in numbers:
            if self._settled(pricing):
                return
            diver.dive(number, self._guard, lambda: self._enough(pricing.bound))

    def _choose(self, pricing: Pricing) -> None:
        while not self._settled(pricing):
            columns = self._most_likely(pricing)
            most = self._below(pricing)
            found = cheaper_of(self._shop, columns, most, self._effort.nodes, self._guard)
            if found.chosen is None:
                return
            self._offer(found.chosen)

    def _below(self, pricing: Pricing) -> int:
        """The most that a better plan could cost."""
        if self._best is None:
            return sum(self._shop.demand) * max(self._shop.prices)
        return pricing.sums.most_below(self._cost)

    def _most_likely(self, pricing: Pricing) -> list[Column]:
        """The patterns that cost least beside what their pieces are worth."""
        factor = float(pricing.bound.weights.factor)
        values = pricing.bound.weights.values

        def beside(column: Column) -> float:
            worth = sum(n * values[kind] for kind, n in enumerate(column.counts) if n)
            return self._shop.prices[column.stock] - factor * worth

        columns = pricing.program.columns
        return sorted(columns, key=lambda each: (beside(each), each))[: self._effort.columns]

    def _search_all(self, pricing: Pricing, nodes: int) -> None:
        """Look among all patterns of a better plan, until there is none or effort is out.

        Where these are many, first for plans close to the bound, which few of them could be in.
        """
        if self._settled(pricing) or self._best is None:
            return
        columns = self._near(pricing, 1)
        many = columns is None or len(columns) > _FEW
        for part in _PARTS_OF_GAP if many else (1,):
            columns = self._near(pricing, part) if many else columns
            while columns is not None and not self._settled(pricing):
                most = self._part_of_gap(pricing, part)
                found = cheaper_of(self._shop, columns, most, nodes, self._guard)
                if found.chosen is None:
                    self._searched = part == 1 and found.proven
                    break
                self._offer(found.chosen)
                columns = self._near(pricing, part)

    def _part_of_gap(self, pricing: Pricing, part: int) -> int:
        """The most that a better plan could cost which lies in a part of the gap."""
        least = pricing.bound.least
        return pricing.sums.most_below(least + -(-(self._cost - least) // part))

    def _near(self, pricing: Pricing, part: int) -> list[Column] | None:
        """Every pattern that a plan in a part of the gap could hold; None if too many."""
        weights = pricing.bound.weights
        if not weights.factor:
            return None
        most = self._part_of_gap(pricing, part)
        needs = [
            _need(price, held, weights.factor, most - weights.proven)
            for price, held in zip(self._shop.prices, weights.held, strict=True)
        ]
        return self._shop.near(weights.values, needs, self._effort.near)

    def _second(self, pricing: Pricing) -> Chosen:
        assert self._best is not None
        if len(self._best) <= 1 or self._guard.over():
            return self._best
        known = {**dict.fromkeys(self._best), **dict.fromkeys(self._most_likely(pricing))}
        few = list(known)[:_SECOND_COLUMNS]
        choice = SecondChoice(self._shop, few, self._best, self._guard)
        return choice.plainest() if self._keeps is None else choice.keeping_most(self._keeps)

    def _outcome(self, chosen: Chosen, bound: Bound) -> Outcome:
        proof = None
        if self._cost <= bound.least:
            proof = Proof.BOUND
        elif self._searched:
            proof = Proof.SEARCH
        least = bound.least if proof is None else self._cost
        return Outcome(chosen, self._cost, bound.weights, bound.least, least, proof)


def _need(price: int, held: int, factor: Fraction, spare: Fraction) -> int:
    """What a pattern of a stock must be worth to be in a plan with that much to spare.

    Where there is an end of the stock, t * V may be above its price; then what is above counts.
    """
    most_paid = max(Fraction(price), factor * held)
    needed = (most_paid - spare) / factor
    return max(0, -(-needed.numerator // needed.denominator))


def stripped(shop: Shop, chosen: Chosen) -> Chosen:
    """The plan without pieces nobody wants, each stick the cheapest that holds what is left."""
    rest = list(shop.demand)
    left = list(shop.supplies)
    tidy: Chosen = {}
    for column, times in sorted(chosen.items(), reverse=True):
        while times:
            kept = column.clipped(rest)
            if not any(kept.counts):
                break
            often = min(times, kept.times(rest))
            for kind, n in enumerate(kept.counts):
                rest[kind] -= n * often
            add(tidy, kept, often)
            times -= often
    return _from_cheapest(shop, tidy, left_of(left, tidy))


def _from_cheapest(shop: Shop, chosen: Chosen, left: list[int | None]) -> Chosen:
    tidy: Chosen = {}
    for column, times in chosen.items():
        while times:
            other = shop.cheapest(column, left)
            if shop.prices[other.stock] >= shop.prices[column.stock]:
                add(tidy, column, times)
                break
            there = left[other.stock]
            moved = times if there is None else min(times, there)
            if there is not None:
                left[other.stock] = there - moved
            freed = left[column.stock]
            if freed is not None:
                left[column.stock] = freed + moved
            add(tidy, other, moved)
            times -= moved
    return tidy
