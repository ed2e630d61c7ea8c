"""Laws of counting, splitting and shifting, each test named after its law."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise, product

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lacunar.layout.runs.casing_shift import Play, shifts_to_equal
from lacunar.layout.runs.counts import opening_of, zone_counts
from lacunar.layout.runs.division import ZoneSpace, divide
from lacunar.layout.runs.zone_split import most_alike_split
from lacunar.measure.figure import given as stated
from lacunar.measure.length import ZERO, Length
from lacunar.model.grid import LargestOpening, Parity, WishedOpening
from tests.laws.ceiling_specs import sixteenths


@given(sixteenths(40, 400), sixteenths(1, 12), sixteenths(6, 60))
def test_a_largest_opening_takes_the_fewest_coffers_that_keep_it(
    space: Length, width: Length, largest: Length
):
    (count,) = zone_counts(LargestOpening(largest), None, [space], width)
    assert opening_of(space, count.value, width) <= largest
    assert count.value == 1 or opening_of(space, count.value - 1, width) > largest


@given(sixteenths(40, 400), sixteenths(1, 12), sixteenths(6, 60), st.sampled_from(Parity))
def test_a_largest_opening_with_a_parity_takes_the_fewest_of_that_kind(
    space: Length, width: Length, largest: Length, parity: Parity
):
    (count,) = zone_counts(LargestOpening(largest), parity, [space], width)
    first = 1 if parity is Parity.ODD else 2
    enough = (n for n in range(first, 500, 2) if opening_of(space, n, width) <= largest)
    assert count.value == next(enough)


@given(
    sixteenths(40, 400),
    sixteenths(1, 12),
    sixteenths(6, 60),
    st.none() | st.sampled_from(Parity),
)
def test_no_other_count_of_its_kind_comes_nearer_to_a_wished_opening(
    space: Length, width: Length, wished: Length, parity: Parity | None
):
    (count,) = zone_counts(WishedOpening(wished), parity, [space], width)
    first, step = {None: (1, 1), Parity.ODD: (1, 2), Parity.EVEN: (2, 2)}[parity]
    choices = [n for n in range(first, 500, step) if opening_of(space, n, width) > ZERO]
    assume(choices)
    off = {n: abs(opening_of(space, n, width) - wished) for n in choices}
    assert count.value == min(choices, key=lambda n: (off[n], n))


@given(sixteenths(60, 400), sixteenths(2, 8), st.integers(1, 12))
def test_one_coffer_more_makes_every_opening_smaller(space: Length, width: Length, n: int):
    assert opening_of(space, n + 1, width) < opening_of(space, n, width)


@given(
    sixteenths(60, 400),
    sixteenths(2, 8),
    st.lists(st.integers(1, 5).map(Fraction), min_size=1, max_size=5),
    st.fractions(Fraction(1, 3), 3, max_denominator=9),
)
def test_a_zone_scaled_with_its_beams_has_scaled_openings(
    space: Length, width: Length, weights: list[Fraction], scale: Fraction
):
    def openings(by: Fraction) -> list[Length]:
        count = stated(len(weights))
        zone = ZoneSpace(stated(ZERO), stated(space * by), count, tuple(weights))
        return [opening.value for opening in divide(1, zone, width * by).openings]

    assert openings(scale) == [opening * scale for opening in openings(Fraction(1))]


@settings(max_examples=200)
@given(st.lists(sixteenths(20, 120), min_size=1, max_size=4), sixteenths(1, 8), st.integers(0, 7))
def test_a_total_is_split_as_well_as_by_trying_every_split(
    spaces: list[Length], width: Length, more: int
):
    count = len(spaces) + more
    splits = [
        split
        for split in product(range(1, count + 1), repeat=len(spaces))
        if sum(split) == count
        and all(opening_of(s, n, width) > ZERO for s, n in zip(spaces, split, strict=True))
    ]
    assume(splits)
    order = sorted(range(len(spaces)), key=lambda zone: (spaces[zone], zone))

    def badness(split: tuple[int, ...]) -> tuple[Fraction, list[int]]:
        sizes = [opening_of(s, n, width) for s, n in zip(spaces, split, strict=True)]
        return max(sizes) / min(sizes), [split[zone] for zone in order]

    assert most_alike_split(count, spaces, width) == min(splits, key=badness)


plays = st.tuples(sixteenths(20, 90), st.integers(1, 4), sixteenths(0, 6))


def plays_from(zones: list[tuple[Length, int, Length]]) -> list[Play]:
    """Fixed beams between zones of so much clear total, so many coffers and so much play."""
    clear, shares, found = ZERO, Fraction(0), []
    for total, coffers, limit in zones:
        clear, shares = clear + total, shares + coffers
        found.append(Play(clear, shares, limit))
    return [*found[:-1], replace(found[-1], limit=ZERO)]


def openings_with(plays: Sequence[Play], shifts: Sequence[Length]) -> list[Length]:
    """The opening of each zone when the beams between are shifted so."""
    points = [(ZERO, Fraction(0))]
    points += [(p.clear + s, p.shares) for p, s in zip(plays, [*shifts, ZERO], strict=True)]
    return [(b - a) / (n - m) for (a, m), (b, n) in pairwise(points)]


@given(st.lists(plays, min_size=2, max_size=5))
def test_a_shift_never_exceeds_its_limit_and_never_makes_openings_less_alike(
    zones: list[tuple[Length, int, Length]],
):
    *beams, end = plays_from(zones)
    shifts = [shift.value for shift in shifts_to_equal(beams, end)]
    assert all(abs(s) <= beam.limit for s, beam in zip(shifts, beams, strict=True))
    before = openings_with([*beams, end], [ZERO] * len(beams))
    after = openings_with([*beams, end], shifts)
    assert max(after) <= max(before)
    assert min(after) >= min(before)


@given(plays, plays)
def test_one_casing_is_shifted_to_equal_openings_or_as_far_as_it_goes(
    first: tuple[Length, int, Length], second: tuple[Length, int, Length]
):
    """(T1 + s) / n1 = (T2 - s) / n2 solved for s, cut off at the limit."""
    beam, end = plays_from([first, second])
    (total, count, limit), (other, others, _) = first, second
    wanted = (other * count - total * others) / (count + others)
    (shift,) = shifts_to_equal([beam], end)
    assert shift.value == max(-limit, min(limit, wanted))


@settings(max_examples=60)
@given(st.lists(plays, min_size=3, max_size=3))
def test_two_casings_are_shifted_better_than_any_of_many_trials(
    zones: list[tuple[Length, int, Length]],
):
    *beams, end = plays_from(zones)
    best = openings_with([*beams, end], [s.value for s in shifts_to_equal(beams, end)])
    trials = [[beam.limit * Fraction(part, 6) for part in range(-6, 7)] for beam in beams]
    for shifts in product(*trials):
        tried = openings_with([*beams, end], shifts)
        assert max(best) <= max(tried)
        assert min(best) >= min(tried)
