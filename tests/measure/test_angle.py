"""Angles are exact; what trigonometry finds is snapped once, never off by more than half a grid."""

import math
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.measure import angle
from lacunar.measure.angle import Angle
from lacunar.measure.length import Length

degrees = Angle.of_degrees
inch = Length.of_inches

LENGTHS = st.fractions(min_value=Fraction(1, 16), max_value=3600, max_denominator=997).map(inch)
ACUTE = st.fractions(min_value=5, max_value=85, max_denominator=997).map(degrees)


def test_an_angle_is_exact():
    assert degrees(Decimal("67.5")).degrees == Fraction(135, 2)
    assert degrees(Fraction(1, 3)) * 3 == degrees(1)
    assert degrees(38) + degrees(52) == degrees(90)
    assert abs(degrees(45) - degrees(90)) == degrees(45)
    assert bool(degrees(0)) is False
    assert degrees(38) < degrees(45)


@pytest.mark.parametrize("value", [38.0, True, "38"])
def test_what_is_not_exact_is_refused(value: object):
    with pytest.raises(TypeError):
        degrees(value)  # type: ignore[arg-type]
    with pytest.raises(TypeError):
        Angle(value)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("amount", "text", "tenths"),
    [
        ("38", "38°", "38°"),
        ("67.50", "67.5°", "67.5°"),
        ("31.619006537", "31.619006537°", "31.6°"),
        ("0.000000001", "0.000000001°", "0°"),
        ("33.86", "33.86°", "33.9°"),
    ],
)
def test_an_angle_is_written_in_decimals(amount: str, text: str, tenths: str):
    assert degrees(Decimal(amount)).text == text
    assert degrees(Decimal(amount)).tenths == tenths


def test_sines_that_are_exact_come_out_exact():
    # sin 30 = cos 60 = 1/2; tan 45 = 1; 3, 4, 5.
    assert angle.times_sine(inch(10), degrees(30)) == inch(5)
    assert angle.times_cosine(inch(10), degrees(60)) == inch(5)
    assert angle.times_cosine(inch(10), degrees(90)) == inch(0)
    assert angle.over_sine(inch(10), degrees(30)) == inch(20)
    assert angle.over_cosine(inch(10), degrees(60)) == inch(20)
    assert angle.over_tangent(inch(10), degrees(45)) == inch(10)
    assert angle.over_tangent(inch(10), degrees(90)) == inch(0)
    assert angle.hypotenuse(inch(3), inch(4)) == inch(5)
    assert angle.angle_of_legs(inch(2), inch(2)) == degrees(45)
    assert angle.angle_of_opposite(inch(1), inch(2)) == degrees(30)
    assert angle.angle_of_adjacent(inch(1), inch(2)) == degrees(60)


@given(length=LENGTHS, slant=ACUTE)
def test_law_a_length_found_is_on_the_grid_and_within_half_of_it(length: Length, slant: Angle):
    radians = math.radians(slant.degrees)
    for found, expected in (
        (angle.times_cosine(length, slant), float(length.millimeters) * math.cos(radians)),
        (angle.times_sine(length, slant), float(length.millimeters) * math.sin(radians)),
        (angle.over_cosine(length, slant), float(length.millimeters) / math.cos(radians)),
        (angle.over_tangent(length, slant), float(length.millimeters) / math.tan(radians)),
    ):
        assert (found.millimeters * 8000).denominator == 1
        assert abs(float(found.millimeters) - expected) <= 1 / 16_000 + 1e-9


@given(length=LENGTHS, slant=ACUTE)
def test_law_a_slant_turned_into_its_legs_and_back_is_the_same_as_far_as_the_grid(
    length: Length, slant: Angle
):
    legs = angle.times_cosine(length, slant), angle.times_sine(length, slant)
    # Each leg is off by at most half a grid, and the long side by no more than both together.
    assert abs(angle.hypotenuse(*legs) - length).millimeters <= Fraction(3, 16_000)


@given(slant=ACUTE)
def test_law_an_angle_found_is_on_its_grid(slant: Angle):
    found = angle.flat_miter(slant, degrees(45))
    assert (found.degrees * 10**9).denominator == 1
