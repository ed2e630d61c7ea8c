"""Plane geometry in rational numbers: distances by roots, everything else without any rounding.

A root that is rational is taken exactly, so that a 3-4-5 stays one; any other is cut off after
twelve decimals of an inch, and a place that rests on one is snapped once to 1/8000 mm.
"""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.angle import PARTS_OF_A_MILLIMETER
from lacunar.measure.length import ZERO, Length
from lacunar.measure.roots import exact_root, square_root


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in a plane."""

    x: Length
    y: Length

    def __add__(self, other: "Spot") -> "Spot":
        return Spot(self.x + other.x, self.y + other.y)

    def __sub__(self, other: "Spot") -> "Spot":
        return Spot(self.x - other.x, self.y - other.y)

    def __mul__(self, number: Fraction) -> "Spot":
        return Spot(self.x * number, self.y * number)


ORIGIN = Spot(ZERO, ZERO)

# Parts of an inch up to which a length is kept as it is: the grid's own, times any that is marked.
MOST_PARTS = 10**8


@dataclass(frozen=True, slots=True)
class Root:
    """A length that came from a root, and whether it had to be cut off."""

    length: Length
    approximate: bool


def root_of(square: Fraction) -> Root:
    """Turn a square [in2], at least zero, into its side.

    >>> root_of(Fraction(25))
    Root(length=Length(5 in), approximate=False)
    """
    exact = exact_root(square)
    if exact is not None:
        return Root(Length.of_inches(exact), approximate=False)
    return Root(Length.of_inches(square_root(square)), approximate=True)


def distance(one: Spot, other: Spot) -> Root:
    """Turn two places into how far they are apart.

    >>> inch = Length.of_inches
    >>> distance(ORIGIN, Spot(inch(3), inch(4))).length
    Length(5 in)
    """
    way = other - one
    return root_of(way.x.inches**2 + way.y.inches**2)


def turn(one: Spot, other: Spot) -> Fraction:
    """Twice the area [in2] between two ways from one place: above zero where the other is left.

    >>> inch = Length.of_inches
    >>> turn(Spot(inch(2), inch(0)), Spot(inch(0), inch(3)))
    Fraction(6, 1)
    """
    return one.x.inches * other.y.inches - one.y.inches * other.x.inches


def along(one: Spot, other: Spot) -> Fraction:
    """The inner product [in2] of two ways: nothing where they are square to each other."""
    return one.x.inches * other.x.inches + one.y.inches * other.y.inches


def crossing(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> Spot:
    """Turn two lines, each by two of its places, into the place where they cross.

    Raises ZeroDivisionError where they are parallel.

    >>> inch = Length.of_inches
    >>> crossing((Spot(inch(1), inch(0)), Spot(inch(1), inch(5))),
    ...          (Spot(inch(0), inch(2)), Spot(inch(5), inch(2))))
    Spot(x=Length(1 in), y=Length(2 in))
    """
    way, across = one[1] - one[0], other[1] - other[0]
    return one[0] + way * (turn(other[0] - one[0], across) / turn(way, across))


def moved_left(line: tuple[Spot, Spot], by: Length) -> tuple[Spot, Spot]:
    """Turn a line by two of its places into the one so far [length] to the left of the way along.

    >>> inch = Length.of_inches
    >>> moved_left((ORIGIN, Spot(inch(4), inch(3))), inch(5))[0]
    Spot(x=Length(-3 in), y=Length(4 in))
    """
    if not by:
        return line
    way = line[1] - line[0]
    step = Spot(-way.y, way.x) * (by / distance(*line).length)
    return line[0] + step, line[1] + step


def third_corner(base: tuple[Spot, Spot], first: Length, second: Length) -> tuple[Spot, bool]:
    """Turn a triangle's base and its two other sides [length] into the corner left of the base.

    `first` reaches from the base's start, `second` from its end. The way along the base follows
    from the law of cosines, (a^2 + c^2 - b^2) / 2c^2 of it; the way across is a root. Also tells
    whether the corner was snapped. Raises ValueError where the sides make no triangle.

    >>> inch = Length.of_inches
    >>> third_corner((ORIGIN, Spot(inch(4), inch(0))), inch(3), inch(5))
    (Spot(x=Length(0 in), y=Length(3 in)), False)
    """
    way = base[1] - base[0]
    square = along(way, way)
    share = (first.inches**2 + square - second.inches**2) / (2 * square)
    left = first.inches**2 / square - share**2
    if left <= 0:
        raise ValueError("the sides make no triangle")
    height = exact_root(left)
    rise = square_root(left) if height is None else height
    corner = base[0] + way * share + Spot(-way.y, way.x) * rise
    return (corner, False) if height is not None else (snapped(corner), True)


def snapped(spot: Spot) -> Spot:
    """Turn a place into the nearest one on the grid of 1/8000 mm."""
    return Spot(on_grid(spot.x), on_grid(spot.y))


def settled(length: Length) -> Root:
    """Turn a length into itself where it is short to write, else into the nearest on the grid.

    >>> settled(Length.of_inches(Fraction(1, 3))).approximate
    False
    """
    if length.inches.denominator <= MOST_PARTS:
        return Root(length, approximate=False)
    return Root(on_grid(length), approximate=True)


def on_grid(length: Length) -> Length:
    """Turn a length into the nearest one on the grid of 1/8000 mm."""
    count = round(length.millimeters * PARTS_OF_A_MILLIMETER)
    return Length.of_millimeters(Fraction(count, PARTS_OF_A_MILLIMETER))
