"""Ceilings that are not flat, worked by hand: a sagged one, and one that is neither flat nor level.

Sources: questions of carpenters in the trade's press and forums, retold; the arithmetic stands
beside each figure.
"""

from fractions import Fraction

import pytest

from lacunar.layout.level_records import BeamLevel, Levels
from lacunar.measure.length import Length
from tests.layout.laying_out import box, laid_out, refused, run


def inches(amount: str) -> Length:
    return Length.of_inches(Fraction(amount))


def sagged(**crosswise: object) -> dict[str, object]:
    """A beam of 94 in under a ceiling that hangs 1 1/2 in lower in the middle than at its ends."""
    stations = [
        {"name": name, "length": 96, "width": at, "above_line": line}
        for name, at, line in (("left", 0, "6 1/2"), ("middle", 47, 5), ("right", 94, "6 1/2"))
    ]
    return {
        "room": {"length": 192, "width": 94, "height": 96, "stations": stations},
        "beams": {"crosswise": box("1x8", "1x6", **crosswise)},
        "grid": {"length": run(2), "width": run(1)},
    }


def levels_of(spec: dict[str, object]) -> Levels:
    levels = laid_out(spec).levels
    assert levels is not None
    return levels


def line(levels: Levels, beam: str) -> BeamLevel:
    return next(each for each in levels.beams if each.beam == beam)


def test_a_sagged_ceiling_leaves_a_board_of_7_1_4_a_depth_of_5_3_4_in_the_middle():
    # A board at the end is as deep as in the middle and 1 1/2 more: 7 1/4 - 1 1/2 = 5 3/4.
    beam = line(levels_of(sagged()), "XB-1")
    assert beam.most_side is not None
    assert beam.most_side.value == inches("23/4")
    sides = {place.station: place.side.value for place in beam.places}
    assert sides == {"left": inches("29/4"), "middle": inches("23/4"), "right": inches("29/4")}
    scribes = [place.scribe.value for place in beam.places]
    assert scribes == [inches("0"), inches("3/2"), inches("0")]


def test_a_fair_arc_over_94_with_a_rise_of_1_1_2_has_a_radius_of_737():
    # R = c * c / (8 h) + h / 2 = 94 * 94 / 12 + 3/4 = 736 1/3 + 3/4 = 737 1/12.
    sag = line(levels_of(sagged()), "XB-1").sag
    assert sag is not None
    assert sag.radius is not None
    assert sag.departure.value == inches("-3/2")
    assert sag.radius.value == inches("8845/12")


def test_a_depth_that_the_board_cannot_reach_at_the_end_is_refused():
    # 6 in planned and 1 1/2 more is 7 1/2, a quarter over 7 1/4.
    faults = refused(sagged(drop=6))
    assert ("stock_too_narrow", "/beams/crosswise/sides") in {(f.code, f.pointer) for f in faults}
    narrow = next(fault for fault in faults if fault.code == "stock_too_narrow")
    assert narrow.figures["needed"] == inches("15/2")
    assert laid_out(sagged(drop="5 3/4")).levels is not None


def test_a_sagged_ceiling_is_told_to_read_uneven_and_to_have_its_framing_judged():
    codes = [caution.code for caution in laid_out(sagged()).cautions]
    assert "reveal_reads_uneven" in codes
    # 1 1/2 of 94 is more than 94/240, about 3/8.
    assert "ceiling_sags" in codes


# Laser heights of a porch ceiling neither flat nor level, in inches above the floor. The lowest is
# 95; a build-up of 5 1/2 puts all bottoms at 95 - 5 1/2 = 89 1/2. Side = height - 89 1/2; shim =
# height - 95.
PORCH = (
    ("H1", 0, "96", "13/2", "1"),
    ("H2", 60, "95 1/4", "23/4", "1/4"),
    ("H3", 120, "95", "11/2", "0"),
    ("H4", 180, "95 5/8", "49/8", "5/8"),
)


@pytest.mark.parametrize(("name", "at", "height", "side", "shim"), PORCH)
def test_bottoms_are_level_and_sides_and_shims_take_up_the_ceiling(
    name: str, at: int, height: str, side: str, shim: str
):
    stations = [{"length": 90, "width": place, "height": told} for _, place, told, _, _ in PORCH]
    layout = laid_out(
        {
            "room": {"length": 180, "width": 180, "stations": stations},
            "beams": {"crosswise": box("1x8", "1x6", drop="5 1/2")},
            "grid": {"length": run(2), "width": run(1)},
        }
    )
    levels = layout.levels
    assert levels is not None
    assert levels.plane.value == inches("95")
    assert levels.lowest == ("H3",)
    assert layout.headroom[0].clear_height.value == inches("179/2")
    place = next(p for p in line(levels, "XB-1").places if p.station == name)
    assert place.at.value == Length.of_inches(at)
    assert place.side.value == inches(side)
    assert place.shim.value == inches(shim)
