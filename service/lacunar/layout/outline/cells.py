"""The room between its walls and its beams, cell by cell: whole coffers, and those walls cut."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.item_records import Meets
from lacunar.layout.items.strips import OddCoffer, OddSide
from lacunar.layout.names import coffer_id
from lacunar.layout.outline.columns import around, boxes_touch, near
from lacunar.layout.outline.spans import Span
from lacunar.layout.outline.wall import Wall, place
from lacunar.layout.outline.walls import Region, beam_strip
from lacunar.layout.records import ElementKind
from lacunar.layout.runs.run_division import BeamStretch
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.measure.polygon import (
    Line,
    Polygon,
    edges,
    extent,
    inner_spot,
    joined,
    lies_on,
    off_squared,
    within_box,
    without_hairs,
)
from lacunar.model.room import RunName

HAIR = Length.of_inches(1) / 1000
Ends = Mapping[RunName, DividedEnds]
Stretch = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class Cell:
    """A coffer of the grid as the room has it, counter-clockwise; `whole` if it has all of it.

    `against` is what each of its sides lies against; `holes` are where columns stand free in it,
    clockwise, each with what its sides lie against.
    """

    id: str
    row: int
    column: int
    corners: Polygon
    against: tuple[str, ...]
    whole: bool
    holes: tuple[tuple[Polygon, tuple[str, ...]], ...] = ()


def odd_coffers(cells: Sequence[Cell], room: Region, beams: Iterable[str]) -> tuple[OddCoffer, ...]:
    """Turn cells into coffers as ceiling items are held against them."""
    meets = dict.fromkeys(beams, Meets.BEAM)
    meets |= {column.name: Meets.COLUMN for column in room.columns}
    return tuple(
        OddCoffer(
            cell.id,
            (cell.corners, *(corners for corners, _ in cell.holes)),
            tuple(
                OddSide(line, against, meets.get(against, Meets.WALL))
                for ring, beside in ((cell.corners, cell.against), *cell.holes)
                for line, against in zip(edges(ring), beside, strict=True)
            ),
        )
        for cell in cells
    )


@dataclass(frozen=True, slots=True)
class _Band:
    """A stretch of a run: a row or column of coffers by its number, or a beam by its id."""

    near: Length
    far: Length
    number: int
    beam: str


@dataclass(frozen=True, slots=True)
class _Part:
    """What the room has of a cell, or of where a beam of the grid does not stand.

    `pieces` make it up, where columns took something of it.
    """

    corners: Polygon
    row: int
    column: int
    whole: bool
    holes: tuple[Polygon, ...] = ()
    pieces: tuple[Polygon, ...] = ()

    @property
    def made_of(self) -> tuple[Polygon, ...]:
        """Polygons without holes that make it up."""
        return self.pieces or (self.corners,)


def cells(region: Region, ends: Ends, spans: Mapping[str, Sequence[Span]]) -> tuple[Cell, ...]:
    """Turn a room, its grid and where beams stand into its coffers, row by row from the datum.

    Where a beam does not stand, what is left of its width belongs to the coffer beside it.
    """
    bands = {run: tuple(_bands(ends[run])) for run in RunName}
    parts = list(_parts(region, bands, spans))
    loose = [part for part in parts if not part.row]
    kept = [part for part in parts if part.row]
    if loose:
        kept = list(_with_loose(kept, loose))
    if region.approximate:
        kept = [part if part.whole else _tidied(part) for part in kept]
    found: list[Cell] = []
    taken: dict[str, int] = {}
    for part in sorted(kept, key=lambda each: (each.row, each.column)):
        name = coffer_id(part.row, part.column)
        taken[name] = number = taken.get(name, 0) + 1
        against, *others = (
            tuple(_against(region, bands, spans, edge) for edge in edges(ring))
            for ring in (part.corners, *part.holes)
        )
        whole = part.whole and against == _expected(region, bands, part)
        found.append(
            Cell(
                name if number == 1 else f"{name}-{number}",
                part.row,
                part.column,
                part.corners,
                against,
                whole,
                tuple(zip(part.holes, others, strict=True)),
            )
        )
    return tuple(found)


def _bands(ends: DividedEnds) -> Iterator[_Band]:
    """The coffers and beams of a run, without what stands at its walls."""
    ids = iter([beam_id for beam_id, _, _ in ends.beams])
    number = 0
    for stretch in ends.at_start.stretches:
        near, far = stretch.near.value, stretch.far.value
        if stretch.kind is ElementKind.COFFER:
            number += 1
            yield _Band(near, far, number, "")
        elif isinstance(stretch, BeamStretch):
            yield _Band(near, far, 0, next(ids))


def _parts(
    region: Region,
    bands: Mapping[RunName, Sequence[_Band]],
    spans: Mapping[str, Sequence[Span]],
) -> Iterator[_Part]:
    for up in bands[RunName.WIDTH]:
        for along in bands[RunName.LENGTH]:
            # Where beams of both runs cross, either of them fills the place.
            across = [(along.near, along.far)]
            if up.beam:
                across = list(_gaps((along.near, along.far), spans[up.beam]))
            upward = [(up.near, up.far)]
            if along.beam:
                upward = list(_gaps((up.near, up.far), spans[along.beam]))
            for left, right in across:
                for low, high in upward:
                    yield from _part(region, (Spot(left, low), Spot(right, high)), up, along)


def _part(region: Region, box: tuple[Spot, Spot], up: _Band, along: _Band) -> Iterator[_Part]:
    loose = bool(up.beam or along.beam)
    low, high = box
    for corners in within_box(region.free, low, high):
        columns = near(region.columns, corners)
        if columns:
            row, column = (0, 0) if loose else (up.number, along.number)
            yield from _left(around(corners, columns), row, column)
        elif loose:
            yield _Part(corners, 0, 0, whole=False)
        else:
            whole = set(corners) == {low, high, Spot(high.x, low.y), Spot(low.x, high.y)}
            ordered = (low, Spot(high.x, low.y), high, Spot(low.x, high.y)) if whole else corners
            yield _Part(ordered, up.number, along.number, whole)


def _left(pieces: Sequence[Polygon], row: int, column: int) -> Iterator[_Part]:
    """What columns leave of a cell, from the pieces of it."""
    for one in joined(pieces):
        own = tuple(piece for piece in pieces if one.holds(inner_spot(piece)))
        yield _Part(one.corners, row, column, False, one.holes, own)


def _gaps(stretch: Stretch, spans: Sequence[Span]) -> Iterator[Stretch]:
    """What of a stretch along a beam lies outside all its spans, slanted ends counted in."""
    at, end = stretch
    for span in spans:
        start, stop = span.start.at - span.start.slant, span.end.at + span.end.slant
        if start > at:
            yield at, min(start, end)
        at = max(at, stop)
        if at >= end:
            return
    if at < end:
        yield at, end


def _with_loose(kept: Sequence[_Part], loose: Sequence[_Part]) -> Iterator[_Part]:
    """The parts with what lies loose beside them, joined where they touch along an edge."""
    boxes = [extent(part.corners) for part in loose]
    beside = [part for part in kept if any(boxes_touch(extent(part.corners), b) for b in boxes)]
    yield from (part for part in kept if part not in beside)
    pieces = [piece for part in (*beside, *loose) for piece in part.made_of]
    for one in joined(pieces):
        inside = [part for part in beside if one.holds(inner_spot(part.made_of[0]))]
        if not inside:
            continue
        first = min(inside, key=lambda part: (part.row, part.column))
        alone = len(inside) == 1 and set(one.corners) == set(first.corners)
        if alone and one.holes == first.holes:
            yield first
        else:
            yield _Part(one.corners, first.row, first.column, whole=False, holes=one.holes)


def _tidied(part: _Part) -> _Part:
    """A part without the sides that snapping left, which no saw could cut."""
    holes = tuple(without_hairs(hole, HAIR) for hole in part.holes)
    return replace(part, corners=without_hairs(part.corners, HAIR), holes=holes)


def _against(
    region: Region,
    bands: Mapping[RunName, Sequence[_Band]],
    spans: Mapping[str, Sequence[Span]],
    edge: Line,
) -> str:
    """What a side of a coffer lies against: what stands at a wall, the wall itself, or a beam."""
    for wall in region.sides:
        face = region.face_line(wall)
        if lies_on(face, edge[0]) and lies_on(face, edge[1]):
            return _standing_at(region, wall)
    run = RunName.LENGTH if edge[0].x == edge[1].x else RunName.WIDTH
    at = place(run, edge[0])
    beside = next(
        (band.beam for band in bands[run] if band.beam and at in (band.near, band.far)), ""
    )
    found = beside or _ended(bands[run.other], spans, (run.other, at), edge)
    return found or _nearly_against(region, edge)


def _standing_at(region: Region, wall: Wall) -> str:
    """What stands at a wall, or the wall itself."""
    strips = region.strips[wall.side]
    strip = beam_strip(strips)
    return strip.id if strip else strips[-1].id if strips else wall.name


def _nearly_against(region: Region, edge: Line) -> str:
    """What a side lies against but for a hair, where its ends were snapped."""
    for wall in region.sides:
        face = region.face_line(wall)
        if all(off_squared(face, end) < HAIR.inches**2 for end in edge):
            return _standing_at(region, wall)
    return ""


def _ended(
    bands: Sequence[_Band],
    spans: Mapping[str, Sequence[Span]],
    end: tuple[RunName, Length],
    edge: Line,
) -> str:
    """The beam whose end a side lies against, beside a column narrower than the beam is."""
    on, at = end
    low, high = sorted(place(on, spot) for spot in edge)
    within = (b.beam for b in bands if b.beam and b.near <= low and high <= b.far)
    ends = ((beam, span) for beam in within for span in spans[beam])
    return next((beam for beam, span in ends if at in (span.start.at, span.end.at)), "")


def _expected(
    region: Region, bands: Mapping[RunName, Sequence[_Band]], part: _Part
) -> tuple[str, ...]:
    """What the sides of a whole coffer of the grid lie against: W4's side first, then W3's."""
    low, high = part.corners[0], part.corners[2]
    found = []
    for run, at, wall in (
        (RunName.WIDTH, low.y, "W4"),
        (RunName.LENGTH, high.x, "W3"),
        (RunName.WIDTH, high.y, "W2"),
        (RunName.LENGTH, low.x, "W1"),
    ):
        beam = next((b.beam for b in bands[run] if b.beam and at in (b.near, b.far)), "")
        strips = region.frame[wall]
        found.append(beam or (strips[-1].id if strips else wall))
    return tuple(found)
