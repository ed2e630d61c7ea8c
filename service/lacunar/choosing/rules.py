"""Holds what was said of a search against what can be searched, and tells all faults at once."""

from collections.abc import Iterator

from lacunar.choosing.asked import ChoicesSpec
from lacunar.measure.length import Length
from lacunar.model import choosing_limits, limits
from lacunar.model.assuming import Assuming
from lacunar.model.faults import Fault
from lacunar.model.item_assumptions import decide_wall_features
from lacunar.model.limits import Bounds
from lacunar.model.room import RunName
from lacunar.model.rules import length_out_of_bounds
from lacunar.model.spec import CeilingSpec


def choices_faults(spec: CeilingSpec, said: ChoicesSpec) -> Iterator[Fault]:
    """Every fault in what was said of a search for a ceiling's options."""
    yield from _lengths(said)
    for run in RunName:
        yield from _counts(run, spec, said)
    yield from _openings(said)
    yield from _features(spec, said)
    yield from _numbers(said)
    if spec.measured_openings is not None:
        yield Fault(
            code="beams_are_up",
            pointer="/measured_openings",
            message="Openings are measured once the beams are up, and then nothing is left to"
            " choose.",
            remedy="Leave the measured openings out to compare with other layouts.",
        )


def _lengths(said: ChoicesSpec) -> Iterator[Fault]:
    told: list[tuple[str, Length | None, Bounds]] = [
        ("/smallest_opening", said.smallest_opening, limits.OPENING),
        ("/largest_opening", said.largest_opening, limits.OPENING),
    ]
    for name, lengths, bounds in (
        ("beam_widths", said.beam_widths, limits.BEAM_WIDTH),
        ("crown_lengths", said.crown_lengths, choosing_limits.CROWN_STICK),
    ):
        told += [(f"/{name}/{n}", length, bounds) for n, length in enumerate(lengths or ())]
    for pointer, length, bounds in told:
        if length is not None and not bounds.least <= length <= bounds.most:
            yield length_out_of_bounds(f"/choices{pointer}", length, bounds)


def _counts(run: RunName, spec: CeilingSpec, said: ChoicesSpec) -> Iterator[Fault]:
    counts = said.counts(run)
    if counts is None:
        return
    pointer = f"/choices/{run}_coffers"
    for name, count in (("fewest", counts.fewest), ("most", counts.most)):
        if count is not None and not 1 <= count <= limits.COFFERS_PER_RUN:
            yield Fault(
                code="choice_out_of_bounds",
                pointer=f"{pointer}/{name}",
                message="A run has no such number of coffers.",
                remedy=f"Give a number from 1 to {limits.COFFERS_PER_RUN}.",
                figures={"given": count, "least": 1, "most": limits.COFFERS_PER_RUN},
            )
    if counts.fewest is not None and counts.most is not None and counts.fewest > counts.most:
        yield _crossed(f"{pointer}/fewest", counts.fewest, counts.most)
    if spec.grid.run(run).weights is not None:
        yield Fault(
            code="counts_follow_weights",
            pointer=pointer,
            message="The coffers of this run have a weight each, so that their number is given.",
            remedy="Leave out the weights in the grid, or these counts.",
            figures={"coffers": len(spec.grid.run(run).weights or ())},
        )


def _openings(said: ChoicesSpec) -> Iterator[Fault]:
    least, most = said.smallest_opening, said.largest_opening
    if least is not None and most is not None and least > most:
        yield _crossed("/choices/smallest_opening", least, most)


def _crossed(pointer: str, least: Length | int, most: Length | int) -> Fault:
    return Fault(
        code="limits_crossed",
        pointer=pointer,
        message="The least that is tried is more than the most.",
        remedy="Exchange them, or give one of them alone.",
        figures={"least": least, "most": most},
    )


def _features(spec: CeilingSpec, said: ChoicesSpec) -> Iterator[Fault]:
    known = [each.name for each in decide_wall_features(spec.room.wall_features, Assuming())]
    for place, name in enumerate(said.center_on or ()):
        if name not in known:
            yield Fault(
                code="feature_not_there",
                pointer=f"/choices/center_on/{place}",
                message="The room has no wall feature of that name.",
                remedy=f"Name one of {', '.join(known)}." if known else "Tell the room's features.",
                figures={"name": name},
            )


def _numbers(said: ChoicesSpec) -> Iterator[Fault]:
    for criterion, weight in said.weights:
        if weight > choosing_limits.WEIGHT:
            yield Fault(
                code="choice_out_of_bounds",
                pointer=f"/choices/weights/{criterion}",
                message="A weight of that size leaves no room for the others.",
                remedy=f"Give weights from 0 to {choosing_limits.WEIGHT}.",
                figures={"given": str(weight), "least": 0, "most": choosing_limits.WEIGHT},
            )
    if said.weights and not any(weight for _, weight in said.weights):
        yield Fault(
            code="weights_all_zero",
            pointer="/choices/weights",
            message="Nothing has a weight, so that nothing can be ranked.",
            remedy="Give one criterion a weight above 0, or leave the weights out.",
        )
    for name, most in (
        ("most_laid_out", choosing_limits.LAID_OUT),
        ("nudges_of", choosing_limits.LAID_OUT),
    ):
        number = getattr(said, name)
        if number is not None and not 1 <= number <= most:
            yield Fault(
                code="choice_out_of_bounds",
                pointer=f"/choices/{name}",
                message="There is no such number of layouts.",
                remedy=f"Give a number from 1 to {most}.",
                figures={"given": number, "least": 1, "most": most},
            )
