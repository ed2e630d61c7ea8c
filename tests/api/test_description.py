"""The published description: it is what the service is, it can be relied on, and it tells all."""

import importlib.util
import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from openapi_spec_validator import validate

from lacunar.api.app import description
from lacunar.exchange.answer_schema import RECORDS
from lacunar.exchange.answer_words import ALL_WORDS
from tests.api.calling import CEILINGS, client, post

OPENAPI = Path(__file__).parents[2] / "openapi"

spec = importlib.util.spec_from_file_location("write", OPENAPI / "write.py")
write = importlib.util.module_from_spec(spec)
spec.loader.exec_module(write)

DOCUMENT = description()
SCHEMAS = DOCUMENT["components"]["schemas"]


def test_the_file_is_what_the_service_says_of_itself():
    checked_in = write.DESCRIPTION.read_text(encoding="ascii")
    assert checked_in == write.description_text(DOCUMENT), "run python3 openapi/write.py"
    assert client().get("/openapi.json").json == json.loads(checked_in)


def test_nothing_that_was_published_disappears():
    listed = write.FIELDS.read_text(encoding="utf-8").splitlines()
    assert len(listed) > 500
    gone = sorted(set(listed) - set(write.published(DOCUMENT)))
    assert gone == [], "a published field was taken back: that needs a new version"


def test_everything_published_is_listed():
    listed = set(write.FIELDS.read_text(encoding="utf-8").splitlines())
    assert sorted(set(write.published(DOCUMENT)) - listed) == [], "run python3 openapi/write.py"


def test_a_field_that_disappears_is_noticed():
    shortened = json.loads(json.dumps(DOCUMENT))
    del shortened["components"]["schemas"]["Coffer"]["properties"]["row"]
    assert set(write.published(DOCUMENT)) - set(write.published(shortened)) == {"Coffer.row"}


def test_it_is_openapi():
    validate(DOCUMENT)


def properties(place, schema):
    """Every property in a schema, with where it stands."""
    for name, inside in schema.get("properties", {}).items():
        yield f"{place}.{name}", inside
        yield from properties(f"{place}.{name}", inside)
    for choice in (*schema.get("oneOf", ()), *schema.get("anyOf", ())):
        yield from properties(place, choice)
    if isinstance(schema.get("items"), dict):
        yield from properties(place, schema["items"])


def every_property():
    for name, schema in SCHEMAS.items():
        yield from properties(name, schema)


def lengths():
    return ("Length", "LengthFigure", "LengthGiven", "EndPositions")


def test_every_field_and_parameter_is_described():
    undescribed = [place for place, schema in every_property() if not schema.get("description")]
    for path, operations in DOCUMENT["paths"].items():
        for operation in operations.values():
            undescribed += [
                f"{path} {each['name']}"
                for each in operation["parameters"]
                if not each.get("description")
            ]
    assert undescribed == []


def test_every_length_says_that_it_is_one():
    named = {f"#/components/schemas/{name}" for name in lengths()}

    def is_length(schema):
        choices = (schema, *schema.get("anyOf", ()), schema.get("items", {}))
        return any(choice.get("$ref") in named for choice in choices)

    mixed = ("Assumption.value", "figures")
    silent = [
        place
        for place, schema in every_property()
        if is_length(schema)
        and "[length]" not in schema["description"]
        and not place.endswith(mixed)
        and place != "RunLayout.span"
    ]
    assert silent == []


def test_the_words_are_for_fields_there_are():
    for record in RECORDS:
        told = set(ALL_WORDS[record.__name__])
        assert told == set(SCHEMAS.get(record.__name__, {"properties": told})["properties"])
    assert {record.__name__ for record in RECORDS} == set(ALL_WORDS)


