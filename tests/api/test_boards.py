"""The boards of one opening over HTTP: as JSON, as a table, and as a value in a cell."""

import csv
import io

import pytest

from lacunar.api.app import description
from tests.api.calling import client
from tests.api.test_description import misfits

# nine courses of 5 in 41: two edges of (41 - 7 * 5)/2 = 3
NINE = "/v1/boards?opening=41&cover=5&gap=0&tongue=1/4"
OAK = "&species=red_oak&now=10&driest=6&dampest=12"


@pytest.mark.parametrize(
    ("query", "value"),
    [
        ("&field=courses", "9"),
        ("&field=edge", "3"),
        ("&field=first_rip", "3.25"),
        ("&field=first_rip&as=fraction", "3 1/4"),
        ("&field=last_rip", "3"),
        ("&length=48&field=lineal", "432"),  # 9 * 48
        ("&length=48&field=coverage", "393.6"),  # 41 * 48 / 5
        ("&field=lineal_factor", "2.4"),  # 12/5
        (f"{OAK}&field=shrink", "0.0738"),  # 5 * .00369 * 4
        (f"{OAK}&field=swell", "0.0369"),
        (f"{OAK}&fastening=floating&field=shrink", "0.60516"),  # 41 * .00369 * 4
    ],
)
def test_one_value_for_a_cell(query: str, value: str):
    answer = client().get(NINE + query)
    assert (answer.status_code, answer.text) == (200, value)


@pytest.mark.parametrize("query", ["", "&length=48", OAK, f"{OAK}&trim_cover=1", "&board=1x4"])
def test_an_answer_has_the_described_fields_and_no_others(query: str):
    assert misfits("Boards", client().get(NINE + query).json) == []


def test_approximate_figures_say_so():
    movement = client().get(NINE + "&species=beech&driest=30%20%25%20at%2070%20F").json["movement"]
    assert movement["driest"]["percent"]["approximate"] is True
    assert movement["shrink"]["approximate"] is True
    assert "approximate" not in movement["moving_width"]


def test_a_table_has_a_row_to_each_figure():
    answer = client().get(f"{NINE}{OAK}&format=csv")
    header, *rows = csv.reader(io.StringIO(answer.text))
    assert header[:4] == ["name", "count", "exact", "in"]
    named = {row[0]: row for row in rows}
    assert named.keys() == {
        *("across", "courses", "edge", "first_rip", "last_rip", "moving_width", "shrink", "swell"),
    }
    assert named["courses"][1] == "9"
    assert named["edge"][2:6] == ["3 in", "3", "76.2", '3"']


@pytest.mark.parametrize(
    ("query", "status", "code", "pointer"),
    [
        ("cover=5", 400, "name_missing", "/opening"),
        ("opening=41&species=mahogany", 400, "unknown_word", "/species"),
        ("opening=41&now=damp", 400, "wrong_type", "/now"),
        ("opening=41&trim_cover=1", 422, "wood_not_said", "/species"),
        ("opening=41&species=beech&now=31", 422, "measure_out_of_bounds", "/now"),
        ("opening=41&gap=1&cover=0.5", 422, "length_out_of_bounds", "/cover"),
        ("opening=2&gap=1", 422, "gap_too_large", "/gap"),
        ("opening=41&field=lineal", 422, "value_not_one", "/field"),
        ("opening=41&species=beech&now=20&field=shrink", 422, "value_not_one", "/field"),
    ],
)
def test_refusals(query: str, status: int, code: str, pointer: str):
    answer = client().get(f"/v1/boards?{query}")
    assert answer.status_code == status
    assert (code, pointer) in {(fault["code"], fault["pointer"]) for fault in answer.json["errors"]}


def test_a_layouts_boards_are_as_described():
    spec = {
        "room": {"length": 240, "width": 180, "height": 108},
        "beams": {"crosswise": {"sides": {"nominal": "3/4 sheet", "width": 6}}},
        "drawing": {"date": "2026-03-02"},
        "panel": {
            "kind": "boards",
            "movement": {"species": "beech", "now": {"humidity": 45, "temperature": 70}},
        },
    }
    answer = client().post("/v1/layouts?trace=1", json=spec)
    assert answer.status_code == 200
    assert misfits("Layout", answer.json) == []
    assert answer.json["panel"]["boards"]["fields"]
    assert answer.json["sheet_rips"]


def test_every_value_is_described():
    (operation,) = description()["paths"]["/v1/boards"].values()
    field = next(each for each in operation["parameters"] if each["name"] == "field")
    assert "lineal_factor" in field["schema"]["enum"]
