"""A price list as sent to a `PriceListSpec`, or every fault in it at once."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.fields import reading_in, wrong_type
from lacunar.exchange.needed_names import missing_names
from lacunar.exchange.price_schema import PriceListSchema
from lacunar.exchange.spec_json import faults_from, units_told
from lacunar.exchange.strict_json import JsonValue
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.estimate.said import (
    LaborSpec,
    MaterialPriceSpec,
    OtherSpec,
    PriceListSpec,
    TaxSpec,
    WorkSpec,
)

_SCHEMA = PriceListSchema()
_SHARES = ("overhead", "contingency", "markup", "margin")


def prices_from(value: JsonValue) -> PriceListSpec:
    """Turn an already read JSON value into a price list.

    Raises `SpecRefused` with every value that does not fit the outline, and every name missing.

    >>> said = prices_from({"currency": "USD", "labor": {"rate": 58}})
    >>> said.labor.rate, said.materials
    (Decimal('58'), ())
    """
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages))
    faults = list(missing_names(_SCHEMA, value))
    parts: Mapping[str, Any] = {}
    with reading_in(units_told(value)):
        try:
            parts = _SCHEMA.load(value)
        except ValidationError as error:
            faults.extend(faults_from(error.messages))
    if faults:
        raise SpecRefused(faults)
    return PriceListSpec(
        currency=parts["currency"],
        materials=tuple(MaterialPriceSpec(**row) for row in parts.get("materials", ())),
        labor=_labor(parts.get("labor", {})),
        others=tuple(OtherSpec(**row) for row in parts.get("others", ())),
        tax=TaxSpec(**parts["tax"]) if "tax" in parts else None,
        **{name: parts[name] for name in _SHARES if name in parts},
    )


def _labor(parts: Mapping[str, Any]) -> LaborSpec:
    rates = LaborSpec(rate=parts.get("rate"), frame_share=parts.get("frame_share"))
    return replace(rates, work=tuple(_work(row) for row in parts.get("work", ())))


def _work(parts: Mapping[str, Any]) -> WorkSpec:
    of = {"of": tuple(parts["of"])} if "of" in parts else {}
    return WorkSpec(**{**parts, **of})
