"""The linear programs: HiGHS, loaded when it is first needed, silent, on one thread."""

from collections.abc import Mapping
from functools import cache
from typing import Any

# No two plans of one problem may differ by what else the machine does.
_OPTIONS: Mapping[str, Any] = {
    "output_flag": False,
    "threads": 1,
    "random_seed": 1,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": 0.0,
}


@cache
def _silent_kind() -> Any:
    import highspy

    class Silent(highspy.Highs):
        """HiGHS prints two lines as callbacks are turned on, before it can be told not to."""

        def enableCallbacks(self) -> None:  # noqa: N802 - the library's name
            """Turn none on, as none is used, and turn off its output."""
            self.setOptionValue("output_flag", False)

    return Silent


def new_solver(**options: Any) -> Any:
    """An empty linear program with the options of this project and those given."""
    solver = _silent_kind()()
    for name, value in {**_OPTIONS, **options}.items():
        solver.setOptionValue(name, value)
    return solver


def infinity() -> float:
    """What the solver takes for no bound."""
    import highspy

    return float(highspy.kHighsInf)


def is_optimal(solver: Any) -> bool:
    """Whether the last run ended with a proof."""
    import highspy

    return bool(solver.getModelStatus() == highspy.HighsModelStatus.kOptimal)


def is_infeasible(solver: Any) -> bool:
    """Whether the last run proved that there is no solution."""
    import highspy

    status = solver.getModelStatus()
    kinds = highspy.HighsModelStatus
    return bool(status in (kinds.kInfeasible, kinds.kUnboundedOrInfeasible, kinds.kObjectiveBound))


def has_solution(solver: Any) -> bool:
    """Whether the last run of an integer program found a solution at all."""
    import highspy

    found = solver.getInfo().primal_solution_status
    return bool(found == highspy.SolutionStatus.kSolutionStatusFeasible)


def make_whole(solver: Any, places: range) -> None:
    """Have the columns at those places be whole numbers."""
    import highspy

    for place in places:
        solver.changeColIntegrality(place, highspy.HighsVarType.kInteger)
