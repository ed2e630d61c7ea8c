"""Faults as programs and as people get them."""

import json

from lacunar.exchange.fault_json import fault_lines, fault_to_json
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from tests.exchange.documents import LEAST, faults_of, with_changes

STEP = Step.read("1/16", Units.INCH)


def test_a_fault_leaves_with_code_place_figures_and_remedy():
    (fault,) = faults_of(with_changes(LEAST, {"beams.crosswise.drop": "9' 1\""}))
    assert fault_to_json(fault, STEP) == {
        "code": "beam_reaches_floor",
        "title": "Beam reaches the floor",
        "pointer": "/beams/crosswise/drop",
        "message": "The beam hangs as low as the floor.",
        "figures": {
            "drop": {"exact": "109 in", "text": "9'-1\"", "in": 109, "mm": 2768.6},
            "height": {"exact": "108 in", "text": "9'-0\"", "in": 108, "mm": 2743.2},
        },
        "remedy": "Give its drop from the finished ceiling, not its height from the floor.",
    }


def test_a_person_reads_place_sentence_figures_and_remedy():
    (fault,) = faults_of(with_changes(LEAST, {"beams.crosswise.drop": "9' 1\""}))
    assert fault_lines(fault) == [
        "/beams/crosswise/drop: The beam hangs as low as the floor. [beam_reaches_floor]",
        "    drop 9'-1\" (2768.6 mm), height 9'-0\" (2743.2 mm)",
        "    Give its drop from the finished ceiling, not its height from the floor.",
    ]


def test_a_fault_without_figures_has_no_line_for_them():
    (fault,) = faults_of(with_changes(LEAST, {"grid.length.start": "soffit"}))
    assert len(fault_lines(fault)) == 2


def test_a_fault_of_the_whole_document_has_a_place_too():
    (fault,) = faults_of(b"[")
    assert fault_lines(fault)[0].startswith("the whole document: The document")
    assert fault_to_json(fault, STEP)["pointer"] == ""


def test_nothing_of_a_hostile_document_reaches_the_terminal_unescaped():
    hostile = {"name": "a\x1b[2J", "units": "\x1b]0;x\x07", "room": {"length": "\x9b31m"}}
    for fault in faults_of(hostile):
        assert all(line.isprintable() for line in fault_lines(fault))
        assert json.dumps(fault_to_json(fault, STEP)).isprintable()
    (fault,) = faults_of(b'{"room": {"a\\u001b": 1}}')
    assert all(line.isprintable() for line in fault_lines(fault))
