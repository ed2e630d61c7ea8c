"""Each wall of a room looked at from inside: what ends at it, what stands at it, what is in it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from lacunar.drawing.run_ends import End, RunEnd
from lacunar.drawing.upright.cut import (
    Behind,
    CutBeam,
    EndOfView,
    Side,
    UprightCut,
)
from lacunar.drawing.upright.plane import (
    Crossing,
    Plane,
    between,
    cut_between,
    place_of,
    stretch_about,
    wall_lines,
)
from lacunar.layout.outline_records import OutlineWall
from lacunar.layout.records import Beam, EndPositions, Layout
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling_items import FeatureKind
from lacunar.model.room import START_WALL, RunName

BEFORE_FACE = Length.of_inches(1)
"""How far before what stands at a wall the plane lies that the wall is seen from."""
AT_CORNER = Length.of_inches(2)
"""How far off its corner a wall that is nearly square may be met by the plane."""
ASLANT = 3
"""A beam ends at an angled wall within so many of its widths from where its middle meets it."""


@dataclass(frozen=True, slots=True)
class InWall:
    """A wall feature where it is seen in its wall: its edges from the left corner, its head.

    `number` is its place among those of the spec.
    """

    number: int
    name: str
    kind: FeatureKind
    near: Length
    far: Length
    head: Length | None


@dataclass(frozen=True, slots=True)
class Elevation:
    """A wall as seen from inside the room, from its left corner to its right one.

    `side` is its number where a room is told side by side, else empty; `end` the end of the run
    along it at which its marks are told, None where they are not.
    """

    wall: str
    side: str
    cut: UprightCut
    end: End | None
    features: tuple[InWall, ...]


def elevation_name(wall: str, part: int = 1) -> str:
    """What a wall's elevation is called among the views of a set; `part` counts sides of it."""
    return f"elevation-{wall}" if part == 1 else f"elevation-{wall}-{part}"


def elevations(layout: Layout) -> tuple[Elevation, ...]:
    """Turn a layout into the elevations of all its walls, clockwise from W1."""
    if layout.outlined is None:
        return tuple(_of_four(layout, f"W{n}") for n in range(1, len(layout.outline) + 1))
    found: list[Elevation] = []
    for wall in layout.outlined.walls:
        part = 1 + sum(each.wall == wall.wall for each in found)
        found.append(_of_side(layout, wall, elevation_name(wall.wall, part)))
    return tuple(found)


def _of_four(layout: Layout, wall: str) -> Elevation:
    """A wall of four: places are those of the marks at that wall, from its left corner."""
    run = run_of_wall(wall).other
    end: End = "start" if wall in START_WALL.values() else "end"
    at_wall = RunEnd.of(layout, run, end)

    def places(of: str, side: Side, line: EndPositions) -> Length:
        figure = line.at_start if end == "start" else line.at_end
        return at_wall.from_wall(f"{of}:{side}", figure)

    names = ("W1", "W3") if run is RunName.LENGTH else ("W4", "W2")
    ends = Crossing(ZERO, names[0]), Crossing(at_wall.span, names[1])
    plane = Plane(layout, run, _before(layout, wall, run), onward=end == "end")
    cut = cut_between(plane, ends, places, elevation_name(wall))
    behind = _standing_at(layout, wall)
    cut = replace(cut, behind=tuple(replace(behind, near=b.near, far=b.far) for b in cut.behind))
    length = _true_length(layout, wall) or at_wall.span
    left, right = (ZERO, at_wall.span) if wall in ("W1", "W2") else (at_wall.span, ZERO)
    cut = cut.told_from(left, length / (right - left))
    corners = next(ends for name, *ends in wall_lines(layout) if name == wall)
    features = tuple(
        _in_wall(layout, number, (place_of(corners[0], run), place_of(corners[1], run)), length)
        for number, check in enumerate(layout.wall_features)
        if check.wall == wall
    )
    return Elevation(wall, "", cut, end, features)


def _before(layout: Layout, wall: str, run: RunName) -> Length:
    """A place just before what stands at a wall of four."""
    beams = [each for each in layout.wall_beams if each.wall == wall]
    if wall in START_WALL.values():
        return max((beam.far.at_start.value for beam in beams), default=ZERO) + BEFORE_FACE
    whole = layout.run(run.other).span.at_start.value
    return min((beam.near.at_start.value for beam in beams), default=whole) - BEFORE_FACE


def _standing_at(layout: Layout, wall: str) -> Behind:
    """What stands at a wall of four, the one of it next the room."""
    start = wall in START_WALL.values()
    beams = [each for each in layout.wall_beams if each.wall == wall]
    beams.sort(key=lambda beam: beam.near.at_start.value, reverse=start)
    if not beams:
        return Behind(ZERO, ZERO, wall, None)
    return Behind(ZERO, ZERO, beams[0].id, layout.profile(beams[0].profile))


