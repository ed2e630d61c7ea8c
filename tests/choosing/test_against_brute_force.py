"""The search against every layout of fifty small rooms, judged one by one without it."""

from fractions import Fraction
from random import Random

import pytest

from lacunar.model.choosing_limits import LAID_OUT
from tests.choosing.brute_force import Trial, figures, trials, unbeaten
from tests.choosing.searching import options, room

ROOMS = 50
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
