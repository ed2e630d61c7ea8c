"""Options by what they cost: worked by hand, told as estimates tell it, compared where it can be.

Two by two coffers in 144 by 143 in, with nothing at the walls: openings are (144 - W) / 2 by
(143 - W) / 2. Beams W = 5 have bottoms of 1x4, beams W = 7 of 1x6; all else is alike. 139/138 is
squarer than 137/136, so that without prices nothing speaks for the wider beams.

Sides of 1x6 are two of 12 ft and four short ones, two of which come from 12 ft: 48 ft. Bottoms, and
the backing as well, are one of 12 ft and two short ones: 24 ft.
"""

import json
from decimal import Decimal
from fractions import Fraction

import pytest

from lacunar.choosing.records import Criterion
from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.option_words import explain_options, sheet_figures, why
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.faults import SpecRefused
from lacunar.workflow.estimate import prepare_estimate
from lacunar.workflow.options import begin_options
from tests.choosing.searching import room, value

SIXTEENTHS = Step.read("1/16", Units.INCH)
CEILING = {"room": room("144", "143")}
CHOICES = {
    "length_coffers": {"fewest": 2, "most": 2},
    "width_coffers": {"fewest": 2, "most": 2},
    "walls": ["none"],
    "beam_widths": ["5", "7"],
}
WIDE_BOARDS = {"of": "1x6", "per": "foot", "price": 2}
BACKING = {"kind": "section", "per": "foot", "price": "0.50"}
DEAR_NARROW = {
    "currency": "USD",
    "materials": [{"of": "1x4", "per": "foot", "price": 8}, WIDE_BOARDS, BACKING],
}
# 24 ft at 8, 48 ft at 2 and 24 ft at 0.50; 72 ft at 2 and 24 ft at 0.50.
NARROW, WIDE = Decimal("300.00"), Decimal("156.00")


def search(prices, stock=None, **choices):
    document = {"ceiling": CEILING, "choices": {**CHOICES, **choices}, "prices": prices}
    if stock is not None:
        document["stock"] = stock
    begun = begin_options(json.dumps(document).encode())
    for _ in begun.steps():
        pass
    return begun.search.found()


def widths(found):
    return [option.length.beam_width.value.inches for option in found.found.options]


def told(found):
    return {each.code: each.figures for each in found.found.not_searched}


def test_a_price_list_makes_another_option_worth_considering():
    found = search(DEAR_NARROW)
    assert widths(found) == [5, 7]
    first, second = found.found.options
    assert (value(first, Criterion.COST), value(second, Criterion.COST)) == (NARROW, WIDE)
    assert first.stands_out_by == (Criterion.SQUARENESS,)
    assert second.stands_out_by == (Criterion.COST,)
    assert (first.behind.criterion, first.behind.option) == (Criterion.COST, 2)
    assert first.behind.than.value == WIDE
    cheap_narrow = [{"of": "1x4", "per": "foot", "price": 1}, WIDE_BOARDS, BACKING]
    assert widths(search({**DEAR_NARROW, "materials": cheap_narrow})) == [5]


def test_cost_can_be_weighed():
    found = search(DEAR_NARROW, weights={"cost": 2, "squareness": 1})
    assert widths(found) == [7, 5]
    # The worst in squareness, the best in cost, which counts twice.
    scores = [each.score.value for each in found.found.options]
    assert scores == [Fraction(1, 3), Fraction(2, 3)]


def test_costs_that_leave_out_different_things_are_told_and_not_compared():
    """Only the narrow beams have 1x4, for which this list has no price."""
    found = search({"currency": "USD", "materials": [WIDE_BOARDS, BACKING]})
    assert widths(found) == [5]
    (only,) = found.found.options
    assert Criterion.COST not in {each.criterion for each in only.judged}
    assert (only.cost.total.value, only.cost.complete) == (Decimal("108.00"), False)
    assert "materials: 1x4" in only.cost.lacks
    assert told(found)["costs_not_compared"] == {"without_a_price": "materials: 1x4"}
    rows = {words: figure for words, figure, _ in sheet_figures(only, [only], SIXTEENTHS)}
    assert rows["Cost, USD, incomplete"] == "108.00"


