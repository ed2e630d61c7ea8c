"""How take-off tests come by parts and quantities: from specs as they would be sent."""

from collections import Counter

from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.takeoff.part_records import Part, PartKind
from lacunar.takeoff.taken_off import TakenOff, take_off
from tests.layout.laying_out import Spec, laid_out


def taken_off(*specs: Spec) -> TakenOff:
    """The take-off of specs, pooled in their order."""
    return take_off([laid_out(spec) for spec in specs])


def parts_of(layout: Layout, *kinds: PartKind) -> list[Part]:
    """The parts of a layout, of these kinds or of all."""
    return [part for part in take_off([layout]).parts if not kinds or part.kind in kinds]


def counted(parts: list[Part]) -> Counter[tuple[PartKind, Length]]:
    """How many there are of each kind and length."""
    found: Counter[tuple[PartKind, Length]] = Counter()
    for part in parts:
        found[part.kind, part.length.value] += part.quantity
    return found
