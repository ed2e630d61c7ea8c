"""Lengths read from text as people write them, and from bare numbers.

    length = feet | feet [dash] inches | amount [unit]
    feet   = amount, then ' or ft
    inches = amount, then " or in or nothing; with a whole number, and less than 12
    amount = whole | decimal | fraction | whole, then space or dash or nothing, then fraction

What could be meant in two ways is refused, never guessed.
"""

from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.refusal import LengthTextError
from lacunar.measure.signs import EXAMPLES, MOST_DECIMALS, NUMBERS, Kind, Sign, Unit, scan
from lacunar.measure.units import INCHES_PER_FOOT, Units

__all__ = ["LengthTextError", "read_length", "read_number"]

MOST_CHARACTERS = 40
LARGEST = 10**7  # of the units being read, not reached

# What tapes are divided into (common practice, no source).
_TAPE_DENOMINATORS = (2, 4, 8, 16, 32, 64)

_OWN_UNIT = {Units.INCH: Unit.INCH, Units.MILLIMETER: Unit.MILLIMETER}
_METRIC = (Unit.MILLIMETER, Unit.CENTIMETER, Unit.METER)

_FINEST = Decimal(1).scaleb(-MOST_DECIMALS)
_CONTEXT = Context(prec=28, rounding=ROUND_HALF_EVEN)


def read_length(text: str, units: Units, *, signed: bool = False) -> Length:
    r"""Turn text into a length; a number without a unit is in `units`.

    Read are whole numbers, decimals with a point, fractions and mixed numbers, alone or with a unit
    (in, ft, mm, cm, m, ' and "), and feet followed by inches; in upper or lower case, with
    typographic primes, fraction characters, dashes and spaces.

    - A fraction counts halves to sixty-fourths, as a tape does, and is less than one: 48 1/15 is a
      slip, and 485/16 would be 48 5/16 without its space. Only one that stands alone, with `in` or
      `mm` spelled after it, may be any: the exact form, 145/3 in.
    - Millimeters, centimeters and meters take no tape fraction.
    - After feet, the whole inches are written (1'-0 5/8", not 1'5/8") and are less than 12.
    - A minus in front is read only where `signed`; inside, it would be a subtraction.
    - At most 40 characters and 12 decimals, and less than 10,000,000 `units`.

    Raises LengthTextError.

    >>> read_length("12'-0 3/16\"", Units.INCH)
    Length(2307/16 in)
    >>> read_length("3.05 m", Units.INCH) == Length.of_millimeters(3050)
    True
    >>> try:
    ...     read_length("1'5/8\"", Units.INCH)
    ... except LengthTextError as error:
    ...     print(error.position, error.remedy)
    2 Write 1'-0 5/8" if there are none.
    """
    if len(text) > MOST_CHARACTERS:
        reason = f"The text is longer than {MOST_CHARACTERS} characters."
        raise LengthTextError(reason, MOST_CHARACTERS, text, EXAMPLES)
    reader = _Reader(text)
    negative = reader.minus(signed)
    first = reader.next.start
    length = reader.length(_OWN_UNIT[units])
    reader.end()
    if length.inches >= LARGEST * units.inches_each:
        raise _too_large(units, first, text)
    return -length if negative else length


def read_number(value: int | Decimal, units: Units, *, signed: bool = False) -> Length:
    """Turn a bare number of `units` into a length.

    What has more than 12 decimals is rounded to 12, half to even. The size is looked at before
    anything is computed, so that no exponent makes this slow. Raises LengthTextError for what is
    not finite, not less than 10,000,000, or negative where not `signed`; TypeError for a float.

    >>> read_number(Decimal("48.0625"), Units.INCH)
    Length(769/16 in)
    """
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise TypeError(f"a {type(value).__name__} is not exact; read the number as a Decimal")
    if isinstance(value, Decimal) and not value.is_finite():
        raise LengthTextError("This is no finite number.", 0, _shown(value), EXAMPLES)
    if not -LARGEST < value < LARGEST:
        raise _too_large(units, 0, _shown(value))
    if value < 0 and not signed:
        raise _negative(0, _shown(value))
    if isinstance(value, Decimal):
        value = value.quantize(_FINEST, context=_CONTEXT)
    return Length(Fraction(value) * units.inches_each)


@dataclass(frozen=True, slots=True)
class _Amount:
    """A number as it was written: its first sign, and the fraction it has or is."""

    first: Sign
    fraction: Sign | None

    @property
    def value(self) -> Fraction:
        """What the number amounts to."""
        if self.fraction is None or self.fraction is self.first:
            return self.first.value
        return self.first.value + self.fraction.value


