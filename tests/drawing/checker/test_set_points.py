"""Points 4, 5, 41, 78 and 84 on a set of sheets, which is then spoiled: each defect is found."""

import json
from typing import Any

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.checker.leaders import crosses
from lacunar.drawing.checker.shapes import Spot, Stroke
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.prepare import layout_answer, prepare
from tests.drawing.checker.drawn_sets import PLANS_AND_POLES
from tests.drawing.checker.spoiled import NAMESPACE, Spoiled

Drawn = tuple[list[str], dict[str, Any]]
SPEC: dict[str, Any] = {
    "name": "Reading room",
    "room": {
        "length": 240,
        "width": 180,
        "height": 108,
        "joists": {"parallel_to": "width", "spacing": 16, "first": 8},
    },
    "grid": {"length": {"coffers": 4}, "width": {"coffers": 3}},
    "crown": {"face": "3 1/4", "spring_from_wall": 38},
    "drawing": {
        "paper": "tabloid",
        "sheets": PLANS_AND_POLES,
        "number": "RR-1",
        "date": "2026-03-02",
        "approver": "A person whose name is as long as forty",
    },
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    prepared = prepare(json.dumps(SPEC).encode())
    typeface = load_typeface()
    sheets = compose(prepared.layout, prepared.digest, typeface).sheets
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheets]
    return svgs, dict(layout_answer(prepared, trace=False))


def found(svgs: list[str], answer: dict[str, Any]) -> set[tuple[int, str]]:
    return {(each.point, each.where) for each in check_set(svgs, answer, load_typeface())}


def field(sheet: Spoiled, name: str) -> Any:
    return next(one for one in sheet.root.iter() if one.get("data-field") == name)


def spoiled(drawn: Drawn, identity: str) -> tuple[Spoiled, list[str]]:
    """The sheet that has a group, and the others of its set."""
    svgs = drawn[0]
    (number,) = (n for n, svg in enumerate(svgs) if f'id="{identity}"' in svg)
    return Spoiled(svgs[number]), [svg for n, svg in enumerate(svgs) if n != number]


def test_the_set_keeps_every_point_a_long_name_cut_short(drawn: Drawn):
    assert found(*drawn) == set()
    assert "…" in drawn[0][0]


@pytest.mark.parametrize(("name", "value"), [("date", "2026-03-03"), ("number", "")])
def test_a_field_that_says_something_else_is_found(drawn: Drawn, name: str, value: str):
    svgs, answer = drawn
    sheet = Spoiled(svgs[0])
    field(sheet, name).set("data-value", value)
    list(field(sheet, name).iter(f"{{{NAMESPACE}}}text"))[1].text = value
    assert (4, f"title-block {name}") in found([sheet.svg, *svgs[1:]], answer)


def test_a_field_lettered_otherwise_than_it_says_is_found(drawn: Drawn):
    svgs, answer = drawn
    sheet = Spoiled(svgs[0])
    list(field(sheet, "date").iter(f"{{{NAMESPACE}}}text"))[1].text = "2026-08-02"
    assert found([sheet.svg, *svgs[1:]], answer) == {(4, "title-block date")}


def test_a_field_that_is_missing_is_found(drawn: Drawn):
    svgs, answer = drawn
    sheet = Spoiled(svgs[-1])
    sheet.group("title-block").remove(field(sheet, "approver"))
    assert found([*svgs[:-1], sheet.svg], answer) == {(4, "title-block approver")}


def test_a_sign_that_the_legend_leaves_out_is_found(drawn: Drawn):
    sheet, others = spoiled(drawn, "legend")
    legend = sheet.group("legend")
    legend.remove(next(row for row in legend if row.get("data-entry") == "crown"))
    assert found([sheet.svg, *others], drawn[1]) == {(5, "legend crown")}


def test_a_sign_that_is_explained_and_not_on_the_plan_is_found(drawn: Drawn):
    sheet, others = spoiled(drawn, "legend")
    row = next(row for row in sheet.group("legend") if row.get("data-entry") == "crown")
    row.set("data-entry", "member")
    assert {(5, "legend crown"), (5, "legend member")} <= found([sheet.svg, *others], drawn[1])


def test_joists_without_their_arrow_are_found(drawn: Drawn):
    sheet, others = spoiled(drawn, "joist-arrow-view-1")
    sheet.remove("joist-arrow-view-1")
    assert found([sheet.svg, *others], drawn[1]) == {(78, "joist-arrow")}


@pytest.mark.parametrize("other", [{"parallel_to": "length"}, {"spacing": "24 in"}])
def test_an_arrow_that_tells_of_other_joists_is_found(drawn: Drawn, other: dict[str, str]):
    svgs, answer = drawn
    told = json.loads(json.dumps(answer))
    told["ceiling"]["room"]["joists"].update(other)
    assert found(svgs, told) == {(78, "joist-arrow-view-1")}


def test_an_arrow_where_no_joists_are_known_is_found(drawn: Drawn):
    svgs, answer = drawn
    told = json.loads(json.dumps(answer))
    del told["ceiling"]["room"]["joists"]
    assert found(svgs, told) == {(78, "joist-arrow")}


def test_a_leader_across_a_dimension_line_is_found(drawn: Drawn):
    sheet, others = spoiled(drawn, "dim-length-overall-1")
    d = next(iter(sheet.parts("dim-length-overall-1", "path"))).get("d") or ""
    start, end = (word.lstrip("ML") for word in d.split()[:2])
    x, y = float(start) + 40.0, float(end)
    sheet.add_line("view-1", f"M{x} {y - 1.5} L{x} {y + 1.5}", pen="leader")
    assert (41, "view-1") in found([sheet.svg, *others], drawn[1])


def test_a_leader_that_begins_short_of_its_tag_is_found(drawn: Drawn):
    sheet, others = spoiled(drawn, "tag-beam-WB-1")
    leader = sheet.part("tag-beam-WB-1", "path")
    start, end = (leader.get("d") or "").split(" L")
    x, y = (float(word) for word in start.lstrip("M").split())
    leader.set("d", f"M{x + 1} {y} L{end}")
    assert (84, "tag-beam-WB-1") in found([sheet.svg, *others], drawn[1])


def test_lines_cross_where_they_pass_and_not_where_they_meet():
    across = Stroke(Spot(0, 0), Spot(10, 0), 0)
    assert crosses(across, Stroke(Spot(5, -1), Spot(5, 1), 0))
    assert not crosses(across, Stroke(Spot(5, 0), Spot(5, 1), 0))
    assert not crosses(across, Stroke(Spot(5, 0.04), Spot(5, -1), 0))
    assert not crosses(across, Stroke(Spot(11, -1), Spot(11, 1), 0))
    assert not crosses(across, Stroke(Spot(-5, 0), Spot(5, 0), 0))
