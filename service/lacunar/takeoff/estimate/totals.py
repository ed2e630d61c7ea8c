"""From lines to the total: direct cost, overhead, contingency, markup or margin, tax."""

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from lacunar.measure.figure import MoneyFigure, NumberFigure, Operand, Rule
from lacunar.measure.money import NOTHING, added, rounded
from lacunar.takeoff.estimate.estimate_records import EstimateLine, EstimateSection, Totals
from lacunar.takeoff.estimate.price_list import Added
from lacunar.takeoff.estimate.said import TaxedOn

OVERHEAD = Rule("overhead: a share of direct cost", "cents(direct * share)")
CONTINGENCY = Rule(
    "contingency: a share of direct cost and overhead", "cents((direct + overhead) * share)"
)
WITH_MARKUP = Rule("cost with markup, which is a share of cost", "cents(cost * (1 + markup))")
AT_MARGIN = Rule(
    "cost over what margin, a share of the price, leaves", "cents(cost / (1 - margin))"
)
PROFIT = Rule("what the selling price is above cost", "selling_price - cost")
COST = Rule("direct cost, overhead and contingency", "direct + overhead + contingency")
DIRECT = Rule("all lines", "materials + labor + others")
TAXABLE_PRICE = Rule(
    "taxed lines with their share of all that is added",
    "cents(taxed_lines * selling_price / direct)",
)
TAX = Rule("tax: a share of what is taxable", "cents(taxable * rate)")
TOTAL = Rule("selling price and tax", "selling_price + tax")


def totals(lines: Sequence[EstimateLine], shares: Added, *, complete: bool) -> Totals:
    """Turn lines, and the shares that are added, into totals.

    Formulas: cost (1 + m) with a markup m, cost / (1 - g) with a margin g, so that both come to the
    same where 1 / (1 - g) = 1 + m. Each share is rounded once; sums are of rounded amounts.
    """
    sections = {section: _section(lines, section) for section in EstimateSection}
    materials, labor, others = (sections[section] for section in EstimateSection)
    direct = _sum(DIRECT, materials=materials, labor=labor, others=others)
    overhead = _share(OVERHEAD, direct.value, direct=direct.value, share=shares.overhead)
    before = direct.value + overhead.value
    contingency = _share(
        CONTINGENCY,
        before,
        direct=direct.value,
        overhead=overhead.value,
        share=shares.contingency,
    )
    cost = _sum(COST, direct=direct, overhead=overhead, contingency=contingency)
    selling_price = _selling_price(cost.value, shares)
    taxable = _taxable(lines, (direct.value, selling_price.value), shares.taxed_on)
    tax = _share(TAX, taxable.value, taxable=taxable.value, rate=shares.tax)
    return Totals(
        materials=materials,
        labor=labor,
        others=others,
        direct=direct,
        overhead=overhead,
        contingency=contingency,
        cost=cost,
        selling_price=selling_price,
        profit=PROFIT.gives(
            selling_price.value - cost.value, selling_price=selling_price.value, cost=cost.value
        ),
        taxable=taxable,
        tax=tax,
        total=_sum(TOTAL, selling_price=selling_price, tax=tax),
        hours=_hours(lines),
        complete=complete,
    )


def _added_up(name: str, amounts: Sequence[Decimal]) -> MoneyFigure:
    """The sum of amounts as a figure, each under a number."""
    told: dict[str, Operand] = {
        f"line_{number}": amount for number, amount in enumerate(amounts, start=1)
    }
    return Rule(name, " + ".join(told) or "0").gives(added(amounts), **told)


def _section(lines: Sequence[EstimateLine], section: EstimateSection) -> MoneyFigure:
    amounts = [line.amount.value for line in lines if line.section is section]
    return _added_up(f"lines of {section}", amounts)


def _sum(rule: Rule, **figures: MoneyFigure) -> MoneyFigure:
    told: dict[str, Operand] = {name: figure.value for name, figure in figures.items()}
    return rule.gives(added(figure.value for figure in figures.values()), **told)


def _share(rule: Rule, of: Decimal, **operands: Operand) -> MoneyFigure:
    """A share of an amount; the share is the last operand."""
    share = list(operands.values())[-1]
    assert isinstance(share, Fraction)
    return rounded(rule, Fraction(of) * share, **operands)


def _selling_price(cost: Decimal, shares: Added) -> MoneyFigure:
    exact = Fraction(cost)
    if shares.margin is None:
        exact *= 1 + shares.markup
        return rounded(WITH_MARKUP, exact, cost=cost, markup=shares.markup)
    return rounded(AT_MARGIN, exact / (1 - shares.margin), cost=cost, margin=shares.margin)


def _taxable(
    lines: Sequence[EstimateLine], of: tuple[Decimal, Decimal], on: TaxedOn
) -> MoneyFigure:
    taxed = _added_up("lines that are taxed", [line.amount.value for line in lines if line.taxed])
    direct, selling_price = of
    if on is TaxedOn.COST or direct == NOTHING:
        return taxed
    return rounded(
        TAXABLE_PRICE,
        Fraction(taxed.value) * Fraction(selling_price) / Fraction(direct),
        taxed_lines=taxed.value,
        selling_price=selling_price,
        direct=direct,
    )


def _hours(lines: Sequence[EstimateLine]) -> NumberFigure:
    told = {
        f"line_{number}": line.hours for number, line in enumerate(lines, start=1) if line.hours
    }
    rule = Rule("hours of all lines that are told in hours", " + ".join(told) or "0")
    gives = rule.approximates if any(each.approximate for each in told.values()) else rule.gives
    total = sum((each.value for each in told.values()), Fraction(0))
    return gives(total, **{name: each.value for name, each in told.items()})
