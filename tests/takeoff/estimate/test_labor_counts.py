"""What labor is counted by: joints, pieces, feet and settings of a saw, counted by hand."""

import pytest

from lacunar.takeoff.estimate.words import LaborPer, Work
from tests.takeoff.estimate.pricing import CROWNED, FLAT, Document, counts_of, estimated

HALF = {"coffers": 3, "start": "half", "end": "half"}
# Two by two beams, half beams all round.
GRID: Document = {
    **FLAT,
    "room": {"length": "16 ft", "width": "14 ft", "height": "9 ft"},
    "beams": {
        "crosswise": {"sides": "1x8", "bottom": "1x6", "bottom_joint": "between", "reveal": 0},
        "lengthwise": "same",
    },
    "grid": {"length": HALF, "width": HALF},
}


def counted(*ceilings: Document, stock: Document | None = None) -> dict[tuple[str, str], int]:
    found = counts_of(estimated(*ceilings, stock=stock))
    return {
        (per.value, of.value if of else ""): int(count.count.value)
        for (per, of), count in found.items()
        if count.count.value.denominator == 1
    }


def test_crossings_of_two_by_two_beams_in_half_beams():
    """2 * 2 crosses; 2 + 2 beams with a tee at either end, 8; an ell in each corner, 4."""
    joints = {of: count for (per, of), count in counted(GRID).items() if per == "joint"}
    assert joints == {"cross": 4, "tee": 8, "ell": 4}


def test_pieces_of_two_by_two_beams():
    """Through beams whole, the others in three; wall beams have one side each.

    Sides: 2 * 2 whole, 2 * 3 * 2 pieces, 4 at walls; bottoms 2 whole, 6 pieces, 4 at walls; backing
    as bottoms.
    """
    pieces = {of: count for (per, of), count in counted(GRID).items() if per == "piece"}
    assert pieces == {"side": 20, "bottom": 12, "backing": 12}


def test_where_crossings_are_is_told_with_their_ceiling():
    one, two = (counts_of(estimated(*[GRID] * times)) for times in (1, 2))
    assert one[LaborPer.JOINT, Work.CROSS].source == ("K3",)
    assert two[LaborPer.JOINT, Work.CROSS].source == ("1:K3", "2:K3")
    assert two[LaborPer.COFFER, None].source == ("1", "2")


def test_ceilings_that_are_pooled_double_everything_but_the_settings_of_the_saw():
    one, two = counts_of(estimated(GRID)), counts_of(estimated(GRID, {**GRID, "name": "Other"}))
    assert one.keys() == two.keys()
    for (per, of), count in one.items():
        times = 1 if per is LaborPer.SET_UP else 2
        assert two[per, of].count.value == times * count.count.value, (per, of)


@pytest.mark.parametrize(
    ("method", "joint"), [("bench_frame", "crown_miter"), ("coped_in_place", "crown_cope")]
)
def test_four_corners_of_crown_in_each_coffer(method: str, joint: str):
    crown = {"face": "3 1/4", "spring_from_wall": 38, "method": method}
    joints = {of: n for (per, of), n in counted({**GRID, "crown": crown}).items() if per == "joint"}
    assert joints[joint] == 9 * 4
    assert {"crown_miter", "crown_cope"} & joints.keys() == {joint}


def test_flat_mouldings_are_mitred_at_four_corners_of_each_coffer():
    flat = {"name": "Frieze", "width": 2, "thickness": "1/2", "at": "ceiling"}
    assert counted({**GRID, "flat_mouldings": [flat]})["joint", "flat_miter"] == 36


def test_settings_of_a_saw_by_hand():
    """Two lengths each of crown and nailer, copes mitred first to the left and to the right."""
    found = {of: count for (per, of), count in counted(CROWNED).items() if per == "set_up"}
    assert found == {"length_stop": 4, "end_angle": 2}


def test_a_fence_for_each_width_ripped_from_wider_stock():
    # Bottoms of half beams are half of 5 1/2 wide, ripped; all else is as wide as its stock.
    assert counted(GRID)["set_up", "rip_width"] == 1
    assert ("set_up", "edge_bevel") not in counted(GRID)


def test_one_bevel_for_boards_that_are_mitred_along_their_edges():
    beams = {"crosswise": {"sides": "1x6", "bottom": "1x6", "bottom_joint": "mitred"}}
    assert counted({**FLAT, "beams": beams})["set_up", "edge_bevel"] == 1


def test_feet_of_mitred_edges_are_counted_where_they_are_named():
    """Two beams across 96 in: an edge of each side, and two of the bottom: 2 * 4 * 8 ft."""
    beams = {"crosswise": {"sides": "1x6", "bottom": "1x6", "bottom_joint": "mitred"}}
    edges = {"per": "foot", "of": ["mitred_edge"], "price": 2}
    made = estimated({**FLAT, "beams": beams}, labor={"work": [edges, {"per": "foot", "price": 1}]})
    assert counts_of(made)[LaborPer.FOOT, Work.MITRED_EDGE].count.value == 64
    # Two sides and a bottom to each beam, and a line of backing: 2 * 4 * 8 ft, edges apart.
    assert [line.quantity.value for line in made.lines if line.per is LaborPer.FOOT] == [64, 64]


def test_splices_of_boards_longer_than_their_stock():
    """A beam of 40 ft from boards of 16 ft at most: three parts, two scarfs, in three boards."""
    long = {
        **FLAT,
        "room": {"length": "40 ft", "width": "12 ft", "height": "9 ft"},
        "beams": {"crosswise": {"sides": "1x8", "bottom": "1x6"}, "lengthwise": "same"},
        "stock": {"longest_board": "16 ft"},
        "grid": {
            "length": {"coffers": 1, "start": "none", "end": "none"},
            "width": {"coffers": 2, "start": "none", "end": "none"},
        },
    }
    count = counts_of(estimated(long))[LaborPer.JOINT, Work.SPLICE]
    assert (count.count.value, count.source) == (6, ("LB-1",))


def test_joints_of_parts_longer_than_all_stock():
    """Crown of 20 ft from 12 ft: two pieces to each of two parts, and to each of two nailers."""
    hall = {**CROWNED, "room": {"length": 240, "width": 96, "height": 100}}
    twelve = [{"material": name, "length": "12 ft"} for name in ("Crown", "Nailer")]
    assert counted(hall, stock={"lengths": twelve})["joint", "joined_part"] == 4
