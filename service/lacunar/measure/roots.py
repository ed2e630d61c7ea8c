"""Roots that are mostly not rational, found in whole numbers and rounded once."""

from fractions import Fraction
from math import isqrt

PLACES = 12
"""Decimals a root is cut off at: far finer than any published coefficient it multiplies."""


def square_root(number: Fraction) -> Fraction:
    """Turn a number of at least zero into its square root, cut off after 12 decimals.

    Formula: floor(sqrt(number) · 10¹²) / 10¹², by whole numbers alone, so that every machine finds
    the same. Raises ValueError for a number below zero.

    >>> square_root(Fraction(9, 16))
    Fraction(3, 4)
    >>> square_root(Fraction(2))
    Fraction(1414213562373, 1000000000000)
    """
    scale: int = 10**PLACES
    return Fraction(isqrt(number.numerator * scale * scale // number.denominator), scale)


def exact_root(number: Fraction) -> Fraction | None:
    """Turn a number of at least zero into its square root where that is rational, else into None.

    >>> exact_root(Fraction(100, 9)), exact_root(Fraction(2))
    (Fraction(10, 3), None)
    """
    over, under = isqrt(number.numerator), isqrt(number.denominator)
    if over * over == number.numerator and under * under == number.denominator:
        return Fraction(over, under)
    return None
