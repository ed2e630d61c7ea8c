"""Laws of material lists: of whatever ceiling, nothing is lost, and no figure contradicts its rule.

Stock differs from ceiling to ceiling: usual lengths, few and short ones, priced ones.
"""

import json
from functools import cache
from random import Random

from lacunar.model.faults import SpecRefused
from lacunar.workflow.material_list import prepare_materials
from tests.laws.random_specs import random_specs
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions
from tests.takeoff.buying.listing import lost

COUNT = 40
LEAST = COUNT * 2 // 3


def stock(random):
    """What might be said of stock, of every material that ceilings are likely to have."""
    names = ("1x6", "1x8", "1x10", "Crown", "Nailer", "1x6 boards")
    some = random.sample((72, 96, 120, 144, 168, 192, 240), random.randint(1, 4))
    priced = random.random() < 0.5
    rows = [
        {"material": name, "length": f"{inches} in", **({"price": inches // 8} if priced else {})}
        for name in names
        for inches in some
    ]
    said = {
        "lengths": rows,
        "kerf": random.choice(("1/8 in", "3 mm", "3/32 in")),
        "end_trim": random.choice(("0 in", "1/4 in", "1 in")),
        "usable_offcut": f"{random.randint(6, 40)} in",
    }
    if random.random() < 0.3:
        said["most_lengths"] = random.randint(1, 2)
    return said


@cache
def lists():
    """Material lists of random ceilings, and the pointers of what was refused."""
    found, pointers = [], []
    for number, spec in enumerate(random_specs(COUNT, seed=611)):
        random = Random(f"stock 611:{number}")
        document = {"ceiling": spec}
        if random.random() < 0.6:
            document["stock"] = stock(random)
        try:
            found.append(prepare_materials(json.dumps(document, default=float).encode()))
        except SpecRefused as refused:
            pointers += [fault.pointer for fault in refused.faults]
    assert len(found) > LEAST
    return found, pointers


def test_stock_refuses_no_ceiling():
    """However short it is, parts are joined."""
    _, pointers = lists()
    assert [pointer for pointer in pointers if not pointer.startswith("/ceiling")] == []


def test_nothing_is_lost_between_parts_plans_and_lists():
    assert [line for prepared in lists()[0] for line in lost(prepared)] == []


def test_no_figure_contradicts_its_rule():
    figures = [f for prepared in lists()[0] for f in figures_in(prepared.listed.materials)]
    assert len(figures) > COUNT
    assert [line for figure in figures for line in contradictions(figure)] == []


def test_no_plan_costs_less_than_its_bound():
    for prepared in lists()[0]:
        for line in prepared.listed.materials.lines:
            least = None if line.plan is None else line.plan.least_amount
            if least is not None:
                assert least.value <= line.amount.value
                assert line.plan.proven_best == (least.value == line.amount.value)
