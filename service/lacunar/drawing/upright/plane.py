"""Where an upright plane along a run meets walls, beams and columns of any room."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from lacunar.drawing.upright.cut import (
    Behind,
    CutBeam,
    CutColumn,
    CutMember,
    EndOfView,
    Side,
    UprightCut,
    bays,
)
from lacunar.layout.outline_records import AngledBeam, RoomColumn
from lacunar.layout.records import Beam, EndPositions, Layout, Point, WallBeam
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot
from lacunar.model.room import RunName

Places = Callable[[str, Side, EndPositions], Length]
"""Where a face of a beam lies along the plane: by its id, the side, and its places at both ends."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """Where a line across the room meets a wall."""

    at: Length
    wall: str


@dataclass(frozen=True, slots=True)
class Plane:
    """An upright plane along `run`, `at` a place along the other one.

    It is looked at towards where the other run ends, if `onward`, or towards its start.
    """

    layout: Layout
    run: RunName
    at: Length
    onward: bool


def wall_lines(layout: Layout) -> tuple[tuple[str, Point, Point], ...]:
    """Each wall with its name and its corners, clockwise from the one that starts at the datum."""
    corners = (layout.outline[0], *layout.outline[:0:-1])
    ends = tuple(pairwise((*corners, corners[0])))
    if layout.outlined is not None:
        names = [wall.wall for wall in layout.outlined.walls]
    else:
        names = [f"W{number}" for number in range(1, len(ends) + 1)]
    return tuple((name, *pair) for name, pair in zip(names, ends, strict=True))


def place_of(point: Point | Spot, run: RunName) -> Length:
    """How far a place lies along a run."""
    return point.x if run is RunName.LENGTH else point.y


def stretches(layout: Layout, run: RunName, at: Length) -> list[tuple[Crossing, Crossing]]:
    """From wall to wall, where a line along a run, so far along the other one, is in the room."""
    met = []
    for name, one, other in wall_lines(layout):
        low, high = sorted((one, other), key=lambda point: place_of(point, run.other))
        first, last = place_of(low, run.other), place_of(high, run.other)
        if first <= at < last:
            share = (at - first) / (last - first)
            start, end = place_of(low, run), place_of(high, run)
            met.append(Crossing(start + (end - start) * share, name))
    met.sort(key=lambda crossing: crossing.at)
    return list(zip(met[::2], met[1::2], strict=True))


def stretch_about(
    layout: Layout, run: RunName, at: Length, about: Length
) -> tuple[Crossing, Crossing] | None:
    """The stretch of a line in the room that holds a place along it; None outside the room."""
    found = (each for each in stretches(layout, run, at) if each[0].at <= about <= each[1].at)
    return next(found, None)


def stands_at(layout: Layout, beam: Beam | WallBeam, across: Length) -> bool:
    """Whether a beam stands in the room so far along the run that it lies along."""
    room = layout.outlined
    if room is None:
        return True
    return any(
        span.beam == beam.id and span.start.value < across < span.end.value for span in room.spans
    )


def cut_between(
    plane: Plane, ends: tuple[Crossing, Crossing], places: Places, name: str
) -> UprightCut:
    """What a plane cuts from one wall to another, or to where the view ends (no wall's name)."""
    layout, run = plane.layout, plane.run
    beams = [
        _cut_beam(plane, beam, places)
        for beam in layout.beams
        if beam.on is run and stands_at(layout, beam, plane.at)
    ]
    within = [each for each in beams if ends[0].at < each.near and each.far < ends[1].at]
    at_walls = [each for end in (0, 1) for each in _at_wall(plane, ends, end, places)]
    things = tuple(sorted((*within, *at_walls), key=lambda each: (each.near, each.far)))
    columns = tuple(_columns(plane, ends))
    spaces = bays(ends[0].at, ends[1].at, (*things, *columns))
    return UprightCut(
        name=name,
        run=run,
        layout=layout,
        ends=(EndOfView(ends[0].at, ends[0].wall), EndOfView(ends[1].at, ends[1].wall)),
        beams=things,
        behind=tuple(_behind(plane, bay.near, bay.far) for bay in spaces),
        columns=columns,
        at=plane.at,
    )


def _cut_beam(plane: Plane, beam: Beam, places: Places) -> CutBeam:
    profile = plane.layout.profile(beam.profile)
    near, far = places(beam.id, "near", beam.near), places(beam.id, "far", beam.far)
    return CutBeam(near, far, beam.id, profile, member=_member(plane, beam, near))


def _member(plane: Plane, beam: Beam, face: Length) -> CutMember | None:
    """The member in a casing where the plane cuts it; None where it does not reach so far."""
    member = beam.member
    if member is None:
        return None
    start, end = member.start.value, member.end.value
    if not start <= plane.at <= end:
        return None
    share = (plane.at - start) / (end - start)
    off = face - between(beam.near, share)
    near, far = (between(edge, share) + off for edge in (member.near, member.far))
    drop = member.drop + (member.drop_at_end - member.drop) * share
    return CutMember(near, far, member.name, drop, member.clad)


def between(line: EndPositions, share: Fraction) -> Length:
    """Where a straight line lies at a share of its way from its start to its end."""
    start, end = line.at_start.value, line.at_end.value
    return start + (end - start) * share


def _at_wall(
    plane: Plane, ends: tuple[Crossing, Crossing], end: int, places: Places
) -> Iterator[CutBeam]:
    """What stands at the wall that ends the plane: from the wall, and on what stands there."""
    layout, wall = plane.layout, ends[end]
    standing = [each for each in layout.wall_beams if each.wall == wall.wall]
    for beam in (b for b in angled_beams(layout) if b.wall == wall.wall):
        met = _crossed(beam.corners, plane)
        if met is not None:
            profile = layout.profile(beam.profile)
            yield CutBeam(*met, beam.id, profile, "right" if end else "left")
    standing = [each for each in standing if each.on is plane.run]
    standing.sort(key=lambda each: each.near.at_start.value, reverse=bool(end))
    at = wall.at
    for strip in standing:
        profile = layout.profile(strip.profile)
        if end:
            face = places(strip.id, "near", strip.near)
            yield CutBeam(face, at, strip.id, profile, "right")
        else:
            face = places(strip.id, "far", strip.far)
            yield CutBeam(at, face, strip.id, profile, "left")
        at = face


def angled_beams(layout: Layout) -> tuple[AngledBeam, ...]:
    """What stands at the angled walls of a room."""
    return layout.outlined.angled_beams if layout.outlined is not None else ()


def _crossed(corners: Sequence[Spot], plane: Plane) -> tuple[Length, Length] | None:
    """From where to where the plane goes through a polygon; None where it passes it."""
    run, at = plane.run, plane.at
    met = []
    for one, other in pairwise((*corners, corners[0])):
        low, high = sorted((one, other), key=lambda spot: place_of(spot, run.other))
        first, last = place_of(low, run.other), place_of(high, run.other)
        if first <= at < last:
            share = (at - first) / (last - first)
            met.append(place_of(low, run) + (place_of(high, run) - place_of(low, run)) * share)
    return (min(met), max(met)) if met and min(met) < max(met) else None


def _columns(plane: Plane, ends: tuple[Crossing, Crossing]) -> Iterator[CutColumn]:
    room = plane.layout.outlined
    columns: tuple[RoomColumn, ...] = room.columns if room is not None else ()
    for column in columns:
        met = _crossed(column.corners, plane)
        if met is not None and ends[0].at < met[0] and met[1] < ends[1].at:
            yield CutColumn(*met, column.name)


def _behind(plane: Plane, near: Length, far: Length) -> Behind:
    """What is seen beyond a space: the next beam along the plane, or what stands at the wall."""
    layout, other = plane.layout, plane.run.other
    middle = near + (far - near) / 2
    found = stretch_about(layout, other, middle, plane.at)
    wall = found[1 if plane.onward else 0] if found else None
    seen: list[tuple[Length, str, str]] = []
    for beam in layout.beams:
        if beam.on is other and stands_at(layout, beam, middle):
            face = beam.near if plane.onward else beam.far
            seen.append((_ahead(plane, face.at_start.value), beam.id, beam.profile))
    for strip in layout.wall_beams:
        if wall is not None and strip.wall == wall.wall and strip.on is other:
            face = strip.near if plane.onward else strip.far
            seen.append((_ahead(plane, face.at_start.value), strip.id, strip.profile))
    seen = [each for each in seen if each[0] > ZERO]
    if not seen and wall is not None:
        seen = [(ZERO, b.id, b.profile) for b in angled_beams(layout) if b.wall == wall.wall]
    if not seen:
        return Behind(near, far, wall.wall if wall else "", None)
    _, identity, profile = min(seen, key=lambda each: each[0])
    return Behind(near, far, identity, layout.profile(profile))


def _ahead(plane: Plane, place: Length) -> Length:
    return place - plane.at if plane.onward else plane.at - place
