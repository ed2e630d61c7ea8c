"""Lines that stop at names and signs, since nothing is masked."""

from collections.abc import Iterable

from lacunar.drawing.elements import Pen, Pt, Segments
from lacunar.drawing.hatching import outside_box

Line = tuple[Pt, Pt]
Boxes = Iterable[tuple[Pt, ...]]
"""The corners of upright rectangles."""


def broken(lines: tuple[Line, ...], boxes: Boxes, pen: Pen) -> tuple[Segments, ...]:
    """Lines outside all boxes, as one element; none where nothing is left of them."""
    for box in boxes:
        lines = outside_box(lines, box)
    return (Segments(lines, pen),) if lines else ()
