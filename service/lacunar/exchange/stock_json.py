"""What is said about stock beside ceilings, or by itself, to a `StockSaid`."""

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.fields import reading_in, wrong_type
from lacunar.exchange.needed_names import missing_names
from lacunar.exchange.spec_json import faults_from, units_told
from lacunar.exchange.stock_schema import StockOfferSchema
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.take_off_request import Pool, pool_from
from lacunar.measure.units import Units
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.buying.said import PackSpec, StockSaid
from lacunar.takeoff.cutting.said import OffcutSpec, StockLengthSpec, StockSheetSpec

STOCK = "stock"

_SCHEMA = StockOfferSchema()
_RECORDS: Mapping[str, type] = {
    "lengths": StockLengthSpec,
    "offcuts": OffcutSpec,
    "sheets": StockSheetSpec,
    "packs": PackSpec,
}


def read_stocked_pool(document: bytes) -> tuple[Pool, StockSaid]:
    """Turn a document into the ceilings in it and what it says about stock.

    The document is one that a take-off is asked for with; where it is an object with `ceiling` or
    `ceilings`, `stock` may stand beside them. Raises `SpecRefused` with the faults of all.

    >>> den = b'{"room": {"length": 99, "width": 99, "height": 99}}'
    >>> pool, said = read_stocked_pool(b'{"ceiling": %s, "stock": {"kerf": "1/8"}}' % den)
    >>> [pointer for pointer, _ in pool], said.kerf
    (['/ceiling'], Length(1/8 in))
    """
    return stocked_pool_from(read_json(document))


def stocked_pool_from(value: JsonValue) -> tuple[Pool, StockSaid]:
    """The same of an already read JSON value."""
    faults: list[Fault] = []
    said, pool = StockSaid(), value
    if isinstance(value, dict) and STOCK in value and ("ceiling" in value or "ceilings" in value):
        pool = {name: each for name, each in value.items() if name != STOCK}
        try:
            said = stock_from(value[STOCK], _units(pool), (STOCK,))
        except SpecRefused as refused:
            faults.extend(refused.faults)
    try:
        specs = pool_from(pool)
    except SpecRefused as refused:
        faults.extend(refused.faults)
    if faults:
        raise SpecRefused(faults)
    return specs, said


def read_stock(document: bytes, units: Units) -> StockSaid:
    """Turn the bytes of a document that tells stock alone into what it says.

    Parameters: `units` of bare numbers, unless the document tells its own.
    """
    return stock_from(read_json(document), units, (STOCK,))


def stock_from(value: JsonValue, units: Units, path: tuple[str, ...]) -> StockSaid:
    """The same of an already read JSON value that stands at `path`."""
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages, path))
    faults = list(missing_names(_SCHEMA, value, path))
    parts: Mapping[str, Any] = {}
    with reading_in(units_told(value) if "units" in value else units):
        try:
            parts = _SCHEMA.load(value)
        except ValidationError as error:
            faults.extend(faults_from(error.messages, path))
    if faults:
        raise SpecRefused(faults)
    rows = {
        name: tuple(record(**row) for row in parts[name])
        for name, record in _RECORDS.items()
        if name in parts
    }
    return StockSaid(**{**parts, **rows})


def _units(pool: Mapping[str, JsonValue]) -> Units:
    """Those of the first ceiling."""
    ceiling = pool.get("ceiling", pool.get("ceilings"))
    if isinstance(ceiling, list) and ceiling:
        ceiling = ceiling[0]
    return units_told(ceiling) if isinstance(ceiling, dict) else Units.INCH
