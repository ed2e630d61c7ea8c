"""What the crown sheet prints held against published settings for square corners.

Source: the crown tables in owner's manuals of compound-miter saws, as in `test_crown_published`:
spring 38: miter 31.62, bevel 33.86; 45: 35.26 and 30.00; 52: 38.24 and 25.81. A trade thread on
cutting crown flat has 31.5 and 33.9 for 38.
"""

import math
import re

import pytest

from tests.drawing.checker.drawn_sets import drawn_set

PUBLISHED = [(38, 31.62, 33.86), (45, 35.26, 30.00), (52, 38.24, 25.81)]


def crown_sheet(spring: int) -> str:
    spec = {
        "room": {"length": 192, "width": 144, "height": 108},
        "grid": {"length": {"coffers": 3}, "width": {"coffers": 2}},
        "crown": {"face": "3 1/4", "spring_from_wall": spring},
        "drawing": {"paper": "arch_c"},
    }
    svgs, _ = drawn_set(spec, ["Z-503"])
    return "".join(svgs)


def printed(svg: str, name: str) -> list[float]:
    """What stands in the cells of a name, as it is printed."""
    cells = re.findall(rf'<g[^>]*data-name="{name}"[^>]*>\s*<text[^>]*>([^<]*)</text>', svg)
    return [float(text.removesuffix("°")) for text in cells]


@pytest.mark.parametrize(("spring", "miter", "bevel"), PUBLISHED)
def test_the_saw_table_prints_the_published_settings(spring: int, miter: float, bevel: float):
    svg = crown_sheet(spring)
    assert printed(svg, "angle") == [90.0]
    assert printed(svg, "nested") == [45.0]
    assert printed(svg, "miter") == [pytest.approx(miter, abs=0.05)]
    assert printed(svg, "bevel") == [pytest.approx(bevel, abs=0.05)]


@pytest.mark.parametrize(("spring", "miter", "bevel"), PUBLISHED)
def test_the_pictures_of_the_saw_say_the_published_settings(
    spring: int, miter: float, bevel: float
):
    words = re.findall(r">TABLE ([\d.]+)° (LEFT|RIGHT), BLADE ([\d.]+)° LEFT<", crown_sheet(spring))
    assert [hand for _, hand, _ in words] == ["LEFT", "RIGHT"]
    for table, _, blade in words:
        assert float(table) == pytest.approx(miter, abs=0.05)
        assert float(blade) == pytest.approx(bevel, abs=0.05)


@pytest.mark.parametrize(("spring", "miter", "bevel"), PUBLISHED)
def test_an_unfolded_piece_runs_back_by_the_published_miter(
    spring: int, miter: float, bevel: float
):
    """A piece on its back is cut by the miter of the saw: so does its end lie as it is drawn."""
    piece = re.search(r'class="crown-piece".*?d="([^"]*)"', crown_sheet(spring), re.DOTALL)
    assert piece is not None
    numbers = [float(word.lstrip("ML")) for word in piece[1].split() if word != "Z"]
    (low_x, low_y), (top_x, top_y) = numbers[0:2], numbers[2:4]
    assert math.degrees(math.atan((top_x - low_x) / (low_y - top_y))) == pytest.approx(
        miter, abs=0.05
    )
