"""Plans of what is asked, within counts; a clock ends only what is far beyond them."""

import time
from dataclasses import dataclass
from importlib.metadata import version

from lacunar.takeoff.cutting.asked import LengthsAsked, SheetsAsked
from lacunar.takeoff.cutting.plan_records import LengthPlans
from lacunar.takeoff.cutting.sheet_records import SheetPlans

SECONDS = 30


@dataclass(frozen=True, slots=True)
class Plans:
    """Plans of lengths and of sheets, None where none were asked for, and what solved them."""

    lengths: LengthPlans | None
    sheets: SheetPlans | None
    solver: str


def planned(
    lengths: LengthsAsked | None, sheets: SheetsAsked | None, *, alone: bool = True
) -> Plans:
    """Turn what is asked into plans.

    Parameters: `lengths`; `sheets`; `alone`, whether each length is planned by itself as well, to
    be compared, which changes nothing of the plans. Errors: `SpecRefused` where there is too little
    stock.
    """
    # The solver costs a tenth of a second to load, which nothing else should wait for.
    from lacunar.takeoff.cutting.lengths import plan_lengths
    from lacunar.takeoff.cutting.sheets import plan_sheets
    from lacunar.takeoff.cutting.task import Guard

    end = time.monotonic() + SECONDS
    guard = Guard(lambda: end - time.monotonic())
    return Plans(
        None if lengths is None else plan_lengths(lengths, guard, alone=alone),
        None if sheets is None else plan_sheets(sheets, guard),
        f"HiGHS {version('highspy')}",
    )
