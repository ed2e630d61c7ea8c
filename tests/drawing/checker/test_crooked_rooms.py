"""Seeded defects on the sheets of a room out of square: each is found under its own point."""

import re
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


ALONG: dict[str, Any] = {
    **SPEC,
    "room": {
        **SPEC["room"],
        "crooked": {"mode": "follow_walls", "out_of_square": "mitred_to_corners"},
    },
    "crown": {"face": "2 1/2"},
}


@pytest.fixture(scope="module")
def along() -> Drawn:
    return drawn_set(ALONG)


def test_a_grid_along_the_walls_as_drawn_has_no_findings(along: Drawn) -> None:
    assert found(along, lambda sheet: None) == set()


@pytest.mark.parametrize("part", ["beam-XB-1", "beam-LB-1", "wall-beam-WB-1", "coffer-A1"])
def test_what_does_not_lie_along_the_walls_is_found(along: Drawn, part: str) -> None:
    assert 16 in found(along, lambda sheet: sheet.move(part, 0.3, 0.3))


def test_a_beam_drawn_square_is_found(along: Drawn) -> None:
    """Its face upright, as it would be in a square grid, from where it starts."""

    def spoil(sheet: Spoiled) -> None:
        face = sheet.part("beam-XB-1", "path")
        start, end = re.findall(r"(-?[\d.]+)[ ,](-?[\d.]+)", face.attrib["d"])
        face.set("d", f"M{start[0]} {start[1]} L{start[0]} {end[1]}")

    assert found(along, spoil) == {16}


def test_crown_that_does_not_taper_with_its_coffer_is_found(along: Drawn) -> None:
    assert 68 in found(along, lambda sheet: sheet.move("crown-A1", 0.2, 0.0))


@pytest.mark.parametrize("name", ["length-openings-at-start", "width-openings-at-end"])
def test_an_end_without_its_openings_is_found(along: Drawn, name: str) -> None:
    assert 81 in found(along, lambda sheet: sheet.remove(f"string-{name}"))


def test_openings_told_as_at_the_other_end_are_found(along: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        one = sheet.part("dim-length-openings-2", "text")
        other = sheet.part("dim-length-openings-at-start-2", "text")
        assert one.text != other.text
        one.text, other.text = other.text, one.text

    assert {9, 11} <= found(along, spoil)


@pytest.mark.parametrize("name", ["W1", "W2", "W3", "W4", "RISING", "FALLING"])
def test_a_coffer_told_in_another_size_is_found(along: Drawn, name: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        cells = (g for g in sheet.root.iter() if g.get("data-name") == name)
        told = next(g for g in cells if g.get("class") == "cell")
        told.set("data-value", "60 in")
        next(iter(told)).text = "5'-0\""

    assert found(along, spoil) == {85}


def test_a_list_of_coffers_left_out_is_found(along: Drawn) -> None:
    assert found(along, lambda sheet: sheet.remove("coffer-sizes-table")) == {85}


def test_a_control_line_where_none_is_drawn_is_found(along: Drawn, drawn: Drawn) -> None:
    """The control line of the square grid, on the sheet of the one that follows the walls."""

    def spoil(sheet: Spoiled) -> None:
        sheet.group("view-1").append(Spoiled(drawn[0][0]).group("control-line"))

    assert 82 in found(along, spoil)
