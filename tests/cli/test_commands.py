"""The commands as a person or a program at a shell meets them."""

import json
import os
from pathlib import Path

import pypdfium2
import pytest

from lacunar import __version__
from lacunar.drawing.paper import PAPER_SIZES
from lacunar.model.drawing import Paper
from tests.cli.command import lacunar, lacunar_process

CEILINGS = sorted((Path(__file__).parents[2] / "examples" / "ceilings").glob("*.json"))
THREE_NUMBERS = (
    b'{"room": {"length": "15\' 2 1/2\\"", "width": "12\' 4\\"", "height": "8\' 10\\""}}'
)


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
    assumed = {assumption["pointer"] for assumption in answer["assumptions"]}
    assert {"/units", "/beams/crosswise/sides", "/grid/length/wished_opening"} <= assumed
    assert len(answer["digest"]) == 64
    assert answer["engine"]["lacunar"] == __version__


def test_a_traced_layout_names_rule_formula_and_operands():
    outcome = lacunar("layout", "-", "--trace", document=THREE_NUMBERS)
    opening = json.loads(outcome.out)["runs"]["length"]["zones"][0]["openings"][0]
    assert {"rule", "formula", "operands"} <= set(opening)


def test_explain_says_the_sums_in_words():
    outcome = lacunar("layout", "-", "--explain", document=THREE_NUMBERS)
    assert outcome.code == 0
    # 15'-2 1/2" less two half beams of 3 1/2" is 175 1/2"; less two beams of 7", 161 1/2".
    assert "Clear total of zone 1 of the length run" in outcome.out
    assert "= 13'-5 1/2\"" in outcome.out


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


def test_the_licence_of_the_typeface_is_shown():
    outcome = lacunar("--font-license")
    assert outcome.code == 0
    assert "SIL OPEN FONT LICENSE" in outcome.out.upper()


@pytest.mark.parametrize("ceiling", CEILINGS[::3], ids=lambda path: path.stem)
def test_the_pages_of_an_example_are_the_paper_it_names(ceiling, tmp_path):
    assert lacunar("draw", ceiling, "--out", tmp_path, "--format", "pdf", "--quiet").code == 0
    size = PAPER_SIZES[Paper(json.loads(ceiling.read_text())["drawing"]["paper"])]
    with pypdfium2.PdfDocument(tmp_path / f"{ceiling.stem}.pdf") as document:
        for page in document:
            width, height = (points * 25.4 / 72 for points in page.get_size())
            assert width == pytest.approx(size.width, abs=0.1)
            assert height == pytest.approx(size.height, abs=0.1)


def test_without_cairo_the_svg_sheets_are_drawn_and_the_lack_is_told(tmp_path):
    # cairocffi asks ctypes and cffi for the library; where neither finds it, it is missing.
    (tmp_path / "sitecustomize.py").write_text(
        "import ctypes.util, sys\n"
        "ctypes.util.find_library = lambda name: None\n"
        "import cffi\n"
        "def dlopen(self, name, flags=0):\n"
        "    raise OSError('cannot load library ' + str(name))\n"
        "cffi.FFI.dlopen = dlopen\n"
    )
    path = os.pathsep.join(filter(None, [str(tmp_path), os.environ.get("PYTHONPATH")]))
    out = tmp_path / "out"
    outcome = lacunar_process(
        "draw", "-", "--out", out, document=THREE_NUMBERS, environment={"PYTHONPATH": path}
    )
    assert outcome.code == 3, outcome.err
    assert "libcairo2" in outcome.err
    assert "Traceback" not in outcome.err
    assert {file.suffix for file in out.iterdir()} == {".svg"}


def test_help_teaches_the_exit_codes():
    assert "exit codes" in lacunar("--help").out
    for command in ("draw", "layout", "check"):
        assert "examples/ceilings" in lacunar(command, "--help").out


def test_specs_that_would_overwrite_each_others_sheets_are_refused(tmp_path):
    for folder, name in (("one", "den.json"), ("two", "DEN.json")):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / name).write_bytes(THREE_NUMBERS)
    specs = (tmp_path / "one" / "den.json", tmp_path / "two" / "DEN.json")
    outcome = lacunar("draw", *specs, "--out", tmp_path / "out")
    assert outcome.code == 2
    assert str(specs[0]) in outcome.err
    assert str(specs[1]) in outcome.err
    assert not (tmp_path / "out").exists()


def test_a_sheet_left_over_from_an_earlier_drawing_is_told_and_not_touched(tmp_path):
    left = tmp_path / "ceiling-Z-101-9.svg"
    other = tmp_path / "ceiling-Z-101-note.svg"
    for path in (left, other):
        path.write_text("from before")
    outcome = lacunar("draw", "-", "--out", tmp_path, "--quiet", document=THREE_NUMBERS)
    assert outcome.code == 0
    assert [line for line in outcome.err.splitlines() if "left over" in line] == [
        f"{left} is left over from an earlier drawing and no part of this one."
    ]
    assert left.read_text() == "from before"


def test_any_letter_is_printed_whatever_the_locale(tmp_path):
    spec = tmp_path / "Küche.json"
    spec.write_text('{"name": "Küche", "room": {"length": 192, "width": 144, "height": 108}}')
    plain = {"LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    outcome = lacunar_process("layout", spec, environment=plain)
    assert (outcome.code, outcome.err) == (0, "")
    assert json.loads(outcome.out)["ceiling"]["name"] == "Küche"
    outcome = lacunar_process("draw", spec, "--out", tmp_path, "--quiet", environment=plain)
    assert (outcome.code, outcome.err) == (0, "")
    assert str(tmp_path / "Küche.pdf") in outcome.out


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
def test_a_full_disk_is_told_in_a_sentence():
    with Path("/dev/full").open("w") as full:
        outcome = lacunar_process("layout", CEILINGS[0], out=full)
    assert outcome.code == 3
    assert outcome.err.endswith("what it must: No space left on device.\n")


def test_a_reader_that_has_seen_enough_is_no_fault(tmp_path):
    reading, writing = os.pipe()
    os.close(reading)
    with os.fdopen(writing, "w") as pipe:
        outcome = lacunar_process("draw", CEILINGS[0], "--out", tmp_path, "--quiet", out=pipe)
    assert (outcome.code, outcome.err) == (0, "")
    assert (tmp_path / f"{CEILINGS[0].stem}.pdf").exists()
