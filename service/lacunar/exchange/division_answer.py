"""A division as JSON, as a table, and value by value."""

from collections.abc import Iterator
from typing import Any

from lacunar.exchange.csv_table import Cell, csv_bytes, length_cells, mark_cells
from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.query_schema import DivisionValue
from lacunar.layout.runs.lone_run import LoneRun
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, round_to
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault, SpecRefused

CSV_HEADER = ("kind", "of", "side", "exact", "in", "mm", "mark", "mark_in", "mark_mm")


def division_to_json(
    run: LoneRun, assumptions: tuple[Assumption, ...], step: Step, *, trace: bool
) -> dict[str, Any]:
    """Turn a division into JSON values, each record under its own names."""
    write = RecordWriter(step, trace)
    return {
        "units": str(step.units),
        "mark_to": step.text,
        **write.record(run),
        "assumptions": write.value(assumptions),
    }


def division_to_csv(run: LoneRun, step: Step) -> bytes:
    """Turn a division into a table: span, beams, clear total, openings, then every running mark."""
    return csv_bytes(CSV_HEADER, _rows(run, step))


def _rows(run: LoneRun, step: Step) -> Iterator[tuple[Cell, ...]]:
    sizes = [("span", run.span), ("beam_width", run.beam_width), ("clear_total", run.clear_total)]
    for kind, size in sizes:
        yield (kind, "", "", *length_cells(size.value, step.units), *mark_cells(None, step))
    for number, opening in enumerate(run.openings, start=1):
        cells = length_cells(opening.value, step.units)
        yield ("opening", str(number), "", *cells, *mark_cells(None, step))
    for mark in run.marks:
        cells = length_cells(mark.exact.value, step.units)
        yield (mark.kind.value, mark.of, mark.side, *cells, *mark_cells(mark.mark, step))


def value_of(run: LoneRun, field: DivisionValue, number: int, step: Step) -> Length | int:
    """One value of a division: a length, or the count of coffers.

    Parameters: `run`; `field`; `number` of the opening or beam, from 1; `step` marks are rounded
    to. Raises `SpecRefused` where there are not so many.
    """
    match field:
        case DivisionValue.COFFERS:
            return run.coffers.value
        case DivisionValue.CLEAR_TOTAL:
            return run.clear_total.value
        case DivisionValue.OPENING:
            opening: Length = _at(run.openings, number, "openings").value
            return opening
    place, _, rounded = field.value.partition("_")
    exact: Length = getattr(_at(run.beams, number, "beams"), place).value
    return round_to(exact, step) if rounded else exact


def _at(items: tuple[Any, ...], number: int, what: str) -> Any:
    if number <= len(items):
        return items[number - 1]
    fault = Fault(
        code="number_not_there",
        pointer="/number",
        message=f"There are only {len(items)} {what}.",
        remedy=f"Ask for a number from 1 to {len(items)}."
        if items
        else "Ask for another field: one coffer has no beam beside it.",
        figures={"number": number, "most": len(items)},
    )
    raise SpecRefused([fault])
