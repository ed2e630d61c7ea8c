"""A surveyed room is drawn where it is square, and refused where sheets would show it wrong."""

import json

import pytest

from lacunar.model.faults import SpecRefused
from lacunar.workflow.check import check_drawings
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import Prepared, prepare

SIDES = {"W1": 180, "W2": 240, "W3": 180, "W4": 240}


def prepared(**diagonals: object) -> Prepared:
    survey = {"sides": SIDES, "diagonals": diagonals}
    return prepare(json.dumps({"room": {"survey": survey, "height": 108}}).encode())


def test_a_room_that_proves_square_is_drawn_without_findings():
    """180, 240 and 300 are 3, 4 and 5 times 60."""
    assert check_drawings(prepared(rising=300, falling=300)) == ()


def test_a_room_out_of_square_is_refused_rather_than_drawn_square():
    with pytest.raises(SpecRefused) as refusal:
        compose_sheets(prepared(rising=301))
    assert [fault.code for fault in refusal.value.faults] == ["crooked_room_not_drawn"]
