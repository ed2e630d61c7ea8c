"""`lacunar saw-settings`: the table a carpenter reads, and the same as JSON."""

import json

import pytest

from tests.cli.command import lacunar


def test_the_table_of_a_square_corner():
    outcome = lacunar("saw-settings", "--spring", "38", "--corner", "90")
    assert outcome.code == 0
    rows = [line.split() for line in outcome.out.splitlines()]
    # Saw manuals print 31.6 and 33.9 for 38 degree crown.
    assert ["nested", "45°", "0°"] in rows
    assert ["flat", "31.6°", "33.9°"] in rows
    # And, for an inside corner's left piece: ceiling edge to the fence, table to the right.
    assert ["flat", "right", "ceiling", "edge", "right", "left", "left"] in rows
    assert "Cut test pieces" in outcome.err


def test_what_is_left_open_is_assumed_and_told():
    outcome = lacunar("saw-settings", "--spring", "38")
    assert outcome.code == 0
    assert "assumed /most_miter: 50°" in outcome.err
    assert "inside 90°" in outcome.out


def test_a_spring_is_never_assumed():
    # 38 or 45, and from which side: nobody can tell from here.
    assert lacunar("saw-settings", "--corner", "90").code == 2


def test_json_has_every_figure_and_nothing_else_is_on_standard_output():
    outcome = lacunar(
        "saw-settings", "--spring", "38", "--json", "--face", "4 5/8", "--corner", "270"
    )
    told = json.loads(outcome.out)
    assert told["drop"]["approximate"] is True
    # 4 5/8 cos 38 = 3.6445, 4 5/8 sin 38 = 2.8474: at an outside corner that much longer.
    assert told["drop"]["in"] == pytest.approx(3.6445, abs=5e-4)
    assert told["ceiling_edge"]["in"] == pytest.approx(2.8474, abs=5e-4)
    assert told["settings"]["corner"]["degrees"] == 270


def test_lengths_are_read_and_told_in_the_units_asked_for():
    outcome = lacunar("saw-settings", "--spring", "38", "--face", "100", "--units", "mm")
    # 100 cos 38 = 78.80, 100 sin 38 = 61.57
    assert "face 100 mm, drop 79 mm, projection 62 mm" in outcome.out


def test_a_saw_that_does_not_go_so_far_is_told():
    outcome = lacunar("saw-settings", "--spring", "38", "--most-miter", "31")
    assert outcome.out.count("beyond the saw") == 2


def test_a_spring_taken_from_the_ceiling_is_cautioned():
    assert "taken from the ceiling" in lacunar("saw-settings", "--spring", "52").err
    assert "taken from the ceiling" not in lacunar("saw-settings", "--spring", "45").err


def test_a_straight_wall_needs_no_cut():
    outcome = lacunar("saw-settings", "--spring", "38", "--corner", "180", "--face", "3 1/4")
    assert outcome.code == 0
    assert ["flat", "0°", "0°"] in [line.split() for line in outcome.out.splitlines()]
    assert "fence" not in outcome.out


def test_a_raked_run_is_told_with_what_it_would_take():
    # Hand-worked with vectors among the worked cases: 6 in 12, face 4 at 45.
    outcome = lacunar("saw-settings", "--spring", "45", "--face", "4", "--slope", "26.565051177")
    assert "raked run that climbs at 26.6°: does not meet the level one" in outcome.out
    assert 'pass 1 3/4" apart, the raked one at 4 9/16"' in outcome.out
    assert 'drop 1 1/4", face 3 1/8", 7/8" narrower' in outcome.out
    assert "assumed /rake: climbs" in outcome.err
    assert "transition piece" in outcome.err


def test_a_falling_rake_needs_a_wider_profile():
    crown = ("--spring", "45", "--face", "4", "--slope", "60", "--rake", "falls")
    # 2.8284 (cos 60 + sin 60) = 3.8637, sqrt(3.8637^2 + 8) - 4 = 0.7883
    told = json.loads(lacunar("saw-settings", *crown, "--json").out)["raked"]
    assert told["run_drop"]["in"] == pytest.approx(3.8637, abs=1e-4)
    assert told["wider"]["in"] == pytest.approx(0.7883, abs=1e-4)


def test_a_rake_too_steep_for_any_profile_is_told():
    # 2.8284 (cos 50 - sin 50) is below nothing.
    outcome = lacunar("saw-settings", "--spring", "45", "--face", "4", "--slope", "50")
    assert "no profile can be run for this rake" in outcome.out


def test_a_raked_run_along_one_wall_meets_the_level_one():
    outcome = lacunar("saw-settings", "--spring", "38", "--corner", "180", "--slope", "30")
    assert "30°: meets the level one" in outcome.out
    assert "transition piece" not in outcome.err


def test_crown_taller_than_the_saw_takes_nested_is_cut_flat():
    # 4 5/8 cos 38 = 3.6445
    asked = ("saw-settings", "--spring", "38", "--face", "4 5/8", "--fence-height")
    low, high = lacunar(*asked, "3 5/8"), lacunar(*asked, "3 3/4")
    assert low.out.count("beyond the saw") == 1
    assert "taller than the saw takes" in low.err
    assert "beyond the saw" not in high.out
    assert "taller than the saw takes" not in high.err


@pytest.mark.parametrize(
    ("arguments", "codes"),
    [
        (("--spring", "x"), ["wrong_type"]),
        (("--spring", "3"), ["angle_out_of_bounds"]),
        (("--spring", "38", "--corner", "350"), ["angle_out_of_bounds"]),
        (
            ("--corner", "5", "--spring", "88", "--face", "9 ft"),
            ["angle_out_of_bounds", "length_out_of_bounds"],
        ),
        (("--spring", "38", "--units", "cubits"), ["unknown_word"]),
        (
            ("--spring", "38", "--slope", "61", "--fence-height", "9 ft"),
            ["angle_out_of_bounds", "fence_height_alone", "length_out_of_bounds"],
        ),
        (("--spring", "38", "--rake", "falls"), ["rake_without_slope"]),
        (("--spring", "38", "--mark-to", "1/7"), ["step_not_known"]),
    ],
)
def test_faults_are_told_all_at_once(arguments: tuple[str, ...], codes: list[str]):
    outcome = lacunar("saw-settings", *arguments)
    assert (outcome.code, outcome.out) == (1, "")
    for code in codes:
        assert code in outcome.err
