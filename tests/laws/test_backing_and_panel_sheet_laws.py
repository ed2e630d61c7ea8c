"""Laws of the sheets of backing and of panels: whatever room comes in, they pass the checker."""

from collections.abc import Iterator
from itertools import chain
from random import Random

import pytest

from tests.laws.random_outlines import random_outline
from tests.laws.random_specs import Spec, random_specs
from tests.laws.random_surveys import random_surveys
from tests.laws.test_sheet_laws import Outcome, drawn, findings_told, refusals

SPECS, SURVEYS, OUTLINES = 16, 5, 4
SEED = 34
# A law held by refusing everything would be no law.
REFUSED_AT_MOST = 0.3
SHEETS = ["Z-103", "Z-104"]
CLASSES = ("joist", "backing", "blocking", "fixed-at", "field-of", "laying-start", "field-size")


def specs() -> Iterator[Spec]:
    random = Random(SEED)
    outlines = (random_outline(random) for _ in range(OUTLINES))
    for spec in chain(random_specs(SPECS, SEED), random_surveys(SURVEYS, SEED), outlines):
        yield {**spec, "drawing": {**spec.get("drawing", {}), "sheets": SHEETS}}


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    return tuple(drawn(spec) for spec in specs())


def test_every_sheet_passes_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_few_plausible_rooms_are_refused(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert refused < REFUSED_AT_MOST * len(outcomes), codes
    assert not codes["paper_too_small"]


def test_the_rooms_have_what_the_sheets_show(outcomes: tuple[Outcome, ...]) -> None:
    for name in CLASSES:
        assert any(f'class="{name}"' in svg for each in outcomes for svg in each.svgs), name
