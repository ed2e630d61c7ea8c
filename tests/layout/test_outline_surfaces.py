"""Outlines measured to framing, and walls that bow."""

from fractions import Fraction
from typing import Any

import pytest
import shapely

from lacunar.layout.outline_records import OutlineWall
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.faults import SpecRefused
from tests.layout.laying_out import laid_out
from tests.layout.test_outlines import ELL, inch, outlined, room, sides

BAY = [(0, 0), (0, 160), (70, 160), (94, 184), (146, 184), (170, 160), (240, 160), (240, 0)]


def to_framing(outline: dict[str, Any], finish: Any, **more: Any) -> Layout:
    spec = room(outline, (5, 4))
    spec["room"] |= {"measured_to": "framing", "wall_finish": finish, **more}
    return laid_out(spec)


def walls_of(layout: Layout) -> dict[str, OutlineWall]:
    return {wall.wall: wall for wall in outlined(layout).walls}


def test_each_wall_takes_its_own_finish_in():
    """By hand: W1 1, W2 1/2, W3 3/4, W4 2; W5 looks as W3, W6 is told 5/8 of its own.

    W5 stood at 144 of the framing: 144 - 3/4 - 1. W6 at 108: 108 - 5/8 - 2. The room is 240 less
    1 and 3/4 long, 180 less 1/2 and 2 wide.
    """
    finish = {"W1": 1, "W2": "1/2", "W3": "3/4", "W4": 2}
    layout = to_framing({**ELL, "surfaces": [{"side": 4, "finish": "5/8"}]}, finish)
    walls = walls_of(layout)
    places = {name: wall.at.value for name, wall in walls.items() if wall.at}
    assert places["W5"] == inch("569/4")
    assert places["W6"] == inch("843/8")
    assert places["W3"] == inch("953/4")
    assert places["W2"] == inch("355/2")
    assert walls["W6"].finish == inch("5/8")


def test_a_room_to_framing_is_the_room_to_finish_less_its_finish():
    """Half an inch off all sides: an ell whose short sides at the notch keep their length."""
    framed = to_framing(ELL, "1/2")
    # 180 and 240 lose both ends' finish, as do 144 and 108; 72 and 96 gain one and lose one.
    smaller = {"sides": sides(179, 143, (72, 270), 96, 107, 239)}
    finish = laid_out(room(smaller, (5, 4)))
    assert framed.coffers == finish.coffers
    assert framed.pieces == finish.pieces


def test_places_are_taken_from_the_framing_they_were_measured_from():
    item = {"kind": "light", "diameter": 4, "x": 48, "y": 48}
    layout = to_framing(ELL, "1/2", ceiling_items=[item])
    (placed,) = layout.items.items
    assert placed.x.value == inch("95/2")
    assert placed.y.value == inch("95/2")


@pytest.mark.parametrize("finish", ["1/2", "5/8", 1])
def test_an_even_finish_is_shapely_s_inner_buffer_with_mitred_corners(finish: int | str):
    layout = to_framing({"points": [{"x": x, "y": y} for x, y in BAY]}, finish)
    inner = shapely.Polygon(BAY).buffer(-float(inch(finish).inches), join_style="mitre")
    found = shapely.Polygon([(float(p.x.inches), float(p.y.inches)) for p in layout.outline])
    moved = shapely.affinity.translate(found, *inner.bounds[:2])
    assert moved.symmetric_difference(inner).area == pytest.approx(0, abs=0.01)


def test_finish_that_leaves_nothing_of_a_side_is_refused():
    outline = {"sides": sides(180, 144, (72, 270), (2, 90), 2, (90, 270), 94, 106, 240)}
    points = [(0, 0), (0, 100), (100, 100), (100, 102), (101, 102), (101, 100), (200, 100)]
    outline = {"points": [{"x": x, "y": y} for x, y in [*points, (200, 0)]]}
    with pytest.raises(SpecRefused) as caught:
        to_framing(outline, "5/8")
    assert caught.value.faults[0].code == "outline_to_framing"
    assert caught.value.faults[0].figures["side"] == 4


def furthest(start: float, end: float, bow: float) -> float:
    """The highest place of a parabola, looked for along it."""
    ways = [n / 10000 for n in range(10001)]
    return max(start + (end - start) * way + bow * 4 * way * (1 - way) for way in ways)


def test_a_wall_that_bows_into_the_room_is_taken_at_its_furthest_place():
    """W3 leans in by 1/2 and bows 3/8 in: held against the parabola walked in small steps."""
    points = [(0, 0), (0, 160), ("239 1/2", 160), (240, 100), (260, 100), (260, 0)]
    outline = {
        "points": [{"x": x, "y": y} for x, y in points],
        "surfaces": [{"side": 3, "bow": {"in": "3/8"}}, {"side": 2, "bow": {"out": "1/4"}}],
    }
    walls = walls_of(laid_out(room(outline, (4, 3))))
    at = walls["W5"].at
    assert at is not None
    assert float(at.value.inches) == pytest.approx(240 - furthest(0.5, 0, 0.375), abs=1e-4)
    assert walls["W5"].scribe.value == inch("3/8")
    # W2 bows away from the room: nothing moves, and the board is wider by that.
    assert walls["W2"].at is not None
    assert walls["W2"].at.value == inch(160)
    assert walls["W2"].widest.value == inch("7/2") + inch("1/4")
    assert walls["W2"].bow == -Length.of_inches(Fraction(1, 4))


def test_an_angled_wall_that_bows_in_moves_by_what_it_bows():
    outline = {"points": [{"x": x, "y": y} for x, y in BAY]}
    straight = walls_of(laid_out(room(outline, (4, 3))))
    surfaces = [{"side": 3, "bow": {"in": "1/2"}}]
    bowed = walls_of(laid_out(room({**outline, "surfaces": surfaces}, (4, 3))))
    slanted = next(wall for wall in straight.values() if wall.side == 3)
    moved = next(wall for wall in bowed.values() if wall.side == 3)
    one, other = slanted.face_start, moved.face_start
    start, end = slanted.face_start, slanted.face_end
    assert one is not None
    assert other is not None
    assert start is not None
    assert end is not None
    line = shapely.LineString([(float(s.x.inches), float(s.y.inches)) for s in (start, end)])
    longer = shapely.affinity.scale(line, 3, 3)
    at = shapely.Point(float(other.x.inches), float(other.y.inches))
    assert longer.distance(at) == pytest.approx(0.5, abs=1e-3)
