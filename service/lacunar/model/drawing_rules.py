"""Rules about what is drawn."""

from collections.abc import Iterator

from lacunar.model.faults import Fault
from lacunar.model.rule_case import Rule, RuleCase

_SHEETS = "/drawing/sheets"


def a_set_has_a_sheet(case: RuleCase) -> Iterator[Fault]:
    """Sheets that are named are at least one; who wants all of them names none."""
    if case.spec.drawing.sheets == () and case.sound(_SHEETS):
        yield Fault(
            code="no_sheets",
            pointer=_SHEETS,
            message="No sheet is named.",
            remedy="Name those to be issued, like Z-101, or leave this out for all of them.",
        )


DRAWING_RULES: tuple[Rule, ...] = (a_set_has_a_sheet,)
