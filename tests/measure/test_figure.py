import pytest

from lacunar.measure.figure import Rule, given
from lacunar.measure.length import Length
from tests.rule_evaluation import contradictions

SHARE = Rule("share", "total * weight / weights")
FOOT = Length.of_feet(1)


def test_a_figure_keeps_value_rule_and_operands_in_the_order_told():
    figure = SHARE.gives(FOOT, total=FOOT * 3, weight=1, weights=3)
    assert figure.value == FOOT
    assert figure.rule is SHARE
    assert figure.operands == (("total", FOOT * 3), ("weight", 1), ("weights", 3))


def test_an_operand_may_be_called_value():
    figure = Rule("double", "value * 2").gives(FOOT * 2, value=FOOT)
    assert figure.operands == (("value", FOOT),)


def test_a_given_figure_is_its_own_reason():
    figure = given(FOOT)
    assert (figure.value, figure.rule.name) == (FOOT, "given")
    assert contradictions(figure) == []


def test_a_figure_cannot_change_and_can_be_a_key():
    figure = given(FOOT)
    assert {figure: 1}[given(Length.of_inches(12))] == 1
    with pytest.raises(AttributeError):
        figure.value = FOOT
