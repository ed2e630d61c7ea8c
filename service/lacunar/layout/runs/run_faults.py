"""What makes a run impossible to divide."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lacunar.layout.runs.counts import coffers_that_fit
from lacunar.layout.runs.division import clear_total
from lacunar.layout.runs.fixed_things import FixedThing
from lacunar.layout.runs.frame import RunFrame
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.model import limits
from lacunar.model.faults import Fault
from lacunar.model.grid import (
    CoffersInAll,
    CoffersPerZone,
    LargestOpening,
    Run,
    WishedOpening,
)

# The least opening a remedy proposes: in a narrower one no hand can fit a panel or a moulding (this
# project's choice, no source).
LEAST_OPENING = Length.of_inches(6)


def place_faults(
    frame: RunFrame, faces: tuple[LengthFigure, LengthFigure], things: Sequence[FixedThing]
) -> Iterator[Fault]:
    """Faults of what stands in a run before anything is counted.

    Parameters: `frame` of the run; `faces` between which it is divided; `things` in order.
    """
    start, end = faces[0].value, faces[1].value
    if start >= end:
        yield Fault(
            code="no_room_left",
            pointer=f"/grid/{frame.name}/start",
            message=f"What stands at the two walls fills the whole {frame.name} run.",
            remedy="Make the soffits or wall beams narrower, or leave them out.",
            figures={"span": frame.span.value, "at_walls": start + frame.span.value - end},
        )
        return
    for thing in things:
        near, far = _faces(thing)
        if near < start or far > end:
            yield Fault(
                code="fixed_beam_outside_run",
                pointer=f"{thing.pointer}/center",
                message=f"{thing.name} does not stand clear between what is at the walls of the"
                f" {frame.name} run.",
                remedy="Check its place and width, or leave out what stands at the wall it meets.",
                figures={"near": near, "far": far, "room_from": start, "room_to": end},
            )
    for before, after in pairwise(things):
        if _faces(before)[1] > _faces(after)[0]:
            yield Fault(
                code="fixed_beams_overlap",
                pointer=f"{after.pointer}/center",
                message=f"{before.name} and {after.name} overlap.",
                remedy="Case both in one wider beam, or check their places and widths.",
                figures={"far_face": _faces(before)[1], "next_near_face": _faces(after)[0]},
            )
    yield from _zones_too_small(start, end, things)


def _faces(thing: FixedThing) -> tuple[Length, Length]:
    half = thing.width.value / 2
    return thing.center.value - half, thing.center.value + half


def _zones_too_small(start: Length, end: Length, things: Sequence[FixedThing]) -> Iterator[Fault]:
    """Zones of no width at all: their two ends meet."""
    starts = [start, *(_faces(thing)[1] for thing in things)]
    ends = [*(_faces(thing)[0] for thing in things), end]
    for number, (zone_start, zone_end) in enumerate(zip(starts, ends, strict=True)):
        if zone_start != zone_end:
            continue
        thing = things[min(number, len(things) - 1)]
        at_wall = number in (0, len(things))
        beside = "the wall or what stands there" if at_wall else "the beam before it"
        yield Fault(
            code="zone_too_small",
            pointer=f"{thing.pointer}/center",
            message=f"{thing.name} touches {beside}, so that no coffer lies between.",
            remedy="Move it, or have a beam of its width at that wall instead."
            if at_wall
            else "Move one, or have one wider beam instead of the two that touch.",
            figures={"zone": number + 1, "face": zone_start},
        )


def count_pointer(run: Run) -> str:
    """Where in the spec it is said how many coffers a run has."""
    match run.count:
        case CoffersPerZone() | CoffersInAll():
            name = "coffers"
        case LargestOpening():
            name = "largest_opening"
        case WishedOpening():
            name = "wished_opening"
    return f"/grid/{run.name}/{name}"


def count_faults(run: Run, counts: Sequence[int]) -> Iterator[Fault]:
    """Faults of the counts that were found for a run's zones."""
    total = sum(counts)
    if total > limits.COFFERS_PER_RUN:
        yield Fault(
            code="too_many_coffers",
            pointer=count_pointer(run),
            message=f"The {run.name} run would have more coffers than are laid out.",
            remedy="Ask for larger openings, or make several ceilings of it.",
            figures={"coffers": total, "most": limits.COFFERS_PER_RUN},
        )
    if run.weights is not None and len(run.weights) != total:
        yield Fault(
            code="weights_differ_from_count",
            pointer=f"/grid/{run.name}/weights",
            message="There is not one weight for each coffer of the run.",
            remedy="Give one weight per coffer from the datum over the whole run.",
            figures={"weights": len(run.weights), "coffers": total},
        )
    if run.held is not None and (len(counts) > 1 or total < limits.HELD_COFFERS):
        yield Fault(
            code="held_cannot_be",
            pointer=f"/grid/{run.name}/held",
            message="Inner coffers are held at one size between two borders, so the run must be one"
            " zone with at least three coffers.",
            remedy="Leave out held, or ask for more coffers in an undivided run.",
            figures={"coffers": total, "zones": len(counts)},
        )


def grid_faults(columns: int, rows: int) -> Iterator[Fault]:
    """The fault of more coffers in all than are laid out."""
    if columns * rows > limits.COFFERS_IN_ALL:
        yield Fault(
            code="too_many_coffers",
            pointer="/grid",
            message="There would be more coffers in all than are laid out on one ceiling.",
            remedy="Ask for fewer and larger coffers, or make several ceilings of it.",
            figures={"coffers": columns * rows, "most": limits.COFFERS_IN_ALL},
        )


def zone_faults(
    run: Run, spaces: Sequence[Length], counts: Sequence[int], beam_width: Length
) -> Iterator[Fault]:
    """Faults of zones that their beams fill, or whose held coffers leave no border."""
    for number, (space, count) in enumerate(zip(spaces, counts, strict=True)):
        total = clear_total(space, count, beam_width)
        if total <= ZERO:
            yield _no_room_left(run, number, space, (count, beam_width))
        elif run.held is not None and total <= run.held * (count - 2):
            yield Fault(
                code="held_too_large",
                pointer=f"/grid/{run.name}/held",
                message="The held coffers leave no border at the walls.",
                remedy="Hold them below the most that is given here, or ask for fewer coffers.",
                figures={"held": run.held, "less_than": total / (count - 2), "coffers": count},
            )


def _fewer(run: Run, fit: int) -> str:
    counted = isinstance(run.count, CoffersPerZone | CoffersInAll)
    ask = "at most" if counted else "larger openings, which make at most"
    return f"Ask for {ask} {fit} there, so that openings of 6 in are left, or for narrower beams."


def _no_room_left(run: Run, number: int, space: Length, beams: tuple[int, Length]) -> Fault:
    count, beam_width = beams
    fit = coffers_that_fit(space, LEAST_OPENING, beam_width)
    per_zone = isinstance(run.count, CoffersPerZone)
    return Fault(
        code="no_room_left",
        pointer=count_pointer(run) + (f"/{number}" if per_zone else ""),
        message=f"With {count} coffers the beams fill zone {number + 1} of the {run.name} run.",
        remedy=_fewer(run, fit)
        if fit
        else "Make the zone larger or the beams narrower: not even one opening of 6 in fits.",
        figures={
            "zone": number + 1,
            "space": space,
            "coffers": count,
            "beam_width": beam_width,
            "coffers_that_fit": fit,
            "least_opening": LEAST_OPENING,
        },
    )
