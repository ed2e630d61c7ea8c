"""Levels for the figures of a string of narrow segments, where one after the other finds none.

A figure that is lifted stands across its own leader, and no leader to a higher level may pass
through it. Which figures go how high is therefore one question for the whole string: all ways that
may still come out best are followed from its start to its end, on as few levels as will do.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

PASSING = 0.3
"""How far a leader keeps from a figure's own room [mm]."""
CROWDED = 1.5
"""Figures in a row that are nearer than this read as one [mm]; a level more is rather taken."""
CROWDING_COST = 2
WAYS_KEPT = 120
"""How many ways are followed at once: a string of 120 segments is placed in a fraction of a second.
"""


@dataclass(frozen=True, slots=True)
class Lead:
    """A figure to be lifted: where its leader stands, and half the room it takes [mm].

    Its clearance is part of that room, and the leader ends somewhere under it.
    """

    at: float
    half: float


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a lifted figure stands: its middle along the string [mm] and its level from 1."""

    middle: float
    level: int


@dataclass(frozen=True, slots=True)
class _Way:
    """Levels chosen so far, how far along the string each is taken, and how ill that reads."""

    levels: tuple[int, ...]
    taken: tuple[float, ...]
    cost: int

    def goes_beyond(self, other: "_Way") -> bool:
        """Whether another way leaves at least as much room on every level."""
        return all(a <= b for a, b in zip(other.taken, self.taken, strict=True))


def stands(
    leads: Sequence[Lead], start: float, limit: float, most: int
) -> tuple[Stand, ...] | None:
    """A place for every lifted figure between `start` and `limit` [mm], or None if there is none.

    Parameters: `leads` in order along the string; `most`, how many levels there may be.
    """
    for count in range(1, most + 1):
        ways = [_Way((), (start,) * count, 0)]
        for lead in leads:
            ways = _best(step for way in ways for step in _steps(way, lead, limit))
        if ways:
            return _centered(leads, ways[0].levels, start, limit)
    return None


def _best(ways: Iterator[_Way]) -> list[_Way]:
    """The ways worth following, lowest first: none that goes beyond a lower one."""
    kept: list[_Way] = []
    for way in sorted(ways, key=lambda w: (w.cost, w.taken)):
        if len(kept) < WAYS_KEPT and not any(way.goes_beyond(other) for other in kept):
            kept.append(way)
    return kept


def _steps(way: _Way, lead: Lead, limit: float) -> Iterator[_Way]:
    """The way with the next figure on each level that has room, as near the start as it can be."""
    for level, taken in enumerate(way.taken, start=1):
        middle = max(taken + lead.half, lead.at - lead.half)
        if middle <= min(lead.at + lead.half, limit - lead.half):
            passed = (max(below, lead.at + PASSING) for below in way.taken[: level - 1])
            after = (*passed, middle + lead.half, *way.taken[level:])
            crowded = taken > 0 and lead.at - lead.half < taken + CROWDED
            cost = way.cost + level + (CROWDING_COST if crowded else 0)
            yield _Way((*way.levels, level), after, cost)
        if taken + PASSING > lead.at:
            return


def _centered(
    leads: Sequence[Lead], levels: Sequence[int], start: float, limit: float
) -> tuple[Stand, ...]:
    """The figures on their levels, each as nearly over its leader as those about it allow."""
    latest = _latest(leads, levels, limit)
    taken = [start] * (max(levels, default=0) + 1)
    found = []
    for lead, level, last in zip(leads, levels, latest, strict=True):
        first = max(taken[level] + lead.half, lead.at - lead.half)
        middle = max(first, min(lead.at, last))
        found.append(Stand(middle, level))
        taken[level] = middle + lead.half
        for below in range(level):
            taken[below] = max(taken[below], lead.at + PASSING)
    return tuple(found)


def _latest(leads: Sequence[Lead], levels: Sequence[int], limit: float) -> list[float]:
    """How far along each figure's middle may lie if all after it are to find room."""
    free = [limit] * (max(levels, default=0) + 1)
    latest: list[float] = []
    for lead, level in zip(reversed(leads), reversed(levels), strict=True):
        last = min(free[level] - lead.half, lead.at + lead.half)
        latest.append(last)
        free[level] = last - lead.half
        for below in range(level):
            free[below] = min(free[below], lead.at - PASSING)
    return latest[::-1]
