"""Shifts casings on their members so that the openings of a run come out as equal as they can."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length

SHIFT_TO_SHARE = Rule(
    "shift that gives both sides of the beam openings of one size",
    "clear_between * shares_before / shares_between - centered_clear",
)
SHIFT_TO_END = Rule("shift by all the play there is, away from the datum", "limit")
SHIFT_TO_START = Rule("shift by all the play there is, towards the datum", "-limit")


@dataclass(frozen=True, slots=True)
class Play:
    """A fixed beam between two zones, seen from the start of its run.

    `clear` is the clear total of all zones before it while it is centered, `shares` the sum of
    their weights, `limit` how far it may be shifted either way.
    """

    clear: Length
    shares: Fraction
    limit: Length


@dataclass(frozen=True, slots=True)
class _Knot:
    """Where the line of clear total over shares is known to pass."""

    index: int
    clear: Length


def shifts_to_equal(plays: Sequence[Play], end: Play) -> tuple[LengthFigure, ...]:
    """Turn the play of a run's fixed beams into the shift of each, away from the datum.

    Parameters: `plays` in order from the datum; `end`, the same for the end of the run.

    The clear total up to a point, over the shares up to it, is a line whose slope is the opening.
    Its ends are given and each fixed beam is a gate it must pass. The tautest such line has, of all
    that pass, the smallest largest opening, the largest smallest opening and the least sum of
    squares, all at once; with one beam it is the shift to equal openings, cut off at the limit.
    Source: the taut string (shortest path through gates), a standard result of convex optimization;
    from memory.

    >>> inch = Length.of_inches
    >>> play = Play(inch(70), Fraction(2), inch(3))
    >>> [shift.value for shift in shifts_to_equal([play], Play(inch(144), Fraction(4), inch(0)))]
    [Length(2 in)]
    """
    gates = [Play(ZERO, Fraction(0), ZERO), *plays, end]
    knots = [_Knot(0, ZERO)]
    while knots[-1].index < len(gates) - 1:
        knots.append(_next_knot(gates, knots[-1]))
    shifts: list[LengthFigure] = []
    for before, after in pairwise(knots):
        passed = range(before.index + 1, after.index)
        shifts += [_shift(gates, index, before, after) for index in passed]
        shifts.append(_shift_at_knot(gates[after.index], after))
    return tuple(shifts[:-1])


def _next_knot(gates: Sequence[Play], at: _Knot) -> _Knot:
    """Follow the straight line from a knot as far as gates let it; return where it must bend."""
    start = gates[at.index].shares
    lowest = highest = _Knot(at.index, at.clear)
    least: Length | None = None
    most: Length | None = None
    for index in range(at.index + 1, len(gates)):
        gate = gates[index]
        shares = gate.shares - start
        low = (gate.clear - gate.limit - at.clear) / shares
        high = (gate.clear + gate.limit - at.clear) / shares
        if most is not None and low > most:
            return highest
        if least is not None and high < least:
            return lowest
        if least is None or low >= least:
            least, lowest = low, _Knot(index, gate.clear - gate.limit)
        if most is None or high <= most:
            most, highest = high, _Knot(index, gate.clear + gate.limit)
    return _Knot(len(gates) - 1, gates[-1].clear)


def _shift(gates: Sequence[Play], index: int, before: _Knot, after: _Knot) -> LengthFigure:
    """The shift of a beam that the line passes without a bend."""
    shares = gates[index].shares - gates[before.index].shares
    shares_between = gates[after.index].shares - gates[before.index].shares
    clear_between = after.clear - before.clear
    centered = gates[index].clear - before.clear
    return SHIFT_TO_SHARE.gives(
        clear_between * shares / shares_between - centered,
        clear_between=clear_between,
        shares_before=shares,
        shares_between=shares_between,
        centered_clear=centered,
    )


def _shift_at_knot(gate: Play, knot: _Knot) -> LengthFigure:
    if knot.clear >= gate.clear:
        return SHIFT_TO_END.gives(gate.limit, limit=gate.limit)
    return SHIFT_TO_START.gives(-gate.limit, limit=gate.limit)
