"""Measures cutting plans: what share is proven, how far off the rest is, and what it costs.

python3 -m tests.bench.cutting_plans [SEED ...]

Lists are those of ceilings drawn at random (`ceiling_lists`), and invented (`invented_lists`), from
seeds that nothing was tuned with; published instances are beside this file. CPU seconds of this
process, everything in one run, so that ratios hold on any machine: the plan beside first-fit
decreasing (best of all stock lengths, each stick then the cheapest that holds its pieces) and
beside an arc-flow model in the same solver.
"""

import json
import sys
import time
from statistics import median

from lacunar.takeoff.cutting.search import Search
from lacunar.takeoff.cutting.task import USUAL, Guard
from lacunar.workflow.material_list import prepare_materials
from tests.bench import ceiling_lists
from tests.bench.invented_lists import pooled_lists, room_lists
from tests.bench.published_instances import bin_packing
from tests.takeoff.cutting.arc_flow import least_cost
from tests.takeoff.cutting.asking import shop_of

SEEDS = (404, 505, 606)
ARC_FLOW_LISTS = 8
ARC_FLOW_SECONDS = 20.0


def timed(work):
    """What some work gives, and the CPU seconds it took."""
    start = time.process_time()
    found = work()
    return found, time.process_time() - start


def first_fit_decreasing(shop):
    """The cost of the best first-fit plan of all stock lengths."""
    best = None
    for capacity in shop.capacities:
        if capacity < shop.sizes[0]:
            continue
        rooms = []
        for size, quantity in zip(shop.sizes, shop.demand, strict=True):
            for _ in range(quantity):
                place = next((n for n, room in enumerate(rooms) if room >= size), None)
                if place is None:
                    rooms.append(capacity - size)
                else:
                    rooms[place] -= size
        rack = list(zip(shop.capacities, shop.prices, strict=True))
        cost = sum(min(p for c, p in rack if c >= capacity - room) for room in rooms)
        best = cost if best is None else min(best, cost)
    return best


def planned(shop):
    """The outcome of the usual effort."""
    return Search(shop, USUAL, Guard(lambda: 600.0)).run()


def measure(name, lists):
    """Print what came of some lists; their shops, outcomes and CPU seconds."""
    rows = []
    for each in lists:
        shop = each.shop()
        outcome, seconds = timed(lambda shop=shop: planned(shop))
        rows.append((shop, outcome, seconds))
    tell(name, rows)
    return rows


def tell(name, rows):
    """Print the shares and the times of outcomes."""
    seconds = [row[2] for row in rows]
    gaps = [(outcome.cost - outcome.least) / outcome.least for _, outcome, _ in rows]
    stick = [outcome.cost - outcome.least < min(shop.prices) for shop, outcome, _ in rows]
    proven = [outcome.proof is not None for _, outcome, _ in rows]
    soon = [is_proven and took <= 1 for is_proven, took in zip(proven, seconds, strict=True)]
    print(
        f"{name}: {len(rows)} lists, proven {sum(proven)}, within 1 s {sum(soon)}, "
        f"within the cheapest stick {sum(stick)}, worst gap {100 * max(gaps):.4f} %, "
        f"CPU median {1000 * median(seconds):.0f} ms, worst {max(seconds):.2f} s"
    )


def beside_first_fit(rows):
    """Print how much dearer first-fit decreasing is, and how much quicker."""
    dearer, quicker = [], []
    for shop, outcome, seconds in rows:
        cost, took = timed(lambda shop=shop: first_fit_decreasing(shop))
        dearer.append(100 * (cost / outcome.cost - 1))
        quicker.append(seconds / max(took, 1e-4))
    print(
        f"  first-fit decreasing: {sum(dearer) / len(dearer):.2f} % dearer on average, "
        f"{max(dearer):.2f} % at most; the plan takes {median(quicker):.0f} times its CPU"
    )


def beside_arc_flow(rows):
    """Print how many an arc-flow model solves, whether costs agree, and what it takes."""
    agreed, ratios, unsolved = 0, [], 0
    for shop, outcome, seconds in rows[:ARC_FLOW_LISTS]:
        least, took = timed(lambda shop=shop: least_cost(shop, ARC_FLOW_SECONDS))
        ratios.append(took / seconds)
        unsolved += least is None
        agreed += least == outcome.cost
        assert least is None or outcome.least <= least <= outcome.cost
    print(
        f"  arc-flow on {len(ratios)} of them: {agreed} of the same cost, {unsolved} not solved in "
        f"{ARC_FLOW_SECONDS:.0f} s; it takes {median(ratios):.0f} times the plan's CPU"
    )


def whole_lists(seed):
    """Print what whole material lists take, from the bytes of a spec on."""
    rooms = [spec for _, spec in ceiling_lists.buildable(seed + 1, 40)]
    seconds = [
        timed(lambda spec=spec: prepare_materials(json.dumps(spec).encode()))[1] for spec in rooms
    ]
    house = json.dumps(ceiling_lists.house(seed, 30)).encode()
    prepared, took = timed(lambda: prepare_materials(house))
    plans = [line.plan for line in prepared.listed.materials.lines if line.plan]
    print(
        f"  whole material lists of {len(rooms)} rooms: CPU median {1000 * median(seconds):.0f} ms,"
        f" worst {max(seconds):.2f} s; of a house of 30 rooms {took:.1f} s,"
        f" {sum(plan.proven_best for plan in plans)} of {len(plans)} plans proven"
    )


def main(arguments):
    """Measure everything."""
    seeds = [int(each) for each in arguments] or SEEDS
    for seed in seeds:
        beside_first_fit(measure(f"ceilings, seed {seed}", ceiling_lists.room_lists(seed)))
        beside_first_fit(measure(f"houses, seed {seed}", ceiling_lists.house_lists(seed)))
        whole_lists(seed)
    for seed in seeds:
        rows = measure(f"rooms, seed {seed}", room_lists(seed))
        beside_first_fit(rows)
        beside_arc_flow(rows)
        beside_first_fit(measure(f"jobs of several rooms, seed {seed}", pooled_lists(seed)))
    published = []
    for instance in bin_packing():
        shop = shop_of(instance.capacity, instance.demand)
        outcome, seconds = timed(lambda shop=shop: planned(shop))
        assert outcome.cost == instance.optimum, instance.name
        published.append((shop, outcome, seconds))
    tell("published instances, all at their optimum", published)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
