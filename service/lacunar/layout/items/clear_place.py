"""The nearest place at which an item meets nothing, and the margins that prove it."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from lacunar.layout.item_records import ClearPlace, Meets
from lacunar.layout.items.conflicts import (
    Center,
    Obstacles,
    apart,
    concerns,
    items_clear,
    keep_out,
    needed_beside,
)
from lacunar.layout.items.places import PlacedItem
from lacunar.layout.items.strips import ClearStretches, clear_stretches
from lacunar.layout.records import Coffer
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot
from lacunar.measure.polygon import contains
from lacunar.model.room import RunName

MOVE = Rule("from an item's place to the nearest clear one", "clear - place")


def nearest_clear(
    item: PlacedItem,
    obstacles: Obstacles,
    spans: Mapping[RunName, Length],
    coffers: Sequence[Coffer],
) -> ClearPlace | None:
    """Turn an item that meets something into the nearest place at which it meets nothing.

    Nearest in a straight line; of places equally near the one nearer along the length run, then
    the one next the datum. What must be kept out of reaches across the whole room along one run or
    the other, but for other items, which are rectangles. So the clear region is made of rectangles
    whose sides pass through known edges, and the nearest of its places has, along each run, the
    item's own place or one of these edges. Those along the length run are tried in the order of
    their distance, each with the nearest place along the other that is clear there. None where
    there is none.
    """
    stretches = {
        run: clear_stretches(keep_out(item, obstacles.strips[run], run), spans[run])
        for run in RunName
    }
    best = _beside_strips(item, stretches)
    if best is not None and not items_clear(item, best, obstacles):
        best = _past_items(item, obstacles, stretches, spans[RunName.WIDTH])
    return None if best is None else _proved(item, best, obstacles, coffers)


def _beside_strips(item: PlacedItem, stretches: Mapping[RunName, ClearStretches]) -> Center | None:
    x = stretches[RunName.LENGTH].nearest(item.x.value)
    y = stretches[RunName.WIDTH].nearest(item.y.value)
    return None if x is None or y is None else (x, y)


def _past_items(
    item: PlacedItem,
    obstacles: Obstacles,
    stretches: Mapping[RunName, ClearStretches],
    span: Length,
) -> Center | None:
    """The nearest place clear of strips and items; `span` is the width run's."""
    best: Center | None = None
    for x in _candidates(item, obstacles, stretches[RunName.LENGTH], RunName.LENGTH):
        if best is not None and nearness(item, (x, item.y.value)) > nearness(item, best):
            break
        y = _beside_items(item, x, obstacles, span).nearest(item.y.value)
        if y is not None:
            places = [(x, y)] if best is None else [(x, y), best]
            best = min(places, key=lambda place: nearness(item, place))
    return best


def _beside_items(
    item: PlacedItem, x: Length, obstacles: Obstacles, span: Length
) -> ClearStretches:
    """Where an item may be along the width run if it is at `x` along the other."""
    blocked = keep_out(item, obstacles.strips[RunName.WIDTH], RunName.WIDTH)
    for other in obstacles.items_about(item, x):
        if abs(x - other.x.value) < apart(item, other, RunName.LENGTH):
            away = apart(item, other, RunName.WIDTH)
            blocked.append((other.y.value - away, other.y.value + away))
    return clear_stretches(blocked, span)


def nearness(item: PlacedItem, place: Center) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """What decides between places: the distance, that along the length run, nearer the datum."""
    dx, dy = (place[0] - item.x.value).inches, (place[1] - item.y.value).inches
    return dx * dx + dy * dy, abs(dx), place[0].inches, place[1].inches


def _candidates(
    item: PlacedItem, obstacles: Obstacles, clear: ClearStretches, run: RunName
) -> list[Length]:
    """Places along a run the nearest clear one can have, nearest first."""
    place = item.center(run)
    found = set(clear.edges_by_distance(place))
    for other in obstacles.items:
        if other.id != item.id:
            away, middle = apart(item, other, run), other.center(run)
            found.update(each for each in (middle - away, middle + away) if clear.holds(each))
    return sorted(found, key=lambda each: (abs(each - place), each))


def _proved(
    item: PlacedItem, at: Center, obstacles: Obstacles, coffers: Sequence[Coffer]
) -> ClearPlace:
    """A clear place with its margins, each measured from what is there and not from the search."""
    beams, joists = (strip_margin(item, at, obstacles, joists) for joists in (False, True))
    items = item_margin(item, at, obstacles)
    coffer = coffer_at(at, coffers)
    margins = [each for each in (beams, joists, items) if each is not None]
    if beams is None or coffer is None or any(margin < ZERO for margin in margins):
        raise AssertionError(f"{item.id} is not clear at {at}")
    x, y = at
    rounded = any(strip.approximate for each in obstacles.strips.values() for strip in each)
    return ClearPlace(
        x=x,
        y=y,
        coffer=coffer,
        move_x=move(x, item.x.value, rounded),
        move_y=move(y, item.y.value, rounded),
        beam_margin=beams,
        joist_margin=joists,
        item_margin=items,
    )


def move(clear: Length, place: Length, rounded: bool) -> LengthFigure:
    """A move; one that leads anywhere may rest on mouldings whose sizes are rounded."""
    gives = MOVE.approximates if rounded and clear != place else MOVE.gives
    return gives(clear - place, clear=clear, place=place)


def strip_margin(item: PlacedItem, at: Center, obstacles: Obstacles, joists: bool) -> Length | None:
    """What is left free to the nearest strip, beyond what must be; None where there is no strip."""
    return min(
        (
            max(strip.near - place, place - strip.far) - item.half(run) - needed_beside(item, strip)
            for run, place in zip(RunName, at, strict=True)
            for strip in obstacles.strips[run]
            if concerns(item, strip) and (strip.meets is Meets.JOIST) is joists
        ),
        default=None,
    )


def item_margin(item: PlacedItem, at: Center, obstacles: Obstacles) -> Length | None:
    """What is left free to the nearest other item; None where there is no other."""
    x, y = at
    least: Length | None = None
    for along, other in obstacles.outward_from(x):
        # Those farther along are at least as far off as this one would be if it were the largest.
        if least is not None and along - obstacles.most_apart(item) >= least:
            break
        if other.id != item.id:
            free = max(
                along - apart(item, other, RunName.LENGTH),
                abs(y - other.y.value) - apart(item, other, RunName.WIDTH),
            )
            least = free if least is None else min(least, free)
    return least


def coffer_at(at: Center, coffers: Sequence[Coffer]) -> str | None:
    """The coffer a place lies in, its sides included; None on a beam."""
    x, y = at
    return next(
        (
            coffer.id
            for coffer in coffers
            if contains([Spot(corner.x, corner.y) for corner in coffer.corners], Spot(x, y))
        ),
        None,
    )
