"""Points 6, 23 and 130 to 135 on elevations and sections, which are then spoiled: all is found."""

from collections.abc import Callable
from typing import Any
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.drawn_sets import found as found_in
from tests.drawing.checker.spoiled import Spoiled, checked

SHEETS = ["Z-101", "Z-201", "Z-301"]
FEATURES = [
    {"name": "Door", "kind": "door", "wall": "W1", "center": 60, "width": 36, "head": 80},
    {"name": "Window", "kind": "window", "wall": "W2", "center": 120, "width": 50, "head": 84},
]
GRID = {"length": {"coffers": 4}, "width": {"coffers": 3, "end": {"soffit": 12, "then": "half"}}}
PLAIN = {"length": {"coffers": 4}, "width": {"coffers": 3}}
SQUARE: dict[str, Any] = {"length": 240, "width": 180, "height": 108, "wall_features": FEATURES}
SURVEYED: dict[str, Any] = {
    "height": 108,
    "wall_features": FEATURES,
    "survey": {
        "sides": {"W1": 180, "W2": 240, "W3": 178, "W4": 242},
        "diagonals": {"rising": 300},
    },
}
OUTLINE = [(0, 0), (0, 180), (140, 180), (140, 150), (240, 150), (240, 0)]
ODD: dict[str, Any] = {
    "height": 108,
    "outline": {"points": [{"x": x, "y": y} for x, y in OUTLINE]},
    "columns": [{"x": 60, "y": 100, "length": 8, "width": 8}],
    "wall_features": FEATURES[:1],
}
ROOMS = {
    "square": SQUARE,
    "surveyed": SURVEYED,
    "along walls": {**SURVEYED, "crooked": {"mode": "follow_walls"}},
    "odd": ODD,
}
Spoil = Callable[[Spoiled], object]


@pytest.fixture(scope="module", params=ROOMS)
def drawn(request: pytest.FixtureRequest) -> Drawn:
    room = ROOMS[request.param]
    grid = PLAIN if request.param == "odd" else GRID
    spec = {"room": room, "grid": grid, "crown": {}, "drawing": {"paper": "arch_d"}}
    return drawn_set(spec, SHEETS)


@pytest.fixture(scope="module")
def square() -> Drawn:
    spec = {"room": SQUARE, "grid": GRID, "drawing": {"paper": "arch_d"}}
    return drawn_set(spec, SHEETS)


def spoiled(drawn: Drawn, sheet: str, spoil: Spoil) -> tuple[list[str], int]:
    """The set with a sheet's first page spoiled, and which of all pages that is."""
    svgs, _ = drawn
    (number,) = (n for n, svg in enumerate(svgs) if f' id="{sheet}"' in svg)
    page = Spoiled(svgs[number])
    spoil(page)
    return [*svgs[:number], page.svg, *svgs[number + 1 :]], number


def found(drawn: Drawn, sheet: str, spoil: Spoil) -> set[tuple[int, str]]:
    """What is found on a sheet by itself once it is spoiled."""
    svgs, number = spoiled(drawn, sheet, spoil)
    findings = checked(svgs[number], drawn[1], load_typeface())
    return {(each.point, each.where) for each in findings}


def found_in_set(drawn: Drawn, sheet: str, spoil: Spoil) -> set[tuple[int, str]]:
    """What is found in the whole set once a sheet is spoiled."""
    return found_in(spoiled(drawn, sheet, spoil)[0], drawn[1])


def first(sheet: Spoiled, name: str, **data: str) -> Element:
    """The first group of a class with such data."""
    return next(
        each
        for each in sheet.root.iter()
        if each.get("class") == name
        and all(each.get(f"data-{key}") == value for key, value in data.items())
    )


def moved(name: str, dx: float, dy: float, **data: str) -> Spoil:
    return lambda sheet: sheet.move(first(sheet, name, **data).get("id", ""), dx, dy)


def removed(name: str, **data: str) -> Spoil:
    return lambda sheet: sheet.remove(first(sheet, name, **data).get("id", ""))


def points(findings: set[tuple[int, str]]) -> set[int]:
    return {point for point, _ in findings}


def test_the_set_as_drawn_has_no_findings(drawn: Drawn):
    assert found_in_set(drawn, "Z-201", lambda sheet: None) == set()


def test_words_of_features_that_stand_before_one_another_are_clear():
    wide = {"name": "Wide", "kind": "cabinet", "wall": "W1", "center": 90, "width": 100, "head": 84}
    features = [wide, {**wide, "name": "Narrow", "kind": "door", "width": 30, "head": 96}]
    room = {**SQUARE, "wall_features": features}
    assert found_in(*drawn_set({"room": room, "grid": GRID}, SHEETS[1:])) == set()


def test_a_beam_cut_elsewhere_is_found(drawn: Drawn):
    for sheet in ("Z-201", "Z-301"):
        assert 130 in points(found(drawn, sheet, moved("cut-beam", 0.3, 0.0)))


