"""Laws of estimates: what is printed adds up, and joints cost labor and nothing else."""

import json
from collections.abc import Iterator
from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import cache
from random import Random
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from lacunar.exchange.price_json import prices_from
from lacunar.exchange.spec_json import read_spec
from lacunar.exchange.strict_json import read_json
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.cutting.asked import EffortWord
from lacunar.takeoff.estimate.comparing import compare
from lacunar.takeoff.estimate.deciding import decide_prices
from lacunar.takeoff.estimate.estimate_records import (
    Estimate,
    EstimateLine,
    EstimateSection,
)
from lacunar.takeoff.estimate.estimated import estimate
from lacunar.takeoff.estimate.labor_counts import labor_counts
from lacunar.takeoff.estimate.price_list import Added, PriceList
from lacunar.takeoff.estimate.said import TaxedOn
from lacunar.takeoff.estimate.totals import totals
from lacunar.takeoff.estimate.words import JOINTS, SET_UPS, LaborPer, MaterialPer, Work
from lacunar.takeoff.material_records import MaterialList
from lacunar.takeoff.part_records import MaterialKind, PartKind
from lacunar.workflow.material_list import materials_of
from lacunar.workflow.take_off import take_off_of
from tests.laws.random_specs import Spec, random_specs
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions

COUNT = 18
QUICK = StockSaid(effort=EffortWord.QUICK)


@cache
def made() -> tuple[tuple[Spec, Any, MaterialList], ...]:
    """Take-offs of random specs with what is bought for them."""
    found = tuple(_made())
    assert len(found) > COUNT // 2
    return found


def _made() -> Iterator[tuple[Spec, Any, MaterialList]]:
    for spec in random_specs(COUNT, seed=1201):
        try:
            read = read_spec(json.dumps(spec, default=float).encode())
            pooled = take_off_of((("", read),))
            yield spec, pooled, materials_of(pooled, QUICK).listed.materials
        except SpecRefused:
            continue


def money(random: Random) -> str:
    return f"{random.randint(0, 90)}.{random.randint(0, 9999):04}"


def random_prices(seed: int) -> PriceList:
    """Prices for most things by some measure, labor by some of all that is counted."""
    random = Random(f"prices {seed}")
    pers = (MaterialPer.FOOT, MaterialPer.METER, MaterialPer.PIECE, MaterialPer.BOARD_FOOT)
    work = []
    for per in (LaborPer.FOOT, LaborPer.JOINT, LaborPer.PIECE, LaborPer.COFFER, LaborPer.SET_UP):
        row = {"per": per, "taxed": random.random() < 0.3}
        row |= {"price": money(random)} if random.random() < 0.5 else {"hours": "0.125"}
        work.append(row)
    if random.random() < 0.5:
        work[1]["of"] = [random.choice(("crown_cope", "crown_miter"))]
    said = {
        "currency": "USD",
        "materials": [
            {"kind": kind, "per": random.choice(pers), "price": money(random), "taxed": True}
            for kind in MaterialKind
            if random.random() < 0.8
        ],
        "labor": {"rate": money(random), "work": work},
        "others": [{"name": "Delivery", "per": "job", "price": money(random)}],
        "overhead": f"{random.randint(0, 30)}/100",
        "contingency": f"{random.randint(0, 20)}/100",
        random.choice(("markup", "margin")): f"{random.randint(0, 60)}/100",
        "tax": {"rate": "0.0725", "on": random.choice(("cost", "price"))},
    }
    value = read_json(json.dumps(said).encode())
    return decide_prices(prices_from(value)).prices


def priced(pooled: Any, materials: MaterialList, prices: PriceList) -> Estimate:
    return estimate([each.layout for each in pooled.pool], pooled.taken, materials, prices)


def estimates() -> Iterator[Estimate]:
    for number, (_, pooled, materials) in enumerate(made()):
        yield priced(pooled, materials, random_prices(number))


def test_every_figure_is_what_its_rule_gives_from_what_it_was_given():
    for each in estimates():
        wrong = [line for figure in figures_in(each) for line in contradictions(figure)]
        assert wrong == []


def test_an_estimate_worked_again_in_fractions_comes_to_the_same():
    """Apart from the code under test: amounts from quantity and price, rounded by the library."""
    for number, (_, pooled, materials) in enumerate(made()):
        prices = random_prices(number)
        found = priced(pooled, materials, prices)
        for line in found.lines:
            by = line.quantity.value if line.hours is None else line.hours.value
            assert line.amount.value == again(by * Fraction(line.price) * share_in_price(line))
        sums = [Fraction(line.amount.value) for line in found.lines]
        direct = sum(sums, Fraction(0))
        overhead = exact(direct * prices.added.overhead)
        contingency = exact((direct + overhead) * prices.added.contingency)
        cost = direct + overhead + contingency
        if prices.added.margin is None:
            selling = exact(cost * (1 + prices.added.markup))
        else:
            selling = exact(cost / (1 - prices.added.margin))
        taxed = sum(
            (Fraction(line.amount.value) for line in found.lines if line.taxed), Fraction(0)
        )
        if prices.added.taxed_on is TaxedOn.PRICE and direct:
            taxed = exact(taxed * selling / direct)
        assert found.totals.total.value == selling + exact(taxed * prices.added.tax)


