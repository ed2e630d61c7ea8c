"""Four sides and both diagonals: one measurement more than a shape needs, so they may contradict.

Six distances between four places lie in a plane where the volume of the tetrahedron they would make
is nothing: the determinant of Gram (equal to that of Cayley and Menger but for a factor). In each
squared distance it is a quadratic, so its slopes and roots need no limit and no float.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.roots import square_root

NAMES = ("W1", "W2", "W3", "W4", "rising", "falling")
_FINE = 10**12
_MOST_STEPS = 30

Distances = Mapping[str, Fraction]


def flatness(distances: Distances) -> Fraction:
    """Turn six distances [in] into 36 times the squared volume they enclose; nothing when flat."""
    return _flatness({name: distances[name] ** 2 for name in NAMES})


def _flatness(square: Mapping[str, Fraction]) -> Fraction:
    right, across, left = square["W4"], square["rising"], square["W1"]
    right_across = (right + across - square["W3"]) / 2
    right_left = (right + left - square["falling"]) / 2
    across_left = (across + left - square["W2"]) / 2
    return (
        right * across * left
        + 2 * right_across * across_left * right_left
        - right * across_left**2
        - across * right_left**2
        - left * right_across**2
    )


def _slopes(distances: Distances) -> dict[str, Fraction]:
    """How fast `flatness` changes with each distance: of a quadratic, exactly."""
    square = {name: distances[name] ** 2 for name in NAMES}
    return {
        name: (_flatness({**square, name: at + 1}) - _flatness({**square, name: at - 1}))
        * distances[name]
        for name, at in square.items()
    }


@dataclass(frozen=True, slots=True)
class Closed:
    """Distances that lie in a plane, and whether they had to be changed for it."""

    distances: Distances
    changed: bool


def least_squares(measured: Distances) -> Closed:
    """Turn six measured distances [in] into the nearest that lie in a plane.

    Least squares of the corrections under the one condition, by steps of Gauss and Newton in
    rational numbers; each is cut to 1/10^12 in. Distances that agree come back untouched. Raises
    ValueError where the steps do not come to rest.
    """
    if not flatness(measured):
        return Closed(measured, changed=False)
    change = dict.fromkeys(NAMES, Fraction(0))
    for _ in range(_MOST_STEPS):
        at = {name: measured[name] + change[name] for name in NAMES}
        slopes = _slopes(at)
        size = sum(slope * slope for slope in slopes.values())
        if not size:
            break
        off = flatness(at) - sum(slopes[name] * change[name] for name in NAMES)
        step = {name: round(-slopes[name] * off / size * _FINE) for name in NAMES}
        before, change = change, {name: Fraction(step[name], _FINE) for name in NAMES}
        if all(abs(change[name] - before[name]) * _FINE <= len(NAMES) for name in NAMES):
            return Closed({name: measured[name] + change[name] for name in NAMES}, changed=True)
    raise ValueError("the distances come to no shape")


def closing_change(measured: Distances, name: str) -> Fraction | None:
    """How much one distance alone would have to change [in] for all six to agree; None if never.

    The nearer root of the quadratic in its square, cut off after twelve decimals.
    """
    square = {each: measured[each] ** 2 for each in NAMES}
    low, middle, high = (_flatness({**square, name: Fraction(at)}) for at in (0, 1, 2))
    bend = (high - 2 * middle + low) / 2
    slope = middle - low - bend
    inside = slope * slope - 4 * bend * low
    if not bend or inside < 0:
        return None
    root = square_root(inside)
    found = [(-slope + sign * root) / (2 * bend) for sign in (1, -1)]
    changes = [square_root(each) - measured[name] for each in found if each > 0]
    return min(changes, key=abs, default=None)
