"""What is priced by what: the most particular price, sizes, stock's own prices, what has none."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from lacunar.takeoff.estimate.estimate_records import Estimate, EstimateSection, UnpricedReason
from tests.takeoff.estimate.pricing import CROWNED, FLAT, Document, estimated, lines_of

EIGHT = {"lengths": [{"material": "1x6", "length": "8 ft"}]}
NAILS = {"of": "finish nail", "per": "pack", "price": 13}


def priced(*rows: Document, stock: Document | None = None) -> dict[str, tuple[str, Decimal]]:
    """Names of material lines with the place of their price and their amount."""
    made = estimated(FLAT, stock=EIGHT if stock is None else stock, materials=rows)
    return {
        line.name: (line.priced_at, line.amount.value)
        for line in made.lines
        if line.section is EstimateSection.MATERIALS
    }


def unpriced(made: Estimate, section: EstimateSection) -> dict[str, UnpricedReason]:
    return {each.name: each.reason for each in made.unpriced if each.section is section}


BOXED = {"crosswise": {"sides": "1x6", "bottom": "1x6"}}
KIND = {"kind": "lumber", "per": "foot", "price": 1}
NAME = {"of": " 1X6 ", "per": "foot", "price": 2}
BOTH = {"of": "1x6", "kind": "lumber", "per": "foot", "price": 3}


@pytest.mark.parametrize(
    ("rows", "at", "amount"),
    [
        # Two boards of 8 ft, 16 ft.
        ([KIND], 0, "16.00"),
        ([KIND, NAME], 1, "32.00"),
        ([BOTH, NAME, KIND], 0, "48.00"),
    ],
)
def test_the_most_particular_price_counts(rows: list[Document], at: int, amount: str):
    assert priced(*rows) == {"1x6": (f"/materials/{at}", Decimal(amount))}


@pytest.mark.parametrize(
    ("per", "price", "amount"),
    [
        ("foot", "1.005", "16.08"),
        ("meter", "10", "48.77"),  # 16 * 0.3048 = 4.8768
        ("board_foot", "2.35", "18.80"),  # 1 * 6 * 192 / 144 = 8
    ],
)
def test_each_measure_of_a_board(per: str, price: str, amount: str):
    assert priced({"of": "1x6", "per": per, "price": price})["1x6"][1] == Decimal(amount)


def test_a_price_for_a_size_goes_before_one_for_any():
    any_size = {"of": "1x6", "per": "piece", "price": 9}
    eight = {**any_size, "length": "8 ft", "price": "7.5"}
    assert priced(any_size, eight) == {"1x6, 8'-0\"": ("/materials/1", Decimal("15.00"))}
    ten = {**any_size, "length": "10 ft", "price": "7.5"}
    assert priced(any_size, ten) == {"1x6, 8'-0\"": ("/materials/0", Decimal("18.00"))}


def test_lengths_that_are_priced_are_those_that_are_bought():
    """Two boards of 96 in: two sticks of 8 ft at 11 each, or one of 20 ft at 21; the cheaper."""
    rows = [
        {"of": "1x6", "per": "piece", "length": "8 ft", "price": 11},
        {"of": "1x6", "per": "piece", "length": "20 ft", "price": 21},
    ]
    assert priced(*rows, stock={}) == {"1x6, 20'-0\"": ("/materials/1", Decimal("21.00"))}
    rows[1]["price"] = 23
    assert priced(*rows, stock={}) == {"1x6, 8'-0\"": ("/materials/0", Decimal("22.00"))}


def test_lengths_that_stock_tells_stand():
    rows = [{"of": "1x6", "per": "piece", "length": "20 ft", "price": 21}]
    made = estimated(FLAT, stock=EIGHT, materials=rows)
    assert lines_of(made) == {}
    assert unpriced(made, EstimateSection.MATERIALS) == {
        "1x6, 8'-0\"": UnpricedReason.SIZE_NOT_PRICED,
        "finish nail": UnpricedReason.NO_PRICE,
    }


def test_prices_of_stock_count_where_the_list_has_none():
    stock = {"lengths": [{"material": "1x6", "length": "8 ft", "price": "6.25"}]}
    assert priced(NAILS, stock=stock)["1x6, 8'-0\""] == ("/stock", Decimal("12.50"))
    assert priced(NAME, stock=stock) == {"1x6": ("/materials/0", Decimal("32.00"))}
    made = estimated(FLAT, stock=stock, tax={"rate": 0.07})
    assert "stock_prices_not_taxed" in {caution.code for caution in made.cautions}


@pytest.mark.parametrize("per", ["square_foot", "sheet", "pack", "gallon"])
def test_a_measure_that_something_is_not_told_in_prices_nothing(per: str):
    made = estimated(FLAT, materials=[{"of": "1x6", "per": per, "price": 1}, NAILS])
    assert unpriced(made, EstimateSection.MATERIALS) == {"1x6": UnpricedReason.NOT_TOLD_SO}
    assert not made.totals.complete


def test_without_any_price_everything_is_listed_and_nothing_is_charged():
    made = estimated(CROWNED)
    assert made.lines == ()
    assert made.totals.total.value == 0
    assert not made.totals.complete
    assert unpriced(made, EstimateSection.MATERIALS).keys() == {"Crown", "Nailer", "finish nail"}
    assert unpriced(made, EstimateSection.LABOR).keys() == {"Crown", "Nailer"}
    assert all(each.quantity is not None for each in made.unpriced)


def test_every_material_line_tells_the_marks_behind_it():
    made = estimated(CROWNED, materials=[{"kind": "crown", "per": "foot", "price": 1}, NAILS])
    lines = lines_of(made)
    assert set(lines["Crown"].source) == {"CR1", "CR2", "CR3", "CR4"}
    assert set(lines["finish nail, box of 1000"].source) == {"CR1", "CR2", "CR3", "CR4"}


def test_materials_of_one_trade_name_and_two_sizes_share_a_price_by_it():
    other = {**CROWNED, "crown": {**CROWNED["crown"], "face": "4 1/4"}}
    by_name = {"of": "crown", "per": "foot", "price": 2}
    made = estimated(CROWNED, other, materials=[by_name])
    crown = [line for line in made.lines if line.priced_at == "/materials/0"]
    assert len(crown) == 2
    sized = {**by_name, "of": crown[0].name, "price": 5}
    again = estimated(CROWNED, other, materials=[by_name, sized])
    assert {line.name: line.priced_at for line in again.lines} == {
        crown[0].name: "/materials/1",
        crown[1].name: "/materials/0",
    }


WORK: dict[str, Any] = {"rate": 40, "work": [{"per": "foot", "of": ["crown"], "hours": "0.1"}]}


def test_what_no_rate_pays_for_is_listed():
    made = estimated(CROWNED, labor=WORK)
    assert unpriced(made, EstimateSection.LABOR) == {"Nailer": UnpricedReason.NO_PRICE}
    # By the coffer or hour, what is paid for is named.
    more = [*WORK["work"], {"per": "coffer", "of": ["nailer"], "price": 5}]
    made = estimated(CROWNED, labor={**WORK, "work": more})
    assert unpriced(made, EstimateSection.LABOR) == {}


def test_a_coffer_is_not_paid_for_what_is_not_there():
    rows = [
        {"name": "Panels", "per": "coffer", "of": ["panel"], "price": 5},
        {"name": "All", "per": "coffer", "price": 5},
    ]
    made = estimated(FLAT, labor={"work": rows})
    assert lines_of(made).keys() == {"All"}
    assert made.unused_prices == ("/labor/work/0",)


def test_a_price_that_nothing_was_priced_by_is_told():
    made = estimated(FLAT, materials=[KIND, {"of": "ebony", "per": "foot", "price": 90}])
    assert made.unused_prices == ("/materials/1",)


def test_frames_by_a_price_for_a_joint_take_their_share_of_it():
    frames = {**CROWNED, "crown": {**CROWNED["crown"], "method": "bench_frame"}}
    labor = {
        "frame_share": "0.4",
        "work": [{"per": "joint", "of": ["crown_cope"], "price": "7.11"}],
    }
    (line,) = estimated(frames, labor=labor).lines
    # 4 * 7.11 * 0.4 = 11.376
    assert (line.amount.value, line.quantity.value) == (Decimal("11.38"), Fraction(4))
    labor["work"] = [{"per": "joint", "of": ["crown_miter"], "price": "7.11"}]
    (line,) = estimated(CROWNED, labor=labor).lines
    # 4 * 7.11 / 0.4 = 71.10
    assert line.amount.value == Decimal("71.10")


def test_boards_are_priced_by_what_they_cover():
    boards = {"panel": {"kind": "boards", "cover": "5 1/8", "parallel_to": "length"}}
    by_area = {"kind": "boards", "per": "square_foot", "price": 4}
    made = estimated({**FLAT, "beams": BOXED, **boards}, materials=[by_area])
    (line,) = made.lines
    # Two beams 5 1/2 and two sides wide, 7: openings of (144 - 14) * 96 / 144 = 86 2/3 square feet
    # at most, less the gap that boards are cut short by at both ends; a tenth for waste.
    openings = Fraction(130 * 96, 144)
    assert openings * Fraction(98, 100) < line.quantity.value / Fraction(11, 10) < openings


def test_what_is_built_and_not_taken_off_makes_a_total_incomplete():
    made = estimated({**FLAT, "beams": BOXED})
    assert made.not_counted == ("fasteners_not_counted",)
