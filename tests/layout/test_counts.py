"""How many coffers a zone gets; sums beside each figure."""

import pytest

from lacunar.layout.runs.counts import coffers_that_fit, zone_counts
from lacunar.layout.runs.zone_split import most_alike_split
from lacunar.model.grid import (
    CoffersInAll,
    CoffersPerZone,
    CountRule,
    LargestOpening,
    Parity,
    WishedOpening,
)
from tests.layout.laying_out import inches

FIVE = inches("5")


def counts(rule: CountRule, *spaces: str, parity: Parity | None = None) -> list[int]:
    """What a rule gives between beams of 5 in."""
    found = zone_counts(rule, parity, [inches(space) for space in spaces], FIVE)
    return [count.value for count in found]


def test_counts_per_zone_are_taken_as_given():
    assert counts(CoffersPerZone((2, 3)), "100", "150") == [2, 3]


@pytest.mark.parametrize(
    ("largest", "expected"),
    [
        ("48", 3),  # (154 + 5)/(48 + 5) = 3 exactly
        ("47 15/16", 4),  # a little over 3
        ("154", 1),
        ("153", 2),
    ],
)
def test_largest_opening(largest: str, expected: int):
    assert counts(LargestOpening(inches(largest)), "154") == [expected]


@pytest.mark.parametrize(
    ("parity", "expected"),
    # (154 + 5)/(47 + 5) = 3.06: 4 are needed; odd 5
    [(None, 4), (Parity.EVEN, 4), (Parity.ODD, 5)],
)
def test_largest_opening_with_a_parity(parity: Parity | None, expected: int):
    assert counts(LargestOpening(inches("47")), "154", parity=parity) == [expected]


@pytest.mark.parametrize(
    ("wished", "parity", "expected"),
    [
        # Openings in 154: 1: 154, 2: 74 1/2, 3: 48, 4: 34 3/4, 5: 26 4/5
        ("48", None, 3),
        ("42", None, 3),  # 6 off against 7 1/4
        ("41", None, 4),  # 7 off against 6 1/4
        ("41 3/8", None, 3),  # 6 5/8 off both ways: fewer coffers
        ("48", Parity.EVEN, 4),  # 13 1/4 off against 26 1/2
        ("41", Parity.ODD, 3),  # 7 off against 14 1/5
        ("200", Parity.EVEN, 2),
    ],
)
def test_wished_opening(wished: str, parity: Parity | None, expected: int):
    assert counts(WishedOpening(inches(wished)), "154", parity=parity) == [expected]


def test_a_wish_for_very_small_openings_never_lets_the_beams_fill_the_zone():
    # Between beams of 5 in a zone of 20: 1: 20, 2: 7 1/2, 3: 3 1/3, 4: 1 1/4, 5: 0
    assert counts(WishedOpening(inches("1")), "20") == [4]


def test_parity_is_wanted_of_every_zone():
    # 207 would hold 4 of 48: 3 of 65 2/3 are 17 2/3 off, 5 of 37 2/5 are 10 3/5 off
    rule = WishedOpening(inches("48"))
    assert counts(rule, "154", "207", parity=Parity.ODD) == [3, 5]


def test_a_total_is_split_by_the_least_ratio():
    # 2 and 3: 27 1/2 and 31 2/3, 1.15; 1 and 4: 60 and 22 1/2, 2.7; 3 and 2: 16 2/3 and 50, 3
    assert counts(CoffersInAll(5), "60", "105") == [2, 3]


def test_a_tie_goes_to_fewer_coffers_in_the_smaller_zone():
    # 10 and 60 without beams, 10 coffers: (1, 9) gives 10 and 6 2/3, (2, 8) gives 5 and 7 1/2: 3/2
    # both ways.
    assert most_alike_split(10, [inches("10"), inches("60")], inches("0")) == (1, 9)
    assert most_alike_split(10, [inches("60"), inches("10")], inches("0")) == (9, 1)


def test_a_tie_of_equal_zones_goes_to_fewer_coffers_next_the_datum():
    assert most_alike_split(3, [inches("60"), inches("60")], inches("1")) == (1, 2)
    assert most_alike_split(4, [inches("40")] * 3, inches("1")) == (1, 1, 2)


def test_coffers_that_fit():
    assert coffers_that_fit(inches("28"), inches("6"), FIVE) == 3  # 3 * 6 + 2 * 5 = 28
    assert coffers_that_fit(inches("27"), inches("6"), FIVE) == 2
    assert coffers_that_fit(inches("5"), inches("6"), FIVE) == 0


def test_a_large_split_is_quick():
    """41 zones and 60 coffers: the most the limits allow."""
    spaces = [inches(str(40 + zone % 7)) for zone in range(41)]
    split = most_alike_split(60, spaces, FIVE)
    assert sum(split) == 60
    assert min(split) == 1
