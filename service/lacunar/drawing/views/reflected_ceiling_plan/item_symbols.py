"""Symbols of ceiling items, and what they look like in a legend: an outline, and a mark by kind.

The marks are those of reflected ceiling plans in general: a cross for a supply, one diagonal for a
return, crosshairs for a fan, a dot for a sprinkler (common practice, no source). Shape alone tells
the kinds apart, so that a copy in one color loses nothing.
"""

from dataclasses import dataclass
from math import sqrt

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Fill, Polyline, Pt, Segments
from lacunar.model.ceiling_items import ItemKind

LEAST = 3.2
"""No side of a symbol is drawn shorter than this [mm]."""
DOT = 0.8
INSET = 0.9
DIAMOND = 0.6


@dataclass(frozen=True, slots=True)
class Symbol:
    """An item's outline on paper: its center, half its width and half its height [mm]."""

    kind: ItemKind
    round: bool
    center: Pt
    half_width: float
    half_height: float

    def drawn(self) -> tuple[Element, ...]:
        """The outline, then the mark of the kind inside it."""
        return (self._outline(), *self._mark())

    def _outline(self, inset: float = 0.0) -> Element:
        pen = style.FINE if inset else style.OBJECT
        wide, high = self.half_width - inset, self.half_height - inset
        if self.round:
            return Circle(self.center, wide, pen)
        corners = ((-wide, -high), (wide, -high), (wide, high), (-wide, high))
        return Polyline(tuple(self.center.moved(*c) for c in corners), pen, closed=True)

    def _mark(self) -> tuple[Element, ...]:
        least = min(self.half_width, self.half_height)
        match self.kind:
            case ItemKind.SPRINKLER:
                return (Circle(self.center, min(DOT, least / 2), None, Fill.BLACK),)
            case ItemKind.DETECTOR:
                return (Circle(self.center, least / 2, style.FINE),)
            case ItemKind.HATCH:
                return (self._outline(min(INSET, least / 3)),)
            case ItemKind.SPEAKER:
                wide, high = self.half_width * DIAMOND, self.half_height * DIAMOND
                points = ((0.0, -high), (wide, 0.0), (0.0, high), (-wide, 0.0))
                corners = tuple(self.center.moved(*point) for point in points)
                return (Polyline(corners, style.FINE, closed=True),)
        return self._across(*self._ways())

    def _ways(self) -> tuple[tuple[float, float], ...]:
        """From the center to where straight lines of the mark end at the outline."""
        # On a circle, diagonals end where a square inside it has its corners.
        share = 1 / sqrt(2) if self.round else 1.0
        right, down = self.half_width * share, self.half_height * share
        ways: dict[ItemKind, tuple[tuple[float, float], ...]] = {
            ItemKind.FAN: ((self.half_width, 0.0), (0.0, self.half_height)),
            ItemKind.DIFFUSER: ((right, down), (right, -down)),
            ItemKind.RETURN: ((right, -down),),
        }
        return ways.get(self.kind, ())

    def _across(self, *ways: tuple[float, float]) -> tuple[Element, ...]:
        """Straight lines through the center, each as far to one side as to the other."""
        lines = tuple((self.center.moved(-dx, -dy), self.center.moved(dx, dy)) for dx, dy in ways)
        return (Segments(lines, style.FINE),) if lines else ()
