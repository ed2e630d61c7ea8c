"""Rules about what is drawn."""

from collections.abc import Iterator

from lacunar.measure.units import Units
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


def second_units_are_other_ones(case: RuleCase) -> Iterator[Fault]:
    """Nobody wants every dimension twice in the same units."""
    second, pointer = case.spec.drawing.second_units, "/drawing/second_units"
    first = case.spec.units or Units.INCH
    if second is first and case.sound(pointer):
        yield Fault(
            code="second_units_alike",
            pointer=pointer,
            message="Dimensions are in these units already.",
            remedy="Name the other ones, or leave this out.",
            figures={"units": first.value},
        )


DRAWING_RULES: tuple[Rule, ...] = (a_set_has_a_sheet, second_units_are_other_ones)
