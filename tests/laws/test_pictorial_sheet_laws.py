"""Laws of the cover and the exploded corner: random ceilings have them, and they check clean."""

import json
from collections.abc import Iterator
from itertools import chain
from typing import Any

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import layout_answer, prepare
from tests.laws.random_outlines import random_outlines
from tests.laws.random_specs import random_specs
from tests.laws.random_surveys import random_surveys

SEED = 20261125
SHEETS = ["Z-001", "Z-901"]


def specs() -> Iterator[dict[str, Any]]:
    every = chain(random_specs(7, SEED), random_surveys(4, SEED + 1), random_outlines(5, SEED))
    for spec in every:
        yield {**spec, "drawing": {**spec.get("drawing", {}), "sheets": SHEETS}}


def test_covers_and_corners_of_random_ceilings_keep_every_point():
    typeface = load_typeface()
    drawn = 0
    for spec in specs():
        try:
            prepared = prepare(json.dumps(spec).encode())
        except SpecRefused:
            continue
        # What can be laid out has a cover, on any paper.
        sheets = compose(prepared.layout, prepared.digest, typeface).sheets
        svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheets]
        answer = dict(layout_answer(prepared, trace=False))
        assert check_set(svgs, answer, typeface) == (), json.dumps(spec)
        assert sheets[0].id == "Z-001"
        drawn += 1
    assert drawn > 10
