"""Places in the room, bodies made of flat faces, and the way they are looked at."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, radians, sin
from typing import NamedTuple

EDGE_ON = 1e-6
"""The cosine below which a face is seen edge-on, and hides nothing."""


class Place(NamedTuple):
    """A place in the room [mm]: along the length run, along the width run, up from the ceiling."""

    x: float
    y: float
    z: float

    def moved(self, x: float, y: float, z: float) -> "Place":
        """This place moved [mm]."""
        return Place(self.x + x, self.y + y, self.z + z)


class Seen(NamedTuple):
    """A place as it is looked at [mm]: to the right, up, and how far behind the picture."""

    right: float
    up: float
    away: float


@dataclass(frozen=True, slots=True)
class Sight:
    """A parallel view from below: turned from the width run towards the length run, and raised.

    Both are degrees. `turned` 0 looks along the width run, 90 along the length run; `raised` 0 is
    level, 90 straight up.
    """

    turned: float
    raised: float

    @property
    def away(self) -> Place:
        """The way one looks, one millimeter of it."""
        turned, raised = radians(self.turned), radians(self.raised)
        return Place(sin(turned) * cos(raised), cos(turned) * cos(raised), sin(raised))

    @property
    def right(self) -> Place:
        """What lies to the right in the picture, one millimeter of it."""
        turned = radians(self.turned)
        return Place(cos(turned), -sin(turned), 0.0)

    @property
    def up(self) -> Place:
        """What lies upward in the picture, one millimeter of it."""
        turned, raised = radians(self.turned), radians(self.raised)
        return Place(-sin(turned) * sin(raised), -cos(turned) * sin(raised), cos(raised))

    def of(self, places: Sequence[Place]) -> list[Seen]:
        """Places as they are looked at."""
        right, up, away = self.right, self.up, self.away
        return [Seen(inner(right, at), inner(up, at), inner(away, at)) for at in places]


def inner(one: Sequence[float], other: Sequence[float]) -> float:
    """The inner product of two ways in the room."""
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def outer(one: Place, other: Place) -> Place:
    """The way square to two ways, right-handed."""
    return Place(
        one.y * other.z - one.z * other.y,
        one.z * other.x - one.x * other.z,
        one.x * other.y - one.y * other.x,
    )


@dataclass(frozen=True, slots=True)
class Solid:
    """A body that bulges outward everywhere, or a single face of one.

    `of` is the id of what it is a part of, `kind` what that is. `faces` are numbers of its
    `corners`, counter-clockwise to someone who stands outside; `lines` are edges without a face.
    """

    of: str
    kind: str
    corners: tuple[Place, ...]
    faces: tuple[tuple[int, ...], ...]
    lines: tuple[tuple[int, int], ...] = ()

    def moved(self, x: float, y: float, z: float) -> "Solid":
        """The same body elsewhere in the room [mm]."""
        corners = tuple(corner.moved(x, y, z) for corner in self.corners)
        return Solid(self.of, self.kind, corners, self.faces, self.lines)


class Edge(NamedTuple):
    """A straight edge of a body, or a piece of one, with whose it is."""

    start: Place
    end: Place
    of: str
    kind: str


def prism(
    named: tuple[str, str], ring: Sequence[tuple[float, float]], low: float, high: float
) -> Solid:
    """An upright body over a ring of places, from one height to another [mm].

    `named` is whose it is and what that is; the ring runs either way, and turns inward nowhere.
    """
    around = list(ring) if _area(ring) > 0 else list(ring)[::-1]
    count = len(around)
    corners = tuple(Place(x, y, z) for z in (low, high) for x, y in around)
    sides = ((at, (at + 1) % count, count + (at + 1) % count, count + at) for at in range(count))
    bottom, top = tuple(range(count))[::-1], tuple(range(count, 2 * count))
    return Solid(*named, corners, (bottom, top, *sides))


def lone_face(named: tuple[str, str], corners: Sequence[Place]) -> Solid:
    """A single face, seen from where its corners run counter-clockwise."""
    return Solid(*named, tuple(corners), (tuple(range(len(corners))),))


def _area(ring: Sequence[tuple[float, float]]) -> float:
    """Twice the area within a ring; below zero where it runs clockwise."""
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum(ax * by - ay * bx for (ax, ay), (bx, by) in pairs)


def normal(corners: Sequence[Place]) -> Place:
    """The way out of a flat face, as long as twice its area: the sum over its edges.

    After Newell, so that neither a short edge nor a straight corner spoils it; from memory.
    """
    total = [0.0, 0.0, 0.0]
    for one, other in zip(corners, (*corners[1:], corners[0]), strict=True):
        for at, part in enumerate(outer(one, other)):
            total[at] += part
    return Place(*total)


def faces_of(solid: Solid, sight: Sight) -> Iterator[tuple[int, ...]]:
    """The faces of a body that are turned to whoever looks."""
    away = sight.away
    for face in solid.faces:
        out = normal([solid.corners[at] for at in face])
        if inner(out, away) < -EDGE_ON * hypot(*out):
            yield face
