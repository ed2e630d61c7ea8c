"""Price lists: what is refused, all of it at once, and what is assumed and listed."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from lacunar.takeoff.estimate.words import COUNTED, EDGES, JOINTS, PAID_WITH, PARTS, SET_UPS, Work
from lacunar.takeoff.part_records import PartKind
from tests.takeoff.estimate.pricing import decided, faults_of

PRICE = {"of": "1x8", "per": "foot", "price": 2}


@pytest.mark.parametrize(
    ("prices", "code", "pointer"),
    [
        ({"currency": "usd"}, "currency_not_readable", "/currency"),
        ({"currency": "US"}, "currency_not_readable", "/currency"),
        ({"overhead": 12}, "share_out_of_bounds", "/overhead"),
        ({"contingency": "3/2"}, "share_out_of_bounds", "/contingency"),
        ({"markup": 25}, "share_out_of_bounds", "/markup"),
        ({"margin": 1}, "share_out_of_bounds", "/margin"),
        ({"tax": {"rate": 7.25}}, "share_out_of_bounds", "/tax/rate"),
        ({"labor": {"frame_share": 0}}, "share_out_of_bounds", "/labor/frame_share"),
        ({"markup": 0, "margin": 0}, "markup_and_margin", "/margin"),
        ({"materials": [{"per": "foot", "price": 2}]}, "price_of_nothing", "/materials/0"),
        ({"materials": [{**PRICE, "of": ""}]}, "price_of_nothing", "/materials/0"),
        (
            {"materials": [{**PRICE, "length": "8 ft"}]},
            "length_without_size",
            "/materials/0/length",
        ),
        (
            {"materials": [{**PRICE, "per": "piece", "length": "80 ft"}]},
            "length_out_of_bounds",
            "/materials/0/length",
        ),
        ({"materials": [PRICE, {**PRICE, "of": " 1X8"}]}, "priced_twice", "/materials/1"),
        (
            {"materials": [PRICE, {**PRICE, "per": "board_foot"}]},
            "priced_twice",
            "/materials/1/per",
        ),
        (
            {"materials": [{**PRICE, "per": "piece", "length": n} for n in range(20, 33)]},
            "too_many_stock_sizes",
            "/materials/12/length",
        ),
        ({"labor": {"work": [{"per": "joint"}]}}, "labor_not_priced", "/labor/work/0"),
        ({"labor": {"work": [{"per": "joint", "hours": 1}]}}, "labor_not_priced", "/labor/work/0"),
        (
            {"labor": {"work": [{"per": "hour", "quantity": 1}]}},
            "labor_not_priced",
            "/labor/work/0",
        ),
        (
            {"labor": {"rate": 5, "work": [{"per": "joint", "hours": 1, "price": 1}]}},
            "labor_not_priced",
            "/labor/work/0",
        ),
        (
            {"labor": {"rate": 5, "work": [{"per": "hour", "hours": 1, "quantity": 1}]}},
            "labor_not_priced",
            "/labor/work/0/hours",
        ),
        (
            {"labor": {"work": [{"per": "hour", "price": 5}]}},
            "quantity_not_fitting",
            "/labor/work/0/quantity",
        ),
        (
            {"labor": {"work": [{"per": "foot", "price": 5, "quantity": 3}]}},
            "quantity_not_fitting",
            "/labor/work/0/quantity",
        ),
        (
            {"labor": {"rate": 1, "work": [{"per": "joint", "hours": 1001}]}},
            "amount_out_of_bounds",
            "/labor/work/0/hours",
        ),
        (
            {"labor": {"work": [{"per": "hour", "price": 5, "quantity": -1}]}},
            "amount_out_of_bounds",
            "/labor/work/0/quantity",
        ),
        (
            {"labor": {"work": [{"per": "joint", "price": 1, "of": ["cross", "side"]}]}},
            "work_not_counted",
            "/labor/work/0/of/1",
        ),
        (
            {"labor": {"work": [{"per": "coffer", "price": 1, "of": []}]}},
            "work_not_counted",
            "/labor/work/0/of",
        ),
        (
            {"others": [{"name": "Bin", "per": "each", "price": 1}]},
            "quantity_not_fitting",
            "/others/0/quantity",
        ),
        (
            {"others": [{"name": "Bin", "per": "job", "price": 1, "quantity": 2}]},
            "quantity_not_fitting",
            "/others/0/quantity",
        ),
        (
            {"others": [{"name": "x", "per": "job", "price": -1}]},
            "money_not_readable",
            "/others/0/price",
        ),
        (
            {"materials": [{**PRICE, "price": "0.12345"}]},
            "wrong_type",
            "/materials/0/price",
        ),
        ({"materials": [{**PRICE, "price": 0.12345}]}, "money_not_readable", "/materials/0/price"),
        ({"materials": [{"of": "1x8", "price": 1}]}, "name_missing", "/materials/0/per"),
        (
            # More digits than the context of decimals keeps.
            {"materials": [{**PRICE, "price": Decimal(f"1.{'0' * 32}1")}]},
            "money_not_readable",
            "/materials/0/price",
        ),
        ({"tax": {}}, "name_missing", "/tax/rate"),
        ({"labor": {"work": [{"per": "mile", "price": 1}]}}, "unknown_word", "/labor/work/0/per"),
        ({"discount": 1}, "name_unknown", "/discount"),
        ({"overhead": None}, "null_given", "/overhead"),
    ],
)
def test_what_cannot_be_priced_by_is_refused(prices: dict[str, Any], code: str, pointer: str):
    assert faults_of(**prices) == {(code, pointer)}


def test_all_faults_come_at_once():
    assert faults_of(
        currency="dollars and cents"[:3],
        overhead=12,
        markup="1/4",
        margin="1/5",
        materials=[{"per": "foot", "price": 1}],
        labor={"work": [{"per": "joint"}]},
        others=[{"name": "Bin", "per": "each", "price": 1}],
    ) == {
        ("currency_not_readable", "/currency"),
        ("share_out_of_bounds", "/overhead"),
        ("markup_and_margin", "/margin"),
        ("price_of_nothing", "/materials/0"),
        ("labor_not_priced", "/labor/work/0"),
        ("quantity_not_fitting", "/others/0/quantity"),
    }


def test_no_price_is_ever_assumed():
    empty = decided()
    assert (empty.prices.materials, empty.prices.labor, empty.prices.others) == ((), (), ())
    assert {each.pointer: each.value for each in empty.assumptions} == {
        "/overhead": "0",
        "/contingency": "0",
        "/markup": "0",
        "/tax": "none",
    }


def test_all_that_is_said_assumes_nothing():
    said = decided(
        overhead="0.1",
        contingency=0,
        margin="0.2",
        tax={"rate": "0.07", "on": "price"},
        labor={
            "rate": 50,
            "frame_share": "0.6",
            "work": [{"per": "joint", "of": ["crown_cope"], "hours": 1, "taxed": False}],
        },
    )
    assert said.assumptions == ()


COPED = {"per": "joint", "of": ["crown_cope", "flat_miter"], "price": 8, "name": "Corners"}
MITRED = {"per": "joint", "of": ["crown_miter"], "price": 3}


def test_frames_follow_from_coping_by_a_share_that_is_listed():
    made = decided(labor={"work": [COPED]})
    assert [(rate.name, rate.of) for rate in made.prices.labor] == [
        ("Corners", (Work.CROWN_COPE, Work.FLAT_MITER)),
        ("Corners, as bench frames", (Work.CROWN_MITER,)),
    ]
    assert made.prices.labor[1].beside is not None
    assert made.prices.labor[1].beside.share == Fraction(1, 2)
    (assumed,) = (each for each in made.assumptions if each.pointer == "/labor/frame_share")
    assert assumed.value == "1/2"


def test_the_share_of_frames_can_be_told():
    made = decided(labor={"frame_share": "0.65", "work": [COPED]})
    assert made.prices.labor[1].beside is not None
    assert made.prices.labor[1].beside.share == Fraction("0.65")
    assert "/labor/frame_share" not in {each.pointer for each in made.assumptions}


@pytest.mark.parametrize("work", [[], [COPED, MITRED], [{"per": "joint", "price": 2}]])
def test_nothing_follows_where_both_are_priced_or_neither(work: list[dict[str, Any]]):
    made = decided(labor={"work": work})
    assert len(made.prices.labor) == len(work)
    assert "/labor/frame_share" not in {each.pointer for each in made.assumptions}


def test_coping_follows_from_frames_the_other_way_about():
    made = decided(labor={"work": [MITRED]})
    (_, coped) = made.prices.labor
    assert (coped.of, coped.price) == ((Work.CROWN_COPE,), Decimal(3))
    assert coped.beside is not None
    assert not coped.beside.of_coping


def test_what_is_not_said_to_be_taxed_is_told_once():
    made = decided(materials=[PRICE, {**PRICE, "of": "1x6", "taxed": True}], tax={"rate": 0.07})
    assert [price.taxed for price in made.prices.materials] == [False, True]
    told = {each.pointer: each.value for each in made.assumptions}
    assert told["/materials"] == "1 not taxed"
    assert told["/tax/on"] == "cost"


def test_every_kind_of_part_can_be_worked_on_and_paid_for():
    assert [work.value for work in PARTS] == [kind.value for kind in PartKind]
    assert set(PARTS) | set(EDGES) | set(JOINTS) | set(SET_UPS) == set(Work)
    assert set(PAID_WITH) == set(JOINTS)
    assert {work for known in COUNTED.values() for work in known} == set(Work)
