"""Walls are drawn about any simple outline: L-shaped, with a bay, with corners that turn inward."""

import json
from dataclasses import replace
from math import hypot

import pytest

from lacunar.drawing.elements import Group, Polyline, Pt, Segments
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.plan.walls import wall_groups, walls_of
from lacunar.layout.records import Point
from lacunar.measure.length import Length
from lacunar.workflow.prepare import prepare

RATIO = 48
OUTLINES = {
    "rectangle": ((0, 0), (240, 0), (240, 180), (0, 180)),
    "crooked": ((0, 0), (238, 5), (244, 180), (-6, 174)),
    "L": ((0, 0), (240, 0), (240, 100), (140, 100), (140, 180), (0, 180)),
    "bay": ((0, 0), (80, 0), (110, -40), (150, -40), (180, 0), (240, 0), (240, 180), (0, 180)),
    "alcove": (
        (0, 0),
        (240, 0),
        (240, 180),
        (160, 180),
        (160, 210),
        (90, 210),
        (90, 180),
        (0, 180),
    ),
    "sharp": ((0, 0), (240, 0), (60, 60), (0, 180)),
}
LAYOUT = prepare(json.dumps({"room": {"length": 240, "width": 180, "height": 108}}).encode()).layout


def inches(number: float) -> Length:
    return Length.of_inches(number)


def frame(name: str) -> PlanFrame:
    outline = tuple(Point(inches(x), inches(y)) for x, y in OUTLINES[name])
    return PlanFrame(replace(LAYOUT, outline=outline), RATIO, Pt(50.0, 150.0))


def parts(group: Group) -> tuple[Segments, Polyline]:
    hatch, face = group.children
    assert isinstance(hatch, Segments)
    assert isinstance(face, Polyline)
    return hatch, face


def inside(corners: list[Pt], at: Pt) -> bool:
    """The usual question: a ray to the right crosses the outline an odd number of times."""
    crossed = 0
    for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
        if (one.y > at.y) != (other.y > at.y):
            crossed += at.x < one.x + (other.x - one.x) * (at.y - one.y) / (other.y - one.y)
    return crossed % 2 == 1


@pytest.mark.parametrize("name", OUTLINES)
def test_walls_go_round_clockwise_from_the_datum_and_close(name: str) -> None:
    plan = frame(name)
    groups = wall_groups(plan)
    assert [group.data["wall"] for group in groups] == [
        f"W{number}" for number in range(1, len(OUTLINES[name]) + 1)
    ]
    faces = [parts(group)[1].points for group in groups]
    assert faces[0][0] == plan.origin
    assert all(faces[n - 1][-1] == face[0] for n, face in enumerate(faces))
    area = sum(one.x * other.y - other.x * one.y for one, other in faces) / 2
    # Clockwise as seen, where y goes down, is a positive area by the shoelace formula.
    assert area > 0


@pytest.mark.parametrize("name", OUTLINES)
def test_hatch_lies_outside_the_room_and_nowhere_far_off(name: str) -> None:
    plan = frame(name)
    corners = [plan.point(corner) for corner in plan.layout.outline]
    for group in wall_groups(plan):
        hatch, (start, end) = parts(group)[0], parts(group)[1].points
        assert hatch.lines
        for one, other in hatch.lines:
            middle = Pt((one.x + other.x) / 2, (one.y + other.y) / 2)
            assert not inside(corners, middle)
            way = Pt(end.x - start.x, end.y - start.y)
            long = hypot(way.x, way.y)
            off = abs(way.x * (middle.y - start.y) - way.y * (middle.x - start.x)) / long
            assert off <= WALL_BAND


@pytest.mark.parametrize("name", OUTLINES)
def test_neighboring_bands_share_their_miters(name: str) -> None:
    walls = walls_of(frame(name))
    for number, wall in enumerate(walls):
        assert walls[number - 1].miters[1] == wall.miters[0]
        assert walls[number - 1].end == wall.start


def test_a_square_corner_is_mitred_to_the_band_on_both_sides() -> None:
    """At the lower left corner the miter lies a band to the left and a band down."""
    (left, *_, lower) = walls_of(frame("rectangle"))
    assert left.miters[0] == lower.miters[1] == Pt(50.0 - WALL_BAND, 150.0 + WALL_BAND)


def test_a_corner_that_turns_inward_is_mitred_within_the_wall() -> None:
    """The L's inner corner at 140, 100: walls lie to its upper right, and so does the miter."""
    plan = frame("L")
    corner = plan.point(Point(inches(140), inches(100)))
    miters = [wall.miters[0] for wall in walls_of(plan) if wall.start == corner]
    assert miters == [Pt(corner.x + WALL_BAND, corner.y - WALL_BAND)]
