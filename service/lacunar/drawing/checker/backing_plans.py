"""Points on the backing plan: joists, backing and zones where they are laid out, its tables."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.drawing.checker.backing_facts import BackingFacts, Faces, ZoneFacts
from lacunar.drawing.checker.facts import MarkFacts
from lacunar.drawing.checker.figures import rounded
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import BACKING, PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.setting_out import figure_faults, figures_told
from lacunar.drawing.checker.shapes import Box, Spot, extent
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.checker.told_cells import RowTold, Told, same_rows, told_rows

TOLD = ("wall", "backing")
LEAST_ZONE = 2.4
"""No zone is drawn smaller than this on paper [mm]."""
UNDER_NAMES = 12.0
"""A zone that is narrower than this on paper [mm] may lie under a name."""
MOST_SIZES = 60
EVERY = 10**6
# A figure may be off by half of what it is rounded to, and a hair for reading it back.
HAIR = Fraction(1, 1000)
FORMS = {
    "crosses": "CROSSES",
    "tees": "TEES",
    "ells": "ELLS",
    "wall_ends": "WALL ENDS",
    "soffit_ends": "SOFFIT ENDS",
    "mid_spans": "MIDDLES",
    "in_all": "IN ALL",
}


def _plans(subject: Subject) -> Iterator[tuple[PlanFrame, BackingFacts]]:
    backing = subject.facts.backing
    for frame in plan_frames(subject, BACKING) if backing else ():
        assert backing is not None
        yield frame, backing


def _across(frame: PlanFrame, on: str, spot: Spot) -> float:
    """How far along a run a place on paper is, from where places are told [mm of paper]."""
    return spot.x - frame.origin.x if on == "length" else frame.origin.y - spot.y


def joists_at_their_places(subject: Subject) -> Iterator[Finding]:
    """Point 120: each joist is drawn at its center, or by both its edges."""
    sheet = subject.sheet
    for frame, backing in _plans(subject):
        drawn = {group.data.get("id", ""): group for group in sheet.of_kind("joist", frame.view)}
        if drawn.keys() != backing.joists.keys():
            message = f"has {len(drawn)} joists, the layout {len(backing.joists)}"
            yield sheet.finding(120, frame.view.id, message)
        for joist, group in drawn.items():
            center = backing.joists.get(joist)
            if center is not None and not _as_joist(subject, frame, group, center):
                yield sheet.finding(120, group.id, "is not where the layout has it")


def _as_joist(subject: Subject, frame: PlanFrame, group: GroupRead, center: Fraction) -> bool:
    backing = subject.facts.backing
    assert backing is not None
    spots = [spot for path in subject.sheet.paths_in(group) for spot in path.spots]
    off = [_across(frame, backing.joists_on, spot) - float(center) / frame.ratio for spot in spots]
    half = float(backing.joist_width) / 2 / frame.ratio
    on_center = all(abs(one) <= TOLERANCE for one in off)
    on_edges = all(abs(abs(one) - half) <= TOLERANCE for one in off)
    both = bool(off) and min(off) < 0.0 < max(off)
    # A joist at a wall has one edge in the room.
    whole = both or not _in_room(subject, backing.joists_on, center, backing.joist_width / 2)
    return bool(off) and (on_center or (on_edges and whole))


def _in_room(subject: Subject, on: str, center: Fraction, half: Fraction) -> bool:
    """Whether both edges of a joist lie between the outermost places of the room."""
    places = [corner[0 if on == "length" else 1] for corner in subject.facts.outline]
    return min(places) < center - half and center + half < max(places)


def backing_at_its_offset(subject: Subject) -> Iterator[Finding]:
    """Point 121: each line of backing is drawn, its faces in from the finished ones as laid out."""
    sheet = subject.sheet
    for frame, backing in _plans(subject):
        drawn = {
            (group.data.get("of", ""), group.data.get("side", "")): group
            for group in sheet.of_kind("backing", frame.view)
        }
        if drawn.keys() != backing.strips.keys():
            message = f"has {len(drawn)} lines of backing, the layout {len(backing.strips)}"
            yield sheet.finding(121, frame.view.id, message)
        for name, group in drawn.items():
            faces = backing.strips.get(name)
            if faces is not None and not _at_faces(subject, frame, group, faces):
                yield sheet.finding(121, group.id, "does not stand where it is worked back to")


def _at_faces(subject: Subject, frame: PlanFrame, group: GroupRead, faces: Faces) -> bool:
    if faces.low is None or faces.high is None:
        return True
    fields = [path for path in subject.sheet.paths_in(group) if path.closed]
    places = [_across(frame, faces.on, spot) for path in fields for spot in path.spots]
    low, high = (float(face) / frame.ratio for face in (faces.low, faces.high))
    return all(min(abs(at - low), abs(at - high)) <= TOLERANCE for at in places)


def backing_dimensioned(subject: Subject) -> Iterator[Finding]:
    """Point 122: both faces of backing are dimensioned from the start wall, as marked.

    At the end of the other run too where what is marked is unlike there; joists where they are.
    """
    sheet, facts = subject.sheet, subject.facts
    for frame, _ in _plans(subject):
        for run, end in facts.marks:
            expected = _expected(subject, run, end)
            told = []
            for name, figure in figures_told(subject, frame, run, end):
                mark = expected.get(name) or _unmarked(subject, run, end, name)
                told += [name] if name[0] in TOLD else []
                for message in (
                    figure_faults(subject, frame, figure, (run, end, mark)) if mark else ()
                ):
                    yield sheet.finding(122, figure.id, message)
            if sorted(told) != sorted(expected):
                message = f"tells {len(told)} places at the {end}, not {len(expected)}"
                yield sheet.finding(122, f"running-{run}-{end}", message)


def _expected(subject: Subject, run: str, end: str) -> dict[tuple[str, str, str], MarkFacts]:
    """What is to be dimensioned at an end of a run: nothing at the far one where all is alike."""
    facts = subject.facts
    if end == "end" and not facts.unlike(run, TOLD):
        return {}
    return {(m.kind, m.of, m.side): m for m in facts.marks[run, end] if m.kind in TOLD}


def _unmarked(subject: Subject, run: str, end: str, name: tuple[str, str, str]) -> MarkFacts | None:
    """Where a joist or a cleat is to be told, which have no marks in the layout; None of others.

    Joists of a grid along the walls have their ids alone.
    """
    facts, backing, (kind, of, side) = subject.facts, subject.facts.backing, name
    if backing is None or facts.followed is not None:
        return None
    place: Fraction | None = None
    if kind == "joist":
        place = backing.joists.get(of)
    elif kind == "cleat" and (of, side) in backing.strips:
        faces = backing.strips[of, side]
        if faces.low is not None and faces.high is not None:
            place = (faces.low + faces.high) / 2
    if place is None:
        return None
    place += facts.before(run, end)
    return MarkFacts(kind, of, side, rounded(place, facts.step), place)


def zones_kept_out(subject: Subject) -> Iterator[Finding]:
    """Point 28: the zone about each item is shown, and where it meets backing, that is told of."""
    sheet = subject.sheet
    for frame, backing in _plans(subject):
        drawn = {group.data.get("of", ""): group for group in sheet.of_kind("keep-out", frame.view)}
        for zone in backing.zones:
            group, box = drawn.get(zone.id), _zone_box(subject, frame, zone)
            spots = [s for path in sheet.paths_in(group) for s in path.spots] if group else []
            if group is None or not _covers(extent(spots) if spots else None, box):
                yield sheet.finding(28, f"keep-out-{zone.id}", "is not shown where it is laid out")
            for beam in _met(subject, frame, backing, box):
                if beam not in zone.meets:
                    message = f"meets the backing of {beam}, and no conflict is told"
                    yield sheet.finding(28, f"keep-out-{zone.id}", message)


def _zone_box(subject: Subject, frame: PlanFrame, zone: ZoneFacts) -> Box:
    """A zone on paper, as far as it is in the room."""
    room = extent([frame.spot(*corner) for corner in subject.facts.outline])
    at = frame.spot(zone.x, zone.y)
    wide, high = (
        max(float(size) / frame.ratio, LEAST_ZONE) / 2 for size in (zone.length, zone.width)
    )
    return Box(
        max(at.x - wide, room.left),
        max(at.y - high, room.top),
        min(at.x + wide, room.right),
        min(at.y + high, room.bottom),
    )


def _covers(drawn: Box | None, wanted: Box) -> bool:
    """Whether lines lie in a zone and about its middle; a name may hide a small one in part."""
    small = min(wanted.right - wanted.left, wanted.bottom - wanted.top) < UNDER_NAMES
    if drawn is None:
        return small
    middle = wanted.middle
    about = drawn.left <= middle.x <= drawn.right and drawn.top <= middle.y <= drawn.bottom
    return (about or small) and wanted.grown(TOLERANCE).holds(drawn)


def _met(subject: Subject, frame: PlanFrame, backing: BackingFacts, box: Box) -> Iterator[str]:
    """The beams whose backing, as drawn, a zone comes into; none that lies along no run."""
    for group in subject.sheet.of_kind("backing", frame.view):
        beam, side = group.data.get("of", ""), group.data.get("side", "")
        faces = backing.strips.get((beam, side))
        fields = [path.around for path in subject.sheet.paths_in(group) if path.closed]
        met = any(field.grown(-TOLERANCE).overlaps(box) for field in fields)
        if met and faces is not None and faces.low is not None:
            yield beam


def tables_tell_backing(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 123: tables tell backing of each profile, its pieces, forms and lines, as laid out."""
    own = [each for each in subjects if each.sheet.id.startswith("Z-103")]
    backing = subjects[0].facts.backing
    if backing is None or not own:
        return
    first = own[0]
    slack = first.facts.step / 2 + HAIR
    for kind, rows, most in (
        ("backing-section", _sections(backing), EVERY),
        ("backing-form", _forms(backing), EVERY),
        ("backing-piece", _pieces(backing), MOST_SIZES),
        ("backing-line", _lines(first, backing), EVERY),
    ):
        if not same_rows(list(told_rows(own, kind)), rows, slack, most):
            message = "does not tell what the layout has"
            yield first.sheet.finding(123, f"{kind}s-table", message)


