"""Functions and modules stay short enough to be read at one sitting. The linter has no such rule.

The two limits are this project's choice.
"""

import ast

from tests.architecture.sources import PACKAGE, ROOT, Source, from_text, functions, sources

LONGEST_BODY = 40
LONGEST_MODULE = 400


def body_lines(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Count the lines from the first statement after the docstring to the last."""
    body = function.body[1:] if ast.get_docstring(function) is not None else function.body
    if not body:
        return 0
    last = body[-1].end_lineno
    assert last is not None
    return last - body[0].lineno + 1


def too_long(source: Source) -> list[str]:
    """Return a line for each function, and for the module, that is over its limit."""
    found = [
        f"{source.name}:{function.lineno} {function.name}: {body_lines(function)} lines"
        for function in functions(source)
        if body_lines(function) > LONGEST_BODY
    ]
    length = len(source.text.splitlines())
    if length > LONGEST_MODULE:
        found.append(f"{source.name}: {length} lines")
    return found


def test_no_function_or_module_is_too_long():
    places = sources(PACKAGE, ROOT / "tests", ROOT / "examples")
    assert [line for source in places for line in too_long(source)] == []


def test_a_body_is_counted_without_its_docstring():
    lines = ["def f(x):", '    """One', "", '    two."""', "", *["    x += 1"] * 3, "    return x"]
    (function,) = functions(from_text("\n".join(lines)))
    assert body_lines(function) == 4


def test_a_planted_long_function_and_module_are_found():
    short = from_text("def f(x):\n" + "    x += 1\n" * LONGEST_BODY)
    long = from_text("def f(x):\n" + "    x += 1\n" * (LONGEST_BODY + 1))
    assert too_long(short) == []
    assert too_long(long) == ["planted.py:1 f: 41 lines"]
    assert too_long(from_text("x = 1\n" * (LONGEST_MODULE + 1))) == ["planted.py: 401 lines"]
