"""Seeded defects on the sheet of a room with other than four walls: each is found."""

from collections.abc import Callable
from typing import Any
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from tests.drawing.checker.drawn_sets import Drawn, drawn_set
from tests.drawing.checker.spoiled import Spoiled, points
from tests.layout.laying_out import laid_out

CORNERS = [(0, 0), (0, 200), (110, 200), (134, 176), (178, 176), (178, 130), (280, 130), (280, 0)]
SPEC: dict[str, Any] = {
    "units": "in",
    "room": {
        "height": 108,
        "outline": {
            "points": [{"x": x, "y": y} for x, y in CORNERS],
            "surfaces": [{"side": 5, "bow": {"in": "1/4"}}],
        },
        "ceiling_items": [{"kind": "light", "diameter": 6, "x": 100, "y": 48}],
        "wall_features": [
            {"kind": "window", "wall": "W8", "center": 50, "width": 30},
            {"kind": "cabinet", "wall": "W7", "center": 23, "width": 30},
        ],
        "columns": [
            {"name": "Post", "x": 100, "y": 40, "length": 12, "width": 12},
            {"x": 212, "y": 30, "length": 10, "width": 10},
        ],
    },
    "grid": {
        "length": {"coffers": 4, "start": "half", "end": "none"},
        "width": {"coffers": 3, "start": "half", "end": "half"},
    },
    "crown": {"face": "2 1/2"},
    "drawing": {"paper": "arch_d"},
}


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    layout = laid_out(SPEC)
    assert layout.outlined is not None
    coffer = layout.outlined.partial_coffers[0]
    sides = [
        {"side": number, "length": f"{float(side.length.value.inches):.3f}"}
        for number, side in enumerate(coffer.sides, start=1)
    ]
    taken = {"coffer": coffer.id, "cut_sides": sides[:3]}
    openings = {"grid": layout.grid_id, "coffers": [taken]}
    return drawn_set({**SPEC, "measured_openings": openings})


def found(drawn: Drawn, spoil: Callable[[Spoiled], object]) -> set[int]:
    """The points that are not kept once the first sheet is spoiled."""
    (svg, *others), answer = drawn
    sheet = Spoiled(svg)
    spoil(sheet)
    return points(check_set((sheet.svg, *others), answer, load_typeface()))


def cut_coffer(drawn: Drawn, *, hole: bool = False) -> str:
    """The id of the first cut coffer, or of the first with a column free in it."""
    coffers = drawn[1]["outlined"]["partial_coffers"]
    return next(str(each["id"]) for each in coffers if bool(each["holes"]) or not hole)


def inner_wall(drawn: Drawn, name: str) -> str:
    """The group of a wall."""
    walls = drawn[1]["outlined"]["walls"]
    side = next(wall["side"] for wall in walls if wall["wall"] == name)
    return f"wall-{name}-{side}"


def test_the_sheets_as_drawn_have_no_findings(drawn: Drawn) -> None:
    assert found(drawn, lambda sheet: None) == set()


def test_the_room_has_what_is_spoiled(drawn: Drawn) -> None:
    room = drawn[1]["outlined"]
    assert len(room["columns"]) == 2
    assert any(each["holes"] for each in room["partial_coffers"])
    assert room["angled_beams"]


@pytest.mark.parametrize("wall", ["W1", "W3", "W5", "W7"])
def test_a_wall_that_is_not_where_its_corners_are_is_found(drawn: Drawn, wall: str) -> None:
    identity = inner_wall(drawn, wall)
    assert {16, 79} & found(drawn, lambda sheet: sheet.move(identity, 0.3, 0.3))


def test_a_wall_that_is_left_out_is_found(drawn: Drawn) -> None:
    identity = inner_wall(drawn, "W6")
    assert 79 in found(drawn, lambda sheet: sheet.remove(identity))


def test_a_cut_coffer_elsewhere_is_found(drawn: Drawn) -> None:
    identity = cut_coffer(drawn)
    assert 16 in found(drawn, lambda sheet: sheet.move(f"coffer-{identity}", 0.4, 0.0))


def test_a_cut_coffer_left_out_is_found(drawn: Drawn) -> None:
    identity = cut_coffer(drawn)
    assert 16 in found(drawn, lambda sheet: sheet.remove(f"coffer-{identity}"))


def test_a_cut_coffer_under_another_id_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part(f"coffer-{cut_coffer(drawn)}", "text").text = "Z9"

    assert 14 in found(drawn, spoil)


def test_a_beam_at_an_angled_wall_elsewhere_is_found(drawn: Drawn) -> None:
    beam = drawn[1]["outlined"]["angled_beams"][0]["id"]
    assert 16 in found(drawn, lambda sheet: sheet.move(f"angled-beam-{beam}", 0.0, 0.4))


