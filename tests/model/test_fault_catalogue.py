"""Every code that is raised anywhere is in the catalogue, and every one in it is raised."""

import ast
import re
from collections.abc import Iterator

import pytest

from lacunar.model.fault_catalogue import FAULT_CODES
from lacunar.model.fault_meaning import FaultMeaning
from tests.architecture.sources import PACKAGE, Source, from_text, sources

# What makes a fault: the record itself, and the function of `exchange.fields` that makes the error
# a field raises. A code that is passed on under its own name was written down where it came from.
MAKERS = ("Fault", "refusal")


def codes_in(source: Source) -> Iterator[str]:
    """The codes a file raises."""
    for node in ast.walk(source.tree):
        match node:
            case ast.Call(func=ast.Name(id=maker)) if maker in MAKERS:
                yield code_of(node)


def code_of(call: ast.Call) -> str:
    """The code in one call; empty for one passed on."""
    given = [keyword.value for keyword in call.keywords if keyword.arg == "code"] or call.args[:1]
    match given:
        case [ast.Constant(value=str(code))]:
            return code
        case [ast.Attribute(attr="code")]:
            return ""
    raise AssertionError(f"line {call.lineno}: the code of a fault stands where it is made")


def raised() -> set[str]:
    """Every code raised in the package."""
    return {code for source in sources(PACKAGE) for code in codes_in(source)} - {""}


def test_the_catalogue_holds_every_code_that_is_raised():
    assert raised() - FAULT_CODES.keys() == set()


def test_every_code_in_the_catalogue_is_raised():
    assert FAULT_CODES.keys() - raised() == set()


def test_a_planted_code_is_found():
    text = 'Fault(code="a_b", pointer="")\nrefusal("c_d", "", "")\nFault(found.code, "")'
    assert list(codes_in(from_text(text))) == ["a_b", "c_d", ""]
    with pytest.raises(AssertionError, match="line 1"):
        list(codes_in(from_text("Fault(name)")))


@pytest.mark.parametrize(("code", "meaning"), FAULT_CODES.items())
def test_codes_are_plain_words_with_a_meaning_and_a_remedy(code: str, meaning: FaultMeaning):
    assert re.fullmatch(r"[a-z0-9]+(_[a-z0-9]+)*", code)
    assert not meaning.title.endswith(".")
    assert meaning.meaning.endswith(".")
    assert meaning.remedy.endswith(".")
