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
        (("--spring", "38", "--mark-to", "1/7"), ["step_not_known"]),
    ],
)
def test_faults_are_told_all_at_once(arguments: tuple[str, ...], codes: list[str]):
    outcome = lacunar("saw-settings", *arguments)
    assert (outcome.code, outcome.out) == (1, "")
    for code in codes:
        assert code in outcome.err
