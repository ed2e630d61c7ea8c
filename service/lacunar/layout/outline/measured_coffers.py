"""Cut coffers as they were measured: corners from sides and diagonals, one after the other."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.outline.cells import Cell
from lacunar.layout.outline.filling import Filling
from lacunar.layout.outline.partial_coffers import partial_coffers
from lacunar.layout.outline_records import (
    MeasuredCutCoffer,
    MeasuredCutDiagonal,
    MeasuredCutSide,
    PartialCoffer,
)
from lacunar.layout.survey.report import apart
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, distance, on_grid, snapped, third_corner, turn
from lacunar.measure.polygon import is_simple
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.openings import MeasuredCoffer, Openings
from lacunar.model.panel import Seat

DIFFERENCE = Rule("as measured, less as planned", "measured - planned")
CLOSING = Rule("as measured, less what the corners make it", "measured - computed")

Pair = tuple[int, int]
Taken = Mapping[Pair, Length]
_PLACE = "/measured_openings/coffers"


def measured_cut_coffers(
    openings: Openings | None,
    cells: Sequence[Cell],
    planned: Sequence[PartialCoffer],
    filling: Filling,
) -> tuple[MeasuredCutCoffer, ...]:
    """Turn what was measured of cut coffers into their corners, and all that is cut to these.

    Each corner follows from two that are known and its distances to both, by the law of cosines, on
    the side where the plan has it. What is over proves the others. Raises SpecRefused where sides
    and diagonals contradict each other, or make no triangle.
    """
    if openings is None:
        return ()
    by_id = {cell.id: cell for cell in cells if not cell.whole}
    as_planned = {coffer.id: coffer for coffer in planned}
    found: list[MeasuredCutCoffer] = []
    faults: list[Fault] = []
    for number, each in enumerate(openings.coffers):
        if each.coffer in by_id:
            limit = openings.closing_limit
            one = _Measuring(f"{_PLACE}/{number}", by_id[each.coffer], each, limit, filling)
            try:
                found.append(one.coffer(as_planned[each.coffer]))
            except SpecRefused as refused:
                faults += refused.faults
    refuse(faults)
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Measuring:
    """One cut coffer with what was measured of it, and what may be off."""

    place: str
    cell: Cell
    taken: MeasuredCoffer
    limit: Length
    filling: Filling

    @property
    def count(self) -> int:
        """How many corners it has."""
        return len(self.cell.corners)

    def coffer(self, planned: PartialCoffer) -> MeasuredCutCoffer:
        """What the coffer comes to."""
        refuse(list(self._unknown()))
        sides: dict[int | None, Length] = {
            each.side: each.length for each in self.taken.cut_sides if each.length
        }
        known = self._known()
        spots = self._placed(known)
        errors = list(self._errors(known, spots)) if len(spots) == self.count else []
        return MeasuredCutCoffer(
            coffer=self.cell.id,
            sides=tuple(
                _side(number, side.length, sides.get(number))
                for number, side in enumerate(planned.sides, start=1)
            ),
            diagonals=tuple(self._diagonals()),
            closing_error=max(errors, key=lambda each: abs(each.value), default=None),
            missing=tuple(self._missing(sides, spots)),
            as_measured=self._as_measured(planned, spots),
        )

    def _unknown(self) -> Iterator[Fault]:
        """Faults of sides and corners that the coffer does not have."""
        for at, side in enumerate(self.taken.cut_sides):
            if side.side is not None and not 1 <= side.side <= self.count:
                yield self._no_such(f"cut_sides/{at}/side", side.side)
        for at, each in enumerate(self.taken.cut_diagonals):
            for name in ("from_corner", "to_corner"):
                corner: int = getattr(each, name) or 0
                if not 1 <= corner <= self.count or each.from_corner == each.to_corner:
                    yield self._no_such(f"cut_diagonals/{at}/{name}", corner)

    def _no_such(self, where: str, number: int) -> Fault:
        return Fault(
            code="corner_unknown",
            pointer=f"{self.place}/{where}",
            message=f"{self.cell.id} has no such side or corner, or it is its own end: {number}.",
            remedy=f"Give one from 1 to {self.count}, as outlined.partial_coffers counts them.",
            figures={"corner": number, "corners": self.count},
        )

    def _known(self) -> dict[Pair, Length]:
        """Every distance that was measured, by its two corners, counted from 0."""
        found = {}
        for side in self.taken.cut_sides:
            if side.side is not None and side.length is not None:
                found[_pair(side.side - 1, side.side % self.count)] = side.length
        for each in self.taken.cut_diagonals:
            if each.from_corner and each.to_corner and each.length is not None:
                found[_pair(each.from_corner - 1, each.to_corner - 1)] = each.length
        return found

    def _placed(self, known: Taken) -> dict[int, Spot]:
        """The corners that follow, from side 1 as it lies on the plan."""
        start, end = self.cell.corners[0], self.cell.corners[1]
        if (0, 1) not in known:
            return {}
        way = (end - start) * (known[0, 1].inches / distance(start, end).length.inches)
        spots = {0: start, 1: start + way}
        while True:
            left = [each for each in range(self.count) if each not in spots]
            found = next(((c, base) for c in left if (base := self._base(c, known, spots))), None)
            if found is None:
                return spots
            corner, base = found
            spots[corner] = self._corner(corner, base, known, spots)

    def _base(self, corner: int, known: Taken, spots: Mapping[int, Spot]) -> Pair | None:
        """Two corners that are known, with a distance each, not in line with this one on plan."""
        near = [each for each in spots if _pair(corner, each) in known]
        plan = self.cell.corners
        for at, one in enumerate(near):
            for other in near[at + 1 :]:
                side = turn(plan[other] - plan[one], plan[corner] - plan[one])
                if side:
                    return (one, other) if side > 0 else (other, one)
        return None

    def _corner(self, corner: int, base: Pair, known: Taken, spots: Mapping[int, Spot]) -> Spot:
        one, other = base
        first, second = known[_pair(corner, one)], known[_pair(corner, other)]
        try:
            spot, _ = third_corner((spots[one], spots[other]), first, second)
        except ValueError:
            names = ", ".join(str(each + 1) for each in sorted((corner, one, other)))
            raise SpecRefused(
                [
                    Fault(
                        code="opening_cannot_close",
                        pointer=self.place,
                        message=f"What was measured between corners {names} of {self.cell.id} makes"
                        " no triangle.",
                        remedy="Measure these three again.",
                        figures={"coffer": self.cell.id, "first": first, "second": second},
                    )
                ]
            ) from None
        return snapped(spot)

    def _errors(self, known: Taken, spots: Mapping[int, Spot]) -> Iterator[LengthFigure]:
        """By how much what was measured differs from the corners found; raises past the limit."""
        worst: tuple[LengthFigure, int, int] | None = None
        for (one, other), length in known.items():
            computed = on_grid(distance(spots[one], spots[other]).length)
            error = CLOSING.approximates(length - computed, measured=length, computed=computed)
            if len(known) > 2 * self.count - 3:
                yield error
            if worst is None or abs(error.value) > abs(worst[0].value):
                worst = error, one, other
        if worst is not None and abs(worst[0].value) > self.limit:
            error, one, other = worst
            raise SpecRefused([self._contradicts(error, (one + 1, other + 1))])
        if not is_simple([spots[number] for number in range(self.count)]):
            raise SpecRefused([self._contradicts(given(self.limit), (1, 2))])

    def _contradicts(self, error: LengthFigure, between: Pair) -> Fault:
        return Fault(
            code="opening_does_not_close",
            pointer=self.place,
            message=f"The sides and diagonals of {self.cell.id} contradict each other by more than"
            " a tape is off.",
            remedy=f"Take what lies between corners {between[0]} and {between[1]} again; if it"
            " holds, take the others.",
            figures={
                "coffer": self.cell.id,
                "closing_error": error.value,
                "limit": self.limit,
            },
        )

    def _diagonals(self) -> Iterator[MeasuredCutDiagonal]:
        for each in self.taken.cut_diagonals:
            if each.from_corner and each.to_corner and each.length is not None:
                ends = (self.cell.corners[n - 1] for n in (each.from_corner, each.to_corner))
                planned = apart(*ends, approximate=self.filling.approximate)
                yield MeasuredCutDiagonal(
                    each.from_corner,
                    each.to_corner,
                    planned,
                    given(each.length),
                    _difference(planned, each.length),
                )

    def _missing(
        self, sides: Mapping[int | None, Length], spots: Mapping[int, Spot]
    ) -> Iterator[str]:
        for number in range(1, self.count + 1):
            if number not in sides:
                yield f"side {number}"
        if all(number in sides for number in range(1, self.count + 1)):
            for corner in range(self.count):
                if corner not in spots:
                    yield f"a diagonal to corner {corner + 1}"
                    return

    def _as_measured(
        self, planned: PartialCoffer, spots: Mapping[int, Spot]
    ) -> PartialCoffer | None:
        """What is cut to the corners found; panels that go up before the sides stay as planned."""
        if len(spots) < self.count:
            return None
        corners = tuple(spots[number] for number in range(self.count))
        cell = replace(self.cell, corners=corners)
        (found,) = partial_coffers((cell,), replace(self.filling, approximate=True))
        if self.filling.ceiling.panel.seat is Seat.BETWEEN_SIDES:
            return found
        return replace(
            found,
            panel_length=planned.panel_length,
            panel_width=planned.panel_width,
            panel_corners=planned.panel_corners,
            courses=planned.courses,
        )


def _pair(one: int, other: int) -> Pair:
    return (one, other) if one < other else (other, one)


def _side(number: int, planned: LengthFigure, taken: Length | None) -> MeasuredCutSide:
    if taken is None:
        return MeasuredCutSide(number, planned, None, None)
    return MeasuredCutSide(number, planned, given(taken), _difference(planned, taken))


def _difference(planned: LengthFigure, taken: Length) -> LengthFigure:
    tell = DIFFERENCE.approximates if planned.approximate else DIFFERENCE.gives
    return tell(taken - planned.value, measured=taken, planned=planned.value)
