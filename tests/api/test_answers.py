"""Answers as a client meets them: statuses, media types, validators, headers."""

import io
import json
import re
import zipfile

import pypdfium2
import pytest

from lacunar.api import problems
from lacunar.api.engine_names import ENGINE_TEXT
from lacunar.drawing.painters.unavailable import CairoMissing
from lacunar.model.limits import DOCUMENT_BYTES
from lacunar.workflow import download
from lacunar.workflow.prepare import prepare
from tests.api.calling import CEILINGS, THREE_NUMBERS, app, client, on_few_sheets, post

JSON = "application/json"
DIVISION = "/v1/division?span=240&beam_width=5.5&coffers=4"
MUSIC_ROOM = on_few_sheets(next(path for path in CEILINGS if path.stem == "music_room"))


def room(**more):
    spec = {"room": {"length": 240, "width": 180, "height": 108}, **more}
    return json.dumps(spec).encode()


def test_a_layout_is_what_the_command_line_prints():
    answer = post("/v1/layouts?trace=0", MUSIC_ROOM)
    assert answer.status_code == 200
    assert answer.json["digest"] == prepare(MUSIC_ROOM).digest
    # 20'-3 1/2" is 243.5 in.
    assert answer.json["runs"]["length"]["span"]["at_start"]["in"] == 243.5
    assert "rule" not in answer.json["runs"]["length"]["span"]["at_start"]


def test_a_trace_gives_each_figure_its_reason():
    opening = post("/v1/layouts?trace=1", MUSIC_ROOM).json["runs"]["width"]["zones"][0]["openings"]
    assert {"rule", "formula", "operands"} <= set(opening[0])


def test_other_units_tell_the_same_ceiling():
    inches = post("/v1/layouts", MUSIC_ROOM).json
    metric = post("/v1/layouts?units=mm", MUSIC_ROOM).json
    assert metric["ceiling"]["mark_to"] == "1 mm"
    pairs = zip(inches["coffers"], metric["coffers"], strict=True)
    assert all(one["length"]["mm"] == other["length"]["mm"] for one, other in pairs)
    assert metric["coffers"][0]["length"]["text"].endswith(" mm")
    assert "/mark_to" in {assumed["pointer"] for assumed in metric["assumptions"]}


@pytest.mark.parametrize(
    ("query", "accept", "media", "start"),
    [
        ("", "*/*", "application/pdf", b"%PDF-"),
        ("?format=pdf", "application/json", "application/pdf", b"%PDF-"),
        ("?format=svg&sheets=Z-101", "*/*", "image/svg+xml", b"<?xml"),
        ("?sheets=Z-101", "image/svg+xml", "image/svg+xml", b"<?xml"),
        ("?format=png&sheets=Z-101&dpi=40", "*/*", "image/png", b"\x89PNG"),
        ("?sheets=Z-101&dpi=40", "image/png", "image/png", b"\x89PNG"),
        ("?format=dxf&sheets=Z-101", "*/*", "image/vnd.dxf", b"  0\nSECTION"),
        ("", "application/zip", "application/zip", b"PK"),
        ("", "text/html, application/pdf;q=0.5", "application/pdf", b"%PDF-"),
    ],
)
def test_sheets_come_as_asked_for(query, accept, media, start):
    answer = post(f"/v1/drawings{query}", MUSIC_ROOM, Accept=accept)
    assert (answer.status_code, answer.mimetype) == (200, media)
    assert answer.data.startswith(start)
    assert re.fullmatch(
        r'inline; filename="ceiling-[0-9a-f]{12}[-.\w]*"', answer.headers["Content-Disposition"]
    )


