"""What an estimate is asked for with: ceilings, stock, a price list, and alternates to these."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from marshmallow import ValidationError

from lacunar.exchange.fields import too_many, wrong_type
from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.known_names import unknown_name
from lacunar.exchange.merge_patch import landed, merged
from lacunar.exchange.needed_names import missing_names
from lacunar.exchange.price_json import prices_from
from lacunar.exchange.price_schema import AlternateSchema
from lacunar.exchange.spec_json import faults_from, spec_from, units_told
from lacunar.exchange.stock_json import STOCK, stock_from
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.take_off_request import (
    ONE,
    SEVERAL,
    Pool,
    specs_in,
    too_many_ceilings,
    within,
)
from lacunar.measure.units import Units
from lacunar.model import limits, price_limits
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.estimate.said import PriceListSpec

PRICES, ALTERNATES, CHANGES = "prices", "alternates", "changes"
NAMES = (ONE, SEVERAL, STOCK, PRICES, ALTERNATES)

_ALTERNATE = AlternateSchema()
_STOCK_AT = f"/{STOCK}"

Row = Mapping[str, JsonValue]


@dataclass(frozen=True, slots=True)
class Told:
    """A JSON value with the pointer it stands at."""

    pointer: str
    value: JsonValue


@dataclass(frozen=True, slots=True)
class EstimateParts:
    """The values that an estimate is asked for with, before anything is read from them.

    `ceilings` are documents of one ceiling or several each.
    """

    ceilings: tuple[Told, ...]
    stock: Told
    prices: Told
    alternates: Told


@dataclass(frozen=True, slots=True)
class Asked:
    """Ceilings with their pointers, what is said of stock, and prices."""

    pool: Pool
    stock: StockSaid
    prices: PriceListSpec


@dataclass(frozen=True, slots=True)
class AskedAlternate:
    """An alternate with its changes in place, and what was changed, to find faults by."""

    name: str
    pointer: str
    row: Row
    asked: Asked

    def moved(self, part: str, refused: SpecRefused) -> Iterator[Fault]:
        """Faults of a changed part, with pointers into what was changed of it."""
        return _moved(self.pointer, self.row, part, refused)


@dataclass(frozen=True, slots=True)
class EstimateAsked:
    """What is to be estimated, where its prices stand, and alternates."""

    base: Asked
    prices_at: str
    alternates: tuple[AskedAlternate, ...]


def read_estimate(document: bytes) -> EstimateAsked:
    """Turn a document into what is to be estimated.

    It is an object with `ceiling`, one spec, or `ceilings`, a list of them; `prices`; and maybe
    `stock` and `alternates`. Raises `SpecRefused` with the faults of all of them.
    """
    value = read_json(document)
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages))
    faults = list(_names(value))
    if faults:
        raise SpecRefused(faults)
    pool: JsonValue = {name: value[name] for name in (ONE, SEVERAL) if name in value}
    return asked_from(
        EstimateParts(
            ceilings=(Told("", pool),),
            stock=Told(_STOCK_AT, value.get(STOCK, {})),
            prices=Told(f"/{PRICES}", value[PRICES]),
            alternates=Told(f"/{ALTERNATES}", value.get(ALTERNATES, [])),
        )
    )


def _names(value: Row) -> Iterator[Fault]:
    """Names that are not known, missing, or one too many."""
    for name in value:
        if name not in NAMES:
            yield from faults_from(unknown_name(name, NAMES).messages, (name,))
    if PRICES not in value:
        yield _missing(PRICES)
    if ONE not in value and SEVERAL not in value:
        yield _missing(ONE)
    if ONE in value and SEVERAL in value:
        yield Fault(
            code="ceiling_and_ceilings",
            pointer=f"/{SEVERAL}",
            message="Both one ceiling and a list of them are given.",
            remedy="Put all of them into the list.",
        )


def _missing(name: str) -> Fault:
    return Fault(
        code="name_missing",
        pointer=f"/{name}",
        message=f"{name} is not given, and cannot be assumed.",
        remedy=f"Give {name}.",
    )


def asked_from(parts: EstimateParts) -> EstimateAsked:
    """Turn values that were read into what is to be estimated; raises as `read_estimate` does."""
    faults: list[Fault] = []
    specs: list[Told] = []
    for told in parts.ceilings:
        try:
            specs.extend(_each(told))
        except SpecRefused as refused:
            faults.extend(within(told.pointer, refused))
    if len(specs) > limits.POOLED_CEILINGS:
        faults.append(too_many_ceilings("", len(specs)))
        raise SpecRefused(faults)
    rows = list(_rows(parts.alternates, faults))
    reading = Reading(faults)
    pool = tuple((each.pointer, spec) for each in specs for spec in reading.spec(each))
    stock = reading.stock(parts.stock, _units(specs))
    prices = reading.prices(parts.prices)
    if faults or stock is None or prices is None:
        raise SpecRefused(faults)
    alternates = tuple(
        AskedAlternate(_name(row), pointer, row, asked)
        for pointer, row in rows
        for asked in _changed(pointer, row, specs, parts, faults)
    )
    if faults:
        raise SpecRefused(faults)
    return EstimateAsked(Asked(pool, stock, prices), parts.prices.pointer, alternates)


def _name(row: Row) -> str:
    return str(row["name"]).strip(" ")


def _each(told: Told) -> Iterator[Told]:
    for path, value in specs_in(told.value):
        yield Told(f"{told.pointer}{pointer_to(path)}", value)


def _units(specs: Sequence[Told]) -> Units:
    """Those of the first ceiling, which stock is told in unless it says otherwise."""
    first = specs[0].value if specs else None
    return units_told(first) if isinstance(first, dict) else Units.INCH


@dataclass(frozen=True, slots=True)
class Reading:
    """Reads parts, and keeps the faults of those that cannot be read."""

    faults: list[Fault]

    def spec(self, told: Told) -> Iterator[CeilingSpec]:
        """A ceiling's spec; nothing where it is at fault."""
        try:
            yield spec_from(told.value)
        except SpecRefused as refused:
            self.faults.extend(within(told.pointer, refused))

    def stock(self, told: Told, units: Units) -> StockSaid | None:
        """What is said of stock; None where it is at fault."""
        try:
            return stock_from(told.value, units, ())
        except SpecRefused as refused:
            self.faults.extend(within(told.pointer, refused))
            return None

    def prices(self, told: Told) -> PriceListSpec | None:
        """A price list; None where it is at fault."""
        try:
            return prices_from(told.value)
        except SpecRefused as refused:
            self.faults.extend(within(told.pointer, refused))
            return None


