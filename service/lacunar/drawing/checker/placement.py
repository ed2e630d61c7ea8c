"""Points on where things stand: within the frame, out of the title block, dimension lines apart.

Distances of dimension lines: 10 mm from the object to the first and 6 mm from one to the next are
the usual 3/8" and 1/4" of drafting practice, rounded (from memory).
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lacunar.drawing.checker.dimension_lines import DimensionLine, dimension_lines
from lacunar.drawing.checker.overlaps import WRITTEN_TO
from lacunar.drawing.checker.records import Finding, GroupRead, Lettering, Path, Ring
from lacunar.drawing.checker.shapes import Box, extent, nearest
from lacunar.drawing.checker.subject import Subject

LINES_APART = 6.0
FIRST_LINE_OUT = 10.0
STRIPS = ("pole-strip", "mock-up-strip")
"""What stands on pages of its own kind, at full size."""
UNPRINTED = 6.0
"""What printers leave blank at the edges of paper (common practice, no source) [mm]."""
# A figure stands just above its line. Farther off, a leader must tell whose it is, and come close.
FIGURE_OFF_LINE = 2.0
LEADER_TO_FIGURE = 1.5
# Ends that are to meet on paper may differ by what rounding of coordinates does to both.
MEETING = 0.01


def everything_in_its_place(subject: Subject) -> Iterator[Finding]:
    """Point 35: the frame on the page, all else in the frame, the title block to itself."""
    sheet = subject.sheet
    if any(True for kind in STRIPS for _ in sheet.of_kind(kind)):
        # Strips to be cut out stand on bare paper, clear of where no printer prints.
        yield from _outside_frame(subject, None, sheet.page.grown(-UNPRINTED))
        return
    frame = _outline(subject, "frame")
    title_block = _outline(subject, "title-block")
    for name, outline in (("frame", frame), ("title block", title_block)):
        if outline is None:
            yield sheet.finding(35, sheet.id, f"there is no {name}")
    if frame is None or title_block is None:
        return
    frame_group, frame_box = frame
    if not sheet.page.holds(frame_box.grown(-WRITTEN_TO)):
        yield sheet.finding(35, frame_group.id, "the frame runs off the page")
    yield from _outside_frame(subject, frame_group, frame_box.grown(WRITTEN_TO))
    yield from _strayed(subject, frame_group, *title_block)


def _outline(subject: Subject, kind: str) -> tuple[GroupRead, Box] | None:
    """The one group of a kind and its outline, the first path in it."""
    groups = list(subject.sheet.of_kind(kind))
    paths = subject.sheet.own_paths(groups[0]) if len(groups) == 1 else []
    return (groups[0], paths[0].around) if paths and paths[0].closed else None


def _outside_frame(subject: Subject, frame: GroupRead | None, box: Box) -> Iterator[Finding]:
    sheet = subject.sheet
    for mark in sheet.everything():
        if (not frame or mark.group != frame.number) and not box.holds(mark.around):
            message = f"{_named(mark)} runs out of {'the frame' if frame else 'what is printed'}"
            yield sheet.finding(35, sheet.place(mark.group), message)


def _strayed(
    subject: Subject, frame: GroupRead, title_block: GroupRead, box: Box
) -> Iterator[Finding]:
    """What the title block holds beyond its outline, and what it does not hold but lies in it."""
    sheet = subject.sheet
    inner, outer = box.grown(-WRITTEN_TO), box.grown(WRITTEN_TO)
    for mark in sheet.everything():
        if sheet.is_within(mark.group, title_block):
            if not outer.holds(mark.around):
                message = f"{_named(mark)} runs out of the title block"
                yield sheet.finding(35, sheet.place(mark.group), message)
        elif mark.group != frame.number and mark.touches(inner):
            message = f"{_named(mark)} does not belong in the title block"
            yield sheet.finding(35, sheet.place(mark.group), message)


def _named(mark: Path | Ring | Lettering) -> str:
    if isinstance(mark, Lettering):
        return f"“{mark.text}”"
    return "a circle" if isinstance(mark, Ring) else "a line"


def figures_fit(subject: Subject) -> Iterator[Finding]:
    """Point 36: a figure stands between the ends of its line, or is led out and has its leader."""
    for dimension in dimension_lines(subject.sheet):
        message = _led_out_fault(dimension) if dimension.led_out else _misfit(dimension)
        if message:
            figure = f"“{dimension.figure.text}”"
            yield subject.sheet.finding(36, dimension.group.id, f"{figure} {message}")


def _misfit(dimension: DimensionLine) -> str:
    line, box = extent((dimension.start, dimension.end)), dimension.figure.box
    if dimension.level:
        low, high, first, last = line.left, line.right, box.left, box.right
        off = line.top - box.bottom
    else:
        low, high, first, last = line.top, line.bottom, box.top, box.bottom
        off = line.left - box.right
    if last - first > high - low:
        return f"is {last - first:.2f} mm wide on a line of {high - low:.2f} mm and not led out"
    if first < low - MEETING or last > high + MEETING or not 0 <= off <= FIGURE_OFF_LINE:
        return "does not stand on its line"
    return ""


def _led_out_fault(dimension: DimensionLine) -> str:
    line = extent((dimension.start, dimension.end))
    for leader in dimension.leaders:
        leaves = any(nearest(line, spot) <= MEETING for spot in leader.spots)
        box = dimension.figure.box.grown(LEADER_TO_FIGURE)
        if leaves and leader.touches(box):
            return ""
    return "is led out without a leader from its line to it"


def dimension_lines_apart(subject: Subject) -> Iterator[Finding]:
    """Point 37: 6 mm between dimension lines of one side of a view, 10 mm to the object."""
    sheet = subject.sheet
    for view in sheet.of_kind("view"):
        lines = [
            line for line in dimension_lines(sheet) if sheet.is_within(line.group.number, view)
        ]
        drawn = [
            mark.around for one in sheet.of_kind("object", view) for mark in sheet.paths_in(one)
        ]
        if not lines:
            continue
        if not drawn:
            yield sheet.finding(37, view.id, "dimension lines, but no object to stand off from")
            continue
        spots = [spot for box in drawn for spot in box.corners]
        for side, offsets in _offsets(lines, extent(spots)).items():
            yield from _too_close(subject, f"{view.id} {side}", offsets)


def _offsets(lines: Sequence[DimensionLine], around: Box) -> dict[str, list[float]]:
    """How far out the dimension lines of each side of the object lie [mm], nearest first."""
    sides: dict[str, set[float]] = {}
    for line in lines:
        x, y = line.start
        if line.level:
            side, out = max(("above", around.top - y), ("below", y - around.bottom), key=_second)
        else:
            side, out = max(("left", around.left - x), ("right", x - around.right), key=_second)
        sides.setdefault(side, set()).add(round(out, 2))
    return {side: sorted(outs) for side, outs in sides.items()}


def _second(pair: tuple[str, float]) -> float:
    return pair[1]


def _too_close(subject: Subject, where: str, offsets: list[float]) -> Iterator[Finding]:
    if offsets[0] < FIRST_LINE_OUT:
        message = (
            f"a dimension line {offsets[0]:.2f} mm from the object, less than {FIRST_LINE_OUT}"
        )
        yield subject.sheet.finding(37, where, message)
    for inner, outer in pairwise(offsets):
        if outer - inner < LINES_APART:
            message = f"dimension lines {outer - inner:.2f} mm apart, less than {LINES_APART}"
            yield subject.sheet.finding(37, where, message)
