"""Laws of whole sheets: whatever room comes in, what goes out passes the plan checker."""

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import pytest

from lacunar.drawing.checker import Finding, check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import layout_answer, prepare
from tests.laws.random_specs import Spec, random_specs

SPECS = 118
SEED = 1
# A law held by refusing everything would be no law.
REFUSED_AT_MOST = 0.2
WORDS = (
    "mm",
    "in",
    "shift_to_equal",
    "soffit",
    "framing",
    "mitred",
    "tabloid",
    "a3",
    "arch_d",
    "coped_in_place",
    "bottom_edge",
    "boards",
    "through",
    "floating",
    "grain",
    "flat",
    "upper_board",
    "center_at_end",
    "drop_at_end",
    "starts_at",
    "ends_at",
    "cladding",
    "cleat",
)


@dataclass(frozen=True)
class Outcome:
    """What became of one spec: the faults it was refused for, or its sheets and their findings."""

    spec: Spec
    faults: tuple[str, ...]
    svgs: tuple[str, ...]
    findings: tuple[Finding, ...]


def drawn(spec: Spec) -> Outcome:
    """One spec through layout and sheets to the checker."""
    typeface = load_typeface()
    try:
        prepared = prepare(json.dumps(spec).encode())
        sheets = compose(prepared.layout, prepared.digest, typeface).sheets
    except SpecRefused as refusal:
        return Outcome(spec, tuple(fault.code for fault in refusal.faults), (), ())
    svgs = tuple(paint_svg(sheet, typeface, fonts=None) for sheet in sheets)
    answer = layout_answer(prepared, trace=False)
    return Outcome(spec, (), svgs, check_set(svgs, answer, typeface))


def findings_told(outcomes: Sequence[Outcome]) -> list[str]:
    """What the checker finds on all sheets, a line each."""
    return [
        f"{outcome.spec['name']}, point {one.point}, {one.sheet} {one.where}: {one.message}"
        for outcome in outcomes
        for one in outcome.findings
    ]


def refusals(outcomes: Sequence[Outcome]) -> tuple[int, Counter[str]]:
    """How many specs are refused, and for what."""
    refused = [outcome for outcome in outcomes if outcome.faults]
    return len(refused), Counter(code for outcome in refused for code in outcome.faults)


@pytest.fixture(scope="module")
def outcomes() -> tuple[Outcome, ...]:
    return tuple(drawn(spec) for spec in random_specs(SPECS, SEED))


def test_every_sheet_passes_the_plan_checker(outcomes: tuple[Outcome, ...]) -> None:
    found = findings_told(outcomes)
    assert not found, "\n".join(found[:50])


def test_few_plausible_rooms_are_refused(outcomes: tuple[Outcome, ...]) -> None:
    refused, codes = refusals(outcomes)
    assert refused < REFUSED_AT_MOST * SPECS, codes


def test_the_rooms_differ_in_what_matters(outcomes: tuple[Outcome, ...]) -> None:
    """Among what is drawn are both units, small paper, continuation sheets, casings, soffits."""
    texts = [json.dumps(outcome.spec) for outcome in outcomes if not outcome.faults]
    for word in WORDS:
        assert sum(f'"{word}"' in text for text in texts) >= 2, word
    assert any(len(outcome.svgs) > 1 for outcome in outcomes)


def test_the_same_room_gives_the_same_sheets(outcomes: tuple[Outcome, ...]) -> None:
    for outcome in outcomes[:5]:
        assert drawn(outcome.spec).svgs == outcome.svgs
