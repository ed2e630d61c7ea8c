"""Lower bounds that anyone can check: whole values of pieces, and what a piece of stock can hold.

If no piece of stock k can hold pieces worth more than V_k, then t * V_k <= c_k + n_k for a factor t
and n_k = max(0, t * V_k - c_k), and every plan costs at least

    t * (sum of value * quantity) - sum of u_k * n_k

where c_k is the price of the stock and u_k how many there are; of what there is no end of, n_k must
be 0. This is the dual of the linear program over all patterns (weak duality), in exact fractions.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

# Fine enough that rounding values down loses nothing that matters, coarse enough for 64 bits.
SCALE = 2**22
# Sums of prices are written out as bits up to here.
_MOST_SUMS = 4_000_000


@dataclass(frozen=True, slots=True)
class Weights:
    """Values of pieces, the most that one piece of each stock can hold, and the bound they prove.

    `factor` is t above; `proven` the bound as a fraction.
    """

    values: tuple[int, ...]
    held: tuple[int, ...]
    factor: Fraction
    proven: Fraction


def weigh(
    values: Sequence[int],
    held: Sequence[int],
    demand: Sequence[int],
    prices: Sequence[int],
    supplies: Sequence[int | None],
) -> Weights:
    """The greatest bound that values prove, over all factors."""
    worth = sum(value * n for value, n in zip(values, demand, strict=True))
    stocks = list(zip(held, prices, supplies, strict=True))
    breaks = {Fraction(price, most) for most, price, _ in stocks if most > 0}
    endless = [Fraction(price, most) for most, price, there in stocks if most > 0 and there is None]
    highest = min(endless, default=None)
    best = Weights(tuple(values), tuple(held), Fraction(0), Fraction(0))
    for factor in sorted(breaks):
        if highest is not None and factor > highest:
            break
        paid = sum(
            (max(Fraction(0), factor * most - price) * there)
            for most, price, there in stocks
            if there is not None
        )
        proven = factor * worth - paid
        if proven > best.proven:
            best = Weights(tuple(values), tuple(held), factor, proven)
    return best


class PriceSums:
    """The totals that prices can add up to, so that a bound can be rounded up to the next."""

    def __init__(self, prices: Sequence[int], most: int) -> None:
        self._most = min(most, _MOST_SUMS)
        reached = 1
        mask = (1 << (self._most + 1)) - 1
        for price in set(prices) - {0}:
            step = price
            while step <= self._most:
                reached |= (reached << step) & mask
                step *= 2
        self._reached = reached

    def least_from(self, bound: Fraction) -> int:
        """The least total that is not below the bound."""
        whole = max(0, ceil(bound))
        above = self._reached >> whole
        if whole > self._most or not above:
            return whole
        return whole + (above & -above).bit_length() - 1

    def most_below(self, total: int) -> int:
        """The greatest total that is below another."""
        if total - 1 > self._most:
            return total - 1
        below = self._reached & ((1 << max(0, total)) - 1)
        return below.bit_length() - 1
