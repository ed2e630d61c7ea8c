"""Laws of the sheets of rooms out of square: whatever was surveyed, they pass the plan checker."""

import json

import pytest

from tests.laws.random_surveys import random_surveys
from tests.laws.test_sheet_laws import Outcome, drawn, findings_told, refusals

SPECS = 32
SEED = 1
# A law held by refusing everything would be no law.
REFUSED_AT_MOST = 0.25
WORDS = (
    *("mm", "in", "diagonals", "angles", "points", "bows", "control", "framing", "soffit"),
    *("follow_walls", "mitred_to_corners", "split"),
    *(
        "members",
        "ceiling_items",
        "wall_features",
        "boards",
        "crown",
        "stations",
        "flat",
        "through",
    ),
)


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    return tuple(drawn(spec) for spec in random_surveys(SPECS, SEED))


def test_every_sheet_passes_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_few_plausible_rooms_are_refused(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert refused < REFUSED_AT_MOST * SPECS, codes


def test_the_rooms_differ_in_what_matters(outcomes: tuple[Outcome, ...]) -> None:
    """Among what is drawn are all kinds of surveys, both units, and whatever a ceiling can have."""
    texts = [json.dumps(outcome.spec) for outcome in outcomes if not outcome.faults]
    for word in WORDS:
        assert sum(f'"{word}"' in text for text in texts) >= 2, word
    crooked = [o for o in outcomes if any('class="control-line"' in svg for svg in o.svgs)]
    assert len(crooked) > SPECS // 4
    along = [o for o in outcomes if any('class="coffer-size-row"' in svg for svg in o.svgs)]
    assert len(along) > SPECS // 6
    tapered = [o for o in along if any("SAW FOR CROWN CORNERS" in svg for svg in o.svgs)]
    assert tapered
