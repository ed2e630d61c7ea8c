"""Cut lists, cutting diagrams and material lists: what stands on them, by hand, and where."""

import json
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

import pytest

from lacunar.drawing.annotation import ColumnSpace
from lacunar.drawing.elements import Element, Group, Polyline, Sheet, Text, walk
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.sheet_set import SheetSet, compose
from lacunar.drawing.sheets.list_notes import assumed_texts, fault_texts
from lacunar.drawing.sheets.part_words import end_words, where_words
from lacunar.drawing.sheets.wide_tables import WideCell, WideColumn, WideGroup, WideRow, WideTable
from lacunar.drawing.views.sheet_cuts import DrawnSheet, sheet_cuts
from lacunar.drawing.views.sheet_cuts.look import SheetLook
from lacunar.drawing.views.stick_bars import BarLook, DrawnStick, stick_bar
from lacunar.drawing.wording import SheetWording
from lacunar.measure.angle import Angle
from lacunar.measure.length import ZERO, Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.cutting.asked import Grain
from lacunar.takeoff.cutting.plan_records import PieceOnStick, Stick
from lacunar.takeoff.cutting.sheet_records import CutSheet, PanelOnSheet, SheetCut, SheetOffcut
from lacunar.takeoff.part_records import EndCut, PartEnd
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.lists import drawn_lists
from lacunar.workflow.prepare import Prepared, prepare

ROOM: dict[str, Any] = {
    "room": {"length": "12' 3\"", "width": "10' 1\"", "height": 108},
    "grid": {"length": {"coffers": 3}, "width": {"coffers": 2}},
    "beams": {
        "crosswise": {"sides": "1x6", "bottom": "1x4"},
        "lengthwise": "same",
        "look": {"corners": "mitred"},
    },
}
LISTS = ["Z-601", "Z-602", "Z-603"]
INCHES = SheetWording(Units.INCH, Step.read("1/16", Units.INCH))
ON_PAPER = 0.001


def prepared(spec: dict[str, Any], paper: str = "tabloid", sheets: list[str] = LISTS) -> Prepared:
    drawing = {"paper": paper, "sheets": sheets}
    return prepare(json.dumps({**spec, "drawing": drawing}).encode())


def drawn(spec: dict[str, Any], paper: str = "tabloid", sheets: list[str] = LISTS) -> SheetSet:
    return compose_sheets(prepared(spec, paper, sheets))[0]


def groups(elements: tuple[Element, ...], kind: str) -> list[Group]:
    return [one for one in walk(elements) if isinstance(one, Group) and one.kind == kind]


def texts(elements: tuple[Element, ...]) -> list[str]:
    return [one.text for one in walk(elements) if isinstance(one, Text)]


def rows(sheet: Sheet, kind: str) -> Iterator[tuple[str, dict[str, str]]]:
    for row in groups(sheet.children, kind):
        cells = groups(row.children, "cell")
        yield row.data["of"], {c.data["name"]: " ".join(texts(c.children)) for c in cells}


def left_and_right(group: Group) -> tuple[float, float]:
    outline = next(one for one in group.children if isinstance(one, Polyline) and one.closed)
    xs = [point.x for point in outline.points]
    return min(xs), max(xs)


def test_bottoms_of_wall_beams_are_as_long_as_the_room_by_hand():
    """Mitred at the corners they run from wall to wall: 12'-3" and 10'-1", two of each."""
    cells = dict(rows(drawn(ROOM).sheets[0], "part-row"))
    told = {mark: (row["quantity"], row["length"]) for mark, row in cells.items()}
    assert told["BT1"] == ("2", "12'-3\"")
    assert told["BT3"] == ("2", "10'-1\"")
    assert cells["BT1"]["left"] == "Mitred 45°"
    assert cells["BT1"]["where"] == "WB-2, WB-4"
    # Mitred on edge through half a 1x4, 1 3/4 in, at both ends: 3 1/2 in shorter there.
    assert cells["BT1"]["short_length"] == "11'-11 1/2\""
    assert cells["BT2"]["short_length"] == "-"


def test_sizes_stand_in_the_order_of_a_cut_list_under_heads():
    heads = texts(drawn(ROOM).sheets[0].children)
    order = [heads.index(head) for head in ("MARK", "PART", "QTY", "T", "W", "L")]
    assert order == sorted(order)