def closed(schema):
    """A schema that lets nothing through that it does not name."""
    if isinstance(schema, list):
        return [closed(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    shut = {name: closed(each) for name, each in schema.items()}
    if isinstance(shut.get("properties"), dict) and "type" in shut:
        shut.setdefault("additionalProperties", False)
    return shut


def misfits(name, value):
    """What of an answer is not as published, undescribed names included."""
    root = {"$ref": f"#/components/schemas/{name}", "components": closed(DOCUMENT["components"])}
    return [error.message for error in Draft202012Validator(root).iter_errors(value)]


@pytest.mark.parametrize("path", CEILINGS, ids=lambda path: path.stem)
@pytest.mark.parametrize("query", ["", "?trace=1"])
def test_a_layout_has_the_described_fields_and_no_others(path, query):
    assert misfits("Layout", post(f"/v1/layouts{query}", path.read_bytes()).json) == []


@pytest.mark.parametrize("path", CEILINGS, ids=lambda path: path.stem)
def test_a_take_off_has_the_described_fields_and_no_others(path):
    pool = b'{"ceilings": [%s, %s]}' % (path.read_bytes(), CEILINGS[0].read_bytes())
    assert misfits("TakeOff", post("/v1/take-offs?trace=1", pool).json) == []


@pytest.mark.parametrize(
    "query",
    [
        "span=144 3/16&beam_width=6&coffers=3&trace=1",
        "span=6 m&beam_width=120&wished_opening=900&units=mm&start_soffit=300&start=half",
        "span=20 ft&beam_width=5&weights=1,3/2,1&run=width&end=none",
    ],
)
def test_a_division_has_the_described_fields_and_no_others(query):
    assert misfits("Division", client().get(f"/v1/division?{query}").json) == []


@pytest.mark.parametrize(
    "query",
    [
        "corner=90&spring_from_wall=38",
        "corner=270&spring_from_wall=45&face=3 1/4&trace=1",
        "corner=180&spring_from_wall=52&face=80&units=mm",
        "corner=135&spring_from_wall=38&face=4 5/8&slope=20&rake=falls&fence_height=4&trace=1",
    ],
)
def test_saw_settings_have_the_described_fields_and_no_others(query):
    assert misfits("SawAnswer", client().get(f"/v1/saw-settings?{query}").json) == []


@pytest.mark.parametrize(
    ("path", "name"),
    [
        ("/v1/stock", "StockList"),
        ("/v1/problems", "ProblemCodes"),
        ("/v1/problems/not_json", "ProblemMeaning"),
        ("/v1/division", "Problem"),
        ("/healthz", "Alive"),
        ("/readyz", "Ready"),
    ],
)
def test_other_answers_have_the_described_fields_and_no_others(path, name):
    assert misfits(name, client().get(path).json) == []


def documents():
    for path, operations in DOCUMENT["paths"].items():
        for operation in operations.values():
            content = operation.get("requestBody", {}).get("content", {})
            taken = content.get("application/json", {})
            for name, example in taken.get("examples", {}).items():
                schema = taken["schema"]["$ref"].rpartition("/")[2]
                yield pytest.param(path, schema, example["value"], id=f"{path}-{name}")


@pytest.mark.parametrize(("path", "schema", "example"), list(documents()))
def test_every_example_runs_and_fits(path, schema, example):
    assert misfits(schema, example) == []
    assert post(path, json.dumps(example).encode()).status_code == 200


def needed():
    for place, name in [
        ("", "room"),
        ("/room", "length"),
        ("/room", "width"),
        *(("/room/members/0", name) for name in ("on", "center", "width", "drop")),
        ("/grid/length/fixed_beams/0", "center"),
        ("/flat_mouldings/0", "thickness"),
        ("/flat_mouldings/0", "width"),
    ]:
        yield pytest.param(place, name, id=f"{place}/{name}")


@pytest.mark.parametrize(("place", "name"), list(needed()))
def test_what_is_published_as_required_is_required(place, name):
    member = {"on": "length", "center": 120, "width": 4, "drop": 6}
    whole = {
        "room": {"length": 240, "width": 180, "height": 108, "members": [member]},
        "grid": {"length": {"fixed_beams": [{"center": 60}]}},
        "flat_mouldings": [{"thickness": 0.5, "width": 3}],
    }
    inside = whole
    for step in [int(step) if step.isdigit() else step for step in place.split("/")[1:]]:
        inside = inside[step]
    del inside[name]
    answer = post("/v1/layouts", json.dumps(whole).encode())
    assert answer.status_code == 400
    pointers = [error["pointer"] for error in answer.json["errors"]]
    assert any(pointer.startswith(f"{place}/{name}") for pointer in pointers)
    assert misfits("CeilingSpec", whole) != []
