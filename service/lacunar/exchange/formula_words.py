"""A rule's formula, with what stood for its names, as words: the sum a carpenter can do again."""

import ast
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from lacunar.exchange.length_json import length_in_words
from lacunar.measure.angle import Angle
from lacunar.measure.figure import Figure, Operand
from lacunar.measure.length import Length
from lacunar.measure.money import money_text
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text

_SIGNS: Mapping[type[ast.operator], tuple[str, int]] = {
    ast.Add: ("plus", 1),
    ast.Sub: ("less", 1),
    ast.Mult: ("x", 2),
    ast.Div: ("divided by", 2),
}
_FUNCTIONS = {
    "max": "the greatest of",
    "min": "the least of",
    "ceil": "rounded up to a whole number,",
    "floor": "rounded down to a whole number,",
    "abs": "without its sign,",
    "sqrt": "the square root of",
    "sin": "the sine of",
    "cos": "the cosine of",
    "tan": "the tangent of",
    "asin": "the angle of which the sine is",
    "acos": "the angle of which the cosine is",
    "atan": "the angle of which the tangent is",
    "cents": "to the hundredth,",
}
_ATOM = 3
# So fine that sums can be done again; what a saw is set to is told in tenths.
ANGLE_PLACES = 3


def value_in_words(value: Operand, units: Units) -> str:
    """Turn what a figure or operand is worth into words."""
    if isinstance(value, Length):
        return length_in_words(value, units)
    if isinstance(value, Angle):
        return f"{decimal_text(value.degrees, ANGLE_PLACES)}°"
    if isinstance(value, Decimal):
        return money_text(value)
    return decimal_text(value) if isinstance(value, Fraction) else str(value)


def sum_in_words(figure: Figure[Operand], units: Units) -> str:
    """Turn a figure's formula into words, each name followed by what stood for it.

    >>> from lacunar.measure.figure import Rule
    >>> rest = Rule("what is left", "space - (coffers - 1) * beam_width")
    >>> inches = Length.of_inches
    >>> figure = rest.gives(inches(46), space=inches(60), coffers=3, beam_width=inches(7))
    >>> print(sum_in_words(figure, Units.INCH))
    space 5'-0" less (coffers 3 less 1) x beam width 7"
    """
    tree = ast.parse(figure.rule.formula, mode="eval").body
    return _Wording(dict(figure.operands), units).words(tree)[0]


class _Wording:
    """Words one formula; each part comes with how tightly it holds together."""

    def __init__(self, operands: Mapping[str, Operand], units: Units) -> None:
        self.operands = operands
        self.units = units

    def words(self, node: ast.expr) -> tuple[str, int]:
        match node:
            case ast.Name(id=name):
                return self.named(name), _ATOM
            case ast.Constant(value=number):
                return str(number), _ATOM
            case ast.UnaryOp(operand=operand):
                return f"minus {self.within(operand, _ATOM)}", 1
            case ast.BinOp(left=left, op=sign, right=right) if type(sign) in _SIGNS:
                word, binding = _SIGNS[type(sign)]
                # A sum or product to be taken off or divided by would be read as part of the chain.
                later = self.within(right, binding + isinstance(sign, ast.Sub | ast.Div))
                return f"{self.within(left, binding)} {word} {later}", binding
            case ast.Call(func=ast.Name(id=name), args=arguments):
                told = ", ".join(self.words(each)[0] for each in arguments)
                return f"{_FUNCTIONS[name]} ({told})", _ATOM
        raise ValueError(f"no rule may say {ast.unparse(node)}")

    def within(self, node: ast.expr, binding: int) -> str:
        words, own = self.words(node)
        # A quotient is always set apart: "less 7 divided by 2" could be read as a sum divided.
        is_quotient = isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div)
        apart = own < binding or is_quotient
        return f"({words})" if apart else words

    def named(self, name: str) -> str:
        return f"{name.replace('_', ' ')} {value_in_words(self.operands[name], self.units)}"