def test_an_allowance_is_told_beside_net_sizes():
    asked = {**ROOM, "take_off": {"length_allowance": "1", "width_allowance": "1/8"}}
    sheet = drawn(asked).sheets[0]
    row = dict(rows(sheet, "part-row"))["BT1"]
    assert (row["length"], row["cut_length"]) == ("12'-3\"", "12'-4\"")
    assert (row["width"], row["cut_width"]) == ('1 3/4"', '1 7/8"')
    assert any('CUT L is 1" longer' in text for text in texts(sheet.children))


def test_narrow_paper_goes_without_the_names_of_parts():
    panelled = {**ROOM, "panel": {"kind": "sheet_goods"}}
    assert "PART" in texts(drawn(panelled, "tabloid").sheets[0].children)
    assert "PART" not in texts(drawn(panelled, "letter").sheets[0].children)


def test_without_lists_there_are_no_sheets_of_them():
    ceiling = prepared(ROOM, sheets=["Z-102", *LISTS])
    composed = compose(ceiling.layout, ceiling.digest, load_typeface())
    assert [sheet.id for sheet in composed.sheets] == ["Z-102"]


def test_lists_are_made_as_far_as_sheets_ask_for_them():
    assert drawn_lists(prepared(ROOM, sheets=["Z-101", "Z-701"])) is None
    of_parts = drawn_lists(prepared(ROOM, sheets=["Z-101", "Z-601"]))
    assert of_parts is not None
    assert of_parts.told.taken.parts
    assert of_parts.told.stocked is None
    of_stock = drawn_lists(prepared(ROOM, sheets=["Z-603"]))
    assert of_stock is not None
    assert of_stock.told.stocked is not None


def test_parts_that_no_stock_holds_leave_the_drawing_and_say_why():
    """A panel of 23 ft, without a seam, comes from no sheet."""
    corners = [{"x": x, "y": y} for x, y in ((0, 0), (0, 216), (170, 216), (290, 140), (290, 0))]
    room = {"height": 108, "outline": {"points": corners}}
    grid = {"length": {"coffers": 1}, "width": {"coffers": 1}}
    spec = {"room": room, "grid": grid, "panel": {"kind": "sheet_goods"}}
    sheets = {sheet.id: texts(sheet.children) for sheet in drawn(spec).sheets}
    assert any("CUT LIST" in text for text in sheets["Z-601"])
    for sheet in ("Z-602", "Z-603"):
        told = " ".join(sheets[sheet])
        assert "NOT CUT FROM STOCK" in told
        assert "fits no sheet" in told


def test_a_stick_is_drawn_by_hand():
    """Two pieces of 44 1/2 in from 8 ft by a saw of 1/8 in, at 1/4 in to the foot (1:48).

    44 1/2 in are 1130.3 mm, 23.548 on paper; the saw takes 3.175, 0.066; left are 6 3/4 in, 3.572.
    """
    size = Length.of_inches(Fraction(89, 2))
    pieces = (
        PieceOnStick("SD1", size, ZERO, size),
        PieceOnStick(
            "SD1", size, Length.of_inches(Fraction(357, 8)), Length.of_inches(Fraction(713, 8))
        ),
    )
    stick = Stick(
        1, "S1", Length.of_inches(96), 1, pieces, Length.of_inches(Fraction(27, 4)), False
    )
    look = BarLook(48, 160.0, 50.8, INCHES, load_typeface())
    block = stick_bar(DrawnStick(1, "1x6", stick, 24, {"SD1": size}), look)
    first, second = (left_and_right(one) for one in groups(block.children, "stick-piece"))
    assert first[1] - first[0] == pytest.approx(1130.3 / 48, abs=ON_PAPER)
    assert second[0] - first[1] == pytest.approx(3.175 / 48, abs=ON_PAPER)
    (offcut,) = groups(block.children, "stick-offcut")
    assert left_and_right(offcut)[0] - second[1] == pytest.approx(3.175 / 48, abs=ON_PAPER)
    assert left_and_right(offcut)[1] - left_and_right(offcut)[0] == pytest.approx(
        6.75 * 25.4 / 48, abs=ON_PAPER
    )
    assert texts(block.children)[:2] == ["24 x", "8'-0\""]
    assert texts(block.children).count("3'-8 1/2\"") == 2


