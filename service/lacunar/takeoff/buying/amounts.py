"""Amounts of a line as figures: sums over what is bought, cut and left, each with its terms."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import TypeVar

from lacunar.measure.figure import NumberFigure, Operand, Rule
from lacunar.measure.length import Length
from lacunar.takeoff.quantities.quantity_records import FOOT, Terms

WASTE = Rule(
    "waste: what is bought or taken from offcuts, less what parts take and what can be kept",
    "amount + on_hand - need - left_over",
)

YIELD = Rule(
    "yield: how much of what is bought or taken from offcuts goes into parts, in percent",
    "100 * need / (amount + on_hand)",
)

Key = TypeVar("Key")

_FEET = "count * length"
_SQUARE_FEET = "count * length * width"


def feet(name: str, counted: Mapping[Length, int], *, approximate: bool = False) -> NumberFigure:
    """So many of each length together, in feet.

    >>> feet("feet bought", {FOOT * 8: 3}).value
    Fraction(24, 1)
    """
    rows: list[Mapping[str, Operand]] = [
        {"count": count, "length": length} for length, count in counted.items()
    ]
    total = sum((length / FOOT * count for length, count in counted.items()), Fraction(0))
    if not rows:
        return nothing(name)
    return Terms(_FEET, rows).figure(name, " / foot", total, approximate=approximate, foot=FOOT)


def square_feet(
    name: str, counted: Mapping[tuple[Length, Length], int], *, approximate: bool = False
) -> NumberFigure:
    """So many of each length and width together, in square feet."""
    rows: list[Mapping[str, Operand]] = [
        {"count": count, "length": length, "width": width}
        for (length, width), count in counted.items()
    ]
    if not rows:
        return nothing(name)
    total = sum(
        ((length / FOOT) * (width / FOOT) * count for (length, width), count in counted.items()),
        Fraction(0),
    )
    return Terms(_SQUARE_FEET, rows).figure(
        name, " / (foot * foot)", total, approximate=approximate, foot=FOOT
    )


def nothing(name: str) -> NumberFigure:
    """None of it."""
    return Rule(name, "0").gives(Fraction(0))


def wasted(
    need: NumberFigure, amount: NumberFigure, on_hand: NumberFigure, left_over: NumberFigure
) -> NumberFigure:
    """What is neither in the parts nor left to be used again."""
    gives = WASTE.approximates if need.approximate else WASTE.gives
    return gives(
        amount.value + on_hand.value - need.value - left_over.value,
        amount=amount.value,
        on_hand=on_hand.value,
        need=need.value,
        left_over=left_over.value,
    )


def yields(need: NumberFigure, amount: NumberFigure, on_hand: NumberFigure) -> NumberFigure:
    """How much of what is cut goes into parts, in percent.

    >>> eight, ten = feet("need", {FOOT: 8}), feet("bought", {FOOT: 10})
    >>> yields(eight, ten, nothing("from offcuts")).value
    Fraction(80, 1)
    """
    gives = YIELD.approximates if need.approximate else YIELD.gives
    return gives(
        100 * need.value / (amount.value + on_hand.value),
        need=need.value,
        amount=amount.value,
        on_hand=on_hand.value,
    )


def tally(items: Iterable[tuple[Key, int]]) -> dict[Key, int]:
    """So many of each, added up in their order."""
    found: dict[Key, int] = {}
    for key, count in items:
        found[key] = found.get(key, 0) + count
    return found
