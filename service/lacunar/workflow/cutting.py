"""From a cutting problem's bytes, bare or as ceilings, to its plans."""

from dataclasses import dataclass

from lacunar.exchange.cutting_json import cutting_from
from lacunar.exchange.stock_json import stocked_pool_from
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.cutting.deciding import decide
from lacunar.takeoff.cutting.plan_records import LengthPlans
from lacunar.takeoff.cutting.sheet_records import SheetPlans
from lacunar.workflow.material_list import StockedTakeOff, stocked_take_off
from lacunar.workflow.planning import Plans, planned
from lacunar.workflow.take_off import take_off_of

# A bare cutting problem has none of these names, ceilings have one.
_OF_CEILINGS = {"room", "ceiling", "ceilings"}


@dataclass(frozen=True, slots=True)
class AnsweredCutting:
    """The plans of pieces and of panels, where there were any, and what was assumed for them."""

    lengths: LengthPlans | None
    sheets: SheetPlans | None
    mark_to: Step
    assumptions: tuple[Assumption, ...]
    solver: str


def plan_cuts(document: bytes) -> AnsweredCutting:
    """Turn the bytes of a cutting problem, or of ceilings with stock or without, into plans.

    Raises `SpecRefused` with every fault of the first stage that finds any.
    """
    value = read_json(document)
    if _is_of_ceilings(value):
        specs, said = stocked_pool_from(value)
        return cuts_of(stocked_take_off(take_off_of(specs), said))
    decided = decide(cutting_from(value))
    return _answered(planned(decided.lengths, decided.sheets), decided.mark_to, decided.assumptions)


def _is_of_ceilings(value: JsonValue) -> bool:
    return isinstance(value, list) or (
        isinstance(value, dict) and not _OF_CEILINGS.isdisjoint(value)
    )


def cuts_of(stocked: StockedTakeOff) -> AnsweredCutting:
    """The plans of a take-off by themselves, pieces going by their part marks."""
    return _answered(stocked.plans, stocked.pooled.step, stocked.asked.assumptions)


def _answered(plans: Plans, mark_to: Step, assumptions: tuple[Assumption, ...]) -> AnsweredCutting:
    return AnsweredCutting(plans.lengths, plans.sheets, mark_to, assumptions, plans.solver)
