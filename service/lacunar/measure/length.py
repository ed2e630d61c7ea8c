"""The one type of length: a rational number of inches, exact from the spec to the last mark."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import overload

from lacunar.measure.units import INCHES_PER_FOOT, MILLIMETERS_PER_INCH


@dataclass(frozen=True, slots=True, order=True, repr=False)
class Length:
    """An exact length. One inch is 25.4 mm exactly, so both unit systems are held without loss.

    Made by `of_inches`, `of_feet` and `of_millimeters`; text is read in `notation`. Lengths add,
    compare, and can be taken times a number or divided by one; a length divided by a length is a
    number. A float is refused everywhere, because what it holds is rarely what was written.

    >>> Length.of_inches(16) + Length.of_millimeters(Decimal("9.525"))
    Length(131/8 in)
    >>> Length.of_feet(8) / Length.of_inches(16)
    Fraction(6, 1)
    """

    inches: Fraction

    def __post_init__(self) -> None:
        if type(self.inches) is not Fraction:
            raise TypeError("a Length holds a Fraction of inches; use Length.of_inches")

    @classmethod
    def of_inches(cls, amount: int | Fraction | Decimal) -> "Length":
        """Turn a number of inches into a length.

        The cost grows with a Decimal's exponent, so numbers from outside pass `notation` first.

        >>> Length.of_inches(Fraction(769, 16))
        Length(769/16 in)
        """
        return cls(exact(amount))

    @classmethod
    def of_feet(cls, amount: int | Fraction | Decimal) -> "Length":
        """Turn a number of feet, of 12 inches each, into a length.

        >>> Length.of_feet(3)
        Length(36 in)
        """
        return cls(exact(amount) * INCHES_PER_FOOT)

    @classmethod
    def of_millimeters(cls, amount: int | Fraction | Decimal) -> "Length":
        """Turn a number of millimeters, 25.4 to the inch, into a length.

        >>> Length.of_millimeters(Decimal("1220.7875"))
        Length(769/16 in)
        """
        return cls(exact(amount) / MILLIMETERS_PER_INCH)

    @property
    def millimeters(self) -> Fraction:
        """The same length as a number of millimeters."""
        return self.inches * MILLIMETERS_PER_INCH

    def __add__(self, other: "Length") -> "Length":
        return Length(self.inches + other.inches) if isinstance(other, Length) else NotImplemented

    def __sub__(self, other: "Length") -> "Length":
        return Length(self.inches - other.inches) if isinstance(other, Length) else NotImplemented

    def __neg__(self) -> "Length":
        return Length(-self.inches)

    def __abs__(self) -> "Length":
        return Length(abs(self.inches))

    def __bool__(self) -> bool:
        return bool(self.inches)

    def __mul__(self, number: int | Fraction) -> "Length":
        return NotImplemented if isinstance(number, Length) else Length(self.inches * exact(number))

    __rmul__ = __mul__

    @overload
    def __truediv__(self, other: "Length") -> Fraction: ...
    @overload
    def __truediv__(self, other: int | Fraction) -> "Length": ...
    def __truediv__(self, other: "Length | int | Fraction") -> "Fraction | Length":
        if isinstance(other, Length):
            return self.inches / other.inches
        return Length(self.inches / exact(other))

    def __floordiv__(self, other: "Length") -> int:
        return self.inches // other.inches if isinstance(other, Length) else NotImplemented

    def __repr__(self) -> str:
        return f"Length({self.inches} in)"


def exact(amount: int | Fraction | Decimal) -> Fraction:
    """Turn a number into the fraction it is, refusing what is not exact.

    Raises TypeError for a float (and for a bool, which is no number), ValueError for a Decimal that
    is no finite number.

    >>> exact(Decimal("48.1"))
    Fraction(481, 10)
    """
    if isinstance(amount, bool) or not isinstance(amount, int | Fraction | Decimal):
        raise TypeError(
            f"{amount!r} is a {type(amount).__name__}: a length is exact, so it takes an int, "
            "a Fraction or a Decimal"
        )
    if isinstance(amount, Decimal) and not amount.is_finite():
        raise ValueError(f"{amount} is not a finite number")
    return Fraction(amount)


ZERO = Length(Fraction(0))
