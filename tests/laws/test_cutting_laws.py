"""Laws of cutting plans, on problems drawn at random."""

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lacunar.model.faults import SpecRefused
from lacunar.takeoff.cutting.stick_shop import StickShop
from tests.takeoff.cutting.arc_flow import least_cost
from tests.takeoff.cutting.asking import inches, plan, sheet_plan, solved
from tests.takeoff.cutting.checking import cents, proven_bound, sums_of
from tests.takeoff.cutting.test_sheets import hold_against_cuts

EIGHTHS = st.integers(40, 800).map("{}/8 in".format)
PIECES = st.lists(
    st.fixed_dictionaries({"length": EIGHTHS, "quantity": st.integers(1, 9)}),
    min_size=1,
    max_size=6,
)
STOCK = st.lists(
    st.fixed_dictionaries(
        {
            "length": st.sampled_from([101, "10 ft", "12 ft", "14 ft", "16 ft"]),
            "price": st.sampled_from([9.99, 11.49, 14, 17.49, 21, 23.49]),
        }
    ),
    min_size=1,
    max_size=4,
)
OFFCUTS = st.lists(
    st.fixed_dictionaries(
        {"length": st.integers(20, 99), "salvage_value": st.sampled_from([0, 1, 2.5])}
    ),
    max_size=3,
)
KERF = st.sampled_from(["0", "1/16", "1/8"])
TRIM = st.sampled_from(["0", "1/4"])
PROBLEM = st.fixed_dictionaries(
    {"stock": STOCK, "pieces": PIECES, "offcuts": OFFCUTS, "kerf": KERF, "end_trim": TRIM}
)
CALM = settings(max_examples=40, deadline=None)


@CALM
@given(PROBLEM)
def test_every_piece_is_on_one_stick_and_every_stick_adds_up(problem):
    found = plan(**problem)
    kerf, trim = (inches(problem[name]) for name in ("kerf", "end_trim"))
    made = {}
    for stick in found.sticks:
        at = trim
        for piece in stick.pieces:
            assert (piece.start, piece.end) == (at, at + piece.length)
            made[piece.piece] = made.get(piece.piece, 0) + 1
            at = piece.end + kerf
        end = stick.pieces[-1].end
        assert end + trim <= stick.length
        # lengths, saw cuts between and behind them, and the offcut are the whole stick
        last = min(kerf, stick.length - end)
        assert end + last + stick.offcut == stick.length
    wanted = {f"P{n}": each["quantity"] for n, each in enumerate(problem["pieces"], 1)}
    assert made == wanted


@CALM
@given(PROBLEM)
def test_the_bound_is_proven_and_no_plan_costs_less(problem):
    found = plan(**problem)
    bound = proven_bound(found.certificate)
    assert cents(found.lower_bound) <= cents(found.cost)
    assert cents(found.gap) == cents(found.cost) - cents(found.lower_bound)
    unit = cents(found.certificate.unit)
    assert bound * unit <= cents(found.cost)
    sums = sums_of([each.price for each in found.certificate.stock], cents(found.cost) // unit)
    assert found.certificate.rounded_up == min(total for total in sums if total >= bound)
    assert found.proven_best is (found.lower_bound == found.cost)
    assert cents(found.cost) == sum(cents(each.cost) for each in found.taken)


@CALM
@given(PROBLEM, st.sampled_from([10.49, 12, 18]))
def test_more_stock_to_choose_from_never_costs_more(problem, price):
    found = plan(**problem)
    more = {**problem, "stock": [*problem["stock"], {"length": "13 ft", "price": price}]}
    other = plan(**more)
    if other.proven_best:
        assert cents(other.cost) <= cents(found.cost)
    assert cents(other.lower_bound) <= cents(found.cost)


@CALM
@given(PROBLEM)
def test_a_wider_saw_cut_never_costs_less(problem):
    try:
        wide = plan(**{**problem, "kerf": "3/16"})
    except SpecRefused:
        assume(False)
    assert cents(plan(**problem).lower_bound) <= cents(wide.cost)


SHOPS = st.builds(
    lambda kinds, stocks: StickShop(
        tuple(sorted(kinds, reverse=True)),
        tuple(kinds[size] for size in sorted(kinds, reverse=True)),
        tuple(capacity for capacity, _, _ in stocks),
        tuple(price for _, price, _ in stocks),
        (None, *(supply for _, _, supply in stocks[1:])),
    ),
    st.dictionaries(st.integers(3, 20), st.integers(1, 6), min_size=1, max_size=5),
    st.lists(
        st.tuples(st.integers(20, 45), st.integers(1, 12), st.sampled_from([None, 1, 2])),
        min_size=1,
        max_size=3,
    ),
)


@settings(max_examples=80, deadline=None)
@given(SHOPS)
def test_arc_flow_agrees_on_the_least_cost(shop):
    least = least_cost(shop)
    outcome = solved(shop)
    assert outcome.bound <= outcome.least <= least <= outcome.cost
    if outcome.proof is not None:
        assert outcome.cost == least


@CALM
@given(SHOPS)
def test_without_a_saw_cut_it_is_the_classical_problem(shop):
    # Every stick alike: no fewer than the lengths' sum, no more than a piece to a stick.
    alike = replace(shop, capacities=(45,), prices=(1,), supplies=(None,))
    outcome = solved(alike)
    total = sum(n * size for n, size in zip(alike.demand, alike.sizes, strict=True))
    assert -(-total // 45) <= outcome.least <= outcome.cost <= sum(alike.demand)


PANELS = st.lists(
    st.fixed_dictionaries(
        {
            "length": st.integers(20, 90).map("{}/2 in".format),
            "width": st.integers(20, 90).map("{}/2 in".format),
            "quantity": st.integers(1, 6),
            "grain": st.sampled_from(["length", "free"]),
        }
    ),
    min_size=1,
    max_size=4,
)


@settings(max_examples=25, deadline=None)
@given(PANELS, KERF, TRIM)
def test_sheets_are_cut_into_all_panels_and_what_is_left(panels, kerf, trim):
    named = [{**each, "id": f"N{n}"} for n, each in enumerate(panels)]
    document = {
        "kerf": kerf,
        "edge_trim": trim,
        "sheets": [{"length": 96, "width": 48, "price": 40}, {"length": 60, "width": 60}],
        "panels": named,
    }
    document["sheets"][1]["price"] = 31
    found = sheet_plan(**document)
    hold_against_cuts(found, document)
    area = sum(
        inches(each["length"].removesuffix(" in")).inches
        * inches(each["width"].removesuffix(" in")).inches
        * each["quantity"]
        for each in named
    )
    # No plan can cost less than the cheaper area: 31 for 3600 square inches.
    assert cents(found.cost) >= cents(found.lower_bound)
    assert cents(found.cost) >= area * 3100 / 3600