def test_what_all_leave_out_alike_is_told_and_compared():
    found = search(DEAR_NARROW)
    assert "costs_not_compared" not in told(found)
    assert {option.cost.complete for option in found.found.options} == {False}
    assert len({option.cost.lacks for option in found.found.options}) == 1


def test_without_prices_the_answer_says_that_costs_are_not_told():
    begun = begin_options(json.dumps(CEILING).encode())
    assert "costs_not_told" in {each.code for each in begun.found().options.found.not_searched}


def test_nudges_tell_what_they_save_in_money():
    """1/16 in more, and the bottoms are ripped from 1x6, like the sides; less, and nothing changes.

    The backing is priced by the foot, however wide it is.
    """
    found = search(DEAR_NARROW, nudges_of=1)
    by_width = {each.wider.inches * 16: each for each in found.found.nudges.nudges if each.wider}
    assert by_width[1].money_saved == NARROW - WIDE
    assert by_width[-1].money_saved == 0
    assert (by_width[1].saves, by_width[-1].saves) == (True, False)
    (change,) = [e for e in by_width[1].changes if e.criterion is Criterion.COST]
    assert (change.before.value, change.after.value, change.better) == (NARROW, WIDE, True)
    saved = [each.money_saved for each in found.found.nudges.nudges if each.saves]
    assert saved == sorted(saved, reverse=True)
    text = explain_options(found.found, SIXTEENTHS)
    assert 'Beams 1/16" wider: USD 144.00 less; ' in text


def test_costs_in_sentences_and_on_sheets():
    found = search(DEAR_NARROW).found.options
    assert why(found[1], 2, SIXTEENTHS)[1] == "No other option costs as little."
    assert why(found[0], 2, SIXTEENTHS)[2] == "It costs USD 300.00, against USD 156.00 in option 2."
    rows = [(words, *more) for words, *more in sheet_figures(found[1], found, SIXTEENTHS)]
    assert ("Cost, USD, incomplete", "156.00", True) in rows


def test_the_estimate_of_an_option_sent_back_is_the_cost_told():
    prices = {
        **DEAR_NARROW,
        "labor": {"rate": 50, "work": [{"per": "joint", "of": ["cross"], "hours": "0.7"}]},
        "overhead": "0.1",
        "margin": "0.3",
        "tax": {"rate": "0.05"},
    }
    stock = {"lengths": [{"material": "1x6", "length": "8 ft"}], "kerf": "3/16"}
    found = search(prices, stock)
    for option, laid in zip(found.found.options, found.laid_out, strict=True):
        ceiling = ceiling_to_json(laid.resolution.ceiling)
        document = {"ceiling": ceiling, "prices": prices, "stock": stock}
        alone = prepare_estimate(json.dumps(document).encode()).base.estimate
        assert option.cost.total == alone.totals.total
        assert option.cost.labor == alone.totals.labor
        assert len(option.cost.lacks) == len(alone.unpriced) + len(alone.not_counted)


def paneled(sheet_length):
    """A search with panels in two pieces each, from sheets of that length."""
    sheet = {"material": "sheet 1/2 x 48 x 96 in", "length": sheet_length, "width": 48}
    document = {
        "ceiling": {**CEILING, "panel": {"kind": "sheet_goods"}},
        "choices": CHOICES,
        "prices": DEAR_NARROW,
        "stock": {"sheets": [sheet]},
    }
    return begin_options(json.dumps(document).encode())


def test_layouts_that_stock_is_too_short_for_are_left_out():
    """Panels lie 1/16 in clear in openings of 69 1/2 and 68 1/2 in: 69 in are enough for one."""
    begun = paneled(69)
    list(begun.steps())
    found = begun.search.found()
    assert (found.found.counts.short_of_stock, widths(found)) == (1, [7])
    begun = paneled(68)
    with pytest.raises(SpecRefused) as refused:
        list(begun.steps())
    assert {fault.pointer.split("/")[1] for fault in refused.value.faults} == {"stock"}
    assert begun.search.found().found.counts.short_of_stock == 2
