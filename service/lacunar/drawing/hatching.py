"""Hatching as explicit lines, each clipped exactly: pattern fills blur and print badly."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from lacunar.drawing.elements import Pt

ALONG_HATCH = 0.35
"""From where a wall lies along the hatch: the product of both parts of the way out of it."""


def diagonal_lines(corners: tuple[Pt, ...], pitch: float) -> tuple[tuple[Pt, Pt], ...]:
    """45° lines across a convex area, `pitch` [mm] apart along the sheet's edges.

    Each is a line x + y = offset between the two places where it meets the outline.
    """
    sums = [corner.x + corner.y for corner in corners]
    lines: list[tuple[Pt, Pt]] = []
    offset = min(sums) + pitch
    while offset < max(sums):
        crossings = sorted(_crossings(corners, offset), key=lambda point: point.x)
        lines.append((crossings[0], crossings[-1]))
        offset += pitch
    return tuple(lines)


def falling_lines(corners: tuple[Pt, ...], pitch: float) -> tuple[tuple[Pt, Pt], ...]:
    """The same lines the other way, for an area that lies along them."""
    mirrored = tuple(Pt(-corner.x, corner.y) for corner in corners)
    return tuple(
        (Pt(-one.x, one.y), Pt(-other.x, other.y)) for one, other in diagonal_lines(mirrored, pitch)
    )


def behind_wall(corners: tuple[Pt, ...], out: Pt, pitch: float) -> tuple[tuple[Pt, Pt], ...]:
    """The hatch of a band behind a wall, across it whichever way it runs.

    `out` is the way out of the wall, of length 1. The hatch rises to the right; a wall that all but
    does too would lie along it, and has one that falls.
    """
    hatch = falling_lines if out.x * out.y > ALONG_HATCH else diagonal_lines
    return hatch(corners, pitch)


def _crossings(corners: tuple[Pt, ...], offset: float) -> list[Pt]:
    """Where the line x + y = offset meets the outline: twice, or more often at a corner."""
    found: list[Pt] = []
    for start, end in pairwise((*corners, corners[0])):
        at_start, at_end = start.x + start.y - offset, end.x + end.y - offset
        if at_start * at_end <= 0 and at_start != at_end:
            share = at_start / (at_start - at_end)
            found.append(start.moved((end.x - start.x) * share, (end.y - start.y) * share))
    return found


def box_corners(left: float, top: float, width: float, height: float) -> tuple[Pt, ...]:
    """The corners of an upright rectangle [mm]."""
    right, bottom = left + width, top + height
    return (Pt(left, top), Pt(right, top), Pt(right, bottom), Pt(left, bottom))


def outside_box(
    lines: Iterable[tuple[Pt, Pt]], corners: tuple[Pt, ...]
) -> tuple[tuple[Pt, Pt], ...]:
    """What is left of lines outside an upright rectangle, told by its corners.

    >>> outside_box([(Pt(0, 1), Pt(9, 1))], box_corners(3, 0, 2, 2))
    ((Pt(x=0, y=1), Pt(x=3.0, y=1.0)), (Pt(x=5.0, y=1.0), Pt(x=9, y=1)))
    """
    xs, ys = [at.x for at in corners], [at.y for at in corners]
    box = (min(xs), max(xs)), (min(ys), max(ys))
    return tuple(part for line in lines for part in _parts_outside(line, box))


def _parts_outside(
    line: tuple[Pt, Pt], box: tuple[tuple[float, float], tuple[float, float]]
) -> Iterator[tuple[Pt, Pt]]:
    """A line clipped the other way about (Liang and Barsky's way): what is within is left out."""
    start, end = line
    enters, leaves = 0.0, 1.0
    ways = ((start.x, end.x - start.x, box[0]), (start.y, end.y - start.y, box[1]))
    for at, way, (low, high) in ways:
        if way:
            first, last = sorted(((low - at) / way, (high - at) / way))
            enters, leaves = max(enters, first), min(leaves, last)
        elif not low < at < high:
            enters, leaves = 1.0, 0.0
    if enters >= leaves:
        yield line
        return
    dx, dy = end.x - start.x, end.y - start.y
    if enters > 0.0:
        yield start, start.moved(dx * enters, dy * enters)
    if leaves < 1.0:
        yield start.moved(dx * leaves, dy * leaves), end
