"""The grid finds what comparing everything with everything finds, by another way of telling."""

from fractions import Fraction
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing.checker.overlaps import CELL, WRITTEN_TO, BoxGrid
from lacunar.drawing.checker.records import PenSeen, Ring
from lacunar.drawing.checker.shapes import Box, Spot, Stroke, encloses, farthest, nearest

# Quarters of a millimeter, so that things often touch, over several cells and either side of zero.
places = st.integers(-40, 160).map(lambda quarters: quarters / 4)
sizes = st.integers(1, 60).map(lambda quarters: quarters / 4)
boxes = st.builds(
    lambda left, top, width, height: Box(left, top, left + width, top + height),
    places,
    places,
    sizes,
    sizes,
)
spots = st.builds(Spot, places, places)
strokes = st.builds(Stroke, spots, spots, st.sampled_from((0.0, 0.25, 0.7)))


def shrunk(box: Box) -> Box:
    """What the grid takes for the inside of a box."""
    return box.grown(-WRITTEN_TO)


@given(st.lists(boxes, max_size=25))
def test_overlapping_pairs_are_those_whose_common_area_is_not_empty(several: list[Box]) -> None:
    def common(one: Box, other: Box) -> bool:
        one, other = shrunk(one), shrunk(other)
        width = min(one.right, other.right) - max(one.left, other.left)
        height = min(one.bottom, other.bottom) - max(one.top, other.top)
        return width > 0 and height > 0

    expected = {
        (first, second)
        for first, second in combinations(range(len(several)), 2)
        if common(several[first], several[second])
    }
    found = list(BoxGrid(several).overlapping_pairs())
    assert set(found) == expected
    assert len(found) == len(expected)


def separated(stroke: Stroke, box: Box) -> bool:
    """Whether some direction tells a line from a box, exactly: the separating-axis theorem.

    For a line and an upright box, directions along the two edges and across the line are enough.
    """
    line = [(Fraction(spot.x), Fraction(spot.y)) for spot in (stroke.start, stroke.end)]
    corners = [
        (Fraction(x), Fraction(y)) for x in (box.left, box.right) for y in (box.top, box.bottom)
    ]
    (x1, y1), (x2, y2) = line
    for dx, dy in ((1, 0), (0, 1), (y1 - y2, x2 - x1)):
        if not (dx or dy):
            continue
        own = [x * dx + y * dy for x, y in line]
        others = [x * dx + y * dy for x, y in corners]
        if max(own) <= min(others) or max(others) <= min(own):
            return True
    return False


@given(st.lists(boxes, max_size=25), strokes)
def test_crossed_boxes_are_those_no_direction_separates(several: list[Box], stroke: Stroke) -> None:
    expected = {
        number
        for number, box in enumerate(several)
        if not separated(stroke, shrunk(box).grown(stroke.width / 2))
    }
    assert BoxGrid(several).crossed_by(stroke) == expected


@given(st.lists(boxes, max_size=25), boxes)
def test_meeting_boxes_are_those_that_overlap(several: list[Box], area: Box) -> None:
    expected = {number for number, box in enumerate(several) if shrunk(box).overlaps(area)}
    assert BoxGrid(several).meeting(area) == expected


@given(boxes, spots, st.integers(1, 80).map(lambda quarters: quarters / 4))
def test_a_circle_touches_a_box_if_one_place_of_it_is_nearer_and_one_farther(
    box: Box, center: Spot, radius: float
) -> None:
    """Distances found again by looking at the edges, eighth by eighth, and not by clamping."""
    steps = range(481)
    edge = [
        Spot(box.left + (box.right - box.left) * step / 480, y)
        for step in steps
        for y in (box.top, box.bottom)
    ] + [
        Spot(x, box.top + (box.bottom - box.top) * step / 480)
        for step in steps
        for x in (box.left, box.right)
    ]
    distances = [((x - center.x) ** 2 + (y - center.y) ** 2) ** 0.5 for x, y in edge]
    inside = box.left <= center.x <= box.right and box.top <= center.y <= box.bottom
    assert abs(nearest(box, center) - (0.0 if inside else min(distances))) < 0.02
    assert abs(farthest(box, center) - max(distances)) < 1e-9
    ring = Ring(center, radius, PenSeen("fine", 0.25, (), "black"), "none", -1, 0)
    assert ring.touches(box) is (nearest(box, center) < radius < farthest(box, center))


def test_boxes_over_many_cells_are_found_once() -> None:
    large = Box(0, 0, 20 * CELL, 20 * CELL)
    grid = BoxGrid([large, large])
    assert list(grid.overlapping_pairs()) == [(0, 1)]
    assert grid.crossed_by(Stroke(Spot(-10, 5), Spot(500, 5), 0.25)) == {0, 1}


@given(st.lists(spots, min_size=3, max_size=8), spots)
def test_an_outline_encloses_the_places_it_winds_around_an_odd_number_of_times(
    corners: list[Spot], spot: Spot
) -> None:
    """Told again by counting crossings of a slanted ray that meets no corner, exactly."""
    # Corners lie on quarters; a place a little off them, and a slope none of them has.
    spot = Spot(spot.x + 1 / 16, spot.y + 1 / 32)
    far_x, far_y = Fraction(spot.x) + 1000, Fraction(spot.y) + Fraction(1000, 997)

    def side(a: tuple[Fraction, Fraction], b: tuple[Fraction, Fraction], c: Spot) -> Fraction:
        return (b[0] - a[0]) * (Fraction(c.y) - a[1]) - (b[1] - a[1]) * (Fraction(c.x) - a[0])

    start, end = (Fraction(spot.x), Fraction(spot.y)), (far_x, far_y)
    crossings = 0
    for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
        first, last = ((Fraction(c.x), Fraction(c.y)) for c in (one, other))
        across = (side(start, end, one) > 0) != (side(start, end, other) > 0)
        far = Spot(float(far_x), float(far_y))
        beyond = (side(first, last, spot) > 0) != (side(first, last, far) > 0)
        crossings += across and beyond
    assert encloses(corners, spot) is bool(crossings % 2)
