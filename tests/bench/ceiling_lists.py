"""Cutting lists of ceilings that are drawn at random: five priced lengths for each material."""

import json
import random
from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.buying.problems import problems as asked_of
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.cutting.problem import Problem, problems
from lacunar.takeoff.cutting.said import StockLengthSpec
from lacunar.workflow.take_off import prepare_take_off
from tests.bench.invented_lists import STOCK
from tests.laws.random_specs import random_specs

MOST_PIECES = 900
TRIM = Length.of_inches(1) / 4


@dataclass(frozen=True)
class CeilingList:
    """What is cut of one material for a ceiling or several."""

    name: str
    problem: Problem

    def shop(self):
        """The list as a shop of sticks."""
        (places,) = self.problem.choices()
        return self.problem.shop(places)


def lists_of(document, name):
    """The lists of each material of ceilings, each with the same five priced lengths."""
    pooled = prepare_take_off(json.dumps(document).encode())
    layouts = [each.layout for each in pooled.pool]
    usual = asked_of(layouts, pooled.taken.parts, StockSaid())
    names = [each.of.name for each in usual.materials if not each.of.is_sheet]
    said = StockSaid(
        end_trim=TRIM,
        lengths=tuple(
            StockLengthSpec(Length.of_inches(inches), None, material, price)
            for material in names
            for inches, price in STOCK
        ),
    )
    # A document holds sixty rows of stock; these are made without one.
    asked = asked_of(layouts, pooled.taken.parts, said)
    for problem in problems(asked.lengths) if asked.lengths else ():
        yield CeilingList(f"{name} {problem.material.name}", problem)


def buildable(seed, count):
    """Random specs of single rooms that can be laid out."""
    for number, spec in enumerate(random_specs(count, seed)):
        try:
            prepare_take_off(json.dumps(spec).encode())
        except SpecRefused:
            continue
        yield f"room {seed}:{number}", spec


def room_lists(seed, count=60):
    """The lists of single rooms, of up to 900 pieces each."""
    for name, spec in buildable(seed, count):
        for each in lists_of(spec, name):
            if sum(quantity for _, quantity in each.problem.kinds) <= MOST_PIECES:
                yield each


def house(seed, rooms):
    """A house whose rooms are all built of the same boards and crown, with sizes of their own."""
    chance = random.Random(seed)

    def run(sixteenths):
        coffers = max(2, round(sixteenths / 16 / chance.randrange(40, 70)))
        return {"coffers": coffers, "start": "half", "end": "half"}

    def room(number):
        length, width = chance.randrange(1920, 9600), chance.randrange(1728, 6400)
        return {
            "name": f"Room {number}",
            "room": {"length": length / 16, "width": width / 16, "height": 108},
            "beams": {
                "crosswise": {"sides": "1x8", "bottom": "1x6", "reveal": "1/4"},
                "lengthwise": "same",
            },
            "grid": {"length": run(length), "width": run(width)},
            "crown": {"face": "3 1/4", "spring_from_wall": 38},
            "panel": {"kind": "boards", "board": "1x6", "parallel_to": "length"},
        }

    return {"ceilings": [room(number) for number in range(1, rooms + 1)]}


def house_lists(seed, rooms=(4, 8, 16, 30)):
    """The lists of houses of so many rooms."""
    for number in rooms:
        yield from lists_of(house(seed * 100 + number, number), f"house {seed} of {number}")
