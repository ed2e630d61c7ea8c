"""The boards of one opening as JSON and in words."""

from collections.abc import Iterator
from typing import Any

from lacunar.exchange.board_words import courses_in_words, movement_in_words
from lacunar.exchange.explain import figure_in_words
from lacunar.exchange.layout_json import RecordWriter
from lacunar.layout.lone_boards import LoneBoards
from lacunar.measure.figure import Figure
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.ceiling import Assumption


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
