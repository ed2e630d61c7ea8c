"""How estimate tests come by estimates: from documents as they would be sent."""

import json
from typing import Any

from lacunar.exchange.price_json import prices_from
from lacunar.exchange.strict_json import read_json
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.estimate.deciding import DecidedPrices, decide_prices
from lacunar.takeoff.estimate.estimate_records import Estimate, EstimateLine, LaborCount
from lacunar.takeoff.estimate.words import LaborPer, Work
from lacunar.workflow.estimate import prepare_estimate

Document = dict[str, Any]

# Two flat beams across 96 in: no backing, no crown, nothing painted.
FLAT: Document = {
    "room": {"length": 144, "width": 96, "height": 100},
    "beams": {"crosswise": {"profile": "flat", "bottom": "1x6"}},
    "grid": {
        "length": {"coffers": 3, "start": "none", "end": "none"},
        "width": {"coffers": 1, "start": "none", "end": "none"},
    },
    "panel": {"kind": "existing"},
    "take_off": {"finish": {"kind": "none"}},
}
# One coffer with crown all round.
CROWNED: Document = {
    **FLAT,
    "room": {"length": 120, "width": 96, "height": 100},
    "beams": {},
    "grid": {name: {"coffers": 1, "start": "none", "end": "none"} for name in ("length", "width")},
    "crown": {"face": "3 1/4", "spring_from_wall": 38, "method": "coped_in_place"},
}


def estimated(*ceilings: Document, stock: Document | None = None, **prices: Any) -> Estimate:
    """The estimate of ceilings by a price list."""
    document = {
        "ceilings": ceilings,
        "prices": {"currency": "USD", **prices},
        "stock": stock or {},
    }
    return prepare_estimate(json.dumps(document).encode()).base.estimate


def lines_of(estimate: Estimate) -> dict[str, EstimateLine]:
    """Lines by their names."""
    return {line.name: line for line in estimate.lines}


def counts_of(estimate: Estimate) -> dict[tuple[LaborPer, Work | None], LaborCount]:
    """What labor is counted by, by its unit and kind."""
    return {(count.per, count.of): count for count in estimate.counts}


def decided(**prices: Any) -> DecidedPrices:
    """A price list with nothing open."""
    # As read from JSON: whole numbers are int, all others Decimal.
    text = json.dumps({"currency": "USD", **prices}, default=lambda number: f"\0{number}\0")
    value = read_json(text.replace('"\\u0000', "").replace('\\u0000"', "").encode())
    return decide_prices(prices_from(value))


def faults_of(**prices: Any) -> set[tuple[str, str]]:
    """Codes and pointers of all faults of a price list."""
    try:
        decided(**prices)
    except SpecRefused as refused:
        return {(fault.code, fault.pointer) for fault in refused.faults}
    return set()
