"""Polygons cut and joined: held against shapely, which does the same with floating numbers."""

from random import Random

import pytest
import shapely

from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.measure.polygon import (
    Polygon,
    area,
    box_of,
    contains,
    inner_spot,
    is_simple,
    joined,
    left_of,
    within_box,
    without_idle_corners,
)

CASES = 300


def at(x: int, y: int) -> Spot:
    return Spot(Length.of_inches(x), Length.of_inches(y))


def skyline(random: Random) -> Polygon:
    """A floor with towers of random heights on it: many corners that jut in, all upright."""
    places = [0, *sorted(random.sample(range(2, 60), 7)), 62]
    corners = [(0, 0), (62, 0)]
    for left, right in zip(places[-2::-1], places[:0:-1], strict=True):
        height = random.randint(5, 30)
        corners += [(right, height), (left, height)]
    return without_idle_corners([at(*corner) for corner in corners])


def known(polygon: Polygon) -> shapely.Polygon:
    return shapely.Polygon([(float(s.x.inches), float(s.y.inches)) for s in polygon])


@pytest.mark.parametrize("seed", range(5))
def test_both_sides_of_a_line_make_up_the_whole(seed: int):
    random = Random(seed)
    for _ in range(CASES):
        whole = skyline(random)
        one, other = (at(random.randint(0, 62), random.randint(0, 30)) for _ in range(2))
        if one == other:
            continue
        parts = (*left_of(whole, (one, other)), *left_of(whole, (other, one)))
        assert sum(map(area, parts)) == area(whole)
        assert all(is_simple(part) and area(part) > 0 for part in parts)
        assert all(contains(whole, inner_spot(part)) for part in parts)
        (again,) = joined(parts)
        assert again.area == area(whole)
        assert not again.holes


@pytest.mark.parametrize("seed", range(5))
def test_what_lies_in_a_rectangle_is_what_shapely_finds(seed: int):
    random = Random(100 + seed)
    for _ in range(CASES):
        whole = skyline(random)
        x, y = random.randint(0, 40), random.randint(0, 20)
        right, top = x + random.randint(1, 20), y + random.randint(1, 15)
        parts = within_box(whole, at(x, y), at(right, top))
        expected = known(whole).intersection(shapely.box(x, y, right, top))
        pieces = [each for each in getattr(expected, "geoms", [expected]) if each.area > 0]
        assert float(sum(map(area, parts))) == pytest.approx(expected.area)
        assert len(parts) == len(pieces)


def test_a_ring_of_rectangles_has_a_hole():
    ring = [
        box_of(at(0, 0), at(6, 2)),
        box_of(at(0, 4), at(6, 6)),
        box_of(at(0, 2), at(2, 4)),
        box_of(at(4, 2), at(6, 4)),
    ]
    (one,) = joined(ring)
    assert len(one.holes) == 1
    assert one.area == 36 - 4  # 6 x 6 without 2 x 2 in its middle


@pytest.mark.parametrize(
    ("corners", "simple"),
    [
        ([(0, 0), (4, 0), (4, 4), (0, 4)], True),
        ([(0, 0), (4, 4), (4, 0), (0, 4)], False),  # two edges cross
        ([(0, 0), (4, 0), (2, 0), (2, 3)], False),  # an edge lies back on another
        ([(0, 0), (4, 0), (4, 4), (2, 0), (0, 4)], False),  # a corner lies on an edge
        ([(0, 0), (4, 0)], False),
    ],
)
def test_simple_outlines_are_told_from_others(corners: list[tuple[int, int]], simple: bool):
    assert is_simple([at(*corner) for corner in corners]) is simple