def test_pieces_too_small_for_their_label_are_led_out_together():
    """Five pieces of 6 in are 3.2 mm wide at 1:48: there is no room for a length in them."""
    size, saw = Length.of_inches(6), Length.of_inches(Fraction(1, 8))
    starts = [(size + saw) * n for n in range(5)]
    pieces = tuple(PieceOnStick("BX1", size, start, start + size) for start in starts)
    left = Length.of_inches(96) - pieces[-1].end - saw
    stick = Stick(1, "S1", Length.of_inches(96), 1, pieces, left, True)
    look = BarLook(48, 160.0, 50.8, INCHES, load_typeface())
    block = stick_bar(DrawnStick(1, "2x4", stick, 1, {"BX1": size}), look)
    (label,) = groups(block.children, "led-out")
    assert texts(label.children) == ['5 x BX1 6"']
    assert "To keep" in texts(block.children)


def test_more_labels_than_stand_beside_each_other_are_told_in_words():
    size, saw = Length.of_inches(3), Length.of_inches(Fraction(1, 8))
    starts = [(size + saw) * n for n in range(20)]
    pieces = tuple(PieceOnStick(f"BX{n}", size, at, at + size) for n, at in enumerate(starts, 1))
    stick = Stick(1, "S1", Length.of_inches(96), 1, pieces, ZERO, False)
    look = BarLook(48, 120.0, 50.8, INCHES, load_typeface())
    block = stick_bar(DrawnStick(1, "2x4", stick, 1, {}), look)
    (told,) = groups(block.children, "led-out")
    words = " ".join(texts(told.children))
    assert words.startswith('From the left: BX1 3"; BX2 3"')
    assert words.endswith('BX20 3"')
    assert "Nothing left" in texts(block.children)


def test_a_sheet_is_drawn_by_hand():
    """A sheet of 96 by 48 in, crosscut at 40 in: 1016 mm are 42.333 at 1:24; the rest is kept."""
    whole, cut = Length.of_inches(96), Length.of_inches(40)
    width, saw = Length.of_inches(48), Length.of_inches(Fraction(1, 8))
    rest = whole - cut - saw
    sheet = CutSheet(
        number=1,
        sheet="SH1",
        length=whole,
        width=width,
        pattern=1,
        cuts=(SheetCut(1, "sheet", ZERO, ZERO, whole, width, Grain.LENGTH, cut),),
        panels=(PanelOnSheet("PN1", "1a", ZERO, ZERO, cut, width, turned=False),),
        offcuts=(SheetOffcut("1b", cut + saw, ZERO, rest, width, usable=True),),
    )
    look = SheetLook(24, saw, INCHES, load_typeface())
    (block,) = sheet_cuts(DrawnSheet(1, "sheet", sheet, 2, {"PN1": (cut, width)}), look, 300.0)
    (panel,) = groups(block.children, "sheet-panel")
    (kept,) = groups(block.children, "sheet-offcut")
    left, right = left_and_right(panel)
    assert right - left == pytest.approx(1016 / 24, abs=ON_PAPER)
    assert left_and_right(kept)[0] - right == pytest.approx(3.175 / 24, abs=ON_PAPER)
    assert texts(panel.children) == ["PN1", "3'-4\" x 4'-0\""]
    assert texts(kept.children) == ["To keep", "4'-7 7/8\" x 4'-0\""]
    assert "1: crosscut the sheet at 3'-4\"" in texts(block.children)


def wide_table(rows_of_each: int) -> WideTable:
    columns = (WideColumn("MARK", "mark", anchor="start"), WideColumn("GOES TO", "where", True))
    groups_of_rows = tuple(
        WideGroup(
            title,
            tuple(
                WideRow(f"{title}{n}", (WideCell(f"{title}{n}"), WideCell("A1, B2, C3")))
                for n in range(rows_of_each)
            ),
        )
        for title in ("SD", "BT")
    )
    return WideTable("part", "CUT LIST", columns, groups_of_rows)


