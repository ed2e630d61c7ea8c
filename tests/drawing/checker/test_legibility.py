"""Points 31 to 34 and 38 to 40: what cannot be read on a print is found."""

import pytest

from lacunar.drawing import style
from lacunar.drawing.checker.legibility import is_dark
from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.spoiled import Spoiled, findings, points

# The font size at which capitals of 0.698 em are 2.5 mm tall.
FONT_SIZE = 2.5 / 0.698


@pytest.mark.parametrize(("size", "expected"), [(3.582, set()), (3.57, {31}), (2.5, {31})])
def test_capitals_are_measured_by_metrics_not_by_what_is_stated(
    svg: str, typeface: Typeface, size: float, expected: set[int]
) -> None:
    def spoil(sheet: Spoiled) -> None:
        text = sheet.part("title-block", "text")
        assert text.get("data-height") == "2.5"
        text.set("font-size", str(size))

    assert points(findings(svg, typeface, spoil)) == expected


@pytest.mark.parametrize("height", ["3.5", "", "tall"])
def test_a_stated_height_that_is_not_so_is_found(svg: str, typeface: Typeface, height: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("title-block", "text").set("data-height", height)

    assert points(findings(svg, typeface, spoil)) == {31}


def test_letters_of_an_unknown_face_are_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("title-block", "text").set("font-family", "sans-serif")

    assert points(findings(svg, typeface, spoil)) == {31}


def test_letters_the_face_lacks_are_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("title-block", "text").text = "VERIFY \N{GREEK CAPITAL LETTER OMEGA}\N{SNOWMAN}"

    found = findings(svg, typeface, spoil)
    assert "U+2603" in found[-1].message
    assert points(found) == {31}


@pytest.mark.parametrize(
    ("width", "expected"), [("0.35", set()), ("0.1", {32, 38}), ("0.3", {32, 38}), ("0.5", {38})]
)
def test_lines_of_a_wrong_width_are_found(
    svg: str, typeface: Typeface, width: str, expected: set[int]
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("beam-XB-2", "path").set("stroke-width", width)

    found = findings(svg, typeface, spoil)
    assert points(found) == expected
    assert {f.where for f in found} <= {"beam-XB-2"}


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("data-pen", "crayon"),
        ("stroke-dasharray", "1 1"),
        ("stroke-dasharray", "none"),
    ],
)
def test_a_line_other_than_its_pen_is_found(
    svg: str, typeface: Typeface, name: str, value: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.part("member-S1", "path").set(name, value))
    assert ("member-S1", 38) in {(f.where, f.point) for f in found}


def test_a_width_taken_from_the_group_around_counts(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        line = sheet.part("beam-XB-2", "path")
        del line.attrib["stroke-width"]
        sheet.group("beam-XB-2").set("stroke-width", "0.1")

    assert points(findings(svg, typeface, spoil)) == {32, 38}


def test_a_path_that_cannot_be_seen_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        del sheet.part("tag-coffer-B1", "path").attrib["stroke"]
        sheet.part("tag-coffer-B1", "path").set("fill", "none")

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(38, "tag-coffer-B1")]


def test_ink_that_is_not_black_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("beam-XB-2", "path").set("stroke", "#808080")
        sheet.part("title-block", "text").set("fill", "red")

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(43, "beam-XB-2"), (43, "title-block")]


def test_the_pens_are_of_the_series_and_wide_enough() -> None:
    """Widths of the ISO 128 series, from memory of the standard."""
    assert {pen.width for pen in style.PENS} <= {0.18, 0.25, 0.35, 0.5, 0.7}


def test_text_on_text_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.add_text("view-1", "title-block", "NOTE", (338.0, 241.5))

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found if f.point == 33] == [(33, "view-1")]


def test_text_just_clear_of_text_is_not_found(svg: str, typeface: Typeface) -> None:
    """The capitals of VERIFY IN FIELD stand from 237.5 to 240 mm; the Y of the face has no tail."""
    for baseline, expected in ((237.49, set()), (237.52, {33}), (242.51, set()), (242.48, {33})):

        def spoil(sheet: Spoiled, baseline: float = baseline) -> None:
            sheet.add_text("title-block", "title-block", "NOTE", (338.0, baseline))

        assert points(findings(svg, typeface, spoil)) == expected


