"""Tables as one workbook (Office Open XML) whose bytes hang on nothing but the tables."""

from collections.abc import Iterable
from datetime import UTC, datetime
from io import BytesIO

import xlsxwriter

from lacunar.exchange.csv_table import Cell, Table

# A workbook must say when it was made; said is the first moment its archive can tell, no clock.
_MADE = datetime(1980, 1, 1, tzinfo=UTC)

# Nothing that stands in a table is ever taken for a formula, a link or a number.
_TEXT_IS_TEXT = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_numbers": False,
    "strings_to_urls": False,
}
# A spreadsheet takes no more characters in one cell.
MOST_CHARACTERS = 32767

_NARROWEST, _WIDEST = 6, 40


def xlsx_bytes(tables: Iterable[Table]) -> bytes:
    """Turn tables into a workbook with a sheet to each, its header row held in view.

    Text is written as text, whatever it begins with; numbers are numbers; nothing stands for None.
    """
    target = BytesIO()
    book = xlsxwriter.Workbook(target, _TEXT_IS_TEXT)
    book.set_properties({"created": _MADE})
    bold = book.add_format({"bold": True})
    for table in tables:
        sheet = book.add_worksheet(table.name)
        sheet.freeze_panes(1, 0)
        for column, heading in enumerate(table.header):
            sheet.write_string(0, column, heading, bold)
        widths = [len(heading) for heading in table.header]
        for number, row in enumerate(table.rows, start=1):
            for column, cell in enumerate(row):
                _write(sheet, (number, column), cell)
                widths[column] = max(widths[column], len(str(cell)))
        for column, width in enumerate(widths):
            sheet.set_column(column, column, min(max(width + 1, _NARROWEST), _WIDEST))
    book.close()
    return target.getvalue()


def _write(sheet: "xlsxwriter.worksheet.Worksheet", at: tuple[int, int], cell: Cell) -> None:
    if isinstance(cell, str):
        sheet.write_string(*at, cell[:MOST_CHARACTERS])
    elif cell is not None:
        sheet.write_number(*at, cell)
