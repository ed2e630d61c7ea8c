"""Plane figures on paper [mm, y down] and the plain questions asked of them."""

from collections.abc import Sequence
from math import hypot
from typing import NamedTuple


class Spot(NamedTuple):
    """A place on paper [mm]."""

    x: float
    y: float


class Box(NamedTuple):
    """An upright rectangle on paper [mm]; `top` is the smaller y."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def middle(self) -> Spot:
        """The place half way across and half way down."""
        return Spot((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    @property
    def corners(self) -> tuple[Spot, Spot]:
        """The upper left and the lower right corner."""
        return Spot(self.left, self.top), Spot(self.right, self.bottom)

    def grown(self, by: float) -> "Box":
        """The box with `by` [mm] added on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def overlaps(self, other: "Box") -> bool:
        """Whether the insides of both have a place in common."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def holds(self, other: "Box") -> bool:
        """Whether the other box lies within this one, edges included."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.top <= other.top
            and other.bottom <= self.bottom
        )


class Stroke(NamedTuple):
    """One straight line of a path, of a width [mm] (0: the bare edge of a filled area)."""

    start: Spot
    end: Spot
    width: float


def extent(spots: Sequence[Spot]) -> Box:
    """The smallest upright box around places on paper; at least one is needed."""
    xs = [spot.x for spot in spots]
    ys = [spot.y for spot in spots]
    return Box(min(xs), min(ys), max(xs), max(ys))


def passes(stroke: Stroke, box: Box) -> bool:
    """Whether the stroke's middle line has a place strictly inside the box.

    Clips the line to the box side by side (Liang and Barsky's way of clipping).
    """
    (x1, y1), (x2, y2), _ = stroke
    enters, leaves = 0.0, 1.0
    for at, along, low, high in (
        (x1, x2 - x1, box.left, box.right),
        (y1, y2 - y1, box.top, box.bottom),
    ):
        if along == 0:
            if not low < at < high:
                return False
            continue
        near, far = (low - at) / along, (high - at) / along
        if near > far:
            near, far = far, near
        enters, leaves = max(enters, near), min(leaves, far)
        if enters >= leaves:
            return False
    return True


def nearest(box: Box, spot: Spot) -> float:
    """How far a place is from the box [mm]; 0 inside it."""
    aside = max(box.left - spot.x, 0.0, spot.x - box.right)
    above = max(box.top - spot.y, 0.0, spot.y - box.bottom)
    return hypot(aside, above)


def farthest(box: Box, spot: Spot) -> float:
    """How far a place is from the farthest corner of the box [mm]."""
    aside = max(abs(box.left - spot.x), abs(box.right - spot.x))
    above = max(abs(box.top - spot.y), abs(box.bottom - spot.y))
    return hypot(aside, above)


def encloses(corners: Sequence[Spot], spot: Spot) -> bool:
    """Whether a closed outline goes around a place: a ray from it leaves the outline once more."""
    inside = False
    before = corners[-1]
    for corner in corners:
        if (corner.y > spot.y) != (before.y > spot.y):
            share = (spot.y - before.y) / (corner.y - before.y)
            if spot.x < before.x + share * (corner.x - before.x):
                inside = not inside
        before = corner
    return inside
