"""Seeded defects on the sheets of a room out of square: each is found under its own point."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.spoiled import Spoiled, points

SPEC: dict[str, Any] = {
    "units": "in",
    "room": {
        "height": 108,
        "survey": {
            "sides": {"W1": 180, "W2": 240, "W3": 178, "W4": 242},
            "diagonals": {"rising": 300},
            "bows": {"W3": {"in": "1/4"}},
        },
        "crooked": {"control": "W4"},
    },
    "grid": {
        "length": {"coffers": 3, "start": "half", "end": {"soffit": 10, "then": "half"}},
        "width": {"coffers": 2, "start": "half", "end": "full"},
    },
    "drawing": {"paper": "ansi_d"},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC)


def found(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[int]:
    """The points that are not kept once the first sheet, with the plan, is spoiled."""
    (svg, *others), answer = drawn
    sheet = Spoiled(svg)
    spoil(sheet)
    return points(check_set((sheet.svg, *others), answer, load_typeface()))


def cell(sheet: Spoiled, table: str, name: str, number: int = 0) -> tuple[Element, Element]:
    """A named cell of a table, by its row, and its text."""
    cells = [g for g in sheet.parts(table, "g") if g.get("data-name") == name]
    return cells[number], next(iter(cells[number]))


def test_the_sheet_as_drawn_has_no_findings(drawn: Drawn) -> None:
    assert found(drawn, lambda sheet: None) == set()


def test_a_wall_that_is_not_where_its_corners_are_is_found(drawn: Drawn) -> None:
    assert {16, 79} <= found(drawn, lambda sheet: sheet.move("wall-W3", 0.4, 0.0))


def test_a_wall_that_is_left_out_is_found(drawn: Drawn) -> None:
    assert 79 in found(drawn, lambda sheet: sheet.remove("wall-W2"))


def test_a_field_with_other_corners_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        field = sheet.part("object-view-1", "path")
        corner, *others = field.attrib["d"].split(" M")[0].split(" ")
        field.set("d", " ".join([f"M{float(corner[1:]) + 1:.3f}", *others]))

    assert found(drawn, spoil) == {79}


def test_a_strip_drawn_with_another_taper_is_found(drawn: Drawn) -> None:
    assert {16, 80} <= found(drawn, lambda sheet: sheet.move("wall-beam-WB-1", 0.5, 0))


@pytest.mark.parametrize("row", [1, 2, 3, 4, 5])
def test_a_strip_told_with_another_width_is_found(drawn: Drawn, row: int) -> None:
    def spoil(sheet: Spoiled) -> None:
        group, text = cell(sheet, "strips-table", "W2", row)
        group.set("data-value", "19 in")
        text.text = "1'-7\""

    assert found(drawn, spoil) == {80}


def test_a_strip_told_under_another_id_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        cell(sheet, "strips-table", "W2", 0)[1].text = "WB-1"

    assert found(drawn, spoil) == {80}


def test_a_board_too_narrow_for_its_strip_is_found(drawn: Drawn) -> None:
    """One step less than the least that holds it: near enough, and yet too narrow."""

    def spoil(sheet: Spoiled) -> None:
        group, text = cell(sheet, "strips-table", "W1", 5)
        inches = Fraction((group.get("data-value") or "").split()[0]) - Fraction(1, 16)
        whole, part = divmod(inches, 1)
        group.set("data-value", f"{inches} in")
        text.text = f'{whole} {part}"' if part else f'{whole}"'

    assert found(drawn, spoil) == {80}


def test_a_taper_that_its_ends_do_not_make_is_found(drawn: Drawn) -> None:
    """One step more than the ends differ by: near enough, and yet another figure."""

    def spoil(sheet: Spoiled) -> None:
        group, text = cell(sheet, "strips-table", "W1", 3)
        inches = Fraction((group.get("data-value") or "").split()[0]) + Fraction(1, 16)
        whole, part = divmod(inches, 1)
        group.set("data-value", f"{inches} in")
        text.text = f'{whole} {part}"' if whole else f'{part}"'

    assert found(drawn, spoil) == {80}


@pytest.mark.parametrize("name", ["length-overall-at-start", "width-overall-at-end"])
def test_an_end_without_an_overall_is_found(drawn: Drawn, name: str) -> None:
    assert 81 in found(drawn, lambda sheet: sheet.remove(f"string-{name}"))


@pytest.mark.parametrize("name", ["length-strips-at-start", "width-strips-at-end"])
def test_an_end_without_its_strips_is_found(drawn: Drawn, name: str) -> None:
    assert found(drawn, lambda sheet: sheet.remove(f"string-{name}")) == {81}


def test_an_overall_of_the_other_end_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        one = sheet.part("dim-length-overall-1", "text")
        other = sheet.part("dim-length-overall-at-start-1", "text")
        one.text, other.text = other.text, one.text

    assert {9, 10} <= found(drawn, spoil)


def test_a_control_line_along_another_wall_is_found(drawn: Drawn) -> None:
    assert found(drawn, lambda sheet: sheet.move("control-line", 0.0, -60.0)) >= {82}


def test_a_control_line_left_out_is_found(drawn: Drawn) -> None:
    assert found(drawn, lambda sheet: sheet.remove("control-line")) == {5, 82}


@pytest.mark.parametrize("table", ["strips-table", "wall-lengths-table", "modes-table"])
def test_a_table_left_out_is_found(drawn: Drawn, table: str) -> None:
    assert found(drawn, lambda sheet: sheet.remove(table)) == {83}


@pytest.mark.parametrize(
    ("table", "name"), [("wall-lengths-table", "length"), ("modes-table", "follow-walls")]
)
def test_a_length_told_otherwise_is_found(drawn: Drawn, table: str, name: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        group, text = cell(sheet, table, name, 1)
        group.set("data-value", "60 in")
        text.text = "5'-0\""

    assert found(drawn, spoil) == {83}


def test_marks_of_the_other_end_left_out_are_found(drawn: Drawn) -> None:
    assert found(drawn, lambda sheet: sheet.remove("marks-length-end")) == {12}
