"""Plans of lengths: what they say of sticks, money, offcuts, miters and choices."""

import subprocess
import sys
from dataclasses import replace

import pytest

from lacunar.model.faults import SpecRefused
from lacunar.takeoff.cutting.asked import Proof
from lacunar.takeoff.cutting.search import Search
from lacunar.takeoff.cutting.task import USUAL, Guard
from tests.bench.invented_lists import room_lists
from tests.takeoff.cutting.arc_flow import least_cost
from tests.takeoff.cutting.asking import inches, plan, planned, shop_of, solved
from tests.takeoff.cutting.checking import cents, proven_bound, sums_of

PRICED = [
    {"id": "8ft", "length": "8 ft", "price": 11.49},
    {"id": "10ft", "length": "10 ft", "price": 14.99},
    {"id": "12ft", "length": "12 ft", "price": 17.49},
    {"id": "16ft", "length": "16 ft", "price": 23.49},
]
PIECES = [
    {"id": "A", "length": "48 1/16", "quantity": 12},
    {"id": "B", "length": "145/3 in", "quantity": 7},
    {"id": "C", "length": 30, "quantity": 20},
]


def test_the_pieces_of_a_stick_lie_a_saw_cut_apart():
    found = plan(
        kerf="1/8",
        end_trim="1/2",
        stock=[{"length": 100, "price": 5}],
        pieces=[{"id": "A", "length": 40, "quantity": 1}, {"id": "B", "length": 30, "quantity": 1}],
    )
    (stick,) = found.sticks
    assert [(each.piece, each.start, each.end) for each in stick.pieces] == [
        ("A", inches("1/2"), inches("81/2")),
        ("B", inches("325/8"), inches("565/8")),  # 40 1/2 + 1/8, and 30 on
    ]
    assert stick.offcut == inches("234/8")  # 100 - 70 5/8 - 1/8
    assert stick.usable
    assert found.patterns[0].times == 1


def test_a_plan_from_all_lengths_is_no_dearer_than_from_one():
    found = plan(stock=PRICED, pieces=PIECES, kerf="1/8")
    assert found.proven_best
    assert {one.stock for one in found.one_length} == {"8ft", "10ft", "12ft", "16ft"}
    for one in found.one_length:
        assert cents(one.cost) - cents(found.cost) == cents(one.more) >= 0


def test_a_plan_is_the_same_whether_or_not_each_length_is_tried_alone():
    compared = plan(stock=PRICED, pieces=PIECES, kerf="1/8")
    bare = plan(alone=False, stock=PRICED, pieces=PIECES, kerf="1/8")
    assert bare.one_length == ()
    assert bare == replace(compared, one_length=())


def test_at_most_so_many_lengths_are_bought():
    free, two, one = (
        plan(stock=PRICED, pieces=PIECES, kerf="1/8", **limit)
        for limit in ({}, {"most_lengths": 2}, {"most_lengths": 1})
    )
    assert len({each.stock for each in two.taken}) <= 2
    assert len({each.stock for each in one.taken}) == 1
    assert cents(free.cost) <= cents(two.cost) <= cents(one.cost)
    assert len(two.choices) == 6  # 4 * 3 / 2 pairs
    assert min(cents(each.lower_bound) for each in two.choices) == cents(two.lower_bound)
    assert one.cost == min((each.cost for each in free.one_length), key=cents)
    assert two.proven_best


def test_materials_are_never_mixed():
    plans = planned(
        kerf=0,
        stock=[
            {"id": "O", "material": "oak", "length": 100, "price": 9},
            {"id": "P", "material": "pine", "length": 100, "price": 1},
        ],
        pieces=[
            {"material": "oak", "length": 50, "quantity": 2},
            {"material": "pine", "length": 50, "quantity": 3},
        ],
    )
    assert [(each.material, each.cost) for each in plans.plans] == [
        ("oak", "9.00"),
        ("pine", "2.00"),
    ]
    assert plans.cost == "11.00"


