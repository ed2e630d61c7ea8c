"""The bytes of a cutting problem to a `CuttingSpec`, or every fault in them at once."""

from collections.abc import Iterator, Mapping
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.cutting_schema import CuttingSchema
from lacunar.exchange.fields import ListOf, ObjectOf, reading_in, wrong_type
from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.spec_json import faults_from, units_told
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.cutting.said import (
    CutPanelSpec,
    CutPieceSpec,
    CuttingSpec,
    MaterialSpec,
    OffcutSpec,
    StockLengthSpec,
    StockSheetSpec,
)

_SCHEMA = CuttingSchema()
_RECORDS: Mapping[str, type] = {
    "stock": StockLengthSpec,
    "offcuts": OffcutSpec,
    "pieces": CutPieceSpec,
    "materials": MaterialSpec,
    "sheets": StockSheetSpec,
    "panels": CutPanelSpec,
}


def read_cutting(document: bytes) -> CuttingSpec:
    """Turn the bytes of a JSON document into the problem as it was asked for.

    Raises `SpecRefused` with every value that does not fit the outline, and every name missing.

    >>> said = read_cutting(b'{"stock": [{"length": "8 ft"}], "pieces": []}')
    >>> said.stock[0].length
    Length(96 in)
    """
    value = read_json(document)
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages))
    parts: Mapping[str, Any] = {}
    faults = list(_missing(value))
    with reading_in(units_told(value)):
        try:
            parts = _SCHEMA.load(value)
        except ValidationError as error:
            faults.extend(faults_from(error.messages))
    if faults:
        raise SpecRefused(faults)
    return _spec(parts)


def _spec(parts: Mapping[str, Any]) -> CuttingSpec:
    rows = {
        name: tuple(record(**row) for row in parts[name])
        for name, record in _RECORDS.items()
        if name in parts
    }
    return CuttingSpec(**{**parts, **rows})


def _missing(value: Mapping[str, JsonValue]) -> Iterator[Fault]:
    """What must be told of each row and is not."""
    for name, field in _SCHEMA.fields.items():
        rows = value.get(name)
        if not isinstance(field, ListOf) or not isinstance(rows, list):
            continue
        assert isinstance(field.inner, ObjectOf)
        schema = field.inner.schema
        needed = schema.needed if isinstance(schema, SpecSchema) else ()
        for place, row in enumerate(rows):
            if isinstance(row, dict):
                for each in needed:
                    if each not in row:
                        yield Fault(
                            code="name_missing",
                            pointer=pointer_to((name, place, each)),
                            message=f"{each} is not given, and cannot be assumed.",
                            remedy=f"Give {each}.",
                        )
