"""Lengths as JSON and in words: exact first, then as a tape and a calculator show them."""

from fractions import Fraction
from typing import Any

from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import INCHES_PER_FOOT, Units
from lacunar.measure.writing import (
    ONE_FOOT,
    LengthStyle,
    decimal_text,
    is_terminating,
    write_exact,
    write_length,
)

DECIMALS = 6
# Past this a fraction tells a reader less than its decimals.
LARGEST_DENOMINATOR = 100
ABOUT = "about "
TAPE_DENOMINATORS = (2, 4, 8, 16, 32, 64)


def length_to_json(length: Length, step: Step) -> dict[str, Any]:
    r"""Turn a length into what every length in an answer is.

    `exact` loses nothing and reads back to the same length; `text` is rounded to `step`, in its
    units; `in` and `mm` are decimals rounded to 6 places.

    >>> length_to_json(Length.of_inches(Fraction(769, 16)), Step.read("1/16", Units.INCH))
    {'exact': '769/16 in', 'text': '4\'-0 1/16"', 'in': 48.0625, 'mm': 1220.7875}
    """
    return {
        "exact": write_exact(length, step.units),
        "text": write_length(length, LengthStyle(step.units, step, with_unit=True)),
        "in": decimal_number(length.inches),
        "mm": decimal_number(length.millimeters),
    }


def decimal_number(number: Fraction) -> int | float:
    """Turn a number into a JSON number of at most 6 decimals, the same bytes every time.

    >>> decimal_number(Fraction(48)), decimal_number(Fraction(1, 3))
    (48, 0.333333)
    """
    text = decimal_text(number, DECIMALS)
    return float(text) if "." in text else int(text)


def length_in_words(length: Length, units: Units) -> str:
    """Turn a length into words a carpenter reads, unrounded as far as that can be read.

    >>> print(length_in_words(Length.of_inches(Fraction(487, 2)), Units.INCH))
    20'-3 1/2"
    >>> print(length_in_words(Length.of_inches(Fraction(100, 3)), Units.MILLIMETER))
    846 2/3 mm
    >>> print(length_in_words(Length.of_inches(Fraction(20000, 333)), Units.INCH))
    about 5'-0.06006"
    """
    sign = "-" if length.inches < 0 else ""
    size = abs(length)
    if units is Units.MILLIMETER:
        return f"{sign}{_number_in_words(size.millimeters)} mm"
    if size < ONE_FOOT:
        return f'{sign}{_tape_in_words(size.inches)}"'
    feet, inches = divmod(size.inches, INCHES_PER_FOOT)
    rest = _tape_in_words(inches)
    if rest.startswith(ABOUT):
        return f"{ABOUT}{sign}{feet}'-{rest.removeprefix(ABOUT)}\""
    if inches < 1 and "/" in rest:
        rest = f"0 {rest}"
    return f"{sign}{feet}'-{rest}\""


def length_both_ways(length: Length) -> str:
    """Turn a length into words in inches and in millimeters, for where the units are not known.

    >>> print(length_both_ways(Length.of_inches(12)))
    1'-0" (304.8 mm)
    """
    inches = length_in_words(length, Units.INCH)
    return f"{inches} ({decimal_text(length.millimeters, places=2)} mm)"


def _tape_in_words(inches: Fraction) -> str:
    """Inches as a tape has them, else as any number."""
    if inches.denominator in TAPE_DENOMINATORS:
        return _mixed(inches)
    return _number_in_words(inches)


def _number_in_words(number: Fraction) -> str:
    """Decimals if they end, else a mixed number, else decimals that are told to be cut off."""
    if is_terminating(number, DECIMALS):
        return decimal_text(number, DECIMALS)
    if number.denominator <= LARGEST_DENOMINATOR:
        return _mixed(number)
    return f"{ABOUT}{decimal_text(number, DECIMALS)}"


def _mixed(number: Fraction) -> str:
    whole, part = divmod(number, 1)
    return f"{whole} {part}" if whole else str(part)
