"""What a take-off goes by: usual figures, what was said, and that nothing built hangs on it."""

import json
from fractions import Fraction

import pytest

from lacunar.exchange.ceiling_json import ceiling_to_json, digest
from lacunar.exchange.spec_json import read_spec
from lacunar.model.assumptions import Resolution, resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.take_off import CoverageUnit, FinishKind, InsulationOver
from tests.model.specs import inches

ROOM = {"length": 243, "width": 178, "height": 109}


def resolved(**take_off: object) -> Resolution:
    spec = {"room": ROOM, **({"take_off": take_off} if take_off else {})}
    return resolve(read_spec(json.dumps(spec).encode()))


def test_everything_left_open_is_assumed_and_listed_apart():
    resolution = resolved()
    told = {each.pointer for each in resolution.take_off_assumptions}
    assert {pointer.split("/")[2] for pointer in told} == {
        *("length_allowance", "width_allowance", "blocking", "cleat_width", "waste"),
        *("nail_spacing", "adhesive", "insulation", "finish"),
    }
    assert not any(each.pointer.startswith("/take_off") for each in resolution.assumptions)
    assert all(each.reason for each in resolution.take_off_assumptions)


def test_what_was_said_is_taken_and_not_listed():
    resolution = resolved(
        blocking="2x6",
        waste={"mouldings": "3/20"},
        insulation="room",
        finish={"kind": "paint", "paint_coats": 3, "paint_coverage": "9.5 m2/L"},
    )
    take_off = resolution.ceiling.take_off
    assert take_off.blocking.width == inches("11/2")
    assert take_off.waste.mouldings == Fraction(15, 100)
    assert take_off.insulation is InsulationOver.ROOM
    assert (take_off.finish.kind, take_off.finish.paint_coats) == (FinishKind.PAINT, 3)
    assert take_off.finish.paint_coverage.unit is CoverageUnit.SQUARE_METERS_PER_LITER
    assert take_off.finish.paint_coverage.text == "9.5 m2/L"
    listed = {each.pointer for each in resolution.take_off_assumptions}
    assert listed.isdisjoint(
        {"/take_off/blocking", "/take_off/waste/mouldings", "/take_off/finish/paint_coverage"}
    )


def test_metric_ceilings_have_metric_figures():
    spec = {"units": "mm", "room": {"length": 6000, "width": 4500, "height": 2700}}
    take_off = resolve(read_spec(json.dumps(spec).encode())).ceiling.take_off
    assert take_off.nail_spacing.sides.millimeters == 400
    assert take_off.finish.paint_coverage.text == "8.5 m2/L"


def test_a_resolved_section_read_again_assumes_nothing():
    for said in ({}, {"finish": {"primer_coverage": "5.25 m2/L"}, "waste": {"beams": "1/7"}}):
        first = resolved(**said)
        again = resolve(read_spec(json.dumps(ceiling_to_json(first.ceiling)).encode()))
        assert again.take_off_assumptions == ()
        assert again.ceiling.take_off == first.ceiling.take_off


def test_the_digest_is_that_of_what_is_built():
    assert digest(resolved().ceiling) == digest(resolved(insulation="room").ceiling)


@pytest.mark.parametrize(
    ("section", "pointer", "code"),
    [
        ({"waste": {"beams": 10}}, "/take_off/waste/beams", "waste_out_of_bounds"),
        ({"waste": {"beams": -1}}, "/take_off/waste/beams", "waste_out_of_bounds"),
        ({"finish": {"paint_coats": 10}}, "/take_off/finish/paint_coats", "coats_out_of_bounds"),
        ({"finish": {"paint_coats": 0}}, "/take_off/finish/paint_coats", "count_below_one"),
        (
            {"finish": {"primer_coverage": "9 ft2/gal"}},
            "/take_off/finish/primer_coverage",
            "coverage_out_of_bounds",
        ),
        ({"length_allowance": 25}, "/take_off/length_allowance", "length_out_of_bounds"),
        ({"cleat_width": 0}, "/take_off/cleat_width", "length_out_of_bounds"),
        (
            {"nail_spacing": {"sides": 0}},
            "/take_off/nail_spacing/sides",
            "length_out_of_bounds",
        ),
        (
            {"adhesive": {"bead_spacing": 0}},
            "/take_off/adhesive/bead_spacing",
            "length_out_of_bounds",
        ),
        ({"blocking": "9x9"}, "/take_off/blocking", "stock_name_unknown"),
    ],
)
def test_what_cannot_be_is_refused(section: dict[str, object], pointer: str, code: str):
    with pytest.raises(SpecRefused) as refusal:
        resolved(**section)
    assert (pointer, code) in {(fault.pointer, fault.code) for fault in refusal.value.faults}