def _rows(alternates: Told, faults: list[Fault]) -> Iterator[tuple[str, Row]]:
    """Alternates as told, each with its pointer; what does not fit of them is a fault."""
    rows = alternates.value
    if not isinstance(rows, list):
        faults.extend(_misfits(wrong_type(rows, "a list"), alternates.pointer))
        return
    if len(rows) > price_limits.ALTERNATES:
        faults.extend(_misfits(too_many(len(rows), price_limits.ALTERNATES), alternates.pointer))
        return
    for place, row in enumerate(rows):
        pointer = f"{alternates.pointer}/{place}"
        if not isinstance(row, dict):
            faults.extend(_misfits(wrong_type(row, "an object"), pointer))
            continue
        faults.extend(within(pointer, SpecRefused(missing_names(_ALTERNATE, row))))
        try:
            _ALTERNATE.load(row)
        except ValidationError as error:
            faults.extend(_misfits(error, pointer))
        yield pointer, row


def _misfits(error: ValidationError, pointer: str) -> Iterator[Fault]:
    return within(pointer, SpecRefused(faults_from(error.messages)))


def _changed(
    pointer: str, row: Row, specs: Sequence[Told], parts: EstimateParts, faults: list[Fault]
) -> Iterator[Asked]:
    """Everything with the changes of one alternate; none where it no longer fits."""
    before = len(faults)
    found: list[Fault] = []
    reading = Reading(found)
    changed = [
        Told(f"/{number}", merged(each.value, row.get(CHANGES, {})))
        for number, each in enumerate(specs, start=1)
    ]
    pool = tuple((each.pointer, spec) for each in changed for spec in reading.spec(each))
    faults.extend(_unfit(pointer, row, CHANGES, found))
    stock = reading.stock(Told("", merged(parts.stock.value, row.get(STOCK, {}))), _units(changed))
    faults.extend(_unfit(pointer, row, STOCK, found))
    prices = reading.prices(Told("", merged(parts.prices.value, row.get(PRICES, {}))))
    faults.extend(_unfit(pointer, row, PRICES, found))
    if len(faults) == before and stock is not None and prices is not None:
        yield Asked(pool, stock, prices)


def _moved(pointer: str, row: Row, part: str, refused: SpecRefused) -> Iterator[Fault]:
    """Faults of a changed document as faults of what was changed in it.

    Which ceiling it is, pointers begin with; changes are the same for all, so it is told apart.
    """
    for fault in refused.faults:
        place, told = fault.pointer, {}
        if part == STOCK:
            place = place.removeprefix(_STOCK_AT)
        elif part == CHANGES and place:
            number, _, rest = place.removeprefix("/").partition("/")
            place, told = f"/{rest}" if rest else "", {"ceiling": int(number)}
        figures = {**fault.figures, "alternate": _name(row), **told, "place": place}
        at = landed(row.get(part, {}), place)
        yield replace(fault, pointer=f"{pointer}/{part}{at}", figures=figures)


def _unfit(pointer: str, row: Row, part: str, found: list[Fault]) -> Iterator[Fault]:
    """What no longer fits, under a code of its own: the changes fit what they are told to be."""
    for moved in _moved(pointer, row, part, SpecRefused(found)):
        yield Fault(
            code="alternate_misfit",
            pointer=moved.pointer,
            message=moved.message,
            remedy=moved.remedy,
            figures={**moved.figures, "fault": moved.code},
        )
    found.clear()
