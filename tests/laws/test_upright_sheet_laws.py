"""Laws of elevations and sections: whatever room comes in, they and the plan pass the checker.

Rooms with four square walls, surveyed ones out of square, and those with any outline.
"""

import json
from collections.abc import Iterator
from itertools import chain

import pytest

from lacunar.drawing.checker import Finding, check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import layout_answer, prepare
from tests.laws.random_outlines import random_outlines
from tests.laws.random_specs import Spec, random_specs
from tests.laws.random_surveys import random_surveys

SEED = 8
SHEETS = ["Z-101", "Z-201", "Z-301"]
# A law held by refusing everything would be no law.
REFUSED_AT_MOST = 0.3


def specs() -> Iterator[Spec]:
    rooms = chain(random_specs(9, SEED), random_surveys(3, SEED), random_outlines(3, SEED))
    for spec in rooms:
        yield {**spec, "drawing": {**spec.get("drawing", {}), "sheets": SHEETS}}


def outcome(spec: Spec) -> tuple[list[str], tuple[Finding, ...]]:
    """The sheets of a spec and what is found on them; no sheets where it is refused."""
    typeface = load_typeface()
    try:
        prepared = prepare(json.dumps(spec).encode())
        sheets = compose(prepared.layout, prepared.digest, typeface).sheets
    except SpecRefused:
        return [], ()
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheets]
    answer = dict(layout_answer(prepared, trace=False))
    return [sheet.id for sheet in sheets], check_set(svgs, answer, typeface)


@pytest.fixture(scope="module")
def outcomes() -> list[tuple[list[str], tuple[Finding, ...]]]:
    return [outcome(spec) for spec in specs()]


def test_every_drawn_set_passes_the_checker(
    outcomes: list[tuple[list[str], tuple[Finding, ...]]],
):
    assert [finding for _, findings in outcomes for finding in findings] == []


def test_every_drawn_set_has_both_sheets(outcomes: list[tuple[list[str], tuple[Finding, ...]]]):
    drawn = [sheets for sheets, _ in outcomes if sheets]
    assert all({*SHEETS} <= {*sheets} for sheets in drawn)
    assert len(drawn) >= (1 - REFUSED_AT_MOST) * len(outcomes)
