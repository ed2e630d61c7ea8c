"""Sheets to be read at half size: larger letters and lines, standard scales, true paper."""

import re
from fractions import Fraction

import pytest

from lacunar.drawing.elements import Circle, Group, Pen, Polyline, Pt, Segments, Text
from lacunar.drawing.enlarging import enlarged
from lacunar.drawing.paper import ARCHITECTURAL_SCALES, METRIC_SCALES
from tests.drawing.checker.drawn_sets import Drawn, drawn_set, points

SPECS = {
    "in": {
        "room": {"length": 182, "width": 148, "height": 106},
        "drawing": {"paper": "ansi_d", "legible_at": "half_size"},
    },
    "mm": {
        "units": "mm",
        "room": {"length": 4620, "width": 3760, "height": 2700},
        "drawing": {"paper": "a2", "legible_at": "half_size"},
    },
}


@pytest.fixture(scope="module", params=SPECS)
def drawn(request: pytest.FixtureRequest) -> Drawn:
    return drawn_set(SPECS[request.param])


def test_a_set_for_half_size_prints_passes(drawn: Drawn) -> None:
    assert points(*drawn) == set()


def test_letters_and_lines_are_those_that_the_standard_asks_for(drawn: Drawn) -> None:
    """3.5 mm and 0.25 mm on sheets that are reduced (university notes on EN ISO 128)."""
    for svg in drawn[0]:
        heights = [float(each) for each in re.findall(r'data-height="([\d.]+)"', svg)]
        widths = [float(each) for each in re.findall(r'stroke-width="([\d.]+)"', svg)]
        assert min(heights) >= 3.5
        assert min(widths) >= 0.25


def test_views_are_at_standard_scales(drawn: Drawn) -> None:
    standard = {(str(s.ratio), s.text) for s in (*ARCHITECTURAL_SCALES, *METRIC_SCALES)}
    found = set()
    for svg in drawn[0]:
        for view in re.findall(r'<g [^>]*class="view"[^>]*>', svg):
            scale = re.search(r'data-scale="([^"]*)"', view)
            text = re.search(r'data-scale-text="([^"]*)"', view)
            if scale and text:
                found.add((scale[1], text[1].replace("&quot;", '"')))
    assert found
    assert found <= standard


def test_letters_of_usual_size_are_found(drawn: Drawn) -> None:
    svgs, answer = drawn
    spoiled = [svg.replace('data-half-size="legible"', "") for svg in svgs]
    assert {31, 32, 38} & points(spoiled, answer) == {32, 38}
    usual = drawn_set({**SPECS["in"], "drawing": {"paper": "ansi_d"}})
    spoiled = [svg.replace("data-step=", 'data-half-size="legible" data-step=') for svg in usual[0]]
    assert points(spoiled, usual[1]) >= {31, 32, 38}


def test_all_is_enlarged_alike() -> None:
    pen, factor = Pen("p", 1.0, (2.0, 1.0)), Fraction(7, 5)
    here = Pt(10.0, 20.0)
    things = (
        Polyline((here, here), pen, closed=True),
        Segments(((here, here),), pen),
        Circle(here, 5.0, None),
        Group("view", (Text(here, "A", 2.5),), data={"scale": "28/5", "view": "plan"}),
    )
    there, thick = Pt(14.0, 28.0), Pen("p", 1.4, (2.8, 1.4))
    assert enlarged(things, factor) == (
        Polyline((there, there), thick, closed=True),
        Segments(((there, there),), thick),
        Circle(there, 7.0, None),
        Group("view", (Text(there, "A", 3.5),), data={"scale": "4", "view": "plan"}),
    )
    assert enlarged(things, Fraction(1)) is things
