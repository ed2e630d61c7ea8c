"""A material list as tables: what to order, what it is for, and what is cut from what."""

from collections.abc import Iterator
from enum import StrEnum

from lacunar.exchange.csv_table import Cell, Table
from lacunar.exchange.material_json import Prepared
from lacunar.exchange.take_off_tables import (
    caution_rows,
    ceiling_rows,
    number_cell,
    size_cells,
    sized_names,
    told_cell,
)
from lacunar.takeoff.material_records import LinePlan

Rows = Iterator[tuple[Cell, ...]]


class MaterialTable(StrEnum):
    """The tables of a material list."""

    ORDER = "order"
    LINES = "lines"
    PARTS = "parts"
    CUTS = "cuts"
    SHEET_CUTS = "sheet_cuts"
    ONE_LENGTH = "one_length"
    DIRECTIONS = "directions"
    CEILINGS = "ceilings"
    ASSUMPTIONS = "assumptions"
    CAUTIONS = "cautions"


HEADERS = {
    MaterialTable.ORDER: (
        *("line", "kind", "name", "quantity", "size", "stock"),
        *sized_names("length", "width"),
        *("holds", "unit", "cost"),
    ),
    MaterialTable.LINES: (
        *("line", "kind", "name", "used_for", "unit"),
        *("need", "waste", "left_over", "on_hand", "amount", "board_feet"),
        *("metric_unit", "metric_need", "metric_amount"),
        *("cost", "lower_bound", "least_amount", "proven_best", "proof"),
        *("yield_percent", "rule"),
    ),
    MaterialTable.PARTS: ("line", "name", "mark", "quantity", "pieces_each"),
    MaterialTable.CUTS: (
        *("material", "stick", "stock", *sized_names("stick_length"), "pattern", "place", "mark"),
        *sized_names("length", "start", "end", "offcut"),
    ),
    MaterialTable.SHEET_CUTS: (
        *("material", "sheet", "stock", "pattern", "part", "mark"),
        *sized_names("x", "y", "length", "width"),
        "turned",
    ),
    MaterialTable.ONE_LENGTH: (
        *("line", "name", "stock", *sized_names("length"), "quantity", "cost", "more"),
        *(*sized_names("more_bought"), "proven_best"),
    ),
    MaterialTable.DIRECTIONS: ("material", "amount", "other_amount", "cost", "other_cost"),
    MaterialTable.CEILINGS: ("ceiling", "name", "coffers", "digest"),
    MaterialTable.ASSUMPTIONS: ("pointer", "value", "reason"),
    MaterialTable.CAUTIONS: ("code", "text", "figures"),
}


def material_table(prepared: Prepared, which: MaterialTable) -> Table:
    """Turn a material list into one of its tables."""
    rows = {
        MaterialTable.ORDER: _order,
        MaterialTable.LINES: _lines,
        MaterialTable.PARTS: _parts,
        MaterialTable.CUTS: _cuts,
        MaterialTable.SHEET_CUTS: _sheet_cuts,
        MaterialTable.ONE_LENGTH: _one_length,
        MaterialTable.DIRECTIONS: _directions,
        MaterialTable.CEILINGS: _ceilings,
        MaterialTable.ASSUMPTIONS: _assumptions,
        MaterialTable.CAUTIONS: _cautions,
    }
    name = which.value.replace("_", " ").capitalize()
    return Table(name, HEADERS[which], tuple(rows[which](prepared)))


def _yes(told: bool) -> str:
    return "yes" if told else "no"


def _order(prepared: Prepared) -> Rows:
    step = prepared.pooled.step
    for line in prepared.listed.materials.lines:
        for each in line.bought:
            yield (
                *(line.number, line.kind.value, line.name, each.quantity, each.name, each.stock),
                *size_cells(each.length, step),
                *size_cells(each.width, step),
                *(number_cell(each.holds), line.unit.value, each.cost),
            )


def _lines(prepared: Prepared) -> Rows:
    for line in prepared.listed.materials.lines:
        figures = (line.need, line.waste, line.left_over, line.on_hand, line.amount)
        yield (
            *(line.number, line.kind.value, line.name),
            *(", ".join(line.used_for), line.unit.value),
            *(number_cell(figure) for figure in (*figures, line.board_feet)),
            line.metric_unit and line.metric_unit.value,
            *(number_cell(figure) for figure in (line.metric_need, line.metric_amount)),
            *_proven(line.plan),
            line.need.rule.name,
        )


def _proven(plan: LinePlan | None) -> tuple[Cell, ...]:
    if plan is None:
        return None, None, None, None, None, None
    least, proof = number_cell(plan.least_amount), plan.proof and plan.proof.value
    share = number_cell(plan.yield_percent)
    return plan.cost, plan.lower_bound, least, _yes(plan.proven_best), proof, share


def _parts(prepared: Prepared) -> Rows:
    for line in prepared.listed.materials.lines:
        for part in line.parts:
            yield line.number, line.name, part.mark, part.quantity, part.pieces_each


def _cuts(prepared: Prepared) -> Rows:
    step, plans = prepared.pooled.step, prepared.planned.lengths
    for plan in plans.plans if plans else ():
        for stick in plan.sticks:
            for place, piece in enumerate(stick.pieces, start=1):
                yield (
                    *(plan.material, stick.number, stick.stock, *size_cells(stick.length, step)),
                    *(stick.pattern, place, piece.piece),
                    *size_cells(piece.length, step),
                    *size_cells(piece.start, step),
                    *size_cells(piece.end, step),
                    *size_cells(stick.offcut, step),
                )


def _sheet_cuts(prepared: Prepared) -> Rows:
    step, plans = prepared.pooled.step, prepared.planned.sheets
    for plan in plans.plans if plans else ():
        for sheet in plan.sheets:
            for panel in sheet.panels:
                sizes = (panel.x, panel.y, panel.length, panel.width)
                yield (
                    *(plan.material, sheet.number, sheet.sheet, sheet.pattern),
                    *(panel.part, panel.panel),
                    *(cell for size in sizes for cell in size_cells(size, step)),
                    _yes(panel.turned),
                )


def _one_length(prepared: Prepared) -> Rows:
    step = prepared.pooled.step
    for line in prepared.listed.materials.lines:
        for one in line.plan.one_length if line.plan else ():
            yield (
                *(line.number, line.name, one.stock, *size_cells(one.length, step)),
                *(one.quantity, one.cost, one.more, *size_cells(one.more_bought, step)),
                _yes(one.proven_best),
            )


def _directions(prepared: Prepared) -> Rows:
    for each in prepared.listed.materials.directions:
        yield (
            each.material,
            *(number_cell(figure) for figure in (each.amount, each.other_amount)),
            *(each.cost, each.other_cost),
        )


def _ceilings(prepared: Prepared) -> Rows:
    return ceiling_rows(prepared.pooled)


def _assumptions(prepared: Prepared) -> Rows:
    for each in prepared.listed.assumptions:
        yield each.pointer, told_cell(each.value, prepared.pooled.step), each.reason


def _cautions(prepared: Prepared) -> Rows:
    return caution_rows(prepared.listed.materials.cautions, prepared.pooled.step)
