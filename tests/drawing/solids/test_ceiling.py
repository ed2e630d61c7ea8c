"""Bodies of whole ceilings: where their edges lie, and that they move with the figures."""

import json
import time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.drawing.solids.ceiling import Detail, ceiling_solids
from lacunar.drawing.solids.hidden import seen_edges
from lacunar.drawing.solids.layers import Layer, inset_at, layers
from lacunar.drawing.solids.space import Edge, Sight
from lacunar.layout.records import Layout
from lacunar.workflow.prepare import prepare

SIGHT = Sight(turned=32.0, raised=48.0)
EXAMPLES = Path(__file__).parents[3] / "examples" / "ceilings"
INCH = 25.4


def laid_out(spec: dict[str, Any]) -> Layout:
    return prepare(json.dumps(spec).encode()).layout


def drawn(layout: Layout) -> list[Edge]:
    return list(seen_edges(ceiling_solids(layout, Detail(15.0, crown=True)), SIGHT))


def room(drop: float) -> dict[str, Any]:
    beam = {"drop": drop, "sides": {"thickness": "3/4", "width": 11}}
    return {
        "room": {"length": 160, "width": 120, "height": 110},
        "beams": {"crosswise": beam, "lengthwise": "same"},
        "grid": {
            run: {"coffers": 2, "start": "none", "end": "none"} for run in ("length", "width")
        },
    }


@given(st.integers(4, 10), st.integers(4, 10))
@settings(max_examples=12, deadline=None)
def test_changing_a_drop_moves_edges_by_as_much(one: int, other: int):
    """The lowest edges of beams lie at their drop, and all others where they were."""
    lowest = []
    others = []
    for drop in (one, other):
        layout = laid_out(room(drop))
        edges = [edge for edge in drawn(layout) if edge.kind == "beam"]
        lowest.append(min(min(edge.start.z, edge.end.z) for edge in edges))
        others.append({edge.of for edge in edges})
        level = [edge for edge in edges if edge.start.z == edge.end.z]
        assert {round(edge.start.z, 6) for edge in level} <= {0.0, round(-drop * INCH, 6)}
    assert lowest == [pytest.approx(-one * INCH), pytest.approx(-other * INCH)]
    assert others[0] == others[1]


def test_a_hand_worked_corner():
    """160 x 120 in, one beam each way in the middle, 7 in wide with sides 3/4 and bottom 5 1/2.

    Coffers are (160 - 7) / 2 = 76.5 in long; the beam across the length run has its faces at 76.5
    and 83.5 in, and runs from wall to wall or is cut at 56.5 and 63.5 in.
    """
    layout = laid_out(room(7.0))
    edges = [edge for edge in drawn(layout) if edge.of == "XB-1"]
    faces = {round(at.x / INCH, 4) for edge in edges for at in edge[:2]}
    width = float(layout.beams[0].width.value.inches)
    assert faces == {80 - width / 2, 80 + width / 2}
    ends = {round(at.y / INCH, 4) for edge in edges for at in edge[:2]}
    assert {0.0, 120.0} <= ends


def test_the_examples_are_drawn_well_under_a_second():
    """Ninety coffers with crown, as CPU seconds of this process."""
    layout = prepare((EXAMPLES / "assembly_hall.json").read_bytes()).layout
    start = time.process_time()
    edges = drawn(layout)
    assert time.process_time() - start < 1.0
    assert len({edge.of for edge in edges if edge.kind == "crown"}) > 80


def test_layers_of_a_stepped_flat_beam_and_of_a_bottom_that_stands_out():
    """Flat: 1x8 over 1x6, (7 1/4 - 5 1/2) / 2 = 7/8 in set in, 3/4 in thick each."""
    flat = {"profile": "flat", "bottom": "1x6", "upper_board": "1x8"}
    under = {"sides": "1x6", "bottom": "1x8", "bottom_joint": "under", "overhang": "1/2"}
    for beam, least, due in (
        (flat, 1.0, (Layer(0.0, -19.05, 0.0), Layer(22.225, -38.1, -19.05))),
        (flat, 30.0, (Layer(0.0, -38.1, 0.0),)),
        (under, 1.0, None),
    ):
        spec = {**room(7), "beams": {"crosswise": beam, "lengthwise": "same"}}
        profile = laid_out(spec).profiles[0]
        found = layers(profile, 0.0, least)
        assert due is None or found == due
        if due is None:
            assert [layer.inset for layer in found] == [0.0, -12.7]
            assert inset_at(found, found[1]) == -12.7


@pytest.mark.parametrize("name", ["attic_study", "corner_parlor", "garden_room", "porch_hall"])
def test_every_beam_and_coffer_with_crown_is_to_be_seen(name: str):
    layout = prepare((EXAMPLES / f"{name}.json").read_bytes()).layout
    edges = drawn(layout)
    shown = {edge.of for edge in edges}
    assert {beam.id for beam in (*layout.beams, *layout.wall_beams)} <= shown
    if layout.mouldings.crown is not None:
        assert {coffer.id for coffer in layout.coffers} <= shown
