"""Decides what was left open about columns."""

from lacunar.model.assuming import Assuming, FreeNames
from lacunar.model.columns import Column, ColumnSpec


def decide_columns(said: tuple[ColumnSpec, ...], assuming: Assuming) -> tuple[Column, ...]:
    """Turn columns that have passed the rules into decided ones."""
    names = FreeNames("COL-", (each.name for each in said))
    return tuple(
        Column(
            name=names.settle(each.name, f"/room/columns/{number}", assuming),
            x=each.x,
            y=each.y,
            length=each.length,
            width=each.width,
            points=each.points or (),
        )
        for number, each in enumerate(said)
    )
