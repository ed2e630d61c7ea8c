"""Cutting plans as JSON values, and in words for a terminal."""

from collections.abc import Iterator
from typing import Any

from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.length_json import length_in_words
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.cutting.asked import Proof
from lacunar.takeoff.cutting.plan_records import CutPattern, LengthPlans, MaterialPlan


def cutting_to_json(
    lengths: LengthPlans | None, assumptions: tuple[Assumption, ...], step: Step, solver: str
) -> dict[str, Any]:
    """Turn plans into JSON values, each record under its own names."""
    write = RecordWriter(step, trace=False)
    return {
        "units": str(step.units),
        "mark_to": step.text,
        "lengths": write.value(lengths),
        "assumptions": write.value(assumptions),
        "solver": solver,
    }


def cutting_in_words(lengths: LengthPlans | None, units: Units) -> str:
    """Turn plans into lines that a person cuts by."""
    lines: list[str] = []
    for plan in lengths.plans if lengths else ():
        lines.extend(_plan_lines(plan, units))
    if lengths and lengths.clock_struck:
        lines.append("The clock ended this before its counts did; a faster machine may differ.")
    return "\n".join(lines)


def _plan_lines(plan: MaterialPlan, units: Units) -> Iterator[str]:
    bought = length_in_words(plan.bought, units)
    cost = f", cost {plan.cost}" if plan.cost is not None else ""
    name = plan.material or "Stock"
    yield f"{name}: {plan.pieces} pieces from {len(plan.sticks)} sticks, {bought} bought{cost}"
    yield f"  {verdict(plan, units)}"
    for taken in plan.taken:
        price = f", {taken.cost}" if taken.cost is not None else ""
        length = length_in_words(taken.length, units)
        yield f"  take {taken.quantity} of {taken.stock}, {length}{price}"
    yield from (f"  {_pattern_line(pattern, units)}" for pattern in plan.patterns)
    for one in plan.one_length:
        length = length_in_words(one.length, units)
        more = one.more if one.more is not None else length_in_words(one.more_bought, units)
        yield f"  {length} alone: {one.quantity}, {more} more"


def verdict(plan: MaterialPlan, units: Units) -> str:
    """Turn what is proven of a plan into a sentence."""
    if plan.proof is Proof.BOUND:
        return "Proven best: no plan can cost less than its certificate says."
    if plan.proof is Proof.SEARCH:
        return "Proven best: every pattern of a better plan was tried."
    if plan.gap is not None:
        return f"Not proven best: no plan costs less than {plan.lower_bound}, {plan.gap} below."
    assert plan.least_bought is not None
    gap = length_in_words(plan.bought - plan.least_bought, units)
    return f"Not proven best: no plan buys more than {gap} less."


def _pattern_line(pattern: CutPattern, units: Units) -> str:
    parts = ", ".join(
        f"{part.quantity} at {length_in_words(part.length, units)}" for part in pattern.parts
    )
    left = length_in_words(pattern.offcut, units)
    return f"{pattern.times} x {pattern.stock}: {parts}; left {left}"
