"""From the bytes of ceilings, stock and prices to an estimate and its alternates."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar

from lacunar.drawing.painters.engine import engine
from lacunar.exchange.csv_table import csv_bytes
from lacunar.exchange.estimate_json import (
    PreparedEstimate,
    PricedAlternate,
    PricedTakeOff,
    estimate_to_json,
)
from lacunar.exchange.estimate_request import (
    CHANGES,
    PRICES,
    Asked,
    EstimateAsked,
    EstimateParts,
    Told,
    asked_from,
    read_estimate,
)
from lacunar.exchange.estimate_tables import EstimateTable, estimate_table
from lacunar.exchange.stock_json import STOCK
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.take_off_json import PooledTakeOff
from lacunar.exchange.take_off_request import too_many_coffers, within
from lacunar.exchange.xlsx_book import xlsx_bytes
from lacunar.measure.units import Units
from lacunar.model import limits
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec
from lacunar.takeoff.buying.cut_materials import cut_materials
from lacunar.takeoff.buying.material_list import Listed
from lacunar.takeoff.estimate.comparing import compare
from lacunar.takeoff.estimate.deciding import DecidedPrices, decide_prices
from lacunar.takeoff.estimate.estimated import estimate
from lacunar.takeoff.estimate.sold import sold_at
from lacunar.workflow.material_list import materials_of, told_in_units
from lacunar.workflow.take_off import take_off_of

Made = TypeVar("Made")

Document = tuple[str, bytes]
"""The name of a document, and its bytes."""


@dataclass(frozen=True, slots=True)
class EstimateDocuments:
    """Documents of ceilings, and one each of prices, of stock and of alternates."""

    ceilings: tuple[Document, ...]
    prices: Document
    stock: Document | None = None
    alternates: Document | None = None


def prepare_estimate(document: bytes, units: Units | None = None) -> PreparedEstimate:
    """The bytes of what is to be estimated as its estimate.

    Parameters: `document`; `units` to tell lengths in, if not the first ceiling's own; names of
    materials stay as they are, as prices are told by them. Errors: `SpecRefused` with every fault
    of the first stage that finds any, in whichever part.
    """
    return estimate_of(read_estimate(document), units)


def prepare_estimates(documents: EstimateDocuments) -> PreparedEstimate:
    """Documents as one estimate; raises as above, pointers beginning with a document's name."""
    faults: list[Fault] = []
    several = len(documents.ceilings) > 1
    parts = EstimateParts(
        ceilings=tuple(
            read_document((name if several else "", document), {}, faults)
            for name, document in documents.ceilings
        ),
        stock=_told_if_any(documents.stock, {}, faults),
        prices=read_document(documents.prices, {}, faults),
        alternates=_told_if_any(documents.alternates, [], faults),
    )
    if faults:
        raise SpecRefused(faults)
    return estimate_of(asked_from(parts))


def _told_if_any(document: Document | None, missing: JsonValue, faults: list[Fault]) -> Told:
    return Told("", missing) if document is None else read_document(document, missing, faults)


def read_document(document: Document, missing: JsonValue, faults: list[Fault]) -> Told:
    """A document as the JSON value in it; what cannot be read is a fault, and `missing` told."""
    name, content = document
    try:
        return Told(name, read_json(content))
    except SpecRefused as refused:
        faults.extend(within(name, refused))
        return Told(name, missing)


def estimate_of(asked: EstimateAsked, units: Units | None = None) -> PreparedEstimate:
    """What is asked for, read, as its estimate; raises as `prepare_estimate`."""
    bench = _Bench(units)
    base = bench.priced(asked.base, _of_base(asked))
    if base is None:  # alternates would only tell the same again
        raise SpecRefused(bench.faults)
    found = [(each, bench.priced(each.asked, each.moved)) for each in asked.alternates]
    if bench.faults:
        raise SpecRefused(bench.faults)
    return PreparedEstimate(
        base,
        tuple(
            PricedAlternate(each.name, priced, compare(base.estimate, priced.estimate))
            for each, priced in found
            if priced is not None
        ),
    )


Moved = Callable[[str, SpecRefused], Iterable[Fault]]
"""Faults of a part, of ceilings, stock or prices, where they are told to be."""


def _of_base(asked: EstimateAsked) -> Moved:
    def moved(part: str, refused: SpecRefused) -> Iterable[Fault]:
        return within(asked.prices_at if part == PRICES else "", refused)

    return moved


@dataclass(slots=True)
class _Bench:
    """Estimates one after the other, and does nothing twice that they have in common.

    Faults are kept: nothing is priced of what has any.
    """

    units: Units | None
    faults: list[Fault] = field(default_factory=list)
    coffers: int = 0
    taken: dict[object, PooledTakeOff] = field(default_factory=dict)
    listed: dict[object, Listed] = field(default_factory=dict)

    def priced(self, asked: Asked, moved: Moved) -> PricedTakeOff | None:
        """An estimate; None where anything of it is at fault."""
        decided = self._tried(PRICES, moved, lambda: decide_prices(asked.prices))
        pooled = self._tried(CHANGES, moved, lambda: self._pooled(asked))
        if decided is None or pooled is None:
            return None
        listed = self._tried(STOCK, moved, lambda: self._materials(asked, pooled, decided))
        if listed is None:
            return None
        return _estimated(pooled, listed, decided)

    def _tried(self, part: str, moved: Moved, make: Callable[[], Made]) -> Made | None:
        try:
            return make()
        except SpecRefused as refused:
            self.faults.extend(moved(part, refused))
            return None

    def _pooled(self, asked: Asked) -> PooledTakeOff:
        specs = _specs(asked)
        if specs not in self.taken:
            pooled = told_in_units(take_off_of(asked.pool), self.units)
            self.coffers += sum(ceiling.coffers for ceiling in pooled.taken.ceilings)
            if self.coffers > limits.POOLED_COFFERS:
                raise SpecRefused([too_many_coffers(self.coffers)])
            self.taken[specs] = pooled
        return self.taken[specs]

    def _materials(self, asked: Asked, pooled: PooledTakeOff, decided: DecidedPrices) -> Listed:
        materials = cut_materials(pooled.taken.parts, pooled.pool[0].layout.ceiling.units)
        stock = sold_at(asked.stock, materials, decided.prices.materials)
        key = _specs(asked), stock
        if key not in self.listed:
            self.listed[key] = materials_of(pooled, stock).listed
        return self.listed[key]


def _specs(asked: Asked) -> tuple[CeilingSpec, ...]:
    return tuple(spec for _, spec in asked.pool)


def _estimated(pooled: PooledTakeOff, listed: Listed, decided: DecidedPrices) -> PricedTakeOff:
    layouts = [each.layout for each in pooled.pool]
    made = estimate(layouts, pooled.taken, listed.materials, decided.prices)
    return PricedTakeOff(pooled, made, listed.assumptions, decided.assumptions)


def estimate_answer(prepared: PreparedEstimate, *, trace: bool) -> Mapping[str, Any]:
    """An estimate as JSON values; with `trace`, each figure with its rule and operands."""
    return {**estimate_to_json(prepared, trace=trace), "engine": dict(engine())}


def estimate_csv(prepared: PreparedEstimate, which: EstimateTable) -> bytes:
    """One table of an estimate as CSV."""
    table = estimate_table(prepared, which)
    return csv_bytes(table.header, table.rows)


def estimate_xlsx(prepared: PreparedEstimate) -> bytes:
    """All tables of an estimate as a workbook, a sheet to each."""
    return xlsx_bytes(estimate_table(prepared, which) for which in EstimateTable)
