"""Lengths in answers and in sentences."""

import json
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.exchange.length_json import (
    decimal_number,
    length_both_ways,
    length_in_words,
    length_to_json,
)
from lacunar.measure.length import Length
from lacunar.measure.notation import read_length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units

SIXTEENTHS = Step.read("1/16", Units.INCH)
HALF_MILLIMETERS = Step.read("0.5 mm", Units.MILLIMETER)


def test_a_length_leaves_exact_and_with_its_units():
    # 48 1/16 in = 48.0625 * 25.4 = 1220.7875 mm
    assert length_to_json(Length.of_inches(Fraction(769, 16)), SIXTEENTHS) == {
        "exact": "769/16 in",
        "text": "4'-0 1/16\"",
        "in": 48.0625,
        "mm": 1220.7875,
    }
    assert length_to_json(Length.of_inches(Fraction(769, 16)), HALF_MILLIMETERS) == {
        "exact": "97663/80 mm",
        "text": "1221 mm",
        "in": 48.0625,
        "mm": 1220.7875,
    }


def test_text_is_rounded_to_the_step_and_decimals_are_not():
    third = length_to_json(Length.of_inches(Fraction(100, 3)), SIXTEENTHS)
    # 33 1/3 is 33 5.33/16
    assert (third["text"], third["in"]) == ("2'-9 5/16\"", 33.333333)


@given(st.fractions(0, 4000, max_denominator=10**6))
def test_law_the_exact_text_reads_back_as_the_length(amount: Fraction):
    for step in (SIXTEENTHS, HALF_MILLIMETERS):
        length = Length.of_inches(amount)
        assert read_length(length_to_json(length, step)["exact"], step.units) == length


@given(st.fractions(-4000, 4000, max_denominator=10**6))
def test_law_decimals_are_within_half_a_millionth(amount: Fraction):
    number = decimal_number(amount)
    assert abs(Fraction(json.dumps(number)) - amount) <= Fraction(1, 2 * 10**6)


@pytest.mark.parametrize(
    ("inches", "words", "metric"),
    [
        ("0", '0"', "0 mm"),
        ("7/2", '3 1/2"', "88.9 mm"),
        ("3/4", '3/4"', "19.05 mm"),
        ("12", "1'-0\"", "304.8 mm"),
        ("25/2", "1'-0 1/2\"", "317.5 mm"),
        ("100/3", "2'-9 1/3\"", "846 2/3 mm"),
        ("49/10", '4.9"', "124.46 mm"),
        ("-1/2", '-1/2"', "-12.7 mm"),
        # no fraction a reader knows: 25.4 / 2048 = 0.01240234375, 25.4 / 1001 = 0.025374625...
        ("1/2048", 'about 0.000488"', "about 0.012402 mm"),
        ("1/1001", 'about 0.000999"', "about 0.025375 mm"),
        ("1/64", '1/64"', "0.396875 mm"),
    ],
)
def test_lengths_in_sentences_are_unrounded_as_far_as_they_can_be_read(
    inches: str, words: str, metric: str
):
    length = Length.of_inches(Fraction(inches))
    assert length_in_words(length, Units.INCH) == words
    assert length_in_words(length, Units.MILLIMETER) == metric


def test_where_units_are_not_known_both_are_told():
    assert length_both_ways(Length.of_inches(7)) == '7" (177.8 mm)'