def test_a_beam_drawn_through_a_column_is_found(drawn: Drawn) -> None:
    beams = drawn[1]["outlined"]["columns"][1]["stops"]
    assert beams

    def spoil(sheet: Spoiled) -> None:
        line = sheet.part(f"beam-{beams[0]}", "path")
        start, _, end = line.attrib["d"].partition(" L")
        x, y = (float(each) for each in end.split(" "))
        line.set("d", f"{start} L{x:.3f} {y - 3:.3f}")

    assert 16 in found(drawn, spoil)


@pytest.mark.parametrize("number", [1, 2])
def test_a_column_elsewhere_is_found(drawn: Drawn, number: int) -> None:
    assert found(drawn, lambda sheet: sheet.move(f"column-{number}", 0.3, 0.0)) == {90}


@pytest.mark.parametrize("number", [1, 2])
def test_a_feature_elsewhere_in_an_inner_wall_is_found(drawn: Drawn, number: int) -> None:
    assert 76 in found(drawn, lambda sheet: sheet.move(f"wall-feature-{number}", 0.4, 0.4))


def test_an_item_elsewhere_is_found(drawn: Drawn) -> None:
    assert 75 in found(drawn, lambda sheet: sheet.move("item-L-1", 0.4, 0.0))


def test_a_column_left_out_is_found(drawn: Drawn) -> None:
    assert 90 in found(drawn, lambda sheet: sheet.remove("column-2"))


def test_a_column_without_its_hatch_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        hatch = sheet.part("column-1", "path")
        sheet.group("column-1").remove(hatch)

    assert found(drawn, spoil) == {90}


def test_a_column_that_states_another_place_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("column-1").set("data-left-mm", "10")

    assert found(drawn, spoil) == {90}


def test_a_column_under_another_name_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("column-name-1", "text").text = "Pole"

    assert found(drawn, spoil) == {90}


def test_a_name_that_stands_off_its_column_is_found(drawn: Drawn) -> None:
    assert 90 in found(drawn, lambda sheet: sheet.move("column-name-1", 0.0, -16.0))


def test_a_column_that_the_legend_does_not_explain_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        rows = [g for g in sheet.parts("legend", "g") if g.get("data-entry") == "column"]
        rows[0].set("data-entry", "pillar")

    assert 5 in found(drawn, spoil)


def test_crown_of_a_cut_coffer_elsewhere_is_found(drawn: Drawn) -> None:
    identity = f"crown-{cut_coffer(drawn, hole=True)}"
    assert 91 in found(drawn, lambda sheet: sheet.move(identity, 0.3, 0.0))


def test_crown_that_does_not_go_round_a_column_is_found(drawn: Drawn) -> None:
    identity = f"crown-{cut_coffer(drawn, hole=True)}"

    def spoil(sheet: Spoiled) -> None:
        rings = [one for one in sheet.parts(identity, "path") if one.attrib["d"].endswith("Z")]
        sheet.group(identity).remove(rings[1])

    assert found(drawn, spoil) == {91}


def test_crown_left_out_of_a_cut_coffer_is_found(drawn: Drawn) -> None:
    identity = f"crown-{cut_coffer(drawn, hole=True)}"
    assert found(drawn, lambda sheet: sheet.remove(identity)) == {91}


def cell(sheet: Spoiled, table: str, name: str) -> tuple[Element, Element]:
    """A named cell of a table that tells a figure, and its text."""
    cells = [
        one
        for group in sheet.root.iter()
        if (group.get("id") or "").startswith(table)
        for one in group.iter()
        if one.get("data-name") == name and one.get("data-value")
    ]
    return cells[0], next(iter(cells[0]))


@pytest.mark.parametrize(
    ("table", "name"),
    [
        ("outline-walls-table", "length"),
        ("outline-walls-table", "at"),
        ("outline-walls-table", "face"),
        ("cut-sides-table", "length"),
        ("cut-sides-table", "crown"),
        ("angled-boards-table", "side"),
        ("angled-boards-table", "bottom"),
        ("columns-table", "left"),
        ("columns-table", "upper"),
    ],
)
def test_a_table_that_tells_another_figure_is_found(drawn: Drawn, table: str, name: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        group, text = cell(sheet, table, name)
        group.set("data-value", "1 in")
        text.text = "0'-1\""

    assert 92 in found(drawn, spoil)


def test_a_side_told_other_than_measured_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        rows = [g for g in sheet.parts("openings", "g") if g.get("data-what") == "2"]
        texts = [one for one in rows[0].iter() if one.tag.endswith("text")]
        texts[2].text = "0'-1\""

    assert 74 in found(drawn, spoil)


def test_a_table_left_out_is_found(drawn: Drawn) -> None:
    assert 92 in found(drawn, lambda sheet: sheet.remove("columns-table"))


def test_a_datum_elsewhere_is_found(drawn: Drawn) -> None:
    assert 16 in found(drawn, lambda sheet: sheet.move("datum", 0.3, 0.0))


def test_an_overall_that_is_not_the_span_is_found(drawn: Drawn) -> None:
    def spoil(sheet: Spoiled) -> None:
        figure = sheet.part("string-length-overall", "text")
        figure.text = "20'-0\""

    assert {9, 10} & found(drawn, spoil)
