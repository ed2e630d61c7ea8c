"""The points on profiles: each defect is seeded into a correct set, and found."""

from collections.abc import Callable
from typing import Any
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.spoiled import NAMESPACE, Spoiled

SPEC: dict[str, Any] = {
    "name": "Snug",
    "room": {"length": 150, "width": 110, "height": 100},
    "beams": {"crosswise": {"sides": "1x6", "bottom": "1x4", "reveal": "1/4"}},
    "crown": {"face": "2 1/4", "spring_from_wall": 45},
    "drawing": {"paper": "tabloid", "sheets": ["Z-501"]},
}
TEXT = f"{{{NAMESPACE}}}text"


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC)


def points(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[int]:
    """The points not kept once the first sheet is spoiled."""
    svgs, answer = drawn
    sheet = Spoiled(svgs[0])
    spoil(sheet)
    return {each.point for each in check_set([sheet.svg, *svgs[1:]], answer, load_typeface())}


def of_class(sheet: Spoiled, kind: str, **data: str) -> list[Element]:
    """The groups of a class that bear some data."""
    wanted = {f"data-{name.replace('_', '-')}": value for name, value in data.items()}
    return [
        each
        for each in sheet.root.iter(f"{{{NAMESPACE}}}g")
        if each.get("class") == kind and wanted.items() <= each.attrib.items()
    ]


def removed(sheet: Spoiled, gone: Element) -> None:
    for parent in sheet.root.iter():
        if gone in list(parent):
            parent.remove(gone)


def test_the_sheet_as_drawn_has_no_findings(drawn: Drawn):
    assert points(drawn, lambda sheet: None) == set()


def test_parts_that_do_not_add_up_are_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        across = of_class(sheet, "dimension-string", string="across")[0]
        figure = list(across.iter(TEXT))[1]
        figure.text = '3 1/4"'

    assert 21 in points(drawn, spoil)


def test_a_width_that_is_not_laid_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        for name in ("finished-width", "across"):
            removed(sheet, of_class(sheet, "dimension-string", string=name)[0])

    assert 21 in points(drawn, spoil)


def test_parts_hatched_alike_are_found(drawn: Drawn):
    """The side's hatch in the bottom: its lines rise as those of the side do."""

    def spoil(sheet: Spoiled) -> None:
        side, bottom = (of_class(sheet, "profile-part", part=p)[0] for p in ("side", "bottom"))
        for path in bottom:
            if path.get("data-pen") == "hatch":
                path.set("d", next(p for p in side if p.get("data-pen") == "hatch").attrib["d"])

    assert points(drawn, spoil) == {42}


def test_a_balloon_without_its_part_in_the_list_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        removed(sheet, of_class(sheet, "balloon-row", part="crown")[0])

    assert points(drawn, spoil) == {49}


def test_a_listed_part_without_its_balloon_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        removed(sheet, of_class(sheet, "balloon", part="reveal")[0])

    assert points(drawn, spoil) == {49}


@pytest.mark.parametrize("kind", ["balloon", "balloon-row"])
def test_another_number_than_is_borne_is_found(drawn: Drawn, kind: str):
    def spoil(sheet: Spoiled) -> None:
        group = of_class(sheet, kind, part="side")[0]
        words = next(t for t in group.iter(TEXT) if t.text == group.get("data-number"))
        words.text = "77"

    assert 49 in points(drawn, spoil)


def test_a_part_listed_twice_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        row = of_class(sheet, "balloon-row", part="fit")[0]
        sheet.group("parts-list").append(row)

    assert 49 in points(drawn, spoil)


def test_a_profile_that_is_not_drawn_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        for view in of_class(sheet, "view", profile="P1"):
            view.set("data-profile", "P9")

    assert 140 in points(drawn, spoil)


def test_a_board_drawn_wider_than_laid_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        bottom = of_class(sheet, "profile-part", part="bottom")[0]
        outline = next(p for p in bottom if p.get("data-pen") == "cut")
        first, *rest = outline.attrib["d"].split(" ")
        outline.set("d", " ".join([f"M{float(first[1:]) - 1.0}", *rest]))

    assert points(drawn, spoil) == {141}


def test_a_side_left_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        side = of_class(sheet, "profile-part", part="side")[0]
        side.remove(next(p for p in side if p.get("data-pen") == "cut"))

    assert 141 in points(drawn, spoil)


def test_a_size_listed_other_than_laid_out_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        row = of_class(sheet, "balloon-row", part="side")[0]
        words = next(t for t in row.iter(TEXT) if " x " in (t.text or ""))
        words.text = '3/4" x 5 1/4"'

    assert points(drawn, spoil) == {142}
