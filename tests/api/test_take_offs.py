"""Take-offs over HTTP: one ceiling, several, and what is wrong with any of them."""

import io
import json

import openpyxl
import pytest

from lacunar.model.limits import POOLED_CEILINGS
from tests.api.calling import client, post

DEN = {"room": {"length": 182.5, "width": 148, "height": 106}}
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


def asked(document, query=""):
    return post(f"/v1/take-offs{query}", json.dumps(document).encode())


@pytest.mark.parametrize("document", [DEN, {"ceiling": DEN}, {"ceilings": [DEN]}, [DEN]])
def test_one_ceiling_can_be_sent_in_four_ways(document):
    assert asked(document).json == asked(DEN).json


def test_two_ceilings_are_pooled_and_every_place_names_its_own():
    one, two = asked(DEN).json, asked([DEN, {**DEN, "name": "Other"}]).json
    assert [ceiling["name"] for ceiling in two["ceilings"]] == ["Coffered ceiling", "Other"]
    assert [part["mark"] for part in one["parts"]] == [part["mark"] for part in two["parts"]]
    for single, pooled in zip(one["parts"], two["parts"], strict=True):
        assert pooled["quantity"] == 2 * single["quantity"]
        assert {place["ceiling"] for place in pooled["places"]} == {1, 2}


@pytest.mark.parametrize(
    ("query", "accept", "media"),
    [
        ("", "*/*", "application/json"),
        ("?format=csv", "*/*", "text/csv; charset=utf-8"),
        ("?table=places", "*/*", "text/csv; charset=utf-8"),
        ("", "text/csv", "text/csv; charset=utf-8"),
        ("?format=xlsx", "application/json", XLSX),
        ("", XLSX, XLSX),
    ],
)
def test_a_take_off_in_each_media_type(query, accept, media):
    answer = client().post(f"/v1/take-offs{query}", json=DEN, headers={"Accept": accept})
    assert (answer.status_code, answer.content_type) == (200, media)
    if media == XLSX:
        assert openpyxl.load_workbook(io.BytesIO(answer.data)).sheetnames[0] == "Parts"
        assert "take-off.xlsx" in answer.headers["Content-Disposition"]


def test_faults_of_all_ceilings_come_at_once_with_pointers_into_the_whole():
    bad = {"room": {"length": "x", "width": 148, "height": 106}}
    answer = asked({"ceilings": [DEN, bad, {}]})
    assert answer.status_code == 400
    pointers = {error["pointer"] for error in answer.json["errors"]}
    assert "/ceilings/1/room/length" in pointers
    assert any(pointer.startswith("/ceilings/2") for pointer in pointers)


def test_faults_of_setting_out_point_into_their_ceiling():
    crowded = {**DEN, "grid": {"length": {"coffers": 40}}}
    answer = asked([DEN, crowded])
    assert answer.status_code == 422
    assert {error["pointer"][:2] for error in answer.json["errors"]} == {"/1"}


@pytest.mark.parametrize(
    ("document", "status", "code"),
    [
        ([], 400, "pool_empty"),
        ({"ceilings": []}, 400, "pool_empty"),
        ([DEN] * (POOLED_CEILINGS + 1), 400, "too_many"),
        ({"ceilings": DEN}, 400, "name_unknown"),
        ({"ceiling": 5}, 400, "wrong_type"),
        ([{**DEN, "take_off": {"waste": {"beams": 10}}}], 422, "waste_out_of_bounds"),
        ([{**DEN, "take_off": {"finish": {"paint_coats": 12}}}], 422, "coats_out_of_bounds"),
        ([{**DEN, "take_off": {"finish": {"primer_coats": 0}}}], 400, "count_below_one"),
        (
            [{**DEN, "take_off": {"finish": {"paint_coverage": "9 ft2/gal"}}}],
            422,
            "coverage_out_of_bounds",
        ),
        ([{**DEN, "take_off": {"finish": {"paint_coverage": "350"}}}], 400, "wrong_type"),
    ],
)
def test_what_cannot_be_taken_off_is_refused(document, status, code):
    answer = asked(document)
    assert (answer.status_code, {error["code"] for error in answer.json["errors"]} & {code}) == (
        status,
        {code},
    )


def test_more_coffers_than_are_taken_off_at_once_are_refused():
    grid = {name: {"coffers": 30, "start": "none", "end": "none"} for name in ("length", "width")}
    hall = {"room": {"length": "200 ft", "width": "200 ft", "height": "20 ft"}, "grid": grid}
    # 30 * 30 = 900 in each; three of them are more than 1800
    answer = asked([hall, hall, hall])
    assert answer.status_code == 422
    assert answer.json["errors"][0]["code"] == "pool_too_large"


def test_other_units_tell_the_same_parts():
    inches, metric = asked(DEN).json, asked(DEN, "?units=mm").json
    assert [part["length"]["mm"] for part in inches["parts"]] == [
        part["length"]["mm"] for part in metric["parts"]
    ]
    assert metric["units"] == "mm"
    assert metric["parts"][0]["length"]["text"].endswith(" mm")
