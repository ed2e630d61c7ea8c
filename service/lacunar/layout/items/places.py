"""Writes patterns of items out into items, each with its place."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.items.strips import sides_across
from lacunar.layout.names import from_to
from lacunar.layout.records import Coffer
from lacunar.layout.runs.frame import RunFrame
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model import limits
from lacunar.model.ceiling_items import Item, ItemKind, ItemPattern
from lacunar.model.faults import Fault
from lacunar.model.room import RunName

MIDDLE = Rule("middle of a coffer", "near + opening / 2")
OF_CORNERS = Rule("middle of a coffer: that of its four corners", "(one + two + three + four) / 4")
IN_GRID = Rule("place in a grid: the first, and the pitch for each after it", "first + n * pitch")

# Coffers have a letter and a number, so that an item's id has a hyphen between.
LETTERS = {
    ItemKind.LIGHT: "L",
    ItemKind.FAN: "F",
    ItemKind.DIFFUSER: "D",
    ItemKind.RETURN: "R",
    ItemKind.DETECTOR: "SD",
    ItemKind.SPRINKLER: "SP",
    ItemKind.SPEAKER: "SK",
    ItemKind.HATCH: "H",
}


@dataclass(frozen=True, slots=True)
class PlacedItem:
    """One item with its id, its place, and where it is in the spec."""

    id: str
    pointer: str
    asked: Item
    x: LengthFigure
    y: LengthFigure
    halves: tuple[Length, Length]

    def center(self, run: RunName) -> Length:
        """Its center along a run [length]."""
        return (self.x if run is RunName.LENGTH else self.y).value

    def half(self, run: RunName) -> Length:
        """Half its extent along a run [length]."""
        return self.halves[0 if run is RunName.LENGTH else 1]


def placed_items(
    items: Sequence[Item], coffers: Sequence[Coffer], frames: Mapping[RunName, RunFrame]
) -> tuple[PlacedItem, ...]:
    """Turn items and patterns into single items, numbered by kind in the order of the spec.

    Raises SpecRefused where there are too many, where a coffer is not there, or where one lies
    outside the room.
    """
    refuse(list(_too_many(items, len(coffers))))
    refuse(list(_not_there(items, coffers)))
    found: list[PlacedItem] = []
    numbers = dict.fromkeys(ItemKind, 0)
    for position, item in enumerate(items):
        length, width = item.extents
        halves = (length / 2, width / 2)
        for x, y in _places(item, coffers, frames):
            numbers[item.kind] += 1
            name = f"{LETTERS[item.kind]}-{numbers[item.kind]}"
            found.append(PlacedItem(name, f"/room/ceiling_items/{position}", item, x, y, halves))
    refuse(list(_outside(found, frames)))
    return tuple(found)


def _count(item: Item, coffers: int) -> int:
    if item.pattern is ItemPattern.COFFER_CENTERS:
        return len(item.coffers) or coffers
    return (item.columns or 1) * (item.rows or 1)


def _too_many(items: Sequence[Item], coffers: int) -> Iterator[Fault]:
    total = sum(_count(item, coffers) for item in items)
    if total > limits.ITEMS_IN_ALL:
        yield Fault(
            code="too_many_items",
            pointer="/room/ceiling_items",
            message="There are more ceiling items than are laid out on one ceiling.",
            remedy="Ask for fewer, or make several ceilings of it.",
            figures={"items": total, "most": limits.ITEMS_IN_ALL},
        )


def _not_there(items: Sequence[Item], coffers: Sequence[Coffer]) -> Iterator[Fault]:
    there = [coffer.id for coffer in coffers]
    for position, item in enumerate(items):
        for number, coffer in enumerate(item.coffers):
            if coffer not in there:
                yield Fault(
                    code="coffer_not_there",
                    pointer=f"/room/ceiling_items/{position}/coffers/{number}",
                    message="The grid has no such coffer.",
                    remedy=f"Name coffers that are whole: {from_to(there)}.",
                    figures={"coffer": coffer, "coffers": len(there)},
                )


def _places(
    item: Item, coffers: Sequence[Coffer], frames: Mapping[RunName, RunFrame]
) -> Iterator[tuple[LengthFigure, LengthFigure]]:
    if item.x is None or item.y is None:
        for coffer in coffers:
            if not item.coffers or coffer.id in item.coffers:
                yield _middle(coffer, RunName.LENGTH), _middle(coffer, RunName.WIDTH)
        return
    first_x, first_y = frames[RunName.LENGTH].place(item.x), frames[RunName.WIDTH].place(item.y)
    for row in range(item.rows or 1):
        for column in range(item.columns or 1):
            yield _after(first_x, column, item.length_pitch), _after(first_y, row, item.width_pitch)


def _middle(coffer: Coffer, run: RunName) -> LengthFigure:
    (near, near_above), (far, far_above) = sides_across(coffer, run)
    opening = coffer.length.value if run is RunName.LENGTH else coffer.width.value
    if near != near_above or far != far_above:
        places = {"one": near, "two": far, "three": far_above, "four": near_above}
        return OF_CORNERS.approximates(sum(places.values(), ZERO) / 4, **places)
    return MIDDLE.gives(near + opening / 2, near=near, opening=opening)


def _after(first: LengthFigure, number: int, pitch: Length | None) -> LengthFigure:
    if not number or pitch is None:
        return first
    place = first.value + pitch * number
    return IN_GRID.gives(place, first=first.value, n=number, pitch=pitch)


def _outside(items: Sequence[PlacedItem], frames: Mapping[RunName, RunFrame]) -> Iterator[Fault]:
    seen: set[str] = set()
    for item in items:
        for run, frame in frames.items():
            near, far = item.center(run) - item.half(run), item.center(run) + item.half(run)
            if (near >= ZERO and far <= frame.span.value) or item.pointer in seen:
                continue
            seen.add(item.pointer)
            yield Fault(
                code="item_outside_room",
                pointer=item.pointer,
                message=f"{item.id} does not lie between the walls of the {run} run.",
                remedy="Measure its center from the datum, the lower left corner of the plan, and"
                " check counts and pitches of a grid.",
                figures={"near": near, "far": far, "span": frame.span.value},
            )
