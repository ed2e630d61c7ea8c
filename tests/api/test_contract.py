"""The published description against the running service, by generated requests.

The generator knows nothing of this project but the description: it makes requests that fit it and
requests that do not, and holds every answer against it. Settings: one worker and a fixed seed, so
that a failure comes again.
"""

import schemathesis
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from schemathesis.config import SchemathesisConfig

from tests.api.calling import app

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

schema = schemathesis.openapi.from_wsgi(
    "/openapi.json",
    app(),
    config=SchemathesisConfig.from_dict(
        {
            "seed": 1,
            "workers": 1,
            "generation": {"database": "none", "max-examples": 25, "mode": "all"},
            # What fits the schemas may still not be buildable.
            "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "422"]}},
            # Both take the same document, and making each of its boundary cases takes long.
            "operations": [
                {
                    "include-operation-id": "createDrawing",
                    "phases": {"coverage": {"enabled": False}},
                }
            ],
        }
    ),
)


@schema.parametrize()
@settings(
    max_examples=25,
    derandomize=True,
    database=None,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
def test_every_answer_is_as_published(case):
    case.call_and_validate()