def _sections(backing: BackingFacts) -> list[RowTold]:
    return [
        RowTold(profile, {"thickness": thick, "width": width, "offset": offset})
        for profile, (thick, width, offset) in backing.sections.items()
    ]


def _forms(backing: BackingFacts) -> list[RowTold]:
    return [
        RowTold(FORMS[name], {"forms": str(count)})
        for name, count in backing.forms.items()
        if count
    ]


def _pieces(backing: BackingFacts) -> list[RowTold]:
    return [
        RowTold(name, {"length": length, "pieces": str(count)})
        for (name, length), count in backing.pieces.items()
    ]


def _lines(subject: Subject, backing: BackingFacts) -> list[RowTold]:
    facts = subject.facts
    blocked = any(line.blocks for line in backing.lines.values())
    rows = []
    for (beam, side), line in backing.lines.items():
        cells: dict[str, Told] = {}
        if facts.followed is None:
            cells["middle"] = line.position + facts.before(line.on, "start")
        if blocked:
            cells["blocks"] = _told_count(line.blocks)
        if backing.joists_on:
            cells["fasteners"] = _told_count(line.fasteners)
        of = beam if side == "middle" else f"{beam} {side.upper()}"
        rows.append(
            RowTold(f"{beam}, {backing.walls[beam]}" if beam in backing.walls else of, cells)
        )
    # Along the walls, with no joists known, a row is words alone.
    return [row for row in rows if row.cells]


def _told_count(count: int) -> Told:
    return str(count) if count else None
