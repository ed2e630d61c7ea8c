"""Rules about how the runs are divided."""

from collections.abc import Iterator
from math import prod

from lacunar.measure.length import ZERO
from lacunar.model import limits
from lacunar.model.faults import Fault
from lacunar.model.grid import Parity, WallCondition
from lacunar.model.room import RunName
from lacunar.model.rule_case import RuleCase, missing
from lacunar.model.spec import RunSpec
from lacunar.model.wall_kind import WallKind

COUNTING = ("coffers", "largest_opening", "wished_opening")
# What `total_of` looks at.
TOTALING = (*COUNTING, "weights")


def _runs(case: RuleCase, *names: str) -> Iterator[tuple[str, RunName, RunSpec]]:
    """Both runs, each if these names of it can be judged."""
    for run in RunName:
        place = f"/grid/{run}"
        if case.sound(*(f"{place}/{name}" for name in names)):
            yield place, run, case.spec.grid.run(run)


def total_of(run: RunSpec) -> int | None:
    """How many coffers a run was told to have in all; None where that is still to be found."""
    if run.coffers is None and run.weights and not _by_opening(run):
        return len(run.weights)  # one coffer for each weight
    return sum(run.coffers) if isinstance(run.coffers, tuple) else run.coffers


def _by_opening(run: RunSpec) -> bool:
    return run.largest_opening is not None or run.wished_opening is not None


def coffers_are_counted_one_way(case: RuleCase) -> Iterator[Fault]:
    """A count, a largest and a wished-for opening are three answers to one question."""
    for place, _, run in _runs(case, *COUNTING):
        given = [name for name in COUNTING if getattr(run, name) is not None]
        if len(given) > 1:
            yield Fault(
                code="counted_more_than_once",
                pointer=f"{place}/{given[1]}",
                message="How many coffers there are is said in more than one way.",
                remedy=f"Keep one of {', '.join(given)}.",
                figures={"given": ", ".join(given)},
            )


def counts_are_within_limits(case: RuleCase) -> Iterator[Fault]:
    """A run has at least one coffer in each zone, and no more than can be drawn."""
    for place, _, run in _runs(case, *TOTALING):
        pointer = f"{place}/coffers"
        counts = run.coffers if isinstance(run.coffers, tuple) else ()
        for position, count in enumerate(counts):
            if count < 1:
                yield _count_below_one(f"{pointer}/{position}", count)
        total = total_of(run)
        if total is None:
            continue
        if not counts and total < 1:
            yield _count_below_one(pointer, total)
        if total > limits.COFFERS_PER_RUN:
            yield _too_many(pointer, total, limits.COFFERS_PER_RUN)


def grid_is_within_limits(case: RuleCase) -> Iterator[Fault]:
    """Coffers in all are columns times rows."""
    totals = [total_of(run) for _, _, run in _runs(case, *TOTALING)]
    counted = [total for total in totals if total is not None]
    drawable = all(1 <= total <= limits.COFFERS_PER_RUN for total in counted)
    in_all = prod(counted)
    if len(counted) == len(RunName) and drawable and in_all > limits.COFFERS_IN_ALL:
        yield _too_many("/grid", in_all, limits.COFFERS_IN_ALL)


def _count_below_one(pointer: str, count: int) -> Fault:
    return Fault(
        code="count_below_one",
        pointer=pointer,
        message="There is no such number of coffers.",
        remedy="Give a whole number from 1 up.",
        figures={"coffers": count},
    )


def _too_many(pointer: str, coffers: int, most: int) -> Fault:
    return Fault(
        code="too_many_coffers",
        pointer=pointer,
        message="There are more coffers than are laid out on one ceiling.",
        remedy="Give fewer and larger coffers, or make several ceilings of it.",
        figures={"coffers": coffers, "most": most},
    )


def counts_match_the_zones(case: RuleCase) -> Iterator[Fault]:
    """Members and fixed beams cut a run into zones, each with coffers of its own."""
    for place, name, run in _runs(case, *TOTALING):
        zones, total = case.zones(name), total_of(run)
        if zones is None or total is None:
            continue
        if isinstance(run.coffers, tuple):
            if len(run.coffers) != zones:
                yield Fault(
                    code="zone_counts_differ",
                    pointer=f"{place}/coffers",
                    message="There is not one count for each zone between fixed things.",
                    remedy="Give one count per zone from the datum, or one total for the run.",
                    figures={"counts": len(run.coffers), "zones": zones},
                )
        elif 1 <= total < zones:
            yield Fault(
                code="fewer_coffers_than_zones",
                pointer=f"{place}/{'weights' if run.coffers is None else 'coffers'}",
                message="Fixed things cut the run into more zones than it has coffers.",
                remedy="Give at least one coffer for each zone.",
                figures={"coffers": total, "zones": zones},
            )


