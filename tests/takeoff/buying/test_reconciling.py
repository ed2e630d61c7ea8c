"""Parts, plans, material list and drawing tell the same, for every example ceiling."""

import json
import re
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.takeoff.part_records import PartKind
from lacunar.workflow.material_list import prepare_materials
from lacunar.workflow.prepare import prepare
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions
from tests.takeoff.buying.listing import cut_pieces, lost, on_sticks

CEILINGS = sorted((Path(__file__).parents[3] / "examples" / "ceilings").glob("*.json"))
NAMES = [path.stem for path in CEILINGS]
OF_BEAMS = {PartKind.SIDE, PartKind.BOTTOM, PartKind.UPPER_BOARD}


@cache
def listed(name):
    (path,) = (each for each in CEILINGS if each.stem == name)
    return prepare_materials(path.read_bytes())


@cache
def drawn(name):
    """The plan as it is painted, told by its classes: the ids of each, in order."""
    (path,) = (each for each in CEILINGS if each.stem == name)
    prepared = prepare(path.read_bytes())
    sheets = compose(prepared.layout, prepared.digest, load_typeface()).sheets
    found = {}
    for sheet in sheets:
        text = paint_svg(sheet, load_typeface(), fonts=None)
        for group in re.findall(r"<g [^>]*>", text):
            told = dict(re.findall(r'([a-z-]+)="([^"]*)"', group))
            if "class" in told and "data-id" in told:
                found.setdefault(told["class"], []).append(told["data-id"])
    return found


def ids_of(name, *kinds):
    """The beams or coffers that parts of these kinds go to, of lines that are bought."""
    prepared = listed(name)
    marks = {p.mark for line in prepared.listed.materials.lines if line.plan for p in line.parts}
    return {
        each
        for part in prepared.pooled.taken.parts
        if part.kind in kinds and part.mark in marks
        for place in part.places
        for each in place.of
    }


def sides_of_cut_coffers(name):
    """All sides of coffers that walls or columns cut, those round a column included."""
    room = listed(name).pooled.pool[0].layout.outlined
    coffers = room.partial_coffers if room else ()
    return [side for coffer in coffers for side in coffer.all_sides]


@pytest.mark.parametrize("name", NAMES)
def test_every_part_is_in_one_plan_and_on_one_line_as_often_as_it_is_taken_off(name):
    assert lost(listed(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_lines_are_what_sticks_come_to_one_by_one(name):
    prepared = listed(name)
    for line in prepared.listed.materials.lines:
        if line.plan is None or line.unit != "ft":
            continue
        sticks, pieces, kept = on_sticks(prepared, line.name)
        assert (line.amount.value, line.left_over.value) == (sticks, kept)
        # Pieces are planned as they are taped: up to 1/64 in or 1/2 mm longer.
        count = sum(part.quantity * part.pieces_each for part in line.parts)
        assert 0 <= pieces - line.need.value <= count / (12 * 25.4 * 2)


@pytest.mark.parametrize("name", NAMES)
def test_every_figure_of_a_material_list_is_what_its_rule_gives(name):
    figures = list(figures_in(listed(name).listed.materials))
    assert figures
    assert [line for figure in figures for line in contradictions(figure)] == []


@pytest.mark.parametrize("name", NAMES)
def test_what_is_drawn_is_bought_for(name):
    shown = drawn(name)
    beams = {id for kind in ("beam", "wall-beam", "angled-beam") for id in shown.get(kind, ())}
    # Soffits have no boards, and walls of a drawing's wall beams may stand beside them.
    assert ids_of(name, *OF_BEAMS) <= beams
    assert set(shown.get("beam", ())) <= ids_of(name, *OF_BEAMS)
    pieces, _ = cut_pieces(listed(name))
    crown = Counter({mark: n for mark, n in pieces.items() if mark.startswith("CR")})
    # Four sides of each whole coffer that has crown drawn in it, and each side of a cut one.
    cut = [side for side in sides_of_cut_coffers(name) if side.cut_from is not None]
    assert crown.total() == 4 * len(shown.get("crown", ())) + len(cut)
    filled = ids_of(name, PartKind.PANEL, PartKind.BOARD)
    assert not filled or filled == set(shown["coffer"])


def test_ceilings_pooled_buy_no_more_than_each_by_itself():
    """Whoever has all sticks of the separate plans can cut the pooled parts from them."""
    names = ("music_room", "map_room", "corner_parlor")
    documents = [json.loads(path.read_text()) for path in CEILINGS if path.stem in names]
    pooled = prepare_materials(json.dumps(documents).encode())
    assert lost(pooled) == []
    alone = Counter()
    for name in names:
        for line in listed(name).listed.materials.lines:
            alone[line.name] += line.amount.value
    for line in pooled.listed.materials.lines:
        if line.plan is not None and line.name in ("1x6", "1x8"):
            assert line.plan.proven_best
            assert line.amount.value <= alone[line.name]
