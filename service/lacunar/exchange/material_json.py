"""A material list as JSON, with the ceilings it is for and what was assumed."""

from typing import Any, Protocol

from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.take_off_json import PooledTakeOff, ceilings_to_json
from lacunar.takeoff.buying.material_list import Listed, Planned

Json = dict[str, Any]


class Prepared(Protocol):
    """A material list with what is behind it (`workflow.material_list`)."""

    @property
    def pooled(self) -> PooledTakeOff:
        """The take-off it is of."""

    @property
    def planned(self) -> Planned:
        """The cutting plans behind it."""

    @property
    def listed(self) -> Listed:
        """The list."""

    @property
    def solver(self) -> str:
        """What solved the linear programs."""


def materials_to_json(prepared: Prepared, *, trace: bool) -> Json:
    """Turn a material list into JSON values; with `trace`, each figure with its reason."""
    pooled, listed = prepared.pooled, prepared.listed
    write = RecordWriter(pooled.step, trace)
    return {
        "units": str(pooled.step.units),
        "mark_to": pooled.step.text,
        "ceilings": ceilings_to_json(pooled, write),
        **write.record(listed.materials),
        "assumptions": write.value(listed.assumptions),
        "solver": prepared.solver,
    }