def parity_agrees_with_the_count(case: RuleCase) -> Iterator[Fault]:
    """Odd or even is a wish about a count still to be found; a given count is one or the other."""
    for place, _, run in _runs(case, "parity", *TOTALING):
        total = total_of(run)
        if run.parity is None or total is None:
            continue
        if total % 2 != (run.parity is Parity.ODD):
            yield Fault(
                code="parity_contradicts_count",
                pointer=f"{place}/parity",
                message=f"The count of coffers that is given is not {run.parity}.",
                remedy="Leave the parity out, or change the count by one.",
                figures={"coffers": total, "parity": str(run.parity)},
            )


def weights_are_shares(case: RuleCase) -> Iterator[Fault]:
    """A coffer's share of the clear total is more than nothing."""
    for place, _, run in _runs(case, "weights"):
        for position, weight in enumerate(run.weights or ()):
            if not 0 < weight <= limits.WEIGHT:
                yield Fault(
                    code="weight_not_a_share",
                    pointer=f"{place}/weights/{position}",
                    message="The weight is no share of a clear total.",
                    remedy=f"Give a number above 0, and at most {limits.WEIGHT}.",
                    figures={"weight": str(weight), "most": limits.WEIGHT},
                )


def weights_match_the_count(case: RuleCase) -> Iterator[Fault]:
    """Weights are one per coffer over the whole run, so the count must be known."""
    for place, _, run in _runs(case, *TOTALING):
        if run.weights is None:
            continue
        total = total_of(run)
        if total is not None and total != len(run.weights):
            yield Fault(
                code="weights_differ_from_count",
                pointer=f"{place}/weights",
                message="There is not one weight for each coffer of the run.",
                remedy="Give one weight per coffer from the datum over the whole run.",
                figures={"weights": len(run.weights), "coffers": total},
            )
        if _by_opening(run):
            yield Fault(
                code="weights_with_opening",
                pointer=f"{place}/weights",
                message="Weights need a count, and here the count is to be found.",
                remedy="Give coffers as a number, or leave the weights out.",
                figures={"weights": len(run.weights)},
            )
        if not run.weights:
            yield missing(f"{place}/weights/0", "A weight")


def held_openings_stand_alone(case: RuleCase) -> Iterator[Fault]:
    """Held inner coffers leave the rest to two equal borders: in one zone, with nothing weighed."""
    for place, name, run in _runs(case, "held", *TOTALING):
        if run.held is None:
            continue
        reason = _why_not_held(case, name, run)
        if reason:
            yield Fault(
                code="held_cannot_be",
                pointer=f"{place}/held",
                message=f"Inner coffers cannot be held at one size: {reason}.",
                remedy="Leave out held, or what stands against it.",
                figures={"held": run.held},
            )


def _why_not_held(case: RuleCase, name: RunName, run: RunSpec) -> str:
    zones = case.zones(name)
    total = total_of(run)
    if run.weights is not None and len(set(run.weights)) > 1:
        return "the weights of the run make them unequal"
    if zones is not None and zones > 1:
        return "a member or fixed beam stands in the run"
    if total is not None and total < limits.HELD_COFFERS:
        return "with fewer than three coffers there is no inner one beside two borders"
    return ""


def soffits_have_a_width(case: RuleCase) -> Iterator[Fault]:
    """A soffit has a width of its own, which nothing else in the spec gives."""
    for wall in ("start", "end"):
        for place, _, run in _runs(case, wall):
            condition: WallCondition | None = getattr(run, wall)
            if condition is None or condition.kind is not WallKind.SOFFIT:
                continue
            if condition.soffit_width is None:
                yield Fault(
                    code="soffit_without_width",
                    pointer=f"{place}/{wall}",
                    message="The soffit at this wall has no width.",
                    remedy='Write {"soffit": width}, with "then" for what stands on its face.',
                )


def fixed_beams_lie_in_the_room(case: RuleCase) -> Iterator[Fault]:
    """A fixed beam has a place, and that lies between the walls."""
    for run_place, name, run in _runs(case):
        for position, beam in enumerate(run.fixed_beams):
            pointer = f"{run_place}/fixed_beams/{position}/center"
            if not case.sound(pointer):
                continue
            if beam.center is None:
                yield missing(pointer, "The center of the fixed beam")
                continue
            span = case.spec.room.length if name is RunName.LENGTH else case.spec.room.width
            outside = span is not None and not ZERO < beam.center < span
            if span is not None and outside and case.sound(f"/room/{name}"):
                yield Fault(
                    code="fixed_beam_outside_room",
                    pointer=pointer,
                    message=f"The fixed beam does not lie between the walls of the {name} run.",
                    remedy="Measure its center from the datum, the lower left corner of the plan.",
                    figures={"center": beam.center, "span": span},
                )


GRID_RULES = (
    coffers_are_counted_one_way,
    counts_are_within_limits,
    grid_is_within_limits,
    counts_match_the_zones,
    parity_agrees_with_the_count,
    weights_are_shares,
    weights_match_the_count,
    held_openings_stand_alone,
    soffits_have_a_width,
    fixed_beams_lie_in_the_room,
)
