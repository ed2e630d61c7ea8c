"""Laws of sheets of parts and stock: a plan checker finds nothing on those of random ceilings."""

import json
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest

from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import prepare
from tests.laws.random_outlines import random_outlines
from tests.laws.random_specs import random_specs
from tests.laws.random_surveys import random_surveys
from tests.laws.random_take_offs import with_take_off

LISTS = ["Z-601", "Z-602", "Z-603"]
SMALLEST = {"mm": "a4", "in": "letter"}


def specs() -> Iterator[dict[str, Any]]:
    """Rooms of four walls, crooked ones and odd ones, every other one on the smallest paper."""
    random = Random(601)
    found = [*random_specs(6, 602), *random_surveys(2, 603), *random_outlines(3, 604)]
    for number, spec in enumerate(found):
        drawing = {**spec.get("drawing", {}), "sheets": LISTS}
        if number % 2:
            drawing["paper"] = SMALLEST[spec.get("units", "in")]
        yield with_take_off({**spec, "drawing": drawing}, random)


@pytest.mark.parametrize("spec", list(specs()))
def test_lists_of_random_ceilings_pass_the_checker(spec: dict[str, Any]):
    assert check_drawings(prepare(json.dumps(spec).encode())) == ()
