"""Items in a room with other than four walls: what they meet there, and where they would not.

Sides of coffers lie any way there, so what is beside them is not a strip from wall to wall: each
side has a band, as deep as what stands out along it, and all that is reckoned with is such bands,
joists and other items, as convex polygons.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.item_records import ClearPlace, ItemConflict, Meets
from lacunar.layout.items.clear_place import item_margin, move, nearness, strip_margin
from lacunar.layout.items.conflicts import Obstacles, apart, concerns
from lacunar.layout.items.places import PlacedItem
from lacunar.layout.items.strips import BuiltCeiling, OddCoffer
from lacunar.layout.mouldings.pieces import flats_at, standing_out
from lacunar.layout.records import profiles_by_beam
from lacunar.measure.convex import Gap, gap_along, gap_to_box, grown, stretch_inside
from lacunar.measure.figure import Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, crossing, moved_left, settled, turn
from lacunar.measure.polygon import (
    Line,
    Polygon,
    box_of,
    contains,
    edges,
    extent,
    lies_on,
    off_squared,
)
from lacunar.model.moulding import FlatPlace
from lacunar.model.room import RunName

OVERLAP_ASLANT = Rule(
    "how far along the run an item would have to move to be clear of what lies aslant: half its"
    " size and the clearance, and what is between its center and there",
    "needed - between",
)


NEAREST = 10
"""So many other items' edges are gone along at most in search of a clear place."""


@dataclass(frozen=True, slots=True)
class Band:
    """What stands out along a side of a coffer, as a polygon, or a column.

    `by_strip` is whether a strip tells of it too, from wall to wall or as far as a beam stands.
    """

    meets: Meets
    id: str
    polygon: Polygon
    approximate: bool
    by_strip: bool = False


@dataclass(frozen=True, slots=True)
class OddCeiling:
    """The coffers with the bands of their sides, a band as thin as its side where nothing stands.

    Columns are bands of the coffers that they cut.
    """

    coffers: tuple[OddCoffer, ...]
    bands: Mapping[str, tuple[Band, ...]]


def odd_ceiling(built: BuiltCeiling, crown_reach: Length) -> OddCeiling:
    """Turn what has been set out in an odd room into its coffers and their bands.

    `crown_reach` is how far mouldings at the ceiling stand out from a coffer's side.
    """
    coffers, columns = (built.odd.coffers, built.odd.columns) if built.odd else ((), {})
    profiles = profiles_by_beam(built.profiles)
    edge = standing_out(flats_at(FlatPlace.BOTTOM_EDGE, built.flats))
    stands_out = {beam: profile.overhang + edge for beam, profile in profiles.items()}
    solids = {name: Band(Meets.COLUMN, name, corners, False) for name, corners in columns.items()}
    bands = {}
    for coffer in coffers:
        cut = dict.fromkeys(side.against for side in coffer.sides if side.against in solids)
        beside = _bands(coffer, stands_out, crown_reach)
        bands[coffer.id] = (*beside, *(solids[name] for name in cut))
    return OddCeiling(coffers, bands)


def _bands(
    coffer: OddCoffer, stands_out: Mapping[str, Length], crown_reach: Length
) -> Iterator[Band]:
    """Along each side the deepest of what stands out there, mitred round corners that jut in."""
    first = 0
    for ring in coffer.rings:
        sides = coffer.sides[first : first + len(ring)]
        first += len(ring)
        depths = [max(stands_out.get(side.against, ZERO), crown_reach) for side in sides]
        lines = [moved_left(side.line, deep) for side, deep in zip(sides, depths, strict=True)]
        for at, (side, deep) in enumerate(zip(sides, depths, strict=True)):
            after = (at + 1) % len(sides)
            inner = (
                _corner((sides[at - 1].line, side.line), (lines[at - 1], lines[at]), lines[at][0]),
                _corner((side.line, sides[after].line), (lines[at], lines[after]), lines[at][1]),
            )
            by_crown = bool(crown_reach) and deep == crown_reach
            meets, name = (Meets.MOULDING, "crown") if by_crown else (side.meets, side.against)
            corners: Polygon = (*side.line, inner[1], inner[0]) if deep else side.line
            rough = any(_is_long(spot) for spot in corners)
            by_strip = is_square(side.line) and meets in (Meets.BEAM, Meets.WALL)
            corners = tuple(map(_on_grid, corners)) if rough else corners
            yield Band(meets, name, corners, rough, by_strip)


def _corner(sides: tuple[Line, Line], moved: tuple[Line, Line], square: Spot) -> Spot:
    """The inner corner of a band: where both lines meet if the corner juts in, else square off."""
    (one, other), (first, second) = sides, moved
    juts_in = turn(one[1] - one[0], other[1] - other[0]) < 0
    return crossing(first, second) if juts_in else square


def _is_long(spot: Spot) -> bool:
    return settled(spot.x).approximate or settled(spot.y).approximate


def _on_grid(spot: Spot) -> Spot:
    return Spot(settled(spot.x).length, settled(spot.y).length)


