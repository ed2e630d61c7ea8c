"""Cut coffers measured once the beams are up: corners, what is cut to them, what is missing."""

from fractions import Fraction
from itertools import combinations
from typing import Any

import pytest
import shapely

from lacunar.layout.outline_records import MeasuredCutCoffer
from lacunar.layout.records import Layout
from lacunar.takeoff.part_records import PartKind
from lacunar.takeoff.taken_off import take_off
from tests.layout.laying_out import Spec, laid_out
from tests.layout.test_outlines import BREAST, inch, outlined, refused, room

PANEL = {"kind": "sheet_goods", "seat": "between_sides", "gap": 0}


def asked(**measured: Any) -> Spec:
    """The room with the breast, C2 of which has six corners, with what was measured of that."""
    spec = room(BREAST, (4, 3), crown={"face": "2 1/2", "fit_total": 0}, panel=PANEL)
    spec["measured_openings"] = {
        "grid": laid_out(spec).grid_id,
        "coffers": [{"coffer": "C2", **measured}],
    }
    return spec


def corners() -> list[tuple[float, float]]:
    """The corners of C2 as planned."""
    layout = laid_out(room(BREAST, (4, 3), panel=PANEL))
    coffer = next(c for c in outlined(layout).partial_coffers if c.id == "C2")
    return [(float(at.x.inches), float(at.y.inches)) for at in coffer.corners]


def apart(one: tuple[float, float], other: tuple[float, float]) -> str:
    return f"{((one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2) ** 0.5:.6f}"


def taped(spots: list[tuple[float, float]], diagonals: list[tuple[int, int]]) -> dict[str, Any]:
    """What a tape would find between these corners."""
    count = len(spots)
    return {
        "cut_sides": [
            {"side": n + 1, "length": apart(spots[n], spots[(n + 1) % count])} for n in range(count)
        ],
        "cut_diagonals": [
            {"from_corner": a, "to_corner": b, "length": apart(spots[a - 1], spots[b - 1])}
            for a, b in diagonals
        ],
    }


def found(spec: Spec) -> tuple[Layout, MeasuredCutCoffer]:
    layout = laid_out(spec)
    (measured,) = outlined(layout).measured
    return layout, measured


# Three diagonals from corner 1 make triangles of six corners.
FAN = [(1, 3), (1, 4), (1, 5)]


def test_measured_as_planned_it_is_what_was_planned():
    layout, measured = found(asked(**taped(corners(), FAN)))
    assert measured.missing == ()
    assert measured.as_measured is not None
    planned = next(c for c in outlined(layout).partial_coffers if c.id == "C2")
    for one, other in zip(measured.as_measured.sides, planned.sides, strict=True):
        assert abs(one.length.value - other.length.value) <= inch("1/1000")
        assert abs(one.corner.value.degrees - other.corner.value.degrees) < Fraction(1, 100)
    assert all(
        side.difference is not None and abs(side.difference.value) < inch("1/1000")
        for side in measured.sides
    )


@pytest.mark.parametrize("moved", [1, 2, 3, 4])
def test_a_corner_that_stands_elsewhere_is_found_by_shapely_s_area(moved: int):
    """A corner is moved by half an inch both ways; side lengths and diagonals are taped anew."""
    spots = corners()
    spots[moved] = spots[moved][0] + 0.5, spots[moved][1] - 0.25
    layout, measured = found(asked(**taped(spots, FAN)))
    assert measured.as_measured is not None
    told = float(measured.as_measured.area.value) * 144
    assert told == pytest.approx(shapely.Polygon(spots).area, abs=0.01)
    lengths = [float(side.length.value.inches) for side in measured.as_measured.sides]
    wanted = [float(apart(spots[n], spots[(n + 1) % 6])) for n in range(6)]
    assert lengths == pytest.approx(wanted, abs=1e-3)
    # Crown and panel of the take-off are cut to it.
    cut = [
        part.length.value
        for part in take_off([layout]).parts
        if part.kind is PartKind.CROWN
        for place in part.places
        if place.of == ("C2",)
    ]
    assert sorted(cut) == sorted(
        side.cut_from.value for side in measured.as_measured.sides if side.cut_from
    )
    (panel,) = (
        part
        for part in take_off([layout]).parts
        if part.kind is PartKind.PANEL and any(p.of == ("C2",) for p in part.places)
    )
    polygon = shapely.Polygon([(float(s.x.inches), float(s.y.inches)) for s in panel.corners])
    assert polygon.area == pytest.approx(told, abs=0.05)


def test_what_is_over_proves_the_rest():
    spots = corners()
    every = [pair for pair in combinations(range(1, 7), 2) if pair[1] - pair[0] not in (1, 5)]
    _, measured = found(asked(**taped(spots, every)))
    assert measured.closing_error is not None
    assert abs(measured.closing_error.value) < inch("1/1000")
    taken = taped(spots, every)
    # The wrong one is not what corners are found by: it contradicts them by what it is off.
    wrong = next(each for each in taken["cut_diagonals"] if each["to_corner"] == 6)
    wrong["length"] = f"{float(wrong['length']) + 0.75:.6f}"
    (fault,) = refused(asked(**taken))
    assert fault.code in ("opening_does_not_close", "opening_cannot_close")
    assert fault.pointer == "/measured_openings/coffers/0"


def test_without_diagonals_nothing_is_guessed():
    layout, measured = found(asked(**taped(corners(), [])))
    assert measured.as_measured is None
    assert measured.missing == ("a diagonal to corner 3",)
    assert "cut_coffer_corners_unknown" in {caution.code for caution in layout.cautions}
    # What is cut is cut to the plan.
    assert outlined(layout).coffers_as_cut == outlined(layout).partial_coffers


def test_sides_that_were_not_measured_are_listed():
    taken = taped(corners(), FAN)
    taken["cut_sides"] = taken["cut_sides"][:4]
    _, measured = found(asked(**taken))
    assert measured.missing[:2] == ("side 5", "side 6")


@pytest.mark.parametrize(
    ("measured", "code", "pointer"),
    [
        ({"sides": {"W1": 49}}, "opening_told_otherwise", ""),
        ({"cut_sides": [{"side": 7, "length": 3}]}, "corner_unknown", "/cut_sides/0/side"),
        (
            {"cut_diagonals": [{"from_corner": 2, "to_corner": 2, "length": 9}]},
            "corner_unknown",
            "/cut_diagonals/0/from_corner",
        ),
        (
            {"cut_sides": [{"side": 1, "length": 49}, {"side": 2, "length": 3}],
             "cut_diagonals": [{"from_corner": 1, "to_corner": 3, "length": 90}]},
            "opening_cannot_close",
            "",
        ),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(measured: dict[str, Any], code: str, pointer: str):
    fault = refused(asked(**measured))[0]
    assert (fault.code, fault.pointer) == (code, f"/measured_openings/coffers/0{pointer}")


def test_a_whole_coffer_is_not_told_by_numbers():
    spec = asked()
    spec["measured_openings"]["coffers"] = [
        {"coffer": "A1", "cut_sides": [{"side": 1, "length": 47}]}
    ]
    assert [fault.code for fault in refused(spec)] == ["opening_told_otherwise"]
