"""The search itself: what it keeps and varies, what it leaves out, and that it can be stopped."""

import json
from fractions import Fraction
from itertools import islice

import pytest

from lacunar.choosing.records import Criterion
from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.options_json import options_to_json
from lacunar.model import choosing_limits
from lacunar.model.faults import SpecRefused
from lacunar.workflow.options import begin_options, prepare_options
from tests.choosing.searching import grid, options, room, search, value

DEN = {"room": room("15 ft", "12 ft", "8 ft 10 in")}


def faults(ceiling, **choices):
    with pytest.raises(SpecRefused) as refused:
        search(ceiling, **choices)
    return {(fault.code, fault.pointer) for fault in refused.value.faults}


def test_what_the_ceiling_tells_is_kept():
    told = {
        **DEN,
        "beams": {"crosswise": {"sides": "1x8", "bottom": "1x6"}},
        "grid": {"length": {"coffers": 3, "start": "full"}, "width": {"wished_opening": 40}},
    }
    found = search(told)
    assert {option.length.coffers for option in found.found.options} == {3}
    assert {option.length.start for option in found.found.options} == {"full"}
    assert {option.length.beam_width.value.inches for option in found.found.options} == {7}
    codes = {each.code for each in found.found.not_searched}
    assert {"counts_kept", "widths_kept", "through_kept"} <= codes


def test_what_the_choices_name_is_varied_all_the_same():
    told = {**DEN, "grid": {"length": {"coffers": 3, "start": "full"}}}
    found = options(told, length_coffers={"fewest": 4, "most": 5}, walls=["none"])
    assert {option.length.coffers for option in found} <= {4, 5}
    assert {option.length.start for option in found} == {"none"}


def test_a_soffit_stays_and_what_is_on_its_face_varies():
    told = {**DEN, "grid": {"length": {"start": {"soffit": 12, "then": "none"}}}}
    found = options(told, walls=["half"])
    assert {(each.length.start, each.length.end) for each in found} == {
        ("soffit, then half", "half")
    }


def test_both_ways_of_running_through_are_tried():
    found = search(
        DEN,
        beam_widths=["5"],
        walls=["half"],
        through=["crosswise", "lengthwise"],
        most_laid_out=60,
    )
    laid = {laid.layout.ceiling.beams.through for laid in found.laid_out}
    assert laid == {"crosswise", "lengthwise"}


def test_an_option_sent_back_is_the_same_and_assumes_no_choice():
    first = search(DEN, most_laid_out=6).laid_out[0]
    document = json.dumps(ceiling_to_json(first.resolution.ceiling)).encode()
    again = prepare_options(document)
    (only,) = again.options.found.options
    assert again.options.laid_out[0].layout.grid_id == first.layout.grid_id
    assert (only.stands_out_by, only.behind) == ((), None)


def test_options_stand_by_score_where_weights_are_given():
    found = options(DEN, weights={"cuts": 1})
    cuts = [value(option, Criterion.CUTS) for option in found]
    assert cuts == sorted(cuts)
    scores = [option.score.value for option in found if option.score]
    assert (scores[0], max(scores)) == (0, 1)
    assert len(scores) == len(found)


def test_without_weights_the_squarest_stands_first():
    found = options(DEN)
    ratios = [value(option, Criterion.SQUARENESS) for option in found]
    assert ratios == sorted(ratios)
    assert {option.score for option in found} == {None}


def test_what_an_option_stands_out_by_no_other_one_has():
    found = options({**DEN, "crown": {"face": "3 1/4"}})
    for option in found:
        told = {criterion: value(option, criterion) for criterion in option.stands_out_by}
        assert told
        for other in found:
            if other is not option:
                assert any(value(other, each) > most for each, most in told.items())


def test_layouts_short_of_headroom_are_left_out_where_others_have_enough():
    """Sides of 1x12 leave 90 - 11 1/4 = 78 3/4 in of 84 in; those of 1x6 leave 84 1/2 in.

    With one coffer across and nothing at the walls there are no lengthwise beams, the deep ones.
    """
    deep = {
        "room": room("12 ft", "68 in", "90 in"),
        "beams": {
            "crosswise": {"sides": "1x6"},
            "lengthwise": {"sides": "1x12"},
            "depth": "stepped",
        },
    }
    found = search(deep, walls=["none"], width_coffers={"fewest": 1, "most": 2}, most_laid_out=60)
    assert found.found.counts.short_of_headroom > 0
    assert {option.width.coffers for option in found.found.options} == {1}
    none_has = search({"room": room("15 ft", "12 ft", "7 ft 5 in")}, most_laid_out=4)
    assert none_has.found.counts.short_of_headroom == 0
    enough = {each.enough for laid in none_has.laid_out for each in laid.layout.headroom}
    assert enough == {False}


def test_crown_that_no_stick_is_long_enough_for_is_left_out():
    crowned = {**DEN, "crown": {"face": "3 1/4"}}
    found = search(
        crowned, crown_lengths=["3 ft"], beam_widths=["5"], walls=["half"], most_laid_out=60
    )
    assert found.found.counts.crown_too_long > 0
    for laid in found.laid_out:
        assert max(coffer.length.value.inches for coffer in laid.layout.coffers) < 37
    assert faults(crowned, crown_lengths=["2 ft"], largest_opening="60", smallest_opening="30") == {
        ("crown_longer_than_sticks", "/choices/crown_lengths")
    }


