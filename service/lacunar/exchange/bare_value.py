"""One value by itself, as text for a cell: no unit, no name, no line break."""

from lacunar.exchange.length_json import DECIMALS
from lacunar.exchange.query_schema import NumberForm
from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.writing import LengthStyle, decimal_text, write_length


def bare_angle(angle: Angle, form: NumberForm) -> str:
    """Turn an angle into a number of degrees: to 6 decimals, or to a tenth as a saw is set.

    >>> [bare_angle(Angle.of_degrees(190) / 6, form) for form in NumberForm]
    ['31.666667', '31.7']
    """
    return decimal_text(angle.degrees, DECIMALS if form is NumberForm.DECIMAL else 1)


def bare_length(length: Length, step: Step, form: NumberForm) -> str:
    """Turn a length into a number in the units of `step`.

    As decimals, exact to 6 places; as a fraction, rounded to `step` as a tape is read (millimeters
    have no fractions, so these stay decimal).

    >>> from lacunar.measure.units import Units
    >>> step = Step.read("1/16", Units.INCH)
    >>> third = Length.of_inches(145) / 3
    >>> [bare_length(third, step, form) for form in NumberForm]
    ['48.333333', '48 5/16']
    """
    if form is NumberForm.DECIMAL:
        return decimal_text(length.inches / step.units.inches_each, DECIMALS)
    return write_length(length, LengthStyle(step.units, step, feet_from=None)).rstrip('"')
