"""Hatching as explicit lines, each clipped exactly: pattern fills blur and print badly."""

from lacunar.drawing.elements import Pt


def diagonal_lines(
    left: float, top: float, width: float, height: float, pitch: float
) -> tuple[tuple[Pt, Pt], ...]:
    """45° lines across a rectangle [mm], `pitch` [mm] apart along its edges."""
    lines: list[tuple[Pt, Pt]] = []
    offset = pitch
    while offset < width + height:
        # The line x + y = offset, from its lower left end to its upper right one.
        low = Pt(left + max(0.0, offset - height), top + min(offset, height))
        high = Pt(left + min(offset, width), top + max(0.0, offset - width))
        lines.append((low, high))
        offset += pitch
    return tuple(lines)
