"""Dives: the linear program's shares are rounded step by step until nothing is left to cut."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import floor

from lacunar.takeoff.cutting.column_generation import scaled
from lacunar.takeoff.cutting.linear_program import PatternProgram
from lacunar.takeoff.cutting.task import (
    Chosen,
    Column,
    Guard,
    Shop,
    add,
    left_of,
    rest_of,
)

_WHOLE = 1e-6
# Rounds of pricing after each step: patterns that suit what is left, which the first pricing did
# not need.
_ROUNDS = 3
# Patterns among which later dives pick the one to be rounded up.
_AMONG = 4


class Lots:
    """Numbers that look random and are the same every time (a linear congruence, modulo 2^32)."""

    def __init__(self, seed: int) -> None:
        self._state = seed

    def below(self, most: int) -> int:
        """A number from 0 to below `most`."""
        self._state = (1664525 * self._state + 1013904223) % 2**32
        return (self._state >> 8) % most


@dataclass(slots=True)
class Diver:
    """Dives into one shop with the patterns of its program; each plan on the way is offered."""

    shop: Shop
    program: PatternProgram
    offer: Callable[[Chosen], None]

    def dive(self, number: int, guard: Guard, enough: Callable[[], bool]) -> None:
        """One dive; the first always rounds up the greatest share, later ones draw lots."""
        lots = Lots(number)
        chosen: Chosen = {}
        while not (guard.over() or enough()):
            rest = rest_of(self.shop.demand, chosen)
            if not any(rest):
                self.offer(chosen)
                break
            left = left_of(self.shop.supplies, chosen)
            self._complete(chosen, rest, left)
            shares = self._shares(rest, left)
            if not self._fix(chosen, shares, 0 if number == 0 else lots.below(_AMONG)):
                break
        self.program.demand(self.shop.demand, self.shop.supplies)

    def _complete(self, chosen: Chosen, rest: Sequence[int], left: Sequence[int | None]) -> None:
        for filled in self.shop.fill(rest, left):
            whole = dict(chosen)
            for column, times in filled.items():
                add(whole, column, times)
            self.offer(whole)

    def _shares(self, rest: Sequence[int], left: Sequence[int | None]) -> list[float]:
        self.program.demand(rest, left)
        shares = self.program.solve()
        for _ in range(_ROUNDS):
            priced = self.shop.best(scaled(shares.worth), rest)
            if not self.program.add(column.clipped(rest) for column in priced.columns):
                break
            shares = self.program.solve()
        return list(shares.shares)

    def _fix(self, chosen: Chosen, shares: Sequence[float], place: int) -> bool:
        """Take whole shares, and one of the greatest parts rounded up; False where none is."""
        rest = rest_of(self.shop.demand, chosen)
        left = left_of(self.shop.supplies, chosen)
        ordered = sorted(range(len(shares)), key=lambda j: (-(shares[j] % 1), j))
        for j, share in enumerate(shares):
            self._take(chosen, self.program.columns[j], floor(share + _WHOLE), rest, left)
        parts = [j for j in ordered if _WHOLE < shares[j] % 1 < 1 - _WHOLE]
        for j in (*parts[place:], *parts[:place]):
            column = self.program.columns[j].clipped(rest)
            if any(column.counts) and left[column.stock] != 0:
                self._take(chosen, column, 1, rest, left)
                return True
        return any(floor(share + _WHOLE) for share in shares)

    def _take(
        self,
        chosen: Chosen,
        column: Column,
        times: int,
        rest: list[int],
        left: list[int | None],
    ) -> None:
        if times <= 0 or not any(column.counts):
            return
        there = left[column.stock]
        times = times if there is None else min(times, there)
        fitting = min(times, column.times(rest))
        if fitting:
            add(chosen, column, fitting)
            for kind, n in enumerate(column.counts):
                rest[kind] -= n * fitting
            if there is not None:
                left[column.stock] = there - fitting
