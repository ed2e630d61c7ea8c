"""Runs `estimate_cases.toml`: each estimate, and held against money worked by hand."""

import json
import tomllib
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from lacunar.exchange.estimate_json import PreparedEstimate
from lacunar.takeoff.estimate.estimate_records import EstimateSection, Totals
from lacunar.workflow.estimate import prepare_estimate

CASES = tomllib.loads(Path(__file__).with_name("estimate_cases.toml").read_text("utf-8"))["case"]

Case = dict[str, Any]


def estimated(case: Case) -> PreparedEstimate:
    return prepare_estimate(json.dumps(case["document"]).encode())


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_an_estimate_worked_by_hand(case: Case):
    made = estimated(case)
    base = made.base.estimate
    lines = [
        [line.section.value, line.name, str(line.quantity.value), line.per.value, line.amount.value]
        for line in base.lines
    ]
    assert lines == [[*rest, Decimal(amount)] for *rest, amount in case["lines"]]
    for name, amount in case["totals"].items():
        assert getattr(base.totals, name).value == Fraction(amount), name
    assert base.totals.complete is case["complete"]
    assert [each.name for each in base.unpriced] == case.get("unpriced", [])
    told = case.get("alternates", [])
    assert len(made.alternates) == len(told)
    for alternate, expected in zip(made.alternates, told, strict=True):
        _holds(alternate, expected)


def _holds(alternate: Any, expected: Case) -> None:
    compared = alternate.compared
    assert alternate.name == expected["name"]
    found = {
        (line.name, str(line.base or ""), str(line.alternate or "")) for line in compared.lines
    }
    assert found == {tuple(line) for line in expected["lines"]}
    assert compared.total == Decimal(expected["total"])
    assert {line.section for line in compared.lines} == {EstimateSection.LABOR}


# A home builder's page tabulates the markup that comes to each margin, both in percent:
PUBLISHED_PAIRS = [
    ("5", "5.26"),
    ("10", "11.11"),
    ("15", "17.65"),
    ("20", "25.00"),
    ("25", "33.33"),
    ("30", "42.86"),
    ("35", "53.85"),
    ("40", "66.67"),
    ("45", "81.82"),
    ("50", "100.00"),
]


@pytest.mark.parametrize(("margin", "markup"), PUBLISHED_PAIRS)
def test_a_margin_and_its_published_markup_give_one_price(margin: str, markup: str):
    share = Fraction(margin) / 100
    exact = share / (1 - share)
    assert round(exact * 100, 2) == Fraction(markup)
    by_margin = _at_200000(margin=share)
    by_markup = _at_200000(markup=exact)
    assert by_margin.selling_price.value == by_markup.selling_price.value
    # What is earned is that share of the price, to the half cent of either amount.
    earned = Fraction(by_margin.profit.value) - share * Fraction(by_margin.selling_price.value)
    assert abs(earned) <= Fraction(1, 100)


def test_a_published_example_of_markup_and_of_gross_profit():
    """An engineering reference page: a cost of 200 000 with a markup of 25 percent is 250 000.

    Of that 50 000 is earned, 20 percent; and the factor for a gross profit of 20 percent is
    100 / (100 - 20) = 1.25.
    """
    for totals in (_at_200000(markup=Fraction("0.25")), _at_200000(margin=Fraction("0.2"))):
        assert totals.cost.value == 200_000
        assert totals.selling_price.value == 250_000
        assert totals.profit.value == 50_000


def _at_200000(**shares: Fraction) -> Totals:
    """Totals of two flat beams and whatever makes their cost 200 000."""
    document = CASES[0]["document"]
    prices = document["prices"]
    # Lines of the first case are 253.48, of which 45.00 are delivery: 200 000 - 208.48.
    delivery = {"name": "Delivery", "per": "job", "price": "199791.52"}
    told = {name: str(share) for name, share in shares.items()}
    kept = ("currency", "materials", "labor")
    made = estimated(
        {
            "document": {
                **document,
                "prices": {**{n: prices[n] for n in kept}, "others": [delivery], **told},
            }
        }
    )
    return made.base.estimate.totals
