"""`lacunar boards` as a shell meets it."""

import json

from tests.cli.command import lacunar


def test_courses_of_one_opening_as_json_alone():
    outcome = lacunar("boards", "--opening", "41", "--cover", "5", "--gap", "0", "--trace")
    assert outcome.code == 0, outcome.err
    answer = json.loads(outcome.out)
    # nine courses of 5 in 41: two edges of (41 - 35)/2 = 3
    assert answer["courses"]["courses"]["count"] == 9
    assert answer["courses"]["edge"]["exact"] == "3 in"
    assert answer["courses"]["edge"]["formula"]
    assert {assumed["pointer"] for assumed in answer["assumptions"]} == {"/tongue"}
    assert "assumed /tongue" in outcome.err


def test_movement_in_words():
    outcome = lacunar(
        *("boards", "--opening", 1200, "--units", "mm", "--cover", 100, "--explain"),
        *("--species", "red_oak", "--now", 10, "--driest", "6 %"),
    )
    assert outcome.code == 0, outcome.err
    # 100 * .00369 * 4
    assert "= about 1.476 mm" in outcome.out
    assert "/now" not in outcome.err


def test_cautions_point_into_the_question():
    outcome = lacunar(
        *("boards", "--opening", "44", "--cover", "5", "--centered-on", "joint"),
        *("--coefficient", "0.00369", "--now", 14, "--driest", 6, "--trim-cover", "1/8"),
    )
    answer = json.loads(outcome.out)
    assert {caution["pointer"] for caution in answer["cautions"]} == {
        "/centered_on",
        "/trim_cover",
    }


def test_all_faults_are_told_at_once_with_their_places():
    outcome = lacunar("boards", "--cover", "wide", "--now", "60", "--units", "ft")
    assert outcome.code == 1
    assert outcome.out == ""
    for place in ("/opening:", "/cover:", "/units:"):
        assert f"  {place}" in outcome.err
    outcome = lacunar("boards", "--opening", "3000 m", "--now", "60", "--driest", "101 at 200 F")
    for place in ("/opening:", "/now:", "/driest:", "/species:"):
        assert f"  {place}" in outcome.err


def test_a_gap_that_leaves_nothing():
    outcome = lacunar("boards", "--opening", "2", "--gap", "1")
    assert outcome.code == 1
    assert "/gap:" in outcome.err
