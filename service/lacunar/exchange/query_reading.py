"""The names and values of a query to values of the model, or every fault in them at once."""

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.fields import (
    Count,
    OneOf,
    SpecField,
    Weight,
    reading_in,
    refusal,
    too_many,
    wrong_type,
)
from lacunar.exchange.json_pointer import pointer_to, shown
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.spec_json import faults_from
from lacunar.measure.units import Units
from lacunar.model import limits
from lacunar.model.faults import Fault, SpecRefused

_WHOLE = re.compile(r"[+-]?[0-9]+(?:\.0*)?\Z")

SHEET = "[A-Z]-[0-9]{3}(-[0-9]{1,3})?"
"""How a sheet's id is written."""

_SHEET = re.compile(SHEET + r"\Z")

# A name and its value; a query may hold one name twice, and that must be seen.
Pairs = Sequence[tuple[str, str]]


def read_query(schema: SpecSchema, pairs: Pairs) -> Mapping[str, Any]:
    """Turn a query into what its schema reads.

    Bare numbers are lengths in the query's own `units`, inches if it has none. Raises
    `SpecRefused` with every fault; pointers are into the query seen as one object.
    """
    values = dict(pairs)
    faults = [*_doubled(pairs), *_missing(schema, values)]
    read: Mapping[str, Any] = {}
    with reading_in(units_in(pairs)):
        try:
            read = schema.load(values)
        except ValidationError as error:
            faults.extend(faults_from(error.messages))
    if faults:
        raise SpecRefused(faults)
    return read


def units_in(pairs: Pairs) -> Units:
    """The units a query asks for; inches where it names none that are known."""
    named = next((value for name, value in pairs if name == "units"), Units.INCH)
    return Units(named) if named in tuple(Units) else Units.INCH


def _missing(schema: SpecSchema, values: Mapping[str, str]) -> list[Fault]:
    return [
        Fault(
            code="name_missing",
            pointer=pointer_to([name]),
            message=f"{name} is not given, and cannot be assumed.",
            remedy=f"Give {name}.",
        )
        for name in schema.needed
        if name not in values
    ]


def _doubled(pairs: Pairs) -> list[Fault]:
    names = [name for name, _ in pairs]
    return [
        Fault(
            code="name_doubled",
            pointer=pointer_to([name]),
            message=f"The name {shown(name)} stands more than once in the query.",
            remedy="Keep one of them: nothing says which one is meant.",
        )
        for name in dict.fromkeys(names)
        if names.count(name) > 1
    ]


class CountText(Count):
    """A whole number as it stands in a query."""

    def read(self, value: object) -> int:
        """An int."""
        if not isinstance(value, str) or not _WHOLE.match(value):
            raise wrong_type(value, "a whole number")
        if len(value) > limits.NUMBER_CHARACTERS:
            raise refusal(
                "number_out_of_bounds",
                f"{shown(value)} is no number that can be counted.",
                f"Write at most {limits.NUMBER_CHARACTERS} digits.",
            )
        return super().read(Decimal(value))


class NumberFrom1(CountText):
    """Which one of several, counted from 1."""

    def read(self, value: object) -> int:
        """An int from 1."""
        number = super().read(value)
        if number < 1:
            raise refusal(
                "count_below_one", "Counting starts at 1.", "Give 1 or more.", {"number": number}
            )
        return number


class Dpi(CountText):
    """How many pixels to the inch, within the bounds that the description tells."""

    def read(self, value: object) -> int:
        """An int within the bounds."""
        number = super().read(value)
        if not limits.LEAST_DPI <= number <= limits.MOST_DPI:
            raise refusal(
                "dpi_out_of_bounds",
                f"{number} pixels to the inch are not made.",
                f"Ask for {limits.LEAST_DPI} to {limits.MOST_DPI}.",
                {"dpi": number, "least": limits.LEAST_DPI, "most": limits.MOST_DPI},
            )
        return number


class WeightList(SpecField[tuple[Fraction, ...]]):
    """Shares, parted by commas."""

    one = Weight("")

    def read(self, value: object) -> tuple[Fraction, ...]:
        """The shares, in order from the datum."""
        if not isinstance(value, str):
            raise wrong_type(value, "shares parted by commas")
        parts = value.split(",")
        if len(parts) > limits.COFFERS_PER_RUN:
            raise too_many(len(parts), limits.COFFERS_PER_RUN)
        return tuple(self.one.read(part) for part in parts)


class SheetIds(SpecField[tuple[str, ...]]):
    """Ids of sheets, parted by commas."""

    def read(self, value: object) -> tuple[str, ...]:
        """The ids, in the order they were named."""
        ids = value.split(",") if isinstance(value, str) else []
        if not ids or not all(_SHEET.match(sheet) for sheet in ids):
            raise wrong_type(value, "a list of sheets such as Z-101,Z-101-2")
        return tuple(ids)


class Flag(OneOf[Any]):
    """1 for yes, 0 for no."""

    def read(self, value: object) -> bool:
        """Whether it is asked for."""
        return str(super().read(value)) == "1"
