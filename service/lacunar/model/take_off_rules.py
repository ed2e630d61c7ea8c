"""Rules about what a take-off goes by."""

from collections.abc import Iterator
from dataclasses import fields

from lacunar.measure.writing import decimal_text
from lacunar.model import limits
from lacunar.model.faults import Fault
from lacunar.model.rule_case import Rule, RuleCase
from lacunar.model.take_off import TakeOffSpec, WasteSpec

_PLACE = "/take_off"


def waste_is_a_share(case: RuleCase) -> Iterator[Fault]:
    """Waste of a tenth is 0.1; a 10 is surely meant as percent."""
    waste = _said(case).waste
    for each in fields(WasteSpec):
        share, pointer = getattr(waste, each.name), f"{_PLACE}/waste/{each.name}"
        least, most = limits.WASTE
        if share is not None and case.sound(pointer) and not least <= share <= most:
            yield Fault(
                code="waste_out_of_bounds",
                pointer=pointer,
                message="Waste is a share of what is needed, from nothing to as much again.",
                remedy="Write a tenth as 0.1.",
                figures={"given": decimal_text(share), "most": decimal_text(most)},
            )


def coats_can_be_put_on(case: RuleCase) -> Iterator[Fault]:
    """There is at least one coat, and not so many that it is surely a slip of the pen."""
    finish = _said(case).finish
    for name in ("primer_coats", "paint_coats"):
        coats, pointer = getattr(finish, name), f"{_PLACE}/finish/{name}"
        if coats is None or not case.sound(pointer):
            continue
        if coats < 1:
            yield Fault(
                code="count_below_one",
                pointer=pointer,
                message="There is at least one coat.",
                remedy="Give 1 or more; finish.kind says what is left out.",
                figures={"given": coats},
            )
        elif coats > limits.COATS:
            yield Fault(
                code="coats_out_of_bounds",
                pointer=pointer,
                message=f"Nobody puts on more than {limits.COATS} coats.",
                remedy="Check the figure.",
                figures={"given": coats, "most": limits.COATS},
            )


def coverages_are_those_of_paint(case: RuleCase) -> Iterator[Fault]:
    """A coverage far out of bounds is told in another unit than it says."""
    finish = _said(case).finish
    least, most = limits.COVERAGE
    for name in ("primer_coverage", "paint_coverage"):
        coverage, pointer = getattr(finish, name), f"{_PLACE}/finish/{name}"
        if coverage is None or not case.sound(pointer):
            continue
        if not least <= coverage.square_feet_per_gallon <= most:
            yield Fault(
                code="coverage_out_of_bounds",
                pointer=pointer,
                message="No primer or paint goes so far, or so short a way.",
                remedy="Check the figure and its unit, ft2/gal or m2/L.",
                figures={
                    "given": coverage.text,
                    "least": f"{least} ft2/gal",
                    "most": f"{most} ft2/gal",
                },
            )


def _said(case: RuleCase) -> TakeOffSpec:
    return case.spec.take_off or TakeOffSpec()


TAKE_OFF_RULES: tuple[Rule, ...] = (
    waste_is_a_share,
    coats_can_be_put_on,
    coverages_are_those_of_paint,
)
