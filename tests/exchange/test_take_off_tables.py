"""Take-offs as CSV and as a workbook: numbers are numbers, text is text, bytes are the same."""

import csv
import io
import json
import zipfile
from fractions import Fraction
from pathlib import Path

import openpyxl
import pytest

from lacunar.exchange.csv_table import Table, csv_bytes
from lacunar.exchange.take_off_json import PooledTakeOff
from lacunar.exchange.take_off_tables import HEADERS, TakeOffTable, take_off_table
from lacunar.exchange.xlsx_book import MOST_CHARACTERS, xlsx_bytes
from lacunar.measure.notation import read_length
from lacunar.measure.units import Units
from lacunar.workflow.take_off import prepare_take_off, take_off_csv, take_off_xlsx

CEILINGS = Path(__file__).parents[2] / "examples" / "ceilings"
EXAMPLES = sorted(CEILINGS.glob("*.json"))

# What makes a spreadsheet take a cell for a formula.
SIGNS = ("=", "+", "-", "@", "\t", "\r")


def pooled(*names: str, **more: object) -> PooledTakeOff:
    specs = [json.loads((CEILINGS / f"{name}.json").read_text("utf-8")) for name in names]
    return prepare_take_off(json.dumps([{**spec, **more} for spec in specs]).encode())


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize("which", list(TakeOffTable))
def test_every_row_fits_its_header(path: Path, which: TakeOffTable):
    taken = prepare_take_off(path.read_bytes())
    table = take_off_table(taken, which)
    assert {len(row) for row in table.rows} <= {len(HEADERS[which])}
    header, *rows = csv.reader(io.StringIO(take_off_csv(taken, which).decode()))
    assert tuple(header) == table.header
    assert len(rows) == len(table.rows)


def test_a_row_of_parts_by_hand():
    """Dining room: openings of 43 between sides of 3/4, mitred: 43 + 2 * 3/4 = 44 1/2, 48 of it."""
    text = take_off_csv(pooled("dining_room"), TakeOffTable.PARTS).decode()
    first = next(csv.DictReader(io.StringIO(text)))
    assert (first["mark"], first["material"], first["quantity"]) == ("SD1", "1x6", "48")
    assert first["length"] == "3'-8 1/2\""
    assert first["length_in"] == "44.5"
    assert first["length_mm"] == "1130.3"  # 44.5 * 25.4
    assert (first["short_length_in"], first["width_in"]) == ("43", "5.5")
    assert (first["left_cut"], first["left_angle_deg"]) == ("mitred", "45")


def test_decimals_are_exact_where_the_text_is_rounded():
    taken = pooled("garden_room", "bibliothek")
    parts = {part.mark: part for part in taken.taken.parts}
    for row in csv.DictReader(io.StringIO(take_off_csv(taken, TakeOffTable.PARTS).decode())):
        exact = parts[row["mark"]].length.value
        assert abs(Fraction(row["length_in"]) - exact.inches) < Fraction(1, 10**6)
        assert abs(Fraction(row["length_mm"]) - exact.millimeters) < Fraction(1, 10**6)
        tape = read_length(row["length"], Units.INCH)
        assert abs(tape - exact).inches <= Fraction(1, 32)  # half of 1/16


def test_a_workbook_read_back_holds_the_same_tables():
    taken = pooled("dining_room", "garden_room")
    book = openpyxl.load_workbook(io.BytesIO(take_off_xlsx(taken)))
    assert book.sheetnames == [which.value.capitalize() for which in TakeOffTable]
    for which in TakeOffTable:
        table = take_off_table(taken, which)
        rows = list(book[which.value.capitalize()].iter_rows(values_only=True))
        assert rows[0] == table.header
        assert len(rows) - 1 == len(table.rows)
        for written, meant in zip(rows[1:], table.rows, strict=True):
            assert [cell or None for cell in written] == [cell or None for cell in meant]


def test_numbers_are_numbers_and_what_begins_like_a_formula_is_text():
    taken = pooled("dining_room", name="=1+1")
    book = openpyxl.load_workbook(io.BytesIO(take_off_xlsx(taken)))
    cells = [cell for sheet in book for row in sheet.iter_rows() for cell in row]
    assert "f" not in {cell.data_type for cell in cells}
    assert [cell.value for cell in cells if cell.value == "=1+1"]
    columns = [cell.value for cell in book["Parts"][1]]
    numbers = [name for name in columns if name and name.endswith(("_in", "_mm", "quantity"))]
    for name in numbers:
        column = columns.index(name) + 1
        kinds = {book["Parts"].cell(row, column).data_type for row in (2, 3, 4)}
        assert kinds == {"n"}
    names = list(csv.DictReader(io.StringIO(take_off_csv(taken, TakeOffTable.CEILINGS).decode())))
    assert names[0]["name"] == "'=1+1"


@pytest.mark.parametrize("sign", SIGNS)
def test_no_formula_gets_through_from_anywhere(sign: str):
    told = f"{sign}cmd|' /C calc'!A0"
    table = Table("T", ("of", "n"), ((told, 1), (f"{sign}1", 2.5), ("plain", None)))
    rows = csv.reader(io.StringIO(csv_bytes(table.header, table.rows).decode(), newline=""))
    assert [row[0][0] for row in rows][1:] == ["'", "'", "p"]
    data = xlsx_bytes([table])
    sheet = openpyxl.load_workbook(io.BytesIO(data))["T"]
    assert {cell.data_type for cell in sheet["A"]} == {"s"}
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        assert b"<f>" not in book.read("xl/worksheets/sheet1.xml")


def test_text_longer_than_a_cell_takes_is_cut():
    sheet = openpyxl.load_workbook(io.BytesIO(xlsx_bytes([Table("T", ("a",), (("x" * 40_000,),))])))
    assert len(str(sheet["T"]["A2"].value)) == MOST_CHARACTERS


def test_a_workbook_is_the_same_bytes_and_tells_no_clock():
    data = take_off_xlsx(pooled("dining_room"))
    assert take_off_xlsx(pooled("dining_room")) == data
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        assert {entry.date_time for entry in book.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        core = book.read("docProps/core.xml").decode()
    assert core.count("1980-01-01T00:00:00Z") == core.count("dcterms:W3CDTF") == 2
