"""`lacunar cutting-plan` as a shell meets it."""

import json

from lacunar.api.cutting_examples import EXAMPLES
from tests.cli.command import lacunar

PROBLEM = json.dumps(EXAMPLES["priced_lengths"]["value"]).encode()
SHEETS = json.dumps(EXAMPLES["sheets"]["value"]).encode()


def test_a_plan_as_json_alone():
    outcome = lacunar("cutting-plan", "-", document=PROBLEM)
    assert outcome.code == 0, outcome.err
    answer = json.loads(outcome.out)
    assert [plan["material"] for plan in answer["lengths"]["plans"]] == ["1x6 poplar", "crown"]
    assert "assumed /usable_offcut" in outcome.err


def test_a_plan_in_words():
    outcome = lacunar("cutting-plan", "-", "--explain", document=PROBLEM)
    assert outcome.code == 0, outcome.err
    assert "Proven best" in outcome.out
    # three of 47 15/16 and two saw cuts of 3/16 leave 191 1/2 - 144 3/16 - 3/16 and the end's 1/4
    assert "8 x S7: 3 C1 at 3'-11 15/16\"; left 3'-11 3/8\"" in outcome.out
    assert "12'-0\" alone: 12, 42.40 more" in outcome.out


def test_sheets_in_words_tell_the_cuts_in_order():
    outcome = lacunar("cutting-plan", "-", "--explain", document=SHEETS)
    assert outcome.code == 0, outcome.err
    assert "    cut 1: sheet, length parted at" in outcome.out
    assert ": N1, " in outcome.out


def test_faults_are_told_with_their_place():
    outcome = lacunar("cutting-plan", "-", document=b'{"stock": [{"length": 9}], "pieces": []}')
    assert outcome.code == 1
    assert "nothing_to_cut" in outcome.err
    assert outcome.out == ""
    assert lacunar("cutting-plan", "no such file").code == 1
