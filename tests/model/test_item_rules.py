"""Rules about ceiling items and wall features: each fault by its code and place."""

from dataclasses import replace
from typing import Any

import pytest

from lacunar.model.assumptions import resolve
from lacunar.model.ceiling_items import (
    FeatureKind,
    ItemKind,
    ItemPattern,
    ItemSpec,
    Mobility,
    Mounting,
    WallFeatureSpec,
)
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec
from tests.model.specs import SOUND, inches

PLACE = {"x": inches(50), "y": inches(50)}
DOOR = {
    "kind": FeatureKind.DOOR,
    "wall": "W1",
    "center": inches(50),
    "width": inches(32),
}


def with_item(**fields: Any) -> CeilingSpec:
    told = {"kind": ItemKind.LIGHT, "diameter": inches(6), **fields}
    return replace(SOUND, room=replace(SOUND.room, ceiling_items=(ItemSpec(**told),)))


def with_feature(**fields: Any) -> CeilingSpec:
    feature = WallFeatureSpec(**{**DOOR, **fields})
    return replace(SOUND, room=replace(SOUND.room, wall_features=(feature,)))


def found(spec: CeilingSpec) -> set[tuple[str, str]]:
    return {(fault.code, fault.pointer.removeprefix("/room/")) for fault in check(spec)}


@pytest.mark.parametrize(
    ("fields", "faults"),
    [
        ({}, set()),
        (PLACE, set()),
        ({**PLACE, "columns": 2, "rows": 1, "length_pitch": inches(20)}, set()),
        ({"kind": None}, {("name_missing", "ceiling_items/0/kind")}),
        ({"diameter": None}, {("item_not_sized", "ceiling_items/0")}),
        ({"diameter": None, "length": inches(6)}, {("item_not_sized", "ceiling_items/0")}),
        ({"length": inches(6)}, {("item_not_sized", "ceiling_items/0")}),
        ({"x": inches(6)}, {("item_place_unclear", "ceiling_items/0")}),
        ({**PLACE, "coffers": ("A1",)}, {("item_place_unclear", "ceiling_items/0")}),
        (
            {**PLACE, "pattern": ItemPattern.COFFER_CENTERS},
            {("item_place_unclear", "ceiling_items/0")},
        ),
        (
            {**PLACE, "pattern": ItemPattern.SINGLE, "columns": 2},
            {("item_place_unclear", "ceiling_items/0")},
        ),
        (
            {**PLACE, "columns": 2},
            {
                ("item_grid_incomplete", "ceiling_items/0/rows"),
                ("item_grid_incomplete", "ceiling_items/0/length_pitch"),
            },
        ),
        ({**PLACE, "columns": 0, "rows": 1}, {("too_many_items", "ceiling_items/0/columns")}),
        ({"clearance": inches(300)}, {("length_out_of_bounds", "ceiling_items/0/clearance")}),
    ],
)
def test_faults_of_items(fields: dict[str, Any], faults: set[tuple[str, str]]):
    assert found(with_item(**fields)) == faults


@pytest.mark.parametrize(
    ("fields", "faults"),
    [
        ({}, set()),
        ({"wall": None}, {("name_missing", "wall_features/0/wall")}),
        ({"center": inches(10)}, {("feature_outside_wall", "wall_features/0/center")}),
        ({"head": inches(700)}, {("feature_above_ceiling", "wall_features/0/head")}),
    ],
)
def test_faults_of_features(fields: dict[str, Any], faults: set[tuple[str, str]]):
    assert found(with_feature(**fields)) == faults


def test_what_is_assumed_of_an_item():
    """A sprinkler stays and a light may move; nothing is kept free (common practice, no source)."""
    resolution = resolve(with_item(kind=ItemKind.SPRINKLER))
    (item,) = resolution.ceiling.room.ceiling_items
    assert (item.pattern, item.mobility) == (ItemPattern.COFFER_CENTERS, Mobility.FIXED)
    assert (item.mounting, item.clearance.inches) == (Mounting.RECESSED, 0)
    noted = {made.pointer.rpartition("/")[2] for made in resolution.assumptions}
    assert {"pattern", "mobility", "mounting", "clearance"} <= noted
