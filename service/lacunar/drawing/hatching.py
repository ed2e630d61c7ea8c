"""Hatching as explicit lines, each clipped exactly: pattern fills blur and print badly."""

from itertools import pairwise

from lacunar.drawing.elements import Pt


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
