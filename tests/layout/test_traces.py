"""Every figure of a layout is what its own rule gives from its own operands, worked out apart."""

import json
from dataclasses import replace
from fractions import Fraction

import pytest

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.measure.figure import GIVEN
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from tests.laws.random_specs import random_specs
from tests.layout.laying_out import Spec, box, figures_in, laid_out, room, run
from tests.rule_evaluation import contradictions

MILLIMETER = Length.of_millimeters(1)
BILLIONTH = Angle.of_degrees(Fraction(1, 10**9))

MEMBER = {
    "on": "length",
    "center": 121,
    "width": 3.5,
    "drop": 5.5,
    "casing": "shift_to_equal",
    "cleat": 0,
}

STATIONS = [
    {"length": 121.75, "width": width, "above_line": line}
    for width, line in ((0, 21), (40, 20.25), (90, 20.0625), (178, 20.5))
]

SPECS: dict[str, Spec] = {
    "items that meet everything, and a door": {
        "room": room(
            192,
            144,
            joists={"parallel_to": "width", "spacing": 16, "first": 8},
            ceiling_items=[
                {"kind": "light", "diameter": 6},
                {"kind": "return", "x": 50, "y": 70, "length": 9, "width": 9, "mobility": "fixed"},
                {"kind": "fan", "diameter": 30, "x": 60, "y": 66, "drop": 14, "clearance": 2},
                {
                    "kind": "speaker",
                    "diameter": 4,
                    "x": 9,
                    "y": 9,
                    "columns": 2,
                    "rows": 1,
                    "length_pitch": 30,
                },
            ],
            wall_features=[{"kind": "door", "wall": "W4", "center": 50, "width": 32, "head": 80}],
        ),
        "grid": {"length": run(4, "half"), "width": run(3, "half")},
        "crown": {"face": "3 1/4", "spring_from_wall": 38},
    },
    "least": {"room": room(240, 180, 108)},
    "half beams": {"room": room(192, 144), "beams": {"crosswise": box()}},
    "held": {"room": room(240, 180), "grid": {"length": run(5, "half", held=40)}},
    "weights": {
        "room": room(240, 180),
        "grid": {"length": run(3, "full", weights=[1, 2, 1])},
    },
    "odd": {
        "room": room(240, 180),
        "grid": {
            "length": {"largest_opening": 40, "parity": "odd"},
            "width": {"wished_opening": 50, "parity": "even"},
        },
    },
    "soffit": {
        "room": room(240, 180),
        "grid": {"length": run(3, {"soffit": 14, "then": "half"})},
    },
    "cased": {
        "room": room(243.5, 178, members=[MEMBER]),
        "beams": {"crosswise": box("1x8", "1x6"), "depth": "stepped"},
        "grid": {"length": run([2, 2], "half")},
    },
    "two cased, one at its limit": {
        "room": room(
            300,
            178,
            members=[
                {**MEMBER, "center": 90},
                {**MEMBER, "center": 202, "cased_width": 7},
            ],
        ),
        "beams": {"crosswise": box("1x8", "1x6")},
        "grid": {"length": run(6, "half")},
    },
    "a ceiling that sags, sides up to it": {
        "room": {**room(243.5, 178), "height": 100, "stations": STATIONS},
        "beams": {"crosswise": box("1x8", "1x6", bottom_joint="under")},
        "grid": {"length": run(2, "half"), "width": run(1, "half")},
    },
    "a ceiling that sags, panels level below it": {
        "room": {**room(243.5, 178), "height": 100, "stations": STATIONS},
        "panel": {"kind": "sheet_goods", "seat": "above_backing"},
        "grid": {"length": run(2, "half"), "width": run(1, "half")},
    },
    "crown by its face, flats behind it": {
        "room": room(192, 144),
        "beams": {"crosswise": box("1x8", "1x6", bottom_joint="under", overhang=0.25)},
        "grid": {"length": run(3, "half"), "width": run(3)},
        "crown": {"face": "3 1/4", "spring_from_wall": 38},
        "flat_mouldings": [
            {"thickness": "1/4", "width": 3},
            {"thickness": "1/4", "width": 3},
            {"at": "bottom_edge", "thickness": "1/2", "width": 1},
            {"at": "bottom_edge", "thickness": "1/4", "width": 1},
        ],
    },
    "crown off its spring, coped": {
        "room": room(192, 144),
        "beams": {"crosswise": box("1x8", "1x6")},
        "crown": {
            "face": 5,
            "drop": "3 1/2",
            "spring_from_wall": 45,
            "method": "coped_in_place",
        },
    },
    "crown by its projection": {
        "room": room(192, 144),
        "beams": {"crosswise": box("1x8", "1x6")},
        "crown": {"face": "3 1/4", "projection": 2},
    },
    "crown as measured": {
        "room": room(192, 144),
        "beams": {"crosswise": box("1x8", "1x6")},
        "crown": {"drop": "2 9/16", "projection": 2, "spring_from_wall": 38},
    },
    "framing": {
        "room": room(240, 180, measured_to="framing", wall_finish=0.5, members=[MEMBER]),
        "beams": {"crosswise": box("1x8", "1x6")},
    },
    "joists across, open": {
        "room": room(
            243.5,
            178,
            members=[MEMBER],
            joists={"parallel_to": "width", "spacing": 16, "first": 5, "ceiling": "open"},
        ),
        "beams": {"crosswise": box("1x8", "1x6")},
        "grid": {"length": run([2, 2], "half"), "width": run(3, "full")},
        "fixing": {"fastener": "lag_screw", "block_spacing": 20, "end_distance": 24},
        "panel": {"kind": "sheet_goods", "seat": "above_backing"},
    },
    "trusses along the length, nailed": {
        "room": room(
            240,
            180,
            joists={"parallel_to": "length", "spacing": 24, "first": 20, "kind": "truss"},
        ),
        "beams": {"crosswise": box(backing="2x4")},
        "grid": {"length": run(3, {"soffit": 14, "then": "half"}), "width": run(2)},
        "fixing": {"fastener": "nail", "service": "wet", "between_joists": "anchors"},
    },
    "fixing alone": {
        "room": room(240, 180, 108),
        "fixing": {"panel_gravity": 0.7, "trim": {"species": "red_oak"}},
        "panel": {"kind": "sheet_goods"},
    },
    "under": {
        "room": room(240, 180),
        "beams": {"crosswise": box(bottom="1x8", bottom_joint="under", overhang=0.5)},
        "panel": {"kind": "sheet_goods", "seat": "between_backing"},
    },
    "boards that float, moved by air": {
        "room": room(240, 180),
        "panel": {
            "kind": "boards",
            "board": "1x6",
            "movement": {
                "species": "red_oak",
                "fastening": "floating",
                "now": 9,
                "driest": "30 % at 70 F",
                "trim_cover": "3/4",
            },
        },
    },
    "boards through, parted by a member": {
        "room": room(243.5, 178, members=[MEMBER]),
        "beams": {"crosswise": box("1x8", "1x6")},
        "panel": {
            "kind": "boards",
            "cover": 4,
            "centered_on": "joint",
            "parallel_to": "width",
            "run": "through",
            "movement": {"coefficient": 0.002},
        },
    },
    "sheets by grain, seams at their edges, sides ripped from sheets": {
        "room": room(240, 180),
        "beams": {"crosswise": {"sides": {"nominal": "3/4 sheet", "width": 6}}},
        "grid": {"length": run(2), "width": run(2)},
        "panel": {"kind": "sheet_goods", "grain": "width", "seams": "sheet_edge"},
    },
    "mitred, panel above": {
        "room": room(240, 180),
        "beams": {
            "crosswise": {"sides": "1x6", "bottom": "1x8", "bottom_joint": "mitred"},
            "lengthwise": {"sides": "1x8", "bottom": "1x8", "bottom_joint": "mitred"},
        },
        "panel": {"kind": "sheet_goods", "seat": "above_backing"},
    },
}


