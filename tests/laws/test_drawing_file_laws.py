"""Laws of sheets as files: whatever room comes in, a DXF measures true and files stay the same."""

import json
from collections.abc import Iterator
from functools import cache
from io import StringIO

import ezdxf
import pytest
from ezdxf.document import Drawing

from lacunar.drawing.elements import Group, Sheet, walk
from lacunar.drawing.painters.dxf import paint_dxf
from lacunar.drawing.typeface import Typeface
from lacunar.model.faults import SpecRefused
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import prepare
from tests.laws.random_outlines import random_outlines
from tests.laws.random_specs import random_specs
from tests.laws.random_surveys import random_surveys

SEED = 6
EACH = 3
MOST_OFF = 1e-6
PLANS = ("Z-101",)


@cache
def drawn() -> tuple[tuple[Sheet, Typeface], ...]:
    return tuple(_drawn())


def _drawn() -> Iterator[tuple[Sheet, Typeface]]:
    """The plans of rooms square, crooked and odd, of those that can be drawn."""
    for specs in (random_specs, random_surveys, random_outlines):
        for spec in specs(EACH, SEED):
            asked = {**spec, "drawing": {**spec.get("drawing", {}), "sheets": PLANS}}
            try:
                sheet_set, typeface = compose_sheets(prepare(json.dumps(asked).encode()))
            except SpecRefused:
                continue
            yield from ((sheet, typeface) for sheet in sheet_set.sheets)


@cache
def read_back(index: int) -> Drawing:
    sheet, typeface = drawn()[index]
    return ezdxf.read(StringIO(paint_dxf(sheet, typeface).decode()))


def test_there_are_enough_of_each_kind() -> None:
    plans = [sheet for sheet, _ in drawn() if sheet.id == "Z-101"]
    assert len(plans) >= 2 * EACH
    assert {sheet.data["units"] for sheet in plans} == {"in", "mm"}


def test_dimensions_measure_the_exact_size() -> None:
    count = 0
    for index, (sheet, _) in enumerate(drawn()):
        document = read_back(index)
        unit = {"in": 25.4, "mm": 1.0}[sheet.data["units"]]
        for group in walk(sheet.children):
            if isinstance(group, Group) and group.kind == "dimension":
                measuring = document.groups.get(group.id)
                (entity,) = (one for one in measuring if one.dxftype() == "DIMENSION")
                exact = float(group.data["exact-mm"])
                assert entity.get_measurement() * unit == pytest.approx(exact, abs=MOST_OFF)
                count += 1
    assert count > 60


def test_nothing_is_to_be_mended() -> None:
    for index in range(len(drawn())):
        audit = read_back(index).audit()
        assert (audit.errors, audit.fixes) == ([], [])


def test_the_same_sheet_gives_the_same_bytes() -> None:
    for sheet, typeface in drawn():
        assert paint_dxf(sheet, typeface) == paint_dxf(sheet, typeface)
