"""Money: rounded once, ties away from zero, held against the library's own decimals."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.measure.figure import Rule
from lacunar.measure.money import added, money_text, rounded, to_cents
from tests.rule_evaluation import contradictions

CENT = Decimal("0.01")


@pytest.mark.parametrize(
    ("exact", "cents"),
    [
        ("0", "0.00"),
        ("2.675", "2.68"),  # a float of it is below the tie, and gives 2.67
        ("1.005", "1.01"),
        ("-1.005", "-1.01"),
        ("0.0049", "0.00"),
        ("1/3", "0.33"),
        ("2/3", "0.67"),
        ("199/200", "1.00"),
    ],
)
def test_an_amount_is_rounded_to_the_hundredth(exact: str, cents: str):
    assert str(to_cents(Fraction(exact))) == cents


@given(st.decimals(min_value=-(10**9), max_value=10**9, places=5))
def test_decimals_are_rounded_as_the_library_rounds_them(amount: Decimal):
    # ROUND_HALF_UP of the decimal module takes ties away from zero.
    assert to_cents(Fraction(amount)) == amount.quantize(CENT, ROUND_HALF_UP)


@given(st.fractions(min_value=0, max_value=10**9), st.decimals("0", "9999", places=4))
def test_a_rounded_figure_is_what_its_rule_gives(quantity: Fraction, price: Decimal):
    rule = Rule("amount by price", "cents(quantity * price)")
    figure = rounded(rule, quantity * Fraction(price), quantity=quantity, price=price)
    assert contradictions(figure) == []
    assert abs(Fraction(figure.value) - quantity * Fraction(price)) <= Fraction(1, 200)


@given(st.lists(st.decimals(min_value=-(10**9), max_value=10**9, places=2)))
def test_sums_lose_nothing(amounts: list[Decimal]):
    assert Fraction(added(amounts)) == sum(map(Fraction, amounts))


@given(st.decimals(min_value=-(10**9), max_value=10**9, places=4))
def test_text_reads_back_as_the_amount(amount: Decimal):
    text = money_text(amount)
    assert Decimal(text) == amount
    assert 2 <= len(text.partition(".")[2]) <= 4
