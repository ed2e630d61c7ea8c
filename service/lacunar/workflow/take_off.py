"""From the bytes of one ceiling or several to their take-off."""

from collections.abc import Mapping, Sequence
from typing import Any

from lacunar.drawing.painters.engine import engine
from lacunar.exchange.ceiling_json import digest
from lacunar.exchange.csv_table import csv_bytes
from lacunar.exchange.take_off_json import PooledCeiling, PooledTakeOff, take_off_to_json
from lacunar.exchange.take_off_request import (
    read_pool,
    too_many_ceilings,
    too_many_coffers,
    within,
)
from lacunar.exchange.take_off_tables import TakeOffTable, take_off_table
from lacunar.exchange.xlsx_book import xlsx_bytes
from lacunar.layout.ceiling_layout import lay_out
from lacunar.measure.units import Units
from lacunar.model import limits
from lacunar.model.assumptions import resolve
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec
from lacunar.takeoff.taken_off import take_off
from lacunar.workflow.prepare import told_in


def prepare_take_off(document: bytes, units: Units | None = None) -> PooledTakeOff:
    """The bytes of one ceiling or several as their take-off.

    Parameters: `document`; `units` to tell it in, if not the first ceiling's own. Errors:
    `SpecRefused` with every fault of the first stage that finds any, in whichever ceiling.
    """
    return take_off_of(read_pool(document), units)


def prepare_take_offs(documents: Sequence[tuple[str, bytes]]) -> PooledTakeOff:
    """Documents of a ceiling or several each, with their names, as one take-off.

    Errors: as above; pointers begin with the document's name where there are several.
    """
    pool: list[tuple[str, CeilingSpec]] = []
    faults: list[Fault] = []
    for name, document in documents:
        before = name if len(documents) > 1 else ""
        try:
            pool.extend((f"{before}{pointer}", spec) for pointer, spec in read_pool(document))
        except SpecRefused as refused:
            faults.extend(within(before, refused))
    if not faults and len(pool) > limits.POOLED_CEILINGS:
        faults.append(too_many_ceilings("", len(pool)))
    if faults:
        raise SpecRefused(faults)
    return take_off_of(tuple(pool))


def take_off_of(
    specs: tuple[tuple[str, CeilingSpec], ...], units: Units | None = None
) -> PooledTakeOff:
    """Specs, each with the pointer it stands at, as their take-off; raises as the above.

    Ceilings that are asked for in the same words are laid out once.
    """
    made: dict[CeilingSpec, PooledCeiling] = {}
    faults: list[Fault] = []
    coffers = 0
    for pointer, spec in specs:
        if spec in made:
            coffers += len(made[spec].layout.coffers)
        else:
            try:
                made[spec] = _laid_out(spec, units)
                coffers += len(made[spec].layout.coffers)
            except SpecRefused as refused:
                faults.extend(within(pointer, refused))
        if coffers > limits.POOLED_COFFERS:
            raise SpecRefused([too_many_coffers(coffers)])
    if faults:
        raise SpecRefused(faults)
    pool = tuple(made[spec] for _, spec in specs)
    layouts = [pooled.layout for pooled in pool]
    return PooledTakeOff(take_off(layouts), pool, layouts[0].ceiling.mark_to)


def _laid_out(spec: CeilingSpec, units: Units | None) -> PooledCeiling:
    resolution = told_in(resolve(spec), units)
    assumed = (*resolution.assumptions, *resolution.take_off_assumptions)
    return PooledCeiling(lay_out(resolution.ceiling), assumed, digest(resolution.ceiling))


def take_off_answer(prepared: PooledTakeOff, *, trace: bool) -> Mapping[str, Any]:
    """A take-off as JSON values; with `trace`, each figure with its rule and operands."""
    answer = take_off_to_json(prepared, trace=trace)
    return {**answer, "engine": dict(engine())}


def take_off_csv(prepared: PooledTakeOff, which: TakeOffTable) -> bytes:
    """One table of a take-off as CSV."""
    table = take_off_table(prepared, which)
    return csv_bytes(table.header, table.rows)


def take_off_xlsx(prepared: PooledTakeOff) -> bytes:
    """All tables of a take-off as a workbook, a sheet to each."""
    return xlsx_bytes(take_off_table(prepared, which) for which in TakeOffTable)
