"""`lacunar options` as a shell meets it."""

import json
import os
import signal
import subprocess
import sys
from pathlib import Path

import pypdfium2

from tests.cli.command import lacunar

EXAMPLE = Path(__file__).parents[2] / "examples" / "options" / "family_room.json"
PRICES = EXAMPLE.parents[1] / "prices" / "invented.json"
DEN = b'{"room": {"length": "15 ft", "width": "12 ft", "height": "9 ft"}}'


def test_options_as_json_alone():
    outcome = lacunar("options", EXAMPLE, "--quiet")
    assert (outcome.code, outcome.err) == (0, "")
    told = json.loads(outcome.out)
    assert told["counts"]["worth_considering"] == len(told["options"]) > 1
    assert told["nudges"]["option"] == 1


def test_options_in_words_and_on_a_sheet(tmp_path):
    out = tmp_path / "options.pdf"
    outcome = lacunar("options", "-", "--explain", "--draw", out, document=DEN)
    assert outcome.code == 0, outcome.err
    assert "Option 1: " in outcome.out
    assert "Not searched: " in outcome.out
    assert str(out) in outcome.err
    assert "OPTION 1" in pypdfium2.PdfDocument(out)[0].get_textpage().get_text_range()


def test_nudges_of_an_option():
    outcome = lacunar("options", "-", "--explain", "--nudges-of", "1", document=DEN)
    assert outcome.code == 0, outcome.err
    assert "Small changes of option 1: 14 tried." in outcome.out


def test_options_with_a_price_list(tmp_path):
    den = tmp_path / "den.json"
    den.write_text(json.dumps({"ceiling": json.loads(DEN), "choices": {"most_laid_out": 4}}))
    out = tmp_path / "options.pdf"
    outcome = lacunar("options", den, "--prices", PRICES, "--explain", "--draw", out)
    assert outcome.code == 0, outcome.err
    assert "To be paid: USD " in outcome.out
    assert "Cost, USD" in pypdfium2.PdfDocument(out)[0].get_textpage().get_text_range()


def test_faults_of_a_price_list_name_it(tmp_path):
    wrong = tmp_path / "prices.json"
    wrong.write_text('{"currency": "USD", "markup": "0.1", "margin": "0.1"}')
    stock = tmp_path / "stock.json"
    stock.write_text('{"kerf": "1/8"')
    outcome = lacunar("options", "-", "--prices", wrong, document=DEN)
    assert (outcome.code, outcome.out) == (1, "")
    assert f"{wrong}/margin" in outcome.err
    outcome = lacunar("options", "-", "--prices", wrong, "--stock", stock, document=DEN)
    assert outcome.code == 1
    assert str(stock) in outcome.err


def test_faults_are_told_and_nothing_else():
    outcome = lacunar("options", "-", "--nudges-of", "99", document=DEN)
    assert (outcome.code, outcome.out) == (1, "")
    assert "[choice_out_of_bounds]" in outcome.err
    assert lacunar("options", "no such file").code == 1


def test_a_search_that_is_interrupted_tells_what_it_has(tmp_path):
    document = tmp_path / "hall.json"
    document.write_text(
        json.dumps(
            {
                # Large enough to be searched for several seconds, also where a machine is busy.
                "ceiling": {
                    "room": {"length": "36 ft", "width": "27 ft", "height": "10 ft"},
                    "crown": {"face": "3 1/4"},
                },
                "choices": {
                    "most_laid_out": 60,
                    "smallest_opening": "30",
                    "largest_opening": "60",
                },
            }
        )
    )
    command = [sys.executable, "-m", "lacunar.cli.main", "options", str(document)]
    # Whoever runs many tests at once may have told its processes to pass over interrupts.
    with subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    ) as running:
        assert running.stderr is not None
        assert b"10 of 43 options laid out" in running.stderr.readline()
        os.kill(running.pid, signal.SIGINT)
        out, err = running.communicate(timeout=60)
    assert running.returncode == 0
    assert b"Stopped" in err
    counts = json.loads(out)["counts"]
    assert counts["stopped"]
    assert 10 <= counts["laid_out"] < counts["to_lay_out"] == 43
