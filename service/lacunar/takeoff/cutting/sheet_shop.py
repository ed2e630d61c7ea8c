"""Sheets as a shop: patterns that are cut from edge to edge, in ticks.

A panel's edges count one saw cut, a sheet's edges one more than they have.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from lacunar.takeoff.cutting.guillotine import Node, Shape, SheetGrid, counted
from lacunar.takeoff.cutting.rasters import cut_places, likely_places
from lacunar.takeoff.cutting.sheet_filling import Filler, fillers
from lacunar.takeoff.cutting.task import Chosen, Column, Priced, add

# Pairs of places on a sheet for which values are worked out.
MOST_CELLS = 30_000


@dataclass(frozen=True)
class SheetShop:
    """Kinds of panels as they may lie, and sheets, with prices and supplies.

    Parameters: `shapes`, one or two of each kind; `demand` of each kind; `sizes` of the sheets
    [ticks]; `prices`; `supplies`, None where there is no end of it.
    """

    shapes: tuple[Shape, ...]
    demand: tuple[int, ...]
    sizes: tuple[tuple[int, int], ...]
    prices: tuple[int, ...]
    supplies: tuple[int | None, ...]
    trees: dict[Column, Node] = field(default_factory=dict)

    @cached_property
    def _places(self) -> list[tuple[tuple[list[int], list[int]], bool]]:
        return [self._places_on(*size) for size in self.sizes]

    def _places_on(self, length: int, width: int) -> tuple[tuple[list[int], list[int]], bool]:
        """Places for cuts along both edges, and whether they are all that matter."""
        edges = [(shape.length, self.demand[shape.kind]) for shape in self.shapes]
        others = [(shape.width, self.demand[shape.kind]) for shape in self.shapes]
        along, across = cut_places(edges, length), cut_places(others, width)
        if along and across and len(along) * len(across) <= MOST_CELLS:
            return (along, across), True
        both = likely_places(edges, length, 2), likely_places(others, width, 2)
        if len(both[0]) * len(both[1]) <= MOST_CELLS:
            return both, False
        return (likely_places(edges, length, 1), likely_places(others, width, 1)), False

    @cached_property
    def grids(self) -> list[SheetGrid]:
        """Each sheet with the places for its cuts."""
        return [
            SheetGrid(size, places, self.shapes)
            for size, (places, _) in zip(self.sizes, self._places, strict=True)
        ]

    @property
    def complete(self) -> bool:
        """Whether cuts are tried at every place that matters, so that values are bounds."""
        return all(whole for _, whole in self._places)

    def areas(self) -> tuple[tuple[int, ...], tuple[int, ...]]:
        """The areas of the kinds and of the sheets, which bound what a sheet can hold."""
        kinds = {shape.kind: shape.length * shape.width for shape in self.shapes}
        return (
            tuple(kinds[kind] for kind in range(len(self.demand))),
            tuple(length * width for length, width in self.sizes),
        )

    def best(self, values: Sequence[int], rest: Sequence[int]) -> Priced:
        """The most valuable patterns, also without what is not wanted, and what they are worth.

        A pattern may have more of a kind than is wanted: only with these does the linear program
        come down to what the values prove.
        """
        wanted = [value if n else 0 for value, n in zip(values, rest, strict=True)]
        found = [grid.most(wanted) for grid in self.grids]
        columns = []
        for stock, (_, tree) in enumerate(found):
            column = self._kept(stock, tree)
            columns += [column, column.clipped(rest)]
        return Priced(tuple(worth for worth, _ in found), tuple(columns))

    def _kept(self, stock: int, tree: Node) -> Column:
        column = Column(stock, counted(tree, len(self.demand)))
        self.trees.setdefault(column, tree)
        return column

    def fill(self, rest: Sequence[int], left: Sequence[int | None]) -> Iterable[Chosen]:
        """Plans by filling sheets, all of one size as far as there are any, in every way."""
        first = list(rest) == list(self.demand)
        ways = list(fillers(self.shapes))
        for filler in ways if first else ways[:: len(ways) // 4]:
            for main in range(len(self.sizes)):
                found = self._filled(filler, main, rest, left)
                if found is not None:
                    yield found

    def _filled(
        self, filler: Filler, main: int, rest: Sequence[int], left: Sequence[int | None]
    ) -> Chosen | None:
        wanted, there = list(rest), list(left)
        chosen: Chosen = {}
        order = [main, *(k for k in range(len(self.sizes)) if k != main)]
        while any(wanted):
            column = self._next(filler, order, wanted, there)
            if column is None:
                return None
            end = there[column.stock]
            times = column.times(wanted)
            times = times if end is None else min(times, end)
            if end is not None:
                there[column.stock] = end - times
            add(chosen, column, times)
            for kind, n in enumerate(column.counts):
                wanted[kind] -= n * times
        return chosen

    def _next(
        self, filler: Filler, order: Sequence[int], wanted: Sequence[int], there: list[int | None]
    ) -> Column | None:
        for stock in order:
            if there[stock] == 0:
                continue
            tree = filler.fill(self.sizes[stock], wanted)
            column = self._kept(stock, tree)
            if any(column.counts):
                return column
        return None

    def singles(self) -> Iterator[Column]:
        """Each kind by itself, as often as each sheet holds it."""
        for kind in range(len(self.demand)):
            alone = [n if each == kind else 0 for each, n in enumerate(self.demand)]
            filler = next(fillers([shape for shape in self.shapes if shape.kind == kind]))
            for stock, size in enumerate(self.sizes):
                column = self._kept(stock, filler.fill(size, alone))
                if any(column.counts):
                    yield column

    def cheapest(self, column: Column, left: Sequence[int | None]) -> Column:
        """The same panels from the cheapest sheet that a known pattern has them on."""
        best = column
        for known in self.trees:
            there = left[known.stock]
            if self.prices[known.stock] >= self.prices[best.stock] or there == 0:
                continue
            if all(a >= b for a, b in zip(known.counts, column.counts, strict=True)):
                best = Column(known.stock, column.counts)
        return best

    def tree(self, column: Column) -> Node:
        """A way to cut at least what the pattern has."""
        if column in self.trees:
            return self.trees[column]
        holding = [
            known
            for known in self.trees
            if known.stock == column.stock
            and all(a >= b for a, b in zip(known.counts, column.counts, strict=True))
        ]
        return self.trees[min(holding, key=lambda known: (sum(known.counts), known.counts))]

    def near(self, values: Sequence[int], needs: Sequence[int], most: int) -> list[Column] | None:
        """None: patterns of sheets are too many to be written out."""
        del values, needs, most
        return None
