"""What meets what in a room with other than four walls: a row for each stretch of each beam."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.beams.lines import Line, Meeting, Row, RowEnd, RowLimit, Slant, row_of
from lacunar.layout.beams.profile_book import ProfileBook
from lacunar.layout.item_records import Meets
from lacunar.layout.items.strips import OddCoffer, OddRoom, Strip
from lacunar.layout.outline.columns import StandingColumn
from lacunar.layout.outline.corners import corner_of_ring
from lacunar.layout.outline.spans import Span, SpanEnd, spans_of
from lacunar.layout.outline.wall import Wall, place
from lacunar.layout.outline.walls import Region, beam_strip
from lacunar.layout.records import (
    BeamProfile,
    ElementKind,
    EndPositions,
    WallBeam,
    profiles_by_beam,
)
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.runs.wall_strips import WallStrip
from lacunar.measure.angle import angle_of_legs
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import turn
from lacunar.model.room import WALLS, RunName

AT_WALL = Rule("place of a wall, the innermost where it is not square", "at")
FACE_AFTER = Rule("face of what stands at a wall", "at + width")
FACE_BEFORE = Rule("face of what stands at a wall", "at - width")
AT_FACE = Rule("where a beam's full width ends, at what stands at a wall", "at")

Ends = Mapping[RunName, DividedEnds]


@dataclass(frozen=True, slots=True)
class Outlined:
    """A room between its walls, its grid, and the stretches in which each beam of it stands.

    `held` are the beams that a column stands in as a whole, by its name; the `region` has the other
    columns alone, which take something of coffers, and which beams end at.
    """

    region: Region
    ends: Ends
    spans: Mapping[str, tuple[Span, ...]]
    columns: tuple[StandingColumn, ...]
    held: Mapping[str, tuple[str, ...]]


def outlined(region: Region, ends: Ends) -> Outlined:
    """Turn a room and its grid into where each beam of the grid stands in it.

    A beam that a column stands in as a whole goes on about it; it ends at any other.
    """
    columns, left = region.columns, region.columns
    held: dict[str, tuple[str, ...]] = {}
    while True:
        spans = _spans(region, ends, left)
        found = {each.name: _holding(each, ends, spans) for each in left}
        held |= {name: beams for name, beams in found.items() if beams}
        if not any(found.values()):
            break
        left = tuple(each for each in left if each.name not in held)
    region = replace(region, columns=left)
    return Outlined(region, ends, _spans(region, ends, left, past=False), columns, held)


def _spans(
    region: Region, ends: Ends, columns: Sequence[StandingColumn], *, past: bool = True
) -> dict[str, tuple[Span, ...]]:
    """Where each beam stands; `past` columns no wider than itself, it is tried whether it does."""
    found = {}
    for run in RunName:
        for beam_id, beam, _ in ends[run].beams:
            faces = beam.near.value, beam.far.value
            stop = [each for each in columns if not (past and each.within(run, *faces))]
            found[beam_id] = spans_of(region, run, faces, stop)
    return found


def _holding(
    column: StandingColumn, ends: Ends, spans: Mapping[str, Sequence[Span]]
) -> tuple[str, ...]:
    """The beams that a column stands in as a whole."""
    return tuple(
        beam_id
        for run in RunName
        for beam_id, beam, _ in ends[run].beams
        if column.within(run, beam.near.value, beam.far.value)
        and any(column.within(run.other, s.start.at, s.end.at) for s in spans[beam_id])
    )


def outlined_meeting(room: Outlined, book: ProfileBook, family: RunName) -> Meeting:
    """Turn a room and profiles into what meets what in it."""
    of = profiles_by_beam(book.profiles)
    rows = {run: _row(room, run, of) for run in RunName}
    lines = {line.id: line for row in rows.values() for line in row.lines}
    across: dict[str, tuple[Row, ...]] = {}
    for run, row in rows.items():
        limits = rows[run.other].start, rows[run.other].end
        for line in row.lines:
            if line.wall is None:
                found = tuple(_beam_rows(room, line, lines))
            else:
                found = tuple(_wall_rows(room, line, lines, limits))
            across[line.id] = found
    return Meeting(rows, family, across)


def _row(room: Outlined, run: RunName, of: Mapping[str, BeamProfile]) -> Row:
    """All lines of a run: the beams that stand, and what stands at walls along neither way."""
    standing = {beam for beam, spans in room.spans.items() if spans}
    known = {**{beam: of[beam] for beam in standing}, **of}
    square = row_of(room.ends[run], _Known(known))
    lines = [line for line in square.lines if line.wall or line.id in standing]
    lines += _inner_lines(room.region, run, of)
    ordered = sorted(lines, key=lambda line: line.near.value)
    return Row(run, square.start, tuple(ordered), square.end)


class _Known(dict[str, BeamProfile]):
    """Profiles by beam; a beam that stands nowhere has any, and is left out after."""

    def __missing__(self, key: str) -> BeamProfile:
        return next(iter(self.values()))


def _inner_lines(region: Region, run: RunName, of: Mapping[str, BeamProfile]) -> Iterator[Line]:
    for wall in region.walls:
        strip = inner_strip(region, wall)
        if strip is not None and wall.on is run and not wall.angled:
            near, far = strip_faces(wall, strip)
            end: RowEnd = "start" if wall.at_start else "end"
            yield Line(strip.id, run, near, far, None, of[strip.id], cased=False, wall=end)


def inner_strip(region: Region, wall: Wall) -> WallStrip | None:
    """The beam at a wall beyond W1 to W4, if one stands there."""
    return None if wall.name in WALLS else beam_strip(region.strips[wall.side])


def strip_faces(wall: Wall, strip: WallStrip) -> tuple[LengthFigure, LengthFigure]:
    """The two faces of what stands at a wall along a run, the one towards the datum first."""
    at, width = wall.at, strip.width.value
    if at is None:
        raise ValueError("an angled wall has no place along a run")
    own = AT_WALL.gives(at, at=at)
    if wall.at_start:
        return own, FACE_AFTER.gives(at + width, at=at, width=width)
    return FACE_BEFORE.gives(at - width, at=at, width=width), own


def _beam_rows(room: Outlined, line: Line, lines: Mapping[str, Line]) -> Iterator[Row]:
    """What a beam meets, stretch by stretch."""
    across = line.on.other
    crossing = [
        each for each in lines.values() if each.on is across and each.wall is None and each.center
    ]
    for span in room.spans[line.id]:
        met = [
            each
            for each in crossing
            if span.start.at < each.near.value
            and each.far.value < span.end.at
            and _stands(room.spans[each.id], line)
        ]
        met.sort(key=lambda each: each.near.value)
        start, first = _beam_limit(room.region, line, span.start, lines)
        end, last = _beam_limit(room.region, line, span.end, lines)
        found = (first, *met, last)
        yield Row(across, start, tuple(each for each in found if each), end)


def _stands(spans: Sequence[Span], line: Line) -> bool:
    """Whether a beam stands over the whole width of another."""
    near, far = line.near.value, line.far.value
    return any(span.start.at <= near and far <= span.end.at for span in spans)


def _beam_limit(
    region: Region, line: Line, end: SpanEnd, lines: Mapping[str, Line]
) -> tuple[RowLimit, Line | None]:
    """What a beam ends at, and the beam that stands there."""
    wall, strips = end.wall, region.strips[end.wall.side]
    strip = beam_strip(strips)
    if wall.angled:
        past = (end.slant, ZERO) if end.longer_near else (ZERO, end.slant)
        angle = angle_of_legs(end.slant, line.width)
        slant = Slant(*past, angle, strip is not None)
        at = AT_FACE.approximates(end.at, at=end.at)
        return RowLimit("slanted", strip.id if strip else wall.name, at, slant=slant), None
    if wall.on is line.on or place(line.on.other, region.face_line(wall)[0]) != end.at:
        # It ends at a corner: nothing lies square across its whole width.
        return RowLimit("wall", wall.name, AT_FACE.gives(end.at, at=end.at)), None
    at_wall = lines[strip.id] if strip else None
    soffit = next((each for each in strips if each.kind is ElementKind.SOFFIT), None)
    if soffit is not None:
        faces = strip_faces(wall, soffit)
        return RowLimit("soffit", soffit.id, faces[1 if wall.at_start else 0]), at_wall
    if strip is None or wall.at is None:
        return RowLimit("wall", wall.name, AT_FACE.gives(end.at, at=end.at)), at_wall
    return RowLimit("wall", wall.name, AT_WALL.gives(wall.at, at=wall.at)), at_wall


def _wall_rows(
    room: Outlined, line: Line, lines: Mapping[str, Line], limits: tuple[RowLimit, RowLimit]
) -> Iterator[Row]:
    """What a beam at a wall meets, one row for each side of the room that is this wall."""
    region = room.region
    for wall in region.walls:
        strip = beam_strip(region.strips[wall.side])
        if strip is None or strip.id != line.id or wall.angled:
            continue
        (start, first), (end, last) = (
            _wall_limit(region, wall, lines, limits, last=last) for last in (False, True)
        )
        met = [
            each
            for each in lines.values()
            if each.on is line.on.other
            and each.wall is None
            and any(wall in (span.start.wall, span.end.wall) for span in room.spans[each.id])
        ]
        met.sort(key=lambda each: each.near.value)
        found = (first, *met, last)
        yield Row(line.on.other, start, tuple(each for each in found if each), end)


def _wall_limit(
    region: Region,
    wall: Wall,
    lines: Mapping[str, Line],
    limits: tuple[RowLimit, RowLimit],
    *,
    last: bool,
) -> tuple[RowLimit, Line | None]:
    """What a beam at a wall ends at in one of the wall's corners."""
    count = len(region.walls)
    # Going clockwise, walls that look as W1 and W2 go in the direction of the other run.
    onward = last is (wall.looks_as in ("W1", "W2"))
    beside = region.walls[(wall.side - 1 + (1 if onward else -1)) % count]
    strips = region.strips[beside.side]
    strip = beam_strip(strips)
    across = wall.on.other
    if beside.angled:
        face = region.face_line(wall)[1 if onward else 0]
        corner = corner_between(region, wall if onward else beside).value
        at = AT_FACE.approximates(place(across, face), at=place(across, face))
        return RowLimit("angled", beside.name, at, corner=corner), None
    at_wall = lines[strip.id] if strip else None
    own = beside.at or ZERO
    if juts_in(region, wall if onward else beside):
        return RowLimit("outside", beside.name, AT_WALL.gives(own, at=own), at_wall), None
    soffit = next((each for each in strips if each.kind is ElementKind.SOFFIT), None)
    if soffit is not None:
        return limits[1 if last else 0], at_wall
    return RowLimit("wall", beside.name, AT_WALL.gives(own, at=own)), at_wall