def test_a_beam_hanging_lower_is_found(drawn: Drawn):
    for name in ("cut-beam", "cut-wall-beam", "beyond"):
        assert 130 in points(found(drawn, "Z-301", moved(name, 0.0, 0.3)))


def test_a_beam_left_out_is_found(square: Drawn):
    for sheet, view in (("Z-201", "view-1"), ("Z-301", "view-1")):
        assert (130, view) in found(square, sheet, removed("cut-beam"))


def test_a_beam_the_layout_has_not_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        first(sheet, "cut-beam").set("data-id", "XB-99")

    assert 130 in points(found(square, "Z-301", spoil))


def test_a_height_misprinted_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("dim-heights-1-levels-1", "text").text = "8'-1\""

    assert (131, "dim-heights-1-levels-1") in found(square, "Z-301", spoil)


def test_a_height_that_ends_elsewhere_is_found(square: Drawn):
    spoil: Spoil = lambda sheet: sheet.move("string-heights-1-headroom-at-right", 0.0, 0.3)  # noqa: E731
    assert 131 in points(found(square, "Z-301", spoil))


def test_a_height_of_nothing_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("dim-heights-1-levels-1").set("data-to", "beam:P99")

    assert (131, "dim-heights-1-levels-1") in found(square, "Z-201", spoil)


def test_a_wall_of_another_length_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        paths = list(first(sheet, "floor-line").iter("{http://www.w3.org/2000/svg}path"))
        face = next(path for path in paths if path.get("data-pen") == "wall")
        start, _, end = (face.get("d") or "").rpartition(" L")
        x, _, y = end.partition(" ")
        face.set("d", f"{start} L{float(x) + 0.3:.3f} {y}")

    assert (131, "view-1") in found(drawn, "Z-201", spoil)


def test_a_door_elsewhere_is_found(drawn: Drawn):
    for dx, dy in ((0.3, 0.0), (0.0, 0.3)):
        spoil = moved("wall-opening", dx, dy, id="Door")
        assert 132 in points(found(drawn, "Z-201", spoil))


def test_a_door_left_out_is_found(drawn: Drawn):
    assert 132 in points(found(drawn, "Z-201", removed("wall-opening", id="Door")))


def test_a_door_in_another_wall_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        first(sheet, "wall-opening", id="Door").set("data-id", "Hatch")

    findings = found(square, "Z-201", spoil)
    assert {where for point, where in findings if point == 132} == {"view-1", "view-1-opening-1"}


def test_a_mark_misprinted_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        mark = first(sheet, "running-mark", kind="face")
        sheet.part(mark.get("id", ""), "text").text = "77'-7\""

    assert 133 in points(found(drawn, "Z-201", spoil))


def test_a_mark_elsewhere_is_found(drawn: Drawn):
    assert 133 in points(found(drawn, "Z-201", moved("running-mark", 0.3, 0.0)))


def test_a_mark_left_out_is_found(square: Drawn):
    spoil = removed("running-mark", kind="face", side="near")
    assert 133 in points(found(square, "Z-201", spoil))


def test_a_wall_not_shown_is_found(square: Drawn):
    assert (134, "W1") in found_in_set(square, "Z-201", lambda sheet: sheet.remove("view-1"))


def test_a_section_not_shown_is_found(square: Drawn):
    assert (134, "length") in found_in_set(square, "Z-301", lambda sheet: sheet.remove("view-1"))


def test_a_section_mark_elsewhere_is_found(square: Drawn):
    spoil = moved("section-mark", 0.0, 0.3, run="length")
    assert (135, "section-mark-length") in found(square, "Z-101", spoil)


def test_a_section_cut_elsewhere_than_marked_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.group("view-1").set("data-at-mm", "12.000000")

    assert (135, "section-mark-length") in found_in_set(square, "Z-301", spoil)


def test_a_reference_to_no_view_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        first(sheet, "reference").set("data-view", "7")

    assert (6, "reference-section-length") in found_in_set(square, "Z-101", spoil)


def test_a_reference_that_prints_another_sheet_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("reference-section-length", "text", 1).text = "Z-302"

    assert (6, "reference-section-length") in found_in_set(square, "Z-101", spoil)


def test_a_view_that_no_sheet_calls_is_found(square: Drawn):
    findings = found_in_set(square, "Z-101", lambda sheet: sheet.remove("references"))
    assert {where for point, where in findings if point == 6} == {f"view-{n}" for n in (1, 2, 3, 4)}


def test_a_height_missing_in_the_table_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        row = first(sheet, "height-row", of="P1")
        cell = next(each for each in row.iter() if each.get("class") == "cell")
        next(iter(cell)).text = "9'-9\""

    assert 23 in points(found_in_set(square, "Z-301", spoil))


def test_a_false_verdict_on_headroom_is_found(square: Drawn):
    def spoil(sheet: Spoiled) -> None:
        text = next(each for each in sheet.root.iter() if (each.text or "").endswith(", KEPT"))
        text.text = (text.text or "").replace(", KEPT", ", NOT KEPT")

    assert 23 in points(found_in_set(square, "Z-301", spoil))
