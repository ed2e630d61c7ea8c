"""Rooms whose counts were worked out by hand, and searches that must come to the same.

Sums show their arithmetic; where a case comes from practice, that is said beside it.
"""

from fractions import Fraction

import pytest

from lacunar.choosing.records import Criterion
from tests.choosing.searching import grid, options, room, search, value

# Crown without play between long points, so that feet are those of the openings.
CROWN = {"face": "3 1/4", "fit_total": "0"}
FAMILY_ROOM = {"room": room("16 ft", "12 ft"), "crown": CROWN}


def inches(*amounts):
    return tuple(Fraction(amount) for amount in amounts)


def opening(run):
    assert run.smallest_opening.value == run.largest_opening.value
    return run.smallest_opening.value.inches


def test_half_beams_make_a_12_by_16_room_exactly_square():
    """192 / 4 - 5 = 43 and 144 / 3 - 5 = 43: a module of 48 in both ways (worked by hand).

    Any other square division of 192 by 144 has 4 coffers to 3, as 192 / 144 = 4 / 3, or a multiple:
    8 to 6 gives 19 in, under 24. Without half beams (192 - 15) / 4 = 44 1/4 and (144 - 10) / 3 =
    44 2/3; with full ones (192 - 25) / 4 = 41 3/4 and (144 - 20) / 3 = 41 1/3.
    """
    best = options(FAMILY_ROOM, beam_widths=["5"])[0]
    assert grid(best) == (4, 3, "half", "half")
    assert (opening(best.length), opening(best.width)) == inches(43, 43)
    assert value(best, Criterion.SQUARENESS) == 1


@pytest.mark.parametrize(
    ("walls", "along", "up"),
    [("none", "177/4", "134/3"), ("half", "43", "43"), ("full", "167/4", "124/3")],
)
def test_wall_conditions_side_by_side(walls, along, up):
    """The same 4 by 3 with each wall condition; sums as above."""
    counts = {"length_coffers": {"fewest": 4, "most": 4}, "width_coffers": {"fewest": 3, "most": 3}}
    (only,) = options(FAMILY_ROOM, beam_widths=["5"], walls=[walls], **counts)
    assert (opening(only.length), opening(only.width)) == inches(along, up)


@pytest.mark.parametrize(
    ("columns", "rows", "feet", "pieces"),
    [
        # 12 coffers x 4 x 43 = 2064 in = 172 ft; four pieces each
        (4, 3, 172, 48),
        # 192 / 3 - 5 = 59 and 144 / 2 - 5 = 67: 6 coffers x 2 x (59 + 67) = 1512 in = 126 ft
        (3, 2, 126, 24),
    ],
)
def test_fewer_coffers_are_less_crown_for_the_same_room(columns, rows, feet, pieces):
    """What a price by the square foot hides (common practice, no source)."""
    (only,) = options(
        FAMILY_ROOM,
        beam_widths=["5"],
        walls=["half"],
        length_coffers={"fewest": columns, "most": columns},
        width_coffers={"fewest": rows, "most": rows},
    )
    assert only.crown is not None
    assert only.crown.used.value.inches == feet * 12
    assert only.crown.pieces == pieces
    corners = dict(
        next(each.figure.operands for each in only.judged if each.criterion is Criterion.JOINTS)
    )["corners"]
    assert corners == pieces


def test_a_long_room_is_squarer_with_five_by_three():
    """24 x 14 ft, half beams of 8: 288 / 5 - 8 = 49.6 and 168 / 3 - 8 = 48, 1.033 to 1.

    Nine equal panels would be 288 / 3 - 8 = 88 by 48, 1.83 to 1.
    """
    found = options(
        {"room": room("24 ft", "14 ft")},
        beam_widths=["8"],
        walls=["half"],
        width_coffers={"fewest": 3, "most": 3},
        largest_opening="90",
    )
    best = found[0]
    assert grid(best) == (5, 3, "half", "half")
    assert (opening(best.length), opening(best.width)) == inches("49.6", 48)
    assert value(best, Criterion.SQUARENESS) == Fraction(496, 480)
    nine = next(each for each in found if each.length.coffers == 3)
    assert value(nine, Criterion.SQUARENESS) == Fraction(88, 48)


@pytest.mark.parametrize(
    ("coffers", "bare", "half"),
    # (180 - 2 x 5) / 3 and 180 / 3 - 5; (180 - 4 x 5) / 5 and 180 / 5 - 5
    [(3, "170/3", "55"), (5, "32", "31")],
)
def test_fifteen_feet_are_not_three_times_five(coffers, bare, half):
    """That 15 ft makes three of 5 ft or five of 3 ft forgets the beams (common practice)."""
    counts = {"fewest": coffers, "most": coffers}
    square = {"room": room("15 ft", "15 ft")}
    for walls, expected in (("none", bare), ("half", half)):
        (only,) = options(
            square, beam_widths=["5"], walls=[walls], length_coffers=counts, width_coffers=counts
        )
        assert (opening(only.length), opening(only.width)) == inches(expected, expected)


