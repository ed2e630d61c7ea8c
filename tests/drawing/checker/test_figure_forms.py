"""How figures are written, what tells how views are looked at, and members without a section."""

import re

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set, found, points

SPEC = {
    "room": {
        "length": 243.5,
        "width": 178,
        "height": 109,
        "members": [
            {"name": "S1", "on": "length", "center": 121, "width": 3.5, "drop": 5.5, "cleat": 0}
        ],
    },
    "drawing": {"paper": "ansi_d"},
}
METRIC = {
    "units": "mm",
    "room": {"length": 4620, "width": 3760, "height": 2700},
    "drawing": {"paper": "a2"},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC)


def respelled(drawn: Drawn, one: str, other: str) -> set[int]:
    svgs, answer = drawn
    spoiled = [svg.replace(f">{one}<", f">{other}<") for svg in svgs]
    assert spoiled != svgs
    return points(spoiled, answer)


def test_sound_sets_pass(drawn: Drawn) -> None:
    assert points(*drawn) == set()
    assert points(*drawn_set(METRIC)) == set()


@pytest.mark.parametrize(
    "other",
    [
        "20'-3 2/4&quot;",  # not reduced
        "20'-3 5/10&quot;",  # not of a tape
        "19'-15 1/2&quot;",  # more than a foot in the inches
        "243 1/2&quot;",  # no feet
        "20'-3.5&quot;",  # decimals
    ],
)
def test_a_figure_written_in_another_way_is_found(drawn: Drawn, other: str) -> None:
    found_points = respelled(drawn, "20'-3 1/2\"", other)
    assert 46 in found_points


def test_zero_inches_are_written(drawn: Drawn) -> None:
    svgs, answer = drawn_set({**SPEC, "room": {"length": 240, "width": 180, "height": 108}})
    spoiled = [svg.replace(">20'-0\"<", ">20'<") for svg in svgs]
    assert spoiled != svgs
    assert 46 in points(spoiled, answer)


def test_thousands_run_together_are_found() -> None:
    assert respelled(drawn_set(METRIC), "4\N{THIN SPACE}620", "4620") == {46}


def test_a_title_block_without_projection_or_units_is_found(drawn: Drawn) -> None:
    svgs, answer = drawn
    spoiled = [svg.replace('class="projection-symbol"', 'class="sign"') for svg in svgs]
    assert points(spoiled, answer) == {7}
    spoiled = [svg.replace('data-value="ft-in"', 'data-value="ft"') for svg in svgs]
    assert 7 in points(spoiled, answer)


def test_a_member_without_a_section_is_found(drawn: Drawn) -> None:
    svgs, answer = drawn
    profile = next(beam["profile"] for beam in answer["beams"] if beam["member"])
    beam = next(beam["id"] for beam in answer["beams"] if beam["member"])
    spoiled = [re.sub(rf'data-profile="{profile}"', 'data-profile="P0"', svg) for svg in svgs]
    assert (29, beam) in found(spoiled, answer)
