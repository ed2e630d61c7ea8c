"""Estimates as JSON, tables and words: money is exact, nothing is a formula, bytes are the same."""

import csv
import io
import json
import re
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from lacunar.exchange.estimate_json import PreparedEstimate, estimate_to_json
from lacunar.exchange.estimate_tables import HEADERS, EstimateTable, estimate_table
from lacunar.exchange.explain_estimate import explain_estimate
from lacunar.workflow.estimate import estimate_csv, estimate_xlsx, prepare_estimate
from tests.takeoff.estimate.pricing import CROWNED, FLAT

EXAMPLES = Path(__file__).parents[2] / "examples"
CEILINGS = sorted((EXAMPLES / "ceilings").glob("*.json"))
PRICES = json.loads((EXAMPLES / "prices" / "invented.json").read_text("utf-8"))
ALTERNATES = json.loads((EXAMPLES / "prices" / "alternates.json").read_text("utf-8"))


def prepared(*ceilings: Any, **more: Any) -> PreparedEstimate:
    document = {"ceilings": ceilings, "prices": PRICES, **more}
    return prepare_estimate(json.dumps(document).encode())


def read(table: EstimateTable, made: PreparedEstimate) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(estimate_csv(made, table).decode())))


@pytest.fixture(scope="module")
def crowned() -> PreparedEstimate:
    return prepared(CROWNED, alternates=ALTERNATES)


@pytest.mark.parametrize("which", list(EstimateTable))
def test_every_row_fits_its_header(crowned: PreparedEstimate, which: EstimateTable):
    table = estimate_table(crowned, which)
    assert table.rows or which is EstimateTable.UNPRICED
    assert {len(row) for row in table.rows} <= {len(HEADERS[which])}
    header, *rows = csv.reader(io.StringIO(estimate_csv(crowned, which).decode()))
    assert (tuple(header), len(rows)) == (table.header, len(table.rows))


@pytest.mark.parametrize("path", CEILINGS, ids=lambda path: path.stem)
def test_the_invented_prices_price_every_example(path: Path):
    made = prepared(json.loads(path.read_text("utf-8")))
    estimate = made.base.estimate
    assert estimate.unpriced == ()
    assert estimate.totals.total.value > 0
    told = estimate_to_json(made, trace=False)
    assert sum(Decimal(line["amount"]["amount"]) for line in told["lines"]) == Decimal(
        told["totals"]["direct"]["amount"]
    )


def test_money_is_text_with_its_decimals_and_never_a_number(crowned: PreparedEstimate):
    told = estimate_to_json(crowned, trace=True)
    text = json.dumps(told)
    assert json.loads(text, parse_float=str) == json.loads(
        text.replace("NaN", "0"), parse_float=str
    )
    for line in told["lines"]:
        assert re.fullmatch(r"[0-9]+\.[0-9]{2}", line["amount"]["amount"])
        assert re.fullmatch(r"[0-9]+\.[0-9]{2,4}", line["price"])
        assert line["amount"]["operands"]["price"] == {"amount": line["price"]}
        assert line["amount"]["formula"].startswith("cents(")
    assert told["rounding"].startswith("Each amount")


def test_lines_of_all_alternates_stand_in_one_table(crowned: PreparedEstimate):
    rows = read(EstimateTable.LINES, crowned)
    names = dict.fromkeys(row["estimate"] for row in rows)
    assert list(names) == ["as asked for", *(each["name"] for each in ALTERNATES)]
    base = [row for row in rows if row["estimate"] == "as asked for"]
    direct = sum(Decimal(row["amount"]) for row in base)
    assert direct == crowned.base.estimate.totals.direct.value


def test_what_has_no_price_is_a_table_of_its_own():
    made = prepare_estimate(json.dumps({"ceiling": FLAT, "prices": {"currency": "USD"}}).encode())
    rows = read(EstimateTable.UNPRICED, made)
    assert {(row["section"], row["name"]) for row in rows} == {
        ("materials", "1x6"),
        ("materials", "finish nail"),
        ("labor", "Bottom"),
    }
    totals = {row["total"]: row["amount"] for row in read(EstimateTable.TOTALS, made)}
    assert totals["complete"] == "no"


def test_differences_of_lines_add_up_to_that_of_direct_cost(crowned: PreparedEstimate):
    rows = read(EstimateTable.DIFFERENCES, crowned)
    for each in ALTERNATES:
        own = [row for row in rows if row["alternate"] == each["name"]]
        lines = sum(Decimal(row["difference"]) for row in own if row["section"] != "totals")
        (direct,) = (row for row in own if (row["section"], row["name"]) == ("totals", "direct"))
        assert lines == Decimal(direct["difference"])


@pytest.mark.parametrize("sign", ["=", "+", "-", "@"])
def test_no_formula_gets_through_from_any_name(sign: str):
    told = f"{sign}1+1"
    changed = {
        **PRICES,
        "others": [{"name": told, "per": "job", "price": 1}],
        "labor": {"work": [{"name": told, "per": "joint", "price": 1}]},
    }
    made = prepare_estimate(
        json.dumps(
            {
                "ceiling": {**CROWNED, "name": told},
                "prices": changed,
                "alternates": [{"name": told, "prices": {"overhead": 0}}],
            }
        ).encode()
    )
    book = openpyxl.load_workbook(io.BytesIO(estimate_xlsx(made)))
    cells = [cell for sheet in book for row in sheet.iter_rows() for cell in row]
    assert "f" not in {cell.data_type for cell in cells}
    assert [cell for cell in cells if cell.value == told]
    for which in EstimateTable:
        for row in csv.reader(io.StringIO(estimate_csv(made, which).decode(), newline="")):
            assert not [cell for cell in row if cell.startswith(told)]


def test_a_workbook_holds_every_table_with_numbers_as_numbers(crowned: PreparedEstimate):
    data = estimate_xlsx(crowned)
    assert estimate_xlsx(crowned) == data
    book = openpyxl.load_workbook(io.BytesIO(data))
    assert book.sheetnames == [which.value.capitalize() for which in EstimateTable]
    header = [cell.value for cell in book["Lines"][1]]
    for name in ("quantity", "price", "amount"):
        column = header.index(name) + 1
        assert {book["Lines"].cell(row, column).data_type for row in range(2, 9)} == {"n"}


def test_an_estimate_in_words_shows_every_sum():
    made = prepared(FLAT, alternates=[{"name": "Dearer", "prices": {"margin": "0.3"}}])
    text = explain_estimate(made)
    # The first case of the worked ones has the same two boards.
    assert "1x6, by the board foot: length 16'-0\"" in text
    assert "Setting out, USD: to the hundredth, (hours 4 x price 56.00) = 224.00" in text
    assert "Selling price: to the hundredth, (cost " in text
    assert "Alternate: Dearer" in text
    assert "Each amount is worked out without loss" in text
    assert "Settings of the saw, behind it: BT1." in text