def wrong(layout: Layout) -> list[str]:
    """A line for each figure that is not what its rule gives; each figure is worked out once."""
    once = {id(figure): figure for figure in figures_in(layout)}
    return [line for figure in once.values() for line in contradictions(figure)]


@pytest.mark.parametrize("name", SPECS)
def test_every_figure_is_what_its_rule_gives(name: str):
    layout = laid_out(SPECS[name])
    assert wrong(layout) == []


def test_every_figure_of_random_layouts_is_what_its_rule_gives():
    laid = 0
    for spec in random_specs(100, seed=71):
        try:
            layout = lay_out(resolve(read_spec(json.dumps(spec).encode())).ceiling)
        except SpecRefused:
            continue
        laid += 1
        assert wrong(layout) == [], spec
    assert laid > 66


def test_most_figures_have_a_reason_beyond_being_given():
    """So that the walk above is no walk over figures that only repeat themselves."""
    layout = laid_out(SPECS["two cased, one at its limit"])
    rules = {figure.rule for figure in figures_in(layout)}
    assert len(rules - {GIVEN}) > 25


def test_an_approximate_figure_is_held_to_half_its_grid():
    crown = laid_out(SPECS["crown by its projection"]).mouldings.crown
    assert crown is not None
    for figure, grid in ((crown.drop, MILLIMETER / 8000), (crown.face, MILLIMETER / 8000)):
        for off in (-grid, grid):
            planted = replace(figure, value=figure.value + off)
            assert len(contradictions(planted)) == 2
    planted_angle = replace(crown.spring_from_wall, value=crown.spring_from_wall.value + BILLIONTH)
    assert len(contradictions(planted_angle)) == 2


def test_a_wrong_figure_would_be_found():
    figure = laid_out(SPECS["least"]).length.zones[0].clear_total
    planted = figure.rule.gives(figure.value * 2, **dict(figure.operands))
    assert len(contradictions(planted)) == 2  # in inches and in millimeters
