"""Lengths and packs that are usual where nobody said what is sold."""

from collections.abc import Mapping
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.takeoff.buying.said import PackSize, PackUnit
from lacunar.takeoff.quantities.quantity_records import QuantityKind

# Yards keep lumber, mouldings and boards by the two feet, or by 600 mm; nails come by the thousand,
# screws and anchors by the hundred, adhesive by the cartridge, paint by the gallon or 2.5 L
# (common practice, no source).
REASON = "usual lengths; common practice, no source"
PACK_REASON = "common practice, no source"

_LENGTHS: Mapping[Units, tuple[Length, ...]] = {
    Units.INCH: tuple(Length.of_feet(feet) for feet in (8, 10, 12, 14, 16)),
    Units.MILLIMETER: tuple(Length.of_millimeters(size) for size in (2400, 3000, 3600, 4200, 4800)),
}

_CANS = {
    Units.INCH: PackSize(Fraction(1), PackUnit.GALLON),
    Units.MILLIMETER: PackSize(Fraction(5, 2), PackUnit.LITER),
}
_AREA = {
    Units.INCH: PackSize(Fraction(1), PackUnit.SQUARE_FOOT),
    Units.MILLIMETER: PackSize(Fraction(1), PackUnit.SQUARE_METER),
}
FINISH_NAILS = PackSize(Fraction(1000), PackUnit.COUNT)
OTHER_FASTENERS = PackSize(Fraction(100), PackUnit.COUNT)
_CARTRIDGE = PackSize(Fraction(1), PackUnit.CARTRIDGE)


def usual_lengths(longest: Length, units: Units) -> tuple[Length, ...]:
    """The usual lengths up to the longest that a ceiling's boards may be, and that one.

    >>> [length.inches / 12 for length in usual_lengths(Length.of_feet(13), Units.INCH)]
    [Fraction(8, 1), Fraction(10, 1), Fraction(12, 1), Fraction(13, 1)]
    """
    return (*(each for each in _LENGTHS[units] if each < longest), longest)


def usual_pack(kind: QuantityKind, *, finish_nail: bool, units: Units) -> PackSize:
    """In what something is sold that is counted, spread or poured."""
    if kind is QuantityKind.FASTENERS:
        return FINISH_NAILS if finish_nail else OTHER_FASTENERS
    if kind is QuantityKind.ADHESIVE:
        return _CARTRIDGE
    return _AREA[units] if kind is QuantityKind.INSULATION else _CANS[units]
