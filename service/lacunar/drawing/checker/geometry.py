"""Points on the drawing as a drawing: all is where the layout has it, at the scale it says."""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import dist, inf

from lacunar.drawing.checker.facts import WALLS_OF_RUN, BeamFacts, CofferFacts
from lacunar.drawing.checker.outline_facts import OutlineFacts, Place
from lacunar.drawing.checker.plan_frame import (
    PlanFrame,
    plan_frames,
    plan_views,
    side_faces,
    wall_face,
)
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject

# A hair is 0.05 mm wide; coordinates are written to a thousandth.
TOLERANCE = 0.05
# What six decimals of a millimeter may leave out.
DECIMALS = 1e-6

Line = tuple[Spot, ...]


def plan_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 16: walls, coffers, beams and members lie where the layout has them, never flipped."""
    frames = list(plan_frames(subject))
    if len(frames) != len(list(plan_views(subject.sheet))):
        message = "a plan without a scale, or without faces of W1 and W4 to measure it from"
        yield subject.sheet.finding(16, subject.sheet.id, message)
    for frame in frames:
        yield from _datum(subject, frame)
        yield from _walls(subject, frame)
        yield from _same_ids(subject, frame)
        yield from _coffers(subject, frame)
        yield from _beams(subject, frame)
        yield from _wall_beams(subject, frame)
        yield from _angled_beams(subject, frame)
        yield from _members(subject, frame)


def _datum(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """The ring that marks the datum is about the corner it says is the datum."""
    sheet = subject.sheet
    rings = [ring for group in sheet.of_kind("datum", frame.view) for ring in sheet.rings_in(group)]
    if len(rings) != 1 or dist(rings[0].center, frame.datum) > TOLERANCE:
        yield sheet.finding(16, "datum", "is not marked where W1 and W4 meet")


def _walls(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    odd = subject.facts.outline_facts
    if odd is not None:
        yield from _sides(subject, frame, odd)
        return
    for number in range(1, len(subject.facts.outline) + 1):
        wall = f"W{number}"
        expected = tuple(frame.spot(*corner) for corner in subject.facts.wall_ends(wall))
        drawn = wall_face(subject.sheet, frame.view, wall)
        if not _same_line(drawn, expected):
            message = "the finish face is not where the layout has it"
            yield subject.sheet.finding(16, f"wall-{wall}", message)


def _sides(subject: Subject, frame: PlanFrame, odd: OutlineFacts) -> Iterator[Finding]:
    """The sides of a room with other than four walls."""
    sheet = subject.sheet
    drawn = {group.data.get("side", ""): face for group, face in side_faces(sheet, frame.view)}
    for side in odd.sides:
        expected = tuple(frame.spot(*corner) for corner in side.ends)
        if not _same_line(drawn.get(side.side, ()), expected):
            message = "the finish face is not where the layout has it"
            yield sheet.finding(16, f"wall-{side.wall}-{side.side}", message)


def _same_line(drawn: Line, expected: Line) -> bool:
    return len(drawn) == len(expected) and any(
        all(dist(one, other) <= TOLERANCE for one, other in zip(order, expected, strict=True))
        for order in (drawn, drawn[::-1])
    )


def _same_ids(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """Whatever the layout has is drawn once, and nothing else is."""
    sheet, facts = subject.sheet, subject.facts
    for kind, records in (
        ("coffer", facts.coffers),
        ("beam", facts.beams),
        ("wall-beam", facts.wall_beams),
        ("angled-beam", facts.angled_beams),
        ("member", facts.members),
    ):
        wanted = Counter(record.id for record in records)
        drawn = Counter(group.data.get("id", "") for group in sheet.of_kind(kind, frame.view))
        for identity in sorted((wanted - drawn).keys() | (drawn - wanted).keys()):
            count, due = drawn[identity], wanted[identity]
            message = f"drawn {count} times, the layout has {due}"
            yield sheet.finding(16, f"{kind}-{identity}", message)


def _drawn(
    subject: Subject, frame: PlanFrame, kind: str
) -> Iterator[tuple[GroupRead, str, list[Line]]]:
    """Each group of a kind with its id and its lines in the pen an object's edges are drawn in."""
    sheet = subject.sheet
    for group in sheet.of_kind(kind, frame.view):
        pen = "hidden" if kind == "member" else "object"
        paths = sheet.own_paths(group)
        lines = [path.spots for path in paths if path.pen and path.pen.name == pen]
        yield group, group.data.get("id", ""), lines


