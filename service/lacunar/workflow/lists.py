"""The take-off and the material list of a ceiling that is drawn, as far as its sheets tell them."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from lacunar.drawing.lists import Lists, Stocked
from lacunar.exchange.take_off_json import PooledCeiling, PooledTakeOff
from lacunar.model.drawing import SheetNumber
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.taken_off import take_off
from lacunar.workflow.material_list import PreparedMaterials, materials_answer, materials_of
from lacunar.workflow.prepare import Prepared
from lacunar.workflow.take_off import take_off_answer

TELLS_STOCK = frozenset({SheetNumber.CUTTING, SheetNumber.MATERIALS})
"""The sheets that show how parts are cut from stock, and what is bought."""
TELLS_PARTS = TELLS_STOCK | {SheetNumber.CUT_LIST, SheetNumber.PROFILES}
"""The sheets that show parts by their marks."""


@dataclass(frozen=True, slots=True)
class DrawnLists:
    """A ceiling taken off, and its material list: None where no sheet shows it, or with faults."""

    pooled: PooledTakeOff
    materials: PreparedMaterials | None = None
    faults: tuple[Fault, ...] = ()

    @property
    def told(self) -> Lists:
        """What sheets are composed from."""
        made = self.materials
        stocked = None if made is None else Stocked(made.planned, made.listed)
        assumptions = self.pooled.pool[0].assumptions
        return Lists(self.pooled.taken, assumptions, stocked, self.faults)


def drawn_lists(prepared: Prepared) -> DrawnLists | None:
    """The lists that a ceiling's sheets need; None where none that is issued needs any.

    Stock is the usual one, as a spec tells none. Parts that cannot be cut from it leave the drawing
    as it is otherwise: the faults are told on the sheets that they concern.
    """
    issued = frozenset(prepared.layout.ceiling.drawing.sheets)
    if not issued & TELLS_PARTS:
        return None
    pooled = _taken_off(prepared)
    if not issued & TELLS_STOCK:
        return DrawnLists(pooled)
    try:
        return DrawnLists(pooled, materials_of(pooled, StockSaid(), compared=False))
    except SpecRefused as refused:
        return DrawnLists(pooled, faults=refused.faults)


def _taken_off(prepared: Prepared) -> PooledTakeOff:
    layout = prepared.layout
    ceiling = PooledCeiling(layout, prepared.take_off_assumptions, prepared.digest)
    return PooledTakeOff(take_off([layout]), (ceiling,), layout.ceiling.mark_to)


def list_answers(lists: DrawnLists) -> Mapping[str, Any]:
    """The lists as a caller would get them: the take-off's JSON; the material list's, or None."""
    made = lists.materials
    return {
        "take_off": take_off_answer(lists.pooled, trace=False),
        "materials": None if made is None else materials_answer(made, trace=False),
    }
