"""Material lists over HTTP, and cutting plans of ceilings."""

import csv
import io
import json

import openpyxl
import pytest

from lacunar.api.material_examples import EXAMPLES
from lacunar.exchange.material_tables import HEADERS, MaterialTable
from tests.api.calling import CEILINGS, client, post
from tests.api.test_description import misfits

DEN = {"room": {"length": 182.5, "width": 148, "height": 106}}
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
PRICED = {"lengths": [{"material": "1x6", "length": "16 ft", "price": 23.49}]}


def asked(document, query="", path="/v1/material-lists"):
    return post(f"{path}{query}", json.dumps(document).encode())


def line(answer, name):
    (only,) = (each for each in answer.json["lines"] if each["name"] == name)
    return only


@pytest.mark.parametrize("name", EXAMPLES)
def test_an_answer_has_the_described_fields_and_no_others(name):
    answer = asked(EXAMPLES[name]["value"], "?trace=1")
    assert misfits("MaterialListAnswer", answer.json) == []


def test_the_house_of_the_examples_is_listed():
    house = json.loads((CEILINGS[0].parents[1] / "house.json").read_text(encoding="utf-8"))
    answer = asked(house)
    assert misfits("MaterialListAnswer", answer.json) == []
    assert not [each for each in answer.json["cautions"] if each["code"] == "stock_not_used"]


@pytest.mark.parametrize("document", [DEN, {"ceiling": DEN}, {"ceilings": [DEN]}, [DEN]])
def test_one_ceiling_can_be_sent_in_four_ways(document):
    assert asked(document).json == asked(DEN).json


def test_what_nobody_said_is_assumed_and_listed():
    answer = asked(DEN)
    assert answer.status_code == 200
    told = {each["pointer"] for each in answer.json["assumptions"]}
    assert {"/stock/kerf", "/stock/lengths", "/stock/packs"} <= told
    assert answer.json["ceilings"][0]["digest"]


def test_marks_are_those_of_the_take_off():
    parts = {
        each["mark"]: each["quantity"] for each in asked(DEN, path="/v1/take-offs").json["parts"]
    }
    lines = asked(DEN).json["lines"]
    cut = [part for each in lines if each["plan"] for part in each["parts"]]
    assert {part["mark"]: part["quantity"] for part in cut} == parts


def test_prices_and_lengths_that_are_said_are_gone_by():
    answer = asked({"ceiling": DEN, "stock": PRICED})
    boards = line(answer, "1x6")
    assert [each["name"] for each in boards["bought"]] == ["16'-0\""]
    count = boards["bought"][0]["quantity"]
    assert boards["plan"]["cost"] == f"{count * 2349 / 100:.2f}"
    assert answer.json["cost"] is None  # other materials have no prices


def test_a_cutting_plan_of_ceilings_is_the_one_behind_the_list():
    document = {"ceilings": [DEN, DEN], "stock": PRICED}
    plans = asked(document, path="/v1/cutting-plans").json["lengths"]["plans"]
    lines = {each["name"]: each for each in asked(document).json["lines"]}
    for plan in plans:
        bought = {each["stock"]: each["quantity"] for each in lines[plan["material"]]["bought"]}
        assert {each["stock"]: each["quantity"] for each in plan["taken"]} == bought


@pytest.mark.parametrize(
    ("query", "accept", "media"),
    [
        ("", "*/*", "application/json"),
        ("?format=csv", "*/*", "text/csv; charset=utf-8"),
        ("?table=cuts", "*/*", "text/csv; charset=utf-8"),
        ("?format=xlsx", "application/json", XLSX),
    ],
)
def test_a_material_list_in_each_media_type(query, accept, media):
    answer = client().post(f"/v1/material-lists{query}", json=DEN, headers={"Accept": accept})
    assert (answer.status_code, answer.content_type) == (200, media)
    if media == XLSX:
        names = openpyxl.load_workbook(io.BytesIO(answer.data)).sheetnames
        assert len(names) == len(MaterialTable)


@pytest.mark.parametrize("table", list(MaterialTable))
def test_every_table_has_its_columns(table):
    boards = {**DEN, "panel": {"kind": "boards", "board": "1x6", "parallel_to": "length"}}
    answer = asked([boards, boards], f"?table={table}")
    rows = list(csv.reader(io.StringIO(answer.get_data(as_text=True))))
    assert tuple(rows[0]) == HEADERS[table]
    assert {len(row) for row in rows} == {len(HEADERS[table])}


