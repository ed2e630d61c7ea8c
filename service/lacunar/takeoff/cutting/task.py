"""The problem in whole numbers, and how much may be spent on it.

Lengths are ticks (`ticks`), prices whole units. What differs between sticks and sheets is how a
pattern is found that is worth most (`Shop.best`) and how what is left is filled (`Shop.fill`).
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol


@dataclass(frozen=True, slots=True, order=True)
class Column:
    """A pattern: how many of each kind of piece are cut from one piece of a stock."""

    stock: int
    counts: tuple[int, ...]

    def times(self, rest: Sequence[int]) -> int:
        """How often the pattern can be cut before one of its pieces is no longer wanted."""
        return min(left // n for left, n in zip(rest, self.counts, strict=True) if n)

    def clipped(self, rest: Sequence[int]) -> "Column":
        """The pattern without what is no longer wanted."""
        kept = tuple(min(left, n) for left, n in zip(rest, self.counts, strict=True))
        return Column(self.stock, kept)


Chosen = dict[Column, int]
"""A plan in whole numbers: how often each pattern is cut."""


@dataclass(frozen=True, slots=True)
class Priced:
    """For values of pieces: the most that one piece of each stock can hold, and a pattern of it."""

    best: tuple[int, ...]
    columns: tuple[Column, ...]


class Shop(Protocol):
    """Stock and demand, and how patterns are found for them."""

    @property
    def demand(self) -> tuple[int, ...]:
        """How many of each kind of piece are wanted."""

    @property
    def prices(self) -> tuple[int, ...]:
        """What one piece of each stock costs."""

    @property
    def supplies(self) -> tuple[int | None, ...]:
        """How many there are of each stock; None where as many as wanted."""

    def best(self, values: Sequence[int], rest: Sequence[int]) -> Priced:
        """The most valuable patterns of what is still wanted."""

    def fill(self, rest: Sequence[int], left: Sequence[int | None]) -> Iterable[Chosen]:
        """Plans for what is still wanted, from what stock is left, found quickly."""

    def singles(self) -> Iterable[Column]:
        """Each kind by itself, as often as each stock holds it."""

    def cheapest(self, column: Column, left: Sequence[int | None]) -> Column:
        """The same pieces from the cheapest stock that holds them, if any is left of it."""

    def near(self, values: Sequence[int], needs: Sequence[int], most: int) -> list[Column] | None:
        """Every maximal pattern worth at least what is needed at its stock; None if over `most`."""


@dataclass(frozen=True, slots=True)
class Effort:
    """How much is tried, in counts, so that the same problem always gets the same plan.

    `rounds` of pricing, `dives`, `nodes` of each integer program and `columns` in it, and `near`
    patterns that are written out for a proof.
    """

    rounds: int
    dives: int
    nodes: int
    columns: int
    near: int


QUICK = Effort(rounds=200, dives=2, nodes=5, columns=200, near=400)
USUAL = Effort(rounds=400, dives=6, nodes=20, columns=200, near=600)
THOROUGH = Effort(rounds=2_000, dives=20, nodes=2_000, columns=5_000, near=20_000)


class Guard:
    """A clock that ends what takes too long; it then says so, as the plan may depend on it."""

    def __init__(self, seconds_left: Callable[[], float]) -> None:
        self._seconds_left = seconds_left
        self.struck = False

    def over(self) -> bool:
        """Whether time is up."""
        if self._seconds_left() <= 0:
            self.struck = True
        return self.struck

    def left(self) -> float:
        """The seconds left, at least a little, for a solver that takes a limit."""
        return max(self._seconds_left(), 0.01)


def cost_of(chosen: Mapping[Column, int], prices: Sequence[int]) -> int:
    """What a plan costs."""
    return sum(prices[column.stock] * times for column, times in chosen.items())


def rest_of(demand: Sequence[int], chosen: Mapping[Column, int]) -> list[int]:
    """What a plan leaves uncut; never below nothing."""
    rest = list(demand)
    for column, times in chosen.items():
        for kind, n in enumerate(column.counts):
            if n:
                rest[kind] -= n * times
    return [max(0, left) for left in rest]


def left_of(supplies: Sequence[int | None], chosen: Mapping[Column, int]) -> list[int | None]:
    """What a plan leaves of each stock."""
    left = list(supplies)
    for column, times in chosen.items():
        there = left[column.stock]
        if there is not None:
            left[column.stock] = there - times
    return left


def add(chosen: Chosen, column: Column, times: int = 1) -> None:
    """Put a pattern into a plan, beside what is there of it."""
    if times:
        chosen[column] = chosen.get(column, 0) + times
