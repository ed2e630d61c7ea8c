"""POST /v1/estimates, as a client meets it."""

import io
import json
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest

from lacunar.api.estimate_examples import EXAMPLES
from tests.api.calling import client, post
from tests.api.test_description import misfits

XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
PRICED = EXAMPLES["materials_and_labor"]["value"]
COMPARED = EXAMPLES["frames_or_coping"]["value"]


EXAMPLE = Path(__file__).parents[2] / "examples" / "estimate.json"


def asked(document, query=""):
    return post(f"/v1/estimates{query}", json.dumps(document).encode())


@pytest.mark.parametrize("query", ["", "?trace=1", "?units=mm"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_an_answer_has_the_described_fields_and_no_others(name, query):
    answer = asked(EXAMPLES[name]["value"], query)
    assert answer.status_code == 200, answer.json
    assert misfits("EstimateAnswer", answer.json) == []


def test_the_example_request_leaves_nothing_but_fasteners_of_backing_out():
    answer = asked(json.loads(EXAMPLE.read_text("utf-8"))).json
    assert (answer["unpriced"], answer["unused_prices"]) == ([], [])
    assert answer["not_counted"] == ["fasteners_not_counted"]
    assert [each["name"] for each in answer["alternates"]] == ["Bench frames"]


def test_one_ceiling_is_as_a_list_of_one():
    (only,) = COMPARED["ceilings"]
    rest = {name: value for name, value in COMPARED.items() if name != "ceilings"}
    assert asked({**rest, "ceiling": only}).json == asked(COMPARED).json


def test_lines_add_up_and_each_tells_what_is_behind_it():
    answer = asked(PRICED).json
    amounts = [Decimal(line["amount"]["amount"]) for line in answer["lines"]]
    assert sum(amounts) == Decimal(answer["totals"]["direct"]["amount"])
    assert answer["currency"] == "USD"
    for line in answer["lines"]:
        assert line["source"] or line["section"] == "others"
    marks = {mark for line in answer["lines"] for mark in line["source"]}
    assert {"SD1", "BT1", "BS1"} <= marks


def test_other_units_change_no_price():
    """Names of materials stay, as prices are told by them."""
    own, metric = asked(PRICED).json, asked(PRICED, "?units=mm").json
    assert metric["units"] == "mm"
    assert metric["lines"] == own["lines"]
    assert metric["totals"] == own["totals"]


def test_what_is_left_out_is_told_with_the_total():
    prices = {**PRICED["prices"], "materials": PRICED["prices"]["materials"][:-1]}
    answer = asked({**PRICED, "prices": prices}).json
    assert [(each["name"], each["reason"]) for each in answer["unpriced"]] == [
        ("paint", "no_price")
    ]
    assert answer["totals"]["complete"] is False


def test_frames_are_compared_with_coping_by_an_assumption_that_is_listed():
    """Nothing but the corners differs, by half."""
    answer = asked(COMPARED).json
    assert {each["pointer"] for each in answer["price_assumptions"]} >= {"/labor/frame_share"}
    frames = answer["alternates"][0]
    before, after = (
        next(Decimal(each[side]) for each in frames["comparison"]["lines"] if each[side])
        for side in ("base", "alternate")
    )
    assert after * 2 == before
    assert {each["section"] for each in frames["comparison"]["lines"]} == {"labor"}


@pytest.mark.parametrize(
    ("query", "accept", "media"),
    [
        ("", "*/*", "application/json"),
        ("?format=csv", "*/*", "text/csv; charset=utf-8"),
        ("?table=differences", "*/*", "text/csv; charset=utf-8"),
        ("", XLSX, XLSX),
    ],
)
def test_an_estimate_in_each_media_type(query, accept, media):
    answer = client().post(f"/v1/estimates{query}", json=COMPARED, headers={"Accept": accept})
    assert (answer.status_code, answer.content_type) == (200, media)
    if media == XLSX:
        assert openpyxl.load_workbook(io.BytesIO(answer.data)).sheetnames[0] == "Lines"
        assert "estimate.xlsx" in answer.headers["Content-Disposition"]


def test_the_same_request_gets_the_same_bytes():
    assert asked(COMPARED).data == asked(COMPARED).data


@pytest.mark.parametrize(
    ("document", "status", "code"),
    [
        ({**PRICED, "prices": {}}, 400, "name_missing"),
        ({**PRICED, "ceilings": []}, 400, "ceiling_and_ceilings"),
        ({**PRICED, "prices": {"currency": "usd"}}, 422, "currency_not_readable"),
        (
            {**PRICED, "prices": {"currency": "USD", "markup": 0, "margin": 0}},
            422,
            "markup_and_margin",
        ),
        # The changes are an object, as described; what they make of the ceiling does not fit.
        (
            {**PRICED, "alternates": [{"name": "A", "changes": {"room": 5}}]},
            422,
            "alternate_misfit",
        ),
    ],
)
def test_what_cannot_be_estimated_is_refused(document, status, code):
    answer = asked(document)
    assert (answer.status_code, answer.json["errors"][0]["code"]) == (status, code)


def test_alternates_count_against_the_most_coffers():
    grid = {name: {"coffers": 30, "start": "none", "end": "none"} for name in ("length", "width")}
    hall = {"room": {"length": "200 ft", "width": "200 ft", "height": "20 ft"}, "grid": grid}
    alternates = [{"name": str(n), "changes": {"room": {"height": f"{n} ft"}}} for n in (21, 22)]
    answer = asked({"ceiling": hall, "prices": {"currency": "USD"}, "alternates": alternates})
    # 900 coffers each; the third is beyond 1800
    assert answer.status_code == 422
    assert answer.json["errors"][0]["code"] == "pool_too_large"
