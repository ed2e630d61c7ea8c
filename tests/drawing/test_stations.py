"""Stations lie on the plan where they were measured, with clear ids; the table tells them all."""

import json

import pytest

from lacunar.drawing.elements import Group, Segments, Text, walk
from lacunar.workflow.check import check_drawings
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import Prepared, prepare

SAGGING = [
    {"name": name, "length": x, "width": y, "above_line": line}
    for name, x, y, line in (
        ("a", 60, 10, "20 1/2"),
        ("b", 60, 90, 20),
        ("gy by the hearth, low", 60, 170, "20 1/4"),
        ("d", 239, 179, "20 3/4"),
    )
]


def prepared(stations: list[dict[str, object]], **more: object) -> Prepared:
    told = {"stations": stations} if stations else {}
    spec = {"room": {"length": 240, "width": 180, "height": 108, **told}, **more}
    return prepare(json.dumps(spec).encode())


def groups(ready: Prepared, kind: str) -> list[Group]:
    sheet_set, _ = compose_sheets(ready)
    found = (each for sheet in sheet_set.sheets for each in walk(sheet.children))
    return [each for each in found if isinstance(each, Group) and each.kind == kind]


def test_no_stations_leave_no_marks_and_no_table():
    ready = prepared([])
    assert groups(ready, "station") == []
    assert groups(ready, "stations-table") == []


def test_every_station_is_marked_with_its_id_where_there_is_room():
    marks = groups(prepared(SAGGING), "station")
    assert [mark.data["id"] for mark in marks] == [each["name"] for each in SAGGING]
    for mark in marks:
        words = [each.text for each in walk(mark.children) if isinstance(each, Text)]
        assert len(words) == 1
        shown = words[0].rstrip("…")
        assert shown
        assert mark.data["id"].startswith(shown)


def test_crosses_stand_as_far_apart_as_their_stations():
    marks = groups(prepared(SAGGING), "station")
    spots = []
    for mark in marks:
        arms = next(each for each in walk(mark.children) if isinstance(each, Segments)).lines
        (near, far), _ = arms
        spots.append(((near.x + far.x) / 2, (near.y + far.y) / 2))
    view = groups(prepared(SAGGING), "view")[0]
    scale = int(view.data["scale"])
    # From a to b is 80 in up the plan, from a to d 179 in to the right: 25.4 mm each.
    assert spots[0][1] - spots[1][1] == pytest.approx(80 * 25.4 / scale)
    assert spots[3][0] - spots[0][0] == pytest.approx(179 * 25.4 / scale)


def test_a_station_under_a_coffers_id_is_in_the_table_alone():
    # The only coffer's middle, where its id stands.
    under = [{"name": "mid", "length": 120, "width": 90, "above_line": 20}]
    one = {"coffers": 1, "start": "half", "end": "half"}
    ready = prepared(under, grid={"length": one, "width": one})
    assert groups(ready, "station") == []
    assert [row.data["of"] for row in groups(ready, "station-row")] == ["mid"]
    assert check_drawings(ready) == ()


def test_the_table_tells_every_station_and_its_sides():
    tables = groups(prepared(SAGGING), "stations-table")
    told: dict[str, list[str]] = {"stations": [], "station-sides": []}
    for table in tables:
        rows = [each for each in walk(table.children) if isinstance(each, Group)]
        for row in (each for each in rows if each.data["of"] in ("b", "XB-1")):
            cells = [each.text for each in walk(row.children) if isinstance(each, Text)]
            told[table.id.partition("-table")[0]] += cells
    # The long name leaves the last column no room beside the others, so that it goes on below.
    # The ceiling at the lowest station is as high as the room, and needs no shim.
    assert told["stations"] == ["b", "5'-0\"", "7'-6\"", "9'-0\"", "b", '0"']
    assert told["station-sides"][:2] == ["XB-1", "a"]


def test_many_stations_go_on_and_stay_clear_of_all_words():
    many = [
        {
            "length": 2 + 14 * column,
            "width": 5 + 17 * row,
            "above_line": 20 + (row * column) % 5 / 8,
        }
        for row in range(11)
        for column in range(17)
    ]
    ready = prepared(many, drawing={"paper": "arch_d"})
    assert check_drawings(ready) == ()
    assert {row.data["of"] for row in groups(ready, "station-row")} >= {"H1", "H187"}
