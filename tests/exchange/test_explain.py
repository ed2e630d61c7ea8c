"""The sums in words: every figure is told, and told as it is."""

from fractions import Fraction

import pytest

from lacunar.exchange.explain import explain
from lacunar.exchange.formula_words import sum_in_words, value_in_words
from lacunar.measure.figure import GIVEN, Rule
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from tests.exchange.layouts import DOCUMENTS, laid_out
from tests.exchange.test_layout_json import figures_in

inches = Length.of_inches


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_figure_of_a_layout_is_told_with_its_sum(name: str):
    layout, _ = laid_out(name)
    units = layout.ceiling.units
    text = explain(layout, units)
    for figure in figures_in(layout):
        value = value_in_words(figure.value, units)
        if figure.rule == GIVEN:
            assert f": {value}, as given." in text
        else:
            assert f"{value} ({figure.rule.name})." in text


@pytest.mark.parametrize("name", DOCUMENTS)
def test_no_line_is_told_twice(name: str):
    layout, _ = laid_out(name)
    lines = [line for line in explain(layout, layout.ceiling.units).splitlines() if line]
    assert len(lines) == len(set(lines))


def test_a_clear_total_reads_as_a_carpenter_reckons_it():
    # Half of the shifted room: from 3 1/2 to the cased beam's near face at 9'-10 1/4", one beam of
    # 7 in between: 118 1/4 - 3 1/2 - 7 = 107 3/4 = 8'-11 3/4", in two: 53 7/8 = 4'-5 7/8".
    layout, _ = laid_out("shifted")
    text = explain(layout, Units.INCH)
    assert (
        'Clear total of zone 1 of the length run: end 9\'-10 1/4" less start 3 1/2" less'
        ' (coffers 2 less 1) x beam width 7" = 8\'-11 3/4"' in text
    )
    assert "clear total 8'-11 3/4\" divided by coffers 2 = 4'-5 7/8\"" in text


def test_headroom_cautions_and_casings_are_told():
    layout, _ = laid_out("shifted")
    text = explain(layout, Units.INCH)
    assert 'XB-2 shifted by 3/4" leaves 4\'-5 7/8", 4\'-5 7/8".' in text
    assert "Headroom of 7'-0\" is asked for: under P1 there is enough." in text
    assert all(caution.text in text for caution in layout.cautions)


def test_a_layout_can_be_told_in_the_other_units():
    layout, _ = laid_out("least")
    assert "1346.2 mm" in explain(layout, Units.MILLIMETER)  # 53 in


@pytest.mark.parametrize(
    ("formula", "operands", "words"),
    [
        ("a - (b + c)", {"a": 9, "b": 2, "c": 3}, "a 9 less (b 2 plus c 3)"),
        ("a - b + c", {"a": 9, "b": 2, "c": 3}, "a 9 less b 2 plus c 3"),
        ("a - (b - c)", {"a": 9, "b": 2, "c": 3}, "a 9 less (b 2 less c 3)"),
        ("(a + b) / 2", {"a": 9, "b": 1}, "(a 9 plus b 1) divided by 2"),
        ("a + b / 2", {"a": 9, "b": 1}, "a 9 plus (b 1 divided by 2)"),
        ("2 * (a - b)", {"a": 9, "b": 1}, "2 x (a 9 less b 1)"),
        ("a * 2 - b", {"a": 9, "b": 1}, "a 9 x 2 less b 1"),
        ("-a", {"a": 9}, "minus a 9"),
        ("max(a, b)", {"a": 9, "b": 1}, "the greatest of (a 9, b 1)"),
        ("min(a, b)", {"a": 9, "b": 1}, "the least of (a 9, b 1)"),
        ("ceil(a / b)", {"a": 9, "b": 2}, "rounded up to a whole number, (a 9 divided by b 2)"),
        ("floor(a)", {"a": 9}, "rounded down to a whole number, (a 9)"),
        ("beam_width * share", {"beam_width": 7, "share": 3}, "beam width 7 x share 3"),
    ],
)
def test_formulas_keep_their_meaning_in_words(formula: str, operands: dict[str, int], words: str):
    figure = Rule("test", formula).gives(0, **operands)
    assert sum_in_words(figure, Units.INCH) == words


def test_values_are_told_by_what_they_are():
    assert value_in_words(inches(Fraction(7, 2)), Units.INCH) == '3 1/2"'
    assert value_in_words(4, Units.INCH) == "4"
    assert value_in_words(Fraction(3, 2), Units.INCH) == "1.5"


def test_what_no_rule_may_say_is_not_worded():
    with pytest.raises(ValueError, match="no rule may say"):
        sum_in_words(Rule("test", "a ** 2").gives(0, a=3), Units.INCH)
