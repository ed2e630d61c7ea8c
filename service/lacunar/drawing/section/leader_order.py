"""The order of words beside a section, so that no leader crosses another."""

from collections.abc import Sequence
from itertools import combinations

from lacunar.drawing.elements import Pt


def uncrossed(targets: Sequence[Pt], heights: Sequence[float], elbow: Pt) -> list[int]:
    """An order from the top down for words whose leaders go from targets to elbows in one column.

    Parameters: `targets`, left of the column; `heights` [mm], what each one's words take of it;
    `elbow`, the first leader's. Two leaders that cross are exchanged until none do: that makes them
    shorter together, so it comes to an end; it is given up where words of unlike heights would
    turn it in a circle.
    """
    order = sorted(range(len(targets)), key=lambda number: targets[number].y)
    for _ in range(len(targets) ** 2):
        crossing = _first_crossing(order, targets, heights, elbow)
        if crossing is None:
            break
        upper, lower = crossing
        order[upper], order[lower] = order[lower], order[upper]
    return order


def _first_crossing(
    order: Sequence[int], targets: Sequence[Pt], heights: Sequence[float], elbow: Pt
) -> tuple[int, int] | None:
    """Two places in the order whose leaders cross; None where none do."""
    elbows, y = [], elbow.y
    for number in order:
        elbows.append(Pt(elbow.x, y))
        y += heights[number]
    return next(
        (
            (upper, lower)
            for upper, lower in combinations(range(len(order)), 2)
            if _cross(targets[order[upper]], elbows[upper], targets[order[lower]], elbows[lower])
        ),
        None,
    )


def _cross(upper: Pt, upper_elbow: Pt, lower: Pt, lower_elbow: Pt) -> bool:
    """Whether two leaders cross on their way: at the nearer target one is on the other's far side.

    At the elbows the upper one is above, so they cross where it is below at the inner target.
    """
    x = max(upper.x, lower.x)
    return _at(upper, upper_elbow, x) > _at(lower, lower_elbow, x)


def _at(target: Pt, elbow: Pt, x: float) -> float:
    share = (x - target.x) / (elbow.x - target.x)
    return target.y + (elbow.y - target.y) * share
