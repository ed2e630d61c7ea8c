"""What sides and diagonals of a quadrilateral say: corners, closing errors, what is set in evenly.

Corners are numbered 0 to 3, counter-clockwise on the plan from the lower left one; side `k` runs
from corner `k` to the next. The rising diagonal joins corners 0 and 2, the falling one 1 and 3.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.measure.angle import (
    Angle,
    corner_of_triangles,
    over_tangents,
    side_across,
    times_cosine,
)
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import Length

BY_DIAGONAL_ACROSS = Rule(
    "corner of two sides, by the diagonal across from it",
    "acos((next * next + before * before - diagonal * diagonal) / (2 * next * before))",
)
BY_DIAGONAL_FROM = Rule(
    "corner that a diagonal starts from: of the two triangles it makes, side by side",
    "acos((next * next + diagonal * diagonal - beyond_next * beyond_next) / (2 * next * diagonal))"
    " + acos((before * before + diagonal * diagonal - beyond_before * beyond_before)"
    " / (2 * before * diagonal))",
)
BY_BOTH = Rule("corner: the mean of what both diagonals give", "(by_rising + by_falling) / 2")
BY_THE_REST = Rule(
    "falling diagonal that the sides give with the rising one",
    "sqrt(one * one + other * other - 2 * one * other * cos(corner))",
)
CLOSING_ERROR = Rule(
    "closing error: the falling diagonal as measured, less what the others give for it",
    "falling - by_the_rest",
)
LEAN = Rule(
    "how far the longer side at a corner stands off square at its other end",
    "max(next, before) * abs(cos(corner))",
)
SET_IN = Rule(
    "side of what is set in evenly: at each corner less by the distance over the half tangent",
    "side - distance / tan(near / 2) - distance / tan(far / 2)",
)

CORNERS = range(4)


@dataclass(frozen=True, slots=True)
class Quadrilateral:
    """Four sides in order, and the diagonals that are known."""

    sides: tuple[Length, Length, Length, Length]
    rising: Length | None
    falling: Length | None

    def turned(self, by: int) -> "Quadrilateral":
        """The same with its corners renumbered, so that corner `by` becomes corner 0."""
        first, second, third, fourth = (self.sides[(by + k) % 4] for k in CORNERS)
        odd = by % 2 == 1
        rising, falling = (self.falling, self.rising) if odd else (self.rising, self.falling)
        return Quadrilateral((first, second, third, fourth), rising, falling)

    def triangles(self) -> Iterator[tuple[str, tuple[int, int], Length]]:
        """The triangles that its diagonals make: the diagonal, two sides by number, its length."""
        if self.rising is not None:
            yield "rising", (0, 1), self.rising
            yield "rising", (2, 3), self.rising
        if self.falling is not None:
            yield "falling", (1, 2), self.falling
            yield "falling", (3, 0), self.falling


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner, by each diagonal that is known and by both; None for what is not known."""

    by_rising: AngleFigure | None
    by_falling: AngleFigure | None
    angle: AngleFigure


def is_triangle(one: Length, other: Length, third: Length) -> bool:
    """Whether there is a triangle with these sides [length], and not merely a line.

    >>> inch = Length.of_inches
    >>> is_triangle(inch(3), inch(4), inch(5)), is_triangle(inch(3), inch(4), inch(7))
    (True, False)
    """
    longest = max(one, other, third)
    return one + other + third > longest * 2


def corner(shape: Quadrilateral, number: int) -> Corner:
    """Turn sides and at least one diagonal [length] into a corner [deg].

    Formula: the law of cosines, in the triangles of each diagonal; with both diagonals, the mean.
    All triangles must be ones (`is_triangle`).

    Raises ValueError without a diagonal: four sides alone do not fix a shape.

    >>> inch = Length.of_inches
    >>> square = Quadrilateral((inch(48), inch(36), inch(48), inch(36)), inch(60), None)
    >>> corner(square, 0).angle.value
    Angle(90 deg)
    """
    turned = shape.turned(number)
    from_it, across = _from_corner(turned), _across_corner(turned)
    by_rising, by_falling = (across, from_it) if number % 2 else (from_it, across)
    if by_rising is not None and by_falling is not None:
        mean = (by_rising.value + by_falling.value) / 2
        both = BY_BOTH.approximates(mean, by_rising=by_rising.value, by_falling=by_falling.value)
        return Corner(by_rising, by_falling, both)
    known = by_rising or by_falling
    if known is None:
        raise ValueError("four sides without a diagonal have no known corners")
    return Corner(by_rising, by_falling, known)


