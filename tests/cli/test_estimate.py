"""`lacunar estimate` as a shell meets it, with the invented example price list."""

import csv
import io
import json
import zipfile
from pathlib import Path

from tests.cli.command import lacunar

EXAMPLES = Path(__file__).parents[2] / "examples"
DINING_ROOM = EXAMPLES / "ceilings" / "dining_room.json"
GARDEN_ROOM = EXAMPLES / "ceilings" / "garden_room.json"
MUSIC_ROOM = EXAMPLES / "ceilings" / "music_room.json"
PRICES = EXAMPLES / "prices" / "invented.json"
ALTERNATES = EXAMPLES / "prices" / "alternates.json"


def test_an_estimate_as_json_alone():
    outcome = lacunar("estimate", DINING_ROOM, "--prices", PRICES, "--trace")
    assert outcome.code == 0, outcome.err
    answer = json.loads(outcome.out)
    assert answer["totals"]["complete"] is True
    assert answer["totals"]["total"]["formula"] == "selling_price + tax"
    assert "caution: What is taxed" in outcome.err


def test_the_example_price_list_says_that_it_is_invented():
    assert "invented" in PRICES.name
    assert "Every price, rate, hour and share in it is invented" in (
        (PRICES.parent / "README.md").read_text("utf-8").replace("\n", " ")
    )


def test_several_ceilings_with_alternates_in_a_workbook(tmp_path):
    out = tmp_path / "house.xlsx"
    told = ("--prices", PRICES, "--alternates", ALTERNATES, "--format", "xlsx", "--out", out)
    outcome = lacunar("estimate", MUSIC_ROOM, GARDEN_ROOM, *told)
    assert (outcome.code, outcome.out) == (0, f"{out}\n"), outcome.err
    assert zipfile.is_zipfile(out)


def test_differences_as_csv_and_what_is_left_out_on_the_other_stream():
    told = ("--prices", PRICES, "--alternates", ALTERNATES, "--table", "differences")
    outcome = lacunar("estimate", GARDEN_ROOM, *told)
    assert outcome.code == 0, outcome.err
    rows = list(csv.DictReader(io.StringIO(outcome.out)))
    assert {row["alternate"] for row in rows} == {
        "Crown coped in place",
        "Edges mitred",
        "Without crown",
        "Sticks of 16 ft alone",
    }
    assert "The total is incomplete" in outcome.err


def test_sums_in_words():
    outcome = lacunar("estimate", DINING_ROOM, "--prices", PRICES, "--explain")
    assert outcome.code == 0, outcome.err
    assert "Selling price: to the hundredth, (cost " in outcome.out


def test_faults_are_told_with_the_document_they_are_in(tmp_path):
    bad = tmp_path / "bad.json"
    bad.write_text('{"currency": "dollars", "overhead": 12}')
    outcome = lacunar("estimate", DINING_ROOM, "--prices", bad)
    assert (outcome.code, outcome.out) == (1, "")
    assert f"{bad}/currency" in outcome.err
    no_list = tmp_path / "alternates.json"
    no_list.write_text("{}")
    room = tmp_path / "room.json"
    room.write_text("{")
    outcome = lacunar("estimate", DINING_ROOM, room, "--prices", bad, "--alternates", no_list)
    assert outcome.code == 1
    assert f"{room}: " in outcome.err
    missing = lacunar("estimate", DINING_ROOM, "--prices", tmp_path / "none.json")
    assert (missing.code, missing.out) == (1, "")


def test_prices_must_be_named():
    assert lacunar("estimate", DINING_ROOM).code == 2
