"""How two drawings of a sheet are told apart: seeded changes come out in words and in pixels."""

from dataclasses import replace
from pathlib import Path

import PIL.Image
import pytest

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, moved
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from tests.drawing.painters.sample_sheets import TEXTS, sample_sheet
from tests.golden.comparing import MOST_LINES, differences
from tests.golden.pictures import of_svg, pixels_apart, write_difference

TYPEFACE = load_typeface()
BEAM = Group(
    "beam", (Polyline((Pt(30, 160), Pt(130, 160)), style.OBJECT),), "beam-XB-1", "Beam XB-1"
)
SAID = Group("tag", (TEXTS[0], TEXTS[3]), "tag-XB-1", data={"of": "XB-1"})


def svg(*more: Element) -> str:
    return paint_svg(sample_sheet("Z-101", 279.4, 215.9, *more), TYPEFACE, fonts=None)


OLD = svg(BEAM, SAID)


def test_the_same_drawing_has_no_difference() -> None:
    assert differences(OLD, svg(BEAM, SAID)) == []


@pytest.mark.parametrize(
    ("new", "line"),
    [
        (svg(moved(BEAM, 1.5, -2), SAID), "beam-XB-1: moved 1.50 mm right, 2.00 mm up"),
        (svg(BEAM, moved(SAID, -3, 4)), "tag-XB-1: moved 3.00 mm left, 4.00 mm down"),
        (
            svg(BEAM, replace(SAID, children=(replace(TEXTS[0], text="6 201"), TEXTS[3]))),
            "tag-XB-1: says '6 201', said '6 200 (20′-4 1/8″)'",  # noqa: RUF001
        ),
        (svg(BEAM, replace(SAID, data={"of": "LB-1"})), "tag-XB-1: data-of is 'LB-1', was 'XB-1'"),
        (svg(SAID), "beam-XB-1: gone"),
        (svg(BEAM, SAID, replace(BEAM, id="beam-XB-2")), "beam-XB-2: new"),
        (
            svg(replace(BEAM, children=(replace(BEAM.children[0], pen=style.HIDDEN),)), SAID),  # type: ignore[type-var]
            "beam-XB-1: is drawn otherwise (data-pen, stroke-dasharray)",
        ),
        (
            svg(
                replace(BEAM, children=(Polyline((Pt(30, 160), Pt(99, 160)), style.OBJECT),)), SAID
            ),
            "beam-XB-1: has another shape",
        ),
    ],
)
def test_each_change_is_told_in_a_line(new: str, line: str) -> None:
    assert differences(OLD, new) == [line]


def test_what_happened_to_many_is_told_once_and_much_is_cut_short() -> None:
    beams = [replace(BEAM, id=f"beam-XB-{n}") for n in range(1, 41)]
    told = differences(svg(*beams), svg(*(moved(beam, 0, 1) for beam in beams)))
    assert len(told) == 1
    assert told[0].startswith("beam-XB-1, beam-XB-2, ")
    assert told[0].endswith("and 34 more: moved 0.00 mm right, 1.00 mm down")
    told = differences(svg(*beams), svg(*(moved(b, 0, n) for n, b in enumerate(beams, start=1))))
    assert len(told) == MOST_LINES + 1
    assert told[-1] == "and 15 more differences"


def test_another_digit_is_seen_in_the_pixels_and_on_the_picture(tmp_path: Path) -> None:
    figure = replace(TEXTS[0], at=Pt(30.0, 190.0))
    drawn = (svg(figure), svg(replace(figure, text=figure.text.replace("200", "206"))))
    old, new = (of_svg(one, TYPEFACE) for one in drawn)
    assert pixels_apart(old, old) == 0
    assert pixels_apart(old, new) > 5
    write_difference(old, new, tmp_path / "seen.png")
    colors = {one for _, one in PIL.Image.open(tmp_path / "seen.png").getcolors(1 << 20) or []}
    assert any(r - b > 100 for r, _, b in colors)  # gone: red
    assert any(b - r > 100 for r, _, b in colors)  # new: blue