def _coffers(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    sheet = subject.sheet
    records: dict[str, CofferFacts] = {record.id: record for record in subject.facts.coffers}
    for group in sheet.of_kind("coffer", frame.view):
        record = records.get(group.data.get("id", ""))
        outlines = [path for path in sheet.own_paths(group) if path.closed]
        if record is None:
            continue
        expected = [frame.spot(x, y) for x, y in record.corners]
        if not outlines or not _same_corners(outlines[0].spots, expected):
            message = "the clear opening is not where the layout has it"
            yield sheet.finding(16, group.id, message)
        if (group.data.get("row"), group.data.get("column")) != (record.row, record.column):
            yield sheet.finding(16, group.id, "row and column are not the layout's")


def _same_corners(drawn: Sequence[Spot], expected: Sequence[Spot]) -> bool:
    return len(drawn) == len(expected) and all(
        any(dist(corner, one) <= TOLERANCE for one in drawn) for corner in expected
    )


def _beams(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    records = {record.id: record for record in subject.facts.beams}
    for group, identity, lines in _drawn(subject, frame, "beam"):
        if identity not in records:
            continue
        record = records[identity]
        expected = [
            _on_face(subject, frame, record, side, piece)
            for piece in record.pieces
            for side in ("near", "far")
        ]
        followed = subject.facts.followed
        if followed is not None:
            faces = followed.faces.get(record.id, ())
            expected = [tuple(frame.spot(*end) for end in face) for face in faces]
        yield from _compared(subject, group, lines, expected)
        yield from _stated_faces(subject, group, record)
        yield from _center_line(subject, frame, group, record)


def _stated_faces(subject: Subject, group: GroupRead, record: BeamFacts) -> Iterator[Finding]:
    """The faces a program would read off the group are the layout's, to six decimals."""
    for name, place in (("near-mm", record.near.at_start), ("far-mm", record.far.at_start)):
        try:
            off = abs(float(group.data.get(name, "")) - float(place))
        except ValueError:
            off = inf
        if off > DECIMALS:
            yield subject.sheet.finding(16, group.id, f"states {name} other than the layout")


def _center_line(
    subject: Subject, frame: PlanFrame, group: GroupRead, record: BeamFacts
) -> Iterator[Finding]:
    """A beam's center line, where it is drawn, lies on its center."""
    ends = _at_walls(subject, record, record.center.at_start)
    center = (
        frame.on(record.on, record.center.at_start, ends[0]),
        frame.on(record.on, record.center.at_end, ends[1]),
    )
    followed = subject.facts.followed
    if followed is not None and record.id in followed.centers:
        start, end = followed.centers[record.id]
        center = frame.spot(*start), frame.spot(*end)
    for path in subject.sheet.own_paths(group):
        on_center = all(_within(spot, center) for spot in path.spots)
        if path.pen and path.pen.name == "center" and not on_center:
            yield subject.sheet.finding(16, group.id, "the center line is not on the center")


def _members(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    records = {record.id: record for record in subject.facts.members}
    for group, identity, lines in _drawn(subject, frame, "member"):
        if identity not in records:
            continue
        record = records[identity]
        expected = []
        for face in (record.near, record.far):
            start, _ = _reaching(subject, record, face.at_start, record.pieces[0])
            _, end = _reaching(subject, record, face.at_end, record.pieces[0])
            line = frame.on(record.on, face.at_start, start), frame.on(record.on, face.at_end, end)
            expected.append(line)
        yield from _compared(subject, group, lines, expected)


def _across(subject: Subject, record: BeamFacts) -> Fraction:
    """The span of the run that a beam lies along."""
    return subject.facts.spans["width" if record.on == "length" else "length"].at_start


def _at_walls(subject: Subject, record: BeamFacts, place: Fraction) -> tuple[Fraction, Fraction]:
    """Where a line across a beam's run, at a place of it, meets the walls it goes between."""
    other = "width" if record.on == "length" else "length"
    start, end = WALLS_OF_RUN[other]
    return subject.facts.face_at(start, other, place), subject.facts.face_at(end, other, place)


def _reaching(
    subject: Subject, record: BeamFacts, place: Fraction, piece: tuple[Fraction, Fraction]
) -> tuple[Fraction, Fraction]:
    """A piece's ends along the beam: what ends at a clear line goes on to the wall."""
    first, last = _at_walls(subject, record, place)
    start, end = piece
    return first if start == 0 else start, last if end == _across(subject, record) else end


def _on_face(
    subject: Subject,
    frame: PlanFrame,
    record: BeamFacts,
    side: str,
    piece: tuple[Fraction, Fraction],
) -> Line:
    """Where a face of a beam's piece lies on paper; a face is straight."""
    line = record.near if side == "near" else record.far
    whole = _across(subject, record)
    ends = piece
    if subject.facts.followed is None:
        ends = _reaching(subject, record, line.at_start, piece)
    ends = _slanted(subject, record, side, ends)
    places = (line.at_start + (line.at_end - line.at_start) * end / whole for end in ends)
    return tuple(frame.on(record.on, place, end) for place, end in zip(places, ends, strict=True))


def _slanted(
    subject: Subject, record: BeamFacts, side: str, ends: tuple[Fraction, Fraction]
) -> tuple[Fraction, Fraction]:
    """The ends of a face of a beam with what goes on at an angled wall."""
    odd = subject.facts.outline_facts
    if odd is None:
        return ends
    start, end = (odd.slants.get((record.id, place), ("", Fraction(0))) for place in ends)
    return (
        ends[0] + (start[1] if start[0] == side else 0),
        ends[1] + (end[1] if end[0] == side else 0),
    )


def _compared(
    subject: Subject, group: GroupRead, drawn: Sequence[Line], expected: Sequence[Line]
) -> Iterator[Finding]:
    """A finding where the drawn lines are not the expected ones, in whatever order."""
    missing = [line for line in expected if not any(_same_line(one, line) for one in drawn)]
    strange = [line for line in drawn if not any(_same_line(line, one) for one in expected)]
    if missing or strange:
        message = f"{len(missing)} faces missing, {len(strange)} where the layout has none"
        yield subject.sheet.finding(16, group.id, message)


def _wall_beams(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """The face away from the wall, of each piece."""
    records = {record.id: record for record in subject.facts.wall_beams}
    for group, identity, lines in _drawn(subject, frame, "wall-beam"):
        if identity not in records:
            continue
        record = records[identity]
        side = "near" if record.wall == WALLS_OF_RUN[record.on][1] else "far"
        expected = [_on_face(subject, frame, record, side, piece) for piece in record.pieces]
        if subject.facts.outline_facts is not None and _has_faces(subject, identity):
            expected = _faces(subject, frame, identity)
        yield from _compared(subject, group, lines, expected)
        yield from _stated_faces(subject, group, record)


def _has_faces(subject: Subject, beam: str) -> bool:
    """Whether the layout tells the faces of what stands at a wall side by side."""
    return bool(_sides_of(subject, beam))


def _sides_of(subject: Subject, beam: str) -> list[tuple[Place, Place]]:
    odd = subject.facts.outline_facts
    return [side.face for side in odd.sides if side.beam == beam and side.face] if odd else []


def _faces(subject: Subject, frame: PlanFrame, beam: str) -> list[Line]:
    return [tuple(frame.spot(*end) for end in face) for face in _sides_of(subject, beam)]


def _angled_beams(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """The face of each beam at an angled wall."""
    for group, identity, lines in _drawn(subject, frame, "angled-beam"):
        yield from _compared(subject, group, lines, _faces(subject, frame, identity))


def _within(spot: Spot, line: tuple[Spot, Spot]) -> bool:
    """Whether a place lies on a line between its ends: the way over it is no detour."""
    (x1, y1), (x2, y2) = line
    length = dist(*line)
    off = abs((x2 - x1) * (spot.y - y1) - (y2 - y1) * (spot.x - x1)) / length
    return off <= TOLERANCE and dist(line[0], spot) + dist(spot, line[1]) <= length + 2 * TOLERANCE
