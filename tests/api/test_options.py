"""Options over HTTP: in both media types, within limits, and everything wrong at once."""

import json

import pypdfium2
import pytest

from tests.api.calling import THREE_NUMBERS, client, post

DEN = json.loads(THREE_NUMBERS)
FEW = {"most_laid_out": 4}


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
            "prices": {},
        }
    )
    assert answer.status_code == 400
    told = {(error["pointer"], error["code"]) for error in answer.json["errors"]}
    assert told == {
        ("/ceiling/room/length", "length_not_readable"),
        ("/choices/walls/0", "unknown_word"),
        ("/choices/beam_width", "name_unknown"),
        ("/choices/weights/beauty", "name_unknown"),
        ("/prices", "name_unknown"),
    }


def test_a_search_that_cannot_be_made_is_told_with_figures_and_remedy():
    crossed = {"smallest_opening": "50", "largest_opening": "40"}
    answer = asked({"ceiling": DEN, "choices": crossed})
    assert answer.status_code == 422
    (error,) = answer.json["errors"]
    assert (error["code"], error["pointer"]) == ("limits_crossed", "/choices/smallest_opening")
    assert error["figures"]["least"]["in"] == 50
    assert error["remedy"]


@pytest.mark.parametrize("choices", [[], "all", 3, None])
def test_choices_that_are_no_object_are_refused(choices):
    answer = asked({"ceiling": DEN, "choices": choices})
    assert answer.status_code == 400
    assert [error["pointer"] for error in answer.json["errors"]] == ["/choices"]


def test_no_other_media_type_is_offered():
    assert client().post("/v1/options", json=DEN, headers={"Accept": "text/csv"}).status_code == 406
