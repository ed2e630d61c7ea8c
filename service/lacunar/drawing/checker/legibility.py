"""Points on reading the print: letters, line weights, and nothing in each other's way.

Bounds: capitals of 2.5 mm and lines of 0.18 mm are members of the ISO 3098 and ISO 128 series (from
memory of the standards); less than that does not survive a site print (common practice, no source).
"""

from collections.abc import Iterator

from lacunar.drawing.checker.overlaps import WRITTEN_TO
from lacunar.drawing.checker.records import Finding, Lettering, Path, PenSeen, Ring
from lacunar.drawing.checker.shapes import encloses, nearest
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.elements import Face
from lacunar.drawing.style import PENS

SMALLEST_CAPITALS = 2.5
SMALLEST_LINE = 0.18
# Font sizes are written to a thousandth of a millimeter.
HEIGHT_TOLERANCE = 0.002
BLACK = ("#000000", "black")
READING_ANGLES = (0.0, -90.0)

_PENS = {pen.name: pen for pen in PENS}
_WIDTHS = {pen.width for pen in PENS}


def capitals_tall_enough(subject: Subject) -> Iterator[Finding]:
    """Point 31: capital height by font metrics, as stated, in a face that is really there."""
    for lettering in subject.sheet.letterings:
        where = subject.sheet.place(lettering.group)
        for message in _letter_faults(lettering, subject):
            yield subject.sheet.finding(31, where, f"“{lettering.text}” {message}")


def _letter_faults(lettering: Lettering, subject: Subject) -> Iterator[str]:
    if lettering.height < SMALLEST_CAPITALS - HEIGHT_TOLERANCE:
        yield f"has capitals of {lettering.height:.2f} mm, less than {SMALLEST_CAPITALS} mm"
    if lettering.stated_height != f"{lettering.height:.2f}".rstrip("0").rstrip("."):
        yield f"states “{lettering.stated_height}” for capitals of {lettering.height:.2f} mm"
    if lettering.family != subject.typeface.family[Face(lettering.face)]:
        yield f"is set in “{lettering.family}”, of which no metrics are known"
    for character in subject.typeface.missing(lettering.text):
        yield f"has a character that the face lacks: U+{ord(character):04X}"


def lines_wide_enough(subject: Subject) -> Iterator[Finding]:
    """Point 32: every line at least 0.18 mm wide, and of a width in the table of pens."""
    for where, pen in _pens_used(subject):
        if pen.width < SMALLEST_LINE:
            message = f"a line {pen.width} mm wide, less than {SMALLEST_LINE} mm"
            yield subject.sheet.finding(32, where, message)
        elif pen.width not in _WIDTHS:
            message = f"a line {pen.width} mm wide, which no pen has"
            yield subject.sheet.finding(32, where, message)


def pens_as_listed(subject: Subject) -> Iterator[Finding]:
    """Point 38: every line is drawn with the width and dashes of the pen it names."""
    for where, pen in _pens_used(subject):
        listed = _PENS.get(pen.name)
        if listed is None:
            yield subject.sheet.finding(38, where, f"no pen “{pen.name}” is listed")
        elif (pen.width, pen.dashes) != (listed.width, listed.dashes):
            message = f"pen “{pen.name}” drawn {pen.width} mm wide, dashes {pen.dashes}"
            yield subject.sheet.finding(38, where, message)

    for path in subject.sheet.paths:
        if path.pen is None and path.fill == "none":
            where = subject.sheet.place(path.group)
            yield subject.sheet.finding(38, where, "a path with neither pen nor fill")


def ink_is_black(subject: Subject) -> Iterator[Finding]:
    """Point 43: lines and letters are black, so that every copier keeps them."""
    sheet = subject.sheet
    for where, pen in _pens_used(subject):
        if pen.color not in BLACK:
            yield sheet.finding(43, where, f"pen “{pen.name}” in {pen.color}")
    for lettering in sheet.letterings:
        if lettering.color not in BLACK:
            message = f"“{lettering.text}” in {lettering.color}"
            yield sheet.finding(43, sheet.place(lettering.group), message)


