"""A take-off's quantities in words: each with its sum, its rule and what is added for waste."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.exchange.explain import figure_in_words
from lacunar.exchange.take_off_json import PooledTakeOff
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.takeoff.quantities.quantity_records import Quantity

_DECIMALS = 3


def explain_take_off(pooled: PooledTakeOff) -> str:
    """Turn a take-off into the text of all its quantities and cautions."""
    return "\n".join(_lines(pooled))


def _lines(pooled: PooledTakeOff) -> Iterator[str]:
    for each in pooled.taken.quantities:
        yield _quantity(each, pooled.step.units)
    yield from (f"Caution: {caution.text}" for caution in pooled.taken.cautions)


def _quantity(quantity: Quantity, units: Units) -> str:
    kind, used_for = (word.replace("_", " ") for word in (quantity.kind, quantity.used_for))
    label = f"{kind.capitalize()}, {quantity.of}, for {used_for} [{quantity.unit}]"
    waste, both = (
        decimal_text(Fraction(figure.value), _DECIMALS)
        for figure in (quantity.waste, quantity.with_waste)
    )
    return f"{figure_in_words(label, quantity.need, units)} With waste of {waste}: {both}."
