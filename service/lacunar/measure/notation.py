"""Lengths read from text as people write them, and from bare numbers."""

import re
from decimal import Decimal
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import Units


class LengthTextError(ValueError):
    """A text or number that is no length, or could be more than one.

    `reason` and `remedy` are plain sentences; `position` is the index in `text` of the character
    where reading stopped.
    """

    def __init__(self, reason: str, position: int, text: str, remedy: str) -> None:
        super().__init__(f"{reason} {remedy}")
        self.reason = reason
        self.position = position
        self.text = text
        self.remedy = remedy


def read_length(text: str, units: Units, *, signed: bool = False) -> Length:
    """Turn text into a length (first cut: plain numbers, mixed numbers and fractions)."""
    found = re.fullmatch(r"(?:([0-9]+(?:\.[0-9]+)?) ?)??([0-9]+/[0-9]+)? ?(in|mm|\")?", text)
    if not found or not (found[1] or found[2]):
        raise LengthTextError("This is no length.", 0, text, "Write it like 48 1/16.")
    amount = Fraction(found[1] or 0) + Fraction(found[2] or 0)
    unit = Units(found[3].replace('"', "in")) if found[3] else units
    return Length(amount * unit.inches_each)


def read_number(value: int | Decimal, units: Units, *, signed: bool = False) -> Length:
    """Turn a bare number of `units` into a length."""
    return Length(Fraction(value) * units.inches_each)
