"""Lengths written as text: rounded for people to read, or exact for programs."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, round_to
from lacunar.measure.units import INCHES_PER_FOOT, Units

THIN_SPACE = "\u2009"
ONE_FOOT = Length.of_feet(1)


@dataclass(frozen=True, slots=True)
class LengthStyle:
    """How a length is written: in which units, rounded to which step (of the same units).

    `feet_from` [length] is what the written length must reach to be told in feet and inches; None
    keeps to inches. `group_thousands` parts the digits of millimeters in threes by a thin space,
    and `with_unit` puts ` mm` after them; feet and inches always bear their marks.
    Raises ValueError where step and units do not belong together.
    """

    units: Units
    step: Step
    feet_from: Length | None = ONE_FOOT
    group_thousands: bool = False
    with_unit: bool = False

    def __post_init__(self) -> None:
        if self.step.units is not self.units:
            raise ValueError(f"lengths in {self.units} cannot be written to {self.step.text}")


def write_length(length: Length, style: LengthStyle) -> str:
    r"""Turn a length into the text that stands on a sheet.

    The length is rounded to whole steps first and split into feet, inches and fraction after, so
    the fraction never fills an inch nor the inches a foot.

    >>> sixteenths = LengthStyle(Units.INCH, Step.read("1/16", Units.INCH))
    >>> write_length(Length.of_inches(Fraction(769, 16)), sixteenths)
    '4\'-0 1/16"'
    >>> write_length(Length.of_inches(Fraction(359999, 10000)), sixteenths)
    '3\'-0"'
    >>> on_sheet = LengthStyle(
    ...     Units.MILLIMETER, Step.read("0.5 mm", Units.MILLIMETER), with_unit=True
    ... )
    >>> write_length(Length.of_millimeters(Fraction(24413, 20)), on_sheet)
    '1220.5 mm'
    """
    rounded = round_to(length, style.step)
    size = abs(rounded)
    sign = "-" if rounded.inches < 0 else ""
    if style.units is Units.MILLIMETER:
        return sign + _millimeters(size, style)
    if style.feet_from is None or size < style.feet_from:
        return f'{sign}{_mixed(size.inches)}"'
    feet, inches = divmod(size.inches, INCHES_PER_FOOT)
    return f"{sign}{feet}'-{_mixed(inches, zero_told=True)}\""


def _mixed(amount: Fraction, zero_told: bool = False) -> str:
    """Write a number as whole and fraction: `5 1/2`; `3/4`, or `0 3/4` where zero is told."""
    whole, part = divmod(amount, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole or zero_told else str(part)


def _millimeters(size: Length, style: LengthStyle) -> str:
    whole, part = divmod(size.millimeters, 1)
    digits = f"{whole:,}".replace(",", THIN_SPACE if style.group_thousands else "")
    return digits + decimal_text(part).removeprefix("0") + (" mm" if style.with_unit else "")


def write_exact(length: Length, units: Units) -> str:
    """Turn a length into text that loses nothing: a number or fraction, and the unit.

    `read_length` takes it back to the same length, as long as it has room for the digits.

    >>> write_exact(Length.of_inches(Fraction(769, 16)), Units.INCH)
    '769/16 in'
    >>> write_exact(Length.of_inches(48), Units.MILLIMETER)
    '6096/5 mm'
    """
    return f"{length.inches / units.inches_each} {units}"


def decimal_text(number: Fraction, places: int = 6) -> str:
    """Turn a number into decimals, at most `places` of them, without zeros at the end.

    What does not end by then is rounded, a tie to the even digit, so that a column of such figures
    leans neither up nor down; `is_terminating` tells.

    >>> decimal_text(Fraction(769, 16)), decimal_text(Fraction(-2, 3), places=2)
    ('48.0625', '-0.67')
    """
    count = round(number * 10**places)
    whole, part = divmod(abs(count), 10**places)
    text = f"{whole}.{part:0{places}d}".rstrip("0").removesuffix(".") if places else str(whole)
    return "-" + text if count < 0 else text


def is_terminating(number: Fraction, places: int = 6) -> bool:
    """Tell whether a number's decimals end within `places`, so that `decimal_text` is exact.

    >>> is_terminating(Fraction(1, 64)), is_terminating(Fraction(1, 3))
    (True, False)
    """
    scale: int = 10**places
    return (number * scale).denominator == 1
