"""A layout's JSON says what the layout says, exactly, and the same every time."""

import json
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

import pytest

from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.layout_json import layout_to_json
from lacunar.measure.figure import Figure
from lacunar.measure.length import Length
from lacunar.measure.notation import read_length
from tests.exchange.layouts import DOCUMENTS, laid_out

NAMES = list(DOCUMENTS)
KEYS = [
    *("ceiling", "outline", "runs", "beams", "wall_beams", "coffers", "grid_id", "profiles"),
    *("panel", "sheet_rips", "mouldings", "headroom", "heights", "levels"),
    *("backing", "marks", "casing_choices", "fitting", "crossings", "pieces"),
    *("ceiling_items", "wall_features"),
    *("measured_openings", "crooked", "followed", "outlined", "cautions", "assumptions"),
]


def answer(name: str, *, trace: bool = False) -> dict[str, Any]:
    layout, assumptions = laid_out(name)
    return layout_to_json(layout, assumptions, trace=trace)


def objects_in(value: object) -> Iterator[dict[str, Any]]:
    """Every object in a JSON value."""
    if isinstance(value, dict):
        yield value
        for each in value.values():
            yield from objects_in(each)
    elif isinstance(value, list):
        for each in value:
            yield from objects_in(each)


def figures_in(record: object) -> Iterator[Figure[Any]]:
    """Every figure in a record."""
    if isinstance(record, Figure):
        yield record
    elif isinstance(record, tuple):
        for each in record:
            yield from figures_in(each)
    elif is_dataclass(record):
        for field in fields(record):
            yield from figures_in(getattr(record, field.name))


@pytest.mark.parametrize("name", NAMES)
def test_an_answer_has_its_parts_in_order_and_can_be_sent(name: str):
    assert list(answer(name)) == KEYS
    text = json.dumps(answer(name, trace=True), allow_nan=False)
    assert json.loads(text) == answer(name, trace=True)


@pytest.mark.parametrize("name", NAMES)
def test_every_length_is_exact_and_its_decimals_agree(name: str):
    found = [each for each in objects_in(answer(name)) if {"exact", "mm"} <= each.keys()]
    assert found
    units = laid_out(name)[0].ceiling.units
    for each in found:
        length = read_length(each["exact"].removeprefix("-"), units)
        if each["exact"].startswith("-"):
            length = -length
        assert set(each) - {"approximate"} == {"exact", "text", "in", "mm"}
        assert abs(Fraction(str(each["in"])) - length.inches) <= Fraction(1, 10**6)
        assert abs(Fraction(str(each["mm"])) - length.millimeters) <= Fraction(1, 10**6)


@pytest.mark.parametrize("name", NAMES)
def test_a_trace_gives_every_figure_its_rule_and_without_it_nothing_of_that_is_there(name: str):
    layout, _ = laid_out(name)
    traced = [each for each in objects_in(answer(name, trace=True)) if "rule" in each]
    assert len(traced) == len(list(figures_in(layout)))
    for each in traced:
        assert each["formula"]
        for operand in each["operands"]:
            assert operand in each["formula"]
    assert not [each for each in objects_in(answer(name)) if "rule" in each]


def test_the_figures_of_a_square_ceiling_by_hand():
    # The least spec: 240 by 180 in, 1x6 beams with the bottom between: W = 5 1/2 + 2 * 3/4 = 7;
    # half beams of 3 1/2 leave S/n - W: for a wished 48, 240/n - 7 is 53 at n = 4 and 41 at n = 5;
    # 48 lies 5 and 7 away, so 4. 180/n - 7 is 53 at 3 and 38 at 4, so 3.
    told = answer("least")
    zone = told["runs"]["length"]["zones"][0]
    assert zone["coffers"] == {"count": 4}
    assert [opening["exact"] for opening in zone["openings"]] == ["53 in"] * 4
    assert told["runs"]["width"]["zones"][0]["coffers"] == {"count": 3}
    first = told["coffers"][0]
    assert (first["id"], first["length"]["exact"], first["width"]["exact"]) == (
        "A1",
        "53 in",
        "53 in",
    )
    corner = first["corners"][0]
    assert (corner["x"]["exact"], corner["y"]["exact"]) == ("7/2 in", "7/2 in")


@pytest.mark.parametrize("name", NAMES)
def test_the_ceiling_in_an_answer_is_the_resolved_spec(name: str):
    assert answer(name)["ceiling"] == ceiling_to_json(laid_out(name)[0].ceiling)


def test_assumptions_are_listed_with_place_value_and_reason():
    listed = {each["pointer"]: each for each in answer("least")["assumptions"]}
    assert listed["/room/headroom"]["value"]["in"] == 84
    assert listed["/beams/lengthwise"]["value"] == "same"
    assert all(each["reason"] for each in listed.values())


def test_sheet_stock_tells_how_thick_it_may_be():
    # PS 1: 23/32 is .6875 to .7500
    parts = [part for profile in answer("metric")["profiles"] for part in profile["parts"]]
    sheets = [part["stock"] for part in parts if part["stock"]]
    assert sheets
    assert sheets[0]["thickness_range"]["least"]["in"] == 0.6875
    assert sheets[0]["thickness_range"]["most"]["in"] == 0.75


def test_an_angle_is_exact_and_in_decimals_and_what_was_rounded_is_told():
    # cos 38 has no exact form; the spring is as given. 13/4 cos 38 = 2.561034.
    crown = answer("crowned")["mouldings"]["crown"]
    assert crown["spring_from_wall"] == {"exact": "38 deg", "text": "38°", "degrees": 38}
    assert crown["saw"]["flat_miter"]["text"] == "31.6°"
    assert crown["drop"]["approximate"] is True
    assert abs(crown["drop"]["in"] - 2.561034) < 5e-6
    assert "approximate" not in crown["face"]


def test_a_value_without_a_json_form_is_not_passed_on():
    with pytest.raises(TypeError, match="no JSON form"):
        layout_to_json(laid_out("least")[0], (object(),), trace=False)  # type: ignore[arg-type]


def test_lengths_of_records_that_are_no_figures_are_told_too():
    told = answer("shifted")["casing_choices"]
    layout, _ = laid_out("shifted")
    assert isinstance(layout.casing_choices[0].shift, Length)
    assert told[0]["shift"]["exact"] == "3/4 in"
