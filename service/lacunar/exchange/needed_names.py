"""Names that must be given, at any depth of an outline, and are not."""

from collections.abc import Iterator, Mapping

from marshmallow import Schema

from lacunar.exchange.fields import ListOf, ObjectOf
from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.strict_json import JsonValue
from lacunar.model.faults import Fault

Path = tuple[str | int, ...]


def missing_names(
    schema: Schema, value: Mapping[str, JsonValue], path: Path = ()
) -> Iterator[Fault]:
    """What an object and all objects in it must tell and do not; what is no object is left out."""
    for each in schema.needed if isinstance(schema, SpecSchema) else ():
        if each not in value:
            yield Fault(
                code="name_missing",
                pointer=pointer_to((*path, each)),
                message=f"{each} is not given, and cannot be assumed.",
                remedy=f"Give {each}.",
            )
    for name, field in schema.fields.items():
        inside = value.get(name)
        if isinstance(field, ObjectOf) and isinstance(inside, dict):
            yield from missing_names(field.schema, inside, (*path, name))
        elif isinstance(field, ListOf) and isinstance(inside, list):
            yield from _in_rows(field, inside, (*path, name))


def _in_rows(field: ListOf, rows: list[JsonValue], path: Path) -> Iterator[Fault]:
    if not isinstance(field.inner, ObjectOf):
        return
    for place, row in enumerate(rows):
        if isinstance(row, dict):
            yield from missing_names(field.inner.schema, row, (*path, place))
