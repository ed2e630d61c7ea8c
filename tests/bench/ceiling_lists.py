"""Cutting lists of ceilings that are drawn at random: five priced lengths for each material."""

import json
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
    asked = asked_of(layouts, pooled.taken.parts, said)
    for problem in problems(asked.lengths) if asked.lengths else ():
        yield CeilingList(f"{name} {problem.material.name}", problem)


def room_lists(seed, count):
    """The lists of so many single rooms, of up to 900 pieces each; which rooms were refused."""
    for number, spec in enumerate(random_specs(count, seed)):
        try:
            yield from (
                each
                for each in lists_of(spec, f"room {seed}:{number}")
                if sum(quantity for _, quantity in each.problem.kinds) <= MOST_PIECES
            )
        except SpecRefused:
            continue


def pooled_lists(seed, count, rooms=6):
    """The lists of so many jobs of several rooms."""
    kept = []
    for spec in random_specs(count * rooms * 2, seed + 1000):
        try:
            prepare_take_off(json.dumps(spec).encode())
        except SpecRefused:
            continue
        kept.append(spec)
    for number in range(count):
        some = kept[number * rooms : (number + 1) * rooms]
        yield from lists_of({"ceilings": some}, f"job {seed}:{number}")
