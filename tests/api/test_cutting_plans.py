"""POST /v1/cutting-plans, as a client meets it."""

import json

import pytest

from lacunar.api.cutting_examples import EXAMPLES
from tests.api.calling import post
from tests.api.test_description import misfits

LEAST = {"stock": [{"length": 96, "price": 10}], "pieces": [{"length": 31, "quantity": 6}]}


def asked(document):
    return post("/v1/cutting-plans", json.dumps(document).encode())


@pytest.mark.parametrize("name", EXAMPLES)
def test_an_answer_has_the_described_fields_and_no_others(name):
    answer = asked(EXAMPLES[name]["value"])
    assert misfits("CuttingAnswer", answer.json) == []


def test_a_plan_tells_cost_bound_and_proof():
    answer = asked(LEAST).json
    # three of 31 and two saw cuts of 1/8 are 93 1/4 of 96
    (plan,) = answer["lengths"]["plans"]
    assert (plan["cost"], plan["lower_bound"], plan["gap"]) == ("20.00", "20.00", "0.00")
    assert (plan["proven_best"], plan["proof"]) == (True, "bound")
    assert answer["lengths"]["clock_struck"] is False
    assert answer["sheets"] is None
    assert answer["solver"].startswith("HiGHS ")
    assert {each["pointer"] for each in answer["assumptions"]} == {
        "/kerf",
        "/end_trim",
        "/usable_offcut",
    }


def test_the_same_problem_gets_the_same_bytes():
    document = EXAMPLES["priced_lengths"]["value"]
    assert asked(document).data == asked(document).data


@pytest.mark.parametrize(
    ("document", "status", "told"),
    [
        ({}, 422, {("nothing_to_cut", "")}),
        ({"pieces": [{"length": 9, "quantity": 1}]}, 422, {("nothing_to_cut", "/stock")}),
        ({**LEAST, "pieces": [{"length": 9}]}, 400, {("name_missing", "/pieces/0/quantity")}),
        (
            {**LEAST, "kerf": "x", "units": "ft"},
            400,
            {("length_not_readable", "/kerf"), ("unknown_word", "/units")},
        ),
        ({**LEAST, "most_lengths": 9}, 422, {("quantity_out_of_bounds", "/most_lengths")}),
        (
            {**LEAST, "stock": [{"length": 96, "price": "11.495"}]},
            400,
            {("wrong_type", "/stock/0/price")},
        ),
        (
            {**LEAST, "stock": [{"length": 96, "price": 11.495}]},
            422,
            {("money_not_readable", "/stock/0/price")},
        ),
        (
            {**LEAST, "stock": [{"length": 96, "price": 1}, {"length": 120}]},
            422,
            {("prices_incomplete", "/stock/1")},
        ),
        (
            {**LEAST, "stock": [{"id": "A", "length": 96}, {"id": "A", "length": 120}]},
            422,
            {("label_doubled", "/stock/1/id")},
        ),
        (
            {**LEAST, "stock": [{"length": 20 + n} for n in range(13)]},
            422,
            {("too_many_stock_sizes", "/stock")},
        ),
        (
            {**LEAST, "pieces": [{"length": 9 + n / 8, "quantity": 1} for n in range(251)]},
            422,
            {("too_many_pieces", "/pieces")},
        ),
        (
            {**LEAST, "pieces": [{"length": 97, "quantity": 1}]},
            422,
            {("piece_longer_than_stock", "/pieces/0/length")},
        ),
        ({**LEAST, "most_length": 1}, 400, {("name_unknown", "/most_length")}),
        ([], 400, {("pool_empty", "")}),
        (5, 400, {("wrong_type", "")}),
    ],
)
def test_what_does_not_fit_or_cannot_be_planned_is_told(document, status, told):
    answer = asked(document)
    assert answer.status_code == status
    errors = answer.json["errors"]
    assert {(error["code"], error["pointer"]) for error in errors} == told
    assert all(error["remedy"] for error in errors)
