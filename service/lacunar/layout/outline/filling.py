"""What goes into cut coffers."""

from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from lacunar.layout.moulding_records import CrownSection
from lacunar.layout.mouldings.pieces import flats_at, standing_out
from lacunar.measure.length import Length
from lacunar.model.ceiling import Ceiling
from lacunar.model.moulding import FlatPlace


@dataclass(frozen=True, slots=True)
class Filling:
    """What goes into cut coffers, and whether their corners were snapped.

    `beams` are the ids of all beams and beams at walls: what a side can lie against that has a
    lower edge. A bare wall and a column have none.
    """

    ceiling: Ceiling
    crown: CrownSection | None
    approximate: bool
    beams: AbstractSet[str]

    @property
    def behind(self) -> Length:
        """What flat mouldings at the ceiling keep the crown off the sides [length]."""
        return standing_out(flats_at(FlatPlace.CEILING, self.ceiling.flat_mouldings))
