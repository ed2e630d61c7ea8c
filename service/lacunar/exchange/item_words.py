"""Ceiling items and wall features in sentences."""

from collections.abc import Callable, Iterator

from lacunar.layout.item_records import (
    CeilingItem,
    CountSearch,
    ItemLayout,
    WallFeatureCheck,
)
from lacunar.measure.figure import CountFigure, LengthFigure
from lacunar.measure.length import Length

Lines = Iterator[str]
Tell = Callable[[str, LengthFigure | CountFigure], str]


def items_in_words(items: ItemLayout, tell: Tell, length: Callable[[Length], str]) -> Lines:
    """Turn items into lines; `tell` words a figure with its label, `length` a length alone."""
    for item in items.items:
        yield from _item(item, tell, length)
    for search in items.counts_clear_of_fixed:
        yield from _search(search, tell)


def _item(item: CeilingItem, tell: Tell, length: Callable[[Length], str]) -> Lines:
    where = f"in {item.coffer}" if item.coffer else "on a beam"
    yield tell(f"{item.id}, a {item.kind} {where}, along the length", item.x)
    yield tell(f"{item.id}, along the width", item.y)
    if item.clear_height is not None:
        yield tell(f"Clear height below {item.id}", item.clear_height)
    for each in item.conflicts:
        yield tell(f"{item.id} meets {each.meets} {each.id}, along the {each.along}", each.overlap)
    clear = item.nearest_clear
    if clear is not None:
        yield tell(f"{item.id}, move along the length to the nearest clear place", clear.move_x)
        yield tell(f"{item.id}, move along the width to the nearest clear place", clear.move_y)
        place = f"{length(clear.x)} along the length and {length(clear.y)} along the width"
        yield (
            f"{item.id} is clear at {place}, in {clear.coffer}, with {length(clear.beam_margin)} to"
            " spare at beams, mouldings and walls."
        )
    elif item.conflicts:
        yield f"{item.id}: no place on the ceiling is clear."


def _search(search: CountSearch, tell: Tell) -> Lines:
    counts = ", ".join(str(each.coffers) for each in search.clear) or "none"
    yield (
        f"Counts along the {search.run} run that keep beams clear of fixed items, of those from"
        f" {search.fewest} to {search.most}: {counts}."
    )
    for each in search.clear:
        label = f"With {each.coffers} coffers along the {search.run} run"
        yield tell(f"{label}, smallest opening", each.smallest_opening)
        yield tell(f"{label}, largest opening", each.largest_opening)
        if each.pitch is not None:
            yield tell(f"{label}, from center to center", each.pitch)


def feature_in_words(check: WallFeatureCheck, tell: Tell) -> Lines:
    """A wall feature, what it is centered on, and the beams that end over it."""
    label = f"{check.name} at {check.wall}"
    yield tell(f"{label}, near edge", check.near)
    yield tell(f"{label}, far edge", check.far)
    yield tell(f"{label}, to the middle of {check.on} over it", check.off_center)
    for beam in check.beams:
        how = beam.meeting.replace("_", " ")
        yield tell(f"{beam.beam} ends {how} of {check.name}, off its center", beam.offset)
        yield tell(f"{beam.beam} past the nearer edge of {check.name}", beam.past_edge)
        if beam.over_head is not None:
            yield tell(f"{beam.beam} above the head of {check.name}", beam.over_head)
    for beam_id in check.along_wall:
        yield f"{beam_id} hangs lower than the head of {check.name}."
