"""Values of a panel that are no lengths: percentages, temperatures, the moisture of wood."""

import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from lacunar.exchange.fields import SpecField, units_being_read, wrong_type
from lacunar.exchange.shaped_fields import members_of
from lacunar.measure.moisture import Temperature
from lacunar.measure.units import Units
from lacunar.measure.writing import is_terminating
from lacunar.model.boards import Air, Moisture

# Wide enough for what any number of a document is written as, exactly.
NUMBER = r"-?[0-9]{1,100}(/[1-9][0-9]{0,99}|\.[0-9]{1,100})?"
"""How a plain number is written as text."""
PERCENT = f"{NUMBER} ?%?"
"""How a percentage is written."""
DEGREES = f"{NUMBER} ?[CF]?"
"""How a temperature is written."""
AIR = f"{PERCENT} (at|@) {DEGREES}"
"""How air is written in one text."""

_NUMBER = re.compile(NUMBER)
_PERCENT = re.compile(PERCENT)
_DEGREES = re.compile(DEGREES)
_AIR = re.compile(f"(?P<humidity>{PERCENT}) (?:at|@) (?P<temperature>{DEGREES})")

_DECIMALS = 100


def _in_json(value: object) -> Fraction | None:
    """A JSON number as the fraction it is; None for anything else."""
    if isinstance(value, int | Decimal) and not isinstance(value, bool):
        return Fraction(value)
    return None


class Number(SpecField[Fraction]):
    """A plain number."""

    def read(self, value: object) -> Fraction:
        """A number, exactly as written."""
        if isinstance(value, str) and _NUMBER.fullmatch(value):
            return Fraction(value)
        number = _in_json(value)
        if number is None:
            raise wrong_type(value, "a number")
        return number


class Percent(SpecField[Fraction]):
    """A percentage: a number, or text such as `8 %`."""

    def read(self, value: object) -> Fraction:
        """How many in a hundred."""
        if isinstance(value, str) and _PERCENT.fullmatch(value):
            return Fraction(value.removesuffix("%").rstrip(" "))
        number = _in_json(value)
        if number is None:
            raise wrong_type(value, "a percentage, as a number or as text such as 8 %")
        return number


class Degrees(SpecField[Temperature]):
    """A temperature: text such as `70 F` or `21 C`; a bare number is in the spec's own scale."""

    def read(self, value: object) -> Temperature:
        """A temperature, exactly as written."""
        scale = "C" if units_being_read() is Units.MILLIMETER else "F"
        number = _in_json(value)
        if isinstance(value, str) and _DEGREES.fullmatch(value):
            scale = value[-1] if value[-1] in "CF" else scale
            number = Fraction(value.rstrip("CF").rstrip(" "))
        if number is None:
            raise wrong_type(value, "a temperature such as 70 F or 21 C")
        return Temperature(number) if scale == "C" else Temperature.of_fahrenheit(number)


class WoodMoisture(SpecField[Moisture]):
    """A percentage, or the air that wood lies in."""

    percent = Percent("")
    air: Mapping[str, SpecField[Any]] = {"humidity": Percent(""), "temperature": Degrees("")}

    def __init__(self, description: str) -> None:
        super().__init__(
            f"{description} Percent of the oven-dry weight; or the air it lies in, as an object"
            ' with the relative "humidity" [percent] and the "temperature" (such as "70 F" or'
            ' "21 C"; a bare number is Fahrenheit where units are in, Celsius where they are mm),'
            ' or as one text such as "45 % at 70 F".'
        )

    def read(self, value: object) -> Moisture:
        """A moisture content, or air."""
        if isinstance(value, dict):
            read = members_of(value, self.air, "humidity", "temperature")
            return Air(read["humidity"], read["temperature"])
        if isinstance(value, str) and (match := _AIR.fullmatch(value)):
            readers = self.air
            return Air(*(readers[name].read(match[name]) for name in ("humidity", "temperature")))
        if not isinstance(value, str | int | Decimal) or isinstance(value, bool):
            raise wrong_type(value, 'a percentage, or an object with "humidity" and "temperature"')
        return self.percent.read(value)


def temperature_text(temperature: Temperature) -> str:
    """Turn a temperature into text that reads back to it, in the scale in which it is a decimal.

    >>> temperature_text(Temperature.of_fahrenheit(Fraction(70)))
    '70 F'
    """
    if is_terminating(temperature.celsius, _DECIMALS):
        return f"{temperature.celsius} C"
    return f"{temperature.fahrenheit} F"