def _pens_used(subject: Subject) -> Iterator[tuple[str, PenSeen]]:
    """Each way of drawing a line once for each group, with the group's name."""
    sheet = subject.sheet
    seen = dict.fromkeys((path.group, path.pen) for path in sheet.paths if path.pen)
    seen |= dict.fromkeys((ring.group, ring.pen) for ring in sheet.rings if ring.pen)
    for group, pen in seen:
        if pen:
            yield sheet.place(group), pen


def texts_apart(subject: Subject) -> Iterator[Finding]:
    """Point 33: no text on another."""
    letterings = subject.sheet.letterings
    for first, second in subject.boxes.overlapping_pairs():
        where = subject.sheet.place(letterings[first].group)
        other = subject.sheet.place(letterings[second].group)
        message = f"“{letterings[first].text}” on “{letterings[second].text}” of {other}"
        yield subject.sheet.finding(33, where, message)


def texts_clear_of_lines(subject: Subject) -> Iterator[Finding]:
    """Point 34: no line or circle through a text, no text in a black area or painted over."""
    sheet = subject.sheet
    for path in sheet.paths:
        yield from _reported(subject, path, _hit_by_path(path, subject))
    for ring in sheet.rings:
        yield from _reported(subject, ring, _hit_by_ring(ring, subject))


def _hit_by_path(path: Path, subject: Subject) -> set[int]:
    hit: set[int] = set()
    if path.pen or is_dark(path.fill):
        hit.update(*(subject.boxes.crossed_by(stroke) for stroke in path.strokes()))
    if path.fill != "none":
        for number in subject.boxes.meeting(path.around):
            lettering = subject.sheet.letterings[number]
            if _hides(path, lettering) and encloses(path.spots, lettering.box.middle):
                hit.add(number)
    return hit


def _hit_by_ring(ring: Ring, subject: Subject) -> set[int]:
    hit: set[int] = set()
    half = ring.pen.width / 2 if ring.pen else 0.0
    for number in subject.boxes.meeting(ring.around.grown(half)):
        lettering = subject.sheet.letterings[number]
        in_area = nearest(lettering.box, ring.center) < ring.radius
        if (ring.pen and ring.touches(lettering.box.grown(-WRITTEN_TO), half)) or (
            ring.fill != "none" and in_area and _hides(ring, lettering)
        ):
            hit.add(number)
    return hit


def _hides(area: Path | Ring, lettering: Lettering) -> bool:
    """Whether a text within the filled area cannot be read."""
    return is_dark(area.fill) or area.order > lettering.order


def is_dark(fill: str) -> bool:
    """Whether black letters drown in a fill: any but white, a gray or lighter, and what is none."""
    if not fill.startswith("#"):
        return fill != "white"
    digits = fill[1:] if len(fill) > len("#rgb") else "".join(2 * digit for digit in fill[1:])
    try:
        return sum(int(digits[place : place + 2], 16) for place in (0, 2, 4)) < 3 * 0x80
    except ValueError:
        return True


def _reported(subject: Subject, mark: Path | Ring, hit: set[int]) -> Iterator[Finding]:
    sheet = subject.sheet
    for number in sorted(hit):
        lettering = sheet.letterings[number]
        drawn = f"pen “{mark.pen.name}”" if mark.pen else "a filled area"
        message = f"“{lettering.text}” is crossed by {drawn} of {sheet.place(mark.group)}"
        yield sheet.finding(34, sheet.place(lettering.group), message)


def one_dimension_height(subject: Subject) -> Iterator[Finding]:
    """Point 39: all dimension figures of a sheet are of one height."""
    sheet = subject.sheet
    heights: dict[float, str] = {}
    for dimension in sheet.of_kind("dimension"):
        for lettering in sheet.letterings_in(dimension):
            heights.setdefault(round(lettering.height, 2), dimension.id)
    if len(heights) > 1:
        message = "dimension figures of " + ", ".join(f"{height} mm" for height in sorted(heights))
        yield sheet.finding(39, heights[min(heights)], message)


def texts_upright_or_turned(subject: Subject) -> Iterator[Finding]:
    """Point 40: text is read from the bottom or from the right edge of the sheet."""
    sheet = subject.sheet
    for lettering in sheet.letterings:
        if lettering.angle not in READING_ANGLES:
            message = f"“{lettering.text}” is turned by {lettering.angle}°"
            yield sheet.finding(40, sheet.place(lettering.group), message)
