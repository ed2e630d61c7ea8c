"""Doors and windows at the walls of rooms with other than four."""

from typing import Any

import pytest

from lacunar.layout.item_records import WallFeatureCheck
from tests.layout.laying_out import laid_out
from tests.layout.test_items_in_odd_rooms import CUT_OFF
from tests.layout.test_outlines import BREAST, ELL, inch, refused, room


def door(wall: str, center: Any, width: Any = 32, **more: Any) -> dict[str, Any]:
    return {"kind": "door", "wall": wall, "center": center, "width": width, **more}


def checked(outline: dict[str, Any], feature: dict[str, Any]) -> WallFeatureCheck:
    spec = room(outline, (5, 4))
    spec["room"]["wall_features"] = [feature]
    (check,) = laid_out(spec).wall_features
    return check


def test_only_beams_that_end_at_a_wall_meet_what_is_in_it():
    """W2 of the ell ends at 144: XB-2, 92 1/2 to 99 1/2, ends there; XB-4 ends at W6 below."""
    check = checked(ELL, door("W2", 96))
    assert [beam.beam for beam in check.beams] == ["XB-2"]
    assert check.on == "XB-2"
    assert check.off_center.value == inch(0)
    spec = room(ELL, (5, 4))
    spec["room"]["wall_features"] = [door("W2", 192)]
    assert refused(spec)[0].code == "feature_outside_wall"


def test_on_a_wall_beyond_w4_a_center_is_from_its_corner_next_the_datum():
    """W6 goes from 144 to 240: 48 from its corner is 192, where XB-4 has its center."""
    check = checked(ELL, door("W6", 48))
    assert (check.near.value, check.far.value) == (inch(176), inch(208))
    assert [(beam.beam, beam.meeting) for beam in check.beams] == [("XB-4", "centered")]
    assert check.side == 4


def test_a_wall_of_two_sides_takes_the_side_that_holds_it():
    """W2 is above the breast on both sides of it: from 0 to 72 and from 132 to 216."""
    left, right = (checked(BREAST, door("W2", at)) for at in (36, 170))
    assert (left.side, right.side) == (2, 6)


def test_along_an_angled_wall_places_are_from_its_start():
    """The wall across the corner is 40 sqrt 2 long; XB-3's near face, 140.5, is not there."""
    check = checked(CUT_OFF, door("W5", 28, 20))
    assert (check.near.value, check.far.value) == (inch(18), inch(38))
    assert check.side == 3
    assert check.on


def test_what_hangs_along_a_wall_lower_than_a_head_is_told():
    check = checked(ELL, door("W6", 48, head=106))
    assert check.along_wall == ("WB-6",)


@pytest.mark.parametrize("wall", ["W9", "W12"])
def test_a_wall_that_is_not_there_is_refused(wall: str):
    spec = room(ELL, (5, 4))
    spec["room"]["wall_features"] = [door(wall, 30)]
    (fault,) = refused(spec)
    assert (fault.code, fault.pointer) == ("feature_wall_unknown", "/room/wall_features/0/wall")


def test_a_room_with_four_walls_has_no_fifth():
    spec = room(ELL, (5, 4))
    spec["room"] = {"length": 240, "width": 180, "height": 108}
    spec["room"]["wall_features"] = [door("W5", 30)]
    assert [fault.code for fault in refused(spec)] == ["feature_wall_unknown"]
