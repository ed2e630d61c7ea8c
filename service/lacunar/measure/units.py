"""The two units a ceiling can be laid out in, with their exact ratio."""

from enum import StrEnum
from fractions import Fraction

# The international inch: NIST SP 811, appendix B (from memory).
MILLIMETERS_PER_INCH = Fraction(254, 10)
INCHES_PER_FOOT = 12


class Units(StrEnum):
    """What a number without a unit counts, and what figures are written in.

    >>> Units("mm").inches_each
    Fraction(5, 127)
    """

    INCH = "in"
    MILLIMETER = "mm"

    @property
    def inches_each(self) -> Fraction:
        """How many inches one of this unit is, exactly."""
        return Fraction(1) if self is Units.INCH else 1 / MILLIMETERS_PER_INCH
