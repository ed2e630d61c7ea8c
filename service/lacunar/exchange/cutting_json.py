"""A cutting problem as JSON to a `CuttingSpec`, or every fault in them at once."""

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.cutting_schema import CuttingSchema
from lacunar.exchange.fields import reading_in, wrong_type
from lacunar.exchange.needed_names import missing_names
from lacunar.exchange.spec_json import faults_from, units_told
from lacunar.exchange.strict_json import JsonValue
from lacunar.model.faults import SpecRefused
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


def cutting_from(value: JsonValue) -> CuttingSpec:
    """Turn an already read JSON value into the problem as it was asked for.

    Raises `SpecRefused` with every value that does not fit the outline, and every name missing.

    >>> said = cutting_from({"stock": [{"length": "8 ft"}], "pieces": []})
    >>> said.stock[0].length
    Length(96 in)
    """
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages))
    parts: Mapping[str, Any] = {}
    faults = list(missing_names(_SCHEMA, value))
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
