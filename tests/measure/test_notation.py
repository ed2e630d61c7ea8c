"""What is read as which length, and what is refused at which place.

The notations are the trade's (common practice, no source); what is refused is this project's own
choice.
"""

import unicodedata
from decimal import Decimal, localcontext
from fractions import Fraction

import pytest

from lacunar.measure.length import ZERO, Length
from lacunar.measure.notation import LengthTextError, read_length, read_number
from lacunar.measure.units import Units

INCH, MILLIMETER = Units.INCH, Units.MILLIMETER


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("48", "48"),
        ("0", "0"),
        ("007", "7"),
        ("48 1/16", "769/16"),  # 48 * 16 + 1
        ('48-1/16"', "769/16"),
        ("48 2/32", "769/16"),
        ("48 0/16", "48"),
        ("7/8", "7/8"),
        ("5-1/2", "11/2"),
        ("144.1875", "2307/16"),
        (".5", "1/2"),
        ("12' 0 3/16\"", "2307/16"),  # 144 + 3/16
        ("12'-0 3/16\"", "2307/16"),
        ("12' - 0 3/16\"", "2307/16"),
        ("12'-0-3/16\"", "2307/16"),
        ("12'0.1875", "2307/16"),
        ("12'", "144"),
        ("3' 4", "40"),
        ("3'4", "40"),
        ("3' 4''", "40"),
        ("3 ft 2.5 in", "77/2"),
        ("3ft2.5in", "77/2"),
        ("3 ft. 2 in.", "38"),
        ("3 Feet 2 INCHES", "38"),
        ("1 foot 1 inch", "13"),
        ("2.5 ft", "30"),
        ("5 1/2'", "66"),
        ("3/4'", "9"),
        ("12' 11 63/64", "9983/64"),  # 155 * 64 + 63
        ("145/3 in", "145/3"),
        ("769/16 in", "769/16"),
        ("  48  1/16  ", "769/16"),
        ("5.123456789012", "5123456789012/1000000000000"),
        ("9999999", "9999999"),
    ],
)
def test_inches_and_feet(text: str, inches: str):
    assert read_length(text, INCH) == Length.of_inches(Fraction(inches))


@pytest.mark.parametrize(
    ("text", "millimeters"),
    [
        ("1220.8", "1220.8"),
        ("1220.8 mm", "1220.8"),
        ("1220.8MM", "1220.8"),
        ("122.08 cm", "1220.8"),
        ("3.05 m", "3050"),
        ("10 in", "254"),
        ("1'", "304.8"),
        ('48 1/16"', "1220.7875"),
        ("1/2 mm", "0.5"),
        ("6103937/5000 mm", "1220.7874"),
    ],
)
def test_metric_lengths_and_units_beside_each_other(text: str, millimeters: str):
    assert read_length(text, MILLIMETER) == Length.of_millimeters(Decimal(millimeters))


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("12\u2032 0 3/16\u2033", "2307/16"),  # primes
        ("12\u2019 0 3/16\u201d", "2307/16"),  # quotation marks
        ("12\u2018 0 3/16\u201c", "2307/16"),
        ("3\u2032 4\u2032\u2032", "40"),  # two primes for a double one
        ("3\u2019 4\u2019\u2019", "40"),
        ("48 1\u204416", "769/16"),  # fraction slash
        ("48 1\u221516", "769/16"),  # division slash
        ("48\u00a01/16", "769/16"),  # no-break space
        ("48\u20091/16", "769/16"),  # thin space
        ("48\u20111/16", "769/16"),  # no-break hyphen
        ("12\u2032\u20130\u2033", "144"),  # en dash
        ("5½", "11/2"),
        ("5 ½", "11/2"),
        ("5-½", "11/2"),
        ("½", "1/2"),
        ("12'-0½", "289/2"),
        ("1\u2009220", "1220"),  # thousands parted by a thin space
        ("1\u202f220.5", "2441/2"),
        ("1\u2009220 1/2", "2441/2"),
        ("12\u2009345.5", "24691/2"),
    ],
)
def test_typographic_signs(text: str, inches: str):
    assert read_length(text, INCH) == Length.of_inches(Fraction(inches))


