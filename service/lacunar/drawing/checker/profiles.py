"""Points on the profiles of beams: what they add up to, how large they are drawn, what is listed.

That parts which touch are hatched unlike is common drafting practice (no source).
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations
from math import atan2, degrees, dist

from lacunar.drawing.checker.dimension_lines import dimension_lines
from lacunar.drawing.checker.geometry import DECIMALS, TOLERANCE
from lacunar.drawing.checker.plan_frame import ratio
from lacunar.drawing.checker.profile_facts import BoardFacts, ProfileFacts
from lacunar.drawing.checker.records import Finding, GroupRead, Path, SheetRead
from lacunar.drawing.checker.shapes import Spot, Stroke
from lacunar.drawing.checker.strings import in_words, printed
from lacunar.drawing.checker.subject import Subject

SHEET = "Z-501"
WHOLE = {
    "across": "finished-width",
    "down": "drop",
    "seen": "drop",
    "net-depth": "drop",
}
"""What each string of parts must add up to."""
LISTED = frozenset({"side", "bottom", "backing", "upper_board"})
STOPS_SHORT = 0.2
# Hatches that differ by less are alike to the eye.
LEAST_TURN = 5.0
LEAST_PITCH = 0.25
HALF_TURN = 180.0

Sums = dict[str, Fraction]
Look = tuple[frozenset[int], float, bool]


def profile_views(subject: Subject) -> Iterator[tuple[GroupRead, ProfileFacts | None]]:
    """The views of profiles on a sheet, each with what the layout has under its id."""
    profiles = {each.id: each for each in subject.facts.sections.profiles}
    for view in subject.sheet.of_kind("view"):
        if view.data.get("view") == "profile-detail":
            yield view, profiles.get(view.data.get("profile", ""))


def parts_sum_up(subject: Subject) -> Iterator[Finding]:
    """Point 21: what is printed of a profile's parts adds up to its width and its drop."""
    sheet = subject.sheet
    for view, profile in profile_views(subject):
        sums = _sums(sheet, view)
        for name, of in WHOLE.items():
            if name in sums and sums[name] != sums.get(of):
                told = in_words(sums[of]) if of in sums else "not told"
                message = f"{name} sums to {in_words(sums[name])}, {of} is {told}"
                yield sheet.finding(21, view.id, message)
        if profile is not None:
            wholes = {"finished-width": profile.finished, "drop": profile.drop}
            for name, length in wholes.items():
                if name not in sums or abs(sums[name] - length) > subject.facts.step:
                    yield sheet.finding(21, view.id, f"{name} is not {in_words(length)}")


def _sums(sheet: SheetRead, view: GroupRead) -> Sums:
    """What the figures of each string of a view add up to."""
    sums: Sums = {}
    for string in sheet.of_kind("dimension-string", view):
        figures = [printed(each.figure.text, sheet) for each in dimension_lines(sheet, string)]
        total = sum((each for each in figures if each is not None), Fraction(0))
        sums[string.data.get("string", "")] = total
    return sums


