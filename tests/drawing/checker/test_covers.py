"""Points on pictures, covers and steps: each defect seeded into a set of sheets, and seen."""

from collections.abc import Callable
from copy import deepcopy
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set, found, points
from tests.drawing.checker.spoiled import Spoiled, moved_path

SHEETS = ("Z-001", "Z-101", "Z-102", "Z-701", "Z-901")
SPEC: dict[str, Any] = {
    "name": "Small room",
    "room": {"length": 182, "width": 148, "height": 106},
    "crown": {"face": "3 1/4", "spring_from_wall": 38},
    "drawing": {"paper": "tabloid", "revision": "A", "date": "2026-03-02"},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC, SHEETS)


def spoiled(drawn: Drawn, number: int, spoil: Callable[[Spoiled], object]) -> set[int]:
    """The points not kept once the sheet of a number is spoiled."""
    svgs, answer = drawn
    sheet = Spoiled(svgs[number])
    spoil(sheet)
    return points([*svgs[:number], sheet.svg, *svgs[number + 1 :]], answer)


def with_answer(drawn: Drawn, change: Callable[[Any], None]) -> set[int]:
    """The points not kept where the layout says something else."""
    svgs, answer = drawn
    other = deepcopy(answer)
    change(other)
    return points(svgs, other)


def row(sheet: Spoiled, kind: str, of: str) -> Any:
    return next(
        one for one in sheet.root.iter() if one.get("class") == kind and one.get("data-of") == of
    )


def edges(sheet: Spoiled, kind: str, *, level: bool = True) -> Any:
    """The first group of lines of a kind, level or not."""
    return next(
        one
        for one in sheet.root.iter()
        if one.get("class") == "edges"
        and one.get("data-kind") == kind
        and (one.get("data-low-mm") == one.get("data-high-mm")) is level
    )


def test_the_set_is_clean(drawn: Drawn):
    assert found(*drawn) == set()


def test_1_a_sheet_that_is_left_out_of_the_set(drawn: Drawn):
    svgs, answer = drawn
    assert 1 in points([*svgs[:2], *svgs[3:]], answer)


@pytest.mark.parametrize(
    ("name", "value"),
    [("of", "Z-103"), ("pages", "7"), ("title", "Plan"), ("scale", "1:20")],
)
def test_1_an_index_that_tells_something_else(drawn: Drawn, name: str, value: str):
    def spoil(sheet: Spoiled) -> None:
        row(sheet, "sheet-row", "Z-101").set(f"data-{name}", value)

    assert 1 in spoiled(drawn, 0, spoil)


def test_1_an_index_lettered_otherwise(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        text = next(t for t in row(sheet, "sheet-row", "Z-102").iter() if t.text == "Z-102")
        text.text = "Z-120"

    assert 1 in spoiled(drawn, 0, spoil)


def test_1_a_page_that_is_counted_wrong(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        field = next(one for one in sheet.root.iter() if one.get("data-field") == "page")
        field.set("data-value", "9 / 9")

    assert 1 in spoiled(drawn, 1, spoil)


def test_1_a_number_that_stands_on_two_sheets(drawn: Drawn):
    svgs, answer = drawn
    assert 1 in points([*svgs, svgs[-1]], answer)


@pytest.mark.parametrize("name", ["revision", "date", "digest"])
def test_2_a_sheet_of_another_issue(drawn: Drawn, name: str):
    def spoil(sheet: Spoiled) -> None:
        field = next(one for one in sheet.root.iter() if one.get("data-field") == name)
        field.set("data-value", "B")

    assert 2 in spoiled(drawn, 2, spoil)


def test_2_a_sheet_drawn_from_another_input(drawn: Drawn):
    assert 2 in spoiled(drawn, 2, lambda sheet: sheet.root.set("data-digest", "0" * 64))


def test_3_a_sheet_of_another_paper(drawn: Drawn):
    assert 3 in spoiled(drawn, 1, lambda sheet: sheet.root.set("data-paper", "ansi_c"))


@pytest.mark.parametrize("kind", ["beam", "wall-beam", "crown", "wall"])
def test_110_lines_that_are_moved(drawn: Drawn, kind: str):
    def spoil(sheet: Spoiled) -> None:
        path = next(one for one in edges(sheet, kind) if one.get("d"))
        path.set("d", moved_path(path.get("d"), 0.3, 0.1))

    assert 110 in spoiled(drawn, 0, spoil)


@pytest.mark.parametrize("kind", ["beam", "crown"])
def test_110_lines_at_another_height(drawn: Drawn, kind: str):
    def spoil(sheet: Spoiled) -> None:
        for name in ("data-low-mm", "data-high-mm"):
            edges(sheet, kind).set(name, "-20.000")

    assert 110 in spoiled(drawn, 0, spoil)


def test_110_upright_lines_that_are_moved(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        path = next(one for one in edges(sheet, "beam", level=False) if one.get("d"))
        path.set("d", moved_path(path.get("d"), 0.3, 0.0))

    assert 110 in spoiled(drawn, 0, spoil)


def test_110_a_datum_elsewhere(drawn: Drawn):
    assert 110 in spoiled(drawn, 0, lambda sheet: sheet.move("datum-below", 1.0, 0.0))


def test_110_a_beam_that_is_not_to_be_seen(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        for one in sheet.root.iter():
            if one.get("class") == "edges" and one.get("data-of") == "XB-1":
                one.set("data-of", "XB-2")

    assert 110 in spoiled(drawn, 0, spoil)


def test_110_a_beam_that_is_laid_out_deeper(drawn: Drawn):
    def change(answer: Any) -> None:
        for profile in answer["profiles"]:
            profile["drop"] = {**profile["drop"], "exact": "12 in"}

    assert 110 in with_answer(drawn, change)


def test_111_data_that_is_not_the_layouts(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        row(sheet, "ceiling-data-row", "headroom").set("data-value", "12 in")

    assert 111 in spoiled(drawn, 0, spoil)


def test_111_data_that_is_missing(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        row(sheet, "ceiling-data-row", "limit").set("data-of", "units")

    assert 111 in spoiled(drawn, 0, spoil)


def test_112_a_wall_that_the_key_plan_does_not_name(drawn: Drawn):
    assert 112 in spoiled(drawn, 0, lambda sheet: sheet.remove("tag-key-wall-W3"))


def test_112_a_coffer_that_the_key_plan_does_not_have(drawn: Drawn):
    assert 112 in spoiled(drawn, 0, lambda sheet: sheet.remove("key-coffer-A1"))


def test_112_rows_named_otherwise(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        name = row(sheet, "row-name", "A")
        next(one for one in name.iter() if one.text == "A").text = "Z"

    assert 112 in spoiled(drawn, 0, spoil)


def test_113_steps_in_another_order(drawn: Drawn):
    def change(answer: Any) -> None:
        answer["fitting"]["steps"].reverse()

    assert 113 in with_answer(drawn, change)


def test_113_a_balloon_that_is_missing(drawn: Drawn):
    assert 113 in spoiled(drawn, -1 % len(drawn[0]), lambda sheet: sheet.remove("tag-step-3"))


def test_113_a_balloon_with_another_number(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("tag-step-3", "text").text = "4"

    assert 113 in spoiled(drawn, len(drawn[0]) - 1, spoil)


def test_113_a_step_that_says_it_is_not_pictured(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        texts = [one for one in row(sheet, "fitting-row", "3").iter() if one.tag.endswith("text")]
        texts[-1].text = "NOT PICTURED"

    assert 113 in spoiled(drawn, len(drawn[0]) - 1, spoil)
