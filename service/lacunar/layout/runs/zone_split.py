"""Splits a total of coffers over the zones of a run so that their openings come out most alike."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length


@dataclass(frozen=True, slots=True)
class _Choices:
    """The openings each zone can have, as ranks in one list of all of them, smallest first.

    Ranks are whole numbers, which compare much faster than the fractions they stand for.
    """

    sizes: tuple[Fraction, ...]
    ranks: tuple[tuple[int, ...], ...]

    def most(self, least: int) -> tuple[int, ...]:
        """The most coffers that keep each zone's opening at or above a rank; 0 where none do."""
        return tuple(len(zone) - bisect_left(zone, least) for zone in self.ranks)

    def fewest(self, most: int) -> tuple[int, ...]:
        """The fewest coffers that keep each zone's opening at or below a rank.

        One more than the zone can hold where none do.
        """
        return tuple(1 + len(zone) - bisect_right(zone, most) for zone in self.ranks)


@dataclass(frozen=True, slots=True)
class _Window:
    """Openings from a least to a most, and the counts that keep each zone's opening within them."""

    ratio: Fraction
    fewest: tuple[int, ...]
    most: tuple[int, ...]


def most_alike_split(count: int, spaces: Sequence[Length], beam_width: Length) -> tuple[int, ...]:
    """Split a total over zones by the least ratio of the largest opening to the smallest.

    Parameters: `count` of coffers in all, at least one for each zone; `spaces` of the zones
    [length]; `beam_width` [length]. A tie goes to fewer coffers in the smallest zone where they
    differ, of equal zones the one nearest the datum. Splits in which the beams fill a zone are
    taken only if there is no other: then the evenest by modules, so that the fault can be told.

    Exact: every split is the tightest window of openings that holds it, so it is enough to look at
    the windows between two openings that some zone can have.

    >>> inch = Length.of_inches
    >>> most_alike_split(5, [inch(60), inch(100)], inch(6))
    (2, 3)
    """
    choices = _choices(count, spaces, beam_width)
    windows = list(_feasible_windows(count, choices))
    if not windows:
        return _by_modules(count, spaces, beam_width)
    least = min(window.ratio for window in windows)
    order = sorted(range(len(spaces)), key=lambda zone: (spaces[zone], zone))
    splits = [_fewest_first(count, window, order) for window in windows if window.ratio == least]
    return min(splits, key=lambda split: [split[zone] for zone in order])


def _choices(count: int, spaces: Sequence[Length], beam_width: Length) -> _Choices:
    zones = [_openings(space, count, beam_width) for space in spaces]
    sizes = sorted({size for zone in zones for size in zone})
    rank = {size: number for number, size in enumerate(sizes)}
    return _Choices(
        tuple(sizes), tuple(tuple(rank[size] for size in reversed(zone)) for zone in zones)
    )


def _openings(space: Length, count: int, beam_width: Length) -> list[Fraction]:
    """A zone's opening [in] with 1, 2, … coffers, as long as there is one."""
    module = (space + beam_width).inches
    sizes = (module / coffers - beam_width.inches for coffers in range(1, count + 1))
    return [size for size in sizes if size > 0]


def _feasible_windows(count: int, choices: _Choices) -> Iterator[_Window]:
    """For each least opening, the window with the smallest most that still holds a split.

    Both bounds only ever rise, so each is walked through once.
    """
    top = 0
    for least, size in enumerate(choices.sizes):
        most = choices.most(least)
        if min(most) == 0 or sum(most) < count:
            return
        while not _holds(count, choices.fewest(top), most):
            top += 1
            if top == len(choices.sizes):
                return
        yield _Window(choices.sizes[top] / size, choices.fewest(top), most)


def _holds(count: int, fewest: Sequence[int], most: Sequence[int]) -> bool:
    fits = all(low <= high for low, high in zip(fewest, most, strict=True))
    return fits and sum(fewest) <= count


def _fewest_first(count: int, window: _Window, order: Sequence[int]) -> tuple[int, ...]:
    """The split within a window that is the smallest in the first zones of an order."""
    split = list(window.fewest)
    spare = count - sum(split)
    for zone in reversed(order):
        more = min(spare, window.most[zone] - split[zone])
        split[zone] += more
        spare -= more
    return tuple(split)


def _by_modules(count: int, spaces: Sequence[Length], beam_width: Length) -> tuple[int, ...]:
    """One coffer for each zone, and each further one where the modules are then the largest."""
    split = [1] * len(spaces)
    for _ in range(count - len(spaces)):
        widest = max(range(len(split)), key=lambda zone: (spaces[zone] + beam_width) / split[zone])
        split[widest] += 1
    return tuple(split)
