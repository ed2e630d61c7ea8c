"""Another way to the least cost: stock as paths through places along a stick (arc-flow).

A node for each place along the longest stick, an arc for each piece from each place it may start
at, a loss arc from every place to the next, and for each stock its own end. Whole flows are plans;
no pattern occurs anywhere. (Valerio de Carvalho 1999, from memory.) Only for small problems.
"""

from itertools import pairwise

import highspy


class ArcFlow(highspy.Highs):
    def enableCallbacks(self):  # noqa: N802 - the library's name; it prints before it can be told
        self.setOptionValue("output_flag", False)


def least_cost(shop, seconds=60.0):
    """The least cost of a shop of sticks, proven; None if the time was not enough."""
    arcs, places = _arcs(shop.sizes, shop.demand, max(shop.capacities))
    row = {place: n for n, place in enumerate(sorted(places))}
    solver = ArcFlow()
    for name, value in {"threads": 1, "mip_rel_gap": 0.0, "time_limit": seconds}.items():
        solver.setOptionValue(name, value)
    for _ in row:
        solver.addRow(0.0, 0.0, 0, [], [])
    for n in shop.demand:
        solver.addRow(n, highspy.kHighsInf, 0, [], [])
    _flows(solver, arcs, row, shop)
    for column in range(solver.getNumCol()):
        solver.changeColIntegrality(column, highspy.HighsVarType.kInteger)
    solver.run()
    if solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return None
    return round(solver.getInfo().objective_function_value)


def _flows(solver, arcs, row, shop):
    """A column for each arc, and one for each stock, which closes the flow."""
    inf = highspy.kHighsInf
    for start, end, kind in arcs:
        rows = [row[start], row[end], len(row) + kind]
        solver.addCol(0.0, 0.0, inf, 3, rows, [-1.0, 1.0, 1.0])
    for start, end in pairwise(sorted(row)):
        solver.addCol(0.0, 0.0, inf, 2, [row[start], row[end]], [-1.0, 1.0])
    for capacity, price, supply in zip(shop.capacities, shop.prices, shop.supplies, strict=True):
        end = max(place for place in row if place <= capacity)
        top = inf if supply is None else supply
        entries = ([row[0], row[end]], [1.0, -1.0]) if end else ([], [])
        solver.addCol(price, 0.0, top, len(entries[0]), *entries)


def _arcs(sizes, demand, longest):
    """Pieces in order of size: one starts only where longer ones, or its like, may have ended."""
    places, arcs = {0}, set()
    for kind in sorted(range(len(sizes)), key=lambda kind: -sizes[kind]):
        starts = set(places)
        for _ in range(demand[kind]):
            ends = {at + sizes[kind] for at in starts if at + sizes[kind] <= longest}
            arcs |= {(end - sizes[kind], end, kind) for end in ends}
            places |= ends
            starts = ends
    return sorted(arcs), places
