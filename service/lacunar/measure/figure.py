"""Figures that carry their reason: a value, the rule it came from, and what the rule was given."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Generic, TypeVar

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length

Operand = Length | Angle | Fraction | Decimal | int

Value = TypeVar("Value", bound=Operand)
Value_co = TypeVar("Value_co", bound=Operand, covariant=True)


@dataclass(frozen=True, slots=True)
class Figure(Generic[Value_co]):
    """A derived value with its reason. Layout code reads `value`; `exchange` words the rest.

    `operands` pairs each name in the rule's formula with what stood for it; `approximate` says that
    one of them, or the value, was rounded because it has no exact form, such as a root.
    """

    value: Value_co
    rule: "Rule"
    operands: tuple[tuple[str, Operand], ...]
    approximate: bool = False


@dataclass(frozen=True, slots=True)
class Rule:
    """How a figure comes about: a name, and a formula over the names of its operands.

    The formula is a Python expression of + - * / and parentheses, whole numbers, and the functions
    max, min, ceil, floor, abs and sqrt, sin, cos, tan, asin, acos and atan in degrees, and cents,
    which rounds as `money` does. A length stands in it as its inches, an angle as its degrees. The
    function that computes the value does so in Python; the formula says it again, and a test holds
    the two together.

    >>> share = Rule("share of the clear total", "clear_total * weight / weights")
    >>> share.gives(Length.of_inches(48), clear_total=Length.of_inches(144), weight=1, weights=3)
    ... # doctest: +NORMALIZE_WHITESPACE
    Figure(value=Length(48 in),
           rule=Rule(name='share of the clear total', formula='clear_total * weight / weights'),
           operands=(('clear_total', Length(144 in)), ('weight', 1), ('weights', 3)),
           approximate=False)
    """

    name: str
    formula: str

    def gives(self, value: Value, /, **operands: Operand) -> Figure[Value]:
        """Turn a computed value and what it was computed from into a figure.

        `operands` go by the names the formula uses, in the order they should be told.
        """
        return Figure(value, self, tuple(operands.items()))

    def approximates(self, value: Value, /, **operands: Operand) -> Figure[Value]:
        """As `gives`, for a figure that rests on something rounded because it has no exact form."""
        return Figure(value, self, tuple(operands.items()), approximate=True)


GIVEN = Rule("given", "given")


def given(value: Value) -> Figure[Value]:
    """Turn a value taken from the spec as it stands into a figure.

    >>> given(Length.of_inches(6)).rule.name
    'given'
    """
    return GIVEN.gives(value, given=value)


LengthFigure = Figure[Length]
AngleFigure = Figure[Angle]
CountFigure = Figure[int]
NumberFigure = Figure[Fraction]
MoneyFigure = Figure[Decimal]
