"""Ids of ceiling items beside their symbols, without meeting anything drawn.

Where there is no room close by, an id stands further off with a leader, but for items of which
there are many: one without an id is found by its place, which the table of items tells.
"""

from collections import Counter
from collections.abc import Sequence

from lacunar.drawing.elements import Element, Group
from lacunar.drawing.plan.clear_places import Label, Occupied, place_label
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import room_on_paper
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.items import PlacedSymbol

ALIKE_WITH_LEADERS = 12
"""Of more items alike, those without room for an id are left without: leaders would hide them."""


def item_ids(
    frame: PlanFrame, symbols: Sequence[PlacedSymbol], busy: Occupied, typeface: Typeface
) -> tuple[Group, ...]:
    """An id for each item that has room for one. What is placed is added to `busy`."""
    alike = Counter(symbol.item.kind for symbol in symbols)
    room = room_on_paper(frame)
    tags = []
    for symbol in symbols:
        item = symbol.item
        few = alike[item.kind] <= ALIKE_WITH_LEADERS
        label = Label(item.id, symbol.box, item.round, room, outlined=True, led_out=few)
        if words := place_label(label, busy, typeface):
            busy.add(words)
            tags.append(_tag(item.id, words))
    return tuple(tags)


def _tag(identity: str, words: tuple[Element, ...]) -> Group:
    return Group(
        "tag",
        words,
        id=f"tag-item-{identity}",
        title=identity,
        data={"kind": "item", "of": identity},
    )
