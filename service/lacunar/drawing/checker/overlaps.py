"""Which boxes overlap, and which lines and circles run through a box, found through a grid.

A sheet has thousands of strokes and hundreds of texts. The paper is cut into square cells, each
listing the boxes that touch it, and a stroke asks only the cells that it passes.
"""

from collections.abc import Iterator, Sequence
from math import floor

from lacunar.drawing.checker.shapes import Box, Stroke, passes

# About two text heights: a label then lies in a few cells and a cell holds a few labels.
CELL = 6.0
# Coordinates are written to a thousandth of a millimeter; two of these can be off at once.
WRITTEN_TO = 0.002


class BoxGrid:
    """Boxes on paper, asked which of them a thing meets; answers are places in the sequence."""

    def __init__(self, boxes: Sequence[Box]) -> None:
        # What lies on the edge touches, and a written coordinate is rounded: neither is an overlap.
        self._boxes = [box.grown(-WRITTEN_TO) for box in boxes]
        self._cells: dict[tuple[int, int], list[int]] = {}
        for number, box in enumerate(self._boxes):
            for cell in _cells_of(box):
                self._cells.setdefault(cell, []).append(number)

    def overlapping_pairs(self) -> Iterator[tuple[int, int]]:
        """Every pair of boxes that overlap, each once, the lower number first."""
        boxes = self._boxes
        seen: set[tuple[int, int]] = set()
        for numbers in self._cells.values():
            for place, first in enumerate(numbers):
                for second in numbers[place + 1 :]:
                    if boxes[first].overlaps(boxes[second]) and (first, second) not in seen:
                        seen.add((first, second))
                        yield first, second

    def meeting(self, area: Box) -> set[int]:
        """The boxes that an upright area overlaps."""
        boxes = self._boxes
        return {
            number
            for cell in _cells_of(area)
            for number in self._cells.get(cell, ())
            if boxes[number].overlaps(area)
        }

    def crossed_by(self, stroke: Stroke) -> set[int]:
        """The boxes that a stroke of its width runs into, inside or through."""
        boxes, cells = self._boxes, self._cells
        half = stroke.width / 2
        found: set[int] = set()
        for cell in _cells_along(stroke, half):
            for number in cells.get(cell, ()):
                if number not in found and passes(stroke, boxes[number].grown(half)):
                    found.add(number)
        return found


def _cells_of(box: Box) -> Iterator[tuple[int, int]]:
    rows = range(floor(box.top / CELL), floor(box.bottom / CELL) + 1)
    for column in range(floor(box.left / CELL), floor(box.right / CELL) + 1):
        for row in rows:
            yield column, row


def _cells_along(stroke: Stroke, half: float) -> Iterator[tuple[int, int]]:
    """The cells that a stroke passes, column by column; a few beside it may come along."""
    (x1, y1), (x2, y2), _ = stroke
    if x2 < x1:
        x1, y1, x2, y2 = x2, y2, x1, y1
    slope = (y2 - y1) / (x2 - x1) if x2 > x1 else 0.0
    for column in range(floor((x1 - half) / CELL), floor((x2 + half) / CELL) + 1):
        if slope:
            enters = y1 + slope * (min(max(column * CELL - half, x1), x2) - x1)
            leaves = y1 + slope * (min(max((column + 1) * CELL + half, x1), x2) - x1)
        else:
            enters, leaves = y1, y2
        low, high = (enters, leaves) if enters < leaves else (leaves, enters)
        for row in range(floor((low - half) / CELL), floor((high + half) / CELL) + 1):
            yield column, row