@pytest.mark.parametrize("character", "½¼¾⅛⅜⅝⅞")
def test_a_fraction_character_is_what_unicode_says(character: str):
    # Source: the decomposition and numeric value in the Unicode character database.
    value = Fraction(unicodedata.numeric(character))
    assert read_length(f"3{character}", INCH).inches == 3 + value
    above_below = unicodedata.normalize("NFKD", character)
    assert read_length(above_below, INCH).inches == value


@pytest.mark.parametrize(
    ("text", "position", "reason"),
    [
        ("", 0, "nothing to read"),
        ("   ", 3, "nothing to read"),
        ("1'5/8\"", 2, "whole inches between feet and fraction are missing"),
        ("1' 5/8\"", 3, "whole inches between feet and fraction are missing"),
        ("1'-⅝", 3, "whole inches between feet and fraction are missing"),
        ("1 2 3", 2, "second number"),
        ("1 220", 2, "second number"),
        ("1.5 1/2", 4, "second number"),
        ("1/2 3", 4, "second number"),
        ("5½ ½", 3, "second number"),
        ("12' 14\"", 4, "less than 12"),
        ("12' 12", 4, "less than 12"),
        ("1' 11.5' ", 7, "Only inches follow feet"),
        ("3' 4 mm", 5, "Only inches follow feet"),
        ("3.5' 2\"", 5, "only whole feet"),
        ("3 1/2' 2", 7, "only whole feet"),
        ("3.5'-2", 4, "only whole feet"),
        ("3 in 2 ft", 5, "second number"),
        ("3\" 2'", 3, "second number"),
        ("3 m 20 cm", 4, "second number"),
        ("48 in mm", 6, "second unit"),
        ('3\' 4""', 5, "second unit"),
        ("in", 0, "number is missing"),
        ("'", 0, "number is missing"),
        ("12'-", 4, "number is missing"),
        ("12'--3", 4, "number is missing"),
        ("1/0", 2, "zero parts"),
        ("48 1/00", 5, "zero parts"),
        ("7/9", 0, "No tape"),
        ('7/9"', 0, "No tape"),
        ("7/9 ft", 0, "No tape"),
        ("48 1/15", 3, "No tape"),
        ("48 1/128", 3, "No tape"),
        ("3' 4 1/3 in", 5, "No tape"),
        ("48 1/1", 3, "No tape"),
        ("48 9/8", 3, "not less than one"),
        ("48 8/8", 3, "not less than one"),
        ("485/16", 0, "not less than one"),
        ('15/8"', 0, "not less than one"),
        ("1\u20092205/16", 2, "not less than one"),  # not 1220 and 5/16
        ("1\u20092205", 2, "second number"),
        ("5 1/2 mm", 2, "not written with fractions"),
        ("1/2 cm", 0, "not written with fractions"),
        ("1/2 m", 0, "not written with fractions"),
        ("1,5", 1, "comma"),
        ("1,220", 1, "comma"),
        ("1. 5", 1, "no digits after it"),
        ("5.", 1, "no digits after it"),
        ("1/ 16", 1, "slash"),
        ("1/2/3", 3, "slash"),
        ("48 /16", 3, "slash"),
        ("1.5/2", 3, "slash"),
        ("48 - 1/16", 3, "could be a minus"),
        ("48 -1/16", 3, "could be a minus"),
        ("48- 1/16", 2, "could be a minus"),
        ("48\u22121/16", 2, "could be a minus"),
        ("12'\u22123\"", 3, "could be a minus"),
        ("48-", 2, "before a fraction, or between"),
        ("12-3", 2, "before a fraction, or between"),
        ("12.5-3", 4, "could be a minus"),
        ("-3", 0, "negative"),
        ("  \u22123", 2, "negative"),
        ("5 furlong", 2, '"furlong" is no unit'),
        ("1e5", 1, '"e" is no unit'),
        ("5 mm.", 2, '"mm." is no unit'),
        ("+5", 0, "has no place"),
        ("5\n", 1, "has no place"),
        ("٣", 0, "has no place"),  # a digit elsewhere
        ("5 \ud800", 2, "has no place"),
        ("0.1234567890123", 14, "more than 12 decimals"),
        ("10000000", 0, "10000000 in or more"),
        (" 10000000/1 in", 1, "10000000 in or more"),
        ("900000'", 0, "10000000 in or more"),
        ("1" * 41, 40, "longer than 40"),
    ],
)
def test_what_is_refused_in_inches(text: str, position: int, reason: str):
    with pytest.raises(LengthTextError) as refused:
        read_length(text, INCH)
    error = refused.value
    assert reason in error.reason
    assert (error.position, error.text) == (position, text)
    assert str(error) == f"{error.reason} {error.remedy}"


