"""Plans found quickly: sticks filled one after another, the longest piece first."""

from collections.abc import Sequence

from lacunar.takeoff.cutting.knapsack import bundles
from lacunar.takeoff.cutting.stick_sizes import StickSizes
from lacunar.takeoff.cutting.task import Chosen, Column, add


def filled_sticks(
    shop: StickSizes, rest: Sequence[int], left: Sequence[int | None], main: int | None
) -> Chosen | None:
    """What is wanted, cut from limited stock as far as it pays, then from the main stock.

    Each stick takes the longest piece that is left, and of the others those that fill what remains
    best; the pattern is cut as often as it can be. None where the stock runs out.
    """
    wanted = list(rest)
    there = list(left)
    chosen: Chosen = {}
    for stock in shop.order_of_use(main, left):
        while any(wanted) and there[stock] != 0:
            counts = full_stick(shop.sizes, wanted, shop.capacities[stock])
            column = Column(stock, counts)
            if not any(counts) or (stock != main and not _pays(shop, column, main)):
                break
            times = column.times(wanted)
            end = there[stock]
            if end is not None:
                times = min(times, end)
                there[stock] = end - times
            _put(shop, chosen, column, times, there)
            for kind, n in enumerate(counts):
                wanted[kind] -= n * times
    return None if any(wanted) else chosen


def _pays(shop: StickSizes, column: Column, main: int | None) -> bool:
    """Whether a limited stick costs no more than as much length of the main stock would."""
    if main is None:
        return True
    price, whole = shop.prices[main], shop.capacities[main]
    return shop.prices[column.stock] * whole <= price * shop.used(column)


def _put(
    shop: StickSizes, chosen: Chosen, column: Column, times: int, there: list[int | None]
) -> None:
    """Put a pattern in, from cheaper sticks where these hold it."""
    while times:
        cheaper = shop.cheapest(column, there)
        limit = there[cheaper.stock]
        if shop.prices[cheaper.stock] >= shop.prices[column.stock]:
            add(chosen, column, times)
            return
        taken = times if limit is None else min(times, limit)
        if limit is not None:
            there[cheaper.stock] = limit - taken
        add(chosen, cheaper, taken)
        times -= taken


def full_stick(sizes: Sequence[int], wanted: Sequence[int], capacity: int) -> tuple[int, ...]:
    """How many of each kind: the longest piece that is wanted and fits, the rest filled best.

    Which sums of lengths can be reached is kept as the bits of one whole number.

    >>> full_stick((4, 3), (2, 4), 10)
    (1, 2)
    """
    counts = [0] * len(sizes)
    first = next((k for k, n in enumerate(wanted) if n and sizes[k] <= capacity), None)
    if first is None:
        return tuple(counts)
    counts[first] = 1
    room = capacity - sizes[first]
    mask = (1 << (room + 1)) - 1
    reached = 1
    steps: list[tuple[int, int, int]] = []
    for kind in range(first, len(sizes)):
        free = wanted[kind] - counts[kind]
        for n in bundles(min(free, room // sizes[kind])):
            steps.append((kind, n, reached))
            reached |= (reached << (n * sizes[kind])) & mask
        if reached >> room & 1:
            break
    total = reached.bit_length() - 1
    for kind, n, before in reversed(steps):
        if not before >> total & 1:
            counts[kind] += n
            total -= n * sizes[kind]
    return tuple(counts)
