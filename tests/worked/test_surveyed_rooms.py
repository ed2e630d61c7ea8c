"""Rooms out of square, worked by hand: the laws of cosines and of the parallelogram are algebra."""

from fractions import Fraction
from typing import Any

from lacunar.layout.records import Layout
from tests.layout.laying_out import inches, laid_out, run

DIVIDED = {"length": run(4, "half"), "width": run(3, "half")}


def surveyed(survey: dict[str, Any], **crooked: object) -> Layout:
    room = {"survey": survey, "height": 108, "crooked": crooked}
    return laid_out({"room": room, "grid": DIVIDED})


def near(found: Fraction, expected: str, within: str) -> bool:
    return abs(found - Fraction(expected)) <= Fraction(within)


def test_a_diagonal_that_is_not_the_square_one_leans_the_corner():
    """144 x 120 with a diagonal of 188 from the datum: the corner across is opened to it.

    cos = (144^2 + 120^2 - 188^2) / (2 * 144 * 120) = -208/34560, an angle of 90.345 degrees where
    W3 and W4 meet.
    """
    sides = {"W1": 120, "W2": 144, "W3": 120, "W4": 144}
    layout = surveyed({"sides": sides, "diagonals": {"rising": 188}})
    assert layout.crooked is not None
    corner = next(each for each in layout.crooked.survey.corners if each.id == "W3-W4")
    assert near(corner.angle.value.degrees, "90.345", "0.001")


def test_a_parallelogram_whose_diagonals_differ_by_half_an_inch():
    """180 x 144: rising^2 + falling^2 = 2 (180^2 + 144^2), with rising - falling = 1/2.

    So rising is 230.7623 and falling 230.2623; the corner at the datum is 89.8726 degrees, and W1
    leans 144 * cos(89.8726) = 0.320 in over its length, which the strips at W1 and W3 take up.
    """
    sides = {"W1": 144, "W2": 180, "W3": 144, "W4": 180}
    layout = surveyed({"sides": sides, "diagonals": {"rising": "230.7623"}}, control="W4")
    assert layout.crooked is not None
    report = layout.crooked.survey
    assert near(report.falling.value.inches, "230.2623", "0.0005")
    datum = next(each for each in report.corners if each.id == "W4-W1")
    assert near(datum.angle.value.degrees, "89.8726", "0.0005")
    for wall in layout.crooked.walls:
        expected = "0.320" if wall.wall in ("W1", "W3") else "0"
        assert near(wall.taper.value.inches, expected, "0.0005")


def test_equal_diagonals_of_a_square_room():
    """240 x 180: the diagonal is 300, both ways, and nothing tapers."""
    sides = {"W1": 180, "W2": 240, "W3": 180, "W4": 240}
    layout = surveyed({"sides": sides, "diagonals": {"rising": 300, "falling": 300}})
    assert layout.crooked is not None
    assert layout.crooked.square
    assert layout.crooked.grid_diagonal.value == inches("300")


def test_three_inches_out_over_three_panels_are_an_inch_each():
    """Invented after a carpenter's account: a room 3 in out, one inch for each of three panels.

    Following the walls the three coffers of W2's line have 3 in more than those of W4's; without
    beams at the walls and between them the same width, that is 1 in each.
    """
    points = {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 168, "y": 0},
        "W2-W3": {"x": 171, "y": 288},
        "W1-W2": {"x": 0, "y": 288},
    }
    grid = {"length": run(3, "half"), "width": run(2, "half")}
    room = {"survey": {"points": points}, "height": 120}
    layout = laid_out({"room": room, "grid": grid})
    assert layout.crooked is not None
    following = layout.crooked.modes[1]
    row = [coffer for coffer in following.coffers if coffer.id.startswith("A")]
    # Each side of row A runs over half of the 288 in less the half beams: 3/3 * share.
    for coffer in row:
        grows = coffer.towards_w2.value - coffer.towards_w4.value
        share = (coffer.towards_w1.value / inches("288")).limit_denominator(10**9)
        assert near(grows.inches, str(share), "0.002")


def test_a_wall_three_quarters_out_to_both_sides():
    """144 deep, 180 wide below and 181 1/2 above, square to W1: the inch and a half is shared.

    The grid goes 3/4 away from W1, whose strip of 3 1/2 is 4 1/4 throughout; that at W3 is 2 3/4
    below, where the room is narrow, and 4 1/4 above. Together 7 below and 8 1/2 above.
    """
    points = {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 180, "y": 0},
        "W2-W3": {"x": "181.5", "y": 144},
        "W1-W2": {"x": 0, "y": 144},
    }
    layout = surveyed({"points": points}, excess="split")
    assert layout.crooked is not None
    widths = {
        wall.wall: (wall.at_start.value.inches, wall.at_end.value.inches)
        for wall in layout.crooked.walls
    }
    for wall, (start, end) in {"W1": ("17/4", "17/4"), "W3": ("11/4", "17/4")}.items():
        assert near(widths[wall][0], start, "0.00002")
        assert near(widths[wall][1], end, "0.00002")
    assert "strip_narrowed" in [caution.code for caution in layout.cautions]


def test_a_grid_along_walls_of_240_and_246():
    """160 deep, square at W1; W3 leans 6 in out. Beams 5 wide, halves at the walls, 3 by 2 coffers.

    Middles of crosswise beams are thirds of each wall: 80 and 160 below, 82 and 164 above, so that
    XB-1 leans 2 in 160, which is 0.716 degrees. W3 is sqrt(160^2 + 6^2) = 160.1125 long; half of it
    is 80 up, so that LB-1 lies square to W1. Coffer A1 lies from 2 1/2 to the face of XB-1, which
    is at 77 1/2 + y/80: 75.03 long at its lower side, where y is 2 1/2, and 75.97 at its upper
    one, where it is 77 1/2; the corner at W3 and W4 is 90.716 degrees.
    """
    points = {
        "W4-W1": {"x": 0, "y": 0},
        "W3-W4": {"x": 240, "y": 0},
        "W2-W3": {"x": 246, "y": 160},
        "W1-W2": {"x": 0, "y": 160},
    }
    sides = {"sides": "1x6", "bottom": "1x4", "bottom_joint": "between", "reveal": 0}
    room = {"survey": {"points": points}, "height": 108, "crooked": {"mode": "follow_walls"}}
    grid = {"length": run(3, "half"), "width": run(2, "half")}
    beams = {"crosswise": sides, "lengthwise": "same"}
    layout = laid_out({"room": room, "grid": grid, "beams": beams})
    assert layout.crooked is not None
    assert layout.followed is not None
    centers = {
        marks.end: [m.exact.value.inches for m in marks.marks if m.kind == "center"]
        for marks in layout.marks
        if marks.run == "length"
    }
    assert centers == {"start": [80, 160], "end": [82, 164]}
    mode = next(each for each in layout.crooked.modes if each.chosen)
    corner = mode.coffers[0]
    assert mode.mode == "follow_walls"
    assert near(corner.towards_w4.value.inches, "75.03125", "0.001")
    assert near(corner.towards_w2.value.inches, "75.96875", "0.001")
    assert near(corner.towards_w1.value.inches, "75", "0.001")
    assert near(corner.corners[1].angle.value.degrees, "90.716", "0.001")
    # Coped in place: out by 75.97 * sin(0.716 degrees) = 0.95 in at the side's other end.
    assert near(layout.followed.coffers[0].out_of_square.value.inches, "0.949", "0.002")
