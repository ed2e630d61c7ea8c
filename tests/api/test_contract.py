"""The published description against the running service, by generated requests.

The generator knows nothing of this project but the description: it makes requests that fit it and
requests that do not, and holds every answer against it. Settings: one worker and a fixed seed, so
that a failure comes again.
"""

import schemathesis
from hypothesis import strategies as st
from schemathesis.config import SchemathesisConfig
from schemathesis.engine import from_schema
from schemathesis.engine.events import FatalError, NonFatalError, ScenarioFinished

from tests.api.calling import app

EXAMPLES = 25

WHOLE = st.integers(1, 400).map(str)
TAPE = st.sampled_from(["", " 1/2", " 3/16", "-5/64"])
LENGTHS = st.one_of(
    st.builds("{}{}".format, WHOLE, TAPE),
    st.builds("{}'-{} {}\"".format, st.integers(1, 40), st.integers(0, 11), st.just("1/16")),
    st.builds("{} mm".format, st.integers(1, 9000)),
    st.sampled_from(["48 60/16", "1'5/8\"", "x", " ", "0", "9e9"]),
)
STEPS = st.sampled_from(["1/8", "1/16", "1/32", "1/64", "1 mm", "0.5 mm", "1/7"])
STOCK = st.sampled_from(["1x4", "1x8", "5/4x6", "2x4", "4/4", "23/32 sheet", "9x9", "oak"])

schemathesis.openapi.format("length", LENGTHS)
schemathesis.openapi.format("marking-step", STEPS)
schemathesis.openapi.format("stock-name", STOCK)

CONFIG = SchemathesisConfig.from_dict(
    {
        "seed": 1,
        "workers": 1,
        # How long a machine takes to invent a request says nothing about the answer.
        "suppress-health-check": ["too_slow"],
        "generation": {"database": "none", "max-examples": EXAMPLES, "mode": "all"},
        # What fits the schemas may still not be buildable, or be about another grid.
        "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "409", "422"]}},
        # Ceilings, and lists of stock, have more boundary cases than are worth their time.
        "operations": [
            {
                "include-operation-id": "createLayout",
                "phases": {"coverage": {"enabled": False}},
            },
            {
                "include-operation-id": "createTakeOff",
                "phases": {"coverage": {"enabled": False}},
                "generation": {"max-examples": 10},
            },
            # A whole set of sheets takes a second.
            {
                "include-operation-id": "createDrawing",
                "phases": {"coverage": {"enabled": False}, "examples": {"enabled": False}},
                "generation": {"max-examples": 8},
            },
            # The same document once more, with few values of its own beside it.
            {
                "include-operation-id": "createOptions",
                "phases": {"coverage": {"enabled": False}, "examples": {"enabled": False}},
                "generation": {"max-examples": 3},
            },
            # Lists of objects have more boundary cases than are worth their time; their own tests
            # ask for every example.
            {
                "include-operation-id": [
                    *("createMaterialList", "createCuttingPlan", "createEstimate"),
                ],
                "phases": {"coverage": {"enabled": False}, "examples": {"enabled": False}},
                "generation": {"max-examples": 6},
            },
            # With on_error=text a refusal is a 200 on purpose; another test holds that.
            {
                "include-operation-id": ["divideRun", "listStock", "setSaw"],
                "parameters": {"on_error": "status"},
            },
        ],
    }
)


def failures_of(event):
    """What one scenario found, a line to each failed check, with how to ask for it again."""
    for checks in event.recorder.checks.values():
        for check in checks:
            if check.failure_info is not None:
                failure = check.failure_info
                yield f"{check.name}: {failure.failure.message}\n{failure.code_sample}"


def labels(document):
    """Every operation of a description, such as `GET /v1/stock`."""
    for path, operations in document["paths"].items():
        yield from (f"{method.upper()} {path}" for method in operations)


def test_every_answer_is_as_published():
    published = schemathesis.openapi.from_wsgi("/openapi.json", app(), config=CONFIG)
    found, seen = [], set()
    for event in from_schema(published).execute():
        if isinstance(event, ScenarioFinished):
            seen.add((event.phase.value, event.recorder.label))
            found.extend(failures_of(event))
        elif isinstance(event, NonFatalError | FatalError):
            found.append(str(event))
    assert not found, "\n\n".join(found)
    # The generator leaves out the address the description itself is at.
    asked = {label for phase, label in seen if phase == "fuzzing"}
    assert asked == {label for label in labels(published.raw_schema) if "openapi" not in label}
