"""A candidate laid out and taken off in full, as everybody gets it."""

from dataclasses import dataclass, replace

from lacunar.choosing.asked import Asked
from lacunar.choosing.costing import Costed, Estimator
from lacunar.choosing.crown_sticks import CrownBuyer
from lacunar.choosing.records import CrownStock
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.model.assumptions import Resolution, resolve
from lacunar.model.ceiling import Ceiling
from lacunar.model.ceiling_items import Mobility
from lacunar.model.faults import SpecRefused
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec
from lacunar.takeoff.cutting.task import Guard
from lacunar.takeoff.part_records import Part
from lacunar.takeoff.parts import parts_from, pieces_of
from lacunar.takeoff.taken_off import take_off


@dataclass(frozen=True, slots=True)
class LaidOut:
    """A ceiling as it is decided, laid out and taken off, with the crown that is bought for it.

    `resolution` has the ceiling as everybody gets it; in `layout` all items are movable. `costed`
    is None without prices.
    """

    resolution: Resolution
    layout: Layout
    parts: tuple[Part, ...]
    crown: CrownStock | None
    costed: Costed | None


class Layer:
    """Lays out specs; crown that was planned once is not planned again."""

    def __init__(self, asked: Asked, guard: Guard) -> None:
        self._buyer = CrownBuyer(asked.limits.crown_lengths, guard)
        by = asked.priced_by
        self._estimator = None if by is None else Estimator(by, guard)

    def laid_out(self, spec: CeilingSpec) -> LaidOut:
        """A spec in full.

        Errors: `SpecRefused` where it cannot be built, `CrownTooLong`, `ShortOfStock`.
        """
        faults = check(spec)
        if faults:
            raise SpecRefused(faults)
        resolution = resolve(spec)
        layout = lay_out(_not_asking(resolution.ceiling))
        if self._estimator is None or not layout.coffers:
            parts = parts_from(pieces_of(layout))
            return LaidOut(resolution, layout, parts, self._buyer.bought_for(layout, parts), None)
        taken = take_off([layout])
        crown = self._buyer.bought_for(layout, taken.parts)
        costed = self._estimator.costed(layout, taken)
        return LaidOut(resolution, layout, taken.parts, crown, costed)


def _not_asking(ceiling: Ceiling) -> Ceiling:
    """The ceiling with all items movable: nothing but a layout's own search for counts differs.

    For fixed items a layout tries every number of coffers, which is what is being done here.
    """
    items = tuple(replace(item, mobility=Mobility.MOVABLE) for item in ceiling.room.ceiling_items)
    return replace(ceiling, room=replace(ceiling.room, ceiling_items=items))