def test_a_search_can_be_stopped_after_any_layout():
    document = json.dumps(DEN).encode()
    begun = begin_options(document)
    assert [step.done for step in islice(begun.steps(), 3)] == [1, 2, 3]
    found = begun.found().options.found
    assert (found.counts.laid_out, found.counts.stopped) == (3, True)
    assert 1 <= len(found.options) <= 3
    nothing_yet = begin_options(document).found().options.found
    assert (nothing_yet.counts.laid_out, nothing_yet.options) == (0, ())


def test_the_same_search_finds_the_same():
    first, second = (
        json.dumps(options_to_json(prepare_options(json.dumps(DEN).encode()), trace=True))
        for _ in range(2)
    )
    assert first == second


def test_everything_left_out_is_told_with_its_figures():
    found = search(DEN, most_laid_out=5).found
    told = {each.code: each for each in found.not_searched}
    assert told["passed_over"].figures["combinations"] == found.counts.passed_over > 0
    assert found.counts.laid_out == found.counts.to_lay_out == 5
    assert {"openings_out_of_limits", "walls_unlike", "families_unlike", "all_else_kept"} <= set(
        told
    )


def test_a_ballroom_is_bounded_by_counts():
    """100 ft by 60 ft has more numbers of coffers than are tried, and coffers than are laid out."""
    hall = {"room": room("100 ft", "60 ft", "16 ft")}
    begun = begin_options(json.dumps(hall).encode())
    counts = begun.found().options.found.counts
    assert counts.combinations <= choosing_limits.COMBINATIONS
    assert counts.to_lay_out < choosing_limits.USUALLY_LAID_OUT
    told = {each.code for each in begun.found().options.found.not_searched}
    assert {"counts_thinned", "too_many_coffers_together", "passed_over"} <= told


def test_nudges_are_tried_at_each_wall_and_width():
    found = search(DEN, nudges_of=2, most_laid_out=6).found
    nudges = found.nudges
    assert nudges is not None
    assert nudges.option == 2
    assert nudges.tried == 6 + 4 * 2
    assert {each.wall for each in nudges.nudges} == {None, "W1", "W2", "W3", "W4"}
    option = found.options[1]
    for nudge in nudges.nudges:
        for change in nudge.changes:
            assert change.before.value == value(option, change.criterion)
            less = change.after.value < change.before.value
            assert change.better is (less is not (change.criterion is Criterion.HEADROOM))


def test_every_fault_of_the_choices_comes_at_once():
    told = {
        **DEN,
        "grid": {"length": {"weights": [1, 2, 1]}},
        "room": {**DEN["room"], "wall_features": []},
    }
    assert faults(
        told,
        length_coffers={"fewest": 5, "most": 2},
        width_coffers={"fewest": 0, "most": 61},
        smallest_opening=50,
        largest_opening=40,
        beam_widths=["5", "1/2"],
        crown_lengths=["1 ft"],
        center_on=["Hearth"],
        weights={"cuts": 0, "joints": 0},
        most_laid_out=61,
        nudges_of=0,
    ) == {
        ("limits_crossed", "/choices/length_coffers/fewest"),
        ("counts_follow_weights", "/choices/length_coffers"),
        ("choice_out_of_bounds", "/choices/width_coffers/fewest"),
        ("choice_out_of_bounds", "/choices/width_coffers/most"),
        ("limits_crossed", "/choices/smallest_opening"),
        ("length_out_of_bounds", "/choices/beam_widths/1"),
        ("length_out_of_bounds", "/choices/crown_lengths/0"),
        ("feature_not_there", "/choices/center_on/0"),
        ("weights_all_zero", "/choices/weights"),
        ("choice_out_of_bounds", "/choices/most_laid_out"),
        ("choice_out_of_bounds", "/choices/nudges_of"),
    }


def test_faults_of_a_search_that_comes_to_nothing():
    assert faults(DEN, smallest_opening="71", largest_opening="72") == {
        ("no_option_in_limits", "/choices")
    }
    assert faults(DEN, nudges_of=60, most_laid_out=3) == {
        ("option_not_there", "/choices/nudges_of")
    }
    thin = {**DEN, "beams": {"crosswise": {"bottom": "1x4", "width": "11"}}}
    codes = {code for code, _ in faults(thin)}
    assert codes == {"stock_too_narrow"}
    assert all(pointer.startswith("/ceiling/") for _, pointer in faults(thin))


def test_a_ceiling_whose_openings_are_measured_has_no_options():
    measured = {**DEN, "measured_openings": {"grid": "0" * 10, "coffers": []}}
    assert ("beams_are_up", "/ceiling/measured_openings") in faults(measured)


def test_parity_is_kept():
    odd = {**DEN, "grid": {"length": {"parity": "odd"}}}
    assert {option.length.coffers % 2 for option in options(odd)} == {1}


def test_a_member_parts_a_run_into_zones_and_openings_differ():
    beam = {"on": "length", "center": 100, "width": "3 1/2", "drop": "5 1/2"}
    found = options({**DEN, "room": {**DEN["room"], "members": [beam]}}, most_laid_out=6)
    assert all(each.length.coffers >= 2 for each in found)
    assert any(
        each.length.smallest_opening.value != each.length.largest_opening.value for each in found
    )
    for each in found:
        assert value(each, Criterion.SQUARENESS) >= Fraction(1)
        assert grid(each)[1] >= 1
