"""Conversions and rounded figures from published rules, or worked by hand."""

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

import pytest

from lacunar.measure.length import ZERO, Length
from lacunar.measure.notation import read_length
from lacunar.measure.rounding import Step, round_to
from lacunar.measure.units import Units
from lacunar.measure.writing import LengthStyle, decimal_text, write_length

SIXTEENTH = Step.read("1/16", Units.INCH)
INCHES_ONLY = LengthStyle(Units.INCH, SIXTEENTH, feet_from=None)
ALWAYS_FEET = LengthStyle(Units.INCH, SIXTEENTH, feet_from=ZERO)


def inches(text: str) -> Length:
    return Length.of_inches(Fraction(text))


@pytest.mark.parametrize(
    ("length", "millimeters"),
    [
        (Length.of_inches(1), "25.4"),  # NIST SP 811, exact factor, from memory
        (Length.of_feet(1), "304.8"),  # likewise
        # Panel and stud-spacing sizes: multiples of 25.4.
        (inches("3/4"), "19.05"),
        (inches("16"), "406.4"),
        (inches("24"), "609.6"),
        (inches("48"), "1219.2"),
        (inches("96"), "2438.4"),
    ],
)
def test_an_inch_is_25_4_millimeters_exactly(length: Length, millimeters: str):
    assert length.millimeters == Fraction(millimeters)
    assert Length.of_millimeters(Decimal(millimeters)) == length


@pytest.mark.parametrize(
    ("millimeters", "text"),
    [
        # Sixteenths in it, mm / 25.4 * 16, in the comment.
        (1, '1/16"'),  # 0.63
        (3, '1/8"'),  # 1.89
        (10, '3/8"'),  # 6.30
        (19, '3/4"'),  # 11.97
        (25, '1"'),  # 15.75
        (100, '3 15/16"'),  # 62.99
        (600, '23 5/8"'),  # 377.95
        (1220, '48 1/16"'),  # 768.50: 2/127 over the tie
        (2440, '96 1/16"'),  # 1537.01
    ],
)
def test_metric_sizes_in_sixteenths(millimeters: int, text: str):
    assert write_length(Length.of_millimeters(millimeters), INCHES_ONLY) == text


@pytest.mark.parametrize(
    ("length", "rounded"),
    [
        ("5/32", "3/16"),
        ("7/32", "1/4"),
        ("1/32", "1/16"),
        ("3/32", "1/8"),
        ("101/32", "51/16"),  # 3 5/32 to 3 3/16
    ],
)
def test_ties_to_a_sixteenth_go_away_from_zero(length: str, rounded: str):
    """Divide by the fineness, round, multiply: the procedure of IS 2:1960.

    That standard sends a tie to the even multiple; ties away from zero are this project's stated
    choice, so the tie column is worked by hand: 2 1/2 sixteenths to 3, 3 1/2 to 4, and so on.
    """
    assert round_to(inches(length), SIXTEENTH) == inches(rounded)


@pytest.mark.parametrize(("number", "text"), [("12.25", "12.2"), ("12.35", "12.4")])
def test_decimal_columns_round_ties_to_even(number: str, text: str):
    """Source: the even rule (A) of ISO 80000-1, annex B, with its examples, from memory."""
    assert decimal_text(Fraction(number), places=1) == text


def test_the_trap_of_binary_floats_is_stepped_over():
    """12.35 in binary lies just below the tie, so a float rounds down where 12.35 rounds up.

    Source: run in Python. Sixty-fourths, other than tenths, are exact in binary.
    """
    assert round(12.35, 1) == 12.3
    assert decimal_text(read_length("12.35", Units.INCH).inches, places=1) == "12.4"
    assert all(Fraction(count / 64) == Fraction(count, 64) for count in range(64))
    assert Fraction(0.1) != Fraction(1, 10)


@pytest.mark.parametrize(
    ("length", "in_inches", "in_feet"),
    [
        ("511/32", '16"', "1'-4\""),  # 15 31/32: 255.5 sixteenths, to 256
        ("35.9999", '36"', "3'-0\""),
        ("11.99", '12"', "1'-0\""),
        ("143.97", '144"', "12'-0\""),
    ],
)
def test_a_full_fraction_is_carried(length: str, in_inches: str, in_feet: str):
    """Never 15 16/16", never 2'-12": plain arithmetic."""
    assert write_length(inches(length), INCHES_ONLY) == in_inches
    assert write_length(inches(length), ALWAYS_FEET) == in_feet


@pytest.mark.parametrize(
    ("total", "parts", "missed_by"),
    [
        ("100", 3, "1/16"),  # 533 1/3 sixteenths each: 3 * 533 = 1599 for 1600
        ("100", 7, "3/16"),  # 228 4/7: 7 * 229 = 1603 for 1600
        ("121/16", 11, "0"),  # 11 sixteenths each
        ("99/32", 9, "9/32"),  # 5 1/2 each: 9 * 6 = 54 for 49 1/2, the worst there is
    ],
)
def test_parts_rounded_one_by_one_miss_the_total_and_running_marks_do_not(
    total: str, parts: int, missed_by: str
):
    """N parts rounded alone miss by up to N/32 inch: N times half a sixteenth, plain arithmetic."""
    each = inches(total) / parts
    alone = round_to(each, SIXTEENTH) * parts
    missed = abs(alone - inches(total))
    assert missed <= inches("1/32") * parts
    marks = [round_to(each * count, SIXTEENTH) for count in range(parts + 1)]
    assert sum((after - mark for mark, after in pairwise(marks)), ZERO) == round_to(
        inches(total), SIXTEENTH
    )
    assert missed == inches(missed_by)


def test_a_metric_sheet_is_not_an_inch_sheet():
    """2440 mm for 96 in is a different board, by 1.6 mm, next to 1/16 in: subtraction."""
    difference = Length.of_millimeters(2440) - Length.of_inches(96)
    assert difference.millimeters == Fraction("1.6")
    assert write_length(difference, INCHES_ONLY) == '1/16"'


@pytest.mark.parametrize(
    ("length", "text"),
    [
        ("163.375", "13'-7 3/8\""),  # 13 * 12 = 156
        ("168", "14'-0\""),
        ("95.9375", "7'-11 15/16\""),
        ("0.5", "0'-0 1/2\""),
    ],
)
def test_feet_and_inches_in_the_customary_form(length: str, text: str):
    """Feet, dash, inches, space, fraction; zero inches told: common practice, no source."""
    assert write_length(inches(length), ALWAYS_FEET) == text
    assert read_length(text, Units.INCH) == inches(length)
