"""Where cuts across a sheet need be tried: at sums of pieces' edges, and at no other place.

Pieces of any pattern can be pushed toward the corner until each starts at a sum of edges of pieces
before it, so that cuts elsewhere gain nothing (normal patterns).
"""

from bisect import bisect_right
from collections.abc import Sequence

from lacunar.takeoff.cutting.knapsack import bundles

# Sums that are written out to be reduced.
_MOST_SUMS = 50_000

Edges = Sequence[tuple[int, int]]
"""Edges of panels [ticks], with how often each may be used."""


def cut_places(edges: Edges, length: int) -> list[int] | None:
    """The places along a length at which cuts need be tried, from nothing on; None if too many.

    >>> cut_places([(3, 2), (5, 1)], 12)
    [0, 3, 6, 8, 11]
    """
    reached = 1
    mask = (1 << (length + 1)) - 1
    for edge, most in _fitting(edges, length):
        reached = _with_up_to(reached, edge, most, mask)
    return None if reached.bit_count() > _MOST_SUMS else _reduced(_places(reached), length)


def likely_places(edges: Edges, length: int, kinds: int) -> list[int]:
    """Places that are sums of one or two different edges only.

    >>> likely_places([(3, 2), (5, 1)], 12, kinds=1)
    [0, 6]
    """
    pairs = _fitting(edges, length)
    mask = (1 << (length + 1)) - 1
    alone = [_with_up_to(1, edge, most, mask) for edge, most in pairs]
    reached = 1
    for bits in alone:
        reached |= bits
        for edge, most in pairs if kinds > 1 else ():
            reached |= _with_up_to(bits, edge, most, mask)
    return _reduced(_places(reached), length)


def _fitting(edges: Edges, length: int) -> Edges:
    return [(edge, min(most, length // edge)) for edge, most in edges if edge <= length]


def _with_up_to(reached: int, edge: int, most: int, mask: int) -> int:
    """The sums with an edge added up to so often."""
    for n in bundles(most):
        reached |= (reached << (edge * n)) & mask
    return reached


def _places(bits: int) -> list[int]:
    return [place for place in range(bits.bit_length()) if bits >> place & 1]


def _reduced(places: Sequence[int], length: int) -> list[int]:
    """Of the sums, those that the rest of the length can make use of.

    For each sum, the first at or below what it leaves of the length.
    """
    kept = {places[bisect_right(places, length - place) - 1] for place in places}
    return sorted(kept | {0})
