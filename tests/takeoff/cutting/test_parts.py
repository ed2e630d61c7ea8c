"""The parts of the search by themselves, against plain enumeration."""

from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.takeoff.cutting.certificate import PriceSums, weigh
from lacunar.takeoff.cutting.filling import full_stick
from lacunar.takeoff.cutting.knapsack import ValueTable, suffix_values
from lacunar.takeoff.cutting.stick_shop import StickShop
from tests.takeoff.cutting.checking import most_value, sums_of

KINDS = st.lists(
    st.tuples(st.integers(1, 12), st.integers(0, 9), st.integers(1, 4)), min_size=1, max_size=5
)


@given(KINDS, st.integers(1, 40))
def test_a_table_holds_the_greatest_value_at_every_length(kinds, capacity):
    sizes, values, most = zip(*kinds, strict=True)
    table = ValueTable(sizes, values, most, capacity)
    for length in range(capacity + 1):
        assert table.values[length] == most_value(sizes, values, most, length)
        counts = table.counts(length)
        assert all(n <= limit for n, limit in zip(counts, most, strict=True))
        assert sum(n * size for n, size in zip(counts, sizes, strict=True)) <= length
        assert (
            sum(n * value for n, value in zip(counts, values, strict=True)) == table.values[length]
        )


@given(KINDS, st.integers(1, 40))
def test_suffixes_hold_the_value_of_the_kinds_to_come(kinds, capacity):
    sizes, values, most = zip(*kinds, strict=True)
    tables = suffix_values(sizes, values, most, capacity)
    for kind in range(len(kinds) + 1):
        rest = most_value(sizes[kind:], values[kind:], most[kind:], capacity)
        assert tables[kind][capacity] == rest


@given(
    st.lists(st.tuples(st.integers(1, 12), st.integers(0, 4)), min_size=1, max_size=5),
    st.integers(1, 40),
)
def test_a_stick_is_filled_as_full_as_it_can_be_behind_its_longest_piece(kinds, capacity):
    sizes, wanted = zip(*sorted(kinds, reverse=True), strict=True)
    counts = full_stick(sizes, wanted, capacity)
    used = sum(n * size for n, size in zip(counts, sizes, strict=True))
    assert used <= capacity
    first = next((k for k, n in enumerate(wanted) if n and sizes[k] <= capacity), None)
    if first is None:
        assert used == 0
        return
    best = max(
        sum(n * size for n, size in zip(some, sizes, strict=True))
        for some in product(*(range(n + 1) for n in wanted))
        if some[first] and sum(n * s for n, s in zip(some, sizes, strict=True)) <= capacity
    )
    assert used == best


@given(st.sets(st.integers(1, 30), min_size=1, max_size=4), st.integers(1, 120))
def test_sums_of_prices_are_all_there(prices, most):
    sums = PriceSums(tuple(prices), most)
    reached = sums_of(prices, most)
    for bound in range(most + 1):
        above = [total for total in reached if total >= bound]
        if above:
            assert sums.least_from(Fraction(bound)) == min(above)
        below = [total for total in reached if total < bound]
        assert sums.most_below(bound) == max(below, default=-1)


@settings(max_examples=60)
@given(
    st.lists(st.tuples(st.integers(2, 9), st.integers(1, 3)), min_size=1, max_size=4),
    st.integers(9, 20),
    st.data(),
)
def test_near_patterns_are_all_maximal_patterns_of_that_worth(kinds, capacity, data):
    sizes, demand = zip(*sorted(kinds, reverse=True), strict=True)
    shop = StickShop(sizes, demand, (capacity,), (1,), (None,))
    values = tuple(data.draw(st.integers(0, 9)) for _ in sizes)
    need = data.draw(st.integers(0, 20))
    found = shop.near(values, (need,), 1000)

    def fits(counts):
        return sum(n * size for n, size in zip(counts, sizes, strict=True)) <= capacity

    def grown(counts):
        for kind in range(len(counts)):
            if counts[kind] < demand[kind]:
                yield (*counts[:kind], counts[kind] + 1, *counts[kind + 1 :])

    expected = {
        counts
        for counts in product(*(range(n + 1) for n in demand))
        if fits(counts)
        and not any(fits(more) for more in grown(counts))
        and sum(n * value for n, value in zip(counts, values, strict=True)) >= need
    }
    assert {column.counts for column in found} == expected


def test_weights_take_supply_into_account():
    # Two of a stock at 1 that hold 10, and no end of one at 3 that holds 10: 50 of value cost at
    # least 1 + 1 + 3 * 3 = 11, which t = 3/10 shows: 3/10 * 50 - 2 * (3 - 1).
    weights = weigh((10,), (10, 10), (5,), (1, 3), (2, None))
    assert weights.factor == Fraction(3, 10)
    assert weights.proven == 11
