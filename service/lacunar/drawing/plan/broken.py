"""Lines that stop at names and signs, since nothing is masked."""

from collections.abc import Iterable

from lacunar.drawing.elements import Pen, Pt, Segments
from lacunar.drawing.hatching import outside_box
from lacunar.drawing.plan.clear_places import Box

Line = tuple[Pt, Pt]
Boxes = Iterable[tuple[Pt, ...]]
"""The corners of upright rectangles, the upper left one first, in order about each."""
THIN = 0.1
"""A line has no width across; boxes are grown by as much to meet it [mm]."""


def broken(lines: tuple[Line, ...], boxes: Boxes, pen: Pen) -> tuple[Segments, ...]:
    """Lines outside all boxes, as one element; none where nothing is left of them."""
    if not lines:
        return ()
    # Of thousands of boxes on a large ceiling, few are near the lines of one coffer.
    near = Box.around([end for line in lines for end in line]).grown(THIN)
    for box in boxes:
        low, high = box[0], box[2]
        aside = low.x < near.right and near.left < high.x
        if aside and low.y < near.bottom and near.top < high.y:
            lines = outside_box(lines, box)
    return (Segments(lines, pen),) if lines else ()
