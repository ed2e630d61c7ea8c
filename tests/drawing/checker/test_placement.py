"""Points 35 to 37: what runs out of its place, or crowds, is found."""

import pytest

from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.spoiled import Spoiled, findings, points


@pytest.mark.parametrize(
    ("d", "expected"),
    [
        ("M300 20 L419.1 20", set()),
        ("M300 20 L419.2 20", {35}),
        ("M300 20 L450 20", {35}),
        ("M300 260 L320 267", {35}),
        ("M12.7 20 L12.7 30", set()),
    ],
)
def test_a_line_out_of_the_frame_is_found(
    svg: str, typeface: Typeface, d: str, expected: set[int]
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.add_line("view-1", d))
    assert points(found) == expected


def test_a_text_out_of_the_frame_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.add_text("view-1", "title-block", "LONG WORDS AT THE EDGE", (400.0, 100.0))

    # They run over the line of the frame, too.
    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(34, "view-1"), (35, "view-1")]


def test_a_circle_out_of_the_frame_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.add("view-1", "circle", cx="418", cy="100", r="2", fill="#000000")

    assert points(findings(svg, typeface, spoil)) == {35}


def test_a_frame_off_the_page_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.move("frame", 20, 0))
    assert ("frame", 35) in {(f.where, f.point) for f in found}


@pytest.mark.parametrize("identity", ["frame", "title-block"])
def test_a_sheet_without_frame_or_title_block_is_found(
    svg: str, typeface: Typeface, identity: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove(identity))
    assert [(f.point, f.where) for f in found] == [(35, "Z-101")]


@pytest.mark.parametrize(
    ("d", "expected"),
    [
        ("M330 230 L340 230", {35}),
        ("M400 100 L400 240", {35}),
        ("M335.1 220 L335.1 260", set()),  # along its outline
        ("M340 228 L350 228 L350 230", {35}),
    ],
)
def test_a_line_in_the_title_block_is_found(
    svg: str, typeface: Typeface, d: str, expected: set[int]
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.add_line("view-1", d))
    assert points(found) == expected


def test_a_text_or_circle_in_the_title_block_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.add_text("view-1", "title-block", "HOUSE", (380.0, 250.0))
        sheet.add("scale-bar-view-1", "circle", cx="380", cy="255", r="2", fill="#ffffff")

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(35, "scale-bar-view-1"), (35, "view-1")]


def test_a_title_block_that_does_not_hold_its_words_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("title-block", "text").text = "A TEXT THAT IS FAR TOO LONG FOR THIS BLOCK" * 2
        sheet.part("title-block", "text").set("x", "260")

    found = findings(svg, typeface, spoil)
    assert ("title-block", 35) in {(f.where, f.point) for f in found}


def test_a_figure_wider_than_its_line_is_found(svg: str, typeface: Typeface) -> None:
    """5 1/2" is some 9 mm wide, a beam of that width 5.82 mm: it must be led out."""

    def spoil(sheet: Spoiled) -> None:
        sheet.group("dim-length-openings-2").set("data-led-out", "no")

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(36, "dim-length-openings-2")]


@pytest.mark.parametrize(
    ("dx", "dy", "expected"),
    [(0, 0, set()), (0, -3.0, {36}), (17.0, 0, {34, 36}), (0, 1.2, {34, 36})],
)
def test_a_figure_beside_its_line_is_found(
    svg: str, typeface: Typeface, dx: float, dy: float, expected: set[int]
) -> None:
    """The middle figure of the centers, about 12 mm wide on 44 mm, moved along or off its line."""

    def spoil(sheet: Spoiled) -> None:
        text = sheet.part("dim-length-centers-2", "text")
        text.set("x", str(float(text.attrib["x"]) + dx))
        text.set("y", str(float(text.attrib["y"]) + dy))

    assert points(findings(svg, typeface, spoil)) == expected


def test_a_turned_figure_beside_its_line_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        text = sheet.part("dim-width-centers-1", "text")
        x, y = text.attrib["x"], str(float(text.attrib["y"]) + 20)
        text.set("y", y)
        text.set("transform", f"rotate(-90 {x} {y})")

    found = findings(svg, typeface, spoil)
    assert (36, "dim-width-centers-1") in {(f.point, f.where) for f in found}


@pytest.mark.parametrize("dimension", ["dim-length-openings-2", "dim-width-openings-1"])
def test_a_figure_led_out_without_a_leader_is_found(
    svg: str, typeface: Typeface, dimension: str
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group(dimension).remove(sheet.part(dimension, "path", 1))

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(36, dimension)]


@pytest.mark.parametrize("d", ["M133 70 L133 66", "M131.36 85.4 L131.36 84.9"])
def test_a_leader_that_joins_nothing_is_found(svg: str, typeface: Typeface, d: str) -> None:
    """One off the line at 85.4 mm, one that leaves it but does not come near the figure."""

    def spoil(sheet: Spoiled) -> None:
        sheet.part("dim-length-openings-2", "path", 1).set("d", d)

    assert 36 in points(findings(svg, typeface, spoil))


@pytest.mark.parametrize(
    ("string", "inward", "side"),
    [
        ("string-length-openings", 3.1, "view-1 above"),
        ("string-width-openings", 3.1, "view-1 left"),
        ("string-length-centers", 6.1, "view-1 above"),
        ("string-width-overall", 2.1, "view-1 left"),
    ],
)
def test_dimension_lines_too_close_are_found(
    svg: str, typeface: Typeface, string: str, inward: float, side: str
) -> None:
    """They stand 13, 25 and 33 mm out; moved in, one is below 10 mm, another below 6 apart."""
    dx, dy = (inward, 0) if "width" in string else (0, inward)
    found = findings(svg, typeface, lambda sheet: sheet.move(string, dx, dy))
    assert {f.where for f in found if f.point == 37} == {side}


def test_dimension_lines_on_the_other_side_keep_their_distance_too(
    svg: str, typeface: Typeface
) -> None:
    """The overall moved below the room: its lower edge is at 200 mm, the line at 65.4 mm."""
    for out, expected in ((10.0, set()), (9.9, {"view-1 below"})):

        def spoil(sheet: Spoiled, out: float = out) -> None:
            sheet.move("dim-length-overall-1", 0, 200 + out - 65.4)

        found = findings(svg, typeface, spoil)
        assert {f.where for f in found if f.point == 37} == expected


def test_dimensions_of_no_object_are_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove("object-view-1"))
    assert "view-1" in {f.where for f in found if f.point == 37}
