from fractions import Fraction

import pytest

from lacunar.measure.length import ZERO, Length
from lacunar.measure.notation import LengthTextError
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

SIXTEENTH = Step.read("1/16", Units.INCH)
MILLIMETER = Step.read("1 mm", Units.MILLIMETER)


def inches(text: str) -> Length:
    return Length.of_inches(Fraction(text))


def test_the_steps_and_their_exact_sizes():
    assert [(step.text, step.size.inches) for step in steps_of(Units.INCH)] == [
        ("1/8", Fraction(1, 8)),
        ("1/16", Fraction(1, 16)),
        ("1/32", Fraction(1, 32)),
        ("1/64", Fraction(1, 64)),
    ]
    assert [(step.text, step.size.millimeters) for step in steps_of(Units.MILLIMETER)] == [
        ("1 mm", Fraction(1)),
        ("0.5 mm", Fraction(1, 2)),
    ]


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.text)
def test_a_step_is_read_back_from_its_own_text(step: Step):
    assert Step.read(step.text, step.units) is step


@pytest.mark.parametrize("text", ["1/16 in", '1/16"', "0.0625", "1\u204416", "2/32"])
def test_a_step_is_a_length_in_any_notation(text: str):
    assert Step.read(text, Units.INCH) is SIXTEENTH


@pytest.mark.parametrize(
    ("text", "units", "remedy"),
    [
        ("1/12", Units.INCH, "Write one of 1/8, 1/16, 1/32, 1/64."),
        ("1/4", Units.INCH, "Write one of 1/8, 1/16, 1/32, 1/64."),
        ("0", Units.INCH, "Write one of 1/8, 1/16, 1/32, 1/64."),
        ("1 mm", Units.INCH, "Write one of 1/8, 1/16, 1/32, 1/64."),
        ("1/16 in", Units.MILLIMETER, "Write one of 1 mm, 0.5 mm."),
        ("1/16", Units.MILLIMETER, "Write one of 1 mm, 0.5 mm."),
        ("fine", Units.MILLIMETER, "Write one of 1 mm, 0.5 mm."),
        ("", Units.MILLIMETER, "Write one of 1 mm, 0.5 mm."),
    ],
)
def test_what_is_no_step_of_these_units_is_refused_with_the_choice(
    text: str, units: Units, remedy: str
):
    with pytest.raises(LengthTextError) as refused:
        Step.read(text, units)
    assert refused.value.remedy == remedy


@pytest.mark.parametrize(
    ("length", "count"),
    [
        ("0", 0),
        ("1/33", 0),  # 16/33 of a step
        ("1/31", 1),  # 16/31
        ("1/32", 1),  # half a step: away from zero
        ("-1/32", -1),
        ("3/32", 2),  # 1 1/2 steps
        ("-3/32", -2),
        ("1", 16),
    ],
)
def test_ticks_are_counted_from_zero_either_way(length: str, count: int):
    assert ticks(inches(length), SIXTEENTH) == count


def test_half_a_millimeter_is_rounded_away_from_the_datum():
    assert round_to(Length.of_millimeters(Fraction(25, 2)), MILLIMETER).millimeters == 13
    assert round_to(Length.of_millimeters(Fraction(-25, 2)), MILLIMETER).millimeters == -13


def test_each_mark_is_rounded_on_its_own():
    # Thirds of 1": 5.33 and 10.67 sixteenths. Adding up rounded thirds would end at 15/16.
    thirds = [inches(f"{n}/3") for n in range(4)]
    assert [round_to(third, SIXTEENTH) for third in thirds] == [
        ZERO,
        inches("5/16"),
        inches("11/16"),
        inches("1"),
    ]


def test_what_is_whole_in_steps():
    assert is_whole(inches("11/16"), SIXTEENTH)
    assert is_whole(ZERO, SIXTEENTH)
    assert not is_whole(inches("11/32"), SIXTEENTH)
    assert is_whole(Length.of_inches(5), Step.read("0.5", Units.MILLIMETER))  # 127 mm
    assert not is_whole(Length.of_inches(1), Step.read("0.5", Units.MILLIMETER))  # 25.4 mm


@pytest.mark.parametrize(
    ("length", "units", "text"),
    [
        (inches("0"), Units.INCH, "1/8"),
        (inches("5"), Units.INCH, "1/8"),
        (inches("11/2"), Units.INCH, "1/8"),
        (inches("87/16"), Units.INCH, "1/16"),
        (inches("-3/64"), Units.INCH, "1/64"),
        (inches("127/10"), Units.MILLIMETER, None),  # 322.58 mm
        (inches("5"), Units.MILLIMETER, "1 mm"),  # 127 mm
        (Length.of_millimeters(Fraction(19, 2)), Units.MILLIMETER, "0.5 mm"),
        (Length.of_millimeters(Fraction(19, 2)), Units.INCH, None),
        (inches("1/3"), Units.INCH, None),
    ],
)
def test_the_step_a_length_needs(length: Length, units: Units, text: str | None):
    step = finest_step_holding(length, units)
    assert (step.text if step else None) == text
