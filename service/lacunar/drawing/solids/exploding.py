"""Parts pulled apart downward, each group just far enough to be seen whole."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.solids.space import Seen, Sight, Solid

STEPS = 20
"""In how many parts the way down is tried, each a share of what would clear all; and in how many
again the first of them at whose end all is clear."""

Hull = list[tuple[float, float]]


def pulled_apart(
    groups: Sequence[Sequence[Solid]], sight: Sight, gap: float
) -> list[tuple[Solid, ...]]:
    """Turn groups of bodies into the same, each after the first moved down until it is clear.

    `gap` is what is left between bodies of different groups in the picture [mm of the room].
    """
    found: list[tuple[Solid, ...]] = []
    placed: list[Hull] = []
    down = 0.0
    for group in groups:
        hulls = [_hull(sight.of(solid.corners)) for solid in group]
        down = _clear_of(placed, hulls, down, sight.up.z, gap) if placed else 0.0
        moved = tuple(solid.moved(0.0, 0.0, -down) for solid in group)
        found.append(moved)
        placed += [_hull(sight.of(solid.corners)) for solid in moved]
    return found


def _clear_of(
    placed: Sequence[Hull], hulls: Sequence[Hull], least: float, up: float, gap: float
) -> float:
    """How far down [mm] hulls must go to be clear of those that stand, at least so far."""
    lowest = min(y for hull in placed for _, y in hull)
    highest = max(y for hull in hulls for _, y in hull)
    whole = max(least, (highest - lowest + gap) / up)

    def clear(down: float) -> bool:
        lowered = [[(x, y - down * up) for x, y in hull] for hull in hulls]
        return not any(_meet(one, other, gap) for one in placed for other in lowered)

    step = (whole - least) / STEPS
    coarse = next((n for n in range(STEPS) if clear(least + step * n)), STEPS)
    if coarse == 0:
        return least
    before = least + step * (coarse - 1)
    parts = (before + step * n / STEPS for n in range(1, STEPS))
    return next(filter(clear, parts), before + step)


def _meet(one: Hull, other: Hull, gap: float) -> bool:
    """Whether two outlines that bulge everywhere come within a gap: no edge parts them by it."""
    return not any(
        _apart(one, other, way) >= gap for hull in (one, other) for way in _ways_out(hull)
    )


def _ways_out(hull: Hull) -> Iterator[tuple[float, float]]:
    for (ax, ay), (bx, by) in zip(hull, (*hull[1:], hull[0]), strict=True):
        long = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
        yield (by - ay) / long, (ax - bx) / long
        yield (ay - by) / long, (bx - ax) / long


def _apart(one: Hull, other: Hull, way: tuple[float, float]) -> float:
    """How far the second outline lies beyond the first along a way."""
    across, up = way
    end = max(x * across + y * up for x, y in one)
    return min(x * across + y * up for x, y in other) - end


def _hull(places: Sequence[Seen]) -> Hull:
    """The outline of places in the picture, counter-clockwise (the monotone chain, from memory)."""
    spots = sorted({(at.right, at.up) for at in places})
    lower, upper = _chain(spots), _chain(spots[::-1])
    return [*lower[:-1], *upper[:-1]]


def _chain(spots: Sequence[tuple[float, float]]) -> Hull:
    chain: Hull = []
    for x, y in spots:
        while len(chain) > 1:
            (ax, ay), (bx, by) = chain[-2:]
            if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0:
                break
            chain.pop()
        chain.append((x, y))
    return chain
