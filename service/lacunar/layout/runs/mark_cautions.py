"""Cautions about marking out."""

from collections.abc import Iterator

from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, finest_step_holding, is_whole


def mark_cautions(layout: Layout) -> Iterator[Caution]:
    """Cautions of beams whose width is not a whole number of marking steps.

    At a wall only one face is marked, so nothing can be rounded apart there.
    """
    step = layout.ceiling.mark_to
    seen: set[Length] = set()
    for profile in layout.profiles:
        width = profile.finished_width.value
        if profile.sides > 1 and width not in seen and not is_whole(width, step):
            seen.add(width)
            yield _between_steps(width, step, ", ".join(profile.used_by))


def _between_steps(width: Length, step: Step, beams: str) -> Caution:
    finer = finest_step_holding(width, step.units)
    proposal = f" Marking to {finer.text} would hold it." if finer else ""
    return Caution(
        code="beam_width_between_steps",
        text="A beam's width is not a whole number of marking steps, so its two faces are rounded"
        " apart. Mark the face next the datum, put an X on the beam's side of it, and lay the"
        f" beam's own width off from there.{proposal}",
        figures={"width": width, "step": step.size, "beams": beams},
        pointer="/mark_to",
    )
