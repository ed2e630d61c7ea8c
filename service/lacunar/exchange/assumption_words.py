"""What was assumed, as a line for a terminal."""

from lacunar.exchange.length_json import length_in_words
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.ceiling import Assumption


def assumption_line(assumption: Assumption, units: Units) -> str:
    """Turn an assumption into its place, what was taken, and why.

    >>> made = Assumption("/stock/kerf", Length.of_millimeters(3), "a usual saw blade")
    >>> assumption_line(made, Units.MILLIMETER)
    '/stock/kerf: 3 mm, a usual saw blade'
    """
    value = assumption.value
    told = length_in_words(value, units) if isinstance(value, Length) else str(value)
    return f"{assumption.pointer}: {told}, {assumption.reason}"
