"""The nearest place at which an item meets nothing, and the margins that prove it."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from heapq import heappop, heappush

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
    item's own place or one of these edges. Those are tried in the order of their distance, and
    the first that is clear is the nearest. None where there is none.
    """
    stretches = {
        run: clear_stretches(keep_out(item, obstacles.strips[run], run), spans[run])
        for run in RunName
    }
    best = _beside_strips(item, stretches)
    if best is not None and not items_clear(item, best, obstacles):
        best = _past_items(item, obstacles, stretches)
    return None if best is None else _proved(item, best, obstacles, coffers)


def _beside_strips(item: PlacedItem, stretches: Mapping[RunName, ClearStretches]) -> Center | None:
    x = stretches[RunName.LENGTH].nearest(item.x.value)
    y = stretches[RunName.WIDTH].nearest(item.y.value)
    return None if x is None or y is None else (x, y)


def _past_items(
    item: PlacedItem, obstacles: Obstacles, stretches: Mapping[RunName, ClearStretches]
) -> Center | None:
    xs, ys = (_candidates(item, obstacles, stretches[run], run) for run in RunName)
    for place in _by_distance(item, xs, ys):
        if items_clear(item, place, obstacles):
            return place
    return None


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


def _by_distance(item: PlacedItem, xs: list[Length], ys: list[Length]) -> Iterator[Center]:
    """Every pair of candidates, nearest to the item first, without making all of them."""
    if not xs or not ys:
        return

    def key(i: int, j: int) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        dx, dy = (xs[i] - item.x.value).inches, (ys[j] - item.y.value).inches
        return dx * dx + dy * dy, abs(dx), xs[i].inches, ys[j].inches

    waiting = [(key(0, 0), 0, 0)]
    while waiting:
        _, i, j = heappop(waiting)
        yield xs[i], ys[j]
        if j + 1 < len(ys):
            heappush(waiting, (key(i, j + 1), i, j + 1))
        if j == 0 and i + 1 < len(xs):
            heappush(waiting, (key(i + 1, 0), i + 1, 0))


def _proved(
    item: PlacedItem, at: Center, obstacles: Obstacles, coffers: Sequence[Coffer]
) -> ClearPlace:
    """A clear place with its margins, each measured from what is there and not from the search."""
    beams, joists = (_strip_margin(item, at, obstacles, joists) for joists in (False, True))
    items = _item_margin(item, at, obstacles)
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
        move_x=_move(x, item.x.value, rounded),
        move_y=_move(y, item.y.value, rounded),
        beam_margin=beams,
        joist_margin=joists,
        item_margin=items,
    )


def _move(clear: Length, place: Length, rounded: bool) -> LengthFigure:
    """A move; one that leads anywhere may rest on mouldings whose sizes are rounded."""
    gives = MOVE.approximates if rounded and clear != place else MOVE.gives
    return gives(clear - place, clear=clear, place=place)


def _strip_margin(
    item: PlacedItem, at: Center, obstacles: Obstacles, joists: bool
) -> Length | None:
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


def _item_margin(item: PlacedItem, at: Center, obstacles: Obstacles) -> Length | None:
    x, y = at
    return min(
        (
            max(
                abs(x - other.x.value) - apart(item, other, RunName.LENGTH),
                abs(y - other.y.value) - apart(item, other, RunName.WIDTH),
            )
            for other in obstacles.items
            if other.id != item.id
        ),
        default=None,
    )


def coffer_at(at: Center, coffers: Sequence[Coffer]) -> str | None:
    """The coffer a place lies in, its sides included; None on a beam."""
    x, y = at
    return next(
        (
            coffer.id
            for coffer in coffers
            if coffer.corners[0].x <= x <= coffer.corners[2].x
            and coffer.corners[0].y <= y <= coffer.corners[2].y
        ),
        None,
    )
