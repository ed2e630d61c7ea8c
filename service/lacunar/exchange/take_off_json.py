"""A take-off as JSON: parts and quantities, and what each ceiling of it was taken off by."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.layout_json import RecordWriter
from lacunar.layout.records import Layout
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.taken_off import TakenOff

Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class PooledCeiling:
    """One ceiling of a take-off as it was asked for: laid out, what was assumed, its digest."""

    layout: Layout
    assumptions: tuple[Assumption, ...]
    digest: str


def take_off_to_json(
    taken: TakenOff, pool: Sequence[PooledCeiling], step: Step, *, trace: bool
) -> Json:
    """Turn a take-off into JSON values.

    Parameters: `taken`; `pool`, its ceilings in their order; `step` that texts of lengths are
    rounded to; `trace` for the reason of each figure.
    """
    write = RecordWriter(step, trace)
    ceilings = [
        {**write.record(ceiling), **_asked(pooled, write)}
        for ceiling, pooled in zip(taken.ceilings, pool, strict=True)
    ]
    return {
        "units": str(step.units),
        "ceilings": ceilings,
        "parts": write.value(taken.parts),
        "cautions": write.value(taken.cautions),
    }


def _asked(pooled: PooledCeiling, write: RecordWriter) -> Mapping[str, Any]:
    return {
        "digest": pooled.digest,
        "take_off": ceiling_to_json(pooled.layout.ceiling)["take_off"],
        "assumptions": write.value(pooled.assumptions),
    }
