"""Ceiling items on the plan: each at its place, at its true size or the least that can be read.

Where an item is in conflict, what is to be kept clear about it is shown by a thin dashed outline.
"""

from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Pt, Segments
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import room_on_paper
from lacunar.drawing.views.reflected_ceiling_plan.item_symbols import LEAST, Symbol
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.item_records import CeilingItem
from lacunar.layout.records import Point
from lacunar.measure.length import ZERO

SEEN_APART = 0.5
"""A clearance less than this on paper [mm] would only thicken the symbol's line."""


@dataclass(frozen=True, slots=True)
class PlacedSymbol:
    """An item's symbol on paper, and the outline of its clearance where there is one to show."""

    item: CeilingItem
    symbol: Symbol
    clearance: tuple[Segments, ...]

    @property
    def box(self) -> Box:
        """What the symbol takes up."""
        symbol = self.symbol
        return Box.about(symbol.center, 2 * symbol.half_width, 2 * symbol.half_height)

    def marks(self) -> tuple[Element, ...]:
        """Everything that the item could draw."""
        return (*self.symbol.drawn(), *self.clearance)

    def drawn(self, busy: Occupied) -> Group:
        """The item as it leaves; a clearance that would run through words is left out."""
        children: tuple[Element, ...] = self.symbol.drawn()
        lines = [line for segments in self.clearance for line in segments.lines]
        if lines and not any(busy.crosses_text(line) for line in lines):
            children = (*children, Group("item-clearance", self.clearance))
        item = self.item
        return Group(
            "item",
            children,
            id=f"item-{item.id}",
            title=f"{item.id}, {item.name or item.kind}",
            data={
                "id": item.id,
                "kind": item.kind.value,
                "x-mm": decimal_mm(item.x.value),
                "y-mm": decimal_mm(item.y.value),
                "length-mm": decimal_mm(item.length),
                "width-mm": decimal_mm(item.width),
            },
        )


def placed_symbols(frame: PlanFrame) -> tuple[PlacedSymbol, ...]:
    """The symbols of all items, in the order of the layout."""
    return tuple(_placed(frame, item) for item in frame.layout.items.items)


def _placed(frame: PlanFrame, item: CeilingItem) -> PlacedSymbol:
    center = frame.point(Point(item.x.value, item.y.value))
    wide, high = (max(frame.on_paper(side), LEAST) / 2 for side in (item.length, item.width))
    symbol = Symbol(item.kind, item.round, center, wide, high)
    return PlacedSymbol(item, symbol, _clearance(frame, item, center))


def _clearance(frame: PlanFrame, item: CeilingItem, center: Pt) -> tuple[Segments, ...]:
    """What is kept clear, as it is reckoned: a rectangle, about round items too, in the room."""
    if not item.conflicts or item.clearance <= ZERO:
        return ()
    out = frame.on_paper(item.clearance)
    if out < SEEN_APART:
        return ()
    wide, high = (frame.on_paper(side) / 2 + out for side in (item.length, item.width))
    room = room_on_paper(frame)
    first_x, last_x = max(center.x - wide, room.left), min(center.x + wide, room.right)
    first_y, last_y = max(center.y - high, room.top), min(center.y + high, room.bottom)
    corners = box_corners(first_x, first_y, last_x - first_x, last_y - first_y)
    lines = tuple(zip(corners, (*corners[1:], corners[0]), strict=True))
    return (Segments(lines, style.CLEARANCE),)
