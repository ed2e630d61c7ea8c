"""Labels in a row: each as near its place as the others let it stand."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(slots=True)
class _Cluster:
    """Labels that touch: how many, and the sum of where the first of them would like to stand."""

    count: int
    wishes: float

    @property
    def first(self) -> float:
        return self.wishes / self.count


def spread(places: Sequence[float], pitch: float, low: float, high: float) -> list[float]:
    """Where labels stand that would like to stand at `places`, in rising order [mm].

    No two stand nearer than `pitch`, all from `low` to `high` if so many have room there; the sum
    of the squares of what they are moved is least (neighbors that meet are pooled).

    >>> spread([10.0, 11.0, 30.0], 4.0, 0.0, 40.0)
    [8.5, 12.5, 30.0]
    >>> spread([1.0], 4.0, 2.0, 40.0)
    [2.0]
    """
    clusters: list[_Cluster] = []
    for place in places:
        clusters.append(_Cluster(1, place))
        while len(clusters) > 1 and _meet(clusters[-2], clusters[-1], pitch):
            last = clusters.pop()
            before = clusters[-1]
            before.wishes += last.wishes - last.count * before.count * pitch
            before.count += last.count
    found = [
        cluster.first + pitch * number for cluster in clusters for number in range(cluster.count)
    ]
    return _within(found, pitch, low, high)


def _meet(one: _Cluster, other: _Cluster, pitch: float) -> bool:
    return other.first < one.first + one.count * pitch


def _within(places: list[float], pitch: float, low: float, high: float) -> list[float]:
    """The same held back from both ends, the upper one first."""
    count = len(places)
    upper = [min(place, high - pitch * (count - 1 - n)) for n, place in enumerate(places)]
    return [max(place, low + pitch * n) for n, place in enumerate(upper)]
