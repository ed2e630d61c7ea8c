"""What options are asked for with: a ceiling, and within which limits it may be varied."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import ValidationError

from lacunar.choosing.asked import ChoicesSpec, CountsSpec
from lacunar.choosing.records import Criterion
from lacunar.exchange.fields import reading_in, wrong_type
from lacunar.exchange.known_names import unknown_name
from lacunar.exchange.option_schema import ChoicesSchema
from lacunar.exchange.spec_json import faults_from, spec_from, units_told
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.take_off_request import ONE, within
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec

CHOICES = "choices"

_SCHEMA = ChoicesSchema()


@dataclass(frozen=True, slots=True)
class OptionsAsked:
    """A ceiling with the JSON pointer it stands at, and what was said of the search."""

    pointer: str
    spec: CeilingSpec
    said: ChoicesSpec


def read_options(document: bytes) -> OptionsAsked:
    """Turn the bytes of a document into what is asked for.

    The document is a bare spec, or an object with `ceiling` and, if anything is to be said of the
    search, `choices`. Errors: `SpecRefused` with the faults of both.

    >>> read_options(b'{"room": {"length": 99, "width": 99, "height": 99}}').pointer
    ''
    """
    value = read_json(document)
    if not isinstance(value, dict) or ONE not in value:
        return OptionsAsked("", spec_from(value), ChoicesSpec())
    others = [name for name in value if name not in (ONE, CHOICES)]
    unknown = {name: unknown_name(name, (ONE, CHOICES)).messages for name in others}
    faults = list(faults_from(unknown))
    ceiling = value[ONE]
    spec = None
    try:
        spec = spec_from(ceiling)
    except SpecRefused as refused:
        faults.extend(within(f"/{ONE}", refused))
    said, misfits = _choices(value.get(CHOICES, {}), ceiling)
    faults.extend(misfits)
    if faults or spec is None:
        raise SpecRefused(faults)
    return OptionsAsked(f"/{ONE}", spec, said)


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