def inner_wall_beams(region: Region, meeting: Meeting, book: ProfileBook) -> Iterator[WallBeam]:
    """The beams at walls beyond W1 to W4 that lie along one of the runs, as they stand."""
    for wall in region.walls:
        strip = inner_strip(region, wall)
        if strip is None or wall.angled:
            continue
        near, far = strip_faces(wall, strip)
        line = next(each for each in meeting.rows[wall.on].lines if each.id == strip.id)
        yield WallBeam(
            id=strip.id,
            wall=wall.name,
            looks_as=wall.looks_as,
            kind=strip.wall_kind,
            on=wall.on,
            near=EndPositions(near, near),
            far=EndPositions(far, far),
            width=strip.width,
            profile=book.of[strip.id],
            pieces=meeting.pieces(line),
        )


def inner_strips(region: Region) -> Iterator[tuple[WallStrip, RunName]]:
    """The beams at walls beyond W1 to W4, each with the run whose family it is of."""
    for wall in region.walls:
        strip = inner_strip(region, wall)
        if strip is not None:
            yield strip, wall.on


def juts_in(region: Region, wall: Wall) -> bool:
    """Whether the corner at a wall's end, clockwise, juts into the room."""
    line = region.wall_line(wall)
    following = region.wall_line(region.walls[wall.side % len(region.walls)])
    return turn(line[1] - line[0], following[1] - following[0]) > 0


