"""Angles: exact degrees going in, and the one place where trigonometry is done.

Sines and their kin have no exact values, so here, and nowhere else below the sheets, floats are
computed with. None of them leaves: a length found here is snapped once to the nearest 1/8000 mm (a
grid that holds 1/64 in and 0.001 mm exactly), an angle to the nearest billionth of a degree, and
both are rational from then on. The floats themselves are off by less than a millionth of either
grid for any length up to 300 ft, so a snapped value is within half a grid, 1/16000 mm or half a
billionth of a degree, of what the formula says. A figure of such a value is told as approximate.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from lacunar.measure.length import Length, exact

PARTS_OF_A_MILLIMETER = 8000
PARTS_OF_A_DEGREE = 10**9
_RIGHT_ANGLE = 90


@dataclass(frozen=True, slots=True, order=True, repr=False)
class Angle:
    """An exact number of degrees. Angles add, compare, and can be taken times a number.

    >>> Angle.of_degrees(90) - Angle.of_degrees(Decimal("67.5")) / 2
    Angle(56.25 deg)
    """

    degrees: Fraction

    def __post_init__(self) -> None:
        if type(self.degrees) is not Fraction:
            raise TypeError("an Angle holds a Fraction of degrees; use Angle.of_degrees")

    @classmethod
    def of_degrees(cls, amount: int | Fraction | Decimal) -> "Angle":
        """Turn a number of degrees, 360 to the full turn, into an angle.

        Raises TypeError for a float, as `Length` does.

        >>> Angle.of_degrees(38)
        Angle(38 deg)
        """
        return cls(exact(amount))

    @property
    def text(self) -> str:
        """The angle as it is written, as far as a billionth of a degree.

        >>> Angle.of_degrees(Decimal("67.50")).text
        '67.5°'
        """
        return f"{self.number}°"

    @property
    def number(self) -> str:
        """The number of degrees in decimals, as far as a billionth."""
        return _decimals(self.degrees)

    @property
    def tenths(self) -> str:
        """The angle as a saw is set, to a tenth of a degree: that opens a wide crown by 0.008 in.

        >>> Angle.of_degrees(Decimal("31.619")).tenths
        '31.6°'
        """
        return Angle(round(self.degrees, 1)).text

    def __add__(self, other: "Angle") -> "Angle":
        return Angle(self.degrees + other.degrees) if isinstance(other, Angle) else NotImplemented

    def __sub__(self, other: "Angle") -> "Angle":
        return Angle(self.degrees - other.degrees) if isinstance(other, Angle) else NotImplemented

    def __abs__(self) -> "Angle":
        return Angle(abs(self.degrees))

    def __bool__(self) -> bool:
        return bool(self.degrees)

    def __mul__(self, number: int | Fraction) -> "Angle":
        return Angle(self.degrees * exact(number))

    def __truediv__(self, number: int | Fraction) -> "Angle":
        return Angle(self.degrees / exact(number))

    def __repr__(self) -> str:
        return f"Angle({self.number} deg)"


def _decimals(number: Fraction) -> str:
    whole, part = divmod(round(abs(number) * PARTS_OF_A_DEGREE), PARTS_OF_A_DEGREE)
    sign = "-" if number < 0 else ""
    return f"{sign}{whole}.{part:09d}".rstrip("0").rstrip(".")


def times_cosine(length: Length, angle: Angle) -> Length:
    """Turn a slant [length] at an angle [deg] into its part along the angle's leg [length].

    Formula: L cos A. Snapped.

    >>> times_cosine(Length.of_inches(8), Angle.of_degrees(60))
    Length(4 in)
    """
    return _snapped(float(length.millimeters) * _cosine(angle))


def times_sine(length: Length, angle: Angle) -> Length:
    """Turn a slant [length] at an angle [deg] into its part across the angle's leg [length].

    Formula: L sin A. Snapped.

    >>> times_sine(Length.of_inches(8), Angle.of_degrees(30))
    Length(4 in)
    """
    return _snapped(float(length.millimeters) * _sine(angle))


def over_sine(length: Length, angle: Angle) -> Length:
    """Turn a thickness [length] into what a cut at an angle [deg] through it measures [length].

    Formula: L / sin A, for 0 < A < 180. Snapped.

    >>> over_sine(Length.of_inches(4), Angle.of_degrees(30))
    Length(8 in)
    """
    return _snapped(float(length.millimeters) / _sine(angle))


def over_cosine(length: Length, angle: Angle) -> Length:
    """Turn a thickness [length] into what a cut across it at an angle [deg] measures [length].

    Formula: L / cos A, for -90 < A < 90. Snapped.

    >>> over_cosine(Length.of_inches(4), Angle.of_degrees(60))
    Length(8 in)
    """
    return _snapped(float(length.millimeters) / _cosine(angle))


def over_tangent(length: Length, angle: Angle) -> Length:
    """Turn a width [length] into how far a miter at an angle [deg] to it runs along [length].

    Formula: L / tan A, for 0 < A < 180: a piece cut at half of the corner between two walls.
    Snapped; nothing at a straight wall, and below zero past it, where the corner is an outside one.

    >>> over_tangent(Length.of_inches(2), Angle.of_degrees(45))
    Length(2 in)
    >>> over_tangent(Length.of_inches(2), Angle.of_degrees(135))
    Length(-2 in)
    """
    return _snapped(float(length.millimeters) * _cosine(angle) / _sine(angle))


def over_tangents(parts: Iterable[tuple[Length, Angle]]) -> Length:
    """Turn widths [length], each with an angle [deg], into how far their miters run along [length].

    Formula: L1 / tan A1 + L2 / tan A2 + ..., as `over_tangent`. The sum is snapped, not its parts.

    >>> two, half = Length.of_inches(2), Angle.of_degrees(45)
    >>> over_tangents([(two, half), (two, half)])
    Length(4 in)
    """
    return _snapped(
        sum(float(length.millimeters) * _cosine(angle) / _sine(angle) for length, angle in parts)
    )


def corner_of_triangles(triangles: Iterable[tuple[Length, Length, Length]]) -> Angle:
    """Turn triangles [length] side by side into the corner [deg] that they make up together.

    Formula: acos((a^2 + b^2 - c^2) / 2ab) of each, the law of cosines, added up; `a` and `b` start
    at the corner and `c` lies across from it. For sides of which no two are shorter than the third.
    The cosine is exact, so that a right angle is; the sum is snapped, not its parts.

    >>> inch = Length.of_inches
    >>> corner_of_triangles([(inch(3), inch(4), inch(5))])
    Angle(90 deg)
    """
    return _snapped_angle(sum(math.acos(float(_cosine_across(*each))) for each in triangles))


def _cosine_across(one: Length, other: Length, across: Length) -> Fraction:
    a, b, c = one.inches, other.inches, across.inches
    return (a * a + b * b - c * c) / (2 * a * b)


def side_across(one: Length, other: Length, corner: Angle) -> Length:
    """Turn two sides [length] and the angle between them [deg] into the third side [length].

    Formula: sqrt(a^2 + b^2 - 2ab cos C), the law of cosines. Snapped.

    >>> side_across(Length.of_inches(5), Length.of_inches(8), Angle.of_degrees(60))
    Length(7 in)
    """
    a, b = float(one.millimeters), float(other.millimeters)
    return _snapped(math.sqrt(max(a * a + b * b - 2 * a * b * _cosine(corner), 0.0)))


def off_upright(length: Length, slope: Angle, across: Length, half_corner: Angle) -> Length:
    """Turn a height and what runs along a slope to a joint [length] into a height there [length].

    Formula: L / cos A + W tan A / tan H, for -90 < A < 90 and 0 < H < 180. Snapped once.

    >>> square = Angle.of_degrees(45)
    >>> two = Length.of_inches(2)
    >>> off_upright(Length.of_inches(4), Angle.of_degrees(60), two, Angle.of_degrees(90))
    Length(8 in)
    >>> off_upright(two, Angle.of_degrees(0), two, square)
    Length(2 in)
    """
    along = float(across.millimeters) * _cosine(half_corner) / _sine(half_corner)
    return _snapped((float(length.millimeters) + along * _sine(slope)) / _cosine(slope))


def square_to_slope(length: Length, slope: Angle, across: Length, half_corner: Angle) -> Length:
    """Turn an upright height and what runs along to a joint [length] into one square to a slope.

    Formula: L cos A - W sin A / tan H, for -90 < A < 90 and 0 < H < 180. Snapped once.

    >>> two = Length.of_inches(2)
    >>> square_to_slope(Length.of_inches(8), Angle.of_degrees(60), two, Angle.of_degrees(90))
    Length(4 in)
    """
    along = float(across.millimeters) * _cosine(half_corner) / _sine(half_corner)
    return _snapped(float(length.millimeters) * _cosine(slope) - along * _sine(slope))


def hypotenuse(one: Length, other: Length) -> Length:
    """Turn the legs of a right triangle [length] into its long side [length].

    Formula: sqrt(a^2 + b^2). Snapped.

    >>> hypotenuse(Length.of_inches(3), Length.of_inches(4))
    Length(5 in)
    """
    return _snapped(math.hypot(float(one.millimeters), float(other.millimeters)))


def angle_of_legs(opposite: Length, adjacent: Length) -> Angle:
    """Turn the legs of a right triangle [length] into the angle opposite the first [deg].

    Formula: atan(a / b), for b above zero. Snapped.

    >>> angle_of_legs(Length.of_inches(2), Length.of_inches(2))
    Angle(45 deg)
    """
    return _snapped_angle(math.atan(float(opposite / adjacent)))


def angle_of_opposite(opposite: Length, long_side: Length) -> Angle:
    """Turn a leg and the long side of a right triangle [length] into the angle opposite [deg].

    Formula: asin(a / c), for 0 <= a <= c. Snapped.

    >>> angle_of_opposite(Length.of_inches(2), Length.of_inches(4))
    Angle(30 deg)
    """
    return _snapped_angle(math.asin(float(opposite / long_side)))


def angle_of_adjacent(adjacent: Length, long_side: Length) -> Angle:
    """Turn a leg and the long side of a right triangle [length] into the angle between [deg].

    Formula: acos(b / c), for 0 <= b <= c. Snapped.

    >>> angle_of_adjacent(Length.of_inches(2), Length.of_inches(4))
    Angle(60 deg)
    """
    return _snapped_angle(math.acos(float(adjacent / long_side)))


def stride(length: Length, heading: Angle) -> tuple[Length, Length]:
    """Turn a way [length] in a direction [deg from the first axis] into its two parts [length].

    Formula: (L cos A, L sin A). Exact along either axis, snapped in any other direction.

    >>> stride(Length.of_inches(7), Angle.of_degrees(90))
    (Length(0 in), Length(7 in))
    """
    quarters = heading.degrees % 360 / _RIGHT_ANGLE
    if quarters.denominator == 1:
        along, across = ((1, 0), (0, 1), (-1, 0), (0, -1))[int(quarters)]
        return length * along, length * across
    return times_cosine(length, heading), times_sine(length, heading)


def flat_miter(spring: Angle, half_corner: Angle) -> Angle:
    """Turn a spring angle and half a corner [deg] into a flat miter from a square cut [deg].

    Formula: |atan(sin S / tan H)|, for 0 <= S <= 90 and 0 < H < 180. Snapped. Published with the
    compound-miter formulas for sprung mouldings; the tests derive it anew with vectors.

    >>> flat_miter(Angle.of_degrees(90), Angle.of_degrees(45))
    Angle(45 deg)
    """
    return _snapped_angle(abs(math.atan(_sine(spring) * _cosine(half_corner) / _sine(half_corner))))


def flat_bevel(spring: Angle, half_corner: Angle) -> Angle:
    """Turn a spring angle and half a corner [deg] into a blade's tilt from upright [deg].

    Formula: |asin(cos S * cos H)|, for 0 <= S <= 90 and 0 < H < 180. Snapped. As `flat_miter`.

    >>> flat_bevel(Angle.of_degrees(45), Angle.of_degrees(45))
    Angle(30 deg)
    """
    return _snapped_angle(abs(math.asin(_cosine(spring) * _cosine(half_corner))))


def _sine(angle: Angle) -> float:
    return math.sin(math.radians(float(angle.degrees)))


def _cosine(angle: Angle) -> float:
    # Of a right angle exactly nothing: pi has no float, so the library's cosine is not quite zero.
    return 0.0 if angle.degrees == _RIGHT_ANGLE else math.cos(math.radians(float(angle.degrees)))


def _snapped(millimeters: float) -> Length:
    count = round(millimeters * PARTS_OF_A_MILLIMETER)
    return Length.of_millimeters(Fraction(count, PARTS_OF_A_MILLIMETER))


def _snapped_angle(radians: float) -> Angle:
    count = round(math.degrees(radians) * PARTS_OF_A_DEGREE)
    return Angle(Fraction(count, PARTS_OF_A_DEGREE))
