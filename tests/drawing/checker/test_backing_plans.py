"""Points 28, 78 and 120 to 123 on backing plans, which are then spoiled: each defect is found."""

from collections.abc import Callable
from typing import Any

import pytest

from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.drawn_sets import found as found_in
from tests.drawing.checker.spoiled import Spoiled

SPEC: dict[str, Any] = {
    "room": {
        "length": 240,
        "width": 180,
        "height": 108,
        "joists": {"parallel_to": "width", "spacing": 16, "first": 8, "ceiling": "open"},
        "members": [{"name": "S1", "on": "length", "center": 121, "width": 3.5, "drop": 5.5}],
        "ceiling_items": [{"kind": "light", "x": 30, "y": 30, "diameter": 6, "clearance": 1}],
    },
    "grid": {"length": {"coffers": [2, 2]}, "width": {"coffers": 3}},
    "fixing": {"between_joists": "blocking"},
    "drawing": {"paper": "ansi_c", "sheets": ["Z-103"]},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_set(SPEC)


def found(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[tuple[int, str]]:
    """What is found once the sheet that has it is spoiled."""
    svgs, answer = drawn
    for number, svg in enumerate(svgs):
        sheet = Spoiled(svg)
        try:
            spoil(sheet)
        except (ValueError, IndexError):
            continue
        return found_in([*svgs[:number], sheet.svg, *svgs[number + 1 :]], answer)
    raise AssertionError("nothing to be spoiled")


def of_class(sheet: Spoiled, name: str) -> list[Any]:
    return [each for each in sheet.root.iter() if each.get("class") == name]


def retell(sheet: Spoiled, kind: str, of: str, name: str, words: str) -> None:
    """Let the first cell of a name in a row tell something else."""
    cells = [
        cell
        for row in of_class(sheet, f"{kind}-row")
        for cell in row
        if (row.get("data-of"), cell.get("data-name")) == (of, name)
    ]
    cells[0][0].text = words


def test_the_set_as_drawn_has_no_findings(drawn: Drawn):
    assert found(drawn, lambda sheet: sheet.group("view-1")) == set()


def test_a_joist_beside_its_place_is_found(drawn: Drawn):
    assert (120, "joist-J3") in found(drawn, lambda sheet: sheet.move("joist-J3", 0.4, 0.0))


def test_a_joist_left_out_is_found(drawn: Drawn):
    assert (120, "view-1") in found(drawn, lambda sheet: sheet.remove("joist-J3"))


def test_backing_off_its_offset_is_found(drawn: Drawn):
    spoil = lambda sheet: sheet.move("backing-XB-1-middle", 0.3, 0.0)  # noqa: E731
    assert (121, "backing-XB-1-middle") in found(drawn, spoil)


def test_backing_left_out_is_found(drawn: Drawn):
    assert (121, "view-1") in found(drawn, lambda sheet: sheet.remove("backing-LB-1-middle"))


def test_a_figure_that_is_no_mark_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("running-length-start-2", "text").text = "9'-9\""

    assert (122, "running-length-start-2") in found(drawn, spoil)


def test_a_joist_told_at_another_place_is_found(drawn: Drawn):
    def spoil(sheet: Spoiled) -> None:
        sheet.part("running-length-end-2", "text").text = "J2: 2'-1\""

    assert (122, "running-length-end-2") in found(drawn, spoil)


def test_a_figure_left_out_is_found(drawn: Drawn):
    spoil = lambda sheet: sheet.remove("running-width-start-2")  # noqa: E731
    assert (122, "running-width-start") in found(drawn, spoil)


def test_a_zone_left_out_is_found(drawn: Drawn):
    assert (28, "keep-out-L-1") in found(drawn, lambda sheet: sheet.remove("keep-out-L-1"))


def test_a_zone_elsewhere_is_found(drawn: Drawn):
    spoil = lambda sheet: sheet.move("keep-out-L-1", 8.0, 0.0)  # noqa: E731
    assert (28, "keep-out-L-1") in found(drawn, spoil)


def test_backing_in_a_zone_without_a_conflict_is_found(drawn: Drawn):
    """Backing drawn through an item, of which the layout says that it meets nothing."""

    def spoil(sheet: Spoiled) -> None:
        zone = next(path for path in sheet.parts("keep-out-L-1", "path"))
        x, y = (float(each) for each in zone.get("d").split(" L")[0][1:].split())
        corners = [(x - 9, y - 9), (x + 9, y - 9), (x + 9, y + 9), (x - 9, y + 9)]
        path = " L".join(f"{at} {up}" for at, up in corners)
        sheet.add("backing-XB-1-middle", "path", d=f"M{path} Z", fill="#eeeeee", stroke="none")

    assert (28, "keep-out-L-1") in found(drawn, spoil)


@pytest.mark.parametrize(
    ("kind", "of", "name", "words"),
    [
        ("backing-section", "P1", "width", '5"'),
        ("backing-section", "P1", "offset", '1/2"'),
        ("backing-form", "CROSSES", "forms", "7"),
        ("backing-piece", "P1", "pieces", "99"),
        ("backing-line", "XB-1", "blocks", "99"),
        ("backing-line", "LB-1", "fasteners", "99"),
        ("backing-line", "XB-1", "middle", '9"'),
    ],
)
def test_a_table_that_tells_another_figure_is_found(
    drawn: Drawn, kind: str, of: str, name: str, words: str
):
    spoil = lambda sheet: retell(sheet, kind, of, name, words)  # noqa: E731
    assert (123, f"{kind}s-table") in found(drawn, spoil)


def test_a_missing_joist_arrow_is_found(drawn: Drawn):
    spoil = lambda sheet: sheet.remove("joist-arrow-view-1")  # noqa: E731
    assert (78, "joist-arrow") in found(drawn, spoil)
