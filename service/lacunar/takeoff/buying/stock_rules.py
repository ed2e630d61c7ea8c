"""Holds what was said about stock against what can be planned, by the rules of cutting problems."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TypeVar

from lacunar.measure.units import Units
from lacunar.model.cutting_limits import PACK_HOLDS
from lacunar.model.faults import Fault
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.cutting.rules import RULES, something_is_cut
from lacunar.takeoff.cutting.said import (
    CuttingSpec,
    OffcutSpec,
    StockLengthSpec,
    StockSheetSpec,
)

Row = TypeVar("Row", StockLengthSpec, OffcutSpec, StockSheetSpec)

STOCK = "/stock"
_NAMED = {"/stock": "/lengths"}


def stock_faults(said: StockSaid) -> Iterator[Fault]:
    """Every fault of what was said about stock, wherever pieces may come from."""
    spec = CuttingSpec(
        units=said.units or Units.INCH,
        stock=tuple(_plain(row) for row in said.lengths),
        offcuts=tuple(_plain(row) for row in said.offcuts),
        sheets=tuple(_plain(row) for row in said.sheets),
        kerf=said.kerf,
        end_trim=said.end_trim,
        edge_trim=said.edge_trim,
        usable_offcut=said.usable_offcut,
        most_lengths=said.most_lengths,
    )
    for rule in RULES:
        if rule is not something_is_cut:
            yield from within_stock(rule(spec))
    yield from _packs(said)


def _plain(row: Row) -> Row:
    """A row with its material as it is compared: capitals make no other material."""
    return replace(row, material=row.material.casefold())


def within_stock(faults: Iterable[Fault]) -> Iterator[Fault]:
    """Faults of a cutting problem, with pointers into what was said about stock."""
    for fault in faults:
        first, slash, rest = fault.pointer[1:].partition("/")
        pointer = f"{STOCK}{_NAMED.get(f'/{first}', f'/{first}')}{slash}{rest}"
        yield replace(fault, pointer=pointer)


def _packs(said: StockSaid) -> Iterator[Fault]:
    named: set[str] = set()
    for place, pack in enumerate(said.packs):
        least, most = PACK_HOLDS
        if not least <= pack.holds.amount <= most:
            yield Fault(
                code="pack_out_of_bounds",
                pointer=f"{STOCK}/packs/{place}/holds",
                message=f"A pack holds from {least} to {most}.",
                remedy="Check the figure and its unit.",
                figures={"least": str(least), "most": str(most)},
            )
        if pack.of.casefold() in named:
            yield Fault(
                code="label_doubled",
                pointer=f"{STOCK}/packs/{place}/of",
                message="A pack of this is told already.",
                remedy="Give one pack of each.",
                figures={"name": pack.of},
            )
        named.add(pack.of.casefold())
