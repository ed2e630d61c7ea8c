"""From a query about one run to its division: rules, what is left open, and the layout's sums."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from lacunar.layout.runs.lone_run import LoneRun, divide_alone
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.assumptions import resolve_run
from lacunar.model.ceiling import Assumption
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.grid import WallCondition
from lacunar.model.room import RunName
from lacunar.model.rules import check
from lacunar.model.spec import BeamsSpec, BoxSpec, CeilingSpec, GridSpec, RoomSpec, RunSpec
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class Division:
    """A run divided, the step its marks are rounded to, and what was assumed for it."""

    run: LoneRun
    mark_to: Step
    assumptions: tuple[Assumption, ...]


def divide(query: Mapping[str, Any]) -> Division:
    """Turn a division's query, as read, into the division.

    Raises `SpecRefused` with every fault; pointers are into the query.
    """
    name = query.get("run", RunName.LENGTH)
    units = query.get("units", Units.INCH)
    step = query.get("mark_to", DEFAULTS[units].mark_to)
    spec = _run_spec(query)
    try:
        _judge(name, spec, query)
        run, assumptions = resolve_run(name, spec, units)
        divided = divide_alone(run, query["span"], query["beam_width"], step)
    except SpecRefused as refused:
        raise SpecRefused(_at_query(name, refused.faults)) from None
    return Division(
        divided,
        step,
        tuple(replace(each, pointer=_query_pointer(name, each.pointer)) for each in assumptions),
    )


def _run_spec(query: Mapping[str, Any]) -> RunSpec:
    plain = ("coffers", "largest_opening", "wished_opening", "parity", "held", "weights")
    return RunSpec(
        **{name: query[name] for name in plain if name in query},
        start=_condition(query, "start"),
        end=_condition(query, "end"),
    )


def _condition(query: Mapping[str, Any], wall: str) -> WallCondition | None:
    """What stands at a wall; None where the query says nothing of it."""
    kind = None if wall not in query else WallKind(query[wall].value)
    soffit: Length | None = query.get(f"{wall}_soffit")
    if soffit is not None:
        return WallCondition(WallKind.SOFFIT, soffit, kind or WallKind.NONE)
    return None if kind is None else WallCondition(kind)


def _judge(name: RunName, run: RunSpec, query: Mapping[str, Any]) -> None:
    """Hold the run against the rules of a ceiling, which are silent about all that is not asked."""
    span = query["span"]
    spec = CeilingSpec(
        room=RoomSpec(**{name.value: span}),
        grid=GridSpec(**{name.value: run}),
        beams=BeamsSpec(crosswise=BoxSpec(width=query["beam_width"])),
    )
    faults = check(spec, frozenset({f"/room/{name.other}", "/room/height"}))
    if faults:
        raise SpecRefused(faults)


def _at_query(name: RunName, faults: tuple[Fault, ...]) -> Iterator[Fault]:
    for fault in faults:
        yield replace(fault, pointer=_query_pointer(name, fault.pointer))


def _query_pointer(name: RunName, pointer: str) -> str:
    """A pointer into the spec of a ceiling as one into the query."""
    places = {f"/room/{name}": "/span", "/beams/crosswise/width": "/beam_width"}
    inside = pointer.removeprefix(f"/grid/{name}")
    for wall in ("start", "end"):
        places[f"/grid/{name}/{wall}/soffit"] = f"/{wall}_soffit"
    whole = "/weights" if inside.startswith("/weights/") else inside
    return places.get(pointer, whole)