def test_an_offcut_is_used_where_its_salvage_value_is_less():
    asked = {
        "kerf": 0,
        "stock": [{"length": 96, "price": 10}, {"length": 48, "price": 6}],
        "pieces": [{"length": 48, "quantity": 3}],
    }
    used = plan(**asked, offcuts=[{"id": "R", "length": 50, "salvage_value": 5}])
    kept = plan(**asked, offcuts=[{"id": "R", "length": 50, "salvage_value": 7}])
    # 10 for two and the third from the offcut at 5 or a new 48 at 6
    assert (used.cost, kept.cost) == ("15.00", "16.00")
    assert used.bought == inches(96)
    assert {each.stock for each in used.taken} == {"S1", "R"}
    assert used.proven_best
    assert kept.proven_best


def test_without_prices_as_little_length_as_can_be_is_bought():
    found = plan(
        kerf=0, stock=[{"length": 96}, {"length": 120}], pieces=[{"length": 40, "quantity": 5}]
    )
    # 3 in 120 and 2 in 96
    assert found.cost is None
    assert found.bought == found.least_bought == inches(216)
    assert found.proven_best


def test_a_supply_is_not_overdrawn():
    stock = [{"id": "short", "length": 50, "price": 1, "supply": 2}, {"length": 100, "price": 10}]
    found = plan(kerf=0, stock=stock, pieces=[{"length": 50, "quantity": 6}])
    taken = {each.stock: each.quantity for each in found.taken}
    assert taken == {"short": 2, "S1": 2}
    assert proven_bound(found.certificate) <= 22


def test_stock_that_is_not_enough_is_a_fault():
    with pytest.raises(SpecRefused) as refused:
        plan(kerf=0, stock=[{"length": 50, "supply": 2}], pieces=[{"length": 50, "quantity": 3}])
    assert [fault.code for fault in refused.value.faults] == ["stock_runs_out"]


@pytest.mark.parametrize(
    ("document", "codes"),
    [
        ({"pieces": [{"length": 97, "quantity": 1}]}, {"piece_longer_than_stock"}),
        ({"end_trim": 20, "stock": [{"length": 40}]}, {"stock_used_up_by_trim"}),
        ({"pieces": [{"length": 9, "quantity": 10_001}]}, {"quantity_out_of_bounds"}),
        (
            {"pieces": [{"length": 9, "quantity": 1, "material": "oak"}]},
            {"material_not_stocked"},
        ),
        ({"offcuts": [{"length": 9, "salvage_value": 1}]}, {"salvage_without_prices"}),
        (
            {"materials": [{"name": "", "section": "sprung", "miter": 45, "nested": True}]},
            {"sprung_never_nested"},
        ),
        ({"materials": [{"name": "", "nested": True}]}, {"nesting_incomplete"}),
        (
            {"materials": [{"name": "", "nested": True, "miter": 45, "width": 6}]},
            {"piece_shorter_than_miters"},
        ),
    ],
)
def test_what_cannot_be_planned_is_told(document, codes):
    usual = {"stock": [{"length": 96}], "pieces": [{"length": 9, "quantity": 1}]}
    with pytest.raises(SpecRefused) as refused:
        plan(**{**usual, **document})
    faults = refused.value.faults
    assert {fault.code for fault in faults} >= codes
    assert all(fault.remedy and fault.pointer for fault in faults)


def test_nested_miters_share_a_cut():
    # Plane geometry: n pieces of long point l, mitred at 45 across 3 1/2, take
    # n * l - (n - 1) * 3 1/2 + (n - 1) * 3/16 (1/8 at 45 degrees is .1768, cut as 12/64). Five
    # pieces of 41 take 205 - 14 + 3/4 = 191 3/4 of 192; square cut, four do.
    asked = {
        "kerf": "1/8",
        "stock": [{"length": "16 ft", "price": 1}],
        "pieces": [{"length": 41, "quantity": 20}],
    }
    plainly = plan(**asked, materials=[{"name": "", "miter": 45, "width": "3 1/2"}])
    nested = plan(**asked, materials=[{"name": "", "miter": 45, "width": "3 1/2", "nested": True}])
    assert (plainly.cost, nested.cost) == ("5.00", "4.00")
    ends = [(each.start, each.end) for each in nested.sticks[0].pieces]
    assert ends[1][0] - ends[0][1] == inches("3/16") - inches("7/2")
    assert ends[-1][1] == inches("767/4")


