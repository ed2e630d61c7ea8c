"""Laws that hold for every length, text and step, each test named after its law."""

import re
from collections.abc import Callable
from datetime import timedelta
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from itertools import pairwise
from math import gcd

from hypothesis import example, given, settings
from hypothesis import strategies as st

from lacunar.measure.length import ZERO, Length
from lacunar.measure.notation import LengthTextError, read_length, read_number
from lacunar.measure.rounding import (
    STEPS,
    Step,
    finest_step_holding,
    is_whole,
    round_to,
    steps_of,
    ticks,
)
from lacunar.measure.units import Units
from lacunar.measure.writing import (
    LengthStyle,
    decimal_text,
    is_terminating,
    write_exact,
    write_length,
)

steps = st.sampled_from(STEPS)
units = st.sampled_from(list(Units))
# Rooms and far beyond; the denominators hold tape fractions, thirds and millimeters alike.
lengths = st.builds(
    Length.of_inches,
    st.fractions(min_value=-5000, max_value=5000, max_denominator=10_000)
    | st.builds(Fraction, st.integers(-300_000, 300_000), st.sampled_from([64, 127, 128, 254])),
)


@st.composite
def styles(draw: st.DrawFn, step: Step | None = None) -> LengthStyle:
    """Any way to write lengths."""
    step = step or draw(steps)
    return LengthStyle(
        units=step.units,
        step=step,
        feet_from=draw(st.sampled_from([None, ZERO, Length.of_feet(1), Length.of_feet(8)])),
        group_thousands=draw(st.booleans()),
        with_unit=draw(st.booleans()),
    )


def outcome(read: Callable[[], Length]) -> Length | LengthTextError:
    """What reading comes to: a length, or the refusal. Any other exception passes through."""
    try:
        return read()
    except LengthTextError as error:
        return error


def read_back(text: str, style: LengthStyle) -> Length:
    return read_length(text, style.units, signed=True)


@given(lengths, styles())
def test_reading_undoes_writing(length: Length, style: LengthStyle):
    """read(write(x)) = x for every whole number of steps, in every style."""
    whole = round_to(length, style.step)
    assert read_back(write_length(whole, style), style) == whole


@given(lengths, styles())
def test_writing_rounds_once_and_changes_nothing_else(length: Length, style: LengthStyle):
    """read(write(x)) = round(x)."""
    assert read_back(write_length(length, style), style) == round_to(length, style.step)


@given(lengths, units, units)
def test_reading_undoes_exact_writing(length: Length, written_in: Units, read_in: Units):
    """read(write_exact(x)) = x, whatever units stand around it."""
    assert read_length(write_exact(length, written_in), read_in, signed=True) == length


FEET_AND_INCHES = re.compile(
    r"""-?(?:(?P<feet>[0-9]+)'-)?(?P<whole>[0-9]+)?\ ?(?:(?P<above>[0-9]+)/(?P<below>[0-9]+))?\"""",
    re.VERBOSE,
)


@given(lengths, st.sampled_from(steps_of(Units.INCH)).flatmap(styles))
@example(Length.of_inches(Fraction(359999, 10000)), LengthStyle(Units.INCH, STEPS[1]))
def test_fractions_carry_into_inches_and_inches_into_feet(length: Length, style: LengthStyle):
    """Never 16/16, never 12" after feet, never a fraction that could be reduced."""
    found = FEET_AND_INCHES.fullmatch(write_length(length, style))
    assert found is not None
    if found["feet"]:
        assert int(found["whole"]) < 12
    if found["above"]:
        above, below = int(found["above"]), int(found["below"])
        assert 0 < above < below
        assert gcd(above, below) == 1
        assert below <= 1 / style.step.size.inches


@given(lengths, st.sampled_from(steps_of(Units.INCH)))
def test_zero_inches_are_written_after_feet(length: Length, step: Step):
    """Feet are always followed by a dash and whole inches, 0 among them."""
    text = write_length(length, LengthStyle(Units.INCH, step, feet_from=ZERO))
    assert re.match(r"-?[0-9]+'-(?:[0-9]|1[01])[ \"]", text)


