"""Works the formulas of rules out again, apart from the code that computed the figures.

A formula is read as a syntax tree, never run: only what `Rule` promises is understood.
"""

import ast
import math
import operator
from collections.abc import Callable, Iterable
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction

from lacunar.measure.angle import Angle
from lacunar.measure.figure import Figure, Operand
from lacunar.measure.length import Length
from lacunar.measure.units import Units

_OPERATIONS: dict[type[ast.operator], Callable[[Fraction, Fraction], Fraction]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
}
_FUNCTIONS: dict[str, Callable[..., Fraction | int]] = {
    "max": max,
    "min": min,
    "ceil": math.ceil,
    "floor": math.floor,
    "abs": abs,
    "sqrt": lambda x: Fraction(math.sqrt(x)),
    "sin": lambda degrees: Fraction(math.sin(math.radians(degrees))),
    "cos": lambda degrees: Fraction(math.cos(math.radians(degrees))),
    "tan": lambda degrees: Fraction(math.tan(math.radians(degrees))),
    "asin": lambda ratio: Fraction(math.degrees(math.asin(ratio))),
    "acos": lambda ratio: Fraction(math.degrees(math.acos(ratio))),
    "atan": lambda ratio: Fraction(math.degrees(math.atan(ratio))),
    "cents": lambda amount: _cents(amount),
}
# What has no exact form is rounded once: to 1/8000 mm, or a billionth of a degree. So it may be off
# by half of that, and by a little of what floats leave out here.
_HALF_A_GRID: dict[type, Operand] = {
    Length: Length.of_millimeters(Fraction(1, 16_000)),
    Angle: Angle.of_degrees(Fraction(1, 2 * 10**9)),
}
_FLOATS = Fraction(1, 10**12)


def _cents(amount: Fraction) -> Fraction:
    """The hundredth next to an amount, by the library's own decimals, to far more digits."""
    with localcontext(prec=60):
        exact = Decimal(amount.numerator) / Decimal(amount.denominator)
        return Fraction(exact.quantize(Decimal("0.01"), ROUND_HALF_UP))


class FormulaError(Exception):
    """A formula that says what no rule may say, or does not fit its operands."""


def number(operand: Operand, units: Units = Units.INCH) -> Fraction:
    """Turn an operand into the number that stands for it; a length counts `units`."""
    if isinstance(operand, Length):
        return operand.inches / units.inches_each
    if isinstance(operand, Angle):
        return operand.degrees
    return Fraction(operand)


def evaluate(
    formula: str, operands: Iterable[tuple[str, Operand]], units: Units = Units.INCH
) -> Fraction:
    """Work a formula out; lengths stand in it as numbers of `units`.

    Raises FormulaError where the formula says anything else than rules may, names an operand that
    was not given, or leaves one out that was.
    """
    numbers = {name: number(operand, units) for name, operand in operands}
    tree = ast.parse(formula, mode="eval")
    called = {id(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}
    named = {
        node.id for node in ast.walk(tree) if isinstance(node, ast.Name) and id(node) not in called
    }
    if named != numbers.keys():
        raise FormulaError(f"{formula!r} names {sorted(named)}, given are {sorted(numbers)}")
    return _value(tree.body, numbers)


def _value(node: ast.expr, numbers: dict[str, Fraction]) -> Fraction:
    match node:
        case ast.Constant(value=int() as whole) if not isinstance(whole, bool):
            return Fraction(whole)
        case ast.Name(id=name):
            return numbers[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_value(operand, numbers)
        case ast.BinOp(left=left, op=sign, right=right) if type(sign) in _OPERATIONS:
            return _OPERATIONS[type(sign)](_value(left, numbers), _value(right, numbers))
        case ast.Call(func=ast.Name(id=name), args=arguments, keywords=[]) if name in _FUNCTIONS:
            return Fraction(_FUNCTIONS[name](*(_value(each, numbers) for each in arguments)))
    raise FormulaError(f"no rule may say {ast.unparse(node)!r}")


def _allowed(figure: Figure[Operand], units: Units) -> Fraction:
    """How far a figure may be off what its rule gives: nothing, unless it was snapped.

    A plain number is never snapped: an approximate one rests on rounded operands only.
    """
    grid = _HALF_A_GRID.get(type(figure.value))
    if not figure.approximate or grid is None:
        return Fraction(0)
    return number(grid, units) + _FLOATS


def contradictions(figure: Figure[Operand]) -> list[str]:
    """Return a line for each unit system in which a figure is not what its rule gives.

    Working in both finds a formula that is right by chance in one: adding 1 to a length, or taking
    a width for a ratio.
    """
    found = []
    for units in Units:
        again = evaluate(figure.rule.formula, figure.operands, units)
        if abs(again - number(figure.value, units)) > _allowed(figure, units):
            found.append(
                f"{figure.rule.name}: counting {units}, {figure.rule.formula} is {again},"
                f" the figure is {number(figure.value, units)}"
            )
    return found
