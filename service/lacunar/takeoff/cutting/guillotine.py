"""The most valuable way to cut a sheet from edge to edge, over any number of stages.

F(x, y) = the most of: a piece that fits x by y; F(a, y) + F(x - a, y) over cuts across the length;
F(x, b) + F(x, y - b) over cuts across the width. (The known recursion for unconstrained guillotine
cutting, from memory.) It is worked out for all places at once, one direction after the other, until
nothing changes. Demand does not count here, so the values bound every pattern from above.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Table = npt.NDArray[np.int64]
Places = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Shape:
    """A kind of panel as it may lie: edges along and across the sheet [ticks], saw cut added."""

    kind: int
    length: int
    width: int


@dataclass(frozen=True, slots=True)
class Leaf:
    """A rectangle that one panel is taken from; None: nothing is."""

    shape: Shape | None


@dataclass(frozen=True, slots=True)
class Split:
    """A rectangle that is cut in two, across its length or across its width, at a place [ticks]."""

    across_length: bool
    at: int
    first: "Node"
    second: "Node"


Node = Leaf | Split
NOTHING = Leaf(None)


class SheetGrid:
    """A sheet, the places its cuts may be at, and which two parts each cut gives."""

    def __init__(
        self,
        size: tuple[int, int],
        places: tuple[Sequence[int], Sequence[int]],
        shapes: Sequence[Shape],
    ) -> None:
        self.size = size
        self._xs, self._ys = places
        self._shapes = [
            shape for shape in shapes if shape.length <= size[0] and shape.width <= size[1]
        ]
        self._cuts = (_cuts(self._xs), _cuts(self._ys))

    def most(self, values: Sequence[int]) -> tuple[int, Node]:
        """The greatest value of one sheet, and a way to cut it."""
        fitting = self._fitting(values)
        table = fitting.copy()
        changed = True
        while changed:
            before = table.copy()
            _close(table, self._cuts[0])
            _close(table.T, self._cuts[1])
            changed = bool((before != table).any())
        top = (len(self._xs) - 1, len(self._ys) - 1)
        return int(table[top]), self._node(table, values, top)

    def _fitting(self, values: Sequence[int]) -> Table:
        table: Table = np.zeros((len(self._xs), len(self._ys)), dtype=np.int64)
        for shape in self._shapes:
            i, j = self._first(shape)
            np.maximum(table[i:, j:], values[shape.kind], out=table[i:, j:])
        return table

    def _first(self, shape: Shape) -> tuple[int, int]:
        """The first places that the shape fits at."""
        xs, ys = self._xs, self._ys
        return bisect_right(xs, shape.length - 1), bisect_right(ys, shape.width - 1)

    def _node(self, table: Table, values: Sequence[int], at: tuple[int, int]) -> Node:
        worth = int(table[at])
        if not worth:
            return NOTHING
        for shape in self._shapes:
            i, j = self._first(shape)
            if values[shape.kind] == worth and i <= at[0] and j <= at[1]:
                return Leaf(shape)
        for axis, row in ((0, table[:, at[1]]), (1, table[at[0], :])):
            first, second = self._cuts[axis][at[axis]]
            hits = np.flatnonzero(row[first] + row[second] == worth)
            if len(hits):
                a, b = int(first[hits[0]]), int(second[hits[0]])
                ends = [(a, at[1]), (b, at[1])] if axis == 0 else [(at[0], a), (at[0], b)]
                place = (self._xs if axis == 0 else self._ys)[a]
                parts = [self._node(table, values, end) for end in ends]
                return Split(axis == 0, place, parts[0], parts[1])
        raise AssertionError("a value comes from a piece or from a cut")


def _cuts(places: Sequence[int]) -> list[tuple[Places, Places]]:
    """For each place, the cuts up to its middle, and what is left of it, as numbers of places."""
    found = []
    for place in places:
        first = [n for n in range(1, len(places)) if 2 * places[n] <= place]
        second = [bisect_right(places, place - places[n]) - 1 for n in first]
        found.append((np.array(first, dtype=np.intp), np.array(second, dtype=np.intp)))
    return found


def _close(table: Table, cuts: Sequence[tuple[Places, Places]]) -> None:
    """Cut along the first axis, each place from those below it."""
    for place, (first, second) in enumerate(cuts):
        if len(first):
            best = (table[first] + table[second]).max(axis=0)
            np.maximum(table[place], best, out=table[place])


def counted(node: Node, kinds: int) -> tuple[int, ...]:
    """How many panels of each kind a way to cut gives."""
    counts = [0] * kinds
    stack = [node]
    while stack:
        this = stack.pop()
        if isinstance(this, Split):
            stack.extend((this.first, this.second))
        elif this.shape is not None:
            counts[this.shape.kind] += 1
    return tuple(counts)
