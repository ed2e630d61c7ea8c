"""Laws of the sheets of rooms with other than four walls: they pass the plan checker."""

import pytest

from tests.laws.random_outlines import random_outlines
from tests.laws.test_sheet_laws import Outcome, drawn, findings_told, refusals

SPECS = 40
SEED = 31
REFUSED_AT_MOST = 0.1


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    named = enumerate(random_outlines(SPECS, SEED))
    return tuple(drawn({**spec, "name": f"odd room {number}"}) for number, spec in named)


def test_every_sheet_passes_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_few_plausible_rooms_are_refused(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert refused < REFUSED_AT_MOST * SPECS, codes


def test_the_rooms_differ_in_what_matters(outcomes: tuple[Outcome, ...]) -> None:
    """Among what is drawn are cut coffers, angled walls, slanted ends and arrows."""
    texts = ["".join(outcome.svgs) for outcome in outcomes if not outcome.faults]
    for sign in ('class="angled-beam"', 'class="partial-crown"', 'class="direction"'):
        assert sum(sign in text for text in texts) >= 2, sign
