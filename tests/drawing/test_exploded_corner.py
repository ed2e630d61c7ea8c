"""The exploded corner: its parts by stage, their sizes, and that nothing is pulled onto another."""

import json
from pathlib import Path
from typing import Any

import pytest
import shapely

from lacunar.drawing.solids.corner import corner_of
from lacunar.drawing.views.exploded_corner import GAP, SIGHT, pulled_corner
from lacunar.layout.fitting_records import Stage
from lacunar.workflow.prepare import prepare

EXAMPLES = Path(__file__).parents[2] / "examples" / "ceilings"
NAMES = sorted(path.stem for path in EXAMPLES.glob("*.json"))
INCH = 25.4


def corner(spec: dict[str, Any]):
    return corner_of(prepare(json.dumps(spec).encode()).layout)


@pytest.mark.parametrize("name", NAMES)
def test_groups_are_clear_of_each_other_in_the_picture(name: str):
    """Another way: outlines as polygons of a geometry library, all pairs."""
    found = corner_of(prepare((EXAMPLES / f"{name}.json").read_bytes()).layout)
    assert found is not None
    groups = []
    for each in pulled_corner(found):
        outlines = [
            shapely.MultiPoint([(at.right, at.up) for at in SIGHT.of(s.corners)]).convex_hull
            for s in each.solids
        ]
        groups.append(shapely.union_all(outlines))
    for number, one in enumerate(groups):
        for other in groups[number + 1 :]:
            assert one.distance(other) >= GAP - 0.01


@pytest.mark.parametrize("name", NAMES)
def test_each_part_lies_below_those_of_earlier_steps(name: str):
    found = corner_of(prepare((EXAMPLES / f"{name}.json").read_bytes()).layout)
    assert found is not None
    pulled = pulled_corner(found)
    numbers = [each.step.number for each in pulled]
    assert numbers == sorted(numbers)
    lows = [min(at.z for s in each.solids for at in s.corners) for each in pulled]
    assert lows == sorted(lows, reverse=True)


def test_boards_of_a_box_have_their_sizes():
    """Hand-worked: sides 3/4 x 5 1/2, bottom 5 1/2 between them: 7 in wide, drop 5 1/2 in."""
    beam = {"sides": "1x6", "bottom": "1x6", "bottom_joint": "between", "reveal": "1/4"}
    found = corner(
        {
            "room": {"length": 180, "width": 150, "height": 108},
            "beams": {"crosswise": beam, "lengthwise": "same"},
            "grid": {"length": {"coffers": 3}, "width": {"coffers": 2}},
        }
    )
    assert found is not None
    by_stage = {each.step.stage: each.solids for each in pulled_corner(found)}
    crosswise = [s for s in by_stage[Stage.SIDES] if s.of.startswith("XB")]
    across = sorted(
        (min(at.x for at in s.corners), max(at.x for at in s.corners)) for s in crosswise
    )
    assert across == [
        (pytest.approx(0.0), pytest.approx(0.75 * INCH)),
        (pytest.approx(6.25 * INCH), pytest.approx(7 * INCH)),
    ]
    (bottom,) = [s for s in by_stage[Stage.BOTTOMS] if s.of.startswith("XB")]
    xs, zs = ([getattr(at, way) for at in bottom.corners] for way in "xz")
    assert (max(xs) - min(xs)) / INCH == pytest.approx(5.5)
    assert (max(zs) - min(zs)) / INCH == pytest.approx(0.75)


def test_crown_is_mitred_at_forty_five_degrees():
    """At a square corner the ends of both pieces lie in the plane x = y (common practice)."""
    found = corner_of(prepare((EXAMPLES / "music_room.json").read_bytes()).layout)
    assert found is not None
    by_stage = {each.step.stage: each.solids for each in pulled_corner(found)}
    for piece in by_stage[Stage.CROWN_FRAMES]:
        end = [at for at in piece.corners if at.x > -found.reach and at.y > -found.reach]
        assert len(end) == 4
        assert all(at.x == pytest.approx(at.y) for at in end)


def test_a_room_of_bare_walls_and_one_coffer_has_no_corner_to_show():
    grid = {run: {"coffers": 1, "start": "none", "end": "none"} for run in ("length", "width")}
    found = corner({"room": {"length": 90, "width": 80, "height": 108}, "grid": grid})
    assert found is None
