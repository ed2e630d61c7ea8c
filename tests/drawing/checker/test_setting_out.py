"""Points 11, 17, 93 and 94 on setting-out plans, which are then spoiled: each defect is found."""

from collections.abc import Callable
from typing import Any

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.spoiled import Spoiled

SQUARE: dict[str, Any] = {"length": 240, "width": 180, "height": 108}
SURVEYED: dict[str, Any] = {
    "height": 108,
    "survey": {
        "sides": {"W1": 180, "W2": 240, "W3": 178, "W4": 242},
        "diagonals": {"rising": 300},
    },
}
ALONG_WALLS = {**SURVEYED, "crooked": {"mode": "follow_walls"}}
ROOMS = {"square": SQUARE, "surveyed": SURVEYED, "along walls": ALONG_WALLS}
GRID = {"length": {"coffers": 4}, "width": {"coffers": 3}}


@pytest.fixture(scope="module", params=ROOMS)
def drawn(request: pytest.FixtureRequest) -> Drawn:
    room = ROOMS[request.param]
    return drawn_set({"room": room, "grid": GRID, "drawing": {"paper": "ansi_d"}})


def found(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[tuple[int, str]]:
    """What is found once the setting-out sheet is spoiled."""
    svgs, answer = drawn
    (number,) = (n for n, svg in enumerate(svgs) if 'id="running-length-start"' in svg)
    sheet = Spoiled(svgs[number])
    spoil(sheet)
    whole = [*svgs[:number], sheet.svg, *svgs[number + 1 :]]
    return {(each.point, each.where) for each in check_set(whole, answer, load_typeface())}


def of_class(sheet: Spoiled, group: str, name: str) -> list[Any]:
    return [each for each in sheet.parts(group, "g") if each.get("class") == name]


def test_the_set_as_drawn_has_no_findings(drawn: Drawn):
    assert found(drawn, lambda sheet: None) == set()


def test_a_figure_that_is_no_mark_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("running-length-end-3", "text").text = "4'-4 1/4\""

    assert (11, "running-length-end-3") in found(drawn, spoil)


def test_a_laser_off_its_place_or_left_out_is_found():
    """12 in off W4 is 304.8 mm (1 in = 25.4 mm)."""
    square = drawn_set({"room": SQUARE, "grid": GRID, "drawing": {"paper": "ansi_d"}})

    def shift(sheet: Spoiled) -> None:
        line = sheet.group("laser-line-width")
        assert line.get("data-offset-mm") == "304.8"
        line.set("data-offset-mm", "300")

    assert found(square, shift) == {(94, "laser-line-width")}
    assert found(square, lambda sheet: sheet.remove("laser-line-length")) == {(94, "view-1")}


def test_a_figure_left_out_is_found(drawn: Drawn):
    spoil = lambda sheet: sheet.remove("running-width-start-2")  # noqa: E731
    assert (11, "running-width-start") in found(drawn, spoil)


def test_a_figure_that_leads_elsewhere_is_found(drawn: Drawn):
    assert (11, "running-width-end-2") in found(
        drawn, lambda sheet: sheet.move("running-width-end-2", 0.0, 0.3)
    )


def test_a_line_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        lines = of_class(sheet, "object-view-1", "snap-line")
        sheet.group("object-view-1").remove(lines[2])

    assert (93, "view-1") in found(drawn, spoil)


def test_a_line_beside_its_marks_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        line = next(
            each
            for each in of_class(sheet, "object-view-1", "snap-line")
            if each.get("data-of") == "XB-2" and each.get("data-kind") == "face"
        )
        for path in line:
            start, end = path.get("d")[1:].split(" L")
            x, y = end.split()
            path.set("d", f"M{start} L{float(x) + 0.3} {y}")

    assert (93, "view-1") in found(drawn, spoil)


@pytest.mark.parametrize(("row", "words"), [(0, "24'-11\""), (-1, "11'-0\"")])
def test_a_check_that_is_not_true_is_found(drawn: Drawn, row: int, words: str):
    def spoil(sheet: Spoiled) -> None:
        cells = of_class(sheet, "checks-table", "cell")
        next(iter(cells[row])).text = words

    assert (17, "checks-table") in found(drawn, spoil)


def test_a_right_angle_in_a_grid_along_walls_is_found():
    """Its corners are the room's, which are not square: three, four and five would mislead."""
    drawn = drawn_set({"room": ALONG_WALLS, "grid": GRID, "drawing": {"paper": "ansi_d"}})

    def spoil(sheet: Spoiled) -> None:
        of_class(sheet, "checks-table", "check-row")[0].set("data-of", "5 OF 3-4-5")

    assert (17, "checks-table") in found(drawn, spoil)
