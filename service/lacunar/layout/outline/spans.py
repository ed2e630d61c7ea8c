"""Where beams stand in a room: only where their whole width has room between what is at the walls.

What is left beside a wall that cuts a beam along its length belongs to the coffer there.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lacunar.layout.outline.columns import StandingColumn
from lacunar.layout.outline.wall import Wall, place
from lacunar.layout.outline.walls import Region
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, crossing, on_grid
from lacunar.measure.polygon import area, edges, within_box
from lacunar.model.room import RunName


@dataclass(frozen=True, slots=True)
class SpanEnd:
    """Where a beam ends: at the face of what stands at a wall, or at the bare wall.

    `at` is where its full width ends. At an angled wall it goes on by `slant` on its near or its
    far side, whichever is the longer.
    """

    at: Length
    wall: Wall
    slant: Length = ZERO
    longer_near: bool = False


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch along a beam in which it stands."""

    start: SpanEnd
    end: SpanEnd


def spot(run: RunName, along: Length, across: Length) -> Spot:
    """A place by how far it lies along a run, and along the other."""
    return Spot(along, across) if run is RunName.LENGTH else Spot(across, along)


def spans_of(
    region: Region,
    on: RunName,
    faces: tuple[Length, Length],
    columns: Sequence[StandingColumn],
) -> tuple[Span, ...]:
    """Turn a beam's faces along a run [length] into the stretches of the other run it stands in.

    `columns` are those of the room that it ends at.
    """
    breaks = sorted(set(_breaks(region, on, faces, columns)))
    full = [
        (low, high)
        for low, high in pairwise(breaks)
        if _is_full(region, columns, _box(on, faces, (low, high)))
    ]
    merged: list[tuple[Length, Length]] = []
    for low, high in full:
        if merged and merged[-1][1] == low:
            merged[-1] = merged[-1][0], high
        else:
            merged.append((low, high))
    return tuple(
        Span(
            _end(region, on, faces, (low, False)),
            _end(region, on, faces, (high, True)),
        )
        for low, high in merged
    )


def _breaks(
    region: Region,
    on: RunName,
    faces: tuple[Length, Length],
    columns: Sequence[StandingColumn],
) -> Iterator[Length]:
    """Where along a beam anything changes: at corners within its width, and at edges crossed."""
    across, (near, far) = on.other, faces
    for one, other in (
        line for ring in (region.free, *(c.corners for c in columns)) for line in edges(ring)
    ):
        if near <= place(on, one) <= far:
            yield place(across, one)
        for face in (near, far):
            low, high = sorted((place(on, one), place(on, other)))
            if low < face < high:
                line = spot(on, face, ZERO), spot(on, face, Length.of_inches(1))
                yield place(across, crossing((one, other), line))


def _is_full(region: Region, columns: Sequence[StandingColumn], box: tuple[Spot, Spot]) -> bool:
    low, high = box
    found = within_box(region.free, low, high)
    whole = (high.x - low.x).inches * (high.y - low.y).inches
    taken = sum(area(part) for each in columns for part in within_box(each.corners, low, high))
    return sum(area(part) for part in found) - taken == whole


def _box(
    on: RunName, faces: tuple[Length, Length], ends: tuple[Length, Length]
) -> tuple[Spot, Spot]:
    return spot(on, faces[0], ends[0]), spot(on, faces[1], ends[1])


def _end(
    region: Region, on: RunName, faces: tuple[Length, Length], at: tuple[Length, bool]
) -> SpanEnd:
    """What a beam ends at: the face that lies across its end, or slants away from it."""
    (place_at, last), best = at, None
    for wall in region.sides:
        line = region.face_line(wall)
        if wall.angled:
            slanted = _slanted(line, on, faces, at)
            if slanted is not None:
                return SpanEnd(place_at, wall, *slanted)
            continue
        if wall.on is on or wall.at_start is last or place(on.other, line[0]) != place_at:
            continue
        low, high = sorted(place(on, end) for end in line)
        overlap = min(high, faces[1]) - max(low, faces[0])
        if overlap > ZERO and (best is None or overlap > best[0]):
            best = overlap, wall
    if best is None:
        return SpanEnd(place_at, _cutting(region, on, faces, place_at))
    return SpanEnd(place_at, best[1])


def _slanted(
    line: tuple[Spot, Spot],
    on: RunName,
    faces: tuple[Length, Length],
    at: tuple[Length, bool],
) -> tuple[Length, bool] | None:
    """How far a beam goes on at an angled face that crosses its whole width, and on which side."""
    place_at, last = at
    low, high = sorted(place(on, end) for end in line)
    if low > faces[0] or high < faces[1]:
        return None
    inch = Length.of_inches(1)
    met = [
        place(on.other, crossing(line, (spot(on, face, ZERO), spot(on, face, inch))))
        for face in faces
    ]
    nearest = min(met) if last else max(met)
    if nearest != place_at:
        return None
    longer = max(met) if last else min(met)
    return on_grid(abs(longer - nearest)), met[0] == longer


def _cutting(region: Region, on: RunName, faces: tuple[Length, Length], place_at: Length) -> Wall:
    """The wall whose corner a beam ends at: one that reaches that place within its width."""
    for wall in region.sides:
        for end in region.face_line(wall):
            if place(on.other, end) == place_at and faces[0] <= place(on, end) <= faces[1]:
                return wall
    return region.walls[0]
