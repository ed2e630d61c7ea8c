"""From the bytes of ceilings and what is said about stock to what is to be bought."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from lacunar.drawing.painters.engine import engine
from lacunar.exchange.csv_table import csv_bytes
from lacunar.exchange.material_json import materials_to_json
from lacunar.exchange.material_tables import MaterialTable, material_table
from lacunar.exchange.stock_json import read_stock, read_stocked_pool
from lacunar.exchange.take_off_json import PooledTakeOff
from lacunar.exchange.xlsx_book import xlsx_bytes
from lacunar.measure.units import Units
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.buying.material_list import Listed, Planned, material_list
from lacunar.takeoff.buying.problems import Asked, problems
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.buying.stock_rules import within_stock
from lacunar.takeoff.buying.turned import turned_boards
from lacunar.takeoff.cutting.plan_records import LengthPlans
from lacunar.workflow.planning import Plans, planned
from lacunar.workflow.take_off import prepare_take_offs, take_off_of


@dataclass(frozen=True, slots=True)
class StockedTakeOff:
    """A take-off with its parts planned: what was asked, and the plans."""

    pooled: PooledTakeOff
    asked: Asked
    plans: Plans


@dataclass(frozen=True, slots=True)
class PreparedMaterials:
    """A material list with the take-off and the plans behind it."""

    pooled: PooledTakeOff
    planned: Planned
    listed: Listed
    solver: str


def prepare_materials(document: bytes, units: Units | None = None) -> PreparedMaterials:
    """The bytes of one ceiling or several, with stock or without, as their material list.

    Parameters: `document`; `units` to tell lengths in, if not the first ceiling's own; names of
    materials stay as they are, as stock is told by them. Errors: `SpecRefused` with every fault of
    the first stage that finds any.
    """
    specs, said = read_stocked_pool(document)
    return materials_of(told_in_units(take_off_of(specs), units), said)


def told_in_units(pooled: PooledTakeOff, units: Units | None) -> PooledTakeOff:
    """A take-off whose lengths are told in units, if any are asked for; names stay as they are."""
    if units in (None, pooled.step.units):
        return pooled
    return replace(pooled, step=DEFAULTS[units].mark_to)


def prepare_stocked(
    documents: Sequence[tuple[str, bytes]], stock: bytes | None = None
) -> PreparedMaterials:
    """Documents of ceilings with their names, and one that tells stock, as their material list.

    A document by itself may have its stock beside its ceilings.
    """
    if stock is None and len(documents) == 1:
        return prepare_materials(documents[0][1])
    pooled = prepare_take_offs(documents)
    units = pooled.pool[0].layout.ceiling.units
    return materials_of(pooled, StockSaid() if stock is None else read_stock(stock, units))


def materials_of(
    pooled: PooledTakeOff, said: StockSaid, *, compared: bool = True
) -> PreparedMaterials:
    """A take-off and what is said about stock as a material list; raises as the above.

    Only where it is `compared` is told what each length alone, and boards laid the other way, would
    come to; nothing else differs.
    """
    stocked = stocked_take_off(pooled, said, compared=compared)
    layouts = [each.layout for each in pooled.pool]
    turned: LengthPlans | None = None
    boards = turned_boards(layouts) if compared else ()
    if boards:
        turned = _plans(problems(layouts, boards, said)).lengths
    parts = Planned(stocked.asked, stocked.plans.lengths, stocked.plans.sheets)
    listed = material_list(pooled.taken, parts, turned)
    return PreparedMaterials(pooled, parts, listed, stocked.plans.solver)


def stocked_take_off(
    pooled: PooledTakeOff, said: StockSaid, *, compared: bool = True
) -> StockedTakeOff:
    """A take-off with all its parts planned from stock; raises and compares as the above."""
    asked = problems([each.layout for each in pooled.pool], pooled.taken.parts, said)
    return StockedTakeOff(pooled, asked, _plans(asked, compared=compared))


def _plans(asked: Asked, *, compared: bool = True) -> Plans:
    try:
        return planned(asked.lengths, asked.sheets, alone=compared)
    except SpecRefused as refused:
        raise SpecRefused(within_stock(refused.faults)) from None


def materials_answer(prepared: PreparedMaterials, *, trace: bool) -> Mapping[str, Any]:
    """A material list as JSON values; with `trace`, each figure with its rule and operands."""
    answer = materials_to_json(prepared, trace=trace)
    return {**answer, "engine": dict(engine())}


def materials_csv(prepared: PreparedMaterials, which: MaterialTable) -> bytes:
    """One table of a material list as CSV."""
    table = material_table(prepared, which)
    return csv_bytes(table.header, table.rows)


def materials_xlsx(prepared: PreparedMaterials) -> bytes:
    """All tables of a material list as a workbook, a sheet to each."""
    return xlsx_bytes(material_table(prepared, which) for which in MaterialTable)