@given(st.lists(lengths, max_size=30), styles())
def test_printed_segments_add_up_to_the_printed_overall(
    positions: list[Length], style: LengthStyle
):
    """A chain of printed segments closes, for any running positions from the datum."""
    marks = [round_to(each, style.step) for each in (ZERO, *sorted(positions))]
    segments = [after - before for before, after in pairwise(marks)]
    printed = [read_back(write_length(each, style), style) for each in segments]
    overall = read_back(write_length(marks[-1], style), style)
    assert sum(printed, ZERO) == overall


@given(st.lists(lengths, min_size=2, max_size=30), steps)
def test_no_mark_is_off_by_more_than_half_a_step_and_no_segment_by_more_than_one(
    positions: list[Length], step: Step
):
    """|mark - exact| <= step/2, and |segment - exact| <= step."""
    marks = [round_to(each, step) for each in positions]
    for mark, position in zip(marks, positions, strict=True):
        assert abs(mark - position) * 2 <= step.size
    for (mark, after), (exact, exact_after) in zip(
        pairwise(marks), pairwise(positions), strict=True
    ):
        assert abs((after - mark) - (exact_after - exact)) <= step.size


@given(lengths, steps)
def test_rounding_is_the_same_to_both_sides_of_the_datum(length: Length, step: Step):
    """round(-x) = -round(x)."""
    assert round_to(-length, step) == -round_to(length, step)


@given(lengths, steps)
def test_rounding_twice_is_rounding_once(length: Length, step: Step):
    """round(round(x)) = round(x), a whole number of steps."""
    once = round_to(length, step)
    assert round_to(once, step) == once
    assert is_whole(once, step)
    assert once == step.size * ticks(length, step)


@given(lengths, lengths, steps)
def test_rounding_keeps_order(one: Length, other: Length, step: Step):
    """x <= y gives round(x) <= round(y): marks never change places."""
    less, more = sorted([one, other])
    assert round_to(less, step) <= round_to(more, step)


@given(st.integers(-200_000, 200_000), steps)
def test_ties_go_away_from_the_datum(count: int, step: Step):
    """A position n and a half steps out is marked n + 1 steps out.

    Source: ROUND_HALF_UP of Python's decimal module, which is its name for ties away from zero.
    """
    halves = Decimal(count) / 2
    expected = int(halves.to_integral_value(rounding=ROUND_HALF_UP))
    assert ticks(step.size * Fraction(halves), step) == expected


@given(lengths, units)
def test_the_step_that_holds_a_length_is_the_coarsest(length: Length, unit: Units):
    """It holds the length, and no coarser step of its units does; None where none does."""
    holding = [step for step in STEPS if step.units is unit and is_whole(length, step)]
    assert finest_step_holding(length, unit) == max(
        holding, key=lambda step: step.size, default=None
    )


@given(lengths)
def test_inches_and_millimeters_lose_nothing(length: Length):
    """inches -> mm -> inches is the same length, and mm are inches times 25.4."""
    assert Length.of_millimeters(length.millimeters) == length
    assert length.millimeters * 10 == length.inches * 254


