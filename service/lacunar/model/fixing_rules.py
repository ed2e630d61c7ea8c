"""Rules about joists, fasteners and the woods they are weighed and held by."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.measure.writing import decimal_text
from lacunar.model import limits
from lacunar.model.fasteners import SIZES, FastenerKind
from lacunar.model.faults import Fault
from lacunar.model.fixing import BetweenJoists
from lacunar.model.room import CeilingState, RunName
from lacunar.model.rule_case import RuleCase, missing
from lacunar.model.spec import FixingSpec, JoistsSpec

_JOISTS = "/room/joists"


def joists_are_described(case: RuleCase) -> Iterator[Fault]:
    """Which way joists run and where the first one is cannot be assumed."""
    joists = case.spec.room.joists
    if joists is None:
        return
    for name in ("parallel_to", "first"):
        if getattr(joists, name) is None and case.sound(f"{_JOISTS}/{name}"):
            yield missing(f"{_JOISTS}/{name}", f"The joists' {name}")


def the_first_joist_lies_in_the_room(case: RuleCase) -> Iterator[Fault]:
    """The first joist's center is between the walls of the run that joists are measured along."""
    joists, room = case.spec.room.joists, case.spec.room
    if joists is None or joists.first is None or joists.parallel_to is None:
        return
    on = joists.parallel_to.other
    span = room.length if on is RunName.LENGTH else room.width
    if span is None or not case.sound(_JOISTS, f"/room/{on}") or joists.first <= span:
        return
    yield Fault(
        code="joist_outside_room",
        pointer=f"{_JOISTS}/first",
        message=f"The first joist does not lie between the walls of the {on} run.",
        remedy="Measure its center from the finished start wall, the wall next the datum.",
        figures={"first": joists.first, "span": span},
    )


def joists_stand_apart(case: RuleCase) -> Iterator[Fault]:
    """Joists are further apart, center to center, than each is wide."""
    joists = case.spec.room.joists or JoistsSpec()
    spacing, width = joists.spacing, joists.width
    if spacing is None or width is None or not case.sound(_JOISTS) or width < spacing:
        return
    yield Fault(
        code="joists_overlap",
        pointer=f"{_JOISTS}/spacing",
        message="The joists are as wide as they stand apart, so that nothing is between them.",
        remedy="Give the spacing from center to center, and the width of one joist.",
        figures={"spacing": spacing, "width": width},
    )


def blocking_needs_an_open_ceiling(case: RuleCase) -> Iterator[Fault]:
    """Blocking cannot be let in between joists that a finish hides."""
    joists, fixing = case.spec.room.joists or JoistsSpec(), case.spec.fixing or FixingSpec()
    places = (f"{_JOISTS}/ceiling", "/fixing/between_joists")
    if fixing.between_joists is not BetweenJoists.BLOCKING or not case.sound(*places):
        return
    if joists.ceiling is CeilingState.CLOSED:
        yield Fault(
            code="blocking_in_closed_ceiling",
            pointer="/fixing/between_joists",
            message="Blocking is to be let in between joists that a closed ceiling hides.",
            remedy='Ask for a "skin" or "anchors"; or set ceiling to "open" if it is opened up.',
        )


def fasteners_come_in_sizes(case: RuleCase) -> Iterator[Fault]:
    """A fastener's size is one of those published for its kind."""
    fixing = case.spec.fixing or FixingSpec()
    kind = fixing.fastener or FastenerKind.WOOD_SCREW
    if fixing.size is None or not case.sound("/fixing/size", "/fixing/fastener"):
        return
    if fixing.size not in SIZES[kind]:
        yield Fault(
            code="fastener_size_unknown",
            pointer="/fixing/size",
            message=f"No {kind.replace('_', ' ')} of this size is published.",
            remedy=f"Write one of {', '.join(SIZES[kind])}.",
            figures={"size": fixing.size, "fastener": str(kind)},
        )


def fasteners_are_counted_from_one(case: RuleCase) -> Iterator[Fault]:
    """At least one fastener goes into each joist, and not so many that they split it."""
    count = (case.spec.fixing or FixingSpec()).at_crossing
    most = limits.FASTENERS_AT_CROSSING
    if count is not None and case.sound("/fixing/at_crossing") and not 1 <= count <= most:
        yield Fault(
            code="fastener_count",
            pointer="/fixing/at_crossing",
            message="So many fasteners cannot go into one joist.",
            remedy=f"Ask for 1 to {most}.",
            figures={"at_crossing": count, "most": most},
        )


def ratios_lie_within_bounds(case: RuleCase) -> Iterator[Fault]:
    """A gravity or a moisture content beyond its bounds is a slip, such as a percentage."""
    for pointer, ratio, (least, most) in _ratios(case):
        if ratio is None or not case.sound(pointer) or least <= ratio <= most:
            continue
        yield Fault(
            code="ratio_out_of_bounds",
            pointer=pointer,
            message="The ratio is out of bounds: wood floats or nearly so, and 12 percent is 0.12.",
            remedy="Write gravity over water's, and moisture as a share of the dry weight.",
            figures={
                "given": decimal_text(ratio),
                "least": decimal_text(least),
                "most": decimal_text(most),
            },
        )


def _ratios(case: RuleCase) -> Iterator[tuple[str, Fraction | None, tuple[Fraction, Fraction]]]:
    joists, fixing = case.spec.room.joists or JoistsSpec(), case.spec.fixing or FixingSpec()
    yield f"{_JOISTS}/gravity", joists.gravity, limits.GRAVITY
    yield "/fixing/panel_gravity", fixing.panel_gravity, limits.GRAVITY
    for name, wood in (("trim", fixing.trim), ("backing", fixing.backing)):
        yield f"/fixing/{name}/gravity", wood.gravity, limits.GRAVITY
        yield f"/fixing/{name}/moisture", wood.moisture, limits.MOISTURE


FIXING_RULES = (
    joists_are_described,
    the_first_joist_lies_in_the_room,
    joists_stand_apart,
    blocking_needs_an_open_ceiling,
    fasteners_come_in_sizes,
    fasteners_are_counted_from_one,
    ratios_lie_within_bounds,
)