def test_sticks_of_the_table_of_cuts_hold_what_is_on_them():
    rows = list(csv.DictReader(io.StringIO(asked(DEN, "?table=cuts").get_data(as_text=True))))
    sticks = {}
    for row in rows:
        sticks.setdefault((row["material"], row["stick"]), []).append(row)
    for cut in sticks.values():
        ends = [0.0, *(float(row["end_in"]) for row in cut)]
        starts = [float(row["start_in"]) for row in cut]
        assert all(end <= start for end, start in zip(ends, starts, strict=False))
        assert ends[-1] + float(cut[0]["offcut_in"]) <= float(cut[0]["stick_length_in"])


def test_metric_ceilings_are_told_in_metric_stock():
    answer = asked(
        {"ceiling": {**DEN, "units": "mm", "room": {"length": 4600, "width": 3700, "height": 2700}}}
    )
    first = answer.json["lines"][0]
    assert first["metric_unit"] == "m"
    assert all(each["name"].endswith(" mm") for each in first["bought"])
    assert line(answer, "paint")["bought"][0]["name"] == "2.5 L"


def test_other_units_tell_the_same_list_by_the_same_names():
    stock = {"lengths": [{"material": "framing 4 1/2 x 5 1/2 in", "length": "14 ft", "price": 9}]}
    document = {"ceiling": DEN, "stock": stock}
    own, other = asked(document), asked(document, "?units=mm")
    assert other.json["units"] == "mm"
    for one, told in zip(own.json["lines"], other.json["lines"], strict=True):
        assert (one["name"], one["plan"] and one["plan"]["cost"]) == (
            told["name"],
            told["plan"] and told["plan"]["cost"],
        )
        for each, same in zip(one["bought"], told["bought"], strict=True):
            assert each["quantity"] == same["quantity"]
            assert each["length"] is None or each["length"]["mm"] == same["length"]["mm"]
    framing = line(other, "framing 4 1/2 x 5 1/2 in")
    assert [each["length"]["text"] for each in framing["bought"]] == ["4267 mm"]


def test_a_trace_tells_how_each_amount_came_about():
    first = asked(DEN, "?trace=1").json["lines"][0]
    assert first["waste"]["formula"] == "amount + on_hand - need - left_over"


def test_faults_of_ceilings_and_stock_come_at_once():
    answer = asked(
        {
            "ceilings": [DEN, {"room": {"length": "x", "width": 1, "height": 1}}],
            "stock": {
                "lengths": [{"price": 3}],
                "packs": [{"of": "paint", "holds": "a can"}],
                "x": 1,
            },
        }
    )
    assert answer.status_code == 400
    pointers = {error["pointer"] for error in answer.json["errors"]}
    assert {
        "/ceilings/1/room/length",
        "/stock/lengths/0/length",
        "/stock/packs/0/holds",
        "/stock/x",
    } <= pointers


@pytest.mark.parametrize(
    ("stock", "told"),
    [
        ({"kerf": "5 in"}, ("length_out_of_bounds", "/stock/kerf")),
        (
            {"packs": [{"of": "paint", "holds": "1000"}]},
            ("pack_unit_unlike", "/stock/packs/0/holds"),
        ),
        (
            {"sheets": [{"material": "sheet 1/4 x 48 x 96 in", "length": 30, "width": 20}]},
            ("panel_larger_than_sheets", "/stock/sheets"),
        ),
    ],
)
def test_stock_that_does_not_do_is_refused(stock, told):
    panel = {"kind": "sheet_goods", "thickness": "1/4"}
    answer = asked({"ceiling": {**DEN, "panel": panel}, "stock": stock})
    assert answer.status_code == 422, answer.json
    assert (answer.json["errors"][0]["code"], answer.json["errors"][0]["pointer"]) == told


def test_stock_beside_a_bare_spec_is_the_specs_own():
    answer = asked({**DEN, "stock": {"longest_board": "12 ft"}})
    assert answer.status_code == 200
    sizes = [each["length"]["in"] for each in answer.json["lines"][0]["bought"]]
    assert max(sizes) <= 144
