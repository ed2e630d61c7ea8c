"""An estimate and its alternates as tables: amounts are numbers, and nothing is a formula."""

from collections.abc import Callable, Iterator
from dataclasses import fields
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from lacunar.exchange.csv_table import Cell, Table
from lacunar.exchange.estimate_json import PreparedEstimate, PricedTakeOff
from lacunar.exchange.length_json import decimal_number
from lacunar.exchange.take_off_tables import caution_rows, told_cell
from lacunar.measure.figure import Figure

BASE = "as asked for"
"""What the estimate goes by that the alternates are compared with."""


class EstimateTable(StrEnum):
    """The tables of an estimate."""

    LINES = "lines"
    TOTALS = "totals"
    UNPRICED = "unpriced"
    COUNTS = "counts"
    DIFFERENCES = "differences"
    ASSUMPTIONS = "assumptions"
    CAUTIONS = "cautions"


HEADERS = {
    EstimateTable.LINES: (
        *("estimate", "section", "name", "quantity", "per", "hours", "price", "amount"),
        *("currency", "taxed", "source", "priced_at"),
    ),
    EstimateTable.TOTALS: ("estimate", "total", "amount", "currency", "rule"),
    EstimateTable.UNPRICED: (
        *("estimate", "section", "name", "reason", "per", "quantity", "source"),
    ),
    EstimateTable.COUNTS: ("estimate", "per", "of", "count", "rule", "source"),
    EstimateTable.DIFFERENCES: (
        *("alternate", "section", "name", "base_amount", "alternate_amount", "difference"),
    ),
    EstimateTable.ASSUMPTIONS: ("estimate", "of", "pointer", "value", "reason"),
    EstimateTable.CAUTIONS: ("estimate", "code", "text", "figures"),
}

Rows = Iterator[tuple[Cell, ...]]


def estimate_table(prepared: PreparedEstimate, which: EstimateTable) -> Table:
    """Turn an estimate and its alternates into one of its tables."""
    if which is EstimateTable.DIFFERENCES:
        rows = tuple(_differences(prepared))
    else:
        rows = tuple(row for each in _named(prepared) for row in _ROWS[which](*each))
    return Table(which.value.capitalize(), HEADERS[which], rows)


def _named(prepared: PreparedEstimate) -> Iterator[tuple[str, PricedTakeOff]]:
    yield BASE, prepared.base
    yield from ((alternate.name, alternate.priced) for alternate in prepared.alternates)


def _lines(name: str, priced: PricedTakeOff) -> Rows:
    for line in priced.estimate.lines:
        yield (
            *(name, line.section.value, line.name, _number(line.quantity), line.per.value),
            *(_number(line.hours), _money(line.price), _number(line.amount)),
            *(priced.estimate.currency, "yes" if line.taxed else "no"),
            *(" ".join(line.source), line.priced_at),
        )


def _totals(name: str, priced: PricedTakeOff) -> Rows:
    totals = priced.estimate.totals
    for field in fields(totals):
        figure = getattr(totals, field.name)
        if isinstance(figure, Figure):
            money = isinstance(figure.value, Decimal)
            currency = priced.estimate.currency if money else "hours"
            yield name, field.name, _number(figure), currency, figure.rule.name
    yield name, "complete", "yes" if totals.complete else "no", None, None


def _unpriced(name: str, priced: PricedTakeOff) -> Rows:
    for each in priced.estimate.unpriced:
        yield (
            *(name, each.section.value, each.name, each.reason.value),
            *(each.per.value, _number(each.quantity), " ".join(each.source)),
        )


def _counts(name: str, priced: PricedTakeOff) -> Rows:
    for each in priced.estimate.counts:
        yield (
            *(name, each.per.value, each.of and each.of.value, _number(each.count)),
            *(each.count.rule.name, " ".join(each.source)),
        )


def _assumptions(name: str, priced: PricedTakeOff) -> Rows:
    step = priced.pooled.step
    pools = zip(priced.pooled.taken.ceilings, priced.pooled.pool, strict=True)
    listed = [
        *((f"ceiling {taken.number}", asked.assumptions) for taken, asked in pools),
        ("stock", priced.stock_assumptions),
        ("prices", priced.price_assumptions),
    ]
    for of, assumptions in listed:
        for each in assumptions:
            yield name, of, each.pointer, told_cell(each.value, step), each.reason


def _cautions(name: str, priced: PricedTakeOff) -> Rows:
    for row in caution_rows(priced.estimate.cautions, priced.pooled.step):
        yield name, *row


def _differences(prepared: PreparedEstimate) -> Rows:
    for alternate in prepared.alternates:
        compared = alternate.compared
        for line in compared.lines:
            yield (
                *(alternate.name, line.section.value, line.name),
                *(_money(line.base), _money(line.alternate), _money(line.difference)),
            )
        for name in ("direct", "selling_price", "total"):
            before, after = (
                getattr(totals, name).value
                for totals in (prepared.base.estimate.totals, alternate.priced.estimate.totals)
            )
            difference: Decimal = getattr(compared, name)
            yield (
                *(alternate.name, "totals", name),
                *(_money(before), _money(after), _money(difference)),
            )


def _money(amount: Decimal | None) -> Cell:
    return None if amount is None else decimal_number(Fraction(amount))


def _number(figure: Figure[Fraction] | Figure[Decimal] | None) -> Cell:
    return None if figure is None else decimal_number(Fraction(figure.value))


_ROWS: dict[EstimateTable, Callable[[str, PricedTakeOff], Rows]] = {
    EstimateTable.LINES: _lines,
    EstimateTable.TOTALS: _totals,
    EstimateTable.UNPRICED: _unpriced,
    EstimateTable.COUNTS: _counts,
    EstimateTable.ASSUMPTIONS: _assumptions,
    EstimateTable.CAUTIONS: _cautions,
}
