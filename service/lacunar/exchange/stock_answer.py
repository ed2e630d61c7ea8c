"""Published sizes of stock as JSON and as a table."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from lacunar.exchange.csv_table import Cell, csv_bytes, length_cells
from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.query_schema import StockValue
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.published_stock import PublishedSize

CSV_HEADER = (
    "name",
    "kind",
    "common",
    "thickness",
    "thickness_in",
    "thickness_mm",
    "width",
    "width_in",
    "width_mm",
)


def sizes_to_json(sizes: Iterable[PublishedSize], step: Step) -> list[Any]:
    """Turn sizes into JSON values, each record under its own names."""
    written: list[Any] = RecordWriter(step, trace=False).value(tuple(sizes))
    return written


def sizes_to_csv(sizes: Iterable[PublishedSize], units: Units) -> bytes:
    """Turn sizes into a table, a row to each."""
    return csv_bytes(CSV_HEADER, _rows(sizes, units))


def _rows(sizes: Iterable[PublishedSize], units: Units) -> Iterator[tuple[Cell, ...]]:
    for size in sizes:
        thickness = length_cells(size.thickness, units)
        width = length_cells(size.width, units)
        common = "yes" if size.common else "no"
        yield (size.name, size.kind.value, common, *thickness, *width)


def value_of(sizes: Sequence[PublishedSize], field: StockValue) -> Length:
    """One value of the one size that is listed; raises `SpecRefused` where there is none."""
    if len(sizes) != 1:
        raise SpecRefused([_not_one(len(sizes))])
    value = sizes[0].thickness if field is StockValue.THICKNESS else sizes[0].width
    if value is None:
        raise SpecRefused([_random_width(sizes[0].name)])
    return value


def _not_one(count: int) -> Fault:
    return Fault(
        code="value_not_one",
        pointer="/name",
        message=f"One value is asked for, and {count} sizes are listed.",
        remedy="Name one size, such as name=1x8.",
        figures={"sizes": count},
    )


def _random_width(name: str) -> Fault:
    return Fault(
        code="value_not_one",
        pointer="/field",
        message=f"Hardwood such as {name} is sold in random widths, so its name gives no width.",
        remedy="Ask for its thickness.",
        figures={"name": name},
    )