def profiles_drawn(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 140: each profile is drawn, or the sheet says that views are left out."""
    drawn: set[str] = set()
    said = False
    for subject in _pages(subjects):
        sheet = subject.sheet
        for view, profile in profile_views(subject):
            if profile is None:
                yield sheet.finding(140, view.id, "is of a profile that the layout does not have")
            drawn.add(view.data.get("profile", ""))
        said = said or any("left out" in each.text for each in sheet.letterings)
    for profile in subjects[0].facts.sections.profiles:
        if profile.id not in drawn and not said:
            yield subjects[0].sheet.finding(140, f"profile-{profile.id}", "is not drawn")


def _pages(subjects: Sequence[Subject]) -> Iterator[Subject]:
    return (each for each in subjects if each.sheet.id.startswith(SHEET))


def boards_as_large(subject: Subject) -> Iterator[Finding]:
    """Point 141: each board of a profile is drawn as thick and as wide as it is laid out."""
    sheet = subject.sheet
    for view, profile in profile_views(subject):
        scale = ratio(view)
        if profile is None or scale is None:
            continue
        parts = _by_name(sheet, view)
        for board in profile.boards:
            found = parts.get(board.name)
            # About a member there is no backing: it goes on beyond.
            if found is None and board.name == "backing" and "member" in parts:
                continue
            if found is None or not _as_large(sheet, found, board, scale):
                message = f"the {board.name} is not drawn as it is laid out"
                yield sheet.finding(141, view.id, message)


def _by_name(sheet: SheetRead, view: GroupRead) -> dict[str, GroupRead]:
    return {part.data.get("part", ""): part for part in sheet.of_kind("profile-part", view)}


def _as_large(sheet: SheetRead, part: GroupRead, board: BoardFacts, scale: float) -> bool:
    """Whether as many outlines are drawn as there are boards, each in its size."""
    outlines = _outlines(sheet, part)
    due = sorted(float(size) / scale for size in (board.thickness, board.width))
    for path in outlines:
        box = path.around
        sizes = sorted((box.right - box.left, box.bottom - box.top))
        if any(abs(one - other) > TOLERANCE for one, other in zip(sizes, due, strict=True)):
            return False
    return len(outlines) == board.quantity


def _outlines(sheet: SheetRead, part: GroupRead) -> list[Path]:
    """Where a part is cut."""
    return [
        path
        for path in sheet.own_paths(part)
        if path.closed and path.pen is not None and path.pen.name == "cut"
    ]


def parts_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 49: each balloon is in the list of parts, and each part listed has its balloons."""
    pages = list(_pages(subjects))
    shown: Counter[tuple[str, str]] = Counter()
    listed: dict[tuple[str, str], str] = {}
    for subject in pages:
        sheet = subject.sheet
        yield from _numberless(sheet)
        shown.update(_key(balloon) for balloon in sheet.of_kind("balloon"))
        for row in sheet.of_kind("balloon-row"):
            if _key(row) in listed:
                yield sheet.finding(49, f"part {_key(row)[0]}", "is listed twice")
            listed[_key(row)] = row.data.get("views", "")
    for key in sorted(shown.keys() | listed.keys()):
        if str(shown[key]) != listed.get(key):
            message = f"has {shown[key]} balloons, the list says {listed.get(key, 'nothing')}"
            yield pages[0].sheet.finding(49, f"part {key[0]}", message)


def _numberless(sheet: SheetRead) -> Iterator[Finding]:
    """Balloons, and rows of the list, that do not print the number they bear."""
    for kind in ("balloon", "balloon-row"):
        for group in sheet.of_kind(kind):
            if group.data.get("number") not in {each.text for each in sheet.letterings_in(group)}:
                yield sheet.finding(49, sheet.place(group.number), "does not print its number")


def _key(group: GroupRead) -> tuple[str, str]:
    """The number and the part of a balloon, or of a row of the list."""
    return group.data.get("number", ""), group.data.get("part", "")


def sizes_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 142: the list prints each board's thickness and width as it is laid out."""
    pages = list(_pages(subjects))
    told: dict[str, set[tuple[Fraction, ...]]] = {}
    for subject in pages:
        for row in subject.sheet.of_kind("balloon-row"):
            texts = [each.text for each in subject.sheet.letterings_in(row)]
            sizes = {_sizes(text, subject.sheet) for text in texts}
            told.setdefault(row.data.get("number", ""), set()).update(sizes)
    for subject in pages:
        for view, profile in profile_views(subject):
            for board in profile.boards if profile is not None else ():
                yield from _listed_size(subject, view, board, told)


def _listed_size(
    subject: Subject,
    view: GroupRead,
    board: BoardFacts,
    told: dict[str, set[tuple[Fraction, ...]]],
) -> Iterator[Finding]:
    sheet, step = subject.sheet, subject.facts.step
    for balloon in sheet.of_kind("balloon", view):
        if balloon.data.get("part") != board.name:
            continue
        due = board.thickness, board.width
        rows = told.get(balloon.data.get("number", ""), set())
        if not any(
            len(sizes) == len(due)
            and all(
                abs(one - other) <= step / 2 + Fraction(DECIMALS)
                for one, other in zip(sizes, due, strict=True)
            )
            for sizes in rows
        ):
            yield sheet.finding(142, balloon.id, "is listed in another size than it is laid out")


def _sizes(text: str, sheet: SheetRead) -> tuple[Fraction, ...]:
    """A text such as `3/4" x 7 1/4"` as lengths; nothing where it is none."""
    lengths = [printed(part, sheet) for part in text.split(" x ")]
    return tuple(each for each in lengths if each is not None)


def hatches_differ(subject: Subject) -> Iterator[Finding]:
    """Point 42: parts that touch are hatched another way, or the lines another distance apart."""
    sheet = subject.sheet
    for view, _ in profile_views(subject):
        parts = [
            (part, _outlines(sheet, part), _look(sheet, part))
            for part in sheet.of_kind("profile-part", view)
        ]
        for one, other in combinations(parts, 2):
            if one[2] is None or other[2] is None or not _alike(one[2], other[2]):
                continue
            if any(_touch(a, b) for a in one[1] for b in other[1]):
                names = one[0].data.get("part", ""), other[0].data.get("part", "")
                message = f"{names[0]} and {names[1]} touch and are hatched alike"
                yield sheet.finding(42, view.id, message)


def _look(sheet: SheetRead, part: GroupRead) -> Look | None:
    """How a part is hatched: the ways of its lines [degrees], how far apart, or with dots."""
    if sheet.rings_in(part):
        return frozenset(), 0.0, True
    strokes = [
        stroke
        for path in sheet.own_paths(part)
        if path.pen is not None and path.pen.name == "hatch"
        for stroke in path.strokes()
        if stroke.start != stroke.end
    ]
    if not strokes:
        return None
    ways = Counter(round(_way(stroke)) % int(HALF_TURN) for stroke in strokes)
    return frozenset(ways), _pitch(strokes), False


def _way(stroke: Stroke) -> float:
    (x1, y1), (x2, y2) = stroke.start, stroke.end
    return degrees(atan2(y2 - y1, x2 - x1)) % HALF_TURN


def _pitch(strokes: Sequence[Stroke]) -> float:
    """How far apart the first two lines of one way are [mm]; 0 where no two have one way."""
    first = strokes[0]
    for stroke in strokes[1:]:
        if abs(_way(first) - _way(stroke)) < 1.0:
            return _off(first, stroke.start)
    return 0.0


def _off(line: Stroke, spot: Spot) -> float:
    (x1, y1), (x2, y2) = line.start, line.end
    length = dist(line.start, line.end)
    return abs((x2 - x1) * (spot.y - y1) - (y2 - y1) * (spot.x - x1)) / length


def _alike(one: Look, other: Look) -> bool:
    """Whether two hatches look the same."""
    if one[2] or other[2]:
        return one[2] and other[2]
    same_ways = len(one[0]) == len(other[0]) and all(
        min(abs(a - b), HALF_TURN - abs(a - b)) < LEAST_TURN
        for a, b in zip(sorted(one[0]), sorted(other[0]), strict=True)
    )
    return same_ways and abs(one[1] - other[1]) < LEAST_PITCH


def _touch(one: Path, other: Path) -> bool:
    """Whether two outlines share a stretch of an edge, rather than a corner."""
    return any(_shared(a, b) > STOPS_SHORT for a in one.strokes() for b in other.strokes())


def _shared(one: Stroke, other: Stroke) -> float:
    """How much of one edge lies along another [mm]."""
    (x1, y1), (x2, y2) = one.start, one.end
    length = dist(one.start, one.end)
    if not length or any(_off(one, spot) > TOLERANCE for spot in (other.start, other.end)):
        return 0.0
    along = sorted(
        ((x2 - x1) * (spot.x - x1) + (y2 - y1) * (spot.y - y1)) / length
        for spot in (other.start, other.end)
    )
    return min(length, along[1]) - max(0.0, along[0])
