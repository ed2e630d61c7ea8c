"""Lines of what is counted, spread or poured: quantities, and the packs they are bought in."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from lacunar.measure.figure import NumberFigure, Rule, given
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.model.assuming import Assuming
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.stock import size_name
from lacunar.model.take_off import LITERS_IN_GALLON, SQUARE_METERS_IN_SQUARE_FOOT
from lacunar.takeoff.buying.amounts import nothing
from lacunar.takeoff.buying.said import PackSize, PackSpec, PackUnit
from lacunar.takeoff.buying.stock_rules import STOCK
from lacunar.takeoff.buying.usual_stock import PACK_REASON, usual_pack
from lacunar.takeoff.material_records import Bought, LineKind, MaterialLine, PartOnLine
from lacunar.takeoff.part_records import Part, PartKind
from lacunar.takeoff.quantities.fixings import FINISH_NAIL
from lacunar.takeoff.quantities.quantity_records import (
    Quantity,
    QuantityKind,
    QuantityUnit,
    UsedFor,
    in_metric,
    metric_unit,
)

IN_ALL = "needed for all uses together"
WASTE_IN_ALL = "waste of all uses together"
PACKS = Rule("whole packs of what is needed and its waste", "ceil((need + waste) / holds) * holds")
REST = Rule("the rest of the last pack", "amount - need - waste")

_KINDS: Mapping[QuantityKind, LineKind] = {
    QuantityKind.FASTENERS: LineKind.EACH,
    QuantityKind.ADHESIVE: LineKind.EACH,
    QuantityKind.INSULATION: LineKind.AREA,
    QuantityKind.PRIMER: LineKind.VOLUME,
    QuantityKind.PAINT: LineKind.VOLUME,
}
_FINISHED = (
    *(PartKind.SIDE, PartKind.BOTTOM, PartKind.UPPER_BOARD, PartKind.CROWN),
    *(PartKind.FLAT_MOULDING, PartKind.PANEL, PartKind.BOARD),
)
# The parts that make something needed; what is for the whole room has none.
_BEHIND: Mapping[UsedFor, tuple[PartKind, ...]] = {
    UsedFor.BACKING: (PartKind.BACKING, PartKind.CLEAT),
    UsedFor.SIDES: (PartKind.SIDE,),
    UsedFor.BOTTOMS: (PartKind.BOTTOM,),
    UsedFor.UPPER_BOARDS: (PartKind.UPPER_BOARD,),
    UsedFor.CROWN: (PartKind.CROWN,),
    UsedFor.FLAT_MOULDINGS: (PartKind.FLAT_MOULDING,),
    UsedFor.BOARDS: (PartKind.BOARD,),
    UsedFor.PANELS: (PartKind.PANEL,),
    UsedFor.ALL: _FINISHED,
}
_METRIC = {
    PackUnit.LITER: (QuantityUnit.GALLON, LITERS_IN_GALLON),
    PackUnit.SQUARE_METER: (QuantityUnit.SQUARE_FOOT, SQUARE_METERS_IN_SQUARE_FOOT),
}
SKIN = "skin under joists"


@dataclass(frozen=True, slots=True)
class Packs:
    """The packs that were said, and where what was not said is written down."""

    said: Sequence[PackSpec]
    units: Units
    assuming: Assuming


def pack_lines(
    quantities: Sequence[Quantity], parts: Sequence[Part], packs: Packs
) -> tuple[MaterialLine, ...]:
    """Turn quantities into lines of packs, not numbered yet.

    What parts are cut from is left to cutting plans. Errors: `SpecRefused` where packs are said to
    hold what cannot be held against what is needed.
    """
    grouped: dict[tuple[LineKind, str], list[Quantity]] = {}
    for each in quantities:
        kind = _kind(each)
        if kind is not None:
            grouped.setdefault((kind, each.of), []).append(each)
    faults = tuple(fault for group in grouped.values() for fault in _misfits(packs.said, group[0]))
    if faults:
        raise SpecRefused(faults)
    return tuple(_line(kind, group, parts, packs) for (kind, _), group in grouped.items())


def unused_packs(quantities: Sequence[Quantity], said: Sequence[PackSpec]) -> Iterator[str]:
    """Packs of what nothing is needed of."""
    needed = {each.of.casefold() for each in quantities if _kind(each) is not None}
    return (pack.of for pack in said if pack.of.casefold() not in needed)


def _kind(quantity: Quantity) -> LineKind | None:
    """How it is sold; None of areas that nothing is bought by, and of what parts are cut from."""
    if quantity.used_for is UsedFor.SKIN:
        return LineKind.SHEET
    return _KINDS.get(quantity.kind)


def _misfits(said: Sequence[PackSpec], quantity: Quantity) -> Iterator[Fault]:
    for place, pack in enumerate(said):
        unit = _METRIC.get(pack.holds.unit, (pack.holds.unit, None))[0]
        if pack.of.casefold() == quantity.of.casefold() and unit.value != quantity.unit.value:
            yield Fault(
                code="pack_unit_unlike",
                pointer=f"{STOCK}/packs/{place}/holds",
                message=f"What is needed of {quantity.of} is told in {quantity.unit}.",
                remedy=f"Say how many {quantity.unit} a pack holds.",
                figures={"unit": pack.holds.unit.value, "needed_in": quantity.unit.value},
            )


def _line(
    kind: LineKind, group: Sequence[Quantity], parts: Sequence[Part], packs: Packs
) -> MaterialLine:
    first = group[0]
    need = _together(IN_ALL, [(each.used_for, each.need) for each in group])
    waste = _together(WASTE_IN_ALL, [(each.used_for, each.waste) for each in group])
    name, holds = _pack(first, packs)
    count = ceil((need.value + waste.value) / holds)
    gives, leaves = (
        rule.approximates if need.approximate else rule.gives for rule in (PACKS, REST)
    )
    amount = gives(count * holds, need=need.value, waste=waste.value, holds=holds)
    rest = amount.value - need.value - waste.value
    behind = {kind for each in group for kind in _BEHIND.get(each.used_for, ())}
    return MaterialLine(
        number=0,
        kind=kind,
        name=first.of,
        material=None,
        used_for=tuple(each.used_for for each in group),
        unit=first.unit,
        need=need,
        waste=waste,
        left_over=leaves(rest, amount=amount.value, need=need.value, waste=waste.value),
        on_hand=nothing("taken from what is on hand"),
        amount=amount,
        board_feet=None,
        bought=(Bought(name, "", None, None, given(holds), count, None),),
        parts=tuple(PartOnLine(p.mark, p.quantity, 1) for p in parts if p.kind in behind),
        plan=None,
        metric_unit=metric_unit(first.unit),
        metric_need=in_metric(first.unit, need),
        metric_amount=in_metric(first.unit, amount),
    )


def _together(name: str, each: Sequence[tuple[UsedFor, NumberFigure]]) -> NumberFigure:
    if len(each) == 1:
        return each[0][1]
    rule = Rule(name, " + ".join(used_for.value for used_for, _ in each))
    gives = rule.approximates if any(figure.approximate for _, figure in each) else rule.gives
    total = sum((figure.value for _, figure in each), Fraction(0))
    return gives(total, **{used_for.value: figure.value for used_for, figure in each})


def _pack(quantity: Quantity, packs: Packs) -> tuple[str, Fraction]:
    """What a pack is called, and how much of the quantity's unit it holds."""
    said = next((p.holds for p in packs.said if p.of.casefold() == quantity.of.casefold()), None)
    if said is not None:
        return _told(said)
    if quantity.used_for is UsedFor.SKIN:
        sheet = DEFAULTS[packs.units].sheet
        area = sheet.width.inches * sheet.length.inches / 144
        name = size_name((sheet.width, sheet.length), packs.units)
        packs.assuming.note(f"{STOCK}/packs", name, f"a usual sheet; of {quantity.of}")
        return name, area
    finish_nail = quantity.of == FINISH_NAIL
    usual = usual_pack(quantity.kind, finish_nail=finish_nail, units=packs.units)
    name, holds = _told(usual)
    packs.assuming.note(f"{STOCK}/packs", name, f"{PACK_REASON}; of {quantity.of}")
    return name, holds


def _told(pack: PackSize) -> tuple[str, Fraction]:
    _, each = _METRIC.get(pack.unit, (None, Fraction(1)))
    amount = decimal_text(pack.amount, 4)
    if pack.unit is PackUnit.COUNT:
        return ("single" if pack.amount == 1 else f"box of {amount}"), pack.amount
    return f"{amount} {pack.unit}", pack.amount / each
