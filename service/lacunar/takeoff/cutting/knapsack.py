"""The most valuable pieces that fit a length, for every length at once: bounded knapsack tables.

All in whole numbers, so that a bound that rests on a table is exact.
"""

from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

Table = npt.NDArray[np.int64]


def bundles(most: int) -> Iterator[int]:
    """Numbers that make up every number up to `most`, each used at most once: 1, 2, 4, the rest.

    >>> list(bundles(10))
    [1, 2, 4, 3]
    """
    size = 1
    while most > 0:
        taken = min(size, most)
        yield taken
        most -= taken
        size *= 2


class ValueTable:
    """The greatest value of pieces at each length up to `capacity`, and the pieces that make it.

    Parameters: `sizes` of the kinds of pieces [ticks], `values` of one each, `most` of each,
    `capacity` [ticks].
    """

    def __init__(
        self, sizes: Sequence[int], values: Sequence[int], most: Sequence[int], capacity: int
    ) -> None:
        self._items = [
            (kind, n, sizes[kind] * n, values[kind] * n)
            for kind in range(len(sizes))
            if values[kind] > 0
            for n in bundles(min(most[kind], capacity // sizes[kind]))
        ]
        self.values: Table = np.zeros(capacity + 1, dtype=np.int64)
        self._taken = np.zeros((len(self._items), capacity + 1), dtype=np.bool_)
        self._kinds = len(sizes)
        for row, (_, _, size, value) in enumerate(self._items):
            with_it = self.values[: capacity + 1 - size] + value
            np.greater(with_it, self.values[size:], out=self._taken[row, size:])
            np.maximum(self.values[size:], with_it, out=self.values[size:])

    def counts(self, length: int) -> tuple[int, ...]:
        """How many of each kind make the greatest value at a length."""
        counts = [0] * self._kinds
        for row in range(len(self._items) - 1, -1, -1):
            if self._taken[row, length]:
                kind, n, size, _ = self._items[row]
                counts[kind] += n
                length -= size
        return tuple(counts)


def suffix_values(
    sizes: Sequence[int], values: Sequence[int], most: Sequence[int], capacity: int
) -> list[Table]:
    """For each kind, the greatest value at each length that it and the kinds after it make.

    Below the last stands a table of nothing.
    """
    tables: list[Table] = [np.zeros(capacity + 1, dtype=np.int64)]
    best: Table = np.zeros(capacity + 1, dtype=np.int64)
    for kind in range(len(sizes) - 1, -1, -1):
        if values[kind] > 0:
            for n in bundles(min(most[kind], capacity // sizes[kind])):
                size = sizes[kind] * n
                with_it = best[: capacity + 1 - size] + values[kind] * n
                np.maximum(best[size:], with_it, out=best[size:])
        tables.append(best.copy())
    return tables[::-1]
