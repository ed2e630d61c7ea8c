"""Laws of choosing: nothing beaten is ever told, and ranks beat each other as values do."""

import json
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from itertools import pairwise
from pathlib import Path
from random import Random
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.choosing.criteria import key_of
from lacunar.choosing.fronts import beats, layers, ranked, unbeaten
from lacunar.choosing.records import Criterion, Judged
from lacunar.choosing.search import FoundOptions
from lacunar.model.choosing_limits import COMBINATIONS
from lacunar.model.faults import SpecRefused
from lacunar.workflow.options import begin_options
from tests.laws.random_specs import random_specs
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions

COUNT = 40
# Every such search has prices.
PRICED_EACH = 4
PRICES = json.loads(
    (Path(__file__).parents[2] / "examples" / "prices" / "invented.json").read_text("utf-8")
)

keys = st.lists(st.tuples(*[st.integers(0, 4)] * 3), min_size=1, max_size=30)


def random_choices(random: Random) -> dict[str, Any]:
    """Limits such as might be sent, narrow enough for the search to be short."""
    said: dict[str, Any] = {
        "most_laid_out": random.randint(2, 6),
        "smallest_opening": f"{random.randint(8, 20)} in",
        "largest_opening": f"{random.randint(90, 140)} in",
    }
    if random.random() < 0.4:
        said["walls"] = random.sample(["none", "half", "full"], 2)
    if random.random() < 0.3:
        said["through"] = ["crosswise", "lengthwise"]
    if random.random() < 0.5:
        said["length_coffers"] = {"most": random.randint(4, 9)}
    if random.random() < 0.5:
        said["weights"] = {name: random.randint(1, 5) for name in random.sample([*Criterion], 3)}
    return said


def random_prices(random: Random) -> dict[str, Any]:
    """A price list for all there is, half of the time without a few of its prices."""
    rows = list(PRICES["materials"])
    if random.random() < 0.5:
        rows = random.sample(rows, len(rows) - random.randint(1, 6))
    return {**PRICES, "materials": rows}


def _searched() -> Iterator[FoundOptions]:
    for number, spec in enumerate(random_specs(COUNT, 71)):
        spec.pop("measured_openings", None)
        random = Random(f"choices {number}")
        document = {"ceiling": spec, "choices": random_choices(random)}
        if number % PRICED_EACH == 0:
            document["prices"] = random_prices(random)
        try:
            begun = begin_options(json.dumps(document).encode())
            for _ in begun.steps():
                pass
        except SpecRefused:
            continue
        yield begun.search.found()


@cache
def searched() -> tuple[FoundOptions, ...]:
    """Searches in random rooms; enough of them find something, or the laws would hold for none."""
    found = tuple(_searched())
    assert len(found) > COUNT // 2
    assert any(len(each.found.options) > 1 for each in found)
    return found


def _beaten(one: tuple[Judged, ...], other: tuple[Judged, ...]) -> bool:
    """Whether the second is at least as good in everything and better in something, by hand."""
    better = False
    for mine, its in zip(one, other, strict=True):
        assert mine.criterion is its.criterion
        first: Any
        second: Any
        first, second = mine.figure.value, its.figure.value
        if mine.criterion is Criterion.HEADROOM:
            first, second = second, first
        if second > first:
            return False
        better = better or second < first
    return better


def test_no_option_is_beaten_by_another():
    for found in searched():
        options = found.found.options
        for one in options:
            assert not any(_beaten(one.judged, other.judged) for other in options)


def test_options_are_numbered_in_their_order_and_counted():
    for found in searched():
        told, counts = found.found.options, found.found.counts
        assert [option.number for option in told] == list(range(1, len(told) + 1))
        assert counts.worth_considering == len(told) == len(found.laid_out)
        assert counts.laid_out == counts.to_lay_out <= counts.combinations <= COMBINATIONS
        assert counts.passed_over == counts.combinations - counts.to_lay_out
        built = counts.laid_out - counts.cannot_be_built - counts.crown_too_long
        built -= counts.short_of_stock
        assert built - counts.short_of_headroom >= len(told) > 0


