"""Stock lengths as a shop: how patterns along a stick are found."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from lacunar.takeoff.cutting.filling import filled_sticks
from lacunar.takeoff.cutting.knapsack import ValueTable
from lacunar.takeoff.cutting.near_patterns import near_patterns
from lacunar.takeoff.cutting.stick_sizes import StickSizes
from lacunar.takeoff.cutting.task import Chosen, Column, Priced

# With more kinds than this, one pattern in a round brings the bound up too slowly.
_MANY_KINDS = 40
_MORE_COLUMNS = 20


@dataclass(frozen=True)
class StickShop(StickSizes):
    """A shop (`task.Shop`) of sticks."""

    def best(self, values: Sequence[int], rest: Sequence[int]) -> Priced:
        """The most valuable patterns of what is still wanted, one for each stock."""
        table = ValueTable(self.sizes, values, rest, max(self.capacities))
        columns = [
            Column(stock, table.counts(capacity)) for stock, capacity in enumerate(self.capacities)
        ]
        if len(self.sizes) > _MANY_KINDS:
            for stock in range(len(self.capacities)):
                columns.extend(self._with_each(table, stock, values, rest))
        return Priced(
            tuple(int(table.values[capacity]) for capacity in self.capacities), tuple(columns)
        )

    def _with_each(
        self, table: ValueTable, stock: int, values: Sequence[int], rest: Sequence[int]
    ) -> Iterator[Column]:
        """The best patterns that hold one piece of a kind, of the kinds that give most."""
        capacity = self.capacities[stock]
        worth = sorted(
            (
                (-(int(table.values[capacity - size]) + values[kind]), kind)
                for kind, size in enumerate(self.sizes)
                if rest[kind] and size <= capacity
            ),
        )
        for _, kind in worth[:_MORE_COLUMNS]:
            counts = list(table.counts(capacity - self.sizes[kind]))
            if counts[kind] < rest[kind]:
                counts[kind] += 1
                yield Column(stock, tuple(counts))

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

    def singles(self) -> Iterator[Column]:
        """Each kind by itself, as often as each stick holds it."""
        for kind, (size, wanted) in enumerate(zip(self.sizes, self.demand, strict=True)):
            for stock, capacity in enumerate(self.capacities):
                n = min(wanted, capacity // size)
                if n:
                    counts = (n if each == kind else 0 for each in range(len(self.sizes)))
                    yield Column(stock, tuple(counts))

    def near(self, values: Sequence[int], needs: Sequence[int], most: int) -> list[Column] | None:
        """Every maximal pattern worth at least what is needed at its stock."""
        return near_patterns(self, values, needs, most)
