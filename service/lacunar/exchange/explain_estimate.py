"""An estimate in words: each line with its sum and what is behind it, then the way to the total."""

from collections.abc import Iterator
from dataclasses import fields
from decimal import Decimal

from lacunar.exchange.assumption_words import assumption_line
from lacunar.exchange.estimate_json import PreparedEstimate, PricedAlternate, PricedTakeOff
from lacunar.exchange.explain import figure_in_words
from lacunar.layout.names import first_few
from lacunar.measure.figure import Figure
from lacunar.measure.money import ROUNDING, money_text
from lacunar.measure.units import Units
from lacunar.takeoff.estimate.estimate_records import (
    Estimate,
    EstimateLine,
    EstimateSection,
    LaborCount,
    Per,
    Unpriced,
    UnpricedReason,
)
from lacunar.takeoff.estimate.words import LaborPer, MaterialPer, OtherPer

_REASONS = {
    UnpricedReason.NO_PRICE: "no price is given",
    UnpricedReason.NOT_TOLD_SO: "it is priced by a measure it is not told in",
    UnpricedReason.SIZE_NOT_PRICED: "this size has no price",
}


def explain_estimate(prepared: PreparedEstimate) -> str:
    """Turn an estimate and its alternates into the text of all their sums."""
    return "\n".join(_lines(prepared))


def _lines(prepared: PreparedEstimate) -> Iterator[str]:
    units = prepared.base.pooled.step.units
    yield from _told(prepared.base, units)
    yield ROUNDING
    for alternate in prepared.alternates:
        yield ""
        yield f"Alternate: {alternate.name}"
        yield from (f"  {line}" for line in _alternate(alternate, units))


def _told(priced: PricedTakeOff, units: Units) -> Iterator[str]:
    estimate = priced.estimate
    for section in EstimateSection:
        lines = [line for line in estimate.lines if line.section is section]
        if lines:
            yield section.capitalize()
            for line in lines:
                yield from (f"  {each}" for each in _line(line, estimate.currency, units))
    yield "Labor is counted by"
    for count in estimate.counts:
        if count.per is not LaborPer.METER or units is Units.MILLIMETER:
            yield f"  {_count(count, units)}"
    yield "Totals"
    yield from (f"  {line}" for line in _totals(estimate, units))
    for each in estimate.unpriced:
        yield _unpriced(each)
    for assumption in (*priced.stock_assumptions, *priced.price_assumptions):
        yield f"Assumed {assumption_line(assumption, units)}"
    yield from (f"Caution: {caution.text}" for caution in estimate.cautions)


def _line(line: EstimateLine, currency: str, units: Units) -> Iterator[str]:
    yield figure_in_words(f"{line.name}, {_by(line.per)}", line.quantity, units)
    if line.hours is not None and line.per is not LaborPer.HOUR:
        yield figure_in_words(f"{line.name}, hours", line.hours, units)
    yield figure_in_words(f"{line.name}, {currency}", line.amount, units)
    if line.source:
        yield f"{line.name}, behind it: {first_few(line.source)}."


def _count(count: LaborCount, units: Units) -> str:
    of = "" if count.of is None else f" of {_words(count.of)}"
    return figure_in_words(f"{_by(count.per).capitalize()}{of}", count.count, units)


def _totals(estimate: Estimate, units: Units) -> Iterator[str]:
    for field in fields(estimate.totals):
        figure = getattr(estimate.totals, field.name)
        if isinstance(figure, Figure):
            yield figure_in_words(_words(field.name).capitalize(), figure, units)
    if not estimate.totals.complete:
        why = [f"{len(estimate.unpriced)} without a price"] if estimate.unpriced else []
        why += [_words(code) for code in estimate.not_counted]
        yield f"The total of {_total(estimate)} is incomplete ({', '.join(why)}): it will be more."


def _total(estimate: Estimate) -> str:
    return f"{estimate.currency} {money_text(estimate.totals.total.value)}"


def _unpriced(each: Unpriced) -> str:
    behind = f", for {first_few(each.source)}" if each.source else ""
    return f"Not priced: {each.name} ({each.section}{behind}): {_REASONS[each.reason]}."


def _alternate(alternate: PricedAlternate, units: Units) -> Iterator[str]:
    compared = alternate.compared
    for line in compared.lines:
        before, after = (
            "nothing" if amount is None else money_text(amount)
            for amount in (line.base, line.alternate)
        )
        yield f"{line.name} ({line.section}): {before} becomes {after}, {_more(line.difference)}."
    yield figure_in_words("Hours", compared.hours, units)
    yield f"Direct cost {_more(compared.direct)}, selling price {_more(compared.selling_price)}."
    yield f"Total {_total(alternate.priced.estimate)}, {_more(compared.total)}."
    if not compared.comparable:
        yield "One of the two is incomplete, or both: what is left out is not compared."
    yield from (_unpriced(each) for each in alternate.priced.estimate.unpriced)
    for assumption in alternate.priced.price_assumptions:
        yield f"Assumed {assumption_line(assumption, units)}"


def _more(difference: Decimal) -> str:
    if not difference:
        return "the same"
    return f"{money_text(abs(difference))} {'more' if difference > 0 else 'less'}"


def _by(per: Per) -> str:
    return per.value if per in (MaterialPer.EACH, OtherPer.EACH) else f"by the {_words(per)}"


def _words(word: str) -> str:
    return word.replace("_", " ")
