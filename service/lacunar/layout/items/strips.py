"""What items must keep clear of, as strips across each run from wall to wall.

Beams, mouldings and joists all reach across the room, so along a run each is one stretch from a
near to a far side, and what is clear of them along both runs is clear of them. What lies aslant
takes up all between the outermost places of its sides.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.backing_records import JoistLines
from lacunar.layout.item_records import Meets
from lacunar.layout.moulding_records import CofferTrim, Mouldings
from lacunar.layout.mouldings.pieces import flats_at, standing_out
from lacunar.layout.records import (
    BeamProfile,
    Coffer,
    ElementKind,
    RunElement,
    RunLayout,
    profiles_by_beam,
)
from lacunar.measure.length import ZERO, Length
from lacunar.measure.polygon import Line, Polygon
from lacunar.model.moulding import FlatMoulding, FlatPlace
from lacunar.model.room import END_WALL, START_WALL, RunName


@dataclass(frozen=True, slots=True)
class Strip:
    """A stretch of a run that something takes up, from its near to its far side.

    `reaches` are the stretches of the other run in which it does; None from wall to wall.
    """

    meets: Meets
    id: str
    near: Length
    far: Length
    approximate: bool = False
    reaches: tuple[tuple[Length, Length], ...] | None = None

    def is_there(self, near: Length, far: Length) -> bool:
        """Whether it is anywhere between two places along the other run."""
        if self.reaches is None:
            return True
        return any(start < far and near < end for start, end in self.reaches)


@dataclass(frozen=True, slots=True)
class OddSide:
    """A side of a coffer, which lies to its left, and what it lies against."""

    line: Line
    against: str
    meets: Meets


@dataclass(frozen=True, slots=True)
class OddCoffer:
    """A coffer by its corners and those of its holes, with the sides of all of these."""

    id: str
    rings: tuple[Polygon, ...]
    sides: tuple[OddSide, ...]


@dataclass(frozen=True, slots=True)
class OddRoom:
    """What items are held against besides, in a room with other than four walls.

    `reaches` are from where to where each beam stands; `inner` are the walls beyond W1 to W4 that
    lie along a run, and what stands at them, as strips of the run across; `coffers` all there are,
    whole and cut; `columns` those that take something of these.
    """

    reaches: Mapping[str, tuple[tuple[Length, Length], ...]]
    inner: Mapping[RunName, tuple[Strip, ...]]
    coffers: tuple[OddCoffer, ...]
    columns: Mapping[str, Polygon]


@dataclass(frozen=True, slots=True)
class BuiltCeiling:
    """What has been set out: that which items are held against."""

    runs: Mapping[RunName, RunLayout]
    profiles: Sequence[BeamProfile]
    coffers: tuple[Coffer, ...]
    mouldings: Mouldings
    flats: tuple[FlatMoulding, ...]
    joists: JoistLines | None
    odd: OddRoom | None = None


def strips_along(built: BuiltCeiling, run: RunName) -> tuple[Strip, ...]:
    """Every strip along a run: beams to their outermost edges, mouldings at the ceiling, joists."""
    profiles = profiles_by_beam(built.profiles)
    edge = standing_out(flats_at(FlatPlace.BOTTOM_EDGE, built.flats))
    layout, odd = built.runs[run], built.odd
    beams = (beam_strip(each, profiles, edge) for each in layout.elements if _is_beam(each))
    if odd is not None:
        standing = (replace(each, reaches=odd.reaches.get(each.id, ())) for each in beams)
        return (*standing, *odd.inner[run], *_joists(built.joists, run))
    return (
        *beams,
        *_mouldings(built, run),
        *_joists(built.joists, run),
    )


def _is_beam(element: RunElement) -> bool:
    return element.kind is not ElementKind.COFFER


def beam_strip(element: RunElement, profiles: Mapping[str, BeamProfile], edge: Length) -> Strip:
    """A beam between its outermost edges; at a wall what stands out there is in the wall."""
    out = profiles[element.id].overhang + edge
    near = min(element.near.at_start.value, element.near.at_end.value)
    far = max(element.far.at_start.value, element.far.at_end.value)
    return Strip(Meets.BEAM, element.id, max(near - out, ZERO), far + out)


def _mouldings(built: BuiltCeiling, run: RunName) -> Iterator[Strip]:
    """On both sides of each coffer, what mouldings cover of the ceiling."""
    seen: set[tuple[Length, Length]] = set()
    crown = built.mouldings.crown
    name = "crown" if crown else "flat mouldings"
    rounded = crown is not None and crown.projection.approximate
    for coffer in built.coffers:
        covered = _covered(built.mouldings.of(coffer.id), coffer, run)
        nears, fars = sides_across(coffer, run)
        if covered > ZERO and nears not in seen:
            seen.add(nears)
            yield Strip(Meets.MOULDING, name, min(nears), max(nears) + covered, rounded)
            yield Strip(Meets.MOULDING, name, min(fars) - covered, max(fars), rounded)


def _covered(trim: CofferTrim, coffer: Coffer, run: RunName) -> Length:
    """What mouldings cover along a run on each side of a coffer."""
    opening, seen = coffer.length.value, trim.seen_length.value
    if run is RunName.WIDTH:
        opening, seen = coffer.width.value, trim.seen_width.value
    return (opening - seen) / 2


def sides_across(
    coffer: Coffer, run: RunName
) -> tuple[tuple[Length, Length], tuple[Length, Length]]:
    """Where the sides of a coffer lie across a run, at both their ends; the near one first."""
    first, second, third, fourth = coffer.corners
    if run is RunName.LENGTH:
        return (first.x, fourth.x), (second.x, third.x)
    return (first.y, second.y), (fourth.y, third.y)


def _joists(joists: JoistLines | None, run: RunName) -> Iterator[Strip]:
    if joists is None or joists.on is not run:
        return
    half = joists.width / 2
    for joist in joists.joists:
        center = joist.center.value
        yield Strip(Meets.JOIST, joist.id, center - half, center + half)


def wall_strips_at(run: RunName, span: Length, beyond: Length) -> tuple[Strip, Strip]:
    """Both walls of a run as strips outside the room, at least as thick as anything could reach."""
    return (
        Strip(Meets.WALL, START_WALL[run], -beyond, ZERO),
        Strip(Meets.WALL, END_WALL[run], span, span + beyond),
    )


@dataclass(frozen=True, slots=True)
class ClearStretches:
    """Where along a run an item's center may be: closed stretches, in order."""

    nears: tuple[Length, ...]
    fars: tuple[Length, ...]

    def holds(self, place: Length) -> bool:
        """Whether a place lies in one of them."""
        after = bisect_right(self.nears, place)
        return after > 0 and place <= self.fars[after - 1]

    def edges_by_distance(self, place: Length) -> list[Length]:
        """All their ends and the place itself if it is clear, nearest first."""
        found = {*self.nears, *self.fars, *((place,) if self.holds(place) else ())}
        return sorted(found, key=lambda each: (abs(each - place), each))

    def nearest(self, place: Length) -> Length | None:
        """The nearest clear place; of two equally near the one next the datum."""
        if self.holds(place):
            return place
        at = bisect_left(self.nears, place)
        around = [*self.fars[max(at - 1, 0) : at], *self.nears[at : at + 1]]
        return min(around, key=lambda each: (abs(each - place), each), default=None)


def clear_stretches(keep_out: Sequence[tuple[Length, Length]], span: Length) -> ClearStretches:
    """Turn open stretches that must be kept out of into the closed ones between them."""
    nears: list[Length] = []
    fars: list[Length] = []
    free_from = ZERO
    for near, far in sorted(keep_out):
        if near >= free_from:
            nears.append(free_from)
            fars.append(near)
        free_from = max(free_from, far)
    if free_from <= span:
        nears.append(free_from)
        fars.append(span)
    return ClearStretches(tuple(nears), tuple(fars))
