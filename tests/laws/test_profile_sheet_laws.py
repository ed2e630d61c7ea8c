"""Laws of profiles and mock-ups: whatever ceiling comes in, what goes out passes the checker."""

from itertools import chain

import pytest

from tests.laws.random_outlines import random_outlines
from tests.laws.random_specs import Spec, random_specs
from tests.laws.random_surveys import random_surveys
from tests.laws.test_sheet_laws import Outcome, drawn, findings_told, refusals

SPECS, ODD, SEED = 20, 2, 4
FORMS = ("tiles", "roll", "none")
SMALL = {"in": "letter", "mm": "a4"}
REFUSED_AT_MOST = 0.2


def asked(spec: Spec, number: int) -> Spec:
    """A spec whose set is its profiles and a mock-up; each fourth one on the smallest paper."""
    drawing = spec.get("drawing")
    usual = drawing if isinstance(drawing, dict) else {}
    own = {"sheets": ["Z-501", "Z-702"], "mock_up": FORMS[number % len(FORMS)]}
    if number % 4 == 0:
        own["paper"] = SMALL[str(spec.get("units", "in"))]
    return {**spec, "drawing": {**usual, **own}}


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    specs = chain(random_specs(SPECS, SEED), random_surveys(ODD, SEED), random_outlines(ODD, SEED))
    return tuple(drawn(asked(spec, number)) for number, spec in enumerate(specs))


def test_profiles_and_mock_ups_pass_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_no_paper_is_too_small_for_them(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert "paper_too_small" not in codes
    assert refused < REFUSED_AT_MOST * len(outcomes), codes


def test_the_ceilings_differ_in_what_is_drawn_of_them(outcomes: tuple[Outcome, ...]) -> None:
    svgs = "".join(svg for outcome in outcomes for svg in outcome.svgs)
    for part in ("member", "cleat", "crown", "nailer", "flat-moulding", "upper_board", "panel"):
        assert f'data-part="{part}"' in svgs, part
    for words in ("SOFFIT", "HALF BEAM", "FULL BEAM", "THIS EDGE TO CEILING"):
        assert words in svgs, words
