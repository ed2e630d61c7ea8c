"""Points on scale and paper: dimension lines as long as they say, bars true, pages of their size.

Paper sizes in landscape: the A series from ISO 216; letter to D from ANSI/ASME Y14.1; the ARCH
sizes as sold in the United States (all from memory).
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from math import dist

from lacunar.drawing.checker.dimension_lines import DimensionLine, dimension_line, dimension_lines
from lacunar.drawing.checker.facts import WALLS_OF_RUN
from lacunar.drawing.checker.figures import stop_places
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames, ratio
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.reducing import enlargement
from lacunar.drawing.checker.shapes import nearest
from lacunar.drawing.checker.strings import in_words, printed, run_strings
from lacunar.drawing.checker.subject import Subject
from lacunar.measure.notation import LengthTextError, read_length
from lacunar.measure.units import Units

PAPERS = {
    "letter": (279.4, 215.9),
    "tabloid": (431.8, 279.4),
    "ansi_c": (558.8, 431.8),
    "ansi_d": (863.6, 558.8),
    "arch_c": (609.6, 457.2),
    "arch_d": (914.4, 609.6),
    "a4": (297.0, 210.0),
    "a3": (420.0, 297.0),
    "a2": (594.0, 420.0),
    "a1": (841.0, 594.0),
}
ROLL = "roll"
PAGE_TOLERANCE = 0.1
_MILLIMETERS = re.compile(r"(\d+(?:\.\d+)?)mm")
_METRIC_SCALE = re.compile(r"1:(\d+)")
ALIKE = 1e-6
"""How much scales may differ that are the same, of their own size."""
FULL_SIZE = "FULL SIZE"


def dimensions_to_scale(subject: Subject) -> Iterator[Finding]:
    """Point 18: a dimension line is as long as what it measures, from tick to tick.

    It is drawn to the exact size, within a hair, while its figure is the difference of two marks,
    each up to half a step off: so the figure is held against the exact size, within one step. At
    most scales of a plan that is far less than 0.2 mm on paper; at half size a step can be more.
    """
    sheet = subject.sheet
    for view in sheet.of_kind("view"):
        scale = ratio(view)
        for group in sheet.of_kind("dimension", view):
            dimension = dimension_line(sheet, group)
            if dimension is None:
                yield sheet.finding(18, group.id, "no line of two ends with one figure")
            elif scale is not None:
                for message in _length_faults(subject, dimension, scale):
                    yield sheet.finding(18, group.id, message)
    for frame in plan_frames(subject):
        yield from _ends_elsewhere(subject, frame)
    for string in sheet.of_kind("dimension-string"):
        yield from _ends_unmarked(subject, string)


def _length_faults(subject: Subject, dimension: DimensionLine, scale: float) -> Iterator[str]:
    try:
        exact = float(dimension.group.data.get("exact-mm", ""))
    except ValueError:
        yield "does not state its exact size"
        return
    due = exact / scale * float(_level(subject, dimension))
    if abs(dimension.drawn - due) > TOLERANCE:
        yield f"drawn {dimension.drawn:.3f} mm long, {due:.3f} mm is to scale"
    figure = printed(dimension.figure.text, subject.sheet)
    # A millionth of a millimeter is what the decimals may hide.
    if figure is not None and abs(float(figure) - exact) > float(subject.facts.step) + 1e-6:
        yield f"prints {in_words(figure)} for {exact} mm, more than a step off"


def _level(subject: Subject, dimension: DimensionLine) -> Fraction:
    """How much of what a dimension measures goes along its run: along a wall aslant, not all."""
    string = subject.sheet.around(dimension.group, "dimension-string")
    run = string.data.get("run", "") if string else ""
    if string is None or run not in WALLS_OF_RUN:
        return Fraction(1)
    return subject.facts.level(run, string.data.get("end", "start"))


def _ends_elsewhere(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """The dimensions of a plan's strings whose ends are not where the layout has those places."""
    for string in run_strings(subject.sheet):
        if string.view != frame.view.number:
            continue
        places = stop_places(subject.facts, string.run, string.end)
        for dimension in string.dimensions:
            for name, end in (
                (dimension.source, dimension.start),
                (dimension.target, dimension.end),
            ):
                place = places.get(name)
                spot = frame.on(string.run, place, Fraction(0)) if place is not None else None
                level = string.run == "length"
                if spot is None or abs(end.x - spot.x if level else end.y - spot.y) > TOLERANCE:
                    message = f"does not end where the layout has {name}"
                    yield subject.sheet.finding(18, dimension.group.id, message)


