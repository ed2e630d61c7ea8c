"""No float where lengths are exact: in measure (but for angles), model, layout and take-off."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest

from lacunar.layout.moulding_records import SawSheet
from lacunar.layout.panels.lone_boards import LoneBoards
from lacunar.layout.records import Layout
from lacunar.layout.runs.lone_run import LoneRun
from tests.architecture.sources import PACKAGE, Source, from_text, sources

# Trigonometry has no exact answer; what it finds is rounded once, in this module.
INEXACT = [PACKAGE / "measure" / "angle.py"]
# Plans of cutting rest on a solver's floats, and prove what they claim in whole numbers.
PLANS = PACKAGE / "takeoff" / "cutting"

# The functions of `math` that take whole numbers or fractions to whole numbers.
EXACT_MATH = {"ceil", "comb", "floor", "gcd", "isqrt", "lcm", "prod", "trunc"}


def exact_sources() -> list[Source]:
    """Return the files that must not hold a float."""
    folders = [PACKAGE / name for name in ("measure", "model", "layout", "takeoff")]
    inexact = {
        str(path.relative_to(PACKAGE.parents[1])) for path in (*INEXACT, *PLANS.rglob("*.py"))
    }
    return [source for source in sources(*folders) if source.name not in inexact]


def float_of(node: ast.AST) -> str:
    """Return what makes this one node a float; empty where nothing does."""
    match node:
        case ast.Constant(value=float() | complex() as value):
            return f"the literal {value}"
        case ast.Name(id="float" | "complex" as name):
            return f"the name {name}"
        case ast.Attribute(value=ast.Name(id="math"), attr=name) if name not in EXACT_MATH:
            return f"math.{name}"
        case ast.ImportFrom(module="math", names=names):
            inexact = [alias.name for alias in names if alias.name not in EXACT_MATH]
            return f"math.{inexact[0]}" if inexact else ""
        case ast.Import(names=names) | ast.ImportFrom(names=names) if any(
            alias.name.split(".")[0] in ("cmath", "numpy") for alias in names
        ):
            return "an import that computes with floats"
    return ""


def floats(source: Source) -> list[str]:
    """Return a line for each float in a file, annotations in quotes included."""
    found = []
    for node in ast.walk(source.tree):
        if what := float_of(node):
            found.append(f"{source.name}:{node.lineno}: {what}")
    return found


def test_no_float_where_lengths_are_exact():
    assert [line for source in exact_sources() for line in floats(source)] == []


@pytest.mark.parametrize("folder", ["measure", "model", "layout", "takeoff"])
def test_every_exact_folder_is_read(folder: str):
    assert any(Path(source.name).parts[2] == folder for source in exact_sources())


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("x = 1.5", "the literal 1.5"),
        ("def f(x: float): ...", "the name float"),
        ("def f() -> list[float]: ...", "the name float"),
        ("x = float(y)", "the name float"),
        ("x = math.sqrt(2)", "math.sqrt"),
        ("from math import gcd, sin", "math.sin"),
        ("import numpy as np", "an import that computes with floats"),
    ],
)
def test_a_planted_float_is_found(text: str, found: str):
    assert floats(from_text(text)) == [f"planted.py:1: {found}"]


def test_whole_numbers_and_exact_functions_pass():
    assert floats(from_text("import math\nx = math.gcd(4, 6) + 1\ny = math.floor(x)")) == []


def inexact_fields(result: Any, seen: set[object]) -> Iterator[str]:
    """A line for each field of a result, however deep inside, that may hold a float or anything."""
    if result in seen:
        return
    seen.add(result)
    for part in get_args(result):
        yield from inexact_fields(part, seen)
    if not isinstance(result, type) or not is_dataclass(result):
        return
    hints = get_type_hints(result)
    for field in fields(result):
        if {float, complex, Any, object} & {hints[field.name], *get_args(hints[field.name])}:
            yield f"{result.__name__}.{field.name}: {hints[field.name]}"
        yield from inexact_fields(hints[field.name], seen)


@pytest.mark.parametrize("result", [Layout, SawSheet, LoneBoards, LoneRun])
def test_no_result_has_a_field_for_a_float(result: type):
    assert list(inexact_fields(result, set())) == []


def test_the_walk_over_results_goes_all_the_way():
    seen: set[object] = set()
    assert list(inexact_fields(Layout, seen)) == []
    names = {each.__name__ for each in seen if isinstance(each, type)}
    assert {"Length", "Angle", "Ceiling", "Stock", "Joist", "Passing", "CrownSection"} <= names


@dataclass(frozen=True)
class _Inner:
    size: float | None


@dataclass(frozen=True)
class _Outer:
    parts: tuple[_Inner, ...] | None


def test_a_planted_float_field_is_found_through_tuples_and_unions():
    assert list(inexact_fields(_Outer, set())) == ["_Inner.size: float | None"]
