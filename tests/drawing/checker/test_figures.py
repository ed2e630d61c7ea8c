"""Points 9 to 13: a figure that is wrong on the print is found, whatever its data says."""

from fractions import Fraction

import pytest

from lacunar.drawing.checker import Finding, check_set
from lacunar.drawing.checker.figures import rounded
from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.small_layout import small_layout
from tests.drawing.checker.spoiled import Spoiled, checked, findings, points

FIELDS_AND_LEGEND = (2, 4, 5, 7)
"""The small room is a plan alone; `test_set_points` spoils title blocks and legends."""


def of_set(svgs: list[str], typeface: Typeface) -> list[Finding]:
    """What is found on a set of the small room's sheets."""
    found = check_set(svgs, small_layout(), typeface)
    return [each for each in found if each.point not in FIELDS_AND_LEGEND]


def test_a_correct_sheet_has_no_findings(svg: str, typeface: Typeface) -> None:
    assert checked(svg, small_layout(), typeface) == ()
    assert of_set([svg], typeface) == []


def test_a_misprinted_figure_is_found_though_its_data_is_right(
    svg: str, typeface: Typeface
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("dim-length-openings-3", "text").text = "3'-0 5/16\""

    found = findings(svg, typeface, spoil)
    assert points(found) == {9, 11}
    # 120" less 1/16" on the print.
    assert any(f.where == "string-length-openings" and "3046.4125" in f.message for f in found)


def test_figures_that_sum_up_are_still_held_against_their_data(
    svg: str, typeface: Typeface
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("dim-width-openings-2", "text").text = "3'-8\""
        sheet.part("dim-width-openings-4", "text").text = "3'-7 3/4\""

    found = findings(svg, typeface, spoil)
    wrong = {"dim-width-openings-2", "dim-width-openings-4"}
    assert {f.where for f in found if f.point == 9} == wrong
    assert {f.where for f in found if f.point == 11} == wrong


@pytest.mark.parametrize("text", ["about 3'", "3 12X", ""])
def test_a_figure_that_is_no_length_is_found(svg: str, typeface: Typeface, text: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("dim-length-openings-3", "text").text = text

    assert 9 in points(findings(svg, typeface, spoil))


def test_a_break_in_a_string_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("dim-length-centers-2").set("data-from", "XB-2:center")

    found = findings(svg, typeface, spoil)
    assert "dim-length-centers-2" in {f.where for f in found if f.point == 9}


def test_a_string_without_an_overall_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove("string-width-overall"))
    wheres = {f.where for f in found if f.point == 9}
    assert wheres == {"string-width-openings", "string-width-centers"}


def test_an_overall_other_than_the_span_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        for number, text, value in ((1, "3'-0\"", "36 in"), (5, "3'-0\"", "36 in")):
            dimension = f"dim-length-openings-{number}"
            sheet.part(dimension, "text").text = text
            sheet.group(dimension).set("data-value", value)
        sheet.part("dim-length-overall-1", "text").text = "9'-11 3/8\""
        sheet.group("dim-length-overall-1").set("data-value", "955/8 in")

    found = findings(svg, typeface, spoil)
    assert [f.where for f in found if f.point == 10] == ["string-length-overall"]


@pytest.mark.parametrize(
    ("length", "step", "expected"),
    [
        # Halfway goes away from the datum: 5/32 in sixteenths is 2 1/2 of them.
        ("5/32", "1/16", "3/16"),
        ("109/3", "1/16", "581/16"),
        ("1220.5", "1", "1221"),
        ("0", "1/8", "0"),
    ],
)
def test_rounding_to_a_step(length: str, step: str, expected: str) -> None:
    assert rounded(Fraction(length), Fraction(step)) == Fraction(expected)


def test_a_misprinted_mark_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        # The near face of XB-2, after the id and three marks of XB-1 and the id of XB-2.
        text = sheet.part("marks-length", "text", 5)
        assert text.text == "6'-6 3/16\""
        text.text = "6'-6 1/4\""

    found = findings(svg, typeface, spoil)
    assert points(found) == {11}
    assert {f.where for f in found} == {
        "marks-length XB-2 near",
        "dim-length-openings-3",
        "dim-length-openings-4",
    }


def test_a_table_that_disagrees_with_the_layout_is_found(svg: str, typeface: Typeface) -> None:
    """Text, data and both neighboring segments are changed alike; only the layout says no."""

    def spoil(sheet: Spoiled) -> None:
        mark = sheet.part("marks-length", "g", 5)
        assert mark.get("data-value") == "1251/16 in"
        mark.set("data-value", "1250/16 in")
        sheet.part("marks-length", "text", 5).text = "6'-6 1/8\""
        for number, text, value in ((3, "3'-0 5/16\"", "581/16 in"), (4, '5 9/16"', "89/16 in")):
            dimension = f"dim-length-openings-{number}"
            sheet.part(dimension, "text").text = text
            sheet.group(dimension).set("data-value", value)

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(11, "marks-length XB-2 near")]


def test_a_dimension_to_nowhere_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("dim-length-openings-1").set("data-to", "XB-9:near")

    assert {9, 11, 12, 18} <= points(findings(svg, typeface, spoil))


def test_a_beam_face_without_a_dimension_is_found(svg: str, typeface: Typeface) -> None:
    """Two segments are drawn as one: all figures are right, but a face is not dimensioned."""

    def spoil(sheet: Spoiled) -> None:
        sheet.remove("dim-width-openings-3")
        first = sheet.group("dim-width-openings-2")
        first.set("data-to", "LB-1:far")
        first.set("data-value", "395/8 in")
        first.set("data-exact-mm", "1254.125")
        sheet.part("dim-width-openings-2", "text").text = "4'-1 3/8\""
        line = sheet.part("dim-width-openings-2", "path")
        start = line.attrib["d"].partition(" L")[0]
        # 52 1/8" of 25.4 mm at 1:24 above the datum at 200 mm.
        line.set("d", f"{start} L77 {200 - 52.125 * 25.4 / 24:.3f}")

    found = findings(svg, typeface, spoil)
    # The dimensions after the one that is gone have kept their numbers.
    assert [(f.point, f.where) for f in found] == [
        (12, "string-width-openings"),
        (62, "dim-width-openings-4"),
    ]
    assert "near face of LB-1" in found[0].message


def test_a_wall_beam_face_without_a_dimension_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.remove("dim-width-openings-1")

    found = findings(svg, typeface, spoil)
    assert {9, 12, 13} <= points(found)
    assert any("far face of WB-1" in f.message for f in found if f.point == 12)


@pytest.mark.parametrize("place", [1, 3])
def test_a_mark_missing_from_the_set_is_found(svg: str, typeface: Typeface, place: int) -> None:
    sheet = Spoiled(svg)
    row = sheet.part("marks-length", "g", 0)
    row.remove(list(row)[place])
    found = of_set([sheet.svg], typeface)
    assert [(f.point, f.where) for f in found] == [(12, "marks-length")]


def test_tables_may_go_on_on_another_sheet(svg: str, typeface: Typeface) -> None:
    first, second = Spoiled(svg), Spoiled(svg)
    first.remove("marks-length")
    for identity in ("marks-width", "view-1", "scale-bar-view-1"):
        second.remove(identity)
    second.root.set("id", "Z-101-2")
    second.root.set("data-sheet", "Z-101-2")
    assert of_set([first.svg, second.svg], typeface) == []


def test_a_set_without_a_plan_is_found(svg: str, typeface: Typeface) -> None:
    sheet = Spoiled(svg)
    sheet.remove("view-1")
    sheet.remove("scale-bar-view-1")
    found = of_set([sheet.svg], typeface)
    assert [(f.point, f.where) for f in found] == [(12, "Z-101")]


@pytest.mark.parametrize(
    ("run", "name"), [("length", "openings"), ("width", "centers"), ("width", "overall")]
)
def test_a_plan_that_lacks_a_string_is_found(
    svg: str, typeface: Typeface, run: str, name: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove(f"string-{run}-{name}"))
    messages = [f.message for f in found if f.point == 12]
    assert messages == [f"the {run} run has no string of {name}"]


def test_a_row_of_marks_under_another_name_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        text = sheet.part("marks-length", "text", 4)
        assert text.text == "XB-2"
        text.text = "XB-1"

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(11, "marks-length XB-2")]


def test_a_string_that_stops_short_of_the_wall_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove("dim-length-centers-3"))
    assert ("string-length-centers", 13) in {(f.where, f.point) for f in found}


def test_metric_figures_are_read_with_their_thin_spaces(svg: str, typeface: Typeface) -> None:
    """3048 mm for 10 feet; every other figure of the sheet then misses its data."""

    def spoil(sheet: Spoiled) -> None:
        sheet.root.set("data-units", "mm")
        sheet.part("dim-length-overall-1", "text").text = "3\N{THIN SPACE}048"

    found = findings(svg, typeface, spoil)
    assert "dim-length-overall-1" not in {f.where for f in found if f.point == 9}
    assert "string-length-overall" not in {f.where for f in found if f.point == 10}
