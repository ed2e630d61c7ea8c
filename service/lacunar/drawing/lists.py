"""What sheets tell of a ceiling's parts and of what is bought for them."""

from dataclasses import dataclass

from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault
from lacunar.takeoff.buying.material_list import Listed, Planned
from lacunar.takeoff.taken_off import TakenOff


@dataclass(frozen=True, slots=True)
class Stocked:
    """All parts of a take-off as they are cut from stock, and the list of what is bought."""

    planned: Planned
    listed: Listed

    @property
    def kerf(self) -> Length:
        """What the saw takes at each square cut."""
        asked = self.planned.asked.lengths or self.planned.asked.sheets
        return ZERO if asked is None else asked.terms.kerf


@dataclass(frozen=True, slots=True)
class Lists:
    """The take-off of a ceiling with what it assumed, and what is made of it.

    `stocked` is None where no sheet asks for it, and where parts cannot be cut from any stock;
    `faults` then say why.
    """

    taken: TakenOff
    assumptions: tuple[Assumption, ...]
    stocked: Stocked | None = None
    faults: tuple[Fault, ...] = ()
