"""From a cutting problem's bytes to its plans: read, hold against the rules, decide, plan."""

import time
from dataclasses import dataclass
from importlib.metadata import version

from lacunar.exchange.cutting_json import read_cutting
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.cutting.deciding import decide
from lacunar.takeoff.cutting.plan_records import LengthPlans

# Plans are bounded by counts; this only ends what is far beyond them.
SECONDS = 30


@dataclass(frozen=True, slots=True)
class AnsweredCutting:
    """The plans of lengths, if there were pieces; what they are told in, and what was assumed."""

    lengths: LengthPlans | None
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
    from lacunar.takeoff.cutting.task import Guard

    end = time.monotonic() + SECONDS
    guard = Guard(lambda: end - time.monotonic())
    lengths = None if decided.lengths is None else plan_lengths(decided.lengths, guard)
    return AnsweredCutting(
        lengths, decided.mark_to, decided.assumptions, f"HiGHS {version('highspy')}"
    )
