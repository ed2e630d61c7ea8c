"""Sheets of crossings and crown frames: what stands on them, by rooms worked by hand."""

import json
import re
from typing import Any

import pytest

from lacunar.drawing.details.callouts import Callout, Column, place_callouts
from lacunar.drawing.elements import Group, Polyline, Pt, walk
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import prepare
from tests.drawing.checker.drawn_sets import drawn_set, found, points

BOX = {"sides": "1x6", "bottom": "1x4", "bottom_joint": "between", "reveal": "1/4"}
ROOM: dict[str, Any] = {
    "room": {"length": 192, "width": 144, "height": 108},
    "beams": {"crosswise": BOX, "lengthwise": "same"},
    "grid": {
        "length": {"coffers": 3, "start": "half", "end": "half"},
        "width": {"coffers": 2, "start": "half", "end": "half"},
    },
    "drawing": {"paper": "tabloid"},
}
CROWN = {"face": "3 1/4", "spring_from_wall": 38}


def sheets_of(spec: dict[str, Any]) -> list[str]:
    prepared = prepare(json.dumps(spec).encode())
    composed = compose(prepared.layout, prepared.digest, load_typeface())
    return [sheet.id for sheet in composed.sheets]


def words(svgs: list[str]) -> list[str]:
    return [text for svg in svgs for text in re.findall(r"<text[^>]*>([^<]*)</text>", svg)]


def boards(svgs: list[str], crossing: str) -> list[tuple[str, str, str]]:
    """Role, part and side of the boards of a crossing."""
    view = next(
        found[1]
        for svg in svgs
        if (
            found := re.search(
                rf'<g([^>]*data-crossing="{crossing}".*?)class="view-title"', svg, re.S
            )
        )
    )
    tags = re.findall(r'<g[^>]*class="board"[^>]*>', view)

    def data(tag: str, name: str) -> str:
        found = re.search(rf'data-{name}="([^"]*)"', tag)
        return found[1] if found else ""

    return [(data(tag, "role"), data(tag, "part"), data(tag, "side")) for tag in tags]


def test_a_room_without_crown_has_no_sheet_of_it():
    assert not any(sheet.startswith("Z-503") for sheet in sheets_of(ROOM))
    assert "Z-503" in sheets_of({**ROOM, "crown": CROWN})


def test_a_cross_shows_what_runs_through_and_what_ends_on_both_sides():
    """The through beam's two sides and bottom once each; of the other three boards two each."""
    svgs, answer = drawn_set(ROOM, ["Z-502"])
    kinds = {each["kind"]: each["id"] for each in answer["crossings"]}
    assert set(kinds) == {"ell", "tee", "cross"}
    found = boards(svgs, kinds["cross"])
    through = [each for each in found if each[0] == "through"]
    stopped = [each for each in found if each[0] == "stopped"]
    assert sorted(through) == [
        ("through", "bottom", ""),
        ("through", "side", "far"),
        ("through", "side", "near"),
    ]
    assert len(stopped) == 6


def test_places_are_counted_and_the_first_are_named():
    """3 x 2 coffers in a room with beams at all walls: 2 crosses, 6 tees, 4 corners."""
    svgs, _ = drawn_set(ROOM, ["Z-502"])
    told = words(svgs)
    assert any(text.startswith("2 PLACES: ") and "MORE" not in text for text in told)
    assert any(text.startswith("6 PLACES: ") and text.endswith("AND 3 MORE") for text in told)
    assert any(text.startswith("4 PLACES: ") and text.endswith("AND 1 MORE") for text in told)


def test_at_a_corner_that_juts_in_boards_are_told_past_its_walls():
    """A half beam of 2 1/2 in with sides of 3/4 in: the other's side is met 1 3/4 in past the wall.

    By hand: 2 1/2 - 3/4 = 1 3/4; the side that runs on goes as far as the beam is wide.
    """
    outline = [[0, 0], [0, 144], [120, 144], [120, 90], [192, 90], [192, 0]]
    room = {"height": 108, "outline": {"points": [{"x": x, "y": y} for x, y in outline]}}
    svgs, _ = drawn_set({**ROOM, "room": room}, ["Z-502"])
    told = " ".join(words(svgs)).replace("&quot;", '"')
    assert 'SQUARE, 1 3/4" PAST W6,' in told
    assert 'SQUARE, 2 1/2" PAST W5,' in told


def test_crown_round_a_column_is_told_by_its_edges():
    """Round a column the edge at the ceiling is the longer one: no long point lies at the beam."""
    column = {"name": "Post", "x": 96, "y": 36, "length": 12, "width": 12}
    outline = [{"x": x, "y": y} for x, y in ((0, 0), (0, 144), (192, 144), (192, 0))]
    room = {"height": 108, "outline": {"points": outline}, "columns": [column]}
    svgs, answer = drawn_set({**ROOM, "room": room, "crown": CROWN}, ["Z-503"])
    assert not found(svgs, answer)
    told = [text for text in words(svgs) if "EDGE 1'-" in text]
    assert len(told) == 8
    spoiled = [svg.replace("BEAM EDGE", "LONG POINT") for svg in svgs]
    assert 153 in points(spoiled, answer)


def test_mitred_corners_say_their_angle():
    """Sides of equal thickness, and bottoms of equal width, meet at 45 degrees."""
    look = {"sides": "per_coffer", "corners": "mitred"}
    svgs, _ = drawn_set({**ROOM, "beams": {**ROOM["beams"], "look": look}}, ["Z-502"])
    assert any("MITRED 45°" in text for text in words(svgs))


