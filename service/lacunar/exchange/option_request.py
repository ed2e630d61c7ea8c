"""What options are asked for with: a ceiling, and within which limits it may be varied."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import ValidationError

from lacunar.choosing.asked import ChoicesSpec, CountsSpec
from lacunar.choosing.records import Criterion
from lacunar.exchange.estimate_request import PRICES, Reading, Told
from lacunar.exchange.fields import reading_in, wrong_type
from lacunar.exchange.known_names import unknown_name
from lacunar.exchange.option_schema import ChoicesSchema
from lacunar.exchange.spec_json import faults_from, units_told
from lacunar.exchange.stock_json import STOCK
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.take_off_request import ONE
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.estimate.said import PriceListSpec

CHOICES = "choices"

_SCHEMA = ChoicesSchema()


_NAMES = (ONE, CHOICES, PRICES, STOCK)


@dataclass(frozen=True, slots=True)
class OptionsAsked:
    """A ceiling with the JSON pointer it stands at, and what was said of the search.

    `prices` are None where none are told; `prices_at` is where they stand.
    """

    pointer: str
    spec: CeilingSpec
    said: ChoicesSpec
    prices: PriceListSpec | None
    prices_at: str
    stock: StockSaid


@dataclass(frozen=True, slots=True)
class Beside:
    """Documents of prices and of stock by themselves; they go before those beside a ceiling."""

    prices: Told | None = None
    stock: Told | None = None


def read_options(document: bytes, beside: Beside = Beside()) -> OptionsAsked:
    """Turn the bytes of a document into what is asked for.

    The document is a bare spec, or an object with `ceiling` and, if anything is to be said of the
    search, `choices`, and `prices` with `stock`. Parameters: `document`; `beside`, what stands in
    documents of its own. Errors: `SpecRefused` with the faults of all of them.

    >>> read_options(b'{"room": {"length": 99, "width": 99, "height": 99}}').pointer
    ''
    """
    value = read_json(document)
    if not isinstance(value, dict) or ONE not in value:
        return _asked("", {ONE: value}, beside)
    return _asked(f"/{ONE}", value, beside)


def _asked(pointer: str, value: Mapping[str, JsonValue], beside: Beside) -> OptionsAsked:
    faults: list[Fault] = []
    for name in value:
        if name not in _NAMES:
            faults.extend(faults_from(unknown_name(name, _NAMES).messages, (name,)))
    ceiling, reading = value[ONE], Reading(faults)
    specs = tuple(reading.spec(Told(pointer, ceiling)))
    said, misfits = _choices(value.get(CHOICES, {}), ceiling)
    faults.extend(misfits)
    prices, stock = (
        Told(f"/{name}", value[name]) if told is None and name in value else told
        for name, told in ((PRICES, beside.prices), (STOCK, beside.stock))
    )
    listed = None if prices is None else reading.prices(prices)
    units = units_told(ceiling if isinstance(ceiling, dict) else {})
    stocked = StockSaid() if stock is None else reading.stock(stock, units)
    if stock is not None and prices is None:
        faults.append(_stock_without_prices(stock.pointer))
    if faults or not specs or stocked is None:
        raise SpecRefused(faults)
    at = "" if prices is None else prices.pointer
    return OptionsAsked(pointer, specs[0], said, listed, at, stocked)


def _stock_without_prices(pointer: str) -> Fault:
    return Fault(
        code="stock_without_prices",
        pointer=pointer,
        message="Stock is told, and no prices: of options it says only what they cost.",
        remedy="Give a price list as well, or leave the stock out.",
    )


def _choices(value: JsonValue, ceiling: JsonValue) -> tuple[ChoicesSpec, list[Fault]]:
    """What was said of the search, lengths in the ceiling's units, and what does not fit."""
    units = units_told(ceiling if isinstance(ceiling, dict) else {})
    try:
        if not isinstance(value, dict):
            raise wrong_type(value, "an object")
        with reading_in(units):
            return _spec(_SCHEMA.load(value)), []
    except ValidationError as error:
        return ChoicesSpec(), list(faults_from(error.messages, (CHOICES,)))


def _spec(parts: Mapping[str, Any]) -> ChoicesSpec:
    lists = {name: tuple(part) for name, part in parts.items() if isinstance(part, list)}
    counts = {
        name: CountsSpec(**parts[name])
        for name in ("length_coffers", "width_coffers")
        if name in parts
    }
    weights = parts.get("weights", {})
    weighed = tuple((Criterion(name), weight) for name, weight in weights.items())
    return ChoicesSpec(**{**parts, **lists, **counts, "weights": weighed})
