"""Options in sentences: what each is, what no other one has, and where it comes off worst."""

from lacunar.choosing.records import Criterion
from lacunar.exchange.option_words import (
    explain_options,
    nudge_text,
    sheet_figures,
    sheet_lines,
    walls_text,
    why,
)
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from tests.choosing.searching import options, room, search

SIXTEENTHS = Step.read("1/16", Units.INCH)
FAMILY_ROOM = {"room": room("16 ft", "12 ft"), "crown": {"face": "3 1/4"}}


def test_a_square_layout_says_so():
    """192 / 4 - 5 = 144 / 3 - 5 = 43 in: no other layout of beams 5 in wide is as square."""
    found = options(FAMILY_ROOM, beam_widths=["5"])
    first, second, third = why(found[0], len(found), SIXTEENTHS)
    assert first == '4 by 3 coffers of 3\'-7" by 3\'-7", beams 5", half beams at all walls.'
    assert second == "No other option is as square."
    assert third.startswith("It ")
    assert f"in option {found[0].behind.option}." in third


def test_each_option_names_what_no_other_one_has():
    found = options(FAMILY_ROOM, beam_widths=["5"])
    sentences = [why(option, len(found), SIXTEENTHS)[1] for option in found]
    assert len(set(sentences)) == len(found)


def test_the_only_option_is_compared_with_none():
    counts = {"fewest": 3, "most": 3}
    (only,) = options(
        FAMILY_ROOM,
        beam_widths=["5"],
        walls=["none"],
        length_coffers=counts,
        width_coffers=counts,
    )
    assert len(why(only, 1, SIXTEENTHS)) == 2
    assert walls_text(only) == "nothing at the walls"


def test_unlike_walls_are_told_wall_by_wall():
    told = {**FAMILY_ROOM, "grid": {"length": {"start": "none", "end": "full"}}}
    (first, *_) = options(told, beam_widths=["5"], width_coffers={"fewest": 3, "most": 3})
    words = walls_text(first)
    assert "nothing at W1" in words
    assert "full" in words
    assert " beams" not in walls_text(first, short=True)


def test_figures_on_a_sheet_tell_which_are_the_best():
    found = options(FAMILY_ROOM, beam_widths=["5"])
    rows = {
        words: (value, best) for words, value, best in sheet_figures(found[0], found, SIXTEENTHS)
    }
    assert rows["Least square coffer"] == ("1", True)
    # 12 coffers of four pieces of 42 15/16 in, four to a stick of 16 ft
    assert rows["Crown sticks"] == ("12 of 16'-0\"", False)
    assert sheet_lines(found[0], SIXTEENTHS)[1:] == ('Beams 5"', "Half at all walls")


def test_nudges_tell_what_they_save_and_what_gets_worse():
    found = search(FAMILY_ROOM, beam_widths=["5"], nudges_of=1).found
    assert found.nudges is not None
    wider = next(each for each in found.nudges.nudges if each.wider and each.wider.inches > 0)
    # 48 pieces are each 1/16 in shorter, and all 12 sticks are still needed
    assert nudge_text(wider, SIXTEENTHS) == (
        'Beams 1/16" wider: crown left over 20\'-3" to 20\'-6".'
    )
    text = explain_options(found, SIXTEENTHS)
    assert "Small changes of option 1: 14 tried." in text
    assert text.count("Not searched: ") == len(found.not_searched)
    assert {each.criterion for each in found.options[0].judged} >= {Criterion.CUTS}
