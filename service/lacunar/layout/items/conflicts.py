"""What an item meets, and by how much: at its own place, or at any other."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from heapq import merge

from lacunar.layout.item_records import ItemConflict, Meets
from lacunar.layout.items.places import PlacedItem
from lacunar.layout.items.strips import Strip
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling_items import Mounting
from lacunar.model.room import RunName

OVERLAP = Rule(
    "how far an item reaches into what it meets: from its edge with the clearance to the near or"
    " the far side, whichever is less",
    "min(center + half + clearance - near, far - (center - half - clearance))",
)
OVERLAP_OF_TWO = Rule(
    "how far two items are too close: both halves and the larger clearance, less what lies between"
    " their centers",
    "half + other_half + clearance - abs(center - other_center)",
)

Center = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class Obstacles:
    """All strips along both runs, and all items in the order of their places along the length."""

    strips: Mapping[RunName, tuple[Strip, ...]]
    items: tuple[PlacedItem, ...]
    reach: Length

    @classmethod
    def of(
        cls, strips: Mapping[RunName, tuple[Strip, ...]], items: Sequence[PlacedItem]
    ) -> "Obstacles":
        """Obstacles from strips and items in any order."""
        ordered = tuple(sorted(items, key=lambda item: item.x.value))
        reach = max((i.half(RunName.LENGTH) + i.asked.clearance for i in items), default=ZERO)
        return cls(strips, ordered, reach)

    def items_about(self, item: PlacedItem, x: Length) -> Iterator[PlacedItem]:
        """The other items that an item with its center at x could meet."""
        within = self.most_apart(item)
        first = bisect_left(self.items, x - within, key=lambda each: each.x.value)
        after = bisect_right(self.items, x + within, key=lambda each: each.x.value)
        return (other for other in self.items[first:after] if other.id != item.id)

    def most_apart(self, item: PlacedItem) -> Length:
        """At this distance along the length no item meets this one, whichever it is."""
        return item.half(RunName.LENGTH) + item.asked.clearance + self.reach

    def outward_from(self, x: Length) -> Iterator[tuple[Length, PlacedItem]]:
        """All items with how far along the length they lie from x, the nearest first."""
        after = bisect_left(self.items, x, key=lambda each: each.x.value)
        before = ((x - each.x.value, each) for each in reversed(self.items[:after]))
        beyond = ((each.x.value - x, each) for each in self.items[after:])
        return merge(before, beyond, key=lambda pair: pair[0])


def needed_beside(item: PlacedItem, strip: Strip) -> Length:
    """What must lie between an item's edge and a strip: nothing at joists, else its clearance."""
    return ZERO if strip.meets is Meets.JOIST else item.asked.clearance


def concerns(item: PlacedItem, strip: Strip) -> bool:
    """Whether a strip is in an item's way: joists only are where its body goes up between them."""
    return strip.meets is not Meets.JOIST or item.asked.mounting is Mounting.RECESSED


def keep_out(
    item: PlacedItem, strips: Sequence[Strip], run: RunName
) -> list[tuple[Length, Length]]:
    """The open stretches that an item's center must keep out of along a run."""
    found = []
    for strip in strips:
        if concerns(item, strip):
            away = item.half(run) + needed_beside(item, strip)
            found.append((strip.near - away, strip.far + away))
    return found


def apart(item: PlacedItem, other: PlacedItem, run: RunName) -> Length:
    """How far the centers of two items must lie apart along a run, unless they do along the other.

    Round items count as the squares about them.
    """
    clearance = max(item.asked.clearance, other.asked.clearance)
    return item.half(run) + other.half(run) + clearance


def conflicts(item: PlacedItem, obstacles: Obstacles) -> tuple[ItemConflict, ...]:
    """Everything an item meets at its own place."""
    found = [
        ItemConflict(strip.meets, strip.id, run, _overlap(item, strip, run))
        for run, strips in obstacles.strips.items()
        for strip in strips
        if concerns(item, strip) and _meets(item, strip, run)
    ]
    for other in obstacles.items_about(item, item.x.value):
        overlaps = [(_too_close(item, other, run), run) for run in RunName]
        if all(overlap.value > ZERO for overlap, _ in overlaps):
            overlap, run = min(overlaps, key=lambda each: each[0].value)
            found.append(ItemConflict(Meets.ITEM, other.id, run, overlap))
    return tuple(found)


def _meets(item: PlacedItem, strip: Strip, run: RunName) -> bool:
    needed = needed_beside(item, strip)
    center, away = item.center(run), item.half(run) + needed
    if not strip.near - away < center < strip.far + away:
        return False
    across, beside = item.center(run.other), item.half(run.other) + needed
    return strip.is_there(across - beside, across + beside)


def _overlap(item: PlacedItem, strip: Strip, run: RunName) -> LengthFigure:
    center, half, clearance = item.center(run), item.half(run), needed_beside(item, strip)
    reach = min(center + half + clearance - strip.near, strip.far - (center - half - clearance))
    gives = OVERLAP.approximates if strip.approximate else OVERLAP.gives
    return gives(
        reach, center=center, half=half, clearance=clearance, near=strip.near, far=strip.far
    )


def _too_close(item: PlacedItem, other: PlacedItem, run: RunName) -> LengthFigure:
    center, other_center = item.center(run), other.center(run)
    clearance = max(item.asked.clearance, other.asked.clearance)
    return OVERLAP_OF_TWO.gives(
        apart(item, other, run) - abs(center - other_center),
        half=item.half(run),
        other_half=other.half(run),
        clearance=clearance,
        center=center,
        other_center=other_center,
    )


def items_clear(item: PlacedItem, at: Center, obstacles: Obstacles) -> bool:
    """Whether an item with its center somewhere else meets no other item."""
    x, y = at
    return not any(
        abs(x - other.x.value) < apart(item, other, RunName.LENGTH)
        and abs(y - other.y.value) < apart(item, other, RunName.WIDTH)
        for other in obstacles.items_about(item, x)
    )
