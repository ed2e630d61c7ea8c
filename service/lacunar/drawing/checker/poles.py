"""Points on story poles: tables and strips say what the layout has, strips at full size and whole.

That a seam has something in common to be laid over, crosses to meet and no face at it, and that
every page has bars to be measured, is common practice, no source.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import dist, nan
from typing import NamedTuple

from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.shapes import Box
from lacunar.drawing.checker.strings import in_words, printed
from lacunar.drawing.checker.subject import Subject

POLE_SHEET = "Z-701"
TABLED = ("wall", "face", "center")
ON_STRIPS = (*TABLED, "backing", "member")
NUMBERED = ("wall", "face")
LEAST_OVERLAP = 12.7
FACE_OFF_SEAM = 6.35
CROSSES = 2
BARS = (150.0, 152.4)

Pole = tuple[str, str]


class _Strip(NamedTuple):
    """A strip as read: its sheet, the pole it is of, what it shows of it [mm], its outline."""

    sheet: SheetRead
    group: GroupRead
    pole: Pole
    first: float
    last: float
    outline: Box

    def place(self, x: float) -> float:
        """Which place of the pole lies at x on the sheet [mm]."""
        return self.first + x - self.outline.left

    def finding(self, point: int, message: str) -> Finding:
        return self.sheet.finding(point, self.group.id, message)


def poles_of(subject: Subject) -> list[Pole]:
    """The poles that a layout asks for: one to a run, or to each end of it where they differ."""
    return [
        (run, end)
        for run, end in subject.facts.marks
        if end == "start" or subject.facts.unlike(run, ON_STRIPS)
    ]


def tables_as_marked(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 26: the tables of poles list every wall, face and center as the layout marks them."""
    first = subjects[0]
    if not any(subject.sheet.id.startswith(POLE_SHEET) for subject in subjects):
        return
    for run, end in poles_of(first):
        marks = [m.mark for m in first.facts.marks[run, end] if m.kind in TABLED]
        differ = first.facts.unlike(run, ON_STRIPS)
        kind = f"pole-{run}-{end}" if differ else f"pole-{run}"
        told = [
            printed(lettering.text, subject.sheet)
            for subject in subjects
            for table in subject.sheet.of_kind("poles-table")
            if table.id.partition("-table")[0] == kind
            for cell in subject.sheet.of_kind("cell", table)
            for lettering in subject.sheet.letterings_in(cell)
        ]
        if Counter(told) != Counter(marks):
            message = f"lists {len(told)} places that are not the {len(marks)} marked"
            yield first.sheet.finding(26, kind, message)