def aslant_conflicts(item: PlacedItem, odd: OddCeiling) -> Iterator[ItemConflict]:
    """What an item meets that no strip tells: mouldings, columns, and sides that lie aslant."""
    center = Spot(item.x.value, item.y.value)
    told: set[tuple[Meets, str]] = set()
    for coffer in odd.coffers:
        if not _in_reach(item, center, coffer):
            continue
        for band in odd.bands[coffer.id]:
            if band.by_strip or (band.meets, band.id) in told:
                continue
            gap = gap_to_box(band.polygon, center, _needed(item))
            if gap.room < 0:
                told.add((band.meets, band.id))
                yield _conflict(item, band, gap)


def outside_conflict(item: PlacedItem, odd: OddCeiling) -> ItemConflict | None:
    """What an item lies beyond whose middle is in no coffer, and which meets nothing: a wall."""
    center = Spot(item.x.value, item.y.value)
    aslant = [side for coffer in odd.coffers for side in coffer.sides if not is_square(side.line)]
    if not aslant:
        return None
    side = min(aslant, key=lambda each: off_squared(each.line, center))
    way = side.line[1] - side.line[0]
    gap = gap_along(Spot(way.y, -way.x), side.line, center, _needed(item))
    return _conflict(item, Band(side.meets, side.against, side.line, approximate=False), gap)


def is_square(line: Line) -> bool:
    """Whether a line lies along one of the runs."""
    return line[0].x == line[1].x or line[0].y == line[1].y


def _in_reach(item: PlacedItem, center: Spot, coffer: OddCoffer) -> bool:
    away = Spot(*_needed(item))
    return _overlap((center - away, center + away), extent(coffer.rings[0]))


def _needed(item: PlacedItem) -> tuple[Length, Length]:
    """Half an item's sizes, and the clearance beyond."""
    across, up = item.halves
    return across + item.asked.clearance, up + item.asked.clearance


def _conflict(item: PlacedItem, band: Band, gap: Gap) -> ItemConflict:
    """The conflict along the run that the way apart lies along most nearly."""
    x, y = abs(gap.way.x.inches), abs(gap.way.y.inches)
    run, slope = (RunName.LENGTH, x) if x >= y else (RunName.WIDTH, y)
    needed, between = (settled(Length.of_inches(each / slope)) for each in (gap.reach, gap.apart))
    rough = band.approximate or needed.approximate or between.approximate
    tell = OVERLAP_ASLANT.approximates if rough else OVERLAP_ASLANT.gives
    figure = tell(needed.length - between.length, needed=needed.length, between=between.length)
    return ItemConflict(band.meets, band.id, run, figure)


def nearest_clear_place(
    item: PlacedItem, obstacles: Obstacles, odd: OddCeiling
) -> ClearPlace | None:
    """Turn an item that meets something into the nearest place at which it meets nothing.

    The middle of an item has to keep out of each polygon grown by half the item. So the nearest
    place it may have lies on an edge of one of these: each is gone along, the nearest edges first,
    past the stretches of it that lie in others. Ties go as elsewhere. In a crowd only edges of the
    nearest other items are gone along, so that the place told is clear of all, and may not be the
    very nearest.
    """
    place = item.x.value, item.y.value
    best: tuple[Length, Length] | None = None
    found = ""
    for coffer in sorted(odd.coffers, key=lambda each: _off(each, Spot(*place))):
        if best is not None and _off(coffer, Spot(*place)) > nearness(item, best)[0]:
            break
        at = _in_coffer(item, obstacles, odd, coffer)
        if at is not None and (best is None or nearness(item, at) < nearness(item, best)):
            best, found = at, coffer.id
    return None if best is None else _proved(item, best, obstacles, (odd, found))


def _off(coffer: OddCoffer, spot: Spot) -> Fraction:
    """The square of how far a place is from a coffer [in2]."""
    if contains(coffer.rings[0], spot):
        return Fraction(0)
    return min(off_squared(line, spot) for line in edges(coffer.rings[0]))


def _in_coffer(
    item: PlacedItem, obstacles: Obstacles, odd: OddCeiling, coffer: OddCoffer
) -> tuple[Length, Length] | None:
    own = Spot(item.x.value, item.y.value)
    sides, others = _keep_out(item, obstacles, odd, coffer)
    keep_out = _Crowd.of([*sides, *others])
    best: Spot | None = None
    nearest = sorted(others, key=lambda box: _off_center(box, own))[:NEAREST]
    lines = [line for polygon in (*sides, *nearest) for line in edges(polygon)]
    for line in sorted(lines, key=lambda each: off_squared(each, own)):
        if best is not None and off_squared(line, own) > _nearness(item, best)[0]:
            break
        for at in _clear_on(line, own, keep_out.about(line)):
            if is_in(coffer, at) and (best is None or _nearness(item, at) < _nearness(item, best)):
                best = at
    return None if best is None else (best.x, best.y)


def _nearness(item: PlacedItem, at: Spot) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    return nearness(item, (at.x, at.y))


def is_in(coffer: OddCoffer, at: Spot) -> bool:
    """Whether a place lies in a coffer, its sides included."""
    outer, *holes = coffer.rings
    return contains(outer, at) and not any(_is_inside(hole, at) for hole in holes)


