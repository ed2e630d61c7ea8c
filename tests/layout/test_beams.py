"""Which beams run through, and what is cut between them."""

import pytest

from lacunar.layout.records import Beam, Layout
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run

SIX = box(bottom="1x6", width=6)


def ceiling(through: str = "crosswise", **more: object) -> Spec:
    """168 x 144, 4 x 3 coffers, beams 6 wide, nothing at the walls."""
    return {
        "room": room(168, 144, **more),
        "beams": {"crosswise": SIX, "through": through, "depth": "stepped"},
        "grid": {"length": run(4), "width": run(3)},
    }


def by_id(layout: Layout) -> dict[str, Beam]:
    return {beam.id: beam for beam in layout.beams}


def lengths(beam: Beam) -> list[str]:
    return [str(piece.length.value.inches) for piece in beam.pieces]


def test_ids_count_from_the_datum_along_each_run():
    layout = laid_out(ceiling())
    assert [beam.id for beam in layout.beams] == ["XB-1", "XB-2", "XB-3", "LB-1", "LB-2"]
    assert [str(beam.on) for beam in layout.beams] == ["length"] * 3 + ["width"] * 2


@pytest.mark.parametrize(
    ("through", "across", "along"),
    [
        ("crosswise", ["144"], ["75/2"] * 4),
        ("lengthwise", ["44"] * 3, ["168"]),
        ("longer", ["44"] * 3, ["168"]),  # 168 along is longer than 144 across
    ],
)
def test_the_family_that_runs_through_is_whole_and_the_other_cut(
    through: str, across: list[str], along: list[str]
):
    beams = by_id(laid_out(ceiling(through)))
    assert lengths(beams["XB-1"]) == across
    assert lengths(beams["LB-1"]) == along
    assert beams["XB-1"].through is (len(across) == 1)
    assert beams["LB-1"].through is (len(along) == 1)


def test_of_equally_long_families_the_crosswise_runs_through():
    grid = {"length": run(2), "width": run(2)}
    spec = {"room": room(144, 144), "beams": {"crosswise": SIX, "through": "longer"}, "grid": grid}
    beams = by_id(laid_out(spec))
    assert (beams["XB-1"].through, beams["LB-1"].through) == (True, False)


def test_longer_counts_between_what_stands_at_the_walls():
    # 150 along less soffits of 10 and 10 is 130; 144 across is longer
    grid = {"length": run(2, {"soffit": 10}), "width": run(2)}
    spec = {"room": room(150, 144), "beams": {"crosswise": SIX, "through": "longer"}, "grid": grid}
    beams = by_id(laid_out(spec))
    assert (beams["XB-1"].through, beams["LB-1"].through) == (True, False)
    assert lengths(beams["LB-1"]) == ["62", "62"]  # (130 - 6)/2


def test_pieces_lie_between_the_faces_of_the_beams_that_stop_them():
    beams = by_id(laid_out(ceiling()))
    stops = [(piece.start.value, piece.end.value) for piece in beams["LB-1"].pieces]
    assert stops == [
        (inches("0"), inches("37 1/2")),
        (inches("43 1/2"), inches("81")),
        (inches("87"), inches("124 1/2")),
        (inches("130 1/2"), inches("168")),
    ]


def member(on: str, center: object) -> Spec:
    return {"on": on, "center": center, "width": 3, "drop": 3, "clearance": "1/4", "cleat": 0}


def test_a_cased_beam_runs_through_even_where_its_family_does_not():
    spec = ceiling("crosswise", members=[member("width", 72)])
    spec["grid"] = {"length": run(4), "width": run(4)}
    beams = by_id(laid_out(spec))
    # LB-2 cases the member at 72 and is whole; across, the others are cut at it alone:
    # (144 - 6)/2 = 69
    assert str(beams["LB-2"].kind) == "cased_beam"
    assert lengths(beams["LB-2"]) == ["168"]
    assert lengths(beams["XB-1"]) == ["69", "69"]
    assert lengths(beams["LB-1"]) == ["75/2"] * 4


def test_where_two_cased_beams_cross_the_family_that_runs_through_does():
    members = [member("length", 84), member("width", 72)]
    spec = ceiling("lengthwise", members=members)
    spec["grid"] = {"length": run(4), "width": run(4)}
    layout = laid_out(spec)
    beams = by_id(layout)
    assert lengths(beams["LB-2"]) == ["168"]
    assert lengths(beams["XB-2"]) == ["69", "69"]
    # a beam along that is not cased stops at the cased one across, and at no other
    assert lengths(beams["LB-1"]) == ["81", "81"]
    assert "members_cross" in {caution.code for caution in layout.cautions}


def test_coffers_are_lettered_by_row_and_numbered_by_column_from_the_datum():
    layout = laid_out(ceiling())
    assert [coffer.id for coffer in layout.coffers[:5]] == ["A1", "A2", "A3", "A4", "B1"]
    first = layout.coffers[0]
    corners = [(corner.x.inches, corner.y.inches) for corner in first.corners]
    assert corners == [(0, 0), (37.5, 0), (37.5, 44), (0, 44)]
    last = layout.coffers[-1]
    assert (last.id, last.row, last.column) == ("C4", 3, 4)
    assert (last.corners[2].x, last.corners[2].y) == (inches("168"), inches("144"))


def test_stretches_of_a_run_bear_the_ids_of_what_they_are():
    layout = laid_out(ceiling())
    along = ["1", "XB-1", "2", "XB-2", "3", "XB-3", "4"]
    assert [each.id for each in layout.length.elements] == along
    assert [each.id for each in layout.width.elements] == ["A", "LB-1", "B", "LB-2", "C"]