def corner_between(region: Region, wall: Wall) -> AngleFigure:
    """The angle inside the room at a wall's end, clockwise, of walls as they are squared [deg]."""
    line = region.wall_line(wall)
    following = region.wall_line(region.walls[wall.side % len(region.walls)])
    return corner_of_ring(following[1], line[1], line[0], approximate=region.approximate)


def odd_room(room: Outlined, coffers: tuple[OddCoffer, ...]) -> OddRoom:
    """Turn a room and its coffers, whole and cut, into what items are held against in it."""
    region = room.region
    reaches = {
        beam: tuple((span.start.at, span.end.at) for span in spans)
        for beam, spans in room.spans.items()
    }
    beyond = max(region.spans.values())
    inner: dict[RunName, list[Strip]] = {run: [] for run in RunName}
    for wall in region.walls:
        if wall.at is None:
            continue
        reach = (_reach(region, wall),)
        strips = region.strips[wall.side]
        for strip in strips if wall.name in WALLS else ():
            reaches[strip.id] = (*reaches.get(strip.id, ()), *reach)
        if wall.name in WALLS:
            continue
        near, far = _outside(region, wall, beyond)
        inner[wall.on].append(Strip(Meets.WALL, wall.name, near, far, reaches=reach))
        for strip in strips:
            one, other = (face.value for face in strip_faces(wall, strip))
            inner[wall.on].append(Strip(Meets.BEAM, strip.id, one, other, reaches=reach))
    columns = {column.name: column.corners for column in region.columns}
    return OddRoom(reaches, {run: tuple(found) for run, found in inner.items()}, coffers, columns)


def _outside(region: Region, wall: Wall, beyond: Length) -> tuple[Length, Length]:
    """From a wall away from the room: as far as the room comes back, or farther than it is long."""
    at, reach = wall.at or ZERO, _reach(region, wall)
    facing = [
        other.at
        for other in region.walls
        if other.at is not None and other.on is wall.on and other.at_start is not wall.at_start
        if _overlap(reach, _reach(region, other))
    ]
    if wall.at_start:
        return max((each for each in facing if each < at), default=at - beyond), at
    return at, min((each for each in facing if each > at), default=at + beyond)


def _reach(region: Region, wall: Wall) -> tuple[Length, Length]:
    """From where to where a wall goes along the other run."""
    low, high = sorted(place(wall.on.other, end) for end in region.wall_line(wall))
    return low, high


def _overlap(one: tuple[Length, Length], other: tuple[Length, Length]) -> bool:
    return one[0] < other[1] and other[0] < one[1]
