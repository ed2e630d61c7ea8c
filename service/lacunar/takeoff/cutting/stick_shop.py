"""Stock lengths as a shop: patterns along one stick, in ticks.

A piece's size counts the saw cut after it; a stick's capacity counts one cut more than it has, as
the last piece needs none: lengths l in a stock L with cuts of k fit where (l + k) fits in (L + k).
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from lacunar.takeoff.cutting.filling import filled_sticks
from lacunar.takeoff.cutting.knapsack import ValueTable
from lacunar.takeoff.cutting.near_patterns import near_patterns
from lacunar.takeoff.cutting.task import Chosen, Column, Priced


@dataclass(frozen=True)
class StickShop:
    """Kinds of pieces, longest first, and stock lengths, with prices and supplies.

    Parameters: `sizes` [ticks], longest first; `demand`; `capacities` [ticks]; `prices`;
    `supplies`, None where there is no end of it.
    """

    sizes: tuple[int, ...]
    demand: tuple[int, ...]
    capacities: tuple[int, ...]
    prices: tuple[int, ...]
    supplies: tuple[int | None, ...]

    @cached_property
    def _by_price(self) -> list[int]:
        """Stocks, the cheapest first; of those that cost the same, the shortest."""
        order = range(len(self.prices))
        return sorted(order, key=lambda k: (self.prices[k], self.capacities[k]))

    def used(self, column: Column) -> int:
        """What a pattern takes of its stick, saw cuts counted [ticks]."""
        return sum(n * size for n, size in zip(column.counts, self.sizes, strict=True) if n)

    def best(self, values: Sequence[int], rest: Sequence[int]) -> Priced:
        """The most valuable patterns of what is still wanted, one for each stock."""
        table = ValueTable(self.sizes, values, rest, max(self.capacities))
        return Priced(
            tuple(int(table.values[capacity]) for capacity in self.capacities),
            tuple(
                Column(stock, table.counts(capacity))
                for stock, capacity in enumerate(self.capacities)
            ),
        )

    def fill(self, rest: Sequence[int], left: Sequence[int | None]) -> Iterable[Chosen]:
        """Plans by filling sticks, one for each stock length that most is cut from."""
        longest = max((size for size, n in zip(self.sizes, rest, strict=True) if n), default=0)
        for main in range(len(self.prices)):
            if left[main] is None and self.capacities[main] >= longest:
                found = filled_sticks(self, rest, left, main)
                if found is not None:
                    yield found
        if all(there is not None for there in left):
            found = filled_sticks(self, rest, left, None)
            if found is not None:
                yield found

    def cheapest(self, column: Column, left: Sequence[int | None]) -> Column:
        """The same pieces from the cheapest stick that holds them, if there is one left."""
        used = self.used(column)
        for stock in self._by_price:
            there = left[stock]
            if self.capacities[stock] >= used and (there is None or there > 0):
                return Column(stock, column.counts)
        return column

    def near(self, values: Sequence[int], needs: Sequence[int], most: int) -> list[Column] | None:
        """Every maximal pattern worth at least what is needed at its stock."""
        found: list[Column] = []
        for stock in range(len(self.prices)):
            here = near_patterns(self, stock, values, needs[stock], most - len(found))
            if here is None:
                return None
            found.extend(here)
        return found

    def order_of_use(self, main: int | None, left: Sequence[int | None]) -> Iterator[int]:
        """Limited stock first, the cheapest for its length first; then the main one."""
        limited = [k for k in range(len(self.prices)) if left[k] is not None]
        yield from sorted(limited, key=lambda k: (self.prices[k] / self.capacities[k], k))
        if main is not None:
            yield main