def test_counts_that_clear_a_fixed_sprinkler_are_told():
    """A head 48 in from both walls stands on a beam of any grid with a module of 48 in.

    With half beams 192 / 4 = 144 / 3 = 48, so 4 by 3 meets it; 192 / 5 = 38.4 and 144 / 4 = 36 have
    beams' centers at 38.4, 76.8 and 36, 72 in, 9.6 in and 12 in off, and clear it.
    """
    head = {"kind": "sprinkler", "x": 48, "y": 48, "diameter": 4, "mobility": "fixed"}
    ceiling = {"room": room("16 ft", "12 ft", ceiling_items=[head])}
    found = options(ceiling, beam_widths=["5"], walls=["half"])
    conflicts = {grid(each)[:2]: value(each, Criterion.CONFLICTS) for each in found}
    assert conflicts[4, 3] > 0
    assert conflicts[5, 4] == 0


def test_a_fireplace_is_centered_on():
    """A fireplace 8 ft along a wall of 16 ft: an even count has a beam there, an odd one a coffer.

    One at 7 ft is off center by 12 in at the nearest with 4 coffers of a module of 48 in: the beam
    at 96 in is 12 in off, and the middle of the coffer before it, at 72 in, is over it.
    """

    def hearth(center):
        feature = {"kind": "fireplace", "wall": "W2", "center": center, "width": 60}
        return {"room": room("16 ft", "12 ft", wall_features=[feature])}

    kept = {"length_coffers": {"fewest": 4, "most": 5}, "width_coffers": {"fewest": 3, "most": 3}}
    found = options(hearth("8 ft"), beam_widths=["5"], walls=["half"], **kept)
    assert {value(each, Criterion.OFF_CENTER).inches for each in found} == {0}
    off = options(hearth("7 ft"), beam_widths=["5"], walls=["half"], **kept)
    four = next(each for each in off if each.length.coffers == 4)
    assert value(four, Criterion.OFF_CENTER).inches == 84 - 72


def test_a_quarter_inch_of_beam_saves_the_seams():
    """196 in and four coffers with half beams of 7: 196 / 4 - 7 = 42, and 152 / 3 - 7 = 43 2/3.

    A sheet of 42 x 96 holds a panel of 42 in less its gaps; made 41 3/4, it has to be parted unless
    beams are a quarter wider: 42 - 2 x 1/32 = 41 15/16 is more than 41 3/4, and
    41 3/4 - 2 x 1/32 = 41 11/16 is less (worked by hand).
    """
    ceiling = {
        "room": room(196, 152),
        "beams": {"crosswise": {"bottom": "1x8", "width": 7}},
        "grid": {
            "length": {"coffers": 4, "start": "half", "end": "half"},
            "width": {"coffers": 3, "start": "half", "end": "half"},
        },
        "panel": {"kind": "sheet_goods", "seat": "between_sides"},
    }
    sheet = {"width": "41 3/4", "length": 96}
    found = search({**ceiling, "panel": {**ceiling["panel"], "sheet": sheet}}, nudges_of=1)
    (only,) = found.found.options
    # two of three sizes are along the short edge, so that each of twelve panels has one seam
    assert value(only, Criterion.SEAMS) == 12
    assert found.found.nudges is not None
    wider = {each.wider.inches: each for each in found.found.nudges.nudges if each.wider}
    assert wider[Fraction(1, 4)].seams_saved == 12
    assert wider[Fraction(1, 4)].saves
    assert wider[Fraction(1, 16)].seams_saved == 0


def test_a_quarter_inch_of_beam_saves_sticks():
    """Four coffers by four in a room of 212 by 212 in, half beams of 5: 212 / 4 - 5 = 48 in.

    Of 16 ft, four pieces of 48 in less nothing take 192 in and three saw cuts, so that three come
    out: 64 pieces take 22 sticks. 1/4 in off each, 4 x 47 3/4 = 191 and three cuts of 3/16 in at
    45 degrees are 191 9/16: four come out, and 16 sticks do (worked by hand).
    """
    ceiling = {
        "room": room(212, 212),
        "beams": {"crosswise": {"bottom": "1x8", "width": 5}},
        "grid": {
            name: {"coffers": 4, "start": "half", "end": "half"} for name in ("length", "width")
        },
        "crown": CROWN,
    }
    found = search(ceiling, nudges_of=1, crown_lengths=["16 ft"]).found
    crown = found.options[0].crown
    assert crown is not None
    assert crown.proven_best
    assert [each.quantity for each in crown.sticks] == [22]
    assert found.nudges is not None
    wider = {each.wider.inches: each for each in found.nudges.nudges if each.wider}
    assert wider[Fraction(1, 4)].sticks_saved == 22 - 16
    assert not wider[Fraction(-1, 4)].saves