def _ends_unmarked(subject: Subject, string: GroupRead) -> Iterator[Finding]:
    """Ends of a string's dimension lines without a tick about them or an extension line to them."""
    sheet = subject.sheet
    ticks = [
        path.around.middle
        for group in sheet.of_kind("ticks", string)
        for path in sheet.paths_in(group)
        if path.pen
    ]
    extensions = [
        path.around.grown(TOLERANCE)
        for group in sheet.of_kind("extension-lines", string)
        for path in sheet.paths_in(group)
        if path.pen
    ]
    for dimension in dimension_lines(sheet, string):
        for end in (dimension.start, dimension.end):
            if not any(dist(tick, end) <= TOLERANCE for tick in ticks):
                yield sheet.finding(18, dimension.group.id, "an end of its line has no tick")
            if not any(nearest(line, end) == 0 for line in extensions):
                message = "an end of its line has no extension line"
                yield sheet.finding(18, dimension.group.id, message)


def scale_bars_true(subject: Subject) -> Iterator[Finding]:
    """Point 19: each view says one scale in figures and words, and has a bar that is true to it."""
    sheet = subject.sheet
    bars: dict[str, list[GroupRead]] = {}
    for bar in sheet.of_kind("scale-bar"):
        bars.setdefault(bar.data.get("view", ""), []).append(bar)
    for view in sheet.of_kind("view"):
        scale = ratio(view)
        words = view.data.get("scale-text", "")
        told = None if scale is None else scale / enlargement(sheet)
        due = scale_in_words(words)
        if told is None or due is None or abs(told - due) > due * ALIKE:
            message = f"scale {view.data.get('scale', '')} is not “{words}”"
            yield sheet.finding(19, view.id, message)
        if view.id not in bars:
            yield sheet.finding(19, view.id, "has no scale bar")
        for bar in bars.pop(view.id, ()):
            for message in _bar_faults(subject, bar, scale or 1.0):
                yield sheet.finding(19, bar.id, message)
    for view_id, left_over in bars.items():
        yield sheet.finding(19, left_over[0].id, f"is of “{view_id}”, which is not on the sheet")


def scale_in_words(words: str) -> float | None:
    """How much smaller than life `1/2" = 1'-0"`, `1:20` or `FULL SIZE` makes a drawing."""
    metric = _METRIC_SCALE.fullmatch(words)
    if metric or words == FULL_SIZE:
        return float(metric[1]) if metric else 1.0
    paper, _, real = words.partition(" = ")
    try:
        lengths = [read_length(text, Units.INCH).inches for text in (paper, real)]
    except LengthTextError:
        return None
    return float(lengths[1] / lengths[0]) if lengths[0] else None


def _bar_faults(subject: Subject, bar: GroupRead, scale: float) -> Iterator[str]:
    sheet = subject.sheet
    outlines = [path.around for path in sheet.own_paths(bar) if path.closed]
    try:
        length = float(bar.data.get("length-mm", ""))
    except ValueError:
        length = 0.0
    if not outlines or not length:
        yield "has no outline or states no length"
        return
    width = outlines[0].right - outlines[0].left
    if abs(width - length / scale) > TOLERANCE:
        yield f"is {width:.3f} mm wide, {length / scale:.3f} mm is to scale"
    figures = [printed(lettering.text, sheet) for lettering in sheet.letterings_in(bar)]
    if not any(
        figure is not None and abs(float(figure) - length) < TOLERANCE for figure in figures
    ):
        yield f"does not print its length, {length} mm"


def page_of_named_size(subject: Subject) -> Iterator[Finding]:
    """Point 20: the page is as large as the paper it names, one unit to the millimeter."""
    sheet = subject.sheet
    paper = sheet.data.get("paper", "")
    if paper == ROLL:
        # A roll has the width of its plotter and is cut off where a page ends.
        named = [sheet.page.right, sheet.page.bottom]
    elif paper in PAPERS:
        named = list(PAPERS[paper])
    else:
        yield sheet.finding(20, sheet.id, f"names no known paper: “{paper}”")
        return
    stated = [_MILLIMETERS.fullmatch(text) for text in (sheet.stated_width, sheet.stated_height)]
    sizes = [float(match[1]) if match else 0.0 for match in stated]
    factor = enlargement(sheet)
    drawn = [sheet.page.right * factor, sheet.page.bottom * factor]
    origin_off = any((sheet.page.left, sheet.page.top))
    for size in (sizes, drawn):
        off = max(abs(one - other) for one, other in zip(size, named, strict=True))
        if off > PAGE_TOLERANCE or origin_off:
            message = f"{size[0]} x {size[1]} mm is not {paper}, {named[0]} x {named[1]} mm"
            yield sheet.finding(20, sheet.id, message)
