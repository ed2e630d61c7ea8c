"""Cutting plans as JSON values, and in words for a terminal."""

from collections.abc import Iterator
from typing import Any, Protocol

from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.length_json import length_in_words
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.cutting.asked import Proof
from lacunar.takeoff.cutting.plan_records import CutPattern, LengthPlans, MaterialPlan
from lacunar.takeoff.cutting.sheet_records import CutSheet, SheetPlan, SheetPlans


class Answered(Protocol):
    """What a cutting problem was answered with (`workflow.cutting`)."""

    @property
    def lengths(self) -> LengthPlans | None:
        """The plans of pieces."""

    @property
    def sheets(self) -> SheetPlans | None:
        """The plans of panels."""

    @property
    def mark_to(self) -> Step:
        """The step that texts are rounded to."""

    @property
    def assumptions(self) -> tuple[Assumption, ...]:
        """What was assumed."""

    @property
    def solver(self) -> str:
        """What solved the linear programs."""


def cutting_to_json(answered: Answered) -> dict[str, Any]:
    """Turn plans into JSON values, each record under its own names."""
    write = RecordWriter(answered.mark_to, trace=False)
    return {
        "units": str(answered.mark_to.units),
        "mark_to": answered.mark_to.text,
        "lengths": write.value(answered.lengths),
        "sheets": write.value(answered.sheets),
        "assumptions": write.value(answered.assumptions),
        "solver": answered.solver,
    }


def cutting_in_words(answered: Answered) -> str:
    """Turn plans into lines that a person cuts by."""
    units = answered.mark_to.units
    lengths, sheets = answered.lengths, answered.sheets
    lines: list[str] = []
    for plan in lengths.plans if lengths else ():
        lines.extend(_plan_lines(plan, units))
    for flat in sheets.plans if sheets else ():
        lines.extend(_sheet_lines(flat, units))
    if any(plans and plans.clock_struck for plans in (lengths, sheets)):
        lines.append("A clock ended this before its counts did; another machine may find another.")
    return "\n".join(lines)


def _plan_lines(plan: MaterialPlan, units: Units) -> Iterator[str]:
    bought = length_in_words(plan.bought, units)
    name = plan.material or "Stock"
    yield (
        f"{name}: {plan.pieces} pieces from {len(plan.sticks)} sticks, {bought} bought"
        f"{_priced(plan.cost)}"
    )
    least = None if plan.least_bought is None else length_in_words(plan.least_bought, units)
    yield f"  {verdict(plan.proof, plan.lower_bound or least or '')}"
    for taken in plan.taken:
        length = length_in_words(taken.length, units)
        yield f"  take {taken.quantity} of {taken.stock}, {length}{_priced(taken.cost)}"
    yield from (f"  {_pattern_line(pattern, _ids(plan), units)}" for pattern in plan.patterns)
    for one in plan.one_length:
        length = length_in_words(one.length, units)
        more = one.more if one.more is not None else length_in_words(one.more_bought, units)
        yield f"  {length} alone: {one.quantity}, {more} more"


def _priced(cost: str | None) -> str:
    return "" if cost is None else f", cost {cost}"


def verdict(proof: Proof | None, least: str) -> str:
    """Turn what is proven of a plan into a sentence."""
    if proof is Proof.BOUND:
        return "Proven best: no plan can do with less than its certificate says."
    if proof is Proof.SEARCH:
        return "Proven best: every pattern of a better plan was tried."
    return f"Not proven best: no plan does with less than {least}."


def _ids(plan: MaterialPlan) -> dict[Length, str]:
    """The ids of the pieces of each length."""
    found: dict[Length, dict[str, None]] = {}
    for stick in plan.sticks:
        for piece in stick.pieces:
            found.setdefault(piece.length, {})[piece.piece] = None
    return {length: "/".join(ids) for length, ids in found.items()}


def _pattern_line(pattern: CutPattern, ids: dict[Length, str], units: Units) -> str:
    parts = ", ".join(
        f"{part.quantity} {ids[part.length]} at {length_in_words(part.length, units)}"
        for part in pattern.parts
    )
    left = length_in_words(pattern.offcut, units)
    return f"{pattern.times} x {pattern.stock}: {parts}; left {left}"


def _sheet_lines(plan: SheetPlan, units: Units) -> Iterator[str]:
    name = plan.material or "Sheets"
    yield f"{name}: {plan.panels} panels from {len(plan.sheets)} sheets{_priced(plan.cost)}"
    yield f"  {verdict(plan.proof, plan.lower_bound or f'{plan.least_area} square feet')}"
    for taken in plan.taken:
        size = _by(taken.length, taken.width, units)
        yield f"  take {taken.quantity} of {taken.sheet}, {size}{_priced(taken.cost)}"
    shown: dict[object, list[CutSheet]] = {}
    for sheet in plan.sheets:
        key = (sheet.pattern, *(panel.panel for panel in sheet.panels))
        shown.setdefault(key, []).append(sheet)
    for alike in shown.values():
        first, last = alike[0].number, alike[-1].number
        numbers = f"sheet {first}" if first == last else f"sheets {first} to {last}"
        yield f"  {numbers} ({alike[0].sheet}):"
        yield from _cut_lines(alike[0], units)


def _cut_lines(sheet: CutSheet, units: Units) -> Iterator[str]:
    for cut in sheet.cuts:
        at = length_in_words(cut.at, units)
        yield f"    cut {cut.number}: {cut.part}, {cut.across} parted at {at}"
    for panel in sheet.panels:
        turned = ", turned" if panel.turned else ""
        yield f"    {panel.part}: {panel.panel}, {_by(panel.length, panel.width, units)}{turned}"


def _by(length: Length, width: Length, units: Units) -> str:
    return f"{length_in_words(length, units)} by {length_in_words(width, units)}"
