"""Sets out ceiling items: the one function of these that others call."""

from collections.abc import Mapping

from lacunar.layout.item_records import CeilingItem, ItemLayout
from lacunar.layout.items.clear_place import coffer_at, nearest_clear
from lacunar.layout.items.conflicts import Obstacles, conflicts
from lacunar.layout.items.count_search import CountTask, clear_counts
from lacunar.layout.items.places import PlacedItem, placed_items
from lacunar.layout.items.strips import BuiltCeiling, strips_along, wall_strips_at
from lacunar.layout.mouldings.pieces import flats_at, standing_out
from lacunar.layout.runs.run_division import RunTask
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.measure.polygon import contains
from lacunar.model.beams import Beams
from lacunar.model.ceiling import Ceiling
from lacunar.model.moulding import FlatPlace
from lacunar.model.room import Room, RunName

CLEAR_BELOW = Rule("clear height below an item", "height - drop")


def ceiling_items(
    ceiling: Ceiling, built: BuiltCeiling, tasks: Mapping[RunName, RunTask]
) -> ItemLayout:
    """Turn a ceiling's items into their places, what they meet there, and where they would not.

    Raises SpecRefused where an item has no place in the room.
    """
    frames = {run: task.frame for run, task in tasks.items()}
    placed = placed_items(ceiling.room.ceiling_items, built.coffers, frames)
    if not placed:
        return ItemLayout((), ())
    spans = {run: frame.span.value for run, frame in frames.items()}
    beyond = max(spans.values())
    strips = {
        run: (*strips_along(built, run), *wall_strips_at(run, spans[run], beyond))
        for run in RunName
    }
    obstacles = Obstacles.of(strips, placed)
    items = tuple(_item(each, ceiling.room, obstacles, spans, built) for each in placed)
    return ItemLayout(items, clear_counts(CountTask(tasks, _beyond(built, ceiling.beams)), placed))


def _item(
    item: PlacedItem,
    room: Room,
    obstacles: Obstacles,
    spans: Mapping[RunName, Length],
    built: BuiltCeiling,
) -> CeilingItem:
    found = conflicts(item, obstacles)
    asked = item.asked
    length, width = asked.extents
    return CeilingItem(
        id=item.id,
        kind=asked.kind,
        name=asked.name,
        x=item.x,
        y=item.y,
        length=length,
        width=width,
        round=asked.diameter is not None,
        clearance=asked.clearance,
        mounting=asked.mounting,
        mobility=asked.mobility,
        coffer=_coffer_at(item, built),
        clear_height=_clear_height(item, room),
        conflicts=found,
        nearest_clear=(
            nearest_clear(item, obstacles, spans, built.coffers)
            if found and built.odd is None
            else None
        ),
    )


def _coffer_at(item: PlacedItem, built: BuiltCeiling) -> str | None:
    at = Spot(item.x.value, item.y.value)
    whole = coffer_at((at.x, at.y), built.coffers)
    cut = built.odd.cut if built.odd is not None else {}
    return whole or next((name for name, corners in cut.items() if contains(corners, at)), None)


def _clear_height(item: PlacedItem, room: Room) -> LengthFigure | None:
    drop = item.asked.drop
    if drop is None:
        return None
    return CLEAR_BELOW.gives(room.height - drop, height=room.height, drop=drop)


def _beyond(built: BuiltCeiling, beams: Beams) -> Mapping[RunName, Length]:
    """How far the lower edges of each run's beams stand out past their faces."""
    edge = standing_out(flats_at(FlatPlace.BOTTOM_EDGE, built.flats))
    boxes = {RunName.LENGTH: beams.crosswise, RunName.WIDTH: beams.lengthwise}
    return {run: edge + box.overhang for run, box in boxes.items()}
