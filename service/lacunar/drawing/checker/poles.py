"""Points on story poles: tables and strips say what the layout has, strips at full size and whole.

That no face stands at a seam is common practice, no source.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.full_size import StripRead, page_true, strips_read, whole
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import in_words, printed
from lacunar.drawing.checker.subject import Subject

POLE_SHEET = "Z-701"
TABLED = ("wall", "face", "center")
ON_STRIPS = (*TABLED, "backing", "member")
NUMBERED = ("wall", "face")
FACE_OFF_SEAM = 6.35

Pole = tuple[str, str]


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
    found = [s for subject in subjects for s in strips_read(subject.sheet, "pole-strip")]
    if not found:
        return
    first = subjects[0]
    for pole in poles_of(first):
        of_pole = sorted((s for s in found if _pole(s) == pole), key=lambda strip: strip.first)
        places = {
            (m.kind, m.of, m.side): float(m.mark)
            for m in first.facts.marks[pole]
            if m.kind in ON_STRIPS
        }
        if not of_pole:
            yield first.sheet.finding(27, "-".join(("pole", *pole)), "has no strip")
            continue
        yield from whole(27, of_pole, max(places.values()), "pole-cross")
        yield from _lines(of_pole, places)
        for strip in of_pole:
            yield from _numbers(strip, [v for (kind, *_), v in places.items() if kind in NUMBERED])
    for sheet in {id(strip.sheet): strip.sheet for strip in found}.values():
        yield from page_true(27, sheet, first.facts.digest)


def _pole(strip: StripRead) -> Pole:
    """The pole that a strip is of."""
    return strip.group.data.get("run", ""), strip.group.data.get("end", "")


def _lines(
    strips: Sequence[StripRead], places: dict[tuple[str, str, str], float]
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


def _numbers(strip: StripRead, places: Sequence[float]) -> Iterator[Finding]:
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
