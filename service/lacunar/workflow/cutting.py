"""From a cutting problem's bytes to its plans: read, hold against the rules, decide, plan."""

import time
from dataclasses import dataclass
from importlib.metadata import version

from lacunar.exchange.cutting_json import read_cutting
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.cutting.deciding import decide
from lacunar.takeoff.cutting.plan_records import LengthPlans
from lacunar.takeoff.cutting.sheet_records import SheetPlans

# Plans are bounded by counts; this only ends what is far beyond them.
SECONDS = 30


@dataclass(frozen=True, slots=True)
class AnsweredCutting:
    """The plans of pieces and of panels, where there were any, and what was assumed for them."""

    lengths: LengthPlans | None
    sheets: SheetPlans | None
    mark_to: Step
    assumptions: tuple[Assumption, ...]
    solver: str


def plan_cuts(document: bytes) -> AnsweredCutting:
    """Turn the bytes of a cutting problem into plans.

    Raises `SpecRefused` with every fault of the first stage that finds any.
    """
    decided = decide(read_cutting(document))
    # The solver costs a tenth of a second to load, which nothing else should wait for.
    from lacunar.takeoff.cutting.lengths import plan_lengths
    from lacunar.takeoff.cutting.sheets import plan_sheets
    from lacunar.takeoff.cutting.task import Guard

    end = time.monotonic() + SECONDS
    guard = Guard(lambda: end - time.monotonic())
    lengths = None if decided.lengths is None else plan_lengths(decided.lengths, guard)
    sheets = None if decided.sheets is None else plan_sheets(decided.sheets, guard)
    solver = f"HiGHS {version('highspy')}"
    return AnsweredCutting(lengths, sheets, decided.mark_to, decided.assumptions, solver)
