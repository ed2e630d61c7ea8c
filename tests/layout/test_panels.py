"""Sheet panels by where they sit; beams 5 wide, sides 3/4, play 1/8, gaps 1/16."""

import pytest

from tests.layout.laying_out import Spec, box, inches, laid_out, refused, room, run


def spec(seat: str, walls: object, **more: object) -> Spec:
    """100 long in two coffers, 60 wide in one."""
    return {
        "room": room(100, 60, **more),
        "beams": {"crosswise": box(allowance="1/8")},
        "grid": {"length": run(2, walls), "width": run(1)},
        "panel": {"kind": "sheet_goods", "seat": seat, "gap": "1/16", "thickness": "1/4"},
    }


@pytest.mark.parametrize(
    ("seat", "walls", "expected"),
    [
        # half beams: openings (100 - 10)/2 = 45
        ("between_sides", "half", "44 7/8"),  # 45 - 1/8
        # at the wall 3/4 + 1/8, at the beam 3/4 + 1/16: 45 + 1 11/16 - 1/8
        ("between_backing", "half", "46 9/16"),
        # to the wall 2 1/2, to the middle of the beam 2 1/2: 45 + 5 - 1/8
        ("above_backing", "half", "49 7/8"),
        # nothing at the walls: openings (100 - 5)/2 = 47 1/2, and nothing to reach past there
        ("between_sides", "none", "47 3/8"),
        ("between_backing", "none", "48 3/16"),  # 47 1/2 + 13/16 - 1/8
        ("above_backing", "none", "49 7/8"),  # 47 1/2 + 2 1/2 - 1/8
        # a soffit of 10: openings (100 - 20 - 5)/2 = 37 1/2
        ("above_backing", {"soffit": 10}, "39 7/8"),  # 37 1/2 + 2 1/2 - 1/8
        # a half beam on its face reaches back to the soffit: 35 + 2 1/2 + 2 1/2 - 1/8
        ("above_backing", {"soffit": 10, "then": "half"}, "39 7/8"),
    ],
)
def test_size_by_seat(seat: str, walls: object, expected: str):
    (panel,) = laid_out(spec(seat, walls)).panels
    assert panel.length.value == inches(expected)
    assert panel.coffers == ("A1", "A2")
    # across there is nothing at the walls: 60 - 1/8
    assert panel.width.value == inches("59 7/8")


def test_panels_above_backing_with_their_gaps_cover_the_ceiling():
    (panel,) = laid_out(spec("above_backing", "half")).panels
    assert panel.length.value * 2 + inches("1/16") * 4 == inches("100")


def test_a_panel_above_backing_stops_at_a_member():
    member = {"on": "length", "center": 50, "width": 2, "drop": 2, "clearance": "1/4"}
    layout = laid_out(spec("above_backing", "none", members=[member]))
    # the member's face at 49; less a gap at each edge
    assert [panel.length.value for panel in layout.panels] == [inches("48 7/8")]


def test_panels_of_one_size_are_one_group():
    plain = spec("between_sides", "none")
    plain["grid"]["length"] = run(3, weights=[1, 2, 1])
    layout = laid_out(plain)
    assert [panel.coffers for panel in layout.panels] == [("A1", "A3"), ("A2",)]


def test_an_existing_ceiling_has_no_panels():
    plain = spec("between_sides", "none")
    plain["panel"] = {"kind": "existing"}
    assert laid_out(plain).panels == ()


def test_gaps_that_leave_no_panel():
    plain = spec("between_sides", "none")
    plain["grid"]["length"] = run([1, 1], fixed_beams=[{"center": 4}])  # a coffer of 1 1/2
    plain["panel"]["gap"] = "3/4"
    (fault,) = refused(plain)
    assert (fault.code, fault.pointer) == ("gap_too_large", "/panel/gap")
