"""A material list in words: what to buy of everything, what for, and how each amount came about."""

from collections.abc import Iterator

from lacunar.exchange.cutting_answer import verdict
from lacunar.exchange.explain import figure_in_words
from lacunar.exchange.length_json import length_in_words
from lacunar.exchange.material_json import Prepared
from lacunar.measure.figure import NumberFigure
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.takeoff.material_records import BoardDirection, LinePlan, MaterialLine

_DECIMALS = 3
_MARKS = 12


def explain_materials(prepared: Prepared) -> str:
    """Turn a material list into the text of all its lines."""
    return "\n".join(_lines(prepared))


def _lines(prepared: Prepared) -> Iterator[str]:
    units, materials = prepared.pooled.step.units, prepared.listed.materials
    for line in materials.lines:
        yield from _line(line, units)
    yield from (_direction(each) for each in materials.directions)
    if materials.cost is not None:
        yield (
            f"All that is cut costs {materials.cost}, and cannot cost less than"
            f" {materials.lower_bound}."
        )
    yield from (f"Caution: {caution.text}" for caution in materials.cautions)


def _line(line: MaterialLine, units: Units) -> Iterator[str]:
    buy = ", ".join(f"{each.quantity} x {each.name}" for each in line.bought) or "nothing"
    yield f"{line.number}. {line.name}: buy {buy}"
    uses = ", ".join(line.used_for).replace("_", " ")
    yield f"  {figure_in_words(f'Need for {uses} [{line.unit}]', line.need, units)}"
    more = f"waste {_number(line.waste)}, left over {_number(line.left_over)}"
    on_hand = f", from offcuts on hand {_number(line.on_hand)}" if line.on_hand.value else ""
    yield f"  {more}{on_hand}, bought {_number(line.amount)} {line.unit}"
    if line.parts:
        marks = ", ".join(f"{each.quantity} {each.mark}" for each in line.parts[:_MARKS])
        rest = len(line.parts) - _MARKS
        yield f"  for {marks}" + (f" and {rest} more" if rest > 0 else "")
    if line.plan is not None:
        yield from _plan(line.plan, line, units)


def _plan(plan: LinePlan, line: MaterialLine, units: Units) -> Iterator[str]:
    least = plan.lower_bound
    if least is None and plan.least_amount is not None:
        least = f"{_number(plan.least_amount)} {line.unit}"
    yield f"  {verdict(plan.proof, least or '')}"
    for one in plan.one_length:
        more = one.more if one.more is not None else length_in_words(one.more_bought, units)
        yield f"  {length_in_words(one.length, units)} alone: {one.quantity}, {more} more"


def _direction(each: BoardDirection) -> str:
    told = f"{_number(each.amount)} ft bought; the other way {_number(each.other_amount)} ft"
    costs = "" if each.cost is None else f", cost {each.cost}; the other way {each.other_cost}"
    return f"{each.material} as asked for: {told}{costs}."


def _number(figure: NumberFigure) -> str:
    return decimal_text(figure.value, _DECIMALS)
