"""The search against every layout of fifty small rooms, judged one by one without it."""

import json
from fractions import Fraction
from pathlib import Path
from random import Random

import pytest

from lacunar.model.choosing_limits import LAID_OUT
from tests.choosing.brute_force import Trial, cost, figures, trials, unbeaten
from tests.choosing.searching import options, room

ROOMS = 50
# One with each kind of walls: an estimate of every layout takes a tenth of a second.
PRICED = (0, 4, 14)
PRICES = json.loads(
    (Path(__file__).parents[2] / "examples" / "prices" / "invented.json").read_text("utf-8")
)
CEILING = {"crown": {"face": "3 1/4"}}
WALLS = (["half"], ["none"], ["full", "none"])


def small_room(number):
    """Sides of 6 to 9 ft in quarter inches, with few enough ways to lay it out."""
    random = Random(f"small room {number}")
    sides = tuple(Fraction(random.randint(24 * 12, 36 * 12), 4) for _ in range(2))
    walls = WALLS[number % len(WALLS)]
    beams = [Fraction(5)] if len(walls) > 1 else [Fraction(5), Fraction(random.randint(21, 28), 4)]
    return sides, walls, beams


def as_trial(option):
    length, width = option.length, option.width
    return Trial(
        length.coffers, width.coffers, length.start, width.start, length.beam_width.value.inches
    )


@pytest.mark.parametrize("number", range(ROOMS))
def test_nothing_else_is_worth_considering(number):
    sides, walls, beams = small_room(number)
    ceiling = {**CEILING, "room": room(*(f"{side} in" for side in sides))}
    everything = trials(sides, walls, beams)
    assert 1 < len(everything) <= LAID_OUT
    keys = {trial: figures(trial, sides, ceiling) for trial in everything}
    found = options(
        ceiling,
        walls=walls,
        beam_widths=[f"{beam} in" for beam in beams],
        most_laid_out=LAID_OUT,
    )
    assert {as_trial(option) for option in found} == unbeaten(keys)


def test_with_prices_nothing_else_is_worth_considering():
    """Costs are those of estimates, one for each layout; comparing them is done without the search.

    In one of these rooms at least, cost must let something through that is beaten without it.
    """
    let_through = 0
    for number in PRICED:
        sides, walls, beams = small_room(number)
        ceiling = {**CEILING, "room": room(*(f"{side} in" for side in sides))}
        everything = trials(sides, walls, beams)
        plain = {trial: figures(trial, sides, ceiling) for trial in everything}
        priced = {trial: (*key, cost(trial, ceiling, PRICES)) for trial, key in plain.items()}
        found = options(
            ceiling,
            prices=PRICES,
            walls=walls,
            beam_widths=[f"{beam} in" for beam in beams],
            most_laid_out=LAID_OUT,
        )
        assert {as_trial(option) for option in found} == unbeaten(priced)
        let_through += len(unbeaten(priced)) - len(unbeaten(plain))
    assert let_through > 0
