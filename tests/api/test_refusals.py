"""What is refused, with which status, and in which words."""

import json

import pytest

from lacunar.api import problems
from lacunar.api.problem_catalogue import PROBLEM_KINDS
from lacunar.api.resources.problems import codes
from lacunar.model.fault_catalogue import FAULT_CODES
from tests.api.calling import CEILINGS, client, on_few_sheets, post

DIVISION = "/v1/division?span=240&beam_width=5.5&coffers=4"
MUSIC_ROOM = on_few_sheets(next(path for path in CEILINGS if path.stem == "music_room"))


def room(**more):
    spec = {"room": {"length": 240, "width": 180, "height": 108}, **more}
    return json.dumps(spec).encode()


REFUSALS = [
    ("POST", "/v1/layouts", b"{", 400, "not_json", ""),
    ("POST", "/v1/layouts", b'{"room": {"length": NaN}}', 400, "not_json", "/room/length"),
    ("POST", "/v1/layouts", b'{"room": {}, "room": {}}', 400, "name_doubled", "/room"),
    ("POST", "/v1/layouts", b'{"rooms": {}}', 400, "name_unknown", "/rooms"),
    ("POST", "/v1/layouts", room(units="inch"), 400, "unknown_word", "/units"),
    ("POST", "/v1/layouts", room(name=7), 400, "wrong_type", "/name"),
    ("POST", "/v1/layouts", b"[" * 100_000, 400, "document_too_deep", ""),
    (
        "POST",
        "/v1/layouts",
        room(grid={"length": {"coffers": 50}}),
        422,
        "no_room_left",
        "/grid/length/coffers",
    ),
    *(
        (
            "POST",
            path,
            room(measured_openings={"grid": "0000000000", "coffers": [{"coffer": "Z9"}]}),
            409,
            "measured_in_other_grid",
            "/measured_openings/grid",
        )
        for path in ("/v1/layouts", "/v1/drawings")
    ),
    (
        "POST",
        "/v1/layouts",
        room(measured_openings={"coffers": []}),
        400,
        "name_missing",
        "/measured_openings/grid",
    ),
    ("POST", "/v1/layouts", room(mark_to="1/7"), 422, "step_not_known", "/mark_to"),
    ("POST", "/v1/drawings?sheets=Z-999", room(), 422, "sheet_not_in_set", "/sheets"),
    ("POST", "/v1/drawings?format=svg", MUSIC_ROOM, 422, "more_sheets_than_one", "/sheets"),
    ("POST", "/v1/drawings?format=png", MUSIC_ROOM, 422, "more_sheets_than_one", "/sheets"),
    ("POST", "/v1/drawings?format=dxf", MUSIC_ROOM, 422, "more_sheets_than_one", "/sheets"),
    ("POST", "/v1/drawings?format=png&dpi=601", MUSIC_ROOM, 400, "dpi_out_of_bounds", "/dpi"),
    ("POST", "/v1/drawings?dpi=19", MUSIC_ROOM, 400, "dpi_out_of_bounds", "/dpi"),
    ("POST", "/v1/drawings?dpi=fine", MUSIC_ROOM, 400, "wrong_type", "/dpi"),
    (
        *("POST", "/v1/drawings?format=png&sheets=Z-101&dpi=500", MUSIC_ROOM),
        *(422, "picture_too_large", "/dpi"),
    ),
    ("POST", "/v1/drawings?format=gif", room(), 400, "unknown_word", "/format"),
    ("POST", "/v1/layouts?trace=1&trace=1", room(), 400, "name_doubled", "/trace"),
    ("GET", "/v1/division", None, 400, "name_missing", "/span"),
    ("GET", DIVISION + "&colour=red", None, 400, "name_unknown", "/colour"),
    ("GET", "/v1/division?span=20'5/8%22&beam_width=5", None, 422, "length_not_readable", "/span"),
    ("GET", "/v1/division?span=240&beam_width=80&coffers=4", None, 422, "no_room_left", "/coffers"),
    (
        "GET",
        "/v1/division?span=240&beam_width=0.1",
        None,
        422,
        "length_out_of_bounds",
        "/beam_width",
    ),
    ("GET", DIVISION + "&start_soffit=9999", None, 422, "length_out_of_bounds", "/start_soffit"),
    ("GET", DIVISION + "&weights=1,0,1,1", None, 422, "weight_not_a_share", "/weights"),
    ("GET", DIVISION + "&field=near&number=9", None, 422, "number_not_there", "/number"),
    ("GET", "/v1/stock?name=oak", None, 422, "stock_name_unknown", "/name"),
    ("GET", "/v1/stock?field=width", None, 422, "value_not_one", "/name"),
    ("GET", "/v1/stock?name=4/4&field=width", None, 422, "value_not_one", "/field"),
]


@pytest.mark.parametrize(
    "case", REFUSALS, ids=[f"{case[4]}-{number}" for number, case in enumerate(REFUSALS)]
)
def test_a_refusal_names_code_place_and_remedy(case):
    method, path, document, status, code, pointer = case
    answer = client().open(path, method=method, data=document, content_type="application/json")
    assert (answer.status_code, answer.mimetype) == (status, "application/problem+json")
    assert answer.headers["Cache-Control"] == "no-store"
    assert "ETag" not in answer.headers
    problem = answer.json
    assert problem["status"] == status
    assert problem["type"] == f"/v1/problems/{problem['code']}"
    found = {(error["code"], error["pointer"]): error for error in problem["errors"]}
    assert (code, pointer) in found
    error = found[code, pointer]
    in_query = method == "GET" or "?" in path
    assert error["in"] == ("query" if in_query else "body")
    assert error["remedy"].endswith(".")
    assert client().get(error["type"]).status_code == 200


def test_all_faults_come_at_once():
    document = room(mark_to="1/7", drawing={"paper": "napkin"}, beams={"through": 3})
    pointers = {error["pointer"] for error in post("/v1/layouts", document).json["errors"]}
    assert {"/mark_to", "/drawing/paper", "/beams/through"} <= pointers


def test_figures_are_in_the_units_of_the_spec():
    document = room(units="mm", grid={"length": {"coffers": 9}})
    (error,) = [
        each
        for each in post("/v1/layouts", document).json["errors"]
        if each["pointer"] == "/room/length"
    ]
    assert error["figures"]["given"]["text"] == "240 mm"


def test_openings_measured_in_another_grid_are_told_with_their_orphans():
    measured = {"grid": "0000000000", "coffers": [{"coffer": "A1"}, {"coffer": "Z9"}]}
    problem = post("/v1/layouts", room(measured_openings=measured)).json
    assert (problem["code"], problem["status"]) == ("conflict", 409)
    [error] = problem["errors"]
    grid = post("/v1/layouts", room()).json["grid_id"]
    figures = {"measured_in": "0000000000", "grid": grid, "measured": "A1, Z9", "orphans": "Z9"}
    assert error["figures"] == figures


def test_every_code_is_explained():
    listed = client().get("/v1/problems").json["codes"]
    assert set(listed) == set(codes()) == FAULT_CODES.keys() | PROBLEM_KINDS.keys()
    for code in listed:
        told = client().get(f"/v1/problems/{code}").json
        assert told["code"] == code
        assert told["meaning"]
        assert told["remedy"]


def test_the_codes_told_as_misfits_are_known():
    assert FAULT_CODES.keys() >= problems.MISFITS | problems.CONFLICTS
