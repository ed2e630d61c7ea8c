"""A take-off as JSON: parts and quantities, and what each ceiling of it was taken off by."""

from collections.abc import Mapping
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


@dataclass(frozen=True, slots=True)
class PooledTakeOff:
    """A take-off with the ceilings it is of, in their order, and the step texts are rounded to."""

    taken: TakenOff
    pool: tuple[PooledCeiling, ...]
    step: Step


def take_off_to_json(pooled: PooledTakeOff, *, trace: bool) -> Json:
    """Turn a take-off into JSON values; with `trace`, each figure with its reason."""
    taken, step = pooled.taken, pooled.step
    write = RecordWriter(step, trace)
    return {
        "units": str(step.units),
        "ceilings": ceilings_to_json(pooled, write),
        "parts": write.value(taken.parts),
        "quantities": write.value(taken.quantities),
        "cautions": write.value(taken.cautions),
    }


def ceilings_to_json(pooled: PooledTakeOff, write: RecordWriter) -> list[Json]:
    """Turn the ceilings of a take-off into JSON values, with what each was taken off by."""
    return [
        {**write.record(ceiling), **_asked(asked, write)}
        for ceiling, asked in zip(pooled.taken.ceilings, pooled.pool, strict=True)
    ]


def _asked(asked: PooledCeiling, write: RecordWriter) -> Mapping[str, Any]:
    return {
        "digest": asked.digest,
        "take_off": ceiling_to_json(asked.layout.ceiling)["take_off"],
        "assumptions": write.value(asked.assumptions),
    }
