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
