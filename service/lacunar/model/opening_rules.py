"""Rules about measured openings that need no setting out."""

from collections.abc import Iterator

from lacunar.model.faults import Fault
from lacunar.model.openings import MeasuredCofferSpec
from lacunar.model.rule_case import RuleCase, missing

PLACE = "/measured_openings"


def openings_name_their_grid(case: RuleCase) -> Iterator[Fault]:
    """What was measured is worth nothing without the grid it was measured in, and the coffer."""
    openings = case.spec.measured_openings
    if openings is None:
        return
    if openings.grid is None and case.sound(f"{PLACE}/grid"):
        yield missing(f"{PLACE}/grid", "The grid the openings were measured in")
    if openings.coffers is None and case.sound(f"{PLACE}/coffers"):
        yield missing(f"{PLACE}/coffers", "What was measured")
    for number, measured in enumerate(openings.coffers or ()):
        place = f"{PLACE}/coffers/{number}/coffer"
        if measured.coffer is None and case.sound(place):
            yield missing(place, "The coffer that was measured")


def coffers_are_measured_once(case: RuleCase) -> Iterator[Fault]:
    """Of two sets of sizes for one coffer nobody can tell which holds."""
    openings = case.spec.measured_openings
    first: dict[str, int] = {}
    for number, measured in enumerate(openings.coffers or () if openings else ()):
        place = f"{PLACE}/coffers/{number}"
        if measured.coffer is None or not case.sound(place):
            continue
        if measured.coffer in first:
            yield Fault(
                code="coffer_measured_twice",
                pointer=f"{place}/coffer",
                message=f"{measured.coffer} is measured twice.",
                remedy="Keep the measurements that hold, and leave out the others.",
                figures={"coffer": measured.coffer, "first": first[measured.coffer] + 1},
            )
        first.setdefault(measured.coffer, number)


_CUT = (
    ("cut_sides", ("side", "length")),
    ("cut_diagonals", ("from_corner", "to_corner", "length")),
)


def cut_coffers_are_told_whole(case: RuleCase) -> Iterator[Fault]:
    """What was measured of a cut coffer has the number of its side, or both its corners."""
    openings = case.spec.measured_openings
    for number, measured in enumerate(openings.coffers or () if openings else ()):
        place = f"{PLACE}/coffers/{number}"
        if case.sound(place):
            yield from _untold(place, measured)


def _untold(place: str, measured: MeasuredCofferSpec) -> Iterator[Fault]:
    for part, names in _CUT:
        for at, taken in enumerate(getattr(measured, part)):
            for name in names:
                if getattr(taken, name) is None:
                    yield missing(f"{place}/{part}/{at}/{name}", "An end, or its length,")


OPENING_RULES = (openings_name_their_grid, coffers_are_measured_once, cut_coffers_are_told_whole)
