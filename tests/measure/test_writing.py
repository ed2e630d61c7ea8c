"""How lengths stand on sheets: customary forms (common practice, no source)."""

from fractions import Fraction

import pytest

from lacunar.measure.length import ZERO, Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.measure.writing import (
    LengthStyle,
    decimal_text,
    is_terminating,
    write_exact,
    write_length,
)

SIXTEENTH = Step.read("1/16", Units.INCH)
FEET_AND_INCHES = LengthStyle(Units.INCH, SIXTEENTH)
INCHES_ONLY = LengthStyle(Units.INCH, SIXTEENTH, feet_from=None)
WHOLE_MM = LengthStyle(Units.MILLIMETER, Step.read("1 mm", Units.MILLIMETER))
HALF_MM = LengthStyle(Units.MILLIMETER, Step.read("0.5 mm", Units.MILLIMETER))


def inches(text: str) -> Length:
    return Length.of_inches(Fraction(text))


def millimeters(text: str) -> Length:
    return Length.of_millimeters(Fraction(text))


@pytest.mark.parametrize(
    ("length", "text"),
    [
        ("769/16", "4'-0 1/16\""),
        ("120", "10'-0\""),
        ("154.5", "12'-10 1/2\""),
        ("12", "1'-0\""),
        ("5.5", '5 1/2"'),
        ("0.75", '3/4"'),
        ("0", '0"'),
        ("-0.75", '-3/4"'),
        ("-48.0625", "-4'-0 1/16\""),
        ("0.03", '0"'),  # 0.48 of a step
        ("-0.03", '0"'),
        ("35.9999", "3'-0\""),  # never 2'-11 16/16"
        ("11.97", "1'-0\""),  # reaches a foot only when rounded
        ("11.96", '11 15/16"'),  # 191.36 steps
        ("23.97", "2'-0\""),
        ("5.99", '6"'),
        ("12000.5", "1000'-0 1/2\""),
    ],
)
def test_feet_and_inches_from_a_foot_up(length: str, text: str):
    assert write_length(inches(length), FEET_AND_INCHES) == text


@pytest.mark.parametrize(
    ("length", "text"),
    [("769/16", '48 1/16"'), ("35.9999", '36"'), ("0", '0"'), ("-154.5", '-154 1/2"')],
)
def test_inches_only(length: str, text: str):
    assert write_length(inches(length), INCHES_ONLY) == text


def test_feet_begin_where_the_style_says():
    from_96 = LengthStyle(Units.INCH, SIXTEENTH, feet_from=inches("96"))
    assert write_length(inches("95.96"), from_96) == '95 15/16"'
    assert write_length(inches("95.97"), from_96) == "8'-0\""


@pytest.mark.parametrize(
    ("length", "style", "text"),
    [
        ("1220.4", WHOLE_MM, "1220"),
        ("1220.5", WHOLE_MM, "1221"),
        ("-1220.5", WHOLE_MM, "-1221"),
        ("0.4", WHOLE_MM, "0"),
        ("1220.4", HALF_MM, "1220.5"),
        ("1220.2", HALF_MM, "1220"),
        ("0.5", HALF_MM, "0.5"),
        ("-0.5", HALF_MM, "-0.5"),
        ("1000000.5", HALF_MM, "1000000.5"),
    ],
)
def test_millimeters(length: str, style: LengthStyle, text: str):
    assert write_length(millimeters(length), style) == text


@pytest.mark.parametrize(
    ("length", "text"),
    [
        ("999", "999 mm"),
        ("1220.5", "1\u2009220.5 mm"),
        ("-12345678", "-12\u2009345\u2009678 mm"),
    ],
)
def test_millimeters_in_threes_and_with_their_unit(length: str, text: str):
    style = LengthStyle(Units.MILLIMETER, HALF_MM.step, group_thousands=True, with_unit=True)
    assert write_length(millimeters(length), style) == text


def test_a_style_does_not_mix_units():
    with pytest.raises(ValueError, match="1/16"):
        LengthStyle(Units.MILLIMETER, SIXTEENTH)


@pytest.mark.parametrize(
    ("length", "units", "text"),
    [
        (inches("769/16"), Units.INCH, "769/16 in"),
        (inches("48"), Units.INCH, "48 in"),
        (inches("-1/3"), Units.INCH, "-1/3 in"),
        (ZERO, Units.INCH, "0 in"),
        (millimeters("1565"), Units.MILLIMETER, "1565 mm"),
        (millimeters("1220.7874"), Units.MILLIMETER, "6103937/5000 mm"),
        (millimeters("1"), Units.INCH, "5/127 in"),
    ],
)
def test_exact_text(length: Length, units: Units, text: str):
    assert write_exact(length, units) == text


@pytest.mark.parametrize(
    ("number", "places", "text"),
    [
        ("48.0625", 6, "48.0625"),
        ("48", 6, "48"),
        ("1200", 6, "1200"),
        ("0", 6, "0"),
        ("2/3", 6, "0.666667"),
        ("-2/3", 2, "-0.67"),
        ("-1/3000000", 6, "0"),  # no "-0"
        ("0.0000005", 6, "0"),  # a tie, to the even 0
        ("0.0000015", 6, "0.000002"),  # a tie, to the even 2
        ("0.999999999", 6, "1"),
        ("5/2", 0, "2"),
        ("1200", 0, "1200"),
        ("1/64", 6, "0.015625"),
        ("1/8000", 6, "0.000125"),
    ],
)
def test_decimals(number: str, places: int, text: str):
    assert decimal_text(Fraction(number), places) == text


@pytest.mark.parametrize(
    ("number", "places", "ends"),
    [("1/64", 6, True), ("1/64", 5, False), ("1/3", 6, False), ("7", 0, True), ("0", 6, True)],
)
def test_whether_decimals_end(number: str, places: int, ends: bool):
    assert is_terminating(Fraction(number), places) is ends