class _Reader:
    """Takes the signs of one text from left to right."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.signs = iter(scan(text))
        self.next = next(self.signs)
        if self.next.kind is Kind.END:
            raise self.refusal("There is nothing to read.", self.next, EXAMPLES)

    def take(self) -> Sign:
        """Take the next sign; not for the end, which has none after it."""
        taken, self.next = self.next, next(self.signs)
        return taken

    def refusal(self, reason: str, at: Sign, remedy: str) -> LengthTextError:
        """Make the error for something wrong at a sign."""
        return LengthTextError(reason, at.start, self.text, remedy)

    def minus(self, signed: bool) -> bool:
        """Take a minus in front, if there is one, and tell so."""
        if self.next.kind not in (Kind.DASH, Kind.MINUS):
            return False
        if not signed:
            raise _negative(self.next.start, self.text)
        self.take()
        return True

    def length(self, own_unit: Unit) -> Length:
        """Take an amount with its unit, and inches where the unit is feet."""
        amount = self.amount()
        unit, spelled = self.unit(own_unit)
        length = self.measured(amount, unit, spelled)
        if unit is Unit.FOOT and self.next.kind in (*NUMBERS, Kind.DASH):
            return length + self.inches(amount)
        return length

    def amount(self) -> _Amount:
        """Take a number, with the fraction after it."""
        if self.next.kind not in NUMBERS:
            raise self.refusal("A number is missing here.", self.next, EXAMPLES)
        first = self.take()
        if first.kind is Kind.FRACTION:
            return _Amount(first, first)
        if first.kind is Kind.DECIMAL:
            return _Amount(first, None)
        if self.next.kind is Kind.DASH:
            self.joining_dash(first)
        return _Amount(first, self.take() if self.next.kind is Kind.FRACTION else None)

    def joining_dash(self, before: Sign) -> None:
        """Take the dash between a whole number and its fraction."""
        dash = self.take()
        if self.next.kind is not Kind.FRACTION:
            raise self.refusal(
                "A dash stands only before a fraction, or between feet and inches.", dash, EXAMPLES
            )
        if (dash.start, dash.end) != (before.end, self.next.start):
            raise self.refusal(
                "A dash with a space beside it could be a minus.",
                dash,
                "Write the fraction close to its whole number, like 48-1/16.",
            )

    def unit(self, otherwise: Unit) -> tuple[Unit, bool]:
        """Take a unit, if there is one, and tell whether it is spelled out."""
        unit = self.next.unit
        if unit is None:
            return otherwise, False
        return unit, self.take().spelled

    def measured(self, amount: _Amount, unit: Unit, spelled: bool) -> Length:
        """Turn an amount of a unit into a length, if its fraction is one of that unit."""
        fraction = amount.fraction
        is_exact_form = (
            fraction is amount.first and spelled and unit in (Unit.INCH, Unit.MILLIMETER)
        )
        if fraction is not None and not is_exact_form:
            if unit in _METRIC:
                raise self.metric_fraction(fraction, spelled)
            self.hold_to_tape(fraction)
        return unit.value * amount.value

    def metric_fraction(self, fraction: Sign, spelled: bool) -> LengthTextError:
        """Make the error for a fraction of a metric unit, which may be there for want of a unit."""
        reason = "Metric lengths are not written with fractions."
        if not spelled:
            reason = "Without a unit these are millimeters, which are not written with fractions."
        remedy = "Write a decimal, or name the inches, like 48 1/16 in."
        return self.refusal(reason, fraction, remedy)

    def hold_to_tape(self, fraction: Sign) -> None:
        """Refuse a fraction that is not read off a tape in inches."""
        if fraction.denominator not in _TAPE_DENOMINATORS:
            raise self.refusal(
                "No tape is divided like this: fractions are halves to sixty-fourths.",
                fraction,
                "Correct the fraction, or write it alone with its unit, like 145/3 in.",
            )
        if fraction.value >= 1:
            raise self.refusal(
                "This fraction is not less than one: a space may be missing in it.",
                fraction,
                "Write a mixed number like 1 5/8, or 13/8 in with the unit spelled out.",
            )

    def inches(self, feet: _Amount) -> Length:
        """Take the inches after feet."""
        if feet.first.kind is not Kind.WHOLE or feet.fraction is not None:
            remedy = "Write the feet alone, or whole feet and then inches."
            raise self.refusal("Inches follow only whole feet.", self.next, remedy)
        if self.next.kind is Kind.DASH:
            self.take()
        if self.next.kind is Kind.FRACTION:
            fraction = self.text[self.next.start : self.next.end]
            remedy = f"Write {feet.value}'-0 {fraction}\" if there are none."
            raise self.refusal(
                "The whole inches between feet and fraction are missing.", self.next, remedy
            )
        amount = self.amount()
        length = self.measured(amount, self.inch_unit(), spelled=False)
        if amount.value >= INCHES_PER_FOOT:
            remedy = "Carry them into the feet, or write inches alone."
            raise self.refusal("Inches after feet are less than 12.", amount.first, remedy)
        return length

    def inch_unit(self) -> Unit:
        """Take the unit of the inches after feet, written or not."""
        at = self.next
        unit, _ = self.unit(Unit.INCH)
        if unit is not Unit.INCH:
            remedy = "Write inches here, or a length in one unit."
            raise self.refusal("Only inches follow feet.", at, remedy)
        return unit

    def end(self) -> None:
        """Refuse whatever is left."""
        remedy = "Write one length: one unit, or feet and then inches."
        match self.next.kind:
            case Kind.END:
                return
            case Kind.UNIT:
                reason = "A second unit has no place here."
            case Kind.MINUS | Kind.DASH:
                reason = "This dash could be a minus, and nothing is subtracted here."
            case _:
                reason = "A second number has no place here."
        raise self.refusal(reason, self.next, remedy)


def _negative(position: int, text: str) -> LengthTextError:
    remedy = "Write it without the minus."
    return LengthTextError("The length is negative.", position, text, remedy)


def _too_large(units: Units, position: int, text: str) -> LengthTextError:
    reason = f"A length of {LARGEST} {units} or more is not read."
    remedy = "Look for a digit too many, or a wrong unit."
    return LengthTextError(reason, position, text, remedy)


def _shown(value: int | Decimal) -> str:
    """Write a number from outside, but not at a length that takes time."""
    if isinstance(value, int) and abs(value) >= 10**MOST_CHARACTERS:
        return f"a whole number of {value.bit_length()} bits"
    return str(value)[:MOST_CHARACTERS]
