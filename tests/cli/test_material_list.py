"""`lacunar material-list` as a shell meets it."""

import csv
import io
import json
import zipfile
from pathlib import Path

from tests.cli.command import lacunar

CEILINGS = Path(__file__).parents[2] / "examples" / "ceilings"
DINING_ROOM = CEILINGS / "dining_room.json"
GARDEN_ROOM = CEILINGS / "garden_room.json"


def test_a_list_in_words_says_what_to_buy_and_what_for():
    outcome = lacunar("material-list", DINING_ROOM, "--explain")
    assert outcome.code == 0, outcome.err
    # 48 sides of 44 1/2 in, two to a stick of 8 ft: 24 sticks; 178 ft needed of 192.
    assert "1. 1x6: buy 24 x 8'-0\"" in outcome.out
    assert "waste 14, left over 0, bought 192 ft" in outcome.out
    assert "for 48 SD1" in outcome.out
    assert "Proven best" in outcome.out
    assert "assumed /stock/lengths" in outcome.err


def test_what_is_sold_is_told_in_a_file(tmp_path):
    yard = tmp_path / "yard.json"
    yard.write_text(json.dumps({"lengths": [{"material": "1x6", "length": 192, "price": 20}]}))
    outcome = lacunar("material-list", DINING_ROOM, GARDEN_ROOM, "--stock", yard)
    assert outcome.code == 0, outcome.err
    (boards,) = (each for each in json.loads(outcome.out)["lines"] if each["name"] == "1x6")
    assert [each["length"]["in"] for each in boards["bought"]] == [192]
    assert boards["plan"]["cost"] == f"{20 * boards['bought'][0]['quantity']}.00"


def test_a_workbook_is_the_same_every_time(tmp_path):
    out, again = tmp_path / "order.xlsx", tmp_path / "again.xlsx"
    for path in (out, again):
        outcome = lacunar("material-list", DINING_ROOM, "--format", "xlsx", "--out", path)
        assert outcome.code == 0, outcome.err
    assert zipfile.is_zipfile(out)
    assert out.read_bytes() == again.read_bytes()


def test_the_order_as_csv():
    outcome = lacunar("material-list", DINING_ROOM, "--table", "order")
    rows = list(csv.DictReader(io.StringIO(outcome.out)))
    assert rows[0]["name"] == "1x6"
    assert rows[0]["quantity"] == "24"


def test_faults_of_stock_are_told_with_their_place(tmp_path):
    yard = tmp_path / "yard.json"
    yard.write_text('{"kerf": "9 in", "lengths": [{"material": "1x6", "length": "8 ft"}]}')
    outcome = lacunar("material-list", DINING_ROOM, "--stock", yard)
    assert (outcome.code, outcome.out) == (1, "")
    assert "/stock/kerf" in outcome.err
    missing = lacunar("material-list", DINING_ROOM, "--stock", tmp_path / "none.json")
    assert missing.code == 1


def test_a_ceilings_parts_are_planned_in_words():
    outcome = lacunar("cutting-plan", DINING_ROOM, "--explain")
    assert outcome.code == 0, outcome.err
    assert "2 SD1 at 3'-8 1/2\"" in outcome.out
