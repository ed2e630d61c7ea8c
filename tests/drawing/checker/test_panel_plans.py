"""Points 22, 67 and 124 to 128 on panel plans, which are then spoiled: each defect is found."""

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.drawn_sets import found as found_in
from tests.drawing.checker.spoiled import Spoiled
from tests.drawing.checker.test_backing_plans import retell

ROOM: dict[str, Any] = {"length": 240, "width": 180, "height": 108}
GRID = {"length": {"coffers": 3}, "width": {"coffers": 2}}
BOARDS = {"kind": "boards", "cover": "5 1/8", "parallel_to": "length"}
SHEETS = {"kind": "sheet_goods", "sheet": {"width": 36, "length": 60}, "grain": "width"}
PAPER = {"paper": "ansi_c", "sheets": ["Z-104"]}
CROOKED = {
    "height": 108,
    "survey": {
        "sides": {"W1": 180, "W2": 240, "W3": 174, "W4": 242},
        "diagonals": {"rising": 300},
    },
    "crooked": {"mode": "follow_walls", "out_of_square": "mitred_to_corners"},
}


def drawn_with(panel: dict[str, Any], room: dict[str, Any] = ROOM) -> Drawn:
    return drawn_set({"room": room, "grid": GRID, "panel": panel, "drawing": PAPER})


@pytest.fixture(scope="module")
def boards() -> Drawn:
    return drawn_with(BOARDS)


@pytest.fixture(scope="module")
def sheets() -> Drawn:
    return drawn_with(SHEETS)


@pytest.fixture(scope="module")
def tapered() -> Drawn:
    return drawn_with(BOARDS, CROOKED)


def found(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[tuple[int, str]]:
    """What is found once the sheet that has it is spoiled."""
    svgs, answer = drawn
    for number, svg in enumerate(svgs):
        sheet = Spoiled(svg)
        try:
            spoil(sheet)
        except (ValueError, IndexError, StopIteration):
            continue
        return found_in([*svgs[:number], sheet.svg, *svgs[number + 1 :]], answer)
    raise AssertionError("nothing to be spoiled")


def joints(sheet: Spoiled, coffer: str) -> Any:
    (group,) = [each for each in sheet.group(f"field-{coffer}") if each.get("class") == "joints"]
    return group


def in_life(sheet: Spoiled, inches: float) -> float:
    """So many inches of the room on paper [mm]."""
    return inches * 25.4 / float(sheet.group("view-1").get("data-scale") or "1")


def moved_joints(sheet: Spoiled, coffer: str, dx: float, dy: float) -> None:
    group = joints(sheet, coffer)
    group.set("id", "moved-joints")
    sheet.move("moved-joints", dx, dy)


def test_sets_as_drawn_have_no_findings(boards: Drawn, sheets: Drawn, tapered: Drawn):
    for drawn in (boards, sheets, tapered):
        assert found(drawn, lambda sheet: None) == set()


def test_joints_elsewhere_are_found(boards: Drawn):
    assert (124, "field-B2") in found(boards, lambda sheet: moved_joints(sheet, "B2", 0.0, 0.3))


def test_seams_elsewhere_are_found(sheets: Drawn):
    assert (124, "field-A1") in found(sheets, lambda sheet: moved_joints(sheet, "A1", 0.3, 0.3))


def test_joints_left_out_are_found(boards: Drawn):
    def spoil(sheet: Spoiled) -> None:
        group = joints(sheet, "A1")
        for path in list(group):
            lines = path.get("d").split("M")[1:]
            path.set("d", "M" + "M".join(lines[2:]))

    assert (124, "field-A1") in found(boards, spoil)


def test_a_field_left_out_is_found(boards: Drawn):
    assert (124, "view-1") in found(boards, lambda sheet: sheet.remove("field-A3"))


def test_joints_outside_a_coffer_that_tapers_are_found(tapered: Drawn):
    spoil = lambda sheet: moved_joints(sheet, "A1", 9.0, 0.0)  # noqa: E731
    assert (124, "field-A1") in found(tapered, spoil)


def test_another_first_board_where_a_coffer_tapers_is_found(tapered: Drawn):
    spoil = lambda sheet: moved_joints(sheet, "A1", 0.0, -1.0)  # noqa: E731
    assert (124, "field-A1") in found(tapered, spoil)


def test_a_coffer_without_its_id_is_found(boards: Drawn):
    assert (126, "coffer-B1") in found(boards, lambda sheet: sheet.remove("tag-coffer-B1"))


def test_an_id_in_another_coffer_is_found(boards: Drawn):
    spoil = lambda sheet: sheet.move("tag-coffer-B1", 0.0, in_life(sheet, 84))  # noqa: E731
    assert (126, "coffer-B1") in found(boards, spoil)


def test_a_start_at_the_wrong_side_is_found(boards: Drawn):
    spoil = lambda sheet: sheet.move("start-A2", 0.0, -in_life(sheet, 60))  # noqa: E731
    assert (127, "start-A2") in found(boards, spoil)


def test_an_arrow_the_other_way_is_found(sheets: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("direction-A1").set("data-parallel-to", "length")

    assert (67, "direction-A1") in found(sheets, spoil)


def test_a_size_counted_wrong_is_found(boards: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("field-size-1", "text").text = "5X"

    assert (128, "field-size-1") in found(boards, spoil)


@pytest.mark.parametrize("name", ["fields", "courses", "boards", "length", "first-rip"])
def test_a_table_of_boards_that_tells_another_figure_is_found(boards: Drawn, name: str):
    spoil = lambda sheet: retell(sheet, "board-field", "A1 + 5", name, "77")  # noqa: E731
    assert (125, "board-fields-table") in found(boards, spoil)


@pytest.mark.parametrize("name", ["panels", "seams", "length", "width"])
def test_a_table_of_panels_that_tells_another_figure_is_found(sheets: Drawn, name: str):
    def spoil(sheet: Spoiled) -> None:
        of = next(
            each.get("data-of") or ""
            for each in sheet.root.iter()
            if each.get("class") == "panel-size-row"
        )
        retell(sheet, "panel-size", of, name, "77")

    assert (125, "panel-sizes-table") in found(sheets, spoil)


def test_a_seam_told_at_another_place_is_found(sheets: Drawn):
    def spoil(sheet: Spoiled) -> None:
        of = next(
            each.get("data-of") or ""
            for each in sheet.root.iter()
            if each.get("class") == "panel-seam-row"
        )
        retell(sheet, "panel-seam", of, "at", '77"')

    assert (125, "panel-seams-table") in found(sheets, spoil)


@pytest.mark.parametrize("name", ["start", "end"])
def test_a_taper_told_with_another_end_is_found(tapered: Drawn, name: str):
    spoil = lambda sheet: retell(sheet, "board-taper", "A1", name, '77"')  # noqa: E731
    assert (125, "board-tapers-table") in found(tapered, spoil)


@pytest.mark.parametrize("name", ["edge", "across"])
def test_rips_that_do_not_add_up_are_found(boards: Drawn, name: str):
    spoil = lambda sheet: retell(sheet, "board-field", "A1 + 5", name, "77")  # noqa: E731
    assert (22, "board-fields-table") in found(boards, spoil)


def test_edges_of_half_a_cover_are_found(boards: Drawn):
    """In the layout itself, which the sheet can only repeat."""
    svgs, answer = boards
    spoiled = deepcopy(answer)
    laid = spoiled["panel"]["boards"]["fields"][0]["courses"]
    laid["edge"]["exact"] = "1 in"
    assert (22, "field-A1") in found_in(svgs, spoiled)
