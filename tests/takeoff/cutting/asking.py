"""Short ways to ask for a plan in a test."""

from fractions import Fraction

from lacunar.exchange.cutting_json import cutting_from
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.strict_json import read_json
from lacunar.measure.length import Length
from lacunar.takeoff.cutting.deciding import decide
from lacunar.takeoff.cutting.lengths import plan_lengths
from lacunar.takeoff.cutting.search import Search
from lacunar.takeoff.cutting.sheets import plan_sheets
from lacunar.takeoff.cutting.stick_shop import StickShop
from lacunar.takeoff.cutting.task import USUAL, Guard


def patient():
    """A guard whose clock stands still: a test's plan depends on counts alone."""
    return Guard(lambda: 60.0)


def inches(amount):
    return Length.of_inches(Fraction(amount))


def planned(*, alone=True, **document):
    """The plans of lengths for a document."""
    decided = decide(cutting_from(read_json(json_bytes(document))))
    return plan_lengths(decided.lengths, patient(), alone=alone)


def plan(**document):
    """The only plan of a document with one material."""
    (only,) = planned(**document).plans
    return only


def sheet_plan(**document):
    """The only plan of sheets for a document with one material."""
    decided = decide(cutting_from(read_json(json_bytes(document))))
    (only,) = plan_sheets(decided.sheets, patient()).plans
    return only


def shop_of(capacity, demand):
    """A shop of one endless stock, from {size: quantity}; every stick costs 1."""
    sizes = sorted(demand, reverse=True)
    return StickShop(
        tuple(sizes), tuple(demand[size] for size in sizes), (capacity,), (1,), (None,)
    )


def solved(shop, effort=USUAL):
    return Search(shop, effort, patient()).run()
