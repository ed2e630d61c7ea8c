"""The values of a spec that may be written in more than one shape: short for what is common."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.fields import (
    Count,
    Distance,
    ObjectOf,
    SpecField,
    Text,
    refusal,
    too_many,
    units_being_read,
    unknown_word,
    wrong_type,
)
from lacunar.exchange.known_names import unknown_name
from lacunar.measure.length import Length
from lacunar.model import limits
from lacunar.model.grid import WallCondition
from lacunar.model.panel import SheetSize
from lacunar.model.room import WALLS
from lacunar.model.stock import Stock, StockNameError, actual_stock, read_stock
from lacunar.model.wall_kind import WallKind

SAME = "same"

# A zone before each fixed thing of a run, and one after the last.
MOST_ZONES = limits.FIXED_BEAMS_PER_RUN + limits.MEMBERS + 1

_DISTANCE = Distance("")
_COUNT = Count("")
_STOCK_NAME = Text("", limits.STOCK_NAME)


def members_of(
    value: dict[str, Any], readers: Mapping[str, SpecField[Any]], *needed: str
) -> dict[str, Any]:
    """Read an object name by name; every unknown, missing or unreadable one is told at once."""
    faults: dict[str | int, Any] = {}
    read: dict[str, Any] = {}
    for name, member in value.items():
        try:
            if name not in readers:
                raise unknown_name(name, readers)
            read[name] = readers[name].deserialize(member)
        except ValidationError as error:
            faults[name] = error.messages
    for name in needed:
        if name not in value:
            faults[name] = missing_name(name).messages
    if faults:
        raise ValidationError(faults)
    return read


def missing_name(name: str) -> ValidationError:
    """The error to raise for a name that must be there."""
    return refusal("name_missing", f"{name} is not given.", f"Give {name}.")


class CofferCounts(SpecField[int | tuple[int, ...]]):
    """A total, or a list with one count for each zone."""

    def read(self, value: object) -> int | tuple[int, ...]:
        """A total, or one count per zone."""
        if not isinstance(value, list):
            return _COUNT.read(value)
        faults: dict[str | int, Any] = {}
        counts = []
        if len(value) > MOST_ZONES:
            raise too_many(len(value), MOST_ZONES)
        for position, item in enumerate(value):
            try:
                counts.append(_COUNT.read(item))
            except ValidationError as error:
                faults[position] = error.messages
        if faults:
            raise ValidationError(faults)
        return tuple(counts)


class WallFinish(SpecField[tuple[Length, Length, Length, Length]]):
    """One thickness for all walls, or one for each of W1 to W4."""

    def read(self, value: object) -> tuple[Length, Length, Length, Length]:
        """Thicknesses for W1, W2, W3, W4."""
        if isinstance(value, dict):
            read = members_of(value, dict.fromkeys(WALLS, _DISTANCE), *WALLS)
            first, second, third, fourth = (read[wall] for wall in WALLS)
            return first, second, third, fourth
        if isinstance(value, str | int | Decimal) and not isinstance(value, bool):
            finish = _DISTANCE.read(value)
            return finish, finish, finish, finish
        raise wrong_type(value, "a length, or an object with W1, W2, W3 and W4")


class StandsOnSoffit(SpecField[WallKind]):
    """What is on a soffit's face: anything but another soffit."""

    def read(self, value: object) -> WallKind:
        """A wall kind that can stand on a soffit."""
        words = tuple(kind for kind in WallKind if kind is not WallKind.SOFFIT)
        if not isinstance(value, str):
            raise wrong_type(value, "text")
        if value not in words:
            raise unknown_word(value, words)
        return WallKind(value)


class AtWall(SpecField[WallCondition]):
    """A word, or for a soffit an object with its width and what is on its face."""

    readers: Mapping[str, SpecField[Any]] = {"soffit": _DISTANCE, "then": StandsOnSoffit("")}

    def read(self, value: object) -> WallCondition:
        """A wall condition, whole."""
        if isinstance(value, dict):
            read = members_of(value, self.readers)
            return WallCondition(
                WallKind.SOFFIT, read.get("soffit"), read.get("then", WallKind.NONE)
            )
        if not isinstance(value, str):
            raise wrong_type(value, 'a word, or an object such as {"soffit": "12", "then": "half"}')
        if value not in tuple(WallKind):
            raise unknown_word(value, tuple(WallKind))
        return WallCondition(WallKind(value))


class SheetEdges(SpecField[SheetSize]):
    """A sheet as sold, by both its edges."""

    readers: Mapping[str, SpecField[Any]] = {"width": _DISTANCE, "length": _DISTANCE}

    def read(self, value: object) -> SheetSize:
        """Both edges."""
        if not isinstance(value, dict):
            raise wrong_type(value, 'an object with "width" and "length"')
        read = members_of(value, self.readers, "width", "length")
        return SheetSize(read["width"], read["length"])


class StockPiece(SpecField[Stock]):
    """A trade name; a trade name with a width; or a real thickness and width."""

    by_name: Mapping[str, SpecField[Any]] = {"nominal": _STOCK_NAME, "width": _DISTANCE}
    by_size: Mapping[str, SpecField[Any]] = {"thickness": _DISTANCE, "width": _DISTANCE}

    def read(self, value: object) -> Stock:
        """Stock with a real thickness and width."""
        if isinstance(value, str):
            return _named(_STOCK_NAME.read(value), None)
        if not isinstance(value, dict):
            raise wrong_type(
                value, 'a trade name such as 1x8, or an object with "thickness" and "width"'
            )
        if "nominal" in value:
            read = members_of(value, self.by_name, "nominal")
            return _named(read["nominal"], read.get("width"))
        read = members_of(value, self.by_size, "thickness", "width")
        return actual_stock(read["thickness"], read["width"], units_being_read())


class SameOrObject(ObjectOf):
    """An object, or the word `same`."""

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> Any:
        if isinstance(value, str):
            if value != SAME:
                raise wrong_type(value, f'"{SAME}" or an object')
            return SAME
        return super()._deserialize(value, *args, **kwargs)


def _named(name: str, width: Length | None) -> Stock:
    try:
        return read_stock(name, width)
    except StockNameError as error:
        raise refusal("stock_name_unknown", error.reason, error.remedy, {"name": name}) from None
