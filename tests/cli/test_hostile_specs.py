"""Specs made to break the service: each is refused in words, quickly, and nothing is written."""

import json

import pytest

from tests.cli.command import lacunar

ROOM = {"length": "20'", "width": "15'", "height": "9'"}


def spec(**more):
    return json.dumps({"room": ROOM, **more}).encode()


def room(**more):
    return json.dumps({"room": {**ROOM, **more}}).encode()


def text_room(**more):
    """A room whose values are spliced in as raw JSON text."""
    members = {**{name: json.dumps(value) for name, value in ROOM.items()}, **more}
    inside = ", ".join(f'"{name}": {value}' for name, value in members.items())
    return f'{{"room": {{{inside}}}}}'.encode()


HOSTILE = {
    "nothing": b"",
    "not json": b"room: 20 x 15",
    "not utf-8": b'{"name": "\xff\xfe"}',
    "null": b"null",
    "a list": b"[" + spec() + b"]",
    "NaN": text_room(length="NaN"),
    "infinity": text_room(length="-Infinity"),
    "1e308": text_room(length="1e308"),
    "an exponent of a million": text_room(length="1e1000000"),
    "five thousand digits": text_room(length="9" * 5000),
    "negative": room(length=-240),
    "zero": room(width="0"),
    "ten megabytes": b'{"name": "' + b"x" * 10_000_000 + b'"}',
    "deep nesting of lists": b"[" * 100_000,
    "deep nesting of objects": b'{"room":' * 50_000,
    "control characters": spec(name="Den\u0001\u001b[2J"),
    "bidirectional override": spec(name="Den \u202e"),
    "duplicate names": b'{"room": {"length": 240, "length": 241, "width": 180, "height": 108}}',
    "a lone surrogate": b'{"room": {"length": 240, "width": 180, "height": 9}, "name": "\\ud800"}',
    "ten thousand coffers": spec(grid={"length": {"coffers": 100}, "width": {"coffers": 100}}),
    "a count beyond all counting": spec(grid={"length": {"coffers": 10**18}}),
    "a million zones": spec(grid={"length": {"coffers": [1] * 100_000}}),
    "words for numbers": room(length={"value": 240}, height=[], width=True),
    "ambiguous text": room(length="20'5/8\""),
    "unknown names": spec(rooms={}, grid={"length": {"coffer": 3}}),
    "beams wider than the room": spec(beams={"crosswise": {"width": "19'", "drop": "6"}}),
    "a path for a name of paper": spec(drawing={"paper": "../../etc/passwd"}),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_spec_is_refused_in_words_and_leaves_nothing(name, tmp_path):
    out = tmp_path / "out"
    outcome = lacunar("draw", "-", "--out", out, document=HOSTILE[name])
    assert outcome.code == 1, outcome.err
    assert "Traceback" not in outcome.err
    assert outcome.out == ""
    assert "fault" in outcome.err
    assert list(out.iterdir()) == []
    assert len(outcome.err) < 20_000


def test_all_faults_of_a_spec_come_at_once():
    document = spec(
        drawing={"paper": "napkin"},
        mark_to="1/7",
        grid={"length": {"coffers": 3, "parity": "even"}},
    )
    outcome = lacunar("check", "-", document=document)
    # Two that do not fit the schema, and one rule broken on the sound part.
    for pointer in ("/drawing/paper", "/mark_to", "/grid/length"):
        assert pointer in outcome.err