def _from_corner(shape: Quadrilateral) -> AngleFigure | None:
    """Corner 0 by the diagonal that starts there."""
    if shape.rising is None:
        return None
    following, beyond_next, beyond_before, before = shape.sides
    triangles = (
        (following, shape.rising, beyond_next),
        (before, shape.rising, beyond_before),
    )
    return BY_DIAGONAL_FROM.approximates(
        corner_of_triangles(triangles),
        next=following,
        diagonal=shape.rising,
        beyond_next=beyond_next,
        before=before,
        beyond_before=beyond_before,
    )


def _across_corner(shape: Quadrilateral) -> AngleFigure | None:
    """Corner 0 by the diagonal that lies across from it."""
    if shape.falling is None:
        return None
    following, before = shape.sides[0], shape.sides[3]
    return BY_DIAGONAL_ACROSS.approximates(
        corner_of_triangles([(following, before, shape.falling)]),
        next=following,
        before=before,
        diagonal=shape.falling,
    )


def closing_error(shape: Quadrilateral) -> LengthFigure | None:
    """Turn four sides and both diagonals [length] into what they contradict each other by.

    None with one diagonal, which nothing can contradict.
    """
    by_rising = _from_corner(shape)
    if shape.falling is None or by_rising is None:
        return None
    one, other = shape.sides[0], shape.sides[3]
    rest = BY_THE_REST.approximates(
        side_across(one, other, by_rising.value), one=one, other=other, corner=by_rising.value
    )
    return CLOSING_ERROR.approximates(
        shape.falling - rest.value, falling=shape.falling, by_the_rest=rest.value
    )


def lean(shape: Quadrilateral, number: int, angle: Angle) -> LengthFigure:
    """Turn a corner [deg] into how far its longer side stands off square at its end [length]."""
    return lean_of(shape.sides[number], shape.sides[number - 1], angle)


def lean_of(following: Length, before: Length, angle: Angle) -> LengthFigure:
    """Turn both sides [length] of a corner [deg] into how far the longer one stands off square."""
    off = times_cosine(max(following, before), angle)
    return LEAN.approximates(abs(off), next=following, before=before, corner=angle)


def side_by_the_rest(shape: Quadrilateral, number: int) -> Length | None:
    """Turn both diagonals and the other three sides [length] into what a side must be [length].

    None where these contradict each other.
    """
    turned = shape.turned(number)
    if turned.rising is None or turned.falling is None:
        return None
    _, second, third, fourth = turned.sides
    if not is_triangle(third, fourth, turned.rising) or not is_triangle(
        second, third, turned.falling
    ):
        return None
    whole = corner_of_triangles([(third, fourth, turned.rising)])
    part = corner_of_triangles([(third, turned.falling, second)])
    return side_across(fourth, turned.falling, abs(whole - part))


def diagonal_by_the_rest(shape: Quadrilateral, name: str) -> Length | None:
    """Turn four sides and a diagonal [length] into what the other must be [length].

    Parameters: `shape`; `name`, the one to be worked out. None where these contradict each other.
    """
    turned = shape.turned(0 if name == "falling" else 1)
    if turned.rising is None:
        return None
    first, second, third, fourth = turned.sides
    if not is_triangle(first, second, turned.rising) or not is_triangle(
        third, fourth, turned.rising
    ):
        return None
    at_first = corner_of_triangles([(first, turned.rising, second), (fourth, turned.rising, third)])
    return side_across(first, fourth, at_first)


def set_in(side: Length, distance: Length, near: Angle, far: Angle) -> LengthFigure:
    """Turn a side [length] and the corners at its ends [deg] into that of a shape set in [length].

    >>> inch, square = Length.of_inches, Angle.of_degrees(90)
    >>> set_in(inch(40), inch(2), square, square).value
    Length(36 in)
    """
    taken = over_tangents([(distance, near / 2), (distance, far / 2)])
    return SET_IN.approximates(side - taken, side=side, distance=distance, near=near, far=far)
