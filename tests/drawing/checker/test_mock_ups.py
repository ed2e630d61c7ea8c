"""Points 143 and 144 on paper mock-ups, which are then spoiled: each defect is found."""

from collections.abc import Callable
from typing import Any
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.spoiled import Spoiled

SPEC: dict[str, Any] = {
    "name": "Snug",
    "room": {"length": 150, "width": 110, "height": 100},
    "beams": {"crosswise": {"sides": "1x6", "bottom": "1x4", "reveal": "1/4"}},
    "crown": {"face": "2 1/4", "spring_from_wall": 45},
    "flat_mouldings": [{"at": "bottom_edge", "thickness": "1/4", "width": "1/2"}],
    "drawing": {"paper": "tabloid", "sheets": ["Z-702"], "mock_up": "tiles"},
}
Spoil = Callable[[Spoiled], object]


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC)


def found(drawn: Drawn, identity: str, spoil: Spoil) -> set[tuple[int, str]]:
    """What is found once the sheet that has an id is spoiled."""
    svgs, answer = drawn
    (number,) = (n for n, svg in enumerate(svgs) if f'id="{identity}"' in svg)
    sheet = Spoiled(svgs[number])
    spoil(sheet)
    whole = [*svgs[:number], sheet.svg, *svgs[number + 1 :]]
    return {(each.point, each.where) for each in check_set(whole, answer, load_typeface())}


def parts(sheet: Spoiled, strip: str, kind: str) -> list[Element]:
    return [g for g in sheet.parts(strip, "g") if g.get("class") == kind]


def test_the_set_as_drawn_has_no_findings(drawn: Drawn):
    assert found(drawn, "mock-up-P1-beam-1", lambda sheet: None) == set()


@pytest.mark.parametrize(
    "strip",
    ["mock-up-P1-beam-1", "mock-up-crown-1", "mock-up-flat-1-1", "mock-up-P1-card-1"],
)
def test_a_line_beside_its_place_is_found(drawn: Drawn, strip: str):
    def spoil(sheet: Spoiled) -> None:
        path = next(iter(parts(sheet, strip, "mock-up-line")[1]))
        (x, y), (_, end) = (part.split() for part in path.attrib["d"][1:].split(" L"))
        path.set("d", f"M{float(x) - 0.4} {y} L{float(x) - 0.4} {end}")

    assert (143, strip) in found(drawn, strip, spoil)


def test_a_fold_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        strip = "mock-up-P1-beam-1"
        sheet.group(strip).remove(parts(sheet, strip, "mock-up-line")[1])

    assert (143, "mock-up-P1-beam-1") in found(drawn, "mock-up-P1-beam-1", spoil)


def test_a_number_of_another_place_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        number = parts(sheet, "mock-up-crown-1", "mock-up-number")[1]
        next(e for e in number if e.tag.endswith("text")).text = '2 1/2"'

    assert (143, "mock-up-crown-1") in found(drawn, "mock-up-crown-1", spoil)


def test_a_strip_of_nothing_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("mock-up-crown-1").set("data-strip", "mock-up-frieze")

    assert (143, "mock-up-crown-1") in found(drawn, "mock-up-crown-1", spoil)


def test_a_beam_without_a_strip_is_found(drawn: Drawn):
    svgs, answer = drawn
    left = [svg for svg in svgs if "mock-up-P1-beam" not in svg]
    findings = {(one.point, one.where) for one in check_set(left, answer, load_typeface())}
    assert (143, "mock-up-P1-beam") in findings


def test_strips_left_out_altogether_are_found(drawn: Drawn):
    svgs, answer = drawn
    findings = check_set(
        [svg for svg in svgs if "mock-up-strip" not in svg], answer, load_typeface()
    )
    assert {one.point for one in findings} == {143}


def test_strips_that_nobody_asked_for_are_found(drawn: Drawn):
    svgs, answer = drawn
    ceiling = answer["ceiling"]
    plain = {**ceiling, "drawing": {**ceiling["drawing"], "mock_up": "none"}}
    findings = check_set(svgs, {**answer, "ceiling": plain}, load_typeface())
    assert {one.point for one in findings} == {143}


def test_a_piece_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.remove("mock-up-P1-beam-1")

    assert (144, "mock-up-P1-beam-2") in found(drawn, "mock-up-P1-beam-1", spoil)


def test_a_strip_that_is_not_full_size_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        group = sheet.group("mock-up-crown-1")
        group.set("data-to-mm", str(float(group.attrib["data-to-mm"]) + 0.5))

    assert (144, "mock-up-crown-1") in found(drawn, "mock-up-crown-1", spoil)


def test_crosses_that_do_not_meet_are_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        strip = "mock-up-P1-beam-2"
        sheet.group(strip).remove(parts(sheet, strip, "mock-up-cross")[0])

    assert (144, "mock-up-P1-beam-2") in found(drawn, "mock-up-P1-beam-2", spoil)


def test_a_check_bar_that_is_not_true_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        bar = next(g for g in sheet.root.iter() if g.get("class") == "check-bar")
        bar.set("data-length-mm", "152")

    assert {point for point, _ in found(drawn, "mock-up-crown-1", spoil)} == {144}
