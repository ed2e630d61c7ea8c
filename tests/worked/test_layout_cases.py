"""Runs `layout_cases.toml`: each ceiling laid out, and held against figures worked by hand."""

import json
import tomllib
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.measure.figure import Figure
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused

CASES = tomllib.loads(Path(__file__).with_name("layout_cases.toml").read_text("utf-8"))["case"]

Case = dict[str, Any]


def ways(record: object, steps: list[str]) -> Iterator[object]:
    """Everything a way through records leads to."""
    if isinstance(record, Figure):
        record = record.value
    if not steps:
        yield record
        return
    step, rest = steps[0], steps[1:]
    if step == "*":
        assert isinstance(record, tuple), f"{record!r} is not several"
        for each in record:
            yield from ways(each, rest)
    elif isinstance(record, tuple):
        yield from ways(record[int(step)], rest)
    else:
        yield from ways(getattr(record, step), rest)


def plain(value: object) -> object:
    """A value as cases write it: a length as the number of its inches."""
    return value.inches if isinstance(value, Length) else value


def expected(text: object, found: object) -> object:
    """What a case says, read as the kind of value that was found."""
    if isinstance(found, Length) and isinstance(text, str):
        sign = -1 if text.startswith("-") else 1
        return sign * sum(Fraction(part) for part in text.removeprefix("-").split())
    return text


def held(expectation: dict[str, Any], found: list[object]) -> bool:
    """Whether what was found is what one line of a case says."""
    match expectation:
        case {"is": text}:
            return len(found) == 1 and plain(found[0]) == expected(text, found[0])
        case {"all": text}:
            return bool(found) and all(plain(each) == expected(text, each) for each in found)
        case {"each": texts}:
            pairs = zip(texts, found, strict=False)
            return len(texts) == len(found) and all(plain(f) == expected(t, f) for t, f in pairs)
        case {"sum": text}:
            lengths = [each for each in found if isinstance(each, Length)]
            assert len(lengths) == len(found)
            return plain(sum(lengths, ZERO)) == expected(text, lengths[0])
        case {"number": number}:
            single = found[0] if len(found) == 1 else None
            return number == (len(single) if isinstance(single, tuple) else len(found))
    raise AssertionError(f"a case does not say what it expects: {expectation}")


def outcome(case: Case) -> object:
    """The layout of a case, or its faults."""
    ceiling = resolve(read_spec(json.dumps(case["spec"]).encode())).ceiling
    try:
        return lay_out(ceiling)
    except SpecRefused as refused:
        return refused.faults


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_a_ceiling_worked_by_hand(case: Case):
    result = outcome(case)
    if "faults" in case:
        assert [[fault.code, fault.pointer] for fault in result] == case["faults"]
        return
    for expectation in case.get("expect", ()):
        found = list(ways(result, expectation["at"].split("/")))
        assert held(expectation, found), (expectation, [plain(each) for each in found])
    codes = {caution.code for caution in result.cautions}
    assert set(case.get("cautions", ())) <= codes
    assert not codes & set(case.get("not_cautions", ()))


def test_every_case_has_a_source_and_something_to_hold():
    for case in CASES:
        assert case["source"]
        assert case.keys() & {"expect", "faults", "cautions"}


def test_a_wrong_figure_is_found():
    case = CASES[0]
    (opening,) = set(ways(outcome(case), ["coffers", "0", "length"]))
    assert held({"is": "43"}, [opening])
    assert not held({"is": "43 1/16"}, [opening])
    assert not held({"all": "43"}, [])
    assert not held({"each": ["43"]}, [opening, opening])
