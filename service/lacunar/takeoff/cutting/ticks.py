"""Exact lengths as whole numbers: a tick that divides them all, or one they are rounded to."""

from collections.abc import Iterable
from fractions import Fraction
from math import ceil, floor, gcd, lcm

from lacunar.measure.length import Length

# Tables grow with the ticks of the longest stick: at a sixty-fourth of an inch, 16 ft are 12,288.
MOST_TICKS = 60_000


def common_tick(lengths: Iterable[Length]) -> Length:
    """The longest length that goes into all of them a whole number of times.

    >>> common_tick([Length.of_inches(Fraction(97, 2)), Length.of_inches(Fraction(1, 8))])
    Length(1/8 in)
    """
    parts = [length.inches for length in lengths if length]
    whole = lcm(*(part.denominator for part in parts))
    return Length(Fraction(gcd(*(int(part * whole) for part in parts)), whole))


def tick_for(lengths: Iterable[Length], longest: Length) -> tuple[Length, bool]:
    """The tick that lengths are counted in, and whether it divides them all.

    Where the longest would have too many, it is the greatest that gives it enough; sizes are then
    rounded up and capacities down (`rounded`), so that every plan can still be cut.
    """
    tick = common_tick(lengths)
    if longest / tick <= MOST_TICKS:
        return tick, True
    return longest / MOST_TICKS, False


def rounded(length: Length, tick: Length, *, up: bool) -> int:
    """A length in ticks, rounded to one side where it is no whole number of them."""
    return ceil(length / tick) if up else floor(length / tick)
