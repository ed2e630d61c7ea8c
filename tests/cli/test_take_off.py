"""`lacunar take-off` as a shell meets it."""

import csv
import io
import json
import zipfile
from pathlib import Path

from tests.cli.command import lacunar

CEILINGS = Path(__file__).parents[2] / "examples" / "ceilings"
DINING_ROOM = CEILINGS / "dining_room.json"
GARDEN_ROOM = CEILINGS / "garden_room.json"


def test_parts_and_quantities_as_json_alone():
    outcome = lacunar("take-off", DINING_ROOM, "--trace")
    assert outcome.code == 0, outcome.err
    answer = json.loads(outcome.out)
    # 48 sides of 43 + 2 * 3/4, mitred at the corners of twelve coffers
    first = answer["parts"][0]
    assert (first["mark"], first["quantity"], first["length"]["exact"]) == ("SD1", 48, "89/2 in")
    assert first["length"]["formula"]
    assert answer["quantities"][0]["need"]["formula"]


def test_several_ceilings_are_pooled_into_a_workbook(tmp_path):
    out = tmp_path / "house.xlsx"
    outcome = lacunar("take-off", DINING_ROOM, GARDEN_ROOM, "--format", "xlsx", "--out", out)
    assert (outcome.code, outcome.out) == (0, f"{out}\n"), outcome.err
    assert zipfile.is_zipfile(out)
    again = tmp_path / "again.xlsx"
    lacunar("take-off", DINING_ROOM, GARDEN_ROOM, "--format", "xlsx", "--out", again)
    assert again.read_bytes() == out.read_bytes()


def test_a_table_as_csv():
    outcome = lacunar("take-off", DINING_ROOM, DINING_ROOM, "--table", "places")
    assert outcome.code == 0, outcome.err
    rows = list(csv.DictReader(io.StringIO(outcome.out)))
    assert {row["ceiling"] for row in rows} == {"1", "2"}


def test_quantities_in_words():
    outcome = lacunar("take-off", DINING_ROOM, "--explain")
    assert outcome.code == 0, outcome.err
    # 48 sides of 44 1/2 in are 178 ft, and a tenth for waste
    assert "Lineal, 1x6, for beams [ft]: " in outcome.out
    assert "= 178 (feet of stock: the lengths of all parts). With waste of 17.8: 195.8." in (
        outcome.out
    )


def test_faults_are_told_with_the_ceiling_they_are_in(tmp_path):
    bad = tmp_path / "bad.json"
    bad.write_text('{"room": {"length": 9, "width": 100, "height": 100}}')
    outcome = lacunar("take-off", DINING_ROOM, bad)
    assert (outcome.code, outcome.out) == (1, "")
    assert f"{bad}/room/length" in outcome.err
    missing = lacunar("take-off", tmp_path / "none.json")
    assert (missing.code, missing.out) == (1, "")
