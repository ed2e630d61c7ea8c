"""The cover: its index is that of the set whatever is issued, and it fits every paper."""

import json
import time
from typing import Any

import pytest

from lacunar.drawing.elements import Group, Text, walk
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.sheet_set import SheetSet, compose
from lacunar.drawing.sheets.cover_tables import IndexRow, index_rows
from lacunar.drawing.sheets.pages import IssuedSheet
from lacunar.workflow.prepare import prepare

ROOM = {"length": 182, "width": 148, "height": 106}


def drawn(spec: dict[str, Any]) -> SheetSet:
    prepared = prepare(json.dumps(spec).encode())
    return compose(prepared.layout, prepared.digest, load_typeface())


def index_of(composed: SheetSet) -> list[tuple[str, str]]:
    return [
        (row.data["of"], row.data["pages"])
        for sheet in composed.sheets
        for row in walk(sheet.children)
        if isinstance(row, Group) and row.kind == "sheet-row"
    ]


def words_of(composed: SheetSet) -> set[str]:
    every = (e for sheet in composed.sheets for e in walk(sheet.children))
    return {element.text for element in every if isinstance(element, Text)}


def pages_of(composed: SheetSet) -> list[tuple[str, str]]:
    numbers = ["-".join(entry.number.split("-")[:2]) for entry in composed.index]
    return [(number, str(numbers.count(number))) for number in dict.fromkeys(numbers)]


@pytest.mark.parametrize(
    "sheets", [["Z-001"], ["Z-001", "Z-901"], ["Z-001", "Z-101", "Z-102", "Z-701", "Z-901"]]
)
@pytest.mark.parametrize("paper", ["letter", "a4", "tabloid", "arch_d"])
def test_the_index_is_that_of_the_set(paper: str, sheets: list[str]):
    composed = drawn({"room": ROOM, "drawing": {"paper": paper, "sheets": sheets}})
    assert index_of(composed) == pages_of(composed)
    assert [number for number, _ in index_of(composed)] == sheets


def test_pages_of_one_sheet_are_one_row_at_its_drawing_s_scale():
    """A page of tables has no scale, and two scales are noted at the views."""
    plan = IssuedSheet("Z-101", "Plan", "1:25"), IssuedSheet("Z-101-2", "Plan", "NONE")
    details = IssuedSheet("Z-501", "Profiles", "1:2"), IssuedSheet("Z-501-2", "Profiles", "1:5")
    lists = IssuedSheet("Z-701", "Poles", "NONE"), IssuedSheet("Z-701-2", "Poles", "NONE")
    assert index_rows((*plan, *details, *lists)) == (
        IndexRow("Z-101", "Plan", 2, "1:25"),
        IndexRow("Z-501", "Profiles", 2, "AS NOTED"),
        IndexRow("Z-701", "Poles", 2, "NONE"),
    )


def test_headroom_that_is_not_met_is_told():
    """88 in high, less the drop of a 1x8 side, 7 1/4 in, is less than 7 ft."""
    composed = drawn({"room": {**ROOM, "height": 88}, "drawing": {"sheets": ["Z-001"]}})
    assert "7'-0\", NOT MET" in words_of(composed)


def test_the_largest_hall_is_bounded_and_says_what_is_left_out():
    """Nine hundred coffers with crown; CPU seconds of this process."""
    spec = {
        "room": {"length": "120'", "width": "120'", "height": "16'"},
        "grid": {"length": {"coffers": 30}, "width": {"coffers": 30}},
        "crown": {"face": "3 1/4", "spring_from_wall": 38},
        "drawing": {"paper": "arch_d", "sheets": ["Z-001"]},
    }
    prepared = prepare(json.dumps(spec).encode())
    typeface = load_typeface()
    start = time.process_time()
    composed = compose(prepared.layout, prepared.digest, typeface)
    assert time.process_time() - start < 8.0
    assert "CROWN IS LEFT OUT FOR CLARITY" in words_of(composed)
    groups = [g for g in walk(composed.sheets[0].children) if isinstance(g, Group)]
    kinds = {group.data["kind"] for group in groups if group.kind == "edges"}
    assert "beam" in kinds
    assert "crown" not in kinds
