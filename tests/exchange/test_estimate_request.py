"""What an estimate is asked for with: every fault at once, at its place; alternates at theirs."""

import json
from typing import Any

import pytest

from lacunar.exchange.estimate_request import read_estimate
from lacunar.model.faults import SpecRefused
from lacunar.workflow.estimate import prepare_estimate
from tests.takeoff.estimate.pricing import CROWNED, FLAT, Document

USD: Document = {"currency": "USD"}


def faults(document: Any) -> set[tuple[str, str]]:
    try:
        prepare_estimate(json.dumps(document).encode())
    except SpecRefused as refused:
        return {(fault.code, fault.pointer) for fault in refused.faults}
    return set()


@pytest.mark.parametrize(
    ("document", "code", "pointer"),
    [
        ([], "wrong_type", ""),
        ({"ceiling": FLAT}, "name_missing", "/prices"),
        ({"prices": USD}, "name_missing", "/ceiling"),
        ({"ceiling": FLAT, "prices": USD, "price": 1}, "name_unknown", "/price"),
        (
            {"ceiling": FLAT, "ceilings": [FLAT], "prices": USD},
            "ceiling_and_ceilings",
            "/ceilings",
        ),
        ({"ceilings": [], "prices": USD}, "pool_empty", "/ceilings"),
        ({"ceiling": FLAT, "prices": 5}, "wrong_type", "/prices"),
        ({"ceiling": FLAT, "prices": USD, "stock": 5}, "wrong_type", "/stock"),
        ({"ceiling": FLAT, "prices": USD, "alternates": 5}, "wrong_type", "/alternates"),
        ({"ceiling": FLAT, "prices": USD, "alternates": [5]}, "wrong_type", "/alternates/0"),
        (
            {"ceiling": FLAT, "prices": USD, "alternates": [{}]},
            "name_missing",
            "/alternates/0/name",
        ),
        (
            {"ceiling": FLAT, "prices": USD, "alternates": [{"name": "A", "changes": 1}]},
            "wrong_type",
            "/alternates/0/changes",
        ),
        (
            {"ceiling": FLAT, "prices": USD, "alternates": [{"name": "A"}] * 7},
            "too_many",
            "/alternates",
        ),
    ],
)
def test_what_is_no_request_is_refused(document: Any, code: str, pointer: str):
    assert faults(document) == {(code, pointer)}


def test_faults_of_all_parts_come_at_once():
    document = {
        "ceilings": [FLAT, {**FLAT, "room": {"length": "x", "width": 1, "height": 99}}],
        "stock": {"lengths": [{"material": "1x6"}]},
        "prices": {"overhead": True},
        "alternates": [{"changes": {}}],
    }
    pointers = {pointer for _, pointer in faults(document)}
    assert {
        "/ceilings/1/room/length",
        "/stock/lengths/0/length",
        "/prices/currency",
        "/prices/overhead",
        "/alternates/0/name",
    } <= pointers


def alternate(**row: Any) -> Document:
    return {"ceiling": CROWNED, "prices": USD, "alternates": [{"name": "A", **row}]}


@pytest.mark.parametrize(
    ("row", "code", "pointer"),
    [
        ({"changes": {"crown": {"face": "x"}}}, "alternate_misfit", "/changes/crown/face"),
        ({"changes": {"crown": {"face": 300}}}, "alternate_misfit", "/changes/crown/face"),
        ({"changes": {"room": {"length": None}}}, "alternate_misfit", "/changes/room/length"),
        # 40 coffers across 120 in leave no room for crown.
        (
            {"changes": {"grid": {"length": {"coffers": 40}}}},
            "no_room_left",
            "/changes/grid/length/coffers",
        ),
        ({"prices": {"currency": 5}}, "alternate_misfit", "/prices/currency"),
        ({"prices": {"currency": None}}, "alternate_misfit", "/prices/currency"),
        ({"prices": {"overhead": 12}}, "share_out_of_bounds", "/prices/overhead"),
        ({"stock": {"kerf": []}}, "alternate_misfit", "/stock/kerf"),
        (
            {"stock": {"packs": [{"of": "finish nail", "holds": "2 gal"}]}},
            "pack_unit_unlike",
            "/stock/packs/0/holds",
        ),
    ],
)
def test_a_fault_of_an_alternate_is_told_where_it_was_changed(
    row: Document, code: str, pointer: str
):
    found = faults(alternate(**row))
    assert (code, f"/alternates/0{pointer}") in found
    assert {place[:13] for _, place in found} == {"/alternates/0"}


def test_a_fault_of_a_changed_ceiling_tells_which_it_is():
    document = {
        "ceilings": [CROWNED, FLAT],
        "prices": USD,
        "alternates": [{"name": "A", "changes": {"grid": {"length": {"coffers": 40}}}}],
    }
    with pytest.raises(SpecRefused) as refused:
        prepare_estimate(json.dumps(document).encode())
    told = [(fault.figures["ceiling"], fault.figures["place"]) for fault in refused.value.faults]
    assert {number for number, _ in told} == {1, 2}
    assert {place for _, place in told} == {"/grid/length/coffers"}


def test_a_fault_of_what_was_asked_for_is_told_once():
    document = {**alternate(), "prices": {**USD, "overhead": 12}}
    assert faults(document) == {("share_out_of_bounds", "/prices/overhead")}


def test_changes_are_laid_over_every_ceiling():
    document = {
        "ceilings": [CROWNED, {**CROWNED, "name": "Other"}],
        "prices": USD,
        "alternates": [{"name": "Bare", "changes": {"crown": None}}],
    }
    asked = read_estimate(json.dumps(document).encode())
    assert [spec.crown is None for _, spec in asked.base.pool] == [False, False]
    (bare,) = asked.alternates
    assert [(spec.crown, spec.name) for _, spec in bare.asked.pool] == [
        (None, asked.base.pool[0][1].name),
        (None, "Other"),
    ]


def test_lengths_of_a_price_list_are_in_its_own_units():
    rows = [{"of": "1x6", "per": "piece", "length": 2400, "price": 1}]
    document = {"ceiling": FLAT, "prices": {**USD, "units": "mm", "materials": rows}}
    asked = read_estimate(json.dumps(document).encode())
    (row,) = asked.base.prices.materials
    assert row.length is not None
    assert row.length.millimeters == 2400
