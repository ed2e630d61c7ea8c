"""Pieces and stock lengths in ticks: what of it fits, and what is cheapest.

A piece's size counts the saw cut after it; a stick's capacity counts one cut more than it has, as
the last piece needs none: lengths l in a stock L with cuts of k fit where (l + k) fits in (L + k).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from lacunar.takeoff.cutting.task import Column


@dataclass(frozen=True)
class StickSizes:
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

    def cheapest(self, column: Column, left: Sequence[int | None]) -> Column:
        """The same pieces from the cheapest stick that holds them, if there is one left."""
        used = self.used(column)
        for stock in self._by_price:
            there = left[stock]
            if self.capacities[stock] >= used and (there is None or there > 0):
                return Column(stock, column.counts)
        return column

    def order_of_use(self, main: int | None, left: Sequence[int | None]) -> Iterator[int]:
        """Limited stock first, the cheapest for its length first; then the main one."""
        limited = [k for k in range(len(self.prices)) if left[k] is not None]
        yield from sorted(limited, key=lambda k: (self.prices[k] / self.capacities[k], k))
        if main is not None:
            yield main
