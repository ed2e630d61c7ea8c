"""Points 26 and 27 on the story poles of a set, which are then spoiled: each defect is found."""

import re
from collections.abc import Callable
from typing import Any

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.spoiled import Spoiled

SPEC: dict[str, Any] = {
    "name": "Reading room",
    "room": {
        "length": 150,
        "width": 110,
        "height": 100,
        "members": [{"name": "S1", "on": "length", "center": 80, "width": 3.5, "drop": 4}],
    },
    "drawing": {"paper": "tabloid"},
}
Spoil = Callable[[Spoiled], object]


@pytest.fixture(scope="module", params=["tiles", "roll"])
def drawn(request: pytest.FixtureRequest) -> Drawn:
    return drawn_set({**SPEC, "drawing": {"paper": "tabloid", "story_poles": request.param}})


@pytest.fixture(scope="module")
def tiles() -> Drawn:
    return drawn_set({**SPEC, "drawing": {"paper": "tabloid", "story_poles": "tiles"}})


def found(drawn: Drawn, identity: str, spoil: Spoil) -> set[tuple[int, str]]:
    """What is found once the sheet that has an id is spoiled."""
    svgs, answer = drawn
    (number,) = (n for n, svg in enumerate(svgs) if f'id="{identity}"' in svg)
    sheet = Spoiled(svgs[number])
    spoil(sheet)
    others = [svg for n, svg in enumerate(svgs) if n != number]
    whole = [*others[:number], sheet.svg, *others[number:]]
    return {(each.point, each.where) for each in check_set(whole, answer, load_typeface())}


def test_the_set_as_drawn_has_no_findings(drawn: Drawn):
    assert found(drawn, "pole-length-table", lambda sheet: None) == set()


def test_a_table_with_another_figure_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        cells = [g for g in sheet.parts("pole-width-table", "g") if g.get("data-name") == "running"]
        next(iter(cells[2])).text = '7 1/8"'

    assert (26, "pole-width") in found(drawn, "pole-width-table", spoil)


def test_a_table_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.remove("pole-length-table")

    assert (26, "pole-length") in found(drawn, "pole-length-table", spoil)


def lines(sheet: Spoiled, strip: str) -> list[Any]:
    return [g for g in sheet.parts(strip, "g") if g.get("class") == "pole-line"]


def test_a_line_beside_its_place_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        path = next(iter(lines(sheet, "pole-length-1")[1]))
        (x, y), (_, end) = (part.split() for part in path.get("d")[1:].split(" L"))
        path.set("d", f"M{float(x) + 0.4} {y} L{float(x) + 0.4} {end}")

    assert (26, "pole-length-1") in found(drawn, "pole-length-1", spoil)


def test_a_line_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("pole-length-1").remove(lines(sheet, "pole-length-1")[1])

    assert (26, "pole-length-1") in found(drawn, "pole-length-1", spoil)


def numbers(sheet: Spoiled, strip: str) -> list[Any]:
    return [g for g in sheet.parts(strip, "g") if g.get("class") == "pole-number"]


def test_a_number_of_another_place_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        words = next(e for e in numbers(sheet, "pole-width-1")[1] if e.tag.endswith("text"))
        words.text = '5 1/16"'

    assert (26, "pole-width-1") in found(drawn, "pole-width-1", spoil)


def test_a_number_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("pole-width-1").remove(numbers(sheet, "pole-width-1")[0])

    assert (26, "pole-width-1") in found(drawn, "pole-width-1", spoil)


def test_a_strip_that_is_not_full_size_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        group = sheet.group("pole-width-1")
        group.set("data-to-mm", str(float(group.attrib["data-to-mm"]) + 0.5))

    assert (27, "pole-width-1") in found(drawn, "pole-width-1", spoil)


def test_a_strip_left_out_is_found(tiles: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.remove("pole-length-2")

    assert (27, "pole-length-3") in found(tiles, "pole-length-2", spoil)


def test_a_pole_without_strips_is_found(drawn: Drawn):
    svgs, answer = drawn
    left = [svg for svg in svgs if 'data-run="width" data-to-mm' not in svg]
    points = {(each.point, each.where) for each in check_set(left, answer, load_typeface())}
    assert {point for point, _ in points} >= {27}


def test_crosses_that_do_not_meet_are_found(tiles: Drawn):
    def spoil(sheet: Spoiled) -> None:
        cross = next(g for g in sheet.parts("pole-length-2", "g") if g.get("class") == "pole-cross")
        sheet.group("pole-length-2").remove(cross)

    assert (27, "pole-length-2") in found(tiles, "pole-length-2", spoil)


def test_a_check_bar_that_is_not_true_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        bar = next(g for g in sheet.root.iter() if g.get("class") == "check-bar")
        bar.set("data-length-mm", "152")

    assert {point for point, _ in found(drawn, "pole-length-1", spoil)} == {27}


def test_a_page_of_another_input_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        words = sheet.part("page-foot", "text")
        words.text = re.sub(r"DIGEST \w", "DIGEST g", words.text or "")

    assert {point for point, _ in found(drawn, "pole-length-1", spoil)} == {27}


def test_a_strip_off_the_paper_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.move("page-foot", 0.0, 30.0)

    assert 35 in {point for point, _ in found(drawn, "pole-length-1", spoil)}
