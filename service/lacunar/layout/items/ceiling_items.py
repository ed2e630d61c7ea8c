"""Sets out ceiling items: the one function of these that others call."""

from collections.abc import Mapping
from dataclasses import dataclass

from lacunar.layout.item_records import CeilingItem, ClearPlace, ItemConflict, ItemLayout
from lacunar.layout.items.clear_place import coffer_at, nearest_clear
from lacunar.layout.items.conflicts import Obstacles, conflicts
from lacunar.layout.items.count_search import CountTask, clear_counts
from lacunar.layout.items.odd_rooms import (
    OddCeiling,
    aslant_conflicts,
    is_in,
    nearest_clear_place,
    odd_ceiling,
    outside_conflict,
)
from lacunar.layout.items.places import PlacedItem, placed_items
from lacunar.layout.items.strips import BuiltCeiling, strips_along, wall_strips_at
from lacunar.layout.mouldings.pieces import flats_at, standing_out
from lacunar.layout.runs.run_division import RunTask
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot
from lacunar.model.beams import Beams
from lacunar.model.ceiling import Ceiling
from lacunar.model.moulding import CrownMethod, FlatPlace
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
    around = _Around(ceiling.room, obstacles, spans, built, _odd(ceiling, built))
    items = tuple(_item(each, around) for each in placed)
    return ItemLayout(items, clear_counts(CountTask(tasks, _beyond(built, ceiling.beams)), placed))


@dataclass(frozen=True, slots=True)
class _Around:
    """What items are held against; `odd` in a room with other than four walls."""

    room: Room
    obstacles: Obstacles
    spans: Mapping[RunName, Length]
    built: BuiltCeiling
    odd: OddCeiling | None

    def conflicts(self, item: PlacedItem) -> tuple[ItemConflict, ...]:
        """Everything an item meets at its own place."""
        found = conflicts(item, self.obstacles)
        if self.odd is None:
            return found
        found = (*found, *aslant_conflicts(item, self.odd))
        beyond = None
        if not found and self.coffer(item) is None:
            beyond = outside_conflict(item, self.odd)
        return found if beyond is None else (beyond,)

    def nearest_clear(self, item: PlacedItem) -> ClearPlace | None:
        """The nearest place at which an item meets nothing."""
        if self.odd is not None:
            return nearest_clear_place(item, self.obstacles, self.odd)
        return nearest_clear(item, self.obstacles, self.spans, self.built.coffers)

    def coffer(self, item: PlacedItem) -> str | None:
        """The coffer an item's center lies in."""
        at = item.x.value, item.y.value
        if self.odd is None:
            return coffer_at(at, self.built.coffers)
        return next((c.id for c in self.odd.coffers if is_in(c, Spot(*at))), None)


def _odd(ceiling: Ceiling, built: BuiltCeiling) -> OddCeiling | None:
    """The coffers of an odd room, with what mouldings at the ceiling cover along their sides."""
    if built.odd is None:
        return None
    crown, section = ceiling.crown, built.mouldings.crown
    reach = standing_out(flats_at(FlatPlace.CEILING, built.flats))
    if crown is not None and section is not None:
        framed = crown.method is CrownMethod.BENCH_FRAME
        reach += section.projection.value + (crown.fit_total / 2 if framed else ZERO)
    return odd_ceiling(built, reach)


def _item(item: PlacedItem, around: _Around) -> CeilingItem:
    found = around.conflicts(item)
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
        coffer=around.coffer(item),
        clear_height=_clear_height(item, around.room),
        conflicts=found,
        nearest_clear=around.nearest_clear(item) if found else None,
    )


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