def test_crown_takes_a_longer_saw_cut_and_no_nesting():
    found = plan(
        kerf="1/8",
        stock=[{"material": "crown", "length": 96, "price": 1}],
        pieces=[{"material": "crown", "length": "31 7/8", "quantity": 3}],
        materials=[{"name": "crown", "section": "sprung", "miter": 45}],
    )
    # 3 * 31 7/8 + 2 * 3/16 = 96 exactly
    assert len(found.sticks) == 1
    assert found.sticks[0].offcut == inches(0)


def test_sizes_without_a_common_tick_are_rounded_to_where_they_fit():
    odd = [{"length": f"{10**7 + 3 * n}/{10**6 + n} in", "quantity": 3} for n in range(1, 6)]
    found = plan(kerf="1/8", stock=[{"length": 96, "price": 1}], pieces=odd)
    assert not found.exact_sizes
    # nine of about 10 1/8 fit 96 1/8, so two sticks
    assert (found.cost, found.proof) == ("2.00", Proof.BOUND)
    proven_bound(found.certificate)


def test_largest_offcuts_are_kept_where_that_costs_nothing():
    asked = {
        "kerf": 0,
        "usable_offcut": 30,
        "stock": [{"length": 100, "price": 1}],
        "pieces": [{"length": 40, "quantity": 3}, {"length": 20, "quantity": 2}],
    }
    plans = [plan(**asked, second_aim=aim) for aim in ("fewest_patterns", "largest_offcuts")]
    assert [each.cost for each in plans] == ["2.00", "2.00"]
    kept = [sum(s.offcut.inches for s in each.sticks if s.usable) for each in plans]
    assert kept[1] == 40 >= kept[0]  # 40 + 40 + 20 is one whole stick


def test_the_certificate_holds_and_is_rounded_up_to_a_sum_of_prices():
    found = plan(stock=PRICED, pieces=PIECES, kerf="1/8", end_trim="1/4")
    certificate = found.certificate
    bound = proven_bound(certificate)
    sums = sums_of([each.price for each in certificate.stock], certificate.rounded_up)
    assert certificate.rounded_up == min(total for total in sums if total >= bound)
    assert certificate.rounded_up * cents(certificate.unit) <= cents(found.lower_bound)


@pytest.mark.parametrize("room", room_lists(31, 4), ids=lambda room: room.name)
def test_arc_flow_finds_no_cheaper_plan(room):
    shop = room.shop()
    least = least_cost(shop)
    outcome = solved(shop)
    assert outcome.cost == least
    assert outcome.least == least


def test_the_same_problem_gets_the_same_plan():
    shop = room_lists(32, 1)[0].shop()
    assert solved(shop) == solved(shop)


def test_a_clock_that_ends_it_is_told():
    ticking = iter([5.0] * 3)
    guard = Guard(lambda: next(ticking, -1.0))
    outcome = Search(shop_of(100, {31: 7, 45: 9, 14: 8, 36: 11}), USUAL, guard).run()
    assert guard.struck
    assert outcome.least <= outcome.cost


def test_the_solver_says_nothing_and_comes_only_when_it_is_needed():
    script = (
        "import sys\n"
        "import lacunar.workflow.cutting as cutting\n"
        "assert not {'highspy', 'numpy'} & set(sys.modules)\n"
        'text = b\'{"stock": [{"length": 96}], "pieces": [{"length": 31, "quantity": 7}]}\'\n'
        "cutting.plan_cuts(text)\n"
        "assert 'highspy' in sys.modules\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=False)
    assert (done.returncode, done.stdout, done.stderr) == (0, b"", b"")
