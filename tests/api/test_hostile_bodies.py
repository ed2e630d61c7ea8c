"""Ten thousand documents made to break the service, the same ones on every run.

Each is an example, spoiled in its text or in its values. Whatever it is, the answer is a documented
one in bounded time and memory.
"""

import copy
import gc
import json
import random
import time
from pathlib import Path

from tests.api.calling import CEILINGS, client

BODIES = 10_000
WARM_UP = 2_000
DOCUMENTED = {200, 400, 409, 413, 422}
SLOWEST = 5.0  # seconds; a whole ceiling of the largest size takes well under one
MOST_GROWTH = 32 * 2**20  # bytes, once everything is loaded

HOSTILE_VALUES = [
    None,
    True,
    [],
    {},
    "",
    " ",
    0,
    -1,
    10**18,
    10**63,
    1e-30,
    1e29,
    0.1 + 0.2,
    "9" * 40,
    "1/0",
    "1e9999999",
    "-5",
    "NaN",
    "12'-0 3/16\"" * 3,
    "\u202e12",
    "\x00",
    "\U0001f984" * 8,
    "1x8",
    "half",
    "=1+1",
    "../../etc/passwd",
    "<script>alert(1)</script>",
    "%s%n{0}",
    ["1"] * 61,
    [[[[[[]]]]]],
    {"soffit": {"soffit": "1"}},
    {"nominal": "4/4", "width": -1},
    "a" * 5000,
]
HOSTILE_TEXT = [
    b"NaN",
    b"-Infinity",
    b"1e999999999",
    b"9" * 400,
    b"\\ud800",
    b"\xff\xfe",
    b"\x00",
    b"[" * 50,
    b'{"a":' * 40,
    b'"room":{},',
    b"/*",
    b"\xe2\x80\xa8",
    b"'",
]


def places(value, path=()):
    """Every place in a JSON value."""
    yield path
    inside = value.items() if isinstance(value, dict) else ()
    if isinstance(value, list):
        inside = enumerate(value)
    for step, each in inside:
        yield from places(each, (*path, step))


def spoil_values(chance, spec):
    """Put hostile values, and names that are not known, at a few places."""
    spoiled = copy.deepcopy(spec)
    for _ in range(chance.randint(1, 3)):
        path = chance.choice([path for path in places(spoiled) if path])
        parent = spoiled
        for step in path[:-1]:
            parent = parent[step]
        if chance.random() < 0.2 and isinstance(parent, dict):
            parent[chance.choice(["length", "x" * 70, "\u202e", "room"])] = parent.pop(path[-1])
        else:
            # A copy: what is put in may be spoiled in its turn.
            parent[path[-1]] = copy.deepcopy(chance.choice(HOSTILE_VALUES))
    return json.dumps(spoiled).encode()


def spoil_text(chance, document):
    """Cut, double, exchange or insert bytes at a few places."""
    text = bytearray(document)
    for _ in range(chance.randint(1, 4)):
        at, end = sorted(chance.randrange(len(text) + 1) for _ in range(2))
        match chance.randrange(5):
            case 0:
                del text[at : min(end, at + 20)]
            case 1:
                text[at:at] = text[at:end]
            case 2:
                text[at : at + 1] = bytes([chance.randrange(256)])
            case 3:
                text[at:at] = chance.choice(HOSTILE_TEXT)
            case 4:
                del text[at:]
    return bytes(text)


def bodies():
    """The documents, from a fixed seed."""
    chance = random.Random(20_260_302)
    examples = [json.loads(path.read_text()) for path in CEILINGS]
    for _ in range(BODIES):
        spec = chance.choice(examples)
        if chance.random() < 0.5:
            yield spoil_values(chance, spec)
        else:
            yield spoil_text(chance, json.dumps(spec).encode())


def resident():
    """Memory this process holds [bytes]."""
    gc.collect()
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * 4096


def test_ten_thousand_hostile_documents_get_documented_answers():
    service, statuses, held, slowest = client(), {}, 0, 0.0
    for number, body in enumerate(bodies()):
        # Drawing takes the same reader and much longer, so it gets some of them only.
        path = "/v1/drawings?format=zip" if number % 500 == 0 else "/v1/layouts"
        started = time.perf_counter()
        answer = service.post(path, data=body, content_type="application/json")
        slowest = max(slowest, time.perf_counter() - started)
        statuses[answer.status_code] = statuses.get(answer.status_code, 0) + 1
        assert answer.status_code in DOCUMENTED, body
        assert b"Traceback" not in answer.data, body
        if answer.status_code != 200:
            assert answer.mimetype == "application/problem+json"
            assert answer.json["errors"], body
        if number == WARM_UP:
            held = resident()
    assert sum(statuses.values()) == BODIES
    # Neither all refused unread, nor all taken: the spoiling reaches every stage.
    assert min(statuses[200], statuses[400], statuses[422]) > BODIES // 250, statuses
    assert slowest < SLOWEST
    assert resident() - held < MOST_GROWTH
