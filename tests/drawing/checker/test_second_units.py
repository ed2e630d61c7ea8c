"""Dimensions in two units: both figures are of one length, and a spoiled one is found."""

import json

import pytest

from lacunar.measure.units import Units
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import prepare
from tests.drawing.checker.drawn_sets import Drawn, drawn_set, points

ROOM = {"length": 182, "width": 148, "height": 106}
SPEC = {"room": ROOM, "drawing": {"paper": "ansi_d", "second_units": "mm"}}
METRIC = {
    "units": "mm",
    "room": {"length": 4620, "width": 3760, "height": 2700},
    "drawing": {"paper": "a2", "second_units": "in"},
}


@pytest.fixture(scope="module", params=[SPEC, METRIC], ids=["in [mm]", "mm [in]"])
def drawn(request: pytest.FixtureRequest) -> Drawn:
    return drawn_set(request.param)


def test_a_sound_set_passes(drawn: Drawn) -> None:
    assert points(*drawn) == set()


def test_a_length_is_told_as_it_is_in_both_units() -> None:
    """182 in x 25.4 mm/in = 4622.8 mm (1 in = 25.4 mm exactly, international yard, 1959)."""
    svgs, _ = drawn_set(SPEC)
    assert ">15'-2\" [4\N{THIN SPACE}623]<" in svgs[0].replace("&quot;", '"')


def test_a_figure_that_is_off_is_found() -> None:
    svgs, answer = drawn_set(SPEC)
    spoiled = [svg.replace("[4\N{THIN SPACE}623]", "[4\N{THIN SPACE}632]") for svg in svgs]
    assert points(spoiled, answer) == {47}


def test_a_figure_left_out_is_found() -> None:
    svgs, answer = drawn_set(SPEC)
    spoiled = [svg.replace(" [4\N{THIN SPACE}623]<", "<") for svg in svgs]
    assert points(spoiled, answer) == {47}


def test_units_that_are_the_ceilings_own_are_refused() -> None:
    with pytest.raises(SpecRefused) as refusal:
        prepare(json.dumps({"room": ROOM, "drawing": {"second_units": "in"}}).encode())
    assert [(each.code, each.pointer) for each in refusal.value.faults] == [
        ("second_units_alike", "/drawing/second_units")
    ]


def test_a_ceiling_told_in_its_second_units_has_its_own_in_brackets() -> None:
    told = prepare(json.dumps(SPEC).encode(), units=Units.MILLIMETER).layout.ceiling
    assert (told.units, told.drawing.second_units) == (Units.MILLIMETER, Units.INCH)
