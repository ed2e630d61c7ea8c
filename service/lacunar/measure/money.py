"""Money: amounts are decimals, and this is the one place where they are rounded.

An amount comes about as a fraction, without loss, and is rounded once, to the hundredth next to it;
half a hundredth goes away from zero (common practice, no source). What is added up are amounts that
were rounded, so that what is printed adds up as printed.
"""

from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from math import floor

from lacunar.measure.figure import MoneyFigure, Operand, Rule

ROUNDING = (
    "Each amount is worked out without loss and rounded once, to the hundredth next to it, half a"
    " hundredth away from zero. Sums are of rounded amounts."
)
"""The policy in words, as every answer with money states it."""

NOTHING = Decimal("0.00")
_HALF = Fraction(1, 2)
_DECIMALS = 2


def to_cents(exact: Fraction) -> Decimal:
    """Turn an exact amount into the hundredth next to it; a tie goes away from zero.

    Formula: sign(x) floor(|x| 100 + 1/2) / 100.

    >>> to_cents(Fraction("1.005")), to_cents(Fraction(-1, 200)), to_cents(Fraction(1, 3))
    (Decimal('1.01'), Decimal('-0.01'), Decimal('0.33'))
    """
    cents = floor(abs(exact) * 100 + _HALF)
    return Decimal(cents if exact >= 0 else -cents).scaleb(-_DECIMALS)


def rounded(rule: Rule, exact: Fraction, /, **operands: Operand) -> MoneyFigure:
    """Turn an exact amount into a figure; the rule's formula says `cents` where it is rounded.

    >>> line = Rule("amount by price", "cents(amount * price)")
    >>> price = Decimal("2.85")
    >>> rounded(line, Fraction(5, 2) * Fraction(price), amount=Fraction(5, 2), price=price).value
    Decimal('7.13')
    """
    return rule.gives(to_cents(exact), **operands)


def added(amounts: Iterable[Decimal]) -> Decimal:
    """Turn amounts that were rounded into their sum.

    >>> added([Decimal("0.10"), Decimal("0.20")]), added([])
    (Decimal('0.30'), Decimal('0.00'))
    """
    return sum(amounts, NOTHING)


def money_text(amount: Decimal) -> str:
    """Turn an amount into text, with no fewer than two decimals and no more than it has.

    >>> money_text(Decimal("1234.5")), money_text(Decimal("0.0235")), money_text(Decimal("2.850"))
    ('1234.50', '0.0235', '2.85')
    """
    text = f"{amount:f}"
    whole, _, decimals = text.partition(".")
    return f"{whole}.{decimals.rstrip('0').ljust(_DECIMALS, '0')}"
