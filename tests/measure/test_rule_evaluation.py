"""The evaluator that re-works traces is held to formulas worked by hand."""

from fractions import Fraction

import pytest

from lacunar.measure.figure import Rule
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from tests.rule_evaluation import FormulaError, contradictions, evaluate

INCH = Length.of_inches(1)


@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        ("a + b * 2", Fraction(20)),  # 6 + 7 * 2
        ("(a + b) * 2", Fraction(26)),
        ("a - b - 1", Fraction(-2)),
        ("a / b", Fraction(6, 7)),
        ("-a + b", Fraction(1)),
        ("max(a, b, 3)", Fraction(7)),
        ("min(a, b)", Fraction(6)),
        ("ceil(b / 4) - floor(a / 4)", Fraction(1)),  # 2 - 1
        ("floor(-a / 4) + b", Fraction(5)),  # floor(-1.5) is -2
    ],
)
def test_a_formula_is_worked_out_in_fractions(formula: str, expected: Fraction):
    names = [(name, value) for name, value in (("a", 6), ("b", 7)) if name in formula]
    assert evaluate(formula, names) == expected


def test_a_length_stands_for_its_number_of_units():
    assert evaluate("a * 2", [("a", INCH)]) == 2
    assert evaluate("a * 2", [("a", INCH)], Units.MILLIMETER) == Fraction(508, 10)


@pytest.mark.parametrize(
    "formula",
    [
        "a ** 2",
        "a // 2",
        "a % 2",
        "a * 1.5",
        "a * True",
        "a if a else 1",
        "a < 1",
        "a.inches",
        "[a][0]",
        "round(a)",
        "max(a, key=a)",
        "max(*a)",
        "a + '1'",
        "a and 1",
    ],
)
def test_what_no_rule_may_say_is_refused(formula: str):
    with pytest.raises(FormulaError):
        evaluate(formula, [("a", 1)])


@pytest.mark.parametrize("formula", ["a + b", "1", "a + max", "max(1, 2)"])
def test_operands_are_exactly_those_the_formula_names(formula: str):
    with pytest.raises(FormulaError, match="names"):
        evaluate(formula, [("a", 1)])


def test_a_true_figure_has_no_contradiction():
    rule = Rule("share", "total * weight / weights")
    assert contradictions(rule.gives(INCH, total=INCH * 3, weight=1, weights=3)) == []


def test_a_wrong_figure_is_found():
    rule = Rule("half", "total / 2")
    assert contradictions(rule.gives(INCH, total=INCH * 3)) == [
        "half: counting in, total / 2 is 3/2, the figure is 1",
        "half: counting mm, total / 2 is 381/10, the figure is 127/5",
    ]


def test_a_number_taken_for_a_length_is_found():
    # Right in inches by chance; in millimeters 1 more is no inch more.
    rule = Rule("one more", "total + 1")
    assert contradictions(rule.gives(INCH * 4, total=INCH * 3)) == [
        "one more: counting mm, total + 1 is 386/5, the figure is 508/5"
    ]
