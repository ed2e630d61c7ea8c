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
from lacunar.model.boards import Air, Moisture

# What `written` writes is read: whole numbers up to the thousands over a billion.
_NUMBER = re.compile(r"-?[0-9]{1,14}(?:/[1-9][0-9]{0,11}|\.[0-9]{1,9})?\Z")
_FINEST = 10**9
_AIR = re.compile(r"(?P<humidity>[^@]+?) (?:at|@) (?P<temperature>.+)\Z")
_DEGREES = re.compile(r"(?P<number>[^ ]+) ?(?P<scale>[CF])\Z")


def exact_number(value: object) -> Fraction | None:
    """A JSON number, or text such as `3/2`, as the fraction it is.

    None if it is neither, or has more than 9 decimals, which nobody measures.
    """
    if isinstance(value, str) and _NUMBER.match(value):
        return Fraction(value)
    if isinstance(value, int | Decimal) and not isinstance(value, bool):
        number = Fraction(value)
        return number if number.denominator <= _FINEST else None
    return None


class Number(SpecField[Fraction]):
    """A plain number of at most 9 decimals."""

    def read(self, value: object) -> Fraction:
        """A number, exactly as written."""
        number = exact_number(value)
        if number is None:
            raise wrong_type(value, "a number of at most 9 decimals")
        return number


def _percentage(value: object) -> Fraction | None:
    return exact_number(value.removesuffix("%").rstrip(" ") if isinstance(value, str) else value)


class Percent(SpecField[Fraction]):
    """A percentage: a number, or text such as `8 %`."""

    def read(self, value: object) -> Fraction:
        """How many in a hundred."""
        number = _percentage(value)
        if number is None:
            raise wrong_type(value, "a percentage, as a number or as text such as 8 %")
        return number


class Degrees(SpecField[Temperature]):
    """A temperature: text such as `70 F` or `21 C`; a bare number is in the spec's own scale."""

    def read(self, value: object) -> Temperature:
        """A temperature, exactly as written."""
        in_scale = "C" if units_being_read() is Units.MILLIMETER else "F"
        bare: object = value
        if isinstance(value, str) and (match := _DEGREES.match(value)):
            bare, in_scale = match["number"], match["scale"]
        number = exact_number(bare)
        if number is None:
            raise wrong_type(value, "a temperature such as 70 F or 21 C")
        return Temperature(number) if in_scale == "C" else Temperature.of_fahrenheit(number)


class WoodMoisture(SpecField[Moisture]):
    """A percentage, or the air that wood lies in."""

    air: Mapping[str, SpecField[Any]] = {"humidity": Percent(""), "temperature": Degrees("")}

    def __init__(self, description: str) -> None:
        super().__init__(
            f"{description} Percent of the oven-dry weight, or an object with the relative"
            ' "humidity" [percent] and the "temperature" of the air (such as "70 F" or "21 C"; a'
            " bare number is Fahrenheit where units are in, Celsius where they are mm), or both in"
            ' one text such as "45 % at 70 F".'
        )

    def read(self, value: object) -> Moisture:
        """A moisture content, or air."""
        if isinstance(value, dict):
            read = members_of(value, self.air, "humidity", "temperature")
            return Air(read["humidity"], read["temperature"])
        if isinstance(value, str) and (match := _AIR.match(value)):
            readers = self.air
            return Air(*(readers[name].read(match[name]) for name in ("humidity", "temperature")))
        number = _percentage(value)
        if number is None:
            raise wrong_type(value, 'a percentage, or an object with "humidity" and "temperature"')
        return number


def temperature_text(temperature: Temperature) -> str:
    """Turn a temperature into text that reads back to it, in the scale in which it is a decimal.

    >>> temperature_text(Temperature.of_fahrenheit(Fraction(70)))
    '70 F'
    """
    celsius, fahrenheit = temperature.celsius, temperature.fahrenheit
    if _FINEST % celsius.denominator == 0:
        return f"{celsius} C"
    return f"{fahrenheit} F"
