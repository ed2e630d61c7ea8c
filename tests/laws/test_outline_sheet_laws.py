"""Laws of the sheets of rooms with other than four walls: they pass the plan checker."""

import pytest

from tests.laws.random_outlines import random_outlines, with_measured
from tests.laws.test_outline_laws import laid
from tests.laws.test_sheet_laws import Outcome, drawn, findings_told, refusals

SPECS = 30
SEED = 31
REFUSED_AT_MOST = 0.1


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    found = []
    for number, spec in enumerate(random_outlines(SPECS, SEED)):
        layout = laid(spec) if number % 5 == 0 else None
        measured = spec if layout is None else with_measured(spec, layout)
        found.append(drawn({**measured, "name": f"odd room {number}"}))
    return tuple(found)


def test_every_sheet_passes_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_few_plausible_rooms_are_refused(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert refused < REFUSED_AT_MOST * SPECS, codes


def test_the_rooms_differ_in_what_matters(outcomes: tuple[Outcome, ...]) -> None:
    """Among what is drawn are cut coffers, angled walls, columns, items, features and openings."""
    texts = ["".join(outcome.svgs) for outcome in outcomes if not outcome.faults]
    seen = ("angled-beam", "partial-crown", "direction", "column", "item", "wall-feature")
    for sign in (*seen, "opening-row"):
        assert sum(f'class="{sign}"' in text for text in texts) >= 2, sign
