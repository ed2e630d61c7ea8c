"""The boards of one opening as JSON, as a table, value by value, and in words."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from lacunar.exchange.board_words import courses_in_words, movement_in_words
from lacunar.exchange.boards_query import BoardsValue
from lacunar.exchange.csv_table import Cell, csv_bytes, length_cells, mark_cells
from lacunar.exchange.explain import figure_in_words
from lacunar.exchange.layout_json import RecordWriter
from lacunar.layout.panels.lone_boards import LoneBoards
from lacunar.measure.figure import Figure
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, round_to
from lacunar.measure.units import Units
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault, SpecRefused

CSV_HEADER = ("name", "count", "exact", "in", "mm", "mark", "mark_in", "mark_mm")

_ROWS = (
    *("across", "courses", "edge", "first_rip", "last_rip", "lineal", "coverage"),
    *("moving_width", "shrink", "swell", "lap"),
)


def boards_to_json(
    boards: LoneBoards, assumptions: tuple[Assumption, ...], step: Step, *, trace: bool
) -> dict[str, Any]:
    """Turn boards into JSON values, each record under its own names."""
    write = RecordWriter(step, trace)
    return {
        "units": str(step.units),
        "mark_to": step.text,
        **write.record(boards),
        "assumptions": write.value(assumptions),
    }


def boards_to_csv(boards: LoneBoards, step: Step) -> bytes:
    """Turn boards into a table, a row to each figure there is."""
    return csv_bytes(CSV_HEADER, _rows(boards, step))


def _rows(boards: LoneBoards, step: Step) -> Iterator[tuple[Cell, ...]]:
    for name in _ROWS:
        figure = _figure(boards, name)
        if figure is None:
            continue
        if isinstance(figure.value, int):
            empty = (*length_cells(None, step.units), *mark_cells(None, step))
            yield (name, figure.value, *empty)
            continue
        cells = length_cells(figure.value, step.units)
        yield (name, None, *cells, *mark_cells(round_to(figure.value, step), step))


def _figure(boards: LoneBoards, name: str) -> Figure[Any] | None:
    """The figure of that name, wherever it stands; None where there is none."""
    for record in (boards.courses, boards, boards.movement):
        found = getattr(record, name, None)
        if isinstance(found, Figure):
            return found
    return None


def boards_value(boards: LoneBoards, field: BoardsValue) -> Length | Fraction | int:
    """One value of an opening's boards; raises `SpecRefused` where there is none."""
    figure = _figure(boards, field.value)
    if figure is None:
        fault = Fault(
            code="value_not_one",
            pointer="/field",
            message=f"There is no {field.value.replace('_', ' ')}.",
            remedy="Lineal and coverage need a length; what moves needs a species and moistures"
            " from 6 to 14 percent.",
            figures={"field": str(field)},
        )
        raise SpecRefused([fault])
    value: Length | Fraction | int = figure.value
    return value


def boards_alone_in_words(boards: LoneBoards, units: Units) -> str:
    """Turn boards into the text of all their sums."""

    def tell(label: str, figure: Figure[Any]) -> str:
        return figure_in_words(label, figure, units)

    def lines() -> Iterator[str]:
        yield from courses_in_words("Boards", boards.courses, tell)
        named: dict[str, Figure[Any] | None] = {
            "Boards in a row": boards.lineal,
            "Boards by the rule of coverage": boards.coverage,
            "Lineal feet to a square foot": boards.lineal_factor,
            "Board feet to a square foot": boards.board_foot_factor,
        }
        yield from (tell(label, figure) for label, figure in named.items() if figure)
        if boards.movement is not None:
            yield from movement_in_words(boards.movement, tell)
        yield from (f"Caution: {caution.text}" for caution in boards.cautions)

    return "\n".join(lines())
