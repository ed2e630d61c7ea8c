"""The three dimension strings of a run, from the layout's elements: openings, centers, overall."""

from itertools import pairwise

from lacunar.drawing.dimensions import Segment, Stop, String
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import ElementKind, RunElement, RunLayout
from lacunar.measure.figure import LengthFigure
from lacunar.model.room import END_WALL, START_WALL, RunName

_BEAMS = (ElementKind.BEAM, ElementKind.FIXED_BEAM, ElementKind.CASED_BEAM)


def run_strings(frame: PlanFrame, run: RunName, wording: SheetWording) -> tuple[String, ...]:
    """A run's strings from the object outward.

    Every figure is the difference of two marks rounded from the datum, so each string sums to the
    overall by construction. A run without beams needs no string of centers.
    """
    laid_out = frame.layout.run(run)
    faces = _face_stops(frame, laid_out, wording)
    centers = _center_stops(frame, laid_out, wording)
    overall = [faces[0], faces[-1]]
    strings = [_string(run, "openings", faces, wording)]
    if any(element.kind in _BEAMS for element in laid_out.elements):
        strings.append(_string(run, "centers", centers, wording))
    strings.append(_string(run, "overall", overall, wording))
    return tuple(strings)


def _stop(
    frame: PlanFrame,
    name: str,
    figure: LengthFigure,
    wording: SheetWording,
    *,
    center: bool = False,
) -> Stop:
    length = figure.value
    return Stop(name, frame.on_paper(length), wording.rounded(length), length, not center)


def _face_stops(frame: PlanFrame, run: RunLayout, wording: SheetWording) -> list[Stop]:
    """The start wall, then the far side of every element of the run; the last is the end wall."""
    first, last = run.elements[0], run.elements[-1]
    stops = [_stop(frame, START_WALL[run.name], first.near.at_start, wording)]
    for element, following in pairwise(run.elements):
        stops.append(_stop(frame, _face_name(element, following), element.far.at_start, wording))
    stops.append(_stop(frame, END_WALL[run.name], last.far.at_start, wording))
    return stops


def _face_name(element: RunElement, following: RunElement) -> str:
    """Which beam's face lies between two elements."""
    if element.kind is ElementKind.COFFER:
        return f"{following.id}:near"
    return f"{element.id}:far"


def _center_stops(frame: PlanFrame, run: RunLayout, wording: SheetWording) -> list[Stop]:
    """Both walls and every beam's center between them."""
    first, last = run.elements[0], run.elements[-1]
    beams = {beam.id: beam for beam in frame.layout.beams}
    return [
        _stop(frame, START_WALL[run.name], first.near.at_start, wording),
        *(
            _stop(frame, f"{e.id}:center", beams[e.id].center.at_start, wording, center=True)
            for e in run.elements
            if e.kind in _BEAMS
        ),
        _stop(frame, END_WALL[run.name], last.far.at_start, wording),
    ]


def _string(run: RunName, name: str, stops: list[Stop], wording: SheetWording) -> String:
    segments = []
    for start, end in pairwise(stops):
        value = end.mark - start.mark
        exact = decimal_mm(end.exact - start.exact)
        segments.append(Segment(start, end, wording.length(value), wording.exact(value), exact))
    # The width run's strings end at the corner where the length run's begin.
    return String(run.value, name, tuple(segments), closed_end=run is RunName.WIDTH)
