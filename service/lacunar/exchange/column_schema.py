"""The outline of columns, and columns out of the parts of a spec and back."""

from collections.abc import Callable, Mapping
from typing import Any

from lacunar.exchange import fields, survey_fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model import limits
from lacunar.model.columns import Column, ColumnSpec

Json = dict[str, Any]


class ColumnSchema(SpecSchema):
    """A column that stands free in the room, between its finished faces."""

    needed_sets = (("x", "y", "length", "width"), ("points",))

    name = fields.Text("What it is called on the sheets.", limits.LABEL)
    x = fields.Distance("Its center along the length run, from the datum as the room was measured.")
    y = fields.Distance("Its center along the width run, likewise.")
    length = fields.Distance("Its size along the length run.")
    width = fields.Distance("Its size along the width run.")
    points = fields.ListOf(
        survey_fields.CornerPoint("A corner by x and y [length]."),
        "Its corners in turn, from the datum as the room was measured, in place of center and"
        " sizes; none turns inward.",
        limits.OUTLINE_SIDES,
    )


COLUMNS = fields.ListOf(
    fields.ObjectOf(ColumnSchema, "One column."),
    "Columns that stand free in the room; in rooms by length and width, or by an outline.",
    limits.COLUMNS,
)


def columns_read(parts: Mapping[str, Any]) -> tuple[ColumnSpec, ...]:
    """Turn the parts of a room into its columns."""
    return tuple(_read(each) for each in parts.get("columns", ()))


def _read(parts: Mapping[str, Any]) -> ColumnSpec:
    points = parts.get("points")
    readable = None if points is None else tuple(each for each in points if isinstance(each, Spot))
    return ColumnSpec(**{**parts, "points": readable})


def columns_json(columns: tuple[Column, ...], write: Callable[[Length], str]) -> Json:
    """Turn columns into what they were read from; `write` gives a length in the spec's units."""
    return {"columns": [_written(each, write) for each in columns]} if columns else {}


def _written(column: Column, write: Callable[[Length], str]) -> Json:
    if column.points:
        points = [{"x": write(spot.x), "y": write(spot.y)} for spot in column.points]
        return {"name": column.name, "points": points}
    sizes = {name: getattr(column, name) for name in ("x", "y", "length", "width")}
    return {"name": column.name, **{name: write(each) for name, each in sizes.items()}}