def test_a_descending_letter_needs_room_below(svg: str, typeface: Typeface) -> None:
    """A `g` reaches 0.212 em below the line, 0.76 mm at 2.5 mm capitals."""
    for text, expected in (("NOTE", set()), ("Page", {33}), ("A/B", {33})):

        def spoil(sheet: Spoiled, text: str = text) -> None:
            sheet.add_text("title-block", "title-block", text, (338.0, 237.0))

        assert points(findings(svg, typeface, spoil)) == expected


@pytest.mark.parametrize(
    ("d", "expected"),
    [
        ("M336 239 L345 239", {34}),  # through
        ("M340 238.5 L340 238.6", {34}),  # inside
        ("M350 250 L338 230", {34}),  # aslant
        ("M336 240.1 L345 240.1", {34}),  # 0.1 mm below, but half of 0.25 mm of the line above it
        ("M336 240.14 L345 240.14", set()),
        ("M336 237 L375 237 L375 241 L336 241 Z", set()),  # around it
        ("M336 237 L375 237 L375 247 Z", {34}),  # the closing line
        ("M336 250 L336.8 230", set()),
    ],
)
def test_a_line_through_text_is_found(
    svg: str, typeface: Typeface, d: str, expected: set[int]
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.add_line("title-block", d))
    assert points(found) == expected


@pytest.mark.parametrize(
    ("radius", "expected"), [("2.8", set()), ("3", {34}), ("9", {34}), ("20", set())]
)
def test_a_circle_through_text_is_found(
    svg: str, typeface: Typeface, radius: str, expected: set[int]
) -> None:
    """About a place on the sheet's empty part, 3 mm above capitals that stand from 147.5 mm on."""
    look = {"fill": "none", "stroke": "#000000", "stroke_width": "0.25", "data_pen": "fine"}

    def spoil(sheet: Spoiled) -> None:
        sheet.add_text("view-1", "title-block", "A TEXT OF 20 MM", (300.0, 150.0))
        sheet.add("view-1", "circle", cx="310", cy="144.5", r=radius, **look)

    assert points(findings(svg, typeface, spoil)) == expected


@pytest.mark.parametrize(
    ("fill", "after", "expected"),
    [
        ("#000000", False, {34}),
        ("#000000", True, {34}),
        ("#ffffff", False, set()),
        ("#ffffff", True, {34}),
        ("#ececec", False, set()),
    ],
)
def test_text_in_black_or_painted_over_is_found(
    svg: str, typeface: Typeface, fill: str, after: bool, expected: set[int]
) -> None:
    def area(sheet: Spoiled) -> None:
        sheet.add("title-block", "path", d="M336 237 L375 237 L375 241 L336 241 Z", fill=fill)

    def disc(sheet: Spoiled) -> None:
        sheet.add("title-block", "circle", cx="350", cy="239", r="1", fill=fill)

    for add in (area, disc):

        def spoil(sheet: Spoiled) -> None:
            add(sheet)  # noqa: B023 - called before the next round
            if not after:
                title_block = sheet.group("title-block")
                text = sheet.part("title-block", "text")
                title_block.remove(text)
                title_block.append(text)

        assert points(findings(svg, typeface, spoil)) == expected


def test_which_fills_are_dark() -> None:
    assert [is_dark(fill) for fill in ("#000000", "#000", "black", "red", "#7f7f7f")] == [True] * 5
    assert [is_dark(fill) for fill in ("#ffffff", "#fff", "white", "#ececec")] == [False] * 4


def test_dimension_figures_of_two_heights_are_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        text = sheet.part("dim-length-overall-1", "text")
        text.set("font-size", str(FONT_SIZE * 1.4))
        text.set("data-height", "3.5")

    found = findings(svg, typeface, spoil)
    assert [f.message for f in found] == ["dimension figures of 2.5 mm, 3.5 mm"]
    assert points(found) == {39}


@pytest.mark.parametrize(("angle", "expected"), [("-90", set()), ("90", {40}), ("-45", {40})])
def test_text_to_be_read_from_elsewhere_is_found(
    svg: str, typeface: Typeface, angle: str, expected: set[int]
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.add_text("view-1", "title-block", "HB", (250.0, 250.0))
        sheet.parts("view-1", "text")[-1].set("transform", f"rotate({angle} 250 250)")

    assert points(findings(svg, typeface, spoil)) == expected