def test_frames_alike_are_one_with_all_their_coffers():
    svgs, _ = drawn_set({**ROOM, "crown": CROWN}, ["Z-503"])
    told = words(svgs)
    assert "6x, COFFERS A1, A2, A3, B1, B2, B3" in told
    assert sum('class="crown-piece"' in part for svg in svgs for part in svg.split("<g ")) == 2


def test_the_lengths_of_a_frame_are_the_same_in_its_table_and_its_picture():
    """A fit finer than the marking step: (192 - 15) / 3 = 59 and (144 - 10) / 2 = 67, less 1/16.

    To the marking step of 1/8 in these would be 59 and 67 again: frames without their fit.
    """
    crown = {**CROWN, "method": "bench_frame", "fit_total": "1/16"}
    svgs, _ = drawn_set({**ROOM, "mark_to": "1/8", "crown": crown}, ["Z-503"])
    told = [text.replace("&quot;", '"') for text in words(svgs)]
    for figure in ("4'-10 15/16\"", "5'-6 15/16\""):
        assert f"LONG POINT {figure}" in told
        assert figure in told


def test_frames_are_alike_whatever_lies_about_their_coffers():
    """With bare walls on one side mouths differ from coffer to coffer, frames by size alone."""
    grid = {
        "length": {"coffers": 3, "start": "none", "end": "half"},
        "width": {"coffers": 2, "start": "none", "end": "none"},
    }
    svgs, answer = drawn_set({**ROOM, "grid": grid, "crown": CROWN}, ["Z-503"])
    sizes = {(c["length"]["exact"], c["width"]["exact"]) for c in answer["coffers"]}
    assert len(answer["mouldings"]["coffers"]) > len(sizes)
    assert sum(svg.count('data-view="crown-frame"') for svg in svgs) == len(sizes)


def test_coped_pieces_tell_in_which_order_they_go_up():
    svgs, _ = drawn_set({**ROOM, "crown": {**CROWN, "method": "coped_in_place"}}, ["Z-503"])
    pieces = [tag for svg in svgs for tag in re.findall(r'<g[^>]*class="crown-piece"[^>]*>', svg)]
    ends = [re.findall(r'data-(?:left|right)="(\w+)"', tag) for tag in pieces]
    assert ends == [
        ["square", "square"],
        ["coped", "square"],
        ["coped", "square"],
        ["coped", "coped"],
    ]
    assert any("Pieces go up in the order" in text for text in words(svgs))


@pytest.mark.parametrize("paper", ["letter", "a4", "ansi_d"])
def test_details_stand_on_any_paper(paper: str):
    drawing = {"paper": paper, "sheets": ["Z-502", "Z-503"]}
    prepared = prepare(json.dumps({**ROOM, "crown": CROWN, "drawing": drawing}).encode())
    assert check_drawings(prepared) == ()


def test_many_frames_are_drawn_as_far_as_the_rest_is_alike():
    """Along walls out of square each coffer is its own frame: of 25, nine stand in the table."""
    survey = {
        "sides": {"W1": 300, "W2": 303, "W3": 301, "W4": 299},
        "diagonals": {"rising": 425},
    }
    grid = {run: {"coffers": 5, "start": "half", "end": "half"} for run in ("length", "width")}
    crooked = {"mode": "follow_walls", "out_of_square": "mitred_to_corners"}
    room = {"height": 108, "survey": survey, "crooked": crooked}
    spec = {**ROOM, "room": room, "grid": grid, "crown": CROWN, "drawing": {"paper": "ansi_d"}}
    svgs, answer = drawn_set(spec, ["Z-503"])
    assert len(answer["mouldings"]["coffers"]) == 25
    assert sum(svg.count('data-view="crown-frame"') for svg in svgs) == 16
    assert any("Not drawn here: 9, from F17 to F25." in text for text in words(svgs))


def test_leaders_to_a_column_of_words_do_not_cross():
    """Targets in a heap: the leader of each higher word leaves all that wait on its lower side."""
    targets = [Pt(0, 0), Pt(4, -9), Pt(8, 7), Pt(2, 3), Pt(9, -2), Pt(1, -6), Pt(6, 1)]
    called = [Callout(target, f"WORD {n}") for n, target in enumerate(targets)]
    drawn = place_callouts(called, Column(20.0, 40.0, 0.0), load_typeface())
    lines = [
        (each.points[0], each.points[1])
        for group in drawn
        if isinstance(group, Group)
        for each in walk(group.children)
        if isinstance(each, Polyline) and not each.closed
    ]
    assert len(lines) == len(targets)

    def side(line: tuple[Pt, Pt], at: Pt) -> float:
        (a, b) = line
        return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x)

    for number, one in enumerate(lines):
        for other in lines[number + 1 :]:
            apart = side(one, other[0]) * side(one, other[1]) >= 0
            assert apart or side(other, one[0]) * side(other, one[1]) >= 0


def test_no_mark_of_a_long_pole_is_cut_short():
    """Ids of two digits are the widest there are in a hall of twelve coffers in a row."""
    grid = {**ROOM["grid"], "length": {"coffers": 12, "start": "half", "end": "half"}}
    room = {**ROOM["room"], "length": 768}
    for paper in ("letter", "arch_d"):
        spec = {**ROOM, "room": room, "grid": grid, "drawing": {"paper": paper}}
        svgs, _ = drawn_set(spec, ["Z-701"])
        assert "XB-11 MID" in words(svgs)
        assert [text for text in words(svgs) if text.endswith("…")] == []