def test_heads_and_the_title_of_a_group_that_goes_on_stand_in_each_part():
    blocks = wide_table(12).blocks(ColumnSpace(120.0, 60.0), load_typeface())
    assert len(blocks) > 2
    for block in blocks:
        assert block.height <= 60.0
        assert "MARK" in texts(block.children)
    assert "SD, CONTINUED" in texts(blocks[1].children)
    told = [row.data["of"] for block in blocks for row in groups(block.children, "part-row")]
    assert told == [f"{title}{n}" for title in ("SD", "BT") for n in range(12)]


def test_cells_break_behind_commas_and_no_text_leaves_its_table():
    typeface = load_typeface()
    (block,) = wide_table(1).blocks(ColumnSpace(40.0, 100.0), typeface)
    lines = [text for text in walk(block.children) if isinstance(text, Text)]
    assert all(text.at.x <= 40.0 + ON_PAPER for text in lines)


@pytest.mark.parametrize(
    ("end", "words"),
    [
        (PartEnd(EndCut.SQUARE), "Square"),
        (PartEnd(EndCut.MITRED, Angle.of_degrees(45)), "Mitred 45°"),
        (PartEnd(EndCut.COPED, corner=Angle.of_degrees(90)), "Coped, corner 90°"),
        (PartEnd(EndCut.SQUARE, width=Length.of_inches(5)), 'Square, 5" wide'),
        (
            PartEnd(
                EndCut.NOTCHED,
                notch_along=Length.of_inches(Fraction(3, 4)),
                notch_up=Length.of_inches(2),
            ),
            'Notched 3/4" along, 2" up',
        ),
    ],
)
def test_ends_are_told_as_they_are_sawn(end: PartEnd, words: str):
    assert end_words(end, INCHES) == words


def test_places_are_told_in_their_order_and_rows_shortly():
    lists = drawn_lists(prepared({**ROOM, "crown": {"face": "3 1/4"}}))
    assert lists is not None
    parts = {part.mark: part for part in lists.told.taken.parts}
    assert where_words(parts["CR1"]) == "A1 to A3, B1 to B3"
    assert where_words(parts["BT3"]) == "WB-1, WB-3"


def test_what_was_assumed_is_told_in_words():
    made = (
        Assumption("/stock/usable_offcut", Length.of_inches(24), "shorter ones are seldom kept"),
        Assumption("/take_off/finish/kind", "primer_and_paint", "usual where trim is painted"),
    )
    assert assumed_texts(made, INCHES) == [
        "Usable offcut 2'-0\": shorter ones are seldom kept.",
        "Finish, kind primer and paint: usual where trim is painted.",
    ]


def test_why_parts_are_not_planned_is_told_with_figures_a_dozen_at_most():
    figures = {"part": "PN1", "length": Length.of_inches(100)}
    fault = Fault(
        "panel_larger_than_sheets", "/stock/sheets", "It fits no sheet.", "Part it.", figures
    )
    told = fault_texts([fault] * 15, INCHES)
    assert told[0] == "It fits no sheet. (part PN1, length 8'-4\") Part it."
    assert told[12:] == ["And 3 more like these."]


def test_the_material_list_of_a_metric_ceiling_is_metric():
    room = {"length": 3700, "width": 3100, "height": 2700}
    (sheet,) = drawn({"units": "mm", "room": room}, "a3", ["Z-603"]).sheets
    told = dict(rows(sheet, "material-row"))
    assert {row["unit"] for row in told.values()} <= {"m", "sq m", "L", "each", "cartridge"}
    bought = [row["order"] for row in told.values() if row["unit"] == "m"]
    assert bought
    assert all(" mm" in order for order in bought)


def test_the_list_adds_up_as_printed():
    """Bought is needed, waste and left over, each within half of the last place told."""
    (sheet,) = drawn(ROOM, sheets=["Z-603"]).sheets
    for _, row in rows(sheet, "material-row"):
        parts = sum(float(row[name]) for name in ("need", "waste", "left_over"))
        assert float(row["amount"]) + float(row["on_hand"]) == pytest.approx(parts, abs=0.015)


def test_a_set_of_lists_alone_needs_lists():
    ceiling = prepared(ROOM)
    with pytest.raises(SpecRefused):
        compose(ceiling.layout, ceiling.digest, load_typeface())
