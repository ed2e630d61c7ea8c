"""Beam profiles from boards of published size (PS 20, dressed dry), the sums worked by hand."""

import pytest

from tests.layout.laying_out import box, inches, laid_out, room, run


def profile(**beam: object):
    """The profile of the only beam in a high room."""
    layout = laid_out(
        {
            "room": room(200, 60, 144),
            "beams": {"crosswise": box(**beam)},
            "grid": {"length": run(2), "width": run(1)},
        }
    )
    (found,) = layout.profiles
    return found


# Between two 1x sides, 3/4 thick each: the bottom's width + 1 1/2.
@pytest.mark.parametrize(
    ("bottom", "width"),
    [
        ("1x4", "5"),
        ("1x5", "6"),
        ("1x6", "7"),
        ("1x8", "8 3/4"),
        ("1x10", "10 3/4"),
        ("1x12", "12 3/4"),
    ],
)
def test_width_from_the_bottom_board(bottom: str, width: str):
    assert profile(bottom=bottom).finished_width.value == inches(width)


# A bottom between the sides leaves the side's own width as the drop; under them, 3/4 is added.
@pytest.mark.parametrize(
    ("sides", "between", "under"),
    [
        ("1x4", "3 1/2", "4 1/4"),
        ("1x6", "5 1/2", "6 1/4"),
        ("1x8", "7 1/4", "8"),
        ("1x10", "9 1/4", "10"),
        ("1x12", "11 1/4", "12"),
    ],
)
def test_drop_from_the_side_boards(sides: str, between: str, under: str):
    assert profile(sides=sides).drop.value == inches(between)
    assert profile(sides=sides, bottom_joint="under").drop.value == inches(under)


# 5/4 boards are dressed to 1 in: 3 1/2 + 2 = 5 1/2 wide; inside 5 1/2 - 3/4 - 1/4 = 4 1/2 deep.
def test_five_quarter_sides():
    found = profile(sides="5/4x6", reveal="1/4")
    assert found.finished_width.value == inches("5 1/2")
    assert found.inside_depth.value == inches("4 1/2")
    assert found.parts[0].thickness.value == inches("1")


# Dimension stock laid flat as backing, and two 3/4 sides: 3 1/2 + 1 1/2 = 5, 5 1/2 + 1 1/2 = 7,
# 7 1/4 + 1 1/2 = 8 3/4; each with 1/8 of play 1/8 more.
@pytest.mark.parametrize(("backing", "width"), [("2x4", "5"), ("2x6", "7"), ("2x8", "8 3/4")])
def test_width_from_the_backing(backing: str, width: str):
    tight = profile(sides="1x8", bottom="1x10", backing=backing, allowance=0)
    loose = profile(sides="1x8", bottom="1x10", backing=backing, allowance="1/8")
    assert tight.finished_width.value == inches(width)
    assert loose.finished_width.value == inches(width) + inches("1/8")
    assert loose.parts[2].width.value == tight.parts[2].width.value