def strips_as_marked(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Points 26 and 27: strips at full size show every mark, go from wall to wall, and overlap."""
    found = [strip for subject in subjects for strip in _strips(subject)]
    if not found:
        return
    first = subjects[0]
    for pole in poles_of(first):
        of_pole = sorted((s for s in found if s.pole == pole), key=lambda strip: strip.first)
        places = {
            (m.kind, m.of, m.side): float(m.mark)
            for m in first.facts.marks[pole]
            if m.kind in ON_STRIPS
        }
        if not of_pole:
            yield first.sheet.finding(27, "-".join(("pole", *pole)), "has no strip")
            continue
        yield from _whole(of_pole, max(places.values()))
        yield from _lines(of_pole, places)
        for strip in of_pole:
            yield from _numbers(strip, [v for (kind, *_), v in places.items() if kind in NUMBERED])
    for sheet in {id(strip.sheet): strip.sheet for strip in found}.values():
        yield from _page(sheet, first.facts.digest)


def _strips(subject: Subject) -> Iterator[_Strip]:
    sheet = subject.sheet
    for group in sheet.of_kind("pole-strip"):
        outlines = [path.around for path in sheet.own_paths(group) if path.closed]
        pole = group.data.get("run", ""), group.data.get("end", "")
        first, last = _number(group, "from-mm"), _number(group, "to-mm")
        # Without an outline nothing of it stands where it says.
        outline = outlines[0] if outlines else Box(nan, nan, nan, nan)
        yield _Strip(sheet, group, pole, first, last, outline)


def _number(group: GroupRead, name: str) -> float:
    """A figure that a group bears as data; no number at all where it has none."""
    try:
        return float(group.data.get(name, ""))
    except ValueError:
        return nan


def _whole(strips: Sequence[_Strip], length: float) -> Iterator[Finding]:
    """Whether strips go from wall to wall, each as long as it says, and can be put together."""
    reached = 0.0
    for number, strip in enumerate(strips, start=1):
        drawn = strip.outline.right - strip.outline.left
        if not abs(drawn - (strip.last - strip.first)) <= TOLERANCE:
            yield strip.finding(27, f"is {drawn:.3f} mm long and says otherwise")
        if strip.group.data.get("piece") != f"{number} / {len(strips)}":
            yield strip.finding(27, "is not counted in its order")
        common = reached - strip.first
        if common < LEAST_OVERLAP if number > 1 else common != 0.0:
            yield strip.finding(27, f"has {common:.3f} mm in common with what is before it")
        reached = strip.last
    if not abs(reached - length) <= TOLERANCE:
        yield strips[-1].finding(27, f"the pole ends at {reached:.3f} mm, not at {length:.3f} mm")
    for one, other in pairwise(strips):
        yield from _seam(one, other)


def _seam(one: _Strip, other: _Strip) -> Iterator[Finding]:
    """Whether two crosses of both strips meet, above the band and below it."""
    meeting = [
        (at, height)
        for at, height in _crosses(one)
        if any(dist((at, height), there) <= TOLERANCE for there in _crosses(other))
        and other.first <= at <= one.last
    ]
    if len(meeting) != CROSSES:
        yield other.finding(27, f"{len(meeting)} crosses meet those of the strip before it")


def _crosses(strip: _Strip) -> list[tuple[float, float]]:
    """The crosses of a strip: where along the pole, and how far below the band's upper edge."""
    sheet = strip.sheet
    found = []
    for group in sheet.of_kind("pole-cross", strip.group):
        boxes = [path.around for path in sheet.paths_in(group)]
        middle = Box(
            min(box.left for box in boxes),
            min(box.top for box in boxes),
            max(box.right for box in boxes),
            max(box.bottom for box in boxes),
        ).middle
        found.append((strip.place(middle.x), middle.y - strip.outline.top))
    return found


def _lines(
    strips: Sequence[_Strip], places: dict[tuple[str, str, str], float]
) -> Iterator[Finding]:
    """Whether each mark has its line at its place, and none stands where strips are parted."""
    drawn: set[tuple[str, str, str]] = set()
    for strip in strips:
        sheet = strip.sheet
        for line in sheet.of_kind("pole-line", strip.group):
            data = line.data
            name = data.get("kind", ""), data.get("of", ""), data.get("side", "")
            ats = [strip.place(path.around.middle.x) for path in sheet.paths_in(line)]
            if name not in places or not all(abs(at - places[name]) <= TOLERANCE for at in ats):
                yield strip.finding(26, f"the {name[2]} {name[0]} of {name[1]} is not as marked")
            drawn.add(name)
    for name in places.keys() - drawn:
        yield strips[0].finding(26, f"the {name[2]} {name[0]} of {name[1]} is on no strip")
    faces = [place for (kind, *_), place in places.items() if kind in NUMBERED]
    for strip in strips[1:]:
        if any(abs(face - strip.first) < FACE_OFF_SEAM - TOLERANCE for face in faces):
            yield strip.finding(27, "a face stands where it is laid over the strip before it")


def _numbers(strip: _Strip, places: Sequence[float]) -> Iterator[Finding]:
    """Whether each face and wall bears its number, and the start of a strip its own."""
    sheet = strip.sheet
    expected = [place for place in places if strip.first <= place <= strip.last]
    if strip.first:
        expected.append(strip.first)
    told: list[float] = []
    for number in sheet.of_kind("pole-number", strip.group):
        value = printed(" ".join(each.text for each in sheet.letterings_in(number)), sheet)
        spots = [spot for path in sheet.paths_in(number) for spot in path.spots]
        on_line = [s for s in spots if abs(s.y - strip.outline.top) <= TOLERANCE]
        if value is None or not on_line:
            yield strip.finding(26, "a number cannot be read, or leads to no line")
            continue
        told.append(float(value))
        if not abs(strip.place(on_line[0].x) - float(value)) <= TOLERANCE:
            yield strip.finding(26, f"{in_words(value)} does not stand at its place")
    if len(told) != len(expected) or any(
        abs(one - other) > TOLERANCE
        for one, other in zip(sorted(told), sorted(expected), strict=True)
    ):
        yield strip.finding(26, "its numbers are not those of its faces and walls")


def _page(sheet: SheetRead, digest: str) -> Iterator[Finding]:
    """Whether a page of strips has true check bars, and says which sheet of which input it is."""
    lengths = []
    for bar in sheet.of_kind("check-bar"):
        lines = [path.around for path in sheet.paths_in(bar)]
        length = max((line.right - line.left for line in lines), default=0.0)
        if not abs(length - _number(bar, "length-mm")) <= TOLERANCE:
            yield sheet.finding(27, sheet.id, f"a check bar is {length:.3f} mm long")
        lengths.append(round(length, 1))
    if sorted(lengths) != list(BARS):
        yield sheet.finding(27, sheet.id, f"has check bars of {lengths} mm")
    feet = list(sheet.of_kind("page-foot"))
    words = " ".join(each.text for foot in feet for each in sheet.letterings_in(foot))
    if sheet.id not in words or not digest or digest[:12] not in words:
        yield sheet.finding(27, sheet.id, "does not say which sheet of which input it is")
