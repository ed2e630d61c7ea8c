"""Every layout of a small room, one by one, judged without the code that chooses.

Sizes come from the closed forms by hand: with span S, n coffers and beams W wide, openings are
(S - (n - 1) W) / n between bare walls, S / n - W between half beams and (S - (n + 1) W) / n between
full ones. Crossings are (m - 1)(n - 1) within, 2 (m - 1) + 2 (n - 1) where beams end at walls, and
the four corners where wall beams meet or end (common practice, no source: counted off a plan).
Only the number of boards is read off a layout, from its list of pieces, and costs off estimates.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from itertools import product
from typing import Any

from lacunar.layout.records import Layout
from lacunar.workflow.estimate import prepare_estimate
from lacunar.workflow.prepare import prepare

STICK, KERF = Fraction(192), Fraction(1, 8)
# A saw cut at 45 degrees, rounded up to 1/64 in: sqrt(2) / 8 is between 11/64 and 12/64.
MITER_CUT = Fraction(12, 64)
FIT = Fraction(1, 16)


@dataclass(frozen=True)
class Trial:
    """One layout to be tried: counts, what stands at both walls of each run, beams' width."""

    columns: int
    rows: int
    length_walls: str
    width_walls: str
    beam: Fraction


def opening(span: Fraction, coffers: int, beam: Fraction, walls: str) -> Fraction:
    beams = {"none": coffers - 1, "half": coffers, "full": coffers + 1}[walls]
    return (span - beams * beam) / coffers


def trials(
    sides: tuple[Fraction, Fraction], walls: list[str], beams: list[Fraction]
) -> list[Trial]:
    """Every combination whose openings lie between 24 and 72 in."""

    def counts(span: Fraction, beam: Fraction, at_walls: str) -> Iterator[int]:
        for count in range(1, 20):
            if 24 <= opening(span, count, beam, at_walls) <= 72:
                yield count

    length, width = sides
    return [
        Trial(columns, rows, first, second, beam)
        for beam, first, second in product(beams, walls, walls)
        for columns in counts(length, beam, first)
        for rows in counts(width, beam, second)
    ]


def figures(
    trial: Trial, sides: tuple[Fraction, Fraction], ceiling: dict[str, Any]
) -> tuple[Any, ...]:
    """Squareness, joints, cuts, crown left over and depth below the ceiling; less is better."""
    along = opening(sides[0], trial.columns, trial.beam, trial.length_walls)
    up = opening(sides[1], trial.rows, trial.beam, trial.width_walls)
    coffers = trial.columns * trial.rows
    layout = laid_out(trial, ceiling)
    boards = sum(piece.quantity for piece in layout.pieces)
    within = (trial.columns - 1) * (trial.rows - 1)
    ends = 2 * (trial.columns - 1) + 2 * (trial.rows - 1)
    corners = 0 if trial.length_walls == trial.width_walls == "none" else 4
    bought = STICK * fewest_sticks(along - FIT, up - FIT, 2 * coffers)
    used = 2 * coffers * (along + up - 2 * FIT)
    drop = max(profile.drop.value.inches for profile in layout.profiles)
    return (
        max(along / up, up / along),
        within + ends + corners + 4 * coffers,
        2 * (boards + 4 * coffers),
        bought - used,
        drop,
    )


def fewest_sticks(one: Fraction, other: Fraction, each: int) -> int:
    """How many sticks so many pieces of two lengths take, by trying all ways to share them."""
    if one == other:
        held = (STICK + MITER_CUT) // (one + MITER_CUT)
        return -(-2 * each // int(held))
    room = STICK + MITER_CUT
    patterns = [
        (a, int((room - a * (one + MITER_CUT)) // (other + MITER_CUT)))
        for a in range(int(room // (one + MITER_CUT)) + 1)
    ]

    @cache
    def least(first: int, second: int) -> int:
        if first <= 0 and second <= 0:
            return 0
        tried = [
            1 + least(max(0, first - a), max(0, second - b))
            for a, b in patterns
            if (a and first) or (b and second)
        ]
        return min(tried)

    return least(each, each)


def laid_out(trial: Trial, ceiling: dict[str, Any]) -> Layout:
    """A trial laid out as a caller would ask for it."""
    return prepare(json.dumps(asked(trial, ceiling)).encode()).layout


def cost(trial: Trial, ceiling: dict[str, Any], prices: dict[str, Any]) -> Decimal:
    """What an estimate of a trial comes to; the list must have a price for everything."""
    document = {"ceiling": asked(trial, ceiling), "prices": prices}
    found = prepare_estimate(json.dumps(document).encode()).base.estimate
    assert not found.unpriced
    return found.totals.total.value


def asked(trial: Trial, ceiling: dict[str, Any]) -> dict[str, Any]:
    """The ceiling with all that a trial chooses."""
    walls = {"start": trial.length_walls, "end": trial.length_walls}
    others = {"start": trial.width_walls, "end": trial.width_walls}
    return {
        **ceiling,
        "beams": {"crosswise": {"width": f"{trial.beam} in"}},
        "grid": {
            "length": {"coffers": trial.columns, **walls},
            "width": {"coffers": trial.rows, **others},
        },
    }


def unbeaten(keys: dict[Trial, tuple[Any, ...]]) -> set[Trial]:
    """Those for which no other one is at least as good in everything and better in something."""
    return {
        trial
        for trial, key in keys.items()
        if not any(
            all(a <= b for a, b in zip(other, key, strict=True)) and other != key
            for other in keys.values()
        )
    }
