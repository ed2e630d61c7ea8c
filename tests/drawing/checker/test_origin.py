"""Points 43 (areas) and 66: light grays alone; a file that gives nothing away and loads nothing."""

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.checker.contrast import contrast_of_black
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.draw import painted_svg
from tests.drawing.checker.drawn_sets import drawn_set
from tests.drawing.checker.drawn_sets import points as points_of_set
from tests.drawing.checker.small_layout import small_layout
from tests.drawing.checker.small_room import small_sheet
from tests.drawing.checker.spoiled import Spoiled, checked, findings, points


@pytest.mark.parametrize(
    "text",
    [
        "from /home/someone/den.json",
        r"C:\drawings\den.json",
        "file:den.svg",
        "drawn by somebody@example.org",
        "http://example.org/den",
    ],
)
@pytest.mark.parametrize("part", ["title", "desc", "data-paper"])
def test_what_tells_of_the_machine_is_found(
    svg: str, typeface: Typeface, text: str, part: str
) -> None:
    def spoil(sheet: Spoiled) -> None:
        if part.startswith("data-"):
            sheet.root.set("data-note", text)
        else:
            element = next(one for one in sheet.root if one.tag.endswith(part))
            element.text = f"{element.text} {text}"

    assert points(findings(svg, typeface, spoil)) == {66}


def test_words_with_slashes_tell_nothing(svg: str, typeface: Typeface) -> None:
    for text in ("1/2 in and/or 3/4 in", "2026/03/02", 'scale 1/2" = 1\'-0"'):
        found = findings(svg, typeface, lambda sheet, t=text: sheet.root.set("data-note", t))
        assert found == []


def test_what_was_put_in_for_the_title_block_may_say_anything() -> None:
    """A ceiling's own name stands in the title of the file as well."""
    room = {"length": "15 ft", "width": "12 ft", "height": "9 ft"}
    svgs, layout = drawn_set({"room": room, "name": "Den, see file:den and me@example.org"})
    assert "me@example.org" in svgs[0].partition("</title>")[0]
    assert points_of_set(svgs, layout) == set()
    spoiled = svgs[0].replace("</desc>", " by me@example.com</desc>", 1)
    assert points_of_set([spoiled, *svgs[1:]], layout) == {66}


@pytest.mark.parametrize(
    "rule", ["@font-face{src:url(https://example.org/a)}", "svg{background:url('x.png')}"]
)
def test_a_style_that_loads_from_elsewhere_is_found(
    svg: str, typeface: Typeface, rule: str
) -> None:
    changed = svg.replace("</desc>", f"</desc><defs><style>{rule}</style></defs>", 1)
    assert points(checked(changed, small_layout(), typeface)) == {66}


def test_a_comment_is_found(svg: str, typeface: Typeface) -> None:
    changed = svg.replace("</desc>", "</desc><!-- drawn on my machine -->", 1)
    assert points(checked(changed, small_layout(), typeface)) == {61}


def test_the_file_that_is_sent_passes_with_its_fonts(typeface: Typeface) -> None:
    svg = painted_svg(small_sheet(), typeface)
    assert "@font-face" in svg
    assert points(check_set([svg], small_layout(), typeface)).isdisjoint({43, 61, 62, 66, 170})


@pytest.mark.parametrize("fill", ["#d0e0ff", "#404040", "gray", "#abc", "#12345g"])
def test_an_area_that_a_copier_loses_or_darkens_is_found(
    svg: str, typeface: Typeface, fill: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.part("coffer-B1", "path").set("fill", fill))
    assert 43 in points(found)


def test_contrast_is_as_published() -> None:
    """WCAG 2.1: black on white is 21:1; #949494 is 3:1 on white (from memory)."""
    assert contrast_of_black(1.0) == 21.0
    assert 21.0 / contrast_of_black(0x94 / 255) == pytest.approx(3.03, abs=0.01)
    assert 21.0 / contrast_of_black(0x95 / 255) < 3.0
