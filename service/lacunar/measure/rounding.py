"""Rounding to the steps a tape or rule is marked in: once, as running positions from the datum."""

from dataclasses import dataclass
from fractions import Fraction
from math import floor

from lacunar.measure.length import Length
from lacunar.measure.notation import LengthTextError, read_length
from lacunar.measure.units import Units

_HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Step:
    """A marking step: its exact size, the text it goes by, and the units it belongs to.

    Only those in `STEPS` are marked to.
    """

    size: Length
    text: str
    units: Units

    @staticmethod
    def read(text: str, units: Units) -> "Step":
        """Turn text such as `1/16` into the step of that size.

        A number without a unit is in `units`, and the step must be one of these units: a sheet in
        millimeters is not marked in sixteenths. Raises LengthTextError.

        >>> Step.read("1/16", Units.INCH) is STEPS[1]
        True
        >>> Step.read("0.5", Units.MILLIMETER).text
        '0.5 mm'
        """
        choices = steps_of(units)
        remedy = f"Write one of {', '.join(step.text for step in choices)}."
        try:
            size = read_length(text, units)
        except LengthTextError as error:
            raise LengthTextError(error.reason, error.position, text, remedy) from None
        for step in choices:
            if step.size == size:
                return step
        raise LengthTextError("No marks are made to this step.", 0, text, remedy)


# Coarsest first in each unit system: what common tapes and steel rules are divided into (common
# practice, no source).
STEPS = (
    *(
        Step(Length.of_inches(Fraction(1, parts)), f"1/{parts}", Units.INCH)
        for parts in (8, 16, 32, 64)
    ),
    Step(Length.of_millimeters(1), "1 mm", Units.MILLIMETER),
    Step(Length.of_millimeters(_HALF), "0.5 mm", Units.MILLIMETER),
)


def steps_of(units: Units) -> tuple[Step, ...]:
    """Return the steps of one unit system, the coarsest first.

    >>> [step.text for step in steps_of(Units.MILLIMETER)]
    ['1 mm', '0.5 mm']
    """
    return tuple(step for step in STEPS if step.units is units)


def ticks(length: Length, step: Step) -> int:
    """Return the number of whole steps next to a length; a tie goes away from zero.

    Zero is the datum, so a position half a step out is marked the step further from it, the same to
    either side: n = sign(L) * floor(|L| / step + 1/2).

    >>> ticks(Length.of_inches(Fraction(5, 32)), Step.read("1/16", Units.INCH))
    3
    """
    count = floor(abs(length) / step.size + _HALF)
    return count if length.inches >= 0 else -count


def round_to(length: Length, step: Step) -> Length:
    """Turn a length into the multiple of the step next to it; a tie goes away from zero.

    >>> round_to(Length.of_inches(Fraction(-5, 32)), Step.read("1/16", Units.INCH))
    Length(-3/16 in)
    """
    return step.size * ticks(length, step)


def is_whole(length: Length, step: Step) -> bool:
    """Tell whether a length is a whole number of steps, so that marking it changes nothing.

    >>> is_whole(Length.of_inches(Fraction(11, 2)), Step.read("1/8", Units.INCH))
    True
    """
    return (length / step.size).denominator == 1


def finest_step_holding(length: Length, units: Units) -> Step | None:
    """Return the coarsest step of a unit system that a length is a whole number of.

    None where even the finest does not hold it: such a step is then as fine as needed, no finer.

    >>> finest_step_holding(Length.of_inches(Fraction(43, 32)), Units.INCH).text
    '1/32'
    """
    return next((step for step in steps_of(units) if is_whole(length, step)), None)
