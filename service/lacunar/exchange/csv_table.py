"""Tables as CSV (RFC 4180) that a spreadsheet opens without running any of it."""

import csv
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from io import StringIO

from lacunar.exchange.length_json import decimal_number
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.measure.writing import LengthStyle, write_exact, write_length

Cell = str | int | float | None


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its name: what is sent as CSV, or stands on a sheet of a workbook."""

    name: str
    header: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


# What makes a spreadsheet take a cell for a formula, even within quotes.
_FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r")


def csv_bytes(header: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    r"""Turn a table into CSV: text quoted, numbers bare, nothing for None.

    Text that a spreadsheet would run gets an apostrophe in front.

    >>> csv_bytes(["of", "in"], [["=A1", 48.5], ["XB-1", None]])
    b'"of","in"\r\n"\'=A1",48.5\r\n"XB-1",""\r\n'
    """
    target = StringIO(newline="")
    writer = csv.writer(target, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    writer.writerow(header)
    for row in rows:
        writer.writerow(["" if cell is None else _guarded(cell) for cell in row])
    return target.getvalue().encode()


def _guarded(cell: str | int | float) -> str | int | float:
    if isinstance(cell, str) and cell.startswith(_FORMULA_SIGNS):
        return f"'{cell}"
    return cell


def length_cells(length: Length | None, units: Units) -> tuple[Cell, Cell, Cell]:
    """Turn a length into three cells: exact text with its unit, inches, millimeters."""
    if length is None:
        return None, None, None
    exact = write_exact(length, units)
    return exact, decimal_number(length.inches), decimal_number(length.millimeters)


def mark_cells(mark: Length | None, step: Step) -> tuple[Cell, Cell, Cell]:
    """Turn a rounded length into three cells: as it is read off a tape, inches, millimeters."""
    if mark is None:
        return None, None, None
    text = write_length(mark, LengthStyle(step.units, step, with_unit=True))
    return text, decimal_number(mark.inches), decimal_number(mark.millimeters)