@given(lengths, lengths, st.integers(1, 1000))
def test_lengths_are_numbers_of_an_exact_line(one: Length, other: Length, count: int):
    """(a + b) - b = a; (a n) / n = a; a = b (a / b); floor division is the whole of division."""
    assert (one + other) - other == one
    assert one * count / count == one
    assert sum([one] * (count % 7), ZERO) == one * (count % 7)
    if other:
        assert other * (one / other) == one
        rest = one - other * (one // other)
        assert 0 <= rest / other < 1


VARIANTS = {
    "'": "'\u2032\u2018\u2019",
    '"': '"\u2033\u201c\u201d',
    "/": "/\u2044\u2215",
    "-": "-\u2010\u2011\u2013",
    " ": " \u00a0\u2007\u2009\u202f",
}


@given(
    st.integers(0, 800),
    st.integers(0, 11),
    st.builds(Fraction, st.integers(0, 63), st.just(64)),
    st.data(),
)
def test_typographic_variants_are_the_same_length(
    feet: int, inches: int, part: Fraction, data: st.DataObject
):
    """Primes, slashes, dashes and spaces read alike in all their forms, joined or apart."""
    fraction = f" {part}" if part else ""
    joint = data.draw(st.sampled_from(["-", " ", " - ", ""]))
    plain = f"{feet}'{joint}{inches}{fraction}\""
    varied = "".join(data.draw(st.sampled_from(VARIANTS.get(each, each))) for each in plain)
    expected = Length.of_feet(feet) + Length.of_inches(inches + part)
    assert read_length(plain, Units.MILLIMETER) == expected
    assert read_length(varied, Units.MILLIMETER) == expected
    spelled = f"{feet} ft {inches}{fraction} in"
    assert read_length(spelled, Units.MILLIMETER) == expected


# What lengths are made of, so that chance comes near to them, and what only looks like it.
signs = st.text(st.sampled_from("0123456789 '\"/.-,½⅝\u2019\u2033\u2044\u2009\u2212²٣inftmc"))


@settings(max_examples=400, deadline=timedelta(seconds=2))
@given(st.text() | signs | signs.map(lambda text: text * 50), units, st.booleans())
@example("1" * 1_000_000, Units.INCH, False)
@example("\u2009".join(["1"] + ["111"] * 9), Units.INCH, False)
@example("1/" * 20, Units.INCH, False)
@example("'" * 40, Units.INCH, True)
def test_any_text_is_read_or_refused_at_a_place_in_it(text: str, unit: Units, signed: bool):
    """No text raises anything but LengthTextError, which points into the text; and soon."""
    found = outcome(lambda: read_length(text, unit, signed=signed))
    if isinstance(found, LengthTextError):
        assert found.text == text
        assert 0 <= found.position <= len(text)
        for sentence in (found.reason, found.remedy):
            assert sentence.endswith(".")
    else:
        assert signed or found >= ZERO
        assert abs(found.inches / unit.inches_each) < 10**7


@settings(deadline=timedelta(seconds=2))
@given(
    st.integers()
    | st.decimals()
    | st.decimals(min_value=-(10**8), max_value=10**8, places=14)
    | st.builds(
        lambda digits, power: Decimal(digits).scaleb(power, Context(prec=999)),
        st.integers(),
        st.integers(-900_000, 900_000),
    ),
    units,
    st.booleans(),
)
@example(-(10**1_000_000), Units.INCH, True)
@example(Decimal("1" * 100_000), Units.INCH, False)
@example(Decimal("0." + "1" * 100_000), Units.INCH, False)
def test_any_number_is_read_or_refused(value: int | Decimal, unit: Units, signed: bool):
    """A number is read to within half of its 12th decimal, or refused; and soon."""
    found = outcome(lambda: read_number(value, unit, signed=signed))
    if isinstance(found, LengthTextError):
        assert found.position == 0
        assert len(found.text) <= 40
    else:
        assert -(10**7) < value < 10**7
        assert signed or value >= 0
        assert abs(found.inches / unit.inches_each - Fraction(value)) * 2 <= Fraction(1, 10**12)


@given(
    st.integers(0, 9_999_999),
    st.integers(0, 10**12 - 1),
    units,
)
def test_text_and_number_are_the_same_length(whole: int, decimals: int, unit: Units):
    """A decimal is read alike from text and from a number, and a minus turns both alike."""
    text = f"{whole}.{decimals:012}"
    length = read_length(text, unit)
    assert length == read_number(Decimal(text), unit)
    assert read_length(f"-{text}", unit, signed=True) == -length
    assert read_number(-Decimal(text), unit, signed=True) == -length


@given(st.fractions(max_denominator=10**9), st.integers(0, 9))
def test_decimals_are_rounded_half_to_even(number: Fraction, places: int):
    """|decimals - x| <= half of the last place, and a tie goes to the even digit.

    Source: Python's decimal module dividing with ROUND_HALF_EVEN, in enough digits that only true
    ties end in a 5 followed by nothing.
    """
    wide = Context(prec=60)
    quotient = wide.divide(Decimal(number.numerator), Decimal(number.denominator))
    expected = quotient.quantize(Decimal(1).scaleb(-places), ROUND_HALF_EVEN, wide)
    text = decimal_text(number, places)
    assert Decimal(text) == expected
    assert is_terminating(number, places) == (Fraction(text) == number)
    assert not re.search(r"\.[0-9]*0$|\.$|^-0$", text)
