"""Lines of what parts are cut from: what a cutting plan takes, and what becomes of it."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.figure import NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.measure.writing import LengthStyle, write_length
from lacunar.model.defaults import DEFAULTS
from lacunar.model.stock import size_name
from lacunar.takeoff.buying.amounts import feet, nothing, square_feet, tally, wasted, yields
from lacunar.takeoff.buying.problems import Asked, CutFrom
from lacunar.takeoff.cutting.plan_records import LengthPlans, MaterialPlan, StockTaken
from lacunar.takeoff.cutting.sheet_records import SheetPlan, SheetPlans, SheetTaken
from lacunar.takeoff.material_records import (
    Bought,
    LineKind,
    LinePlan,
    MaterialLine,
    PartOnLine,
)
from lacunar.takeoff.part_records import Material, MaterialKind
from lacunar.takeoff.quantities.quantity_records import FOOT, QuantityUnit, in_metric, metric_unit
from lacunar.takeoff.quantities.stock_amounts import USED_FOR, board_feet

STICK_HOLDS = Rule("feet of one", "length / foot")
SHEET_HOLDS = Rule("square feet of one sheet", "length * width / (foot * foot)")
LEAST_FEET = Rule("the least that any plan buys, in feet", "least / foot")
LEAST_AREA = Rule("the least that any plan buys, in square feet", "least")
PART_FEET = "feet of stock: the lengths of all parts"
PART_AREA = "area of sheets: that of all parts"
BOUGHT = "all that is bought, end to end or side by side"
FROM_HAND = "what is taken from offcuts on hand"
KEPT = "what is left in offcuts large enough to be kept"


@dataclass(frozen=True, slots=True)
class _Amounts:
    """What parts need, what is bought and taken from what is on hand, what can be kept of it."""

    need: NumberFigure
    amount: NumberFigure
    on_hand: NumberFigure
    kept: NumberFigure


def cut_lines(
    asked: Asked, lengths: LengthPlans | None, sheets: SheetPlans | None
) -> Iterator[MaterialLine]:
    """Turn plans into lines, not numbered yet, in the order of the materials."""
    of_lengths = {plan.material: plan for plan in (lengths.plans if lengths else ())}
    of_sheets = {plan.material: plan for plan in (sheets.plans if sheets else ())}
    for each in asked.materials:
        if each.of.is_sheet:
            yield _of_sheets(each, of_sheets[each.of.name], asked.units)
        else:
            yield _of_lengths(asked, each, of_lengths[each.of.name])


def _of_lengths(asked: Asked, cut_from: CutFrom, plan: MaterialPlan) -> MaterialLine:
    material = cut_from.of.material
    racked = {row.id for row in (asked.lengths.offcuts if asked.lengths else ())}
    sold = [row for row in plan.taken if row.stock not in racked]
    taken = [row for row in plan.taken if row.stock in racked]
    amounts = _Amounts(
        need=feet(
            PART_FEET,
            tally((cut.part.cut_length.value, cut.part.quantity) for cut in cut_from.cuts),
            approximate=_is_approximate(cut_from),
        ),
        amount=feet(BOUGHT, tally((row.length, row.quantity) for row in sold)),
        on_hand=feet(FROM_HAND, tally((row.length, row.quantity) for row in taken)),
        kept=feet(KEPT, tally((stick.offcut, 1) for stick in plan.sticks if stick.usable)),
    )
    bought = tuple(_stick(row, asked.units) for row in sold)
    kind = LineKind.BOARD if material.kind is MaterialKind.BOARDS else LineKind.STICK
    return _line(cut_from, kind, amounts, bought, _length_plan(plan, amounts))


def _of_sheets(cut_from: CutFrom, plan: SheetPlan, units: Units) -> MaterialLine:
    sizes = [
        ((cut.part.cut_length.value, cut.part.cut_width.value), cut.part.quantity)
        for cut in cut_from.cuts
        if cut.part.cut_width is not None
    ]
    kept = [left for sheet in plan.sheets for left in sheet.offcuts if left.usable]
    amounts = _Amounts(
        need=square_feet(PART_AREA, tally(sizes), approximate=_is_approximate(cut_from)),
        amount=square_feet(
            BOUGHT, tally(((row.length, row.width), row.quantity) for row in plan.taken)
        ),
        on_hand=nothing(FROM_HAND),
        kept=square_feet(KEPT, tally(((left.length, left.width), 1) for left in kept)),
    )
    bought = tuple(_sheet(row, units) for row in plan.taken)
    return _line(cut_from, LineKind.SHEET, amounts, bought, _sheet_plan(plan, amounts))


def _is_approximate(cut_from: CutFrom) -> bool:
    return any(
        size is not None and size.approximate
        for cut in cut_from.cuts
        for size in (cut.part.cut_length, cut.part.cut_width)
    )


def _line(
    cut_from: CutFrom,
    kind: LineKind,
    amounts: _Amounts,
    bought: tuple[Bought, ...],
    plan: LinePlan,
) -> MaterialLine:
    unit = QuantityUnit.SQUARE_FOOT if kind is LineKind.SHEET else QuantityUnit.FOOT
    return MaterialLine(
        number=0,
        kind=kind,
        name=cut_from.of.name,
        material=cut_from.of.material,
        used_for=tuple(dict.fromkeys(USED_FOR[cut.part.kind] for cut in cut_from.cuts)),
        unit=unit,
        need=amounts.need,
        waste=wasted(amounts.need, amounts.amount, amounts.on_hand, amounts.kept),
        left_over=amounts.kept,
        on_hand=amounts.on_hand,
        amount=amounts.amount,
        board_feet=_board_feet(cut_from.of.material, amounts.amount),
        bought=bought,
        parts=tuple(
            PartOnLine(cut.part.mark, cut.part.quantity, cut.pieces_each) for cut in cut_from.cuts
        ),
        plan=plan,
        metric_unit=metric_unit(unit),
        metric_need=in_metric(unit, amounts.need),
        metric_amount=in_metric(unit, amounts.amount),
    )


def _board_feet(material: Material, amount: NumberFigure) -> NumberFigure | None:
    """Of what is bought, by its nominal size; None where it has none."""
    if material.nominal_thickness is None or material.nominal_width is None:
        return None
    return board_feet(material.nominal_thickness, material.nominal_width, FOOT * amount.value)


def _stick(row: StockTaken, units: Units) -> Bought:
    style = LengthStyle(units, DEFAULTS[units].mark_to, with_unit=True)
    holds = STICK_HOLDS.gives(row.length / FOOT, length=row.length, foot=FOOT)
    name = write_length(row.length, style)
    return Bought(name, row.stock, row.length, None, holds, row.quantity, row.cost)


def _sheet(row: SheetTaken, units: Units) -> Bought:
    area = (row.length / FOOT) * (row.width / FOOT)
    holds = SHEET_HOLDS.gives(area, length=row.length, width=row.width, foot=FOOT)
    name = size_name((row.width, row.length), units)
    return Bought(name, row.sheet, row.length, row.width, holds, row.quantity, row.cost)


def _length_plan(plan: MaterialPlan, amounts: _Amounts) -> LinePlan:
    least: Length | None = plan.least_bought
    told = None if least is None else LEAST_FEET.gives(least / FOOT, least=least, foot=FOOT)
    return LinePlan(
        cost=plan.cost,
        lower_bound=plan.lower_bound,
        least_amount=told,
        proven_best=plan.proven_best,
        proof=plan.proof,
        yield_percent=yields(amounts.need, amounts.amount, amounts.on_hand),
        one_length=plan.one_length,
    )


def _sheet_plan(plan: SheetPlan, amounts: _Amounts) -> LinePlan:
    least = None if plan.least_area is None else Fraction(plan.least_area)
    return LinePlan(
        cost=plan.cost,
        lower_bound=plan.lower_bound,
        least_amount=None if least is None else LEAST_AREA.gives(least, least=least),
        proven_best=plan.proven_best,
        proof=plan.proof,
        yield_percent=yields(amounts.need, amounts.amount, amounts.on_hand),
        one_length=(),
    )
