"""Percentages, temperatures and moisture as they stand in a spec."""

from fractions import Fraction

import pytest

from lacunar.exchange.panel_fields import temperature_text
from lacunar.exchange.spec_json import read_spec
from lacunar.measure.moisture import Temperature
from lacunar.model.boards import Air
from tests.exchange.documents import LEAST, as_bytes, codes_at, with_changes


def moisture(value: object, units: str = "in") -> object:
    document = with_changes(
        LEAST,
        {
            "room.length": "20 ft",
            "panel.kind": "boards",
            "panel.movement.species": "beech",
            "panel.movement.now": value,
        },
    )
    panel = read_spec(as_bytes({**document, "units": units})).panel
    assert panel is not None
    assert panel.movement is not None
    return panel.movement.now


def fahrenheit(degrees: int) -> Temperature:
    return Temperature.of_fahrenheit(Fraction(degrees))


@pytest.mark.parametrize(
    ("value", "read"),
    [
        (8, Fraction(8)),
        (8.25, Fraction(33, 4)),
        ("8", Fraction(8)),
        ("8.25 %", Fraction(33, 4)),
        ("17/2", Fraction(17, 2)),
        ("8.1234567891", Fraction(81234567891, 10**10)),
        ("45 % at 70 F", Air(Fraction(45), fahrenheit(70))),
        ("45 @ 70F", Air(Fraction(45), fahrenheit(70))),
        ({"humidity": "45 %", "temperature": "20 C"}, Air(Fraction(45), fahrenheit(68))),
        # a bare number is in the scale of the spec's units
        ({"humidity": 45, "temperature": 68}, Air(Fraction(45), Temperature(Fraction(20)))),
    ],
)
def test_moistures(value: object, read: object):
    assert moisture(value) == read


def test_a_bare_temperature_is_celsius_where_lengths_are_millimeters():
    air = moisture({"humidity": 45, "temperature": 20}, "mm")
    assert air == Air(Fraction(45), Temperature(Fraction(20)))


@pytest.mark.parametrize(
    ("value", "pointer", "code"),
    [
        ("damp", "", "wrong_type"),
        (True, "", "wrong_type"),
        ("1/0", "", "wrong_type"),
        ("45 at noon", "", "wrong_type"),
        ("8 %%", "", "wrong_type"),
        ({"humidity": 45}, "/temperature", "name_missing"),
        ({"humidity": 45, "temperature": "70 K"}, "/temperature", "wrong_type"),
        ({"humidity": 45, "temp": 70}, "/temp", "name_unknown"),
        (-1, "", "measure_out_of_bounds"),
        (10**60, "", "measure_out_of_bounds"),
    ],
)
def test_what_is_no_moisture(value: object, pointer: str, code: str):
    document = with_changes(
        LEAST,
        {"panel.kind": "boards", "panel.movement.species": "beech", "panel.movement.now": value},
    )
    assert code in codes_at(document).get(f"/panel/movement/now{pointer}", set())


@pytest.mark.parametrize("degrees", ["70", "70.123456789", "68"])
@pytest.mark.parametrize("scale", ["C", "F"])
def test_a_temperature_is_written_so_that_it_reads_back(degrees: str, scale: str):
    air = moisture({"humidity": 45, "temperature": f"{Fraction(degrees) / 2} {scale}"}, "in")
    assert isinstance(air, Air)
    assert temperature_text(Temperature(Fraction(-1, 2))) == "-1/2 C"
    text = temperature_text(air.temperature)
    assert moisture({"humidity": 45, "temperature": text}) == air
