"""Where a strip that is longer than its paper is parted into pieces.

Each piece starts at a round distance from the strip's own start, printed there, so that an error in
putting one to the next goes no further: every piece can be held to the tape by itself.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units

OVERLAP = {Units.INCH: Length.of_inches(1), Units.MILLIMETER: Length.of_millimeters(25)}
"""How much two pieces have in common."""
STEP = {Units.INCH: Length.of_inches(Fraction(1, 2)), Units.MILLIMETER: Length.of_millimeters(10)}
"""Pieces start at whole numbers of it."""
CLEAR = Length.of_inches(Fraction(1, 4))
"""No line stands nearer to the edges of what two pieces have in common (common practice)."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a strip, from its start; `number` of `count`."""

    start: Length
    end: Length
    number: int
    count: int


def pieces_of(
    length: Length, lines: Sequence[Length], longest: Length, units: Units
) -> tuple[Piece, ...]:
    """A strip in as few pieces as its lines allow, each at most `longest`.

    Parameters: `length` of the strip; `lines`, where along it lines stand that no seam may touch.

    >>> twenty_feet, sheet = Length.of_feet(20), Length.of_feet(8)
    >>> [p.start.inches for p in pieces_of(twenty_feet, [], sheet, Units.INCH)]
    [Fraction(0, 1), Fraction(95, 1), Fraction(190, 1)]
    """
    stretches = list(_stretches(length, lines, longest, units))
    return tuple(
        Piece(start, end, number, len(stretches))
        for number, (start, end) in enumerate(stretches, start=1)
    )


def _stretches(
    length: Length, lines: Sequence[Length], longest: Length, units: Units
) -> Iterator[tuple[Length, Length]]:
    start = ZERO
    while start + longest < length:
        end = _end(start, lines, longest, units)
        yield start, end
        start = end - OVERLAP[units]
    yield start, length


def _end(start: Length, lines: Sequence[Length], longest: Length, units: Units) -> Length:
    """The farthest end of a piece whose seam is clear of lines; the farthest, if none is."""
    step, overlap = STEP[units], OVERLAP[units]
    # The seam starts at a whole number of steps, for that is where the next piece starts.
    farthest = step * ((start + longest - overlap) // step)
    seam = farthest
    while seam > start:
        if not any(seam - CLEAR < line < seam + overlap + CLEAR for line in lines):
            return seam + overlap
        seam -= step
    return farthest + overlap
