"""What options cost in words: amounts with their currency, what they lack, what is saved."""

from collections.abc import Iterator
from decimal import Decimal

from lacunar.choosing.records import Found, OptionCost
from lacunar.layout.names import first_few
from lacunar.measure.money import added, money_text


def amount_text(amount: Decimal, currency: str | None) -> str:
    """An amount with its currency, where that is known.

    >>> amount_text(Decimal("120.50"), "USD")
    'USD 120.50'
    """
    return money_text(amount) if currency is None else f"{currency} {money_text(amount)}"


def currency_of(cost: OptionCost | None) -> str | None:
    """What a cost is told in; None without one."""
    return None if cost is None else cost.currency


def currency_in(found: Found) -> str | None:
    """What the costs of all options are told in; None without prices."""
    return next((each.cost.currency for each in found.options if each.cost), None)


def cost_label(cost: OptionCost) -> str:
    """What a cost is called, short enough for a row of a sheet."""
    return f"Cost, {cost.currency}" if cost.complete else f"Cost, {cost.currency}, incomplete"


def cost_lines(cost: OptionCost) -> Iterator[str]:
    """A cost in parts, and what it leaves out."""
    lines = (("materials", cost.materials), ("labor", cost.labor), ("all else", cost.others))
    told = ", ".join(f"{money_text(figure.value)} for {name}" for name, figure in lines)
    above = cost.total.value - added(figure.value for _, figure in lines)
    total = amount_text(cost.total.value, cost.currency)
    yield f"To be paid: {total}: {told}, and {money_text(above)} that is added to these."
    if not cost.complete:
        yield f"That is incomplete and will be more; left out: {first_few(cost.lacks)}."


def saved_text(money: Decimal | None, currency: str | None) -> Iterator[str]:
    """By how much less or more is to be paid, if that is known and changes."""
    if money:
        yield f"{amount_text(abs(money), currency)} {'less' if money > 0 else 'more'}"