def _true_length(layout: Layout, wall: str) -> Length | None:
    """A surveyed wall's length from corner to corner; None where the room was not surveyed."""
    if layout.crooked is None:
        return None
    walls = layout.crooked.survey.walls
    return next(each.length.value for each in walls if each.wall == wall)


def _in_wall(layout: Layout, number: int, corners: tuple[Length, Length], length: Length) -> InWall:
    """A feature in its wall, whose left and right corners are told along the run it lies along."""
    check, asked = layout.wall_features[number], layout.ceiling.room.wall_features[number]
    left, right = corners
    places = sorted(
        (
            max(ZERO, min(length, length * ((edge.value - left) / (right - left))))
            for edge in (check.near, check.far)
        ),
        key=lambda place: place.inches,
    )
    return InWall(number + 1, check.name, check.kind, places[0], places[1], asked.head)


def _of_side(layout: Layout, wall: OutlineWall, name: str) -> Elevation:
    """A side of a room with other than four walls."""
    length = wall.length.value
    features = tuple(_in_side(layout, wall))
    if wall.on is None or wall.at is None:
        return Elevation(wall.wall, str(wall.side), _at_angled(layout, wall, name), None, features)
    run, start = wall.on.other, wall.looks_as in START_WALL.values()
    face = (wall.face or wall.at).value
    at = face + BEFORE_FACE if start else face - BEFORE_FACE
    plane = Plane(layout, run, at, onward=not start)
    left, right = place_of(wall.start, run), place_of(wall.end, run)
    ends = _ends_of_side(plane, min(left, right), max(left, right))
    share = at / layout.run(run.other).span.at_start.value

    def places(_: str, __: Side, line: EndPositions) -> Length:
        return between(line, share)

    cut = cut_between(plane, ends, places, name)
    cut = cut.told_from(left, length / (right - left))
    return Elevation(wall.wall, str(wall.side), cut, "start" if start else "end", features)


def _ends_of_side(plane: Plane, low: Length, high: Length) -> tuple[Crossing, Crossing]:
    """From where to where a side is seen: to the walls beside it, or no further than its corners.

    Where the room goes on past a corner of the side, or the wall beside it is angled, no wall is
    cut there: the view just ends.
    """
    found = stretch_about(plane.layout, plane.run, plane.at, low + (high - low) / 2)
    start, end = found or (Crossing(low, ""), Crossing(high, ""))
    ends = []
    for crossing, corner in ((start, low), (end, high)):
        beside = abs(crossing.at - corner) <= AT_CORNER
        ends.append(Crossing(corner, crossing.wall if beside else ""))
    return ends[0], ends[1]


def _in_side(layout: Layout, wall: OutlineWall) -> Iterator[InWall]:
    """The features in a side, by its run, or in an angled one from its start."""
    length = wall.length.value
    corners = (ZERO, length)
    if wall.on is not None:
        corners = (place_of(wall.start, wall.on.other), place_of(wall.end, wall.on.other))
    for number, check in enumerate(layout.wall_features):
        if check.side == wall.side:
            yield _in_wall(layout, number, corners, length)


def _at_angled(layout: Layout, wall: OutlineWall, name: str) -> UprightCut:
    """What is seen of an angled wall: its beam, and the beams that end there where they meet it."""
    length = wall.length.value
    spans = layout.outlined.spans if layout.outlined is not None else ()
    beams = {beam.id: beam for beam in layout.beams}
    met: list[CutBeam] = []
    for span in spans:
        beam = beams.get(span.beam)
        for end in (span.start, span.end) if beam is not None else ():
            edges = _meets(wall, beams[span.beam], end.value)
            if edges is not None:
                profile = layout.profile(beams[span.beam].profile)
                met.append(CutBeam(length * edges[0], length * edges[1], span.beam, profile))
    behind = Behind(ZERO, length, wall.wall, None)
    if wall.beam is not None:
        profile = next(p for p in layout.profiles if wall.beam in p.used_by)
        behind = Behind(ZERO, length, wall.beam, profile)
    return UprightCut(
        name=name,
        run=None,
        layout=layout,
        ends=(EndOfView(ZERO, ""), EndOfView(length, "")),
        beams=tuple(sorted(met, key=lambda each: each.near)),
        behind=(behind,),
    )


def _meets(wall: OutlineWall, beam: Beam, end: Length) -> tuple[Fraction, Fraction] | None:
    """At which shares of an angled wall the faces of a beam meet it; None if it ends elsewhere."""
    run = beam.on
    start, stop = place_of(wall.start, run), place_of(wall.end, run)
    first, last = place_of(wall.start, run.other), place_of(wall.end, run.other)
    faces = (beam.near.at_start.value, beam.far.at_start.value)
    shares = [(face - start) / (stop - start) for face in faces]
    if not all(0 <= share <= 1 for share in shares):
        return None
    middle = first + (last - first) * ((shares[0] + shares[1]) / 2)
    if abs(middle - end) > beam.width.value * ASLANT:
        return None
    return min(shares), max(shares)
