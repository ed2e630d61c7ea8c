"""Which sheets are issued, in which order, and how they refer to each other."""

import json
from typing import Any

import pytest

from lacunar.drawing.elements import Pt, Text, walk
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.reference_mark import Reference, mark_radius, reference_mark
from lacunar.drawing.sheet_set import compose
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import prepare

ROOM = {"room": {"length": 182, "width": 148, "height": 106}}


def sheets_of(drawing: dict[str, Any]) -> list[str]:
    prepared = prepare(json.dumps({**ROOM, "drawing": drawing}).encode())
    composed = compose(prepared.layout, prepared.digest, load_typeface())
    assert [entry.number for entry in composed.index] == [sheet.id for sheet in composed.sheets]
    return [sheet.id for sheet in composed.sheets]


def refused(drawing: dict[str, Any]) -> list[tuple[str, str]]:
    with pytest.raises(SpecRefused) as refusal:
        sheets_of(drawing)
    return [(fault.code, fault.pointer) for fault in refusal.value.faults]


def test_sheets_are_issued_in_the_order_of_the_set_however_they_are_named():
    assert sheets_of({"sheets": ["Z-701", "Z-102", "Z-701"]}) == ["Z-102", "Z-701"]


def test_where_none_is_named_all_are_issued():
    assert {"Z-101", "Z-102", "Z-701"} <= set(sheets_of({}))


def test_a_choice_of_no_sheet_is_refused():
    assert refused({"sheets": []}) == [("no_sheets", "/drawing/sheets")]


def test_a_choice_of_sheets_that_have_nothing_to_show_is_refused():
    """A room without crown has no crown frames."""
    assert refused({"sheets": ["Z-503"]}) == [("no_sheets", "/drawing/sheets")]


def test_a_sheet_that_no_set_has_is_told_with_those_there_are():
    assert refused({"sheets": ["Z-101", "Z-999"]}) == [("unknown_word", "/drawing/sheets/1")]


@pytest.mark.parametrize(("number", "sheet"), [(1, "Z-301"), (12, "Z-502-13")])
def test_a_reference_stands_within_its_ring(number: int, sheet: str):
    typeface = load_typeface()
    reference = Reference("section-length", number, sheet)
    radius = mark_radius(reference, typeface)
    mark = reference_mark(reference, Pt(0.0, 0.0), typeface)
    for text in (each for each in walk((mark,)) if isinstance(each, Text)):
        half = typeface.width(text.text, text.height, text.face) / 2
        for y in (text.at.y, text.at.y - text.height):
            assert (half**2 + y**2) ** 0.5 < radius