@pytest.mark.parametrize(
    ("text", "position", "reason"),
    [
        ("48 1/16", 3, "Without a unit these are millimeters"),
        ("7/8", 0, "Without a unit these are millimeters"),
        ("5½", 1, "Without a unit these are millimeters"),
        ("10000000", 0, "10000000 mm or more"),
        ("400000 in", 0, "10000000 mm or more"),
    ],
)
def test_what_is_refused_in_millimeters(text: str, position: int, reason: str):
    with pytest.raises(LengthTextError) as refused:
        read_length(text, MILLIMETER)
    assert reason in refused.value.reason
    assert refused.value.position == position


def test_the_remedy_for_missing_inches_is_itself_read():
    with pytest.raises(LengthTextError) as refused:
        read_length("1'5/8", INCH)
    assert refused.value.remedy == "Write 1'-0 5/8\" if there are none."
    assert read_length("1'-0 5/8\"", INCH).inches == Fraction(101, 8)


@pytest.mark.parametrize("text", ["-3' 2\"", "\u22123'-2", "- 38", " -3 ft 2 in"])
def test_a_minus_turns_the_whole_length_where_signs_are_read(text: str):
    assert read_length(text, INCH, signed=True) == Length.of_inches(-38)


def test_one_minus_is_enough():
    with pytest.raises(LengthTextError) as refused:
        read_length("--3", INCH, signed=True)
    assert refused.value.position == 1


@pytest.mark.parametrize(
    ("value", "units", "inches"),
    [
        (48, INCH, "48"),
        (Decimal("48.0625"), INCH, "769/16"),
        (Decimal("48.1"), INCH, "481/10"),
        (254, MILLIMETER, "10"),
        (0, INCH, "0"),
        (Decimal("-0.0"), INCH, "0"),
        (Decimal("1E+3"), INCH, "1000"),
        (9999999, INCH, "9999999"),
        # The 13th decimal is rounded to the 12th, half to even.
        (Decimal("0.0000000000015"), INCH, "2/1000000000000"),
        (Decimal("0.0000000000025"), INCH, "2/1000000000000"),
        (Decimal("0.30000000000000004"), INCH, "3/10"),
        (Decimal("1e-999999"), INCH, "0"),
    ],
)
def test_bare_numbers(value: int | Decimal, units: Units, inches: str):
    assert read_number(value, units) == Length.of_inches(Fraction(inches))


def test_a_negative_number_is_read_where_signs_are():
    assert read_number(-5, INCH, signed=True) == Length.of_inches(-5)
    with pytest.raises(LengthTextError, match="negative"):
        read_number(-5, INCH)


@pytest.mark.parametrize(
    ("value", "reason"),
    [
        (10**7, "10000000 in or more"),
        (-(10**7), "10000000 in or more"),
        (Decimal("1e7"), "10000000 in or more"),
        (Decimal("1e999999"), "10000000 in or more"),
        pytest.param(10**100_000, "10000000 in or more", id="a number too long to be written"),
        (Decimal("NaN"), "no finite number"),
        (Decimal("sNaN"), "no finite number"),
        (Decimal("-Infinity"), "no finite number"),
    ],
)
def test_what_is_no_number_of_a_ceiling_is_refused(value: int | Decimal, reason: str):
    with pytest.raises(LengthTextError, match=reason) as refused:
        read_number(value, INCH, signed=True)
    assert refused.value.position == 0
    assert len(refused.value.text) <= 40


def test_just_below_the_largest_number_is_read():
    value = Decimal("9999999.999999999999")
    assert read_number(value, INCH).inches == Fraction(value)


@pytest.mark.parametrize("value", [1.5, True, "5", None])
def test_a_bare_number_is_whole_or_decimal(value):
    with pytest.raises(TypeError, match=type(value).__name__):
        read_number(value, INCH)


def test_the_context_of_the_caller_does_not_count():
    with localcontext(prec=3):
        assert read_number(Decimal("123456.0625"), INCH).inches == Fraction("123456.0625")
    assert read_length("0", INCH) == ZERO
