"""The material list: what to order of everything, apart from what parts take and what is waste."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import groupby
from types import MappingProxyType

from lacunar.drawing.sheets.cut_rows import order_words
from lacunar.drawing.sheets.list_notes import (
    assumed_texts,
    caution_texts,
    fault_texts,
    notes_beside,
    refused_pages,
)
from lacunar.drawing.sheets.pages import NO_SCALE, Page, SheetSource
from lacunar.drawing.sheets.part_words import in_rows
from lacunar.drawing.sheets.wide_pages import fitted_table, wide_pages
from lacunar.drawing.sheets.wide_tables import WideCell, WideColumn, WideGroup, WideRow, WideTable
from lacunar.measure.figure import NumberFigure
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.material_records import LineKind, MaterialLine
from lacunar.takeoff.quantities.quantity_records import MetricUnit, QuantityUnit, UsedFor, in_metric

PLACES = 2
_TITLES: Mapping[LineKind, str] = MappingProxyType(
    {
        LineKind.STICK: "BY THE STICK",
        LineKind.SHEET: "BY THE SHEET",
        LineKind.BOARD: "BOARDS FOR COFFERS",
        LineKind.EACH: "BY THE BOX, OR EACH",
        LineKind.AREA: "BY AREA",
        LineKind.VOLUME: "BY VOLUME",
    }
)
_UNITS: Mapping[QuantityUnit | MetricUnit, str] = MappingProxyType(
    {
        QuantityUnit.FOOT: "ft",
        QuantityUnit.SQUARE_FOOT: "sq ft",
        QuantityUnit.COUNT: "each",
        MetricUnit.SQUARE_METER: "sq m",
    }
)
_COLUMNS = (
    WideColumn("LINE", "line", anchor="start"),
    WideColumn("MATERIAL", "material", wraps=True, anchor="start"),
    WideColumn("FOR", "used_for", wraps=True, anchor="start"),
    WideColumn("NEEDED", "need"),
    WideColumn("WASTE", "waste"),
    WideColumn("LEFT OVER", "left_over"),
    WideColumn("ON HAND", "on_hand"),
    WideColumn("BOUGHT", "amount"),
    WideColumn("UNIT", "unit", anchor="start"),
    WideColumn("TO ORDER", "order", wraps=True, anchor="start"),
    WideColumn("PART MARKS", "parts", wraps=True, anchor="start"),
)
_OF_THE_SAW = ("kerf", "end_trim", "edge_trim", "usable_offcut", "effort")
"""What is assumed for cutting, which the cutting diagrams tell."""
_OF_PARTS = ("length_allowance", "width_allowance", "blocking", "cleat_width")
"""What is assumed for sizes of parts, which the cut list tells."""


def material_pages(source: SheetSource) -> tuple[Page, ...]:
    """The material list on as many pages as it needs; in words why not, where there is none."""
    lists = source.lists
    if lists is None:
        return ()
    if lists.stocked is None:
        return refused_pages(source, fault_texts(lists.faults, source.wording))
    lines = lists.stocked.listed.materials.lines
    if not lines:
        return ()
    table, space = fitted_table(source, _table(lines, source.wording.units))
    made = (*lists.assumptions, *lists.stocked.listed.assumptions)
    told = (
        ("notes", "NOTES", tuple(_notes())),
        ("cautions", "CAUTIONS", caution_texts(lists.stocked.listed.materials.cautions)),
        ("assumed", "ASSUMED", assumed_texts(_assumed(made), source.wording)),
    )
    notes = notes_beside(told, space.note, source.typeface)
    unscaled = replace(source, fields=replace(source.fields, scale=NO_SCALE))
    parts = table.blocks(space.part, source.typeface)
    return wide_pages(unscaled, space, parts, notes)


def _table(lines: Sequence[MaterialLine], units: Units) -> WideTable:
    groups = (
        WideGroup(_TITLES[kind], tuple(_row(line, units) for line in of_kind))
        for kind, of_kind in groupby(lines, key=lambda line: line.kind)
    )
    return WideTable("material", "MATERIAL LIST", _COLUMNS, tuple(groups), ("used_for",))


def _row(line: MaterialLine, units: Units) -> WideRow:
    figures = (line.need, line.waste, line.left_over, line.on_hand, line.amount)
    cells = (
        WideCell(str(line.number)),
        WideCell(line.name),
        WideCell(", ".join(_used_for(each) for each in line.used_for)),
        *(_amount(line, figure, units) for figure in figures),
        WideCell(_unit(line, units)),
        WideCell(order_words(line) or "nothing"),
        WideCell(in_rows([part.mark for part in line.parts]) or "the whole ceiling"),
    )
    return WideRow(str(line.number), cells)


def _amount(line: MaterialLine, figure: NumberFigure, units: Units) -> WideCell:
    told = in_metric(line.unit, figure) if units is Units.MILLIMETER else None
    value: Fraction = (told or figure).value
    return WideCell(_number(value, line.unit), str(value))


def _number(value: Fraction, unit: QuantityUnit) -> str:
    """A number as it is counted, or to two places, so that points stand under each other."""
    text = decimal_text(value, PLACES)
    if unit is QuantityUnit.COUNT:
        return text
    whole, _, part = text.partition(".")
    return f"{whole}.{part:0<{PLACES}}"


def _used_for(of: UsedFor) -> str:
    return "whole ceiling" if of is UsedFor.ALL else of.value.replace("_", " ")


def _unit(line: MaterialLine, units: Units) -> str:
    metric = line.metric_unit if units is Units.MILLIMETER else None
    unit: QuantityUnit | MetricUnit = metric or line.unit
    return _UNITS.get(unit, unit.value)


def _notes() -> Iterator[str]:
    yield (
        "What is bought, and taken from what is on hand, is what is needed, what is waste and what"
        " is left over, on every line. Waste is saw cuts, trimmed ends and offcuts too short to"
        " keep, or the share that is usual of what is not cut."
    )
    yield "Sticks and sheets are those of the cutting diagrams; part marks those of the cut list."


def _assumed(made: Sequence[Assumption]) -> Iterator[Assumption]:
    elsewhere = (*_OF_THE_SAW, *_OF_PARTS)
    return (each for each in made if each.pointer.rpartition("/")[2] not in elsewhere)
