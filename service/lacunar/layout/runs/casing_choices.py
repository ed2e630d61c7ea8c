"""Shows each cased beam centered and shifted, side by side."""

from collections.abc import Iterator

from lacunar.layout.records import CasingChoice, ElementKind
from lacunar.layout.runs.run_division import DividedRun, RunPlan, RunTask, divide_with
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.measure.length import Length


def casing_choices(task: RunTask, plan: RunPlan, ends: DividedEnds) -> Iterator[CasingChoice]:
    """Turn a run with cased beams into the openings beside each, all centered and all shifted."""
    if not any(thing.member for thing in task.things):
        return
    centered = divide_with(task, plan, plan.centered)
    shifted = divide_with(task, plan, plan.shifted)
    for index, (beam_id, beam, _) in enumerate(ends.beams):
        if beam.kind is not ElementKind.CASED_BEAM or beam.thing is None:
            continue
        member, shift = beam.thing.member, shifted.beams[index].shift
        if member is None or shift is None:
            continue
        yield CasingChoice(
            beam=beam_id,
            chosen=str(member.casing),
            centered_openings=_beside(centered, index),
            shifted_openings=_beside(shifted, index),
            shift=shift.value,
        )


def _beside(divided: DividedRun, index: int) -> tuple[Length, ...]:
    """The openings on both sides of a beam."""
    place = divided.stretches.index(divided.beams[index])
    before, after = divided.stretches[place - 1], divided.stretches[place + 1]
    return tuple(stretch.far.value - stretch.near.value for stretch in (before, after))
