"""The material list of a take-off, put together: what is cut from stock, what comes in packs."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lacunar.layout.names import first_few
from lacunar.layout.records import Caution
from lacunar.measure.figure import NumberFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.assuming import Assuming
from lacunar.model.ceiling import Assumption
from lacunar.takeoff.buying.cut_lines import cut_lines
from lacunar.takeoff.buying.pack_lines import Packs, pack_lines, unused_packs
from lacunar.takeoff.buying.problems import Asked
from lacunar.takeoff.cutting.money import cents_of, total_text
from lacunar.takeoff.cutting.plan_records import LengthPlans
from lacunar.takeoff.cutting.sheet_records import SheetPlans
from lacunar.takeoff.material_records import (
    BoardDirection,
    LineKind,
    MaterialLine,
    MaterialList,
)
from lacunar.takeoff.part_records import MaterialKind
from lacunar.takeoff.quantities.quantity_records import FOOT
from lacunar.takeoff.taken_off import PARTS_LONGER, TakenOff

BOUGHT_FEET = Rule("feet of boards bought", "bought / foot")

# Of these, the layout knows the section, and nobody said what it is made of.
_BUILT = {MaterialKind.SECTION, MaterialKind.NAILER}
_ORDER = {kind: number for number, kind in enumerate(LineKind)}


@dataclass(frozen=True, slots=True)
class Planned:
    """What was asked of cutting plans, and these; None where there is nothing of the kind."""

    asked: Asked
    lengths: LengthPlans | None
    sheets: SheetPlans | None


@dataclass(frozen=True, slots=True)
class Listed:
    """A material list, and what was assumed of stock and packs for it."""

    materials: MaterialList
    assumptions: tuple[Assumption, ...]


def material_list(taken: TakenOff, planned: Planned, turned: LengthPlans | None) -> Listed:
    """Turn a take-off and its cutting plans into what is to be bought.

    Parameters: `taken`; `planned`, all its parts; `turned`, the plans of boards if they ran the
    other way, None where there are none. Errors: `SpecRefused` where packs do not suit.
    """
    asked = planned.asked
    assuming = Assuming()
    packs = Packs(asked.packs, asked.units, assuming)
    found = (
        *cut_lines(asked, planned.lengths, planned.sheets),
        *pack_lines(taken.quantities, taken.parts, packs),
    )
    lines = sorted(found, key=lambda line: _ORDER[line.kind])
    plans = [each.plan for each in lines if each.plan is not None]
    materials = MaterialList(
        lines=tuple(replace(line, number=number) for number, line in enumerate(lines, start=1)),
        cost=total_text(cents_of(plan.cost) for plan in plans),
        lower_bound=total_text(cents_of(plan.lower_bound) for plan in plans),
        directions=tuple(_directions(planned.lengths, turned)),
        cautions=(*_kept_cautions(taken), *_cautions(taken, planned, lines)),
    )
    return Listed(materials, (*asked.assumptions, *assuming.made))


def _narrow(asked: Asked) -> Iterator[str]:
    """The marks of parts that are ripped to less than half of their board."""
    kerf = asked.lengths.terms.kerf if asked.lengths else ZERO
    for each in asked.materials:
        stock = each.of.material.width
        if each.of.material.kind is not MaterialKind.LUMBER or stock is None:
            continue
        for cut in each.cuts:
            if cut.width is not None and cut.width * 2 + kerf <= stock:
                yield cut.part.mark


def _directions(asked: LengthPlans | None, turned: LengthPlans | None) -> Iterator[BoardDirection]:
    plans = {plan.material: plan for plan in (asked.plans if asked else ())}
    for other in turned.plans if turned else ():
        plan = plans.get(other.material)
        if plan is not None:
            yield BoardDirection(
                material=plan.material,
                amount=_feet(plan.bought),
                other_amount=_feet(other.bought),
                cost=plan.cost,
                other_cost=other.cost,
            )


def _feet(bought: Length) -> NumberFigure:
    return BOUGHT_FEET.gives(bought / FOOT, bought=bought, foot=FOOT)


def _kept_cautions(taken: TakenOff) -> Iterator[Caution]:
    """Those of the take-off, but for parts that are too long: here they are joined."""
    return (caution for caution in taken.cautions if caution.code != PARTS_LONGER)


def _cautions(taken: TakenOff, planned: Planned, lines: list[MaterialLine]) -> Iterator[Caution]:
    for line in lines:
        parts = [part for part in line.parts if part.pieces_each > 1]
        if parts:
            joints = sum(part.quantity * (part.pieces_each - 1) for part in parts)
            yield Caution(
                code="parts_joined",
                text=f"Parts of {line.name} are longer than its stock, and planned as pieces that"
                " are joined. Where they are joined is for people to say.",
                figures={"parts": first_few([part.mark for part in parts]), "joints": joints},
            )
    yield from _of_stock(planned, lines)
    unused = [*planned.asked.unused, *unused_packs(taken.quantities, planned.asked.packs)]
    if unused:
        yield Caution(
            code="stock_not_used",
            text=f"Nothing is made of this stock: {first_few(unused)}. If that is not meant, name"
            " it as the material list does.",
            figures={"names": len(unused)},
        )
    if any(plans and plans.clock_struck for plans in (planned.lengths, planned.sheets)):
        yield Caution(
            code="clock_struck",
            text="A clock ended the cutting plans before their counts did; on another machine they"
            " may come out otherwise.",
            figures={},
        )


def _of_stock(planned: Planned, lines: list[MaterialLine]) -> Iterator[Caution]:
    """What can be bought otherwise, or not at all, than the list has it."""
    narrow = list(_narrow(planned.asked))
    if narrow:
        yield Caution(
            code="rips_side_by_side",
            text=f"Two of each of these come from one board side by side: {first_few(narrow)}."
            " Here each takes the whole width of a board; choose narrower stock, or buy fewer.",
            figures={"parts": len(narrow)},
        )
    built = [line.name for line in lines if line.material and line.material.kind in _BUILT]
    if built:
        yield Caution(
            code="built_on_site",
            text=f"No yard keeps this: {first_few(built)}. It is listed by its length, for whoever"
            " builds or rips it; name the stock of the backing to have that listed instead.",
            figures={"names": len(built)},
        )
