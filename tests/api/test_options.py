"""Options over HTTP: in both media types, within limits, and everything wrong at once."""

import json
from pathlib import Path

import pypdfium2
import pytest

from tests.api.calling import THREE_NUMBERS, client, post
from tests.api.test_description import misfits

DEN = json.loads(THREE_NUMBERS)
FEW = {"most_laid_out": 4}
PRICED = Path(__file__).parents[2] / "examples" / "options" / "priced_den.json"


def asked(document, query="", **headers):
    return post(f"/v1/options{query}", json.dumps(document).encode(), **headers)


def test_a_bare_spec_is_enough():
    answer = asked(DEN)
    assert answer.status_code == 200
    told = answer.json
    assert set(told) == {
        "units",
        "mark_to",
        "counts",
        "options",
        "nudges",
        "not_searched",
        "assumptions",
        "digest",
        "engine",
    }
    assert [option["number"] for option in told["options"]] == list(
        range(1, len(told["options"]) + 1)
    )
    assert all(2 <= len(option["why"]) <= 3 for option in told["options"])
    assert told["nudges"] is None
    assert any(each["pointer"] == "/choices/beam_widths/0" for each in told["assumptions"])


def test_every_option_can_be_laid_out_as_it_stands():
    for option in asked({"ceiling": DEN, "choices": FEW}).json["options"]:
        answer = post("/v1/layouts", json.dumps(option["ceiling"]).encode())
        assert (answer.status_code, answer.json["grid_id"]) == (200, option["grid_id"])
        assert answer.json["assumptions"] == []


def test_figures_carry_their_reasons_where_they_are_asked_for():
    option = asked({"ceiling": DEN, "choices": FEW}, "?trace=1").json["options"][0]
    first = option["judged"][0]
    assert (first["criterion"], first["figure"]["formula"]) == ("squareness", "longer / shorter")


def test_nudges_are_told_of_the_option_that_is_named():
    told = asked({"ceiling": DEN, "choices": {**FEW, "nudges_of": 1}}).json["nudges"]
    assert (told["option"], told["tried"]) == (1, 14)
    assert {nudge["kind"] for nudge in told["nudges"]} == {"beam_width", "wall"}


@pytest.mark.parametrize(
    ("query", "accept", "media"),
    [
        ("", "*/*", "application/json"),
        ("?format=pdf", "application/json", "application/pdf"),
        ("", "application/pdf", "application/pdf"),
    ],
)
def test_options_in_each_media_type(query, accept, media):
    document = {"ceiling": DEN, "choices": FEW}
    answer = asked(document, query, Accept=accept)
    assert (answer.status_code, answer.content_type) == (200, media)
    if media == "application/pdf":
        text = pypdfium2.PdfDocument(answer.data)[0].get_textpage().get_text_range()
        assert "OPTION 1" in text
        assert asked(document, query, Accept=accept).data == answer.data


def test_faults_of_ceiling_and_choices_come_at_once():
    answer = asked(
        {
            "ceiling": {"room": {"length": "x", "width": 148, "height": 106}},
            "choices": {"walls": ["soffit"], "beam_width": ["5"], "weights": {"beauty": 1}},
            "prices": {"labor": {"rate": "much"}},
            "stock": {"lenghts": []},
            "cost": {},
        }
    )
    assert answer.status_code == 400
    told = {(error["pointer"], error["code"]) for error in answer.json["errors"]}
    assert told == {
        ("/ceiling/room/length", "length_not_readable"),
        ("/choices/walls/0", "unknown_word"),
        ("/choices/beam_width", "name_unknown"),
        ("/choices/weights/beauty", "name_unknown"),
        ("/prices/currency", "name_missing"),
        ("/prices/labor/rate", "wrong_type"),
        ("/stock/lenghts", "name_unknown"),
        ("/cost", "name_unknown"),
    }


def test_a_search_that_cannot_be_made_is_told_with_figures_and_remedy():
    crossed = {"smallest_opening": "50", "largest_opening": "40"}
    answer = asked({"ceiling": DEN, "choices": crossed})
    assert answer.status_code == 422
    (error,) = answer.json["errors"]
    assert (error["code"], error["pointer"]) == ("limits_crossed", "/choices/smallest_opening")
    assert error["figures"]["least"]["in"] == 50
    assert error["remedy"]


def test_faults_of_choices_prices_and_stock_come_at_once():
    answer = asked(
        {
            "ceiling": DEN,
            "choices": {"center_on": ["Hearth"]},
            "prices": {"currency": "USD", "markup": "0.1", "margin": "0.1"},
            "stock": {"packs": [{"of": "paint", "holds": "1 gal"}] * 2},
        }
    )
    assert answer.status_code == 422
    told = {(error["pointer"], error["code"]) for error in answer.json["errors"]}
    assert told == {
        ("/choices/center_on/0", "feature_not_there"),
        ("/prices/margin", "markup_and_margin"),
        ("/stock/packs/1/of", "label_doubled"),
    }


def test_stock_by_itself_is_refused():
    answer = asked({"ceiling": DEN, "stock": {"kerf": "1/8"}})
    assert answer.status_code == 422
    (error,) = answer.json["errors"]
    assert (error["code"], error["pointer"]) == ("stock_without_prices", "/stock")


def test_the_example_with_prices_costs_what_estimates_of_its_options_say():
    document = json.loads(PRICED.read_text("utf-8"))
    answer = asked(document)
    assert answer.status_code == 200, answer.json
    assert misfits("Options", answer.json) == []
    options = answer.json["options"]
    assert "cost" in {each["criterion"] for each in options[0]["judged"]}
    changes = answer.json["nudges"]["nudges"][0]["changes"]
    assert "cost" in {change["criterion"] for change in changes}
    pointers = {each["pointer"] for each in answer.json["assumptions"]}
    assert {"/prices/tax", "/stock/kerf"} <= pointers
    first = options[0]
    request = {name: document[name] for name in ("prices", "stock") if name in document}
    told = post("/v1/estimates", json.dumps({"ceiling": first["ceiling"], **request}).encode())
    assert first["cost"]["total"] == told.json["totals"]["total"]
    assert first["cost"]["complete"] is told.json["totals"]["complete"]


@pytest.mark.parametrize("choices", [[], "all", 3, None])
def test_choices_that_are_no_object_are_refused(choices):
    answer = asked({"ceiling": DEN, "choices": choices})
    assert answer.status_code == 400
    assert [error["pointer"] for error in answer.json["errors"]] == ["/choices"]


def test_no_other_media_type_is_offered():
    assert client().post("/v1/options", json=DEN, headers={"Accept": "text/csv"}).status_code == 406
