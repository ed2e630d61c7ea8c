"""Every pattern that a cheaper plan could hold, written out, so that a search over them proves."""

from collections.abc import Sequence

from lacunar.takeoff.cutting.knapsack import Table, suffix_values
from lacunar.takeoff.cutting.stick_sizes import StickSizes
from lacunar.takeoff.cutting.task import Column

# Entries in the tables of what the kinds still to come can be worth, and steps of the search to
# each pattern wanted: past these the proof costs more than it is worth.
_MOST_ENTRIES = 4_000_000
_STEPS_EACH = 40


def near_patterns(
    shop: StickSizes, values: Sequence[int], needs: Sequence[int], most: int
) -> list[Column] | None:
    """The maximal patterns of each stock that are worth what is needed there; None if over `most`.

    A pattern is maximal if nothing more that is wanted fits: whatever a plan cuts, it may cut more.
    """
    longest = max(shop.capacities)
    if len(shop.sizes) * longest > _MOST_ENTRIES:
        return None
    after = suffix_values(shop.sizes, values, shop.demand, longest)
    found: list[Column] = []
    for stock, need in enumerate(needs):
        search = _Search(shop, stock, values, need, after)
        if not search.run(most - len(found)):
            return None
        found.extend(search.columns)
    return found


class _Search:
    """Kinds one after another, the longest first, as many of each as can be, then fewer.

    `after` tells for each kind what it and those after it can be worth at each length.
    """

    def __init__(
        self,
        shop: StickSizes,
        stock: int,
        values: Sequence[int],
        need: int,
        after: Sequence[Table],
    ) -> None:
        self._shop, self._stock, self._values, self._need = shop, stock, values, need
        self._after = after
        self._counts = [0] * len(shop.sizes)
        self.columns: list[Column] = []

    def run(self, most: int) -> bool:
        """Search; False where there are more than `most`, or too many steps."""
        kinds = len(self._counts)
        stack = [(0, self._shop.capacities[self._stock], 0, -1)]
        steps = 0
        while stack:
            kind, room, worth, count = stack.pop()
            if count >= 0:
                self._counts[kind - 1] = count
            steps += 1
            if steps > _STEPS_EACH * max(most, 1_000) or len(self.columns) > most:
                return False
            if worth + self._after[kind][room] < self._need:
                continue
            if kind == kinds:
                self._keep(room)
                continue
            size, value = self._shop.sizes[kind], self._values[kind]
            for n in range(min(self._shop.demand[kind], room // size) + 1):
                stack.append((kind + 1, room - n * size, worth + n * value, n))
        return len(self.columns) <= most

    def _keep(self, room: int) -> None:
        wanted = zip(self._counts, self._shop.demand, self._shop.sizes, strict=True)
        if not any(n < most and size <= room for n, most, size in wanted):
            self.columns.append(Column(self._stock, tuple(self._counts)))