def test_an_archive_has_each_sheet_under_its_id_without_a_clock():
    archive = zipfile.ZipFile(io.BytesIO(post("/v1/drawings?format=zip", MUSIC_ROOM).data))
    assert archive.testzip() is None
    assert archive.namelist()[0] == "Z-101.svg"
    assert {entry.date_time for entry in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    single = post("/v1/drawings?format=svg&sheets=Z-101", MUSIC_ROOM).data
    assert archive.read("Z-101.svg") == single


def test_a_picture_has_as_many_pixels_to_the_inch_as_asked():
    """Tabloid is 17 x 11 in; a PNG tells its size in the bytes after its first chunk's name."""
    for query, across, down in (("", 2550, 1650), ("&dpi=100", 1700, 1100)):
        picture = post(f"/v1/drawings?format=png&sheets=Z-101{query}", MUSIC_ROOM).data
        size = [int.from_bytes(picture[at : at + 4], "big") for at in (16, 20)]
        assert size == pytest.approx([across, down], abs=1)


def test_the_index_tells_the_sheets_and_all_that_is_to_be_heeded():
    index = post("/v1/drawings", MUSIC_ROOM, Accept="application/json").json
    layout = post("/v1/layouts", MUSIC_ROOM).json
    drawn = client().post("/v1/drawings?format=zip", data=MUSIC_ROOM, content_type=JSON)
    archive = zipfile.ZipFile(io.BytesIO(drawn.data))
    assert json.loads(archive.read("index.json")) == index
    numbers = [sheet["number"] for sheet in index["sheets"]]
    assert sorted(archive.namelist()) == sorted(["index.json", *(f"{n}.svg" for n in numbers)])
    assert {key: index[key] for key in ("cautions", "assumptions", "digest", "engine")} == {
        key: layout[key] for key in ("cautions", "assumptions", "digest", "engine")
    }
    first = index["sheets"][0]
    sheet = archive.read("Z-101.svg").decode()
    assert f">{first['page']}<" in sheet
    assert f">{first['scale']}<".replace('"', "&quot;") in sheet or first["scale"] in sheet
    assert f'data-paper="{first["paper"]}"' in sheet


def test_the_index_has_cautions_that_only_drawing_brings_up():
    # The typeface letters Latin; this is a letter of Devanagari.
    index = post("/v1/drawings?format=json", room(name="Hall \u0905")).json
    codes = [caution["code"] for caution in index["cautions"]]
    assert codes[-1] == "letter_not_drawn"
    assert "letter_not_drawn" not in {
        caution["code"] for caution in post("/v1/layouts", room(name="Hall")).json["cautions"]
    }


def test_the_index_lists_the_sheets_that_are_asked_for():
    index = post("/v1/drawings?format=json&sheets=Z-101-2", MUSIC_ROOM).json
    assert [sheet["number"] for sheet in index["sheets"]] == ["Z-101-2"]


def test_other_paper_is_drawn_on_without_a_word_in_the_spec():
    asked = post("/v1/drawings?format=json&paper=arch_d", MUSIC_ROOM).json
    own = post("/v1/drawings?format=json", MUSIC_ROOM).json
    assert {sheet["paper"] for sheet in asked["sheets"]} == {"arch_d"}
    assert asked["digest"] == own["digest"]
    # ARCH D is 36 in x 24 in, 72 points to the inch.
    page = pypdfium2.PdfDocument(post("/v1/drawings?paper=arch_d", MUSIC_ROOM).data)[0]
    assert page.get_size() == pytest.approx((2592, 1728), abs=0.1)
    assumed = {
        each["pointer"] for each in post("/v1/drawings?format=json", room()).json["assumptions"]
    }
    given = post("/v1/drawings?format=json&paper=a3", room()).json["assumptions"]
    assert assumed - {each["pointer"] for each in given} == {"/drawing/paper"}


def test_chosen_sheets_are_the_pages_of_the_pdf():
    whole = pypdfium2.PdfDocument(post("/v1/drawings", MUSIC_ROOM).data)
    one = pypdfium2.PdfDocument(post("/v1/drawings?sheets=Z-101", MUSIC_ROOM).data)
    assert len(whole) > len(one) == 1


@pytest.mark.parametrize(
    "path",
    [
        "/v1/layouts",
        "/v1/drawings",
        "/v1/drawings?format=svg&sheets=Z-101",
        "/v1/drawings?format=zip",
    ],
)
def test_the_same_request_gets_the_same_bytes_and_validator(path):
    one, two = post(path, MUSIC_ROOM), post(path, MUSIC_ROOM)
    assert one.data == two.data
    assert one.headers["ETag"] == two.headers["ETag"]


def test_validators_are_strong_and_differ_with_what_the_bytes_depend_on():
    answers = [
        post("/v1/layouts", MUSIC_ROOM),
        post("/v1/layouts?trace=1", MUSIC_ROOM),
        post("/v1/layouts?units=mm", MUSIC_ROOM),
        post("/v1/layouts", THREE_NUMBERS),
        post("/v1/drawings?format=zip", MUSIC_ROOM),
        client().get(DIVISION),
        client().get(DIVISION + "&format=csv"),
        client().get(DIVISION, headers={"Accept": "text/csv"}),
        client().get(DIVISION + "&field=opening"),
    ]
    tags = [answer.headers["ETag"] for answer in answers]
    assert all(re.fullmatch('"[0-9a-f]{32}"', tag) for tag in tags)
    assert len(set(tags)) == len(tags)


def test_the_issue_of_a_drawing_changes_its_validator_and_not_the_digest():
    one, two = room(drawing={"revision": "A"}), room(drawing={"revision": "B"})
    assert prepare(one).digest == prepare(two).digest
    tags = {post("/v1/drawings?format=zip", each).headers["ETag"] for each in (one, two)}
    assert len(tags) == 2


@pytest.mark.parametrize("path", [DIVISION, "/v1/stock", "/v1/problems/not_json", "/openapi.json"])
def test_what_the_client_has_is_not_sent_again(path):
    tag = client().get(path).headers["ETag"]
    for known in (tag, f"W/{tag}", f'"other", {tag}'):
        again = client().get(path, headers={"If-None-Match": known})
        assert (again.status_code, again.data) == (304, b"")
        assert again.headers["ETag"] == tag
        assert "Content-Type" not in again.headers
    assert client().get(path, headers={"If-None-Match": '"other"'}).status_code == 200


def test_head_and_a_repeated_get_compute_nothing(monkeypatch):
    tag = client().get(DIVISION).headers["ETag"]

    def computed(query):
        raise AssertionError("this must not be computed")

    monkeypatch.setattr("lacunar.api.resources.division.divide", computed)
    head = client().head(DIVISION)
    assert (head.status_code, head.data, head.headers["ETag"]) == (200, b"", tag)
    assert head.mimetype == "application/json"
    assert client().get(DIVISION, headers={"If-None-Match": tag}).status_code == 304


def test_head_refuses_what_get_refuses_without_computing():
    assert client().head("/v1/division?span=240").status_code == 400
    assert client().head("/v1/problems/nothing").status_code == 404
    assert client().head("/v1/layouts").status_code == 405


@pytest.mark.parametrize(
    ("path", "allowed"),
    [("/v1/layouts", "OPTIONS, POST"), ("/v1/division", "GET, HEAD, OPTIONS")],
)
def test_options_tells_the_methods_alone(path, allowed):
    answer = client().options(path)
    assert (answer.status_code, answer.data, answer.headers["Allow"]) == (204, b"", allowed)
    assert client().delete(path).headers["Allow"] == allowed


def test_a_document_must_be_json_by_its_header():
    for content_type in ("text/plain", "application/xml", None):
        answer = client().post("/v1/layouts", data=THREE_NUMBERS, content_type=content_type)
        assert answer.status_code == 415
        assert answer.headers["Accept-Post"] == "application/json"
    packed = post("/v1/layouts", THREE_NUMBERS, Content_Encoding="gzip")
    assert packed.status_code == 415
    assert post("/v1/layouts", THREE_NUMBERS, Content_Encoding="identity").status_code == 200
    told = client().post("/v1/layouts", data=THREE_NUMBERS, content_type="application/json;x=y")
    assert told.status_code == 200


def test_a_document_that_is_too_long_is_413_whether_it_says_so_or_not():
    filled = THREE_NUMBERS + b" " * DOCUMENT_BYTES
    assert post("/v1/layouts", filled).status_code == 413
    just = THREE_NUMBERS.ljust(DOCUMENT_BYTES)
    assert post("/v1/layouts", just).status_code == 200
    chunked = client().post(
        "/v1/layouts",
        input_stream=io.BytesIO(filled),
        content_type="application/json",
        environ_overrides={"wsgi.input_terminated": True},
    )
    assert chunked.status_code == 413


@pytest.mark.parametrize("accept", ["text/html", "application/json;q=0", "image/gif, audio/*"])
def test_what_cannot_be_sent_as_accepted_is_406(accept):
    for answer in (
        post("/v1/drawings", THREE_NUMBERS, Accept=accept),
        post("/v1/layouts", THREE_NUMBERS, Accept=accept),
        client().get("/v1/division?span=240&beam_width=5", headers={"Accept": accept}),
    ):
        assert answer.status_code in (406, 200 if accept.endswith("q=0") else 406)
    problem = post("/v1/layouts", THREE_NUMBERS, Accept=accept).json
    assert problem["code"] == "not_acceptable"
    assert "application/json" in problem["detail"]


def test_unknown_addresses_are_problems_too():
    for path in ("/", "/v2/layouts", "/v1/layouts/", "//v1/layouts", "/v1/problems/nothing"):
        answer = client().get(path)
        assert (answer.status_code, answer.mimetype) == (404, "application/problem+json")


def test_a_missing_cairo_is_503_with_the_time_to_look_again(monkeypatch):
    def missing(*_):
        raise CairoMissing("PDF sheets are painted with the cairo library, which is missing.")

    monkeypatch.setattr(download, "painted_pdf", missing)
    monkeypatch.setattr("lacunar.workflow.readiness.lettering_cairo", missing)
    answer = post("/v1/drawings", THREE_NUMBERS)
    assert answer.status_code == 503
    assert answer.headers["Retry-After"] == str(problems.RETRY_AFTER)
    assert answer.json["code"] == "drawing_unavailable"
    assert client().get("/readyz").status_code == 503
    assert client().get("/healthz").status_code == 200
    assert post("/v1/drawings?format=zip", THREE_NUMBERS).status_code == 200


def test_an_error_of_ours_is_told_without_its_insides(monkeypatch, caplog):
    def broken(*_):
        raise RuntimeError("secret insides")

    monkeypatch.setattr("lacunar.api.resources.layouts.prepare", broken)
    answer = post("/v1/layouts", THREE_NUMBERS, X_Request_Id="find-me-again")
    assert answer.status_code == 500
    assert b"secret" not in answer.data
    assert b"Traceback" not in answer.data
    assert "find-me-again" in caplog.text
    assert "secret insides" in caplog.text


@pytest.mark.parametrize(
    ("asked", "taken"),
    [
        ("order-4711.a_b", True),
        ("12345678", True),
        ("1234567", False),
        ("x" * 65, False),
        ("with space", False),
        ('quote"quote', False),
        ("", False),
    ],
)
def test_a_harmless_request_id_is_echoed_and_any_other_replaced(asked, taken):
    answer = client().get("/healthz", headers={"X-Request-Id": asked})
    told = answer.headers["X-Request-Id"]
    assert (told == asked) is taken
    assert re.fullmatch("[A-Za-z0-9._-]{8,64}", told)
    problem = client().get("/nowhere", headers={"X-Request-Id": asked})
    assert problem.json["request_id"] == problem.headers["X-Request-Id"]


@pytest.mark.parametrize(
    "path",
    ["/healthz", "/nowhere", DIVISION, DIVISION + "&field=opening", "/docs", "/openapi.json"],
)
def test_every_answer_carries_safe_headers_and_the_engine(path):
    headers = client().get(path).headers
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"
    assert headers["Content-Security-Policy"].startswith("default-src 'none'")
    assert "unsafe" not in headers["Content-Security-Policy"]
    assert headers["Lacunar-Engine"] == ENGINE_TEXT


def test_a_sheet_may_not_run_or_load_anything():
    policy = post("/v1/drawings?format=svg&sheets=Z-101", MUSIC_ROOM).headers[
        "Content-Security-Policy"
    ]
    parts = {part.split()[0]: part.split()[1:] for part in policy.split("; ")}
    assert parts["default-src"] == ["'none'"]
    assert "sandbox" in parts
    assert "script-src" not in parts


def test_every_json_answer_names_its_engine():
    for answer in (
        post("/v1/layouts", THREE_NUMBERS),
        client().get(DIVISION),
        client().get("/v1/stock"),
        client().get("/v1/problems"),
        client().get("/v1/problems/not_json"),
        client().get("/nowhere"),
        client().get("/healthz"),
        client().get("/readyz"),
    ):
        assert answer.json["engine"]["lacunar"]


def test_the_page_loads_only_what_it_is_served_with():
    page = client().get("/docs").text
    assert not re.search(r"https?://|//[a-z]", page)
    assert "<script>" not in page
    assert "style=" not in page
    for address in re.findall(r'(?:src|href)="([^"]+)"', page):
        assert client().get(address).status_code == 200
    start = client().get("/docs/start.js").text
    assert "validatorUrl: null" in start
    assert client().get("/docs/..%2fstart.js").status_code == 404


def test_no_route_is_undeclared():
    described = set(client().get("/openapi.json").json["paths"])
    routes = {rule.rule.replace("<", "{").replace(">", "}") for rule in app().url_map.iter_rules()}
    assert routes - described == {"/docs", "/docs/{name}"}
