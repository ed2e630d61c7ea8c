"""Divides one run by itself, with no room around it: what a calculator is asked on site."""

from dataclasses import dataclass
from itertools import count

from lacunar.layout.records import ElementKind, Mark
from lacunar.layout.runs.frame import RunFrame
from lacunar.layout.runs.marks import run_marks
from lacunar.layout.runs.run_division import RunTask, WallStretch, divide_run, plan_run
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.runs.wall_strips import strips_at
from lacunar.measure.figure import CountFigure, LengthFigure, given
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.model.grid import Run
from lacunar.model.room import END_WALL, START_WALL


@dataclass(frozen=True, slots=True)
class LoneBeam:
    """A beam between two coffers of a lone run, from the datum."""

    id: str
    near: LengthFigure
    center: LengthFigure
    far: LengthFigure


@dataclass(frozen=True, slots=True)
class LoneWallBeam:
    """A soffit, or a half or full beam, at an end of a lone run."""

    id: str
    wall: str
    kind: ElementKind
    near: LengthFigure
    far: LengthFigure


@dataclass(frozen=True, slots=True)
class LoneRun:
    """One run divided by itself. Nothing is known of its beams but how wide they are."""

    span: LengthFigure
    beam_width: LengthFigure
    coffers: CountFigure
    clear_total: LengthFigure
    openings: tuple[LengthFigure, ...]
    beams: tuple[LoneBeam, ...]
    wall_beams: tuple[LoneWallBeam, ...]
    marks: tuple[Mark, ...]


def divide_alone(run: Run, span: Length, beam_width: Length, step: Step) -> LoneRun:
    """Turn a decided run into its division, exactly as in a ceiling.

    Parameters: `run`, without fixed beams; `span` [length] between finished wall faces;
    `beam_width` [length]; `step` marks are rounded to. Raises SpecRefused with every fault of the
    stage that fails; its pointers are into the spec of a ceiling.
    """
    frame = RunFrame(run.name, given(span), None, None, framing=False)
    numbers = count(1)
    width = given(beam_width)
    task = RunTask(
        run=run,
        frame=frame,
        beam_width=width,
        start_strips=strips_at(START_WALL[run.name], run.start, width, numbers),
        end_strips=strips_at(END_WALL[run.name], run.end, width, numbers),
        things=(),
    )
    divided = divide_run(task, plan_run(task))
    ends = DividedEnds(frame, divided, divided)
    (zone,) = divided.zones
    return LoneRun(
        span=frame.span,
        beam_width=width,
        coffers=zone.coffers,
        clear_total=zone.clear_total,
        openings=zone.openings,
        beams=tuple(
            LoneBeam(beam_id, beam.near, beam.center, beam.far) for beam_id, beam, _ in ends.beams
        ),
        wall_beams=tuple(
            LoneWallBeam(each.strip.id, each.strip.wall, each.kind, each.near, each.far)
            for each in divided.stretches
            if isinstance(each, WallStretch)
        ),
        marks=run_marks(ends, None, step)[0].marks,
    )
