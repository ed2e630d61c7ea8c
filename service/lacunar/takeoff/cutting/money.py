"""Money in whole cents, as text."""

from collections.abc import Iterable


def money_text(cents: int) -> str:
    """Turn cents into text with two decimals.

    >>> money_text(1149), money_text(-5)
    ('11.49', '-0.05')
    """
    whole, part = divmod(abs(cents), 100)
    return f"{'-' if cents < 0 else ''}{whole}.{part:02}"


def total_text(amounts: Iterable[int | None]) -> str | None:
    """The sum of amounts as text; None where one of them is not known."""
    known = list(amounts)
    parts = [amount for amount in known if amount is not None]
    return money_text(sum(parts)) if len(parts) == len(known) else None


def cents_of(text: str | None) -> int | None:
    """The cents of an amount told as text; None where it is not known.

    >>> cents_of("11.49")
    1149
    """
    return None if text is None else int(text.replace(".", ""))
