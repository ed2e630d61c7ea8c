"""Laws of the sheets of crossings and crown: whatever room comes in, they pass the plan checker."""

import json
from typing import Any

import pytest

from tests.laws.random_outlines import random_outlines
from tests.laws.random_specs import random_specs
from tests.laws.random_surveys import random_surveys
from tests.laws.test_sheet_laws import Outcome, drawn, findings_told, refusals

SQUARE, FLAT, ODD, CROOKED = 14, 4, 4, 5
SEED = 77
REFUSED_AT_MOST = 0.3
DETAILS = ["Z-502", "Z-503"]


def details(spec: dict[str, Any], number: int) -> dict[str, Any]:
    """A spec of which only details are drawn, every fourth of them on the smallest paper."""
    drawing = {**spec.get("drawing", {}), "sheets": DETAILS}
    if number % 4 == 0:
        drawing["paper"] = "letter"
    return {**spec, "name": f"room {number}", "drawing": drawing}


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    square = list(random_specs(4 * SQUARE, SEED))
    flat = [spec for spec in square if '"upper_board"' in json.dumps(spec)]
    specs = (
        *square[:SQUARE],
        *flat[:FLAT],
        *random_outlines(ODD, SEED),
        *random_surveys(CROOKED, SEED),
    )
    return tuple(drawn(details(spec, number)) for number, spec in enumerate(specs))


def test_every_sheet_of_details_passes_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_no_paper_is_too_small_for_details(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert refused <= REFUSED_AT_MOST * len(outcomes), codes
    assert "paper_too_small" not in codes


def test_the_details_differ_in_what_matters(outcomes: tuple[Outcome, ...]) -> None:
    """Among what is drawn are frames, saw pictures, flat mouldings, and boards of every kind."""
    texts = ["".join(outcome.svgs) for outcome in outcomes if not outcome.faults]
    signs = ("crown-piece", "saw-picture", "flats-edge", "seen-edge", "nailer", "board")
    for sign in signs:
        assert any(f'class="{sign}"' in text for text in texts), sign
    for part in ("side", "bottom", "upper_board"):
        assert any(f'data-part="{part}"' in text for text in texts), part
