"""What an upright plane across a room cuts, in lengths along it from left to right."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Literal, Self

from lacunar.layout.records import BeamProfile, Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName

Side = Literal["near", "far"]
WallEnd = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class Reach:
    """From where to where something lies along the plane."""

    near: Length
    far: Length

    def told_from(self, origin: Length, factor: Fraction) -> Self:
        """The same from another origin; from the other side where the factor is below zero."""
        near, far = sorted(
            ((place - origin) * factor for place in (self.near, self.far)),
            key=lambda place: place.inches,
        )
        return replace(self, near=near, far=far)


@dataclass(frozen=True, slots=True)
class CutMember(Reach):
    """A structural member in a beam that is cut, its drop, and what is on it already."""

    name: str
    drop: Length
    clad: Length


@dataclass(frozen=True, slots=True)
class CutBeam(Reach):
    """A beam, or what stands at a wall, between its faces where the plane cuts it.

    `at_wall` is the end of the view whose wall it stands at, None for a beam; `sides` are what the
    layout calls its left and its right face.
    """

    id: str
    profile: BeamProfile
    at_wall: WallEnd | None = None
    sides: tuple[Side, Side] = ("near", "far")
    member: CutMember | None = None

    def told_from(self, origin: Length, factor: Fraction) -> Self:
        """As for any reach, with its member, and its sides exchanged where it is turned."""
        member = self.member and self.member.told_from(origin, factor)
        found = replace(super(CutBeam, self).told_from(origin, factor), member=member)
        if factor > 0:
            return found
        turned: dict[WallEnd | None, WallEnd | None] = {"left": "right", "right": "left"}
        return replace(found, at_wall=turned.get(self.at_wall), sides=self.sides[::-1])


@dataclass(frozen=True, slots=True)
class CutColumn(Reach):
    """A column where the plane cuts it."""

    name: str


@dataclass(frozen=True, slots=True)
class Behind(Reach):
    """What is seen beyond the plane between two cuts: the next beam along it, or a bare wall."""

    id: str
    profile: BeamProfile | None


@dataclass(frozen=True, slots=True)
class EndOfView:
    """Where a view ends: at the finished face of a wall, or without a wall's name just there."""

    at: Length
    wall: str


@dataclass(frozen=True, slots=True)
class UprightCut:
    """A plane across a room, looked at: what ends it, what it cuts, what is beyond.

    `run` is the one that the plane lies along, None for one at an angled wall; `at` its place along
    the other run. A place along the run is `factor` times its distance from `origin` in the view.
    """

    name: str
    run: RunName | None
    layout: Layout
    ends: tuple[EndOfView, EndOfView]
    beams: tuple[CutBeam, ...]
    behind: tuple[Behind, ...]
    columns: tuple[CutColumn, ...] = ()
    at: Length | None = None
    origin: Length = ZERO
    factor: Fraction = Fraction(1)

    def along(self, place: Length) -> Length:
        """Where a place along the run lies in the view [length]."""
        return (place - self.origin) * self.factor

    @property
    def height(self) -> Length:
        """The finished ceiling's above the finished floor, at its lowest [length]."""
        return self.layout.ceiling.room.height

    @property
    def span(self) -> Length:
        """From end to end of the view [length]."""
        return self.ends[1].at - self.ends[0].at

    @property
    def bays(self) -> tuple["Bay", ...]:
        """The spaces between all that is cut, from left to right."""
        start, end = self.ends
        return tuple(bays(start.at, end.at, (*self.beams, *self.columns)))

    @property
    def profiles(self) -> tuple[BeamProfile, ...]:
        """The profiles that are cut or seen, each once, the deepest first."""
        seen = {beam.profile.id: beam.profile for beam in self.beams}
        seen |= {each.profile.id: each.profile for each in self.behind if each.profile}
        return tuple(sorted(seen.values(), key=lambda p: p.drop.value, reverse=True))

    def told_from(self, origin: Length, factor: Fraction) -> "UprightCut":
        """The view from another origin, turned about where the factor is below zero."""
        order = -1 if factor < 0 else 1
        left, right = (EndOfView((e.at - origin) * factor, e.wall) for e in self.ends[::order])
        return replace(
            self,
            ends=(left, right),
            beams=tuple(each.told_from(origin, factor) for each in self.beams)[::order],
            columns=tuple(each.told_from(origin, factor) for each in self.columns)[::order],
            behind=tuple(each.told_from(origin, factor) for each in self.behind)[::order],
            origin=origin,
            factor=factor,
        )


@dataclass(frozen=True, slots=True)
class Bay(Reach):
    """The space between two things that are cut, None where a wall or the view's end is."""

    left: CutBeam | CutColumn | None
    right: CutBeam | CutColumn | None


def bays(start: Length, end: Length, things: Sequence[CutBeam | CutColumn]) -> Iterator[Bay]:
    """The spaces that things leave between two places, from left to right.

    What lies within another, such as a column in a beam, ends no space of its own.
    """
    at: Length = start
    left: CutBeam | CutColumn | None = None
    for thing in sorted(things, key=lambda each: (each.near.inches, each.far.inches)):
        if thing.near > at:
            yield Bay(at, thing.near, left, thing)
        if thing.far >= at:
            at, left = thing.far, thing
    if end > at:
        yield Bay(at, end, left, None)


def named_stops(cut: UprightCut) -> tuple[tuple[str, Length], ...]:
    """The places a string along the cut stops at, by the names that marks have for them.

    From wall to wall; where a wall is not told, from the first face or to the last.
    """
    start, end = cut.ends
    beams = sorted(cut.beams, key=lambda each: each.near.inches)
    stops = [(start.wall, start.at)] if start.wall else []
    if beams and beams[0].near > start.at:
        stops.append((f"{beams[0].id}:{beams[0].sides[0]}", beams[0].near))
    for one, other in pairwise(beams):
        stops.append((f"{one.id}:{one.sides[1]}", one.far))
        if other.near > one.far:
            stops.append((f"{other.id}:{other.sides[0]}", other.near))
    if beams and beams[-1].far < end.at:
        stops.append((f"{beams[-1].id}:{beams[-1].sides[1]}", beams[-1].far))
    return (*stops, *([(end.wall, end.at)] if end.wall else []))
