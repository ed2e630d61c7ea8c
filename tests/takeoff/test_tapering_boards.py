"""Boards of beams at walls that are out of square, as wide as the wall asks."""

import json
from fractions import Fraction
from pathlib import Path

import pytest

from lacunar.layout.records import Layout
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.part_records import Part, PartKind
from lacunar.takeoff.taken_off import take_off
from tests.laws.random_surveys import random_surveys
from tests.layout.laying_out import Spec, figures_in, inches, laid_out
from tests.layout.test_outlines import room
from tests.layout.test_survey import SQUARE, TRAPEZOID, surveyed
from tests.rule_evaluation import contradictions
from tests.takeoff.reconciling import unlike

EXAMPLES = Path(__file__).parents[2] / "examples" / "ceilings"
# W3 leans out by 3 1/2 of 144: with 2 3/4 of its straight bottom that is 6 1/4.
FAR_OUT: Spec = {
    "points": {**TRAPEZOID["points"], "W2-W3": {"x": "183.5", "y": 144}},
}


def bottom_at(layout: Layout, beam: str) -> Part:
    (part,) = (
        part
        for part in take_off([layout]).parts
        if part.kind is PartKind.BOTTOM and any(beam in place.of for place in part.places)
    )
    return part


def test_a_bottom_is_as_wide_as_its_strip_is_there():
    """By hand: W3 leans out by 1 1/2 over the 144 that the clear line along it is long.

    A half beam of 7 is 3 1/2 wide, its bottom behind a side of 3/4 is 2 3/4. It lies from W4's half
    beam at 3 1/2 to W2's at 140 1/2: 2 3/4 + 3/2 * 7/288 = 535/192 there, and 2 3/4 + 3/2 * 281/288
    = 809/192 here. Who looks at its face, the wall away, has W4 to the left. 1x6 is wide enough.
    """
    part = bottom_at(laid_out(surveyed(TRAPEZOID)), "WB-3")
    assert part.width is not None
    assert (part.left.width, part.right.width) == (inches("535/192"), inches("809/192"))
    assert part.width.value == inches("2 3/4") + inches("3/2") * Fraction(281, 288)
    assert part.tapered
    assert part.material.name == "1x6"
    straight = bottom_at(laid_out(surveyed(TRAPEZOID)), "WB-1")
    assert straight.width is not None
    assert (straight.width.value, straight.left.width) == (inches("2 3/4"), None)
    assert not straight.tapered


def test_at_a_wall_to_the_left_the_taper_has_the_other_hand():
    """Mirrored: W1 leans out at its upper end, which is to the left of who looks at the bottom."""
    points = {
        **TRAPEZOID["points"],
        "W2-W3": {"x": 180, "y": 144},
        "W1-W2": {"x": "-1.5", "y": 144},
    }
    layout = laid_out(surveyed({"points": points}, crooked={"control": "W4"}))
    part = bottom_at(layout, "WB-1")
    assert (part.left.width, part.right.width) == (inches("809/192"), inches("535/192"))


def test_a_bow_out_of_the_room_is_left_on_the_board():
    """By hand: the wall's middle lies 1/2 behind its straight line: 2 3/4 + 1/2."""
    part = bottom_at(laid_out(surveyed({**SQUARE, "bows": {"W3": {"out": "1/2"}}})), "WB-3")
    assert part.width is not None
    assert part.width.value == inches("3 1/4")
    assert (part.left.width, part.right.width) == (inches("2 3/4"), inches("2 3/4"))


def test_wider_stock_is_taken_where_there_is_some():
    """By hand: 2 3/4 + 3 1/2 = 6 1/4 is over the 5 1/2 of 1x6; the next published is 1x7, 6 1/2."""
    layout = laid_out(surveyed(FAR_OUT))
    part = bottom_at(layout, "WB-3")
    assert part.material.name == "1x7"
    assert bottom_at(layout, "WB-1").material.name == "1x6"
    assert "tapers_wider_than_stock" not in [caution.code for caution in layout.cautions]


def test_where_no_stock_is_wide_enough_a_caution_tells():
    """By hand: 2 3/4 + 14 = 16 3/4 is over the 15 1/4 of 1x16, the widest published."""
    points = {**TRAPEZOID["points"], "W2-W3": {"x": 194, "y": 144}}
    (caution,) = (
        each
        for each in laid_out(surveyed({"points": points})).cautions
        if each.code == "tapers_wider_than_stock"
    )
    assert caution.figures["wall"] == "W3"
    assert caution.figures["needed"] == inches("16 3/4")


def test_only_walls_of_other_rooms_are_cautioned():
    taken = take_off([laid_out(surveyed(TRAPEZOID))])
    assert "tapers_not_taken_off" not in [caution.code for caution in taken.cautions]
    corners = ((0, 0), (0, 180), (144, 180), (144, 108), (240, 108), (241, 0))
    ell = {"points": [{"x": x, "y": y} for x, y in corners]}
    codes = {each.code for each in take_off([laid_out(room(ell, (5, 4)))]).cautions}
    assert "tapers_not_taken_off" in codes


@pytest.mark.parametrize("name", ["attic_study", "corner_parlor"])
def test_boards_of_an_example_in_a_crooked_room(name: str):
    layout = laid_out(json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8")))
    parts = take_off([layout]).parts
    assert unlike(layout, parts) == []
    figures = [*figures_in(layout.crooked), *(part.width for part in parts if part.width)]
    assert [line for figure in figures for line in contradictions(figure)] == []


def test_boards_of_random_crooked_rooms_are_what_their_layouts_tell():
    counted = 0
    for spec in random_surveys(5, 5):
        try:
            layout = laid_out(spec)
        except SpecRefused:
            continue
        parts = take_off([layout]).parts
        assert unlike(layout, parts) == [], spec
        counted += any(end.width is not None for part in parts for end in (part.left, part.right))
    assert counted
