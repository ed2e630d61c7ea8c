"""The division of one run, and stock: for spreadsheets, which see neither status nor header."""

import csv
import io
import json

import pytest

from tests.api.calling import client, post


def get(path):
    return client().get(path)


# A wall at each end, none: opening = (span - (n - 1) W) / n = (240 - 3 * 5.5) / 4 = 55.875.
# Half beams: span / n - W = 60 - 5.5 = 54.5. Full beams: (240 - 5 * 5.5) / 4 = 53.125.
@pytest.mark.parametrize(
    ("wall", "opening"), [("none", "55.875"), ("half", "54.5"), ("full", "53.125")]
)
def test_one_bare_value_is_text_without_a_line_break(wall, opening):
    path = f"/v1/division?span=240&beam_width=5.5&coffers=4&start={wall}&end={wall}&field=opening"
    answer = get(path)
    assert (answer.status_code, answer.content_type) == (200, "text/plain; charset=utf-8")
    assert answer.text == opening


@pytest.mark.parametrize(
    ("query", "value"),
    [
        ("field=coffers", "4"),
        ("field=clear_total", "218"),  # 240 - 2 * 2.75 - 3 * 5.5
        ("field=near&number=2", "117.25"),  # 2.75 + 2 * 54.5 + 5.5
        ("field=center&number=2", "120"),
        ("field=far&number=2", "122.75"),
        ("field=far&number=2&as=fraction", "122 3/4"),
        ("field=center&number=2&units=mm&as=decimal&span=6096 mm&beam_width=139.7 mm", "3048"),
    ],
)
def test_each_field_is_the_figure_a_calculator_gives(query, value):
    base = "" if "span" in query else "span=240&beam_width=5.5&"
    assert get(f"/v1/division?{base}coffers=4&{query}").text == value


def test_a_mark_is_rounded_and_an_exact_place_is_not():
    # Thirds of 100 in between full-width nothing: 3 openings of (100 - 2 * 5) / 3 = 30 exactly;
    # with 4 in beams, 92 / 3 = 30 2/3, marked to the nearest 1/16: 30 11/16.
    base = "/v1/division?span=100&beam_width=4&coffers=3&start=none&end=none"
    assert get(f"{base}&field=near&as=decimal").text == "30.666667"
    assert get(f"{base}&field=near_mark&as=decimal").text == "30.6875"
    assert get(f"{base}&field=near_mark&as=fraction").text == "30 11/16"
    assert get(f"{base}&field=near_mark&as=fraction&mark_to=1/8").text == "30 5/8"


def test_a_run_is_divided_as_in_a_whole_ceiling():
    spec = {
        "room": {"length": "20' 3 1/2\"", "width": 180, "height": 108},
        "beams": {"crosswise": {"width": "5 1/2"}},
        "grid": {"length": {"coffers": 5, "start": {"soffit": 12, "then": "half"}, "end": "none"}},
    }
    ceiling = post("/v1/layouts", json.dumps(spec).encode()).json
    run = (
        client()
        .get(
            "/v1/division",
            query_string={
                "span": "20' 3 1/2\"",
                "beam_width": "5 1/2",
                "coffers": "5",
                "start_soffit": "12",
                "start": "half",
                "end": "none",
            },
        )
        .json
    )
    (zone,) = ceiling["runs"]["length"]["zones"]
    assert run["openings"] == zone["openings"]
    assert run["clear_total"] == zone["clear_total"]
    faces = [mark for mark in ceiling["marks"][0]["marks"] if mark["kind"] in ("face", "center")]
    told = [mark for mark in run["marks"] if mark["kind"] in ("face", "center")]
    assert [(mark["side"], mark["mark"]) for mark in told] == [
        (mark["side"], mark["mark"]) for mark in faces
    ]


def test_what_is_left_open_is_assumed_as_for_a_ceiling():
    answer = get("/v1/division?span=240&beam_width=5").json
    assumed = {each["pointer"] for each in answer["assumptions"]}
    assert assumed == {"/wished_opening", "/start", "/end"}
    # Openings nearest 48: 240 / n - 5 is 55 for 4, 43 for 5.
    assert answer["coffers"]["count"] == 5


def test_an_error_can_be_had_as_text_in_the_cell():
    path = "/v1/division?span=240&beam_width=80&coffers=4&field=opening"
    assert get(path).status_code == 422
    answer = get(path + "&on_error=text")
    assert (answer.status_code, answer.mimetype) == (200, "text/plain")
    assert answer.text.startswith("#ERR ")
    assert "\n" not in answer.text
    assert answer.headers["Cache-Control"] == "no-store"
    for query in ("", "&colour=red", "&coffers=many"):
        told = get(f"/v1/division?beam_width=80{query}&on_error=text")
        assert (told.status_code, told.text[:5]) == (200, "#ERR ")
    assert get("/v1/stock?name=oak&field=width&on_error=text").text.startswith("#ERR ")


def test_a_spreadsheets_three_calls_are_answered():
    # LibreOffice's WEBSERVICE sends OPTIONS, HEAD, then GET, each accepting anything.
    path = "/v1/division?span=240&beam_width=5.5&coffers=4&field=opening"
    accept = {"Accept": "*/*"}
    assert client().options(path, headers=accept).status_code == 204
    head = client().head(path, headers=accept)
    assert (head.status_code, head.mimetype) == (200, "text/plain")
    assert client().get(path, headers=accept).text == "54.5"


def table(path):
    answer = get(path)
    assert answer.content_type == "text/csv; charset=utf-8"
    return list(csv.DictReader(io.StringIO(answer.text)))


def test_the_table_has_decimals_beside_fractions():
    rows = table("/v1/division?span=100&beam_width=4&coffers=3&start=none&end=none&format=csv")
    assert list(rows[0]) == [
        "kind",
        "of",
        "side",
        "exact",
        "in",
        "mm",
        "mark",
        "mark_in",
        "mark_mm",
    ]
    near = next(row for row in rows if (row["kind"], row["side"]) == ("face", "near"))
    assert near == {
        "kind": "face",
        "of": "XB-1",
        "side": "near",
        "exact": "92/3 in",
        "in": "30.666667",
        "mm": "778.933333",
        "mark": "2'-6 11/16\"",
        "mark_in": "30.6875",
        "mark_mm": "779.4625",
    }


def test_stock_is_listed_and_found():
    rows = table("/v1/stock?format=csv")
    assert len(rows) == len(get("/v1/stock").json["sizes"]) > 100
    (board,) = get("/v1/stock?name=1 x 8").json["sizes"]
    # PS 20: nominal 1x8 is 3/4 x 7 1/4 dressed dry.
    assert (board["thickness"]["in"], board["width"]["in"]) == (0.75, 7.25)
    assert get("/v1/stock?name=2x4&field=width").text == "3.5"
    assert get("/v1/stock?name=2x4&field=width&as=fraction").text == "3 1/2"
    assert get("/v1/stock?name=2x4&field=width&units=mm").text == "88.9"
    quarters = get("/v1/stock?kind=quarter").json["sizes"]
    assert {size["width"] for size in quarters} == {None}
    assert get("/v1/stock?kind=sheet&name=2x4").json["sizes"] == []
