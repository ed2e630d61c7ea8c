"""What a legend says of ceiling items and wall features: a row for each kind that is used."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Face, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.plan.frame import WALL_BAND
from lacunar.drawing.plan.walls import HATCH_PITCH, feature_mark
from lacunar.drawing.views.reflected_ceiling_plan.item_symbols import LEAST, Symbol
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO
from lacunar.model.ceiling_items import FeatureKind, ItemKind

ITEM, FEATURE = "item-", "wall-feature-"
CLEARANCE = "clearance"
ITEM_ID = "item-tag"
HALF = 2.3
"""Half the height of a symbol in the legend [mm]."""
_ON_IDS = (
    f"Item: its number in the table. To scale, but no side under {LEAST} mm; one without room for"
    " its number is found by its place"
)
_MEANINGS = {
    ItemKind.LIGHT: "Light",
    ItemKind.FAN: "Fan",
    ItemKind.DIFFUSER: "Diffuser, supply air",
    ItemKind.RETURN: "Return air",
    ItemKind.DETECTOR: "Detector: its place is set by the local code",
    ItemKind.SPRINKLER: "Sprinkler: its place is set by a licensed designer",
    ItemKind.SPEAKER: "Speaker",
    ItemKind.HATCH: "Hatch: access above the ceiling",
}
_FEATURES = {
    FeatureKind.DOOR: "Door in a wall, closed above its head",
    FeatureKind.WINDOW: "Window in a wall",
    FeatureKind.FIREPLACE: "Fireplace at a wall",
    FeatureKind.CABINET: "Cabinet at a wall",
}


def item_entries(layout: Layout) -> Iterator[tuple[str, str]]:
    """The name and the meaning of each row on items and wall features; none where there are none.

    Kinds stand in one order, so that the legends of two ceilings read alike.
    """
    items = layout.items.items
    kinds = {item.kind for item in items}
    for kind in ItemKind:
        if kind in kinds:
            yield f"{ITEM}{kind}", _MEANINGS[kind]
    if items:
        yield ITEM_ID, _ON_IDS
    if any(item.conflicts and item.clearance > ZERO for item in items):
        yield CLEARANCE, "Clearance to be kept about an item that is in conflict"
    found = {check.kind for check in layout.wall_features}
    for feature in FeatureKind:
        if feature in found:
            yield f"{FEATURE}{feature}", _FEATURES[feature]


def item_symbol(name: str, middle: Pt, layout: Layout) -> tuple[Element, ...]:
    """The symbol of such a row about the middle of its place; nothing for other rows."""
    if name == ITEM_ID:
        at = middle.moved(0, style.TEXT / 2)
        return (Text(at, layout.items.items[0].id, style.TEXT, Face.MEDIUM, "middle"),)
    if name == CLEARANCE:
        corners = box_corners(middle.x - 4.0, middle.y - 2.0, 8.0, 4.0)
        return (Polyline(corners, style.CLEARANCE, closed=True),)
    if name.startswith(ITEM):
        kind = ItemKind(name.removeprefix(ITEM))
        first = next(item for item in layout.items.items if item.kind is kind)
        wide = HALF if first.round else HALF * 1.6
        return Symbol(kind, first.round, middle, wide, HALF).drawn()
    if name.startswith(FEATURE):
        return _feature_symbol(FeatureKind(name.removeprefix(FEATURE)), middle)
    return ()


def _feature_symbol(kind: FeatureKind, middle: Pt) -> tuple[Element, ...]:
    """A gap in a piece of wall, as at the upper wall of a plan."""
    top, face = middle.y - WALL_BAND / 2, middle.y + WALL_BAND / 2
    gap = box_corners(middle.x - 4.0, top, 8.0, WALL_BAND)
    hatched = [box_corners(middle.x + x, top, 2.6, WALL_BAND) for x in (-6.6, 4.0)]
    lines = tuple(line for box in hatched for line in diagonal_lines(box, HATCH_PITCH))
    jambs = tuple((Pt(middle.x + x, top), Pt(middle.x + x, face)) for x in (-4.0, 4.0))
    return (
        Segments(lines, style.HATCH),
        Polyline((Pt(middle.x - 6.6, face), Pt(middle.x + 6.6, face)), style.WALL),
        Segments(jambs, style.OBJECT),
        *feature_mark(kind, gap),
    )
