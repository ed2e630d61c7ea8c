"""The arrow that says which way the joists run lies as they do and stands clear of the ceiling."""

import json

import pytest

from lacunar.drawing.elements import Group, Polyline, Text, walk
from lacunar.drawing.sheets.joist_arrow import joist_arrow, joist_words
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.workflow.check import check_drawings
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import Prepared, prepare

INCH = {"parallel_to": "width", "spacing": "16", "first": "8"}


def prepared(joists: dict[str, object] | None, **more: object) -> Prepared:
    told = {} if joists is None else {"joists": joists}
    spec = {
        "room": {"length": "20'", "width": "15'", "height": "9'", **told},
        "drawing": {"sheets": ["Z-101"]},
        **more,
    }
    return prepare(json.dumps(spec).encode())


def groups(ready: Prepared, kind: str) -> list[Group]:
    sheet_set, _ = compose_sheets(ready)
    found = (each for sheet in sheet_set.sheets for each in walk(sheet.children))
    return [each for each in found if isinstance(each, Group) and each.kind == kind]


def words(layout: Layout) -> tuple[str, ...]:
    joists = layout.ceiling.room.joists
    assert joists is not None
    return joist_words(joists, SheetWording.of(layout.ceiling))


def test_the_words_are_a_carpenters():
    assert words(prepared(INCH).layout) == (
        'JOISTS 16" OC, ALONG WIDTH',
        'FIRST CENTER 8" FROM W1; NOT DRAWN',
    )
    trusses = {"parallel_to": "length", "first": 300, "spacing": 600, "kind": "truss"}
    room = {"length": 6000, "width": 4500, "height": 2700, "joists": trusses}
    metric = prepare(json.dumps({"units": "mm", "room": room}).encode())
    assert words(metric.layout) == (
        "TRUSSES 600 OC, ALONG LENGTH",
        "FIRST CENTER 300 FROM W4; NOT DRAWN",
    )


@pytest.mark.parametrize(("parallel_to", "upright"), [("width", True), ("length", False)])
def test_the_arrow_lies_as_the_joists_do_on_the_plan(parallel_to: str, upright: bool):
    (arrow,) = groups(prepared({**INCH, "parallel_to": parallel_to}), "joist-arrow")
    shaft = next(each for each in arrow.children if isinstance(each, Polyline))
    first, last = shaft.points
    assert (abs(first.x - last.x) < 1e-9) is upright
    assert (abs(first.y - last.y) < 1e-9) is not upright
    assert arrow.data == {"parallel-to": parallel_to, "spacing": "16 in", "first": "8 in"}
    assert len([each for each in arrow.children if isinstance(each, Text)]) == 2


def test_there_is_no_arrow_where_nothing_is_known_of_the_joists():
    assert groups(prepared(None), "joist-arrow") == []


@pytest.mark.parametrize("paper", ["letter", "tabloid", "arch_d"])
def test_the_arrow_stands_clear_on_any_paper(paper: str):
    assert check_drawings(prepared(INCH, drawing={"paper": paper})) == ()


def test_the_block_is_as_wide_as_what_is_in_it():
    ready = prepared(INCH)
    _, typeface = compose_sheets(ready)
    ceiling = ready.layout.ceiling
    assert ceiling.room.joists is not None
    block = joist_arrow(ceiling.room.joists, SheetWording.of(ceiling), typeface)
    texts = [each for each in walk(block.children) if isinstance(each, Text)]
    right = max(text.at.x + typeface.width(text.text, text.height) for text in texts)
    assert block.width == pytest.approx(right)


# 54 ft by 12 ft on tabloid paper: no column stands beside such a plan, and what there is to say of
# it is more than a band below it holds.
def test_a_plan_as_wide_as_its_paper_has_its_blocks_on_further_sheets():
    room = {"length": "54'", "width": "12'", "height": "12'", "joists": INCH}
    grid = {"length": {"coffers": 10}, "width": {"coffers": 3}}
    drawing = {"sheets": ["Z-101", "Z-102", "Z-701"]}
    ready = prepare(json.dumps({"room": room, "grid": grid, "drawing": drawing}).encode())
    sheet_set, _ = compose_sheets(ready)
    plans = [sheet.id for sheet in sheet_set.sheets if sheet.id.startswith("Z-101")]
    assert plans == ["Z-101", "Z-101-2"]
    assert check_drawings(ready) == ()
