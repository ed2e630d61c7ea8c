from decimal import Decimal
from fractions import Fraction

import pytest

from lacunar.measure.length import ZERO, Length, exact

FOOT = Length.of_feet(1)
INCH = Length.of_inches(1)


@pytest.mark.parametrize(
    ("length", "inches"),
    [
        (Length.of_inches(48), Fraction(48)),
        (Length.of_inches(Fraction(7, 8)), Fraction(7, 8)),
        (Length.of_inches(Decimal("0.1")), Fraction(1, 10)),
        (Length.of_feet(Decimal("2.5")), Fraction(30)),
        (Length.of_millimeters(254), Fraction(10)),
        (Length.of_millimeters(Decimal("0.5")), Fraction(5, 254)),
    ],
)
def test_a_length_is_made_exactly(length: Length, inches: Fraction):
    assert length.inches == inches


def test_lengths_add_subtract_and_turn_round():
    assert (FOOT + INCH).inches == 13
    assert (INCH - FOOT).inches == -11
    assert (-FOOT).inches == -12
    assert abs(INCH - FOOT).inches == 11


def test_a_length_times_or_by_a_number_is_a_length():
    assert FOOT * 3 == 3 * FOOT == Length.of_feet(3)
    assert FOOT * Fraction(1, 3) == FOOT / 3 == Length.of_inches(4)


def test_a_length_by_a_length_is_a_number():
    quotient = Length.of_inches(50) / FOOT
    assert quotient == Fraction(25, 6)
    assert isinstance(quotient, Fraction)
    assert Length.of_inches(50) // FOOT == 4
    assert Length.of_inches(-1) // FOOT == -1


def test_only_zero_is_false():
    assert not ZERO
    assert INCH


def test_equal_lengths_are_one_in_a_set_whatever_they_were_made_from():
    assert len({Length.of_inches(10), Length.of_millimeters(254)}) == 1


def test_lengths_are_in_order_of_size():
    shuffled = [FOOT, -FOOT, ZERO, INCH]
    assert sorted(shuffled) == [-FOOT, ZERO, INCH, FOOT]


def test_a_length_cannot_change():
    with pytest.raises(AttributeError):
        FOOT.inches = Fraction(1)


def test_lengths_add_up_from_zero():
    assert sum([INCH, INCH, FOOT], ZERO) == Length.of_inches(14)


@pytest.mark.parametrize("make", [Length.of_inches, Length.of_feet, Length.of_millimeters, exact])
@pytest.mark.parametrize("inexact", [0.5, 1.0, True, "1", None])
def test_what_is_not_exact_is_refused_and_named(make, inexact):
    with pytest.raises(TypeError, match=type(inexact).__name__):
        make(inexact)


@pytest.mark.parametrize("number", ["NaN", "sNaN", "Infinity", "-Infinity"])
def test_what_is_not_finite_is_refused(number: str):
    with pytest.raises(ValueError, match="finite"):
        Length.of_inches(Decimal(number))


def test_a_float_is_refused_in_arithmetic_too():
    for wrong in (lambda: FOOT * 0.5, lambda: 0.5 * FOOT, lambda: FOOT / 2.0, lambda: FOOT + 1.0):
        with pytest.raises(TypeError):
            wrong()


def test_numbers_and_lengths_are_not_mixed():
    for wrong in (
        lambda: FOOT + 1,
        lambda: 1 + FOOT,
        lambda: FOOT - 1,
        lambda: FOOT * INCH,
        lambda: FOOT // 2,
        lambda: FOOT < 12,
        lambda: Length(12),
        lambda: Length(1.5),
    ):
        with pytest.raises(TypeError):
            wrong()


def test_nothing_is_divided_by_zero():
    for wrong in (lambda: FOOT / ZERO, lambda: FOOT // ZERO, lambda: FOOT / 0):
        with pytest.raises(ZeroDivisionError):
            wrong()
