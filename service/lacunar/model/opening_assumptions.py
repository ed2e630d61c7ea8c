"""Decides what a spec leaves open about measured openings."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.moulding import Crown, CrownMethod
from lacunar.model.openings import MeasuredCoffer, Openings, OpeningsSpec, OutOfSquare


@dataclass(frozen=True, slots=True)
class OpeningDefaults:
    """One unit system's figures for measured openings."""

    out_of_square_limit: Length
    closing_limit: Length
    difference_limit: Length


# All common practice, no source: what trim and caulk hide at the end of a side, what a tape that is
# read with care may be off over six measurements, and more than beams are set wrong by.
_DEFAULTS: Mapping[Units, OpeningDefaults] = {
    Units.INCH: OpeningDefaults(
        out_of_square_limit=Length.of_inches(Fraction(1, 8)),
        closing_limit=Length.of_inches(Fraction(1, 8)),
        difference_limit=Length.of_inches(Fraction(1, 4)),
    ),
    Units.MILLIMETER: OpeningDefaults(
        out_of_square_limit=Length.of_millimeters(3),
        closing_limit=Length.of_millimeters(3),
        difference_limit=Length.of_millimeters(6),
    ),
}

SQUARE_FRAME_HIDES = {units: each.out_of_square_limit for units, each in _DEFAULTS.items()}
"""From where a square frame no longer hides what a coffer is out of square by."""
COPE_CLOSES = "a cope closes at any corner, and needs no saw set anew for each"

_REASONS = {
    "out_of_square_limit": "what a square frame can be out and still be caulked",
    "closing_limit": "what careful readings of a tape may be off together",
    "difference_limit": "more than this is rather a slip than how the beams were set",
}


def decide_openings(
    openings: OpeningsSpec | None, crown: Crown | None, units: Units, assuming: Assuming
) -> Openings | None:
    """Turn measured openings as told into ones with their limits; none where none are told.

    How crown goes into a coffer out of square is assumed aloud where frames are asked for, and
    silently where it is coped anyway or there is none.

    Raises ValueError for a spec that has not passed the rules.
    """
    if openings is None:
        return None
    if openings.grid is None or openings.coffers is None:
        raise ValueError("measured openings are open: the spec has not passed the rules")
    framed = crown is not None and crown.method is CrownMethod.BENCH_FRAME
    usual = _DEFAULTS[units]
    limits = {
        name: assuming.settle(
            getattr(openings, name), f"/measured_openings/{name}", getattr(usual, name), reason
        )
        for name, reason in _REASONS.items()
    }
    return Openings(
        grid=openings.grid,
        coffers=tuple(
            MeasuredCoffer(
                each.coffer or "",
                each.sides,
                each.rising,
                each.falling,
                each.cut_sides,
                each.cut_diagonals,
            )
            for each in openings.coffers
        ),
        out_of_square=(assuming if framed else Assuming()).settle(
            openings.out_of_square,
            "/measured_openings/out_of_square",
            OutOfSquare.COPED_IN_PLACE,
            COPE_CLOSES,
        ),
        **limits,
    )
