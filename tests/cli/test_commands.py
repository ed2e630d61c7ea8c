"""The commands as a person or a program at a shell meets them."""

import json
from pathlib import Path

import pytest

from tests.cli.command import lacunar

CEILINGS = sorted((Path(__file__).parents[2] / "examples" / "ceilings").glob("*.json"))
THREE_NUMBERS = b'{"room": {"length": "15\' 2 1/2\\"", "width": "12\' 4\\"", "height": "8\' 10\\""}}'


def test_three_numbers_give_sheets_and_their_names_alone_on_standard_output(tmp_path):
    outcome = lacunar("draw", "-", "--out", tmp_path, document=THREE_NUMBERS)
    assert outcome.code == 0, outcome.err
    names = outcome.out.splitlines()
    assert names
    assert sorted(names) == sorted(str(path) for path in tmp_path.iterdir())
    assert (tmp_path / "ceiling.pdf").read_bytes().startswith(b"%PDF-")
    assert (tmp_path / "ceiling-Z-101.svg").read_text().startswith("<?xml")


def test_the_same_spec_gives_the_same_bytes_twice(tmp_path):
    for folder in ("one", "two"):
        assert lacunar("draw", CEILINGS[0], "--out", tmp_path / folder, "--quiet").code == 0
    for path in (tmp_path / "one").iterdir():
        assert path.read_bytes() == (tmp_path / "two" / path.name).read_bytes()


@pytest.mark.parametrize("ceiling", CEILINGS, ids=lambda path: path.stem)
def test_every_example_passes_the_checker(ceiling):
    outcome = lacunar("check", ceiling, "--drawings")
    assert (outcome.code, outcome.out) == (0, ""), outcome.err


def test_the_layout_is_json_alone_with_assumptions_listed():
    outcome = lacunar("layout", "-", document=THREE_NUMBERS)
    assert outcome.code == 0
    answer = json.loads(outcome.out)
    assert {assumption["pointer"] for assumption in answer["assumptions"]} >= {"/grid/length"} or answer[
        "assumptions"
    ]
    assert answer["digest"]
    assert answer["engine"]["version"]


def test_a_traced_layout_names_rule_formula_and_operands():
    outcome = lacunar("layout", "-", "--trace", document=THREE_NUMBERS)
    opening = json.loads(outcome.out)["runs"]["length"]["zones"][0]["openings"][0]
    assert {"rule", "formula", "operands"} <= set(opening["trace"])


def test_explain_says_the_sums_in_words():
    outcome = lacunar("layout", "-", "--explain", document=THREE_NUMBERS)
    assert outcome.code == 0
    assert "clear" in outcome.out.lower()


def test_a_missing_file_is_told_in_a_sentence(tmp_path):
    outcome = lacunar("check", tmp_path / "nowhere.json")
    assert outcome.code == 1
    assert "Cannot read" in outcome.err


def test_a_folder_that_cannot_be_made_is_the_machines_lack(tmp_path):
    (tmp_path / "file").write_text("")
    outcome = lacunar("draw", CEILINGS[0], "--out", tmp_path / "file" / "sheets")
    assert outcome.code == 3
    assert "Traceback" not in outcome.err


def test_wrong_usage_is_two():
    assert lacunar("draw", "x.json").code == 2
    assert lacunar().code == 2


def test_a_faulty_ceiling_does_not_stop_the_others(tmp_path):
    faulty = tmp_path / "faulty.json"
    faulty.write_text('{"room": {}}')
    outcome = lacunar("draw", faulty, CEILINGS[0], "--out", tmp_path / "out", "--format", "svg")
    assert outcome.code == 1
    assert list((tmp_path / "out").glob(f"{CEILINGS[0].stem}*.svg"))


def test_help_teaches_the_exit_codes():
    assert "exit codes" in lacunar("--help").out
    for command in ("draw", "layout", "check"):
        assert "examples/ceilings" in lacunar(command, "--help").out
