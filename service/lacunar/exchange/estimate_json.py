"""An estimate as JSON: lines, totals, alternates, and what each ceiling was estimated by."""

from dataclasses import dataclass
from typing import Any

from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.take_off_json import PooledTakeOff, ceilings_to_json
from lacunar.measure.money import ROUNDING
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.estimate.estimate_records import Comparison, Estimate

Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class PricedTakeOff:
    """An estimate with the ceilings it is of, and what was assumed of stock and of prices."""

    pooled: PooledTakeOff
    estimate: Estimate
    stock_assumptions: tuple[Assumption, ...]
    price_assumptions: tuple[Assumption, ...]


@dataclass(frozen=True, slots=True)
class PricedAlternate:
    """An alternate: its name, its estimate, and what that differs by."""

    name: str
    priced: PricedTakeOff
    compared: Comparison


@dataclass(frozen=True, slots=True)
class PreparedEstimate:
    """What was asked for, estimated, and its alternates."""

    base: PricedTakeOff
    alternates: tuple[PricedAlternate, ...]


def estimate_to_json(prepared: PreparedEstimate, *, trace: bool) -> Json:
    """Turn an estimate into JSON values; with `trace`, each figure with its reason.

    Money is text with its decimals, never a number; the currency stands with each estimate.
    """
    step = prepared.base.pooled.step
    write = RecordWriter(step, trace)
    return {
        "units": str(step.units),
        "rounding": ROUNDING,
        **_priced(prepared.base, write),
        "alternates": [
            {
                "name": each.name,
                "comparison": write.value(each.compared),
                **_priced(each.priced, write),
            }
            for each in prepared.alternates
        ],
    }


def _priced(priced: PricedTakeOff, write: RecordWriter) -> Json:
    pooled = priced.pooled
    return {
        **write.record(priced.estimate),
        "ceilings": ceilings_to_json(pooled, write),
        "stock_assumptions": write.value(priced.stock_assumptions),
        "price_assumptions": write.value(priced.price_assumptions),
    }
