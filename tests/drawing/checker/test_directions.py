"""Point 67: arrows against what is laid out, on a sheet of boards that is then spoiled."""

import json
from typing import Any

import pytest

from lacunar.drawing.checker import Finding
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.prepare import layout_answer, prepare
from tests.drawing.checker.spoiled import Spoiled, checked

Drawn = tuple[str, dict[str, Any], Typeface]


def drawn(panel: dict[str, Any], length: int = 240) -> Drawn:
    """The plan of a room with this panel, and its layout's JSON."""
    spec = {
        "room": {"length": length, "width": 180, "height": 108},
        "panel": panel,
        "drawing": {"paper": "arch_c", "sheets": ["Z-101"]},
    }
    prepared = prepare(json.dumps(spec).encode())
    typeface = load_typeface()
    plan = compose(prepared.layout, prepared.digest, typeface).sheets[0]
    answer = dict(layout_answer(prepared, trace=False))
    return paint_svg(plan, typeface, fonts=None), answer, typeface


@pytest.fixture(scope="module")
def boards() -> Drawn:
    return drawn({"kind": "boards", "parallel_to": "width"})


def found(sheet: str, of: Drawn) -> list[tuple[int, str]]:
    _, answer, typeface = of
    findings: tuple[Finding, ...] = checked(sheet, answer, typeface)
    return [(finding.point, finding.where) for finding in findings]


def test_every_coffer_has_its_arrow(boards: Drawn):
    svg, answer, _ = boards
    assert found(svg, boards) == []
    for coffer in answer["coffers"]:
        assert f'id="direction-{coffer["id"]}"' in svg


def test_the_grain_of_sheets_has_arrows_too_and_sheets_without_have_none():
    grain = drawn({"kind": "sheet_goods", "grain": "length"})
    assert found(grain[0], grain) == []
    assert 'data-parallel-to="length"' in grain[0]
    assert "direction-A1" not in drawn({"kind": "sheet_goods"})[0]


def test_an_arrow_beyond_its_coffer_is_found(boards: Drawn):
    sheet = Spoiled(boards[0])
    sheet.move("direction-A1", 0, 300)
    assert (67, "direction-A1") in found(sheet.svg, boards)


def test_arrows_the_wrong_way_are_found(boards: Drawn):
    other = drawn({"kind": "boards", "parallel_to": "length"})
    points = {point for point, _ in found(other[0], boards)}
    assert 67 in points


def test_a_plan_without_arrows_is_found(boards: Drawn):
    sheet = Spoiled(boards[0])
    for coffer in boards[1]["coffers"]:
        sheet.remove(f"direction-{coffer['id']}")
    assert [point for point, _ in found(sheet.svg, boards)] == [67]
