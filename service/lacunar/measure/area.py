"""Areas, exact as the lengths they come from."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import INCHES_PER_FOOT, MILLIMETERS_PER_INCH

_INCHES_PER_METER = 1000 / MILLIMETERS_PER_INCH


@dataclass(frozen=True, slots=True, order=True)
class Area:
    """An exact area. Areas add and compare.

    >>> area(Length.of_feet(4), Length.of_feet(8)).square_feet
    Fraction(32, 1)
    """

    square_inches: Fraction

    @property
    def square_feet(self) -> Fraction:
        """The same area as a number of square feet."""
        return self.square_inches / INCHES_PER_FOOT**2

    @property
    def square_meters(self) -> Fraction:
        """The same area as a number of square meters."""
        return self.square_inches / _INCHES_PER_METER**2

    def __add__(self, other: "Area") -> "Area":
        if not isinstance(other, Area):
            return NotImplemented
        return Area(self.square_inches + other.square_inches)


def area(length: Length, width: Length) -> Area:
    """Turn the two sides of a rectangle into its area.

    >>> area(Length.of_inches(3), Length.of_inches(4)).square_inches
    Fraction(12, 1)
    """
    return Area(length.inches * width.inches)
