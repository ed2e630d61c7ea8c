"""The widths of beams at a crossing, each as a dimension beyond where the beam is broken off."""

from collections.abc import Iterator

from lacunar.drawing.details.break_lines import TURN
from lacunar.drawing.dimensions import Axis, Segment, Stop, String, drawn_string, place_strings
from lacunar.drawing.elements import Group
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.crossing.on_paper import OnPaper, along_sheet, arms_of
from lacunar.drawing.views.crossing.scene import Scene
from lacunar.drawing.views.crossing.standing import Standing
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.crossing_records import Crossing
from lacunar.measure.length import ZERO

FIRST_GAP = 1.6


def drawn_widths(
    crossing: Crossing, seen: Scene, paper: OnPaper, wording: SheetWording, typeface: Typeface
) -> Iterator[Group]:
    """The finished width of each beam that lies along the sheet or up it."""
    for beam in (seen.led_by, seen.other):
        if beam is not None and along_sheet(beam):
            string = _string(crossing, beam, paper, wording)
            yield _drawn(string, seen, beam, paper, typeface)


def _string(crossing: Crossing, beam: Standing, paper: OnPaper, wording: SheetWording) -> String:
    assert beam.profile is not None
    width = beam.profile.finished_width.value
    value = wording.detailed(width)
    segment = Segment(
        Stop(f"{beam.id}:near", 0.0, ZERO, ZERO),
        Stop(f"{beam.id}:far", beam.width / paper.ratio, value, width),
        wording.detailed_dimension(width),
        wording.exact(value),
        decimal_mm(width),
    )
    return String(f"crossing-{crossing.id}", f"width-{beam.id}", (segment,))


def _drawn(
    string: String, seen: Scene, beam: Standing, paper: OnPaper, typeface: Typeface
) -> Group:
    """Above a beam that lies up the sheet, or left of one along it, else on the other side."""
    ends = [paper.broken_end(arm, seen.reach) for arm in arms_of(seen, beam)]
    if beam.upright:
        ends.sort(key=lambda end: end[0].y)
        far = ends[0][0].y > 0
        axis = Axis("x", ends[0][0].y, min(spot.x for spot in ends[0]), far)
    else:
        ends.sort(key=lambda end: end[0].x)
        far = ends[0][0].x > 0
        axis = Axis("y", ends[0][0].x, -max(spot.y for spot in ends[0]), far)
    (placed,) = place_strings([string], typeface, TURN)
    return drawn_string(placed, axis, FIRST_GAP)