def test_what_is_told_of_an_option_is_what_its_layout_has():
    for found in searched():
        for option, laid in zip(found.found.options, found.laid_out, strict=True):
            sizes = [(each.length.value, each.width.value) for each in laid.layout.coffers]
            squareness = max(max(size) / min(size) for size in sizes)
            told = {each.criterion: each.figure.value for each in option.judged}
            assert told[Criterion.SQUARENESS] == squareness
            lowest = min(each.clear_height.value for each in laid.layout.headroom)
            assert told[Criterion.HEADROOM] <= lowest
            assert option.coffers == len(sizes)
            assert option.grid_id == laid.layout.grid_id


def test_costs_are_told_of_all_and_compared_where_all_lack_the_same():
    compared = 0
    for found in searched():
        options = found.found.options
        told = [option.cost for option in options if option.cost is not None]
        assert len(told) in (0, len(options))
        by_cost = {
            each.figure.value
            for option in options
            for each in option.judged
            if each.criterion is Criterion.COST
        }
        compared += bool(by_cost)
        if by_cost:
            assert by_cost == {cost.total.value for cost in told}
            assert len({cost.lacks for cost in told}) == 1
        for cost in told:
            assert cost.complete is (not cost.lacks)
    assert compared > 1


def test_every_figure_is_what_its_formula_says():
    figures = [figure for found in searched() for figure in figures_in(found.found)]
    assert len(figures) > COUNT * 10
    assert [each for figure in figures for each in contradictions(figure)] == []


def test_options_stand_by_score_or_by_their_criteria():
    for found in searched():
        options = found.found.options
        scores = [option.score.value for option in options if option.score is not None]
        assert len(scores) in (0, len(options))
        order = scores or [key_of(option.judged) for option in options]
        assert order == sorted(order)


@given(keys)
@settings(max_examples=200)
def test_the_unbeaten_are_those_that_nothing_beats(found):
    expected = [n for n, key in enumerate(found) if not any(beats(other, key) for other in found)]
    assert unbeaten(found) == expected


@given(keys)
@settings(max_examples=100)
def test_layers_part_everything_and_each_is_beaten_by_the_one_before(found):
    parts = list(layers(found))
    assert sorted(place for part in parts for place in part) == list(range(len(found)))
    for before, after in pairwise(parts):
        for place in after:
            assert any(beats(found[other], found[place]) for other in before)


@given(st.lists(st.tuples(st.fractions(0, 3), st.integers(0, 5)), min_size=1, max_size=20))
@settings(max_examples=100)
def test_ranks_beat_each_other_as_their_values_do(found):
    ranks = ranked(found)
    for one, first in zip(found, ranks, strict=True):
        for other, second in zip(found, ranks, strict=True):
            assert beats(one, other) is beats(first, second)


def test_the_squarest_of_all_is_always_laid_out():
    """Passing over never loses what is best in something that runs tell by themselves."""
    for number in range(8):
        random = Random(f"squarest {number}")
        sides = [Fraction(random.randint(8 * 12, 18 * 12)) for _ in range(2)]
        room = {"length": f"{sides[0]} in", "width": f"{sides[1]} in", "height": 108}
        document = {"ceiling": {"room": room}, "choices": {"most_laid_out": 3}}
        begun = begin_options(json.dumps(document).encode())
        for _ in begun.steps():
            pass
        found = begun.search.found().found.options[0]
        told = next(e.figure.value for e in found.judged if e.criterion is Criterion.SQUARENESS)
        assert told == min(_ratios(sides))


def _ratios(sides: list[Fraction]) -> Iterator[Fraction]:
    """Squareness of all combinations, by the closed forms, openings from 24 to 72 in."""
    for beam in (Fraction(5), Fraction(7), Fraction(35, 4)):
        openings = [
            [
                opening
                for less in (-1, 0, 1)
                for n in range(1, 12)
                if 24 <= (opening := (side - (n + less) * beam) / n) <= 72
            ]
            for side in sides
        ]
        for one in openings[0]:
            for other in openings[1]:
                yield max(one / other, other / one)