def _is_inside(hole: Polygon, at: Spot) -> bool:
    return contains(hole, at) and not any(lies_on(line, at) for line in edges(hole))


def _off_center(box: Polygon, own: Spot) -> Fraction:
    out = (box[0] + box[2]) * Fraction(1, 2) - own
    return along(out, out)


@dataclass(frozen=True, slots=True)
class _Crowd:
    """Polygons in the order of their left ends, by which those about a line are found soon."""

    polygons: tuple[tuple[Line, Polygon], ...]
    widest: Length

    @classmethod
    def of(cls, polygons: Sequence[Polygon]) -> "_Crowd":
        """Polygons in any order."""
        boxed = [(extent(each), each) for each in polygons]
        boxed.sort(key=lambda each: each[0][0].x)
        return cls(tuple(boxed), max((box[1].x - box[0].x for box, _ in boxed), default=ZERO))

    def about(self, line: Line) -> list[Polygon]:
        """Those that may lie on a line."""
        low, high = extent(line)
        first = bisect_left(self.polygons, low.x - self.widest, key=_left)
        last = bisect_right(self.polygons, high.x, key=_left)
        return [
            polygon
            for box, polygon in self.polygons[first:last]
            if low.x <= box[1].x and box[0].y <= high.y and low.y <= box[1].y
        ]


def _left(boxed: tuple[Line, Polygon]) -> Length:
    return boxed[0][0].x


def _keep_out(
    item: PlacedItem, obstacles: Obstacles, odd: OddCeiling, coffer: OddCoffer
) -> tuple[list[Polygon], list[Polygon]]:
    """What an item's middle must keep out of in a coffer, without edges: what is built, items."""
    box = extent(coffer.rings[0])
    built = [grown(band.polygon, _needed(item)) for band in odd.bands[coffer.id]]
    built += _joists_in(item, obstacles, box)
    found: list[Polygon] = []
    for other in obstacles.items:
        away = Spot(*(apart(item, other, run) for run in RunName))
        at = Spot(other.x.value, other.y.value)
        if other.id != item.id and _overlap((at - away, at + away), box):
            found.append(box_of(at - away, at + away))
    return built, found


def _joists_in(item: PlacedItem, obstacles: Obstacles, box: Line) -> Iterator[Polygon]:
    """The joists over a coffer, where an item goes up between them."""
    low, high = box
    for run, strips in obstacles.strips.items():
        for strip in strips:
            near, far = Spot(strip.near, low.y), Spot(strip.far, high.y)
            if run is RunName.WIDTH:
                near, far = Spot(low.x, strip.near), Spot(high.x, strip.far)
            is_joist = strip.meets is Meets.JOIST and concerns(item, strip)
            if is_joist and _overlap((near, far), box):
                yield grown(box_of(near, far), item.halves)


def _overlap(one: Line, other: Line) -> bool:
    """Whether two upright boxes, by their lower left and upper right corners, share a place."""
    return (
        one[0].x < other[1].x
        and other[0].x < one[1].x
        and one[0].y < other[1].y
        and other[0].y < one[1].y
    )


def _clear_on(line: Line, own: Spot, keep_out: Sequence[Polygon]) -> Iterator[Spot]:
    """The nearest places on a line, either way, that lie inside no polygon."""
    way = line[1] - line[0]
    nearest = max(Fraction(0), min(Fraction(1), along(way, own - line[0]) / along(way, way)))
    blocked = sorted(s for polygon in keep_out if (s := stretch_inside(line, polygon)))
    before = after = nearest
    for low, high in blocked:
        if low < after < high:
            after = high
    for low, high in sorted(blocked, key=lambda each: each[1], reverse=True):
        if low < before < high:
            before = low
    yield from (line[0] + way * share for share in {before, after} if 0 <= share <= 1)


def _proved(
    item: PlacedItem,
    at: tuple[Length, Length],
    obstacles: Obstacles,
    where: tuple[OddCeiling, str],
) -> ClearPlace:
    """A clear place with its margins, each measured from what is there and not from the search."""
    odd, coffer = where
    center = Spot(*at)
    rooms = [gap_to_box(band.polygon, center, _needed(item)).room for band in odd.bands[coffer]]
    sides = settled(Length.of_inches(min(rooms)))
    joists, items = strip_margin(item, at, obstacles, joists=True), item_margin(item, at, obstacles)
    rough = any(band.approximate for band in odd.bands[coffer]) or sides.approximate
    if min(rooms) < 0 or any(each is not None and each < ZERO for each in (joists, items)):
        raise AssertionError(f"{item.id} is not clear at {at}")
    (x, x_rough), (y, y_rough) = ((s.length, s.approximate) for s in map(settled, at))
    return ClearPlace(
        x=x,
        y=y,
        coffer=coffer,
        move_x=move(x, item.x.value, rough or x_rough),
        move_y=move(y, item.y.value, rough or y_rough),
        beam_margin=sides.length,
        joist_margin=joists,
        item_margin=items,
    )
