"""Options as drawn: every small plan is its layout to scale, and the sheets stand every check."""

import json
from dataclasses import replace
from typing import Any

import pytest

from lacunar.drawing.checker.facts import read_facts
from lacunar.drawing.checker.points import POINTS
from lacunar.drawing.checker.reading import read_sheet
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.elements import Group, Polyline, Sheet, walk
from lacunar.drawing.option_set import compose_options
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.exchange.layout_json import layout_to_json
from lacunar.exchange.options_json import PreparedOptions
from lacunar.model.faults import SpecRefused
from lacunar.workflow.options import option_set, prepare_options

# The points of the checker that ask nothing of a plan's strings, tags and tables.
BY_ITSELF = {19, 20, 31, 32, 33, 34, 35, 38, 40, 41, 43, 61}
HALL = {"length": "30 ft", "width": "22 ft", "height": "10 ft"}
SIDES = {"W1": 180, "W2": 240, "W3": 181, "W4": 240}
OUTLINE = {
    "sides": [
        {"length": 96},
        {"length": 60},
        {"length": 30, "corner": 270},
        {"length": 80, "corner": 270},
        {"length": 30},
        {"length": 60},
        {"length": 96},
        {"length": 200},
    ]
}


def prepared(room: dict[str, Any], choices: dict[str, Any], **sections: Any) -> PreparedOptions:
    document = {"ceiling": {"room": room, **sections}, "choices": choices}
    return prepare_options(json.dumps(document).encode())


def sheets(found: PreparedOptions) -> tuple[Sheet, ...]:
    return compose_options(option_set(found), load_typeface())


def findings(found: PreparedOptions) -> list[Finding]:
    """What the checker finds on the sheets as they are painted."""
    typeface = load_typeface()
    layout = layout_to_json(found.options.laid_out[0].layout, (), trace=False)
    facts = read_facts({**layout, "digest": found.digest})
    subjects = [
        Subject(read_sheet(paint_svg(sheet, typeface, fonts=None), typeface), facts, typeface)
        for sheet in sheets(found)
    ]
    points = [point for point in POINTS if point.number in BY_ITSELF]
    assert {point.number for point in points} == BY_ITSELF
    return [each for subject in subjects for point in points for each in point.check(subject)]


@pytest.mark.parametrize(
    ("room", "sections"),
    [
        (HALL, {"crown": {"face": "3 1/4"}, "panel": {"kind": "sheet_goods"}}),
        (HALL, {"drawing": {"paper": "letter"}}),
        (HALL, {"drawing": {"paper": "arch_d"}}),
        ({"length": 4200, "width": 3600, "height": 2700}, {"units": "mm"}),
        ({"outline": OUTLINE, "height": 108}, {}),
        (
            {
                "survey": {"sides": SIDES, "diagonals": {"rising": 300}},
                "height": 108,
            },
            {},
        ),
    ],
)
def test_sheets_stand_every_check_that_needs_no_plan(room, sections):
    assert findings(prepared(room, {"most_laid_out": 6}, **sections)) == []


def test_every_coffer_is_drawn_to_scale_at_its_place():
    found = prepared(HALL, {"most_laid_out": 5})
    views: dict[str, Group] = {}
    for sheet in sheets(found):
        views |= {
            e.id: e for e in walk(sheet.children) if isinstance(e, Group) and e.kind == "view"
        }
    options = found.options.found.options
    assert set(views) == {f"view-{option.number}" for option in options}
    for option, laid in zip(options, found.options.laid_out, strict=True):
        view = views[f"view-{option.number}"]
        ratio = int(view.data["scale"])
        wall = next(e for e in view.children if isinstance(e, Polyline) and e.pen is not None)
        left, bottom = wall.points[0].x, wall.points[0].y
        drawn = {
            e.data["id"]: e for e in view.children if isinstance(e, Group) and e.kind == "coffer"
        }
        assert set(drawn) == {coffer.id for coffer in laid.layout.coffers}
        for coffer in laid.layout.coffers:
            (line,) = drawn[coffer.id].children
            assert isinstance(line, Polyline)
            for corner, spot in zip(coffer.corners, line.points, strict=True):
                assert spot.x - left == pytest.approx(float(corner.x.millimeters / ratio))
                assert bottom - spot.y == pytest.approx(float(corner.y.millimeters / ratio))


def test_what_does_not_fit_one_sheet_goes_on_to_the_next():
    found = prepared(HALL, {"most_laid_out": 40}, drawing={"paper": "letter"})
    drawn = sheets(found)
    assert len(drawn) > 1
    assert [sheet.id for sheet in drawn[:2]] == ["Z-111", "Z-111-2"]
    shown = [e.id for sheet in drawn for e in walk(sheet.children) if isinstance(e, Group)]
    assert sum(name.startswith("view-") for name in shown) == len(found.options.found.options)


def test_a_paper_that_is_too_small_is_refused_with_one_that_would_do():
    long = {"length": "290 ft", "width": "9 ft", "height": "10 ft"}
    found = prepared(long, {"most_laid_out": 2}, drawing={"paper": "letter"})
    with pytest.raises(SpecRefused) as refused:
        sheets(found)
    (fault,) = refused.value.faults
    assert (fault.code, fault.pointer) == ("paper_too_small", "/drawing/paper")
    assert 'Ask for "' in fault.remedy
    larger = found.ceiling.drawing
    paper = fault.remedy.split('"')[1]
    asked = replace(found.ceiling, drawing=replace(larger, paper=type(larger.paper)(paper)))
    assert sheets(replace(found, ceiling=asked))
