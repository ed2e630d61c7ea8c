"""What crown is bought for a layout, as the cutting plans of the take-off say."""

from collections import Counter

from lacunar.choosing.records import CrownStock, SticksBought
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.measure.figure import Rule
from lacunar.measure.length import ZERO, Length
from lacunar.takeoff.cutting.asked import (
    EffortWord,
    LengthsAsked,
    Material,
    Piece,
    SecondAim,
    Section,
    StockLength,
    Terms,
)
from lacunar.takeoff.cutting.plan_records import MaterialPlan
from lacunar.takeoff.cutting.task import Guard
from lacunar.takeoff.part_records import Part, PartKind

USED = Rule("crown of all coffers, long points end to end", "used")
BOUGHT = Rule("crown that is bought, by its cutting plan", "bought")

_NAME = "crown"
# Coffers have square corners, so that their crown is turned by half of that.
_MITER = Angle.of_degrees(45)

_Pieces = tuple[tuple[Length, int], ...]


class CrownTooLong(Exception):
    """A piece of crown is longer than every stick it could be cut from."""


class CrownBuyer:
    """Plans the crown of one layout after another, each different list of pieces once."""

    def __init__(self, sticks: tuple[Length, ...], guard: Guard) -> None:
        self._sticks, self._guard = tuple(sorted(set(sticks))), guard
        self._known: dict[_Pieces, CrownStock] = {}

    def bought_for(self, layout: Layout, parts: tuple[Part, ...]) -> CrownStock | None:
        """The sticks bought for a layout's crown; None where it has none.

        Errors: `CrownTooLong`.
        """
        lengths: Counter[Length] = Counter()
        for part in parts:
            if part.kind is PartKind.CROWN:
                lengths[part.cut_length.value] += part.quantity
        if not lengths:
            return None
        pieces = tuple(sorted(lengths.items(), reverse=True))
        if pieces[0][0] > self._sticks[-1]:
            raise CrownTooLong
        if pieces not in self._known:
            self._known[pieces] = self._planned(pieces, layout)
        return self._known[pieces]

    def _planned(self, pieces: _Pieces, layout: Layout) -> CrownStock:
        # The solver costs a tenth of a second to load, which nothing else should wait for.
        from lacunar.takeoff.cutting.lengths import plan_lengths

        plan = plan_lengths(self._asked(pieces, layout), self._guard).plans[0]
        return _stock(plan, pieces)

    def _asked(self, pieces: _Pieces, layout: Layout) -> LengthsAsked:
        ceiling = layout.ceiling
        return LengthsAsked(
            stock=tuple(
                StockLength(f"S{n}", _NAME, length, None, None)
                for n, length in enumerate(self._sticks, start=1)
            ),
            offcuts=(),
            pieces=tuple(
                Piece(f"P{n}", _NAME, length, quantity)
                for n, (length, quantity) in enumerate(pieces, start=1)
            ),
            materials=(Material(_NAME, Section.SPRUNG, _MITER, None, nested=False),),
            terms=Terms(
                kerf=ceiling.stock.kerf,
                end_trim=ZERO,
                usable_offcut=ZERO,
                most_lengths=None,
                second_aim=SecondAim.FEWEST_PATTERNS,
                effort=EffortWord.QUICK,
                units=ceiling.units,
            ),
        )


def _stock(plan: MaterialPlan, pieces: _Pieces) -> CrownStock:
    used = sum((length * quantity for length, quantity in pieces), ZERO)
    return CrownStock(
        pieces=plan.pieces,
        used=USED.gives(used, used=used),
        bought=BOUGHT.gives(plan.bought, bought=plan.bought),
        sticks=tuple(SticksBought(taken.length, taken.quantity) for taken in plan.taken),
        proven_best=plan.proven_best,
    )
