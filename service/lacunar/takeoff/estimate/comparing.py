"""An alternate beside the estimate it is an alternate to, line by line."""

from collections.abc import Iterator
from decimal import Decimal

from lacunar.measure.figure import Rule
from lacunar.measure.money import NOTHING
from lacunar.takeoff.estimate.estimate_records import (
    Comparison,
    Estimate,
    EstimateSection,
    LineDifference,
)

HOURS = Rule("hours of the alternate above those it is compared with", "alternate - base")

Key = tuple[EstimateSection, str, int]


def compare(base: Estimate, alternate: Estimate) -> Comparison:
    """Turn two estimates into what the second differs by.

    Lines are the same where section and name are; one that only one of them has counts as nothing
    in the other. So the differences of all lines add up to that of direct cost.
    """
    before, after = base.totals, alternate.totals
    return Comparison(
        lines=tuple(_differences(_amounts(base), _amounts(alternate))),
        direct=after.direct.value - before.direct.value,
        selling_price=after.selling_price.value - before.selling_price.value,
        total=after.total.value - before.total.value,
        hours=HOURS.gives(
            after.hours.value - before.hours.value,
            alternate=after.hours.value,
            base=before.hours.value,
        ),
        comparable=before.complete and after.complete,
    )


def _amounts(estimate: Estimate) -> dict[Key, Decimal]:
    """Amounts by section and name; those of one name by their number."""
    found: dict[Key, Decimal] = {}
    seen: dict[tuple[EstimateSection, str], int] = {}
    for line in estimate.lines:
        name = line.section, line.name
        seen[name] = seen.get(name, 0) + 1
        found[(*name, seen[name])] = line.amount.value
    return found


def _differences(before: dict[Key, Decimal], after: dict[Key, Decimal]) -> Iterator[LineDifference]:
    for key in sorted({**before, **after}, key=lambda key: list(EstimateSection).index(key[0])):
        one, other = before.get(key), after.get(key)
        difference = (other or NOTHING) - (one or NOTHING)
        if one is None or other is None or difference:
            yield LineDifference(key[0], key[1], one, other, difference)
