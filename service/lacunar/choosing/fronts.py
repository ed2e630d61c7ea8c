"""Which of several are worth considering: those that no other one beats.

One beats another that is at least as good in everything and better in something.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TypeVar

Value = Fraction | int
Key = tuple[Value, ...]
Kind = TypeVar("Kind")


def beats(one: Key, other: Key) -> bool:
    """Whether the first is at least as good in everything and better in something; less is better.

    >>> beats((1, 2), (1, 3)), beats((1, 2), (1, 2)), beats((0, 9), (1, 2))
    (True, False, False)
    """
    return one != other and all(a <= b for a, b in zip(one, other, strict=True))


def unbeaten(keys: Sequence[Key]) -> list[int]:
    """The places of those that no other one beats, in their order.

    >>> unbeaten([(2, 2), (1, 3), (3, 1), (2, 3), (2, 2)])
    [0, 1, 2, 4]
    """
    kept: list[int] = []
    # In this order nothing is beaten by what comes after it.
    for place in sorted(range(len(keys)), key=lambda each: keys[each]):
        if not any(beats(keys[other], keys[place]) for other in kept):
            kept.append(place)
    return sorted(kept)


def layers(keys: Sequence[Key]) -> Iterator[list[int]]:
    """The unbeaten, then what is unbeaten without these, and so on.

    >>> list(layers([(1, 1), (2, 2), (1, 2)]))
    [[0], [2], [1]]
    """
    left = list(range(len(keys)))
    while left:
        front = [left[place] for place in unbeaten([keys[each] for each in left])]
        yield front
        gone = set(front)
        left = [each for each in left if each not in gone]


def ranked(values: Sequence[Key]) -> list[tuple[int, ...]]:
    """Keys with each value as its rank among those of its column: as good, and quick to compare.

    >>> ranked([(Fraction(5, 2), 10), (Fraction(1), 30), (Fraction(5, 2), 20)])
    [(1, 0), (0, 2), (1, 1)]
    """
    columns = [sorted(set(column)) for column in zip(*values, strict=True)]
    ranks = [{value: rank for rank, value in enumerate(column)} for column in columns]
    return [tuple(rank[value] for rank, value in zip(ranks, key, strict=True)) for key in values]
