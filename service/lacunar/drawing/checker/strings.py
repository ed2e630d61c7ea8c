"""Dimension strings and marks tables as a reader takes them off the print: names and figures."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from lacunar.drawing.checker.dimension_lines import DimensionLine, dimension_lines
from lacunar.drawing.checker.facts import WALLS_OF_RUN
from lacunar.drawing.checker.json_node import exact_millimeters
from lacunar.drawing.checker.records import GroupRead, SheetRead
from lacunar.measure.notation import LengthTextError, read_length
from lacunar.measure.units import Units

# Long figures in millimeters are parted in threes by this space, as ISO 80000-1 has it.
THIN_SPACE = "\N{THIN SPACE}"

# What is marked: the id it belongs to, and near, far or center.
Place = tuple[str, str]


@dataclass(frozen=True, slots=True)
class StringRead:
    """One dimension string of a run: `openings`, `centers`, `strips` or `overall`.

    `end` is the end of the other run it is taken at.
    """

    group: GroupRead
    run: str
    end: str
    name: str
    view: int
    dimensions: tuple[DimensionLine, ...]


@dataclass(frozen=True, slots=True)
class MarkRead:
    """One entry of a marks table, under the run and the place it marks."""

    group: GroupRead
    run: str
    end: str
    of: str
    side: str
    kind: str
    text: str


def run_strings(sheet: SheetRead) -> Iterator[StringRead]:
    """The dimension strings of the two runs, without those of other things such as sections."""
    for group in sheet.of_kind("dimension-string"):
        run = group.data.get("run", "")
        if run in WALLS_OF_RUN:
            view = sheet.around(group, "view")
            number = view.number if view else -1
            dimensions = tuple(dimension_lines(sheet, group))
            end, name = group.data.get("end", "start"), group.data.get("string", "")
            yield StringRead(group, run, end, name, number, dimensions)


def marks_read(sheet: SheetRead) -> Iterator[MarkRead]:
    """The entries of the sheet's marks tables, row by row."""
    for table in sheet.of_kind("marks-table"):
        for row in sheet.of_kind("mark-row", table):
            for mark in sheet.of_kind("mark", row):
                texts = [lettering.text for lettering in sheet.letterings_in(mark)]
                yield MarkRead(
                    mark,
                    table.data.get("run", ""),
                    table.data.get("end", "start"),
                    row.data.get("of", ""),
                    mark.data.get("side", ""),
                    mark.data.get("kind", ""),
                    " ".join(texts),
                )


def printed(text: str, sheet: SheetRead) -> Fraction | None:
    """A printed figure read as a person would, in millimeters; None for what is no length.

    What stands behind it in brackets is the same in other units, for comparison.
    """
    first, _, _ = text.partition(" [")
    return read_in(first, sheet.data.get("units", ""))


def read_in(text: str, units: str) -> Fraction | None:
    """A figure in units, in millimeters; None for what is no length."""
    try:
        return _read(text.replace(THIN_SPACE, ""), Units(units))
    except (LengthTextError, ValueError):
        return None


@lru_cache(maxsize=4096)
def _read(text: str, units: Units) -> Fraction:
    # The same few figures stand in strings and tables, and are asked for by several points.
    return read_length(text, units).millimeters


def stated(group: GroupRead) -> Fraction | None:
    """The exact value that a group says it prints, in millimeters; None where it says none."""
    try:
        return exact_millimeters(group.data.get("value", ""))
    except ValueError:
        return None


def in_words(length: Fraction) -> str:
    """A length for a finding."""
    return f"{float(length):.4f} mm"