def share_in_price(line: EstimateLine) -> Fraction:
    """What frames take of a price for coping, or the other way about; hours have it in them."""
    if line.hours is None and line.name.endswith(", as bench frames"):
        return Fraction(1, 2)
    return Fraction(2 if line.hours is None and line.name.endswith(", coped in place") else 1)


def again(amount: Fraction) -> Decimal:
    """The hundredth next to an amount, by a quotient to far more digits than it needs."""
    whole = amount.numerator * 10**12 // amount.denominator
    return Decimal(whole).scaleb(-12).quantize(Decimal("0.01"), ROUND_HALF_UP)


def exact(amount: Fraction) -> Fraction:
    return Fraction(again(amount))


def test_lines_add_up_to_the_total_to_the_cent():
    for each in estimates():
        told = each.totals
        for section, sum_of in zip(
            EstimateSection, (told.materials, told.labor, told.others), strict=True
        ):
            own = [line.amount.value for line in each.lines if line.section is section]
            assert sum(own, Decimal("0.00")) == sum_of.value
        cost = told.direct.value + told.overhead.value + told.contingency.value
        assert told.total.value == cost + told.profit.value + told.tax.value


def test_joints_and_settings_are_paid_by_labor_alone():
    """With dearer joints, other things equal, materials stay what they are."""
    for number, (_, pooled, materials) in enumerate(made()):
        prices = random_prices(number)
        dearer = replace(
            prices,
            labor=tuple(
                replace(rate, price=rate.price * 2)
                if {*JOINTS, *SET_UPS}.intersection(rate.of)
                else rate
                for rate in prices.labor
            ),
        )
        compared = compare(priced(pooled, materials, prices), priced(pooled, materials, dearer))
        assert {line.section for line in compared.lines} <= {EstimateSection.LABOR}
        assert sum((line.difference for line in compared.lines), Decimal(0)) == compared.direct


def test_everything_that_is_bought_is_priced_or_listed():
    for number, (_, pooled, materials) in enumerate(made()):
        found = priced(pooled, materials, random_prices(number))
        told = [*found.lines, *found.unpriced]
        names = [each.name for each in told if each.section is EstimateSection.MATERIALS]
        for line in materials.lines:
            assert [name for name in names if name.startswith(line.name)], line.name
        assert found.totals.complete is not bool(found.unpriced or found.not_counted)


def test_crown_goes_round_every_coffer_and_has_as_many_corners_as_pieces():
    seen = 0
    for _, pooled, materials in made():
        counts = labor_counts([each.layout for each in pooled.pool], pooled.taken, materials)
        corners = sum(
            count.count.value for count in counts if count.of in (Work.CROWN_MITER, Work.CROWN_COPE)
        )
        pieces = sum(part.quantity for part in pooled.taken.parts if part.kind is PartKind.CROWN)
        assert corners == pieces
        seen += pieces
    assert seen


AMOUNTS = st.decimals("0", "100000", places=2)
SHARES = st.fractions(min_value=0, max_value=Fraction(9, 10), max_denominator=1000)


@given(AMOUNTS, SHARES)
def test_a_margin_is_a_markup_by_another_name(cost: Decimal, margin: Fraction):
    """cost / (1 - g) = cost (1 + m) where m = g / (1 - g)."""
    lines = _line_of(cost)
    by_margin = totals(lines, _adding(margin=margin), complete=True)
    by_markup = totals(lines, _adding(markup=margin / (1 - margin)), complete=True)
    assert by_margin.selling_price.value == by_markup.selling_price.value
    assert by_margin.profit.value == by_markup.profit.value


def _line_of(cost: Decimal) -> list[Any]:
    others = [{"name": "All", "per": "job", "price": str(cost)}]
    value = read_json(json.dumps({"currency": "USD", "others": others}).encode())
    prices = decide_prices(prices_from(value)).prices
    _, pooled, materials = made()[0]
    return [line for line in priced(pooled, materials, prices).lines if line.name == "All"]


def _adding(markup: Fraction = Fraction(0), margin: Fraction | None = None) -> Added:
    nothing = Fraction(0)
    return Added(nothing, nothing, markup, margin, nothing, TaxedOn.COST)
