"""Ids of ceiling items beside their symbols, without meeting anything drawn.

Where there is no room close by, an id stands further off with a leader, but for items of which
there are many: one without an id is found by its place, which the table of items tells.
"""

from collections.abc import Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import arrow
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.items import PlacedSymbol
from lacunar.drawing.views.reflected_ceiling_plan.occupied import Area, Occupied

GAP = 0.9
ALIKE_WITH_LEADERS = 12
"""Of more items alike, those without room for an id are left without: leaders would hide them."""
LEADER_REACHES = (4.0, 7.0, 11.0, 16.0)
LEADER_WAYS = ((1, -1), (1, 1), (-1, -1), (-1, 1), (1, 0), (-1, 0), (0, -1), (0, 1))


def item_ids(
    symbols: Sequence[PlacedSymbol], busy: Occupied, typeface: Typeface
) -> tuple[Group, ...]:
    """An id for each item that has room for one, beside its symbol or at the end of a leader.

    What is placed is added to `busy`.
    """
    tags = []
    kinds = [symbol.item.kind for symbol in symbols]
    for symbol in symbols:
        tag = _beside(symbol, busy, typeface)
        if tag is None and kinds.count(symbol.item.kind) <= ALIKE_WITH_LEADERS:
            tag = _led_out(symbol, busy, typeface)
        if tag is not None:
            busy.add((tag,))
            tags.append(tag)
    return tuple(tags)


def _beside(symbol: PlacedSymbol, busy: Occupied, typeface: Typeface) -> Group | None:
    """The id within the symbol, or close by it; None where something is everywhere."""
    wide, high = _size(symbol, typeface)
    at = symbol.symbol.center
    across = symbol.symbol.half_width + GAP + wide / 2
    down = symbol.symbol.half_height + GAP + high / 2
    ways = ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (1, -1), (-1, 1), (-1, -1))
    for x, y in ways:
        center = at.moved(x * across, y * down)
        if busy.is_free(Area.about(center, wide, high).grown(style.TEXT_CLEARANCE)):
            return _tag(symbol, center)
    return None


def _led_out(symbol: PlacedSymbol, busy: Occupied, typeface: Typeface) -> Group | None:
    """The id further off with a leader to the symbol's edge; None where there is no room."""
    wide, high = _size(symbol, typeface)
    outline = symbol.symbol
    for reach in LEADER_REACHES:
        for x, y in LEADER_WAYS:
            edge = outline.center.moved(x * outline.half_width, y * outline.half_height)
            if outline.round and x and y:
                share = 0.5**0.5
                edge = outline.center.moved(
                    x * outline.half_width * share, y * outline.half_height * share
                )
            end = edge.moved(x * reach, y * reach)
            center = end.moved(x * (wide / 2 + GAP), 0 if x else y * (high / 2 + GAP))
            area = Area.about(center, wide, high).grown(style.TEXT_CLEARANCE)
            if busy.is_free(area) and not busy.crosses_text((edge, end)):
                line = Polyline((edge, end), style.LEADER)
                return _tag(symbol, center, line, arrow(edge, end, 1.8))
    return None


def _size(symbol: PlacedSymbol, typeface: Typeface) -> tuple[float, float]:
    return typeface.width(symbol.item.id, style.TEXT, Face.MEDIUM), style.TEXT


def _tag(symbol: PlacedSymbol, center: Pt, *leader: Element) -> Group:
    identity = symbol.item.id
    at = center.moved(0, style.TEXT / 2)
    return Group(
        "tag",
        (*leader, Text(at, identity, style.TEXT, Face.MEDIUM, "middle")),
        id=f"tag-item-{identity}",
        title=identity,
        data={"kind": "item", "of": identity},
    )
