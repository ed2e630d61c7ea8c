"""What an estimate is asked for with: ceilings, a price list, and alternates to both."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from marshmallow import ValidationError

from lacunar.exchange.fields import too_many, wrong_type
from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.known_names import unknown_name
from lacunar.exchange.merge_patch import landed, merged
from lacunar.exchange.needed_names import missing_names
from lacunar.exchange.price_json import prices_from
from lacunar.exchange.price_schema import AlternateSchema
from lacunar.exchange.spec_json import faults_from, spec_from
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.take_off_request import ONE, SEVERAL, specs_in, within
from lacunar.model import price_limits as limits
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec
from lacunar.takeoff.estimate.said import PriceListSpec

PRICES, ALTERNATES, CHANGES = "prices", "alternates", "changes"
NAMES = (ONE, SEVERAL, PRICES, ALTERNATES)

Pool = tuple[tuple[str, CeilingSpec], ...]

_ALTERNATE = AlternateSchema()


@dataclass(frozen=True, slots=True)
class Told:
    """A JSON value with the pointer it stands at."""

    pointer: str
    value: JsonValue


@dataclass(frozen=True, slots=True)
class AskedAlternate:
    """An alternate: changed ceilings and prices, and what was changed, to find faults by."""

    name: str
    pointer: str
    changes: JsonValue
    price_changes: JsonValue
    pool: Pool
    prices: PriceListSpec

    def changed(self, refused: SpecRefused) -> Iterator[Fault]:
        """Faults of the changed ceilings, with pointers into what was changed."""
        place = f"{self.pointer}/{CHANGES}"
        return (_moved(fault, place, self.changes, self.name) for fault in refused.faults)

    def repriced(self, refused: SpecRefused) -> Iterator[Fault]:
        """Faults of the changed price list, with pointers into what was changed."""
        place = f"{self.pointer}/{PRICES}"
        return (_moved(fault, place, self.price_changes, self.name) for fault in refused.faults)


@dataclass(frozen=True, slots=True)
class EstimateAsked:
    """Ceilings with their pointers, the price list with its own, and alternates."""

    pool: Pool
    prices_at: str
    prices: PriceListSpec
    alternates: tuple[AskedAlternate, ...]


def read_estimate(document: bytes) -> EstimateAsked:
    """Turn a document into what is to be estimated.

    It is an object with `ceiling`, one spec, or `ceilings`, a list of them; `prices`; and maybe
    `alternates`. Raises `SpecRefused` with the faults of all of them.
    """
    value = read_json(document)
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages))
    faults = list(_names(value))
    asked: dict[str, JsonValue] = {name: value[name] for name in (ONE, SEVERAL) if name in value}
    prices = Told(f"/{PRICES}", value.get(PRICES))
    alternates = Told(f"/{ALTERNATES}", value.get(ALTERNATES, []))
    if faults:
        raise SpecRefused(faults)
    return asked_from([Told("", asked)], prices, alternates)


def _names(value: Mapping[str, JsonValue]) -> Iterator[Fault]:
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


def asked_from(ceilings: Sequence[Told], prices: Told, alternates: Told) -> EstimateAsked:
    """Turn values that were read into what is to be estimated; raises as `read_estimate` does.

    Parameters: `ceilings`, documents of one or several each; `prices`; a list of `alternates`.
    """
    faults: list[Fault] = []
    specs: list[Told] = []
    pool: list[tuple[str, CeilingSpec]] = []
    said: PriceListSpec | None = None
    for told in ceilings:
        try:
            specs.extend(_each(told))
        except SpecRefused as refused:
            faults.extend(within(told.pointer, refused))
    for each in specs:
        try:
            pool.append((each.pointer, spec_from(each.value)))
        except SpecRefused as refused:
            faults.extend(within(each.pointer, refused))
    try:
        said = prices_from(prices.value)
    except SpecRefused as refused:
        faults.extend(within(prices.pointer, refused))
    rows, misfits = _rows(alternates)
    faults.extend(misfits)
    if faults or said is None:
        raise SpecRefused(faults)
    return EstimateAsked(tuple(pool), prices.pointer, said, _alternates(rows, specs, prices.value))


def _each(told: Told) -> Iterator[Told]:
    for path, value in specs_in(told.value):
        yield Told(f"{told.pointer}{pointer_to(path)}", value)


def _rows(alternates: Told) -> tuple[list[tuple[str, Mapping[str, JsonValue]]], list[Fault]]:
    """Alternates as told, each with its pointer, and what does not fit of them."""
    rows = alternates.value
    faults: list[Fault] = []
    if not isinstance(rows, list):
        refused = SpecRefused(faults_from(wrong_type(rows, "a list").messages))
        return [], list(within(alternates.pointer, refused))
    if len(rows) > limits.ALTERNATES:
        refused = SpecRefused(faults_from(too_many(len(rows), limits.ALTERNATES).messages))
        return [], list(within(alternates.pointer, refused))
    found: list[tuple[str, Mapping[str, JsonValue]]] = []
    for place, row in enumerate(rows):
        pointer = f"{alternates.pointer}/{place}"
        refused = SpecRefused(_row_faults(row))
        faults.extend(within(pointer, refused))
        if isinstance(row, dict):
            found.append((pointer, row))
    return found, faults


def _row_faults(row: JsonValue) -> Iterator[Fault]:
    if not isinstance(row, dict):
        yield from faults_from(wrong_type(row, "an object").messages)
        return
    yield from missing_names(_ALTERNATE, row)
    try:
        _ALTERNATE.load(row)
    except ValidationError as error:
        yield from faults_from(error.messages)


def _alternates(
    rows: Iterable[tuple[str, Mapping[str, JsonValue]]], specs: Sequence[Told], prices: JsonValue
) -> tuple[AskedAlternate, ...]:
    """Ceilings and prices with each alternate's changes; raises with the faults of all of them."""
    found: list[AskedAlternate] = []
    faults: list[Fault] = []
    for pointer, row in rows:
        name, changes = str(row["name"]).strip(" "), row.get(CHANGES, {})
        price_changes = row.get(PRICES, {})
        pool: list[tuple[str, CeilingSpec]] = []
        for each in specs:
            try:
                pool.append(("", spec_from(merged(each.value, changes))))
            except SpecRefused as refused:
                faults.extend(_unfit(refused, f"{pointer}/{CHANGES}", changes, name))
        try:
            said = prices_from(merged(prices, price_changes))
        except SpecRefused as refused:
            faults.extend(_unfit(refused, f"{pointer}/{PRICES}", price_changes, name))
        else:
            found.append(AskedAlternate(name, pointer, changes, price_changes, tuple(pool), said))
    if faults:
        raise SpecRefused(faults)
    return tuple(found)


def _moved(fault: Fault, place: str, changes: JsonValue, name: str) -> Fault:
    """A fault of a changed document as one of what was changed."""
    figures = {**fault.figures, "alternate": name, "place": fault.pointer}
    return replace(fault, pointer=f"{place}{landed(changes, fault.pointer)}", figures=figures)


def _unfit(refused: SpecRefused, place: str, changes: JsonValue, name: str) -> Iterator[Fault]:
    """What no longer fits with the changes; told under a code of its own, as they fit theirs."""
    for fault in refused.faults:
        moved = _moved(fault, place, changes, name)
        yield Fault(
            code="alternate_misfit",
            pointer=moved.pointer,
            message=fault.message,
            remedy=fault.remedy,
            figures={**moved.figures, "fault": fault.code},
        )
