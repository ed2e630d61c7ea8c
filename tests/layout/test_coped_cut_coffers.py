"""Crown coped in place in coffers that walls cut: ends that butt take nothing off a piece."""

import json

import pytest

from lacunar.layout.moulding_records import PieceEnd
from lacunar.measure.angle import Angle
from lacunar.workflow.prepare import prepare

# An ell of 20 by 16 ft with a corner of 8 by 6 ft left out: all corners are square.
ELL = {
    "room": {
        "height": 108,
        "outline": {
            "points": [
                {"x": x, "y": y}
                for x, y in ((0, 0), (0, 192), (144, 192), (144, 120), (240, 120), (240, 0))
            ],
        },
    },
    "grid": {"length": {"coffers": 4}, "width": {"coffers": 3}},
    "crown": {"face": "3 1/4", "spring_from_wall": 38, "method": "coped_in_place"},
}
SQUARE, OUTSIDE = Angle.of_degrees(90), Angle.of_degrees(270)


def test_at_square_corners_only_what_is_coped_or_mitred_runs_back():
    """Worked by hand: a coped end at a square corner takes one projection off the edge that stands
    out, a miter at a corner that juts in adds one, and an end that butts does neither."""
    layout = prepare(json.dumps(ELL).encode()).layout
    crown, room = layout.mouldings.crown, layout.outlined
    assert crown is not None
    assert room is not None
    projection = float(crown.projection.value.millimeters)
    sides = [
        (side, ring[place - 1].corner.value)
        for coffer in room.partial_coffers
        for ring in [coffer.sides]
        for place, side in enumerate(ring)
    ]
    turned = set()
    for side, right in sides:
        corners = {"left": side.corner.value, "right": right}
        assert set(corners.values()) <= {SQUARE, OUTSIDE}
        ends = {"left": side.left_end, "right": side.right_end}
        off = 0
        for hand, corner in corners.items():
            turned.add((ends[hand], corner))
            if ends[hand] is not PieceEnd.SQUARE:
                off += 1 if corner == SQUARE else -1
        assert side.long_point is not None
        assert side.short_point is not None
        less = float((side.long_point.value - side.short_point.value).millimeters)
        assert less == pytest.approx(off * projection, abs=0.001)
    assert {
        (PieceEnd.COPED, SQUARE),
        (PieceEnd.SQUARE, SQUARE),
        (PieceEnd.MITRED, OUTSIDE),
    } <= turned
