"""Plans of sheets: the cuts are made one by one on paper, and leave what the plan says."""

from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.model.faults import SpecRefused
from lacunar.takeoff.cutting.asked import Grain, Proof
from lacunar.takeoff.cutting.guillotine import Shape, SheetGrid, counted
from lacunar.takeoff.cutting.rasters import cut_places
from tests.takeoff.cutting.asking import inches, sheet_plan
from tests.takeoff.cutting.checking import cents

PANELS = [
    {"id": "N1", "length": "41 1/4", "width": "38 1/2", "quantity": 9},
    {"id": "N2", "length": "56 3/8", "width": "22 3/4", "quantity": 6, "grain": "length"},
]
SHEETS = [
    {"id": "4x8", "length": 96, "width": 48, "price": 62},
    {"id": "4x10", "length": 120, "width": 48, "price": 84},
]


def sawn(sheet, kerf, trim):
    """The parts a sheet's cuts leave, by name, each cut made on the part that it names."""
    zero = inches(0)
    whole = (trim, trim, sheet.length - trim * 2, sheet.width - trim * 2)
    parts = {"sheet": whole}
    for number, cut in enumerate(sheet.cuts, 1):
        x, y, length, width = parts.pop(cut.part)
        assert (cut.number, cut.x, cut.y, cut.length, cut.width) == (number, x, y, length, width)
        past = cut.at + kerf
        if cut.across is Grain.LENGTH:
            assert zero < cut.at < length
            pair = (x, y, cut.at, width), (x + past, y, length - past, width)
        else:
            assert zero < cut.at < width
            pair = (x, y, length, cut.at), (x, y + past, length, width - past)
        parts[f"{number}a"], parts[f"{number}b"] = pair
    return {name: part for name, part in parts.items() if min(part[2:]) > zero}


def hold_against_cuts(found, document):
    """Each sheet's cuts leave its panels and offcuts and nothing else; all panels are there."""
    kerf, trim = (inches(document.get(name, 0)) for name in ("kerf", "edge_trim"))
    made = {}
    for sheet in found.sheets:
        parts = sawn(sheet, kerf, trim)
        told = (*sheet.panels, *sheet.offcuts)
        assert {each.part: (each.x, each.y, each.length, each.width) for each in told} == parts
        assert len(told) == len(parts)
        for panel in sheet.panels:
            asked = next(each for each in document["panels"] if each["id"] == panel.panel)
            edges = [inches_of(asked["length"]), inches_of(asked["width"])]
            lying = [panel.length, panel.width]
            assert lying == (edges[::-1] if panel.turned else edges)
            assert not (panel.turned and asked.get("grain") == "length")
            made[panel.panel] = made.get(panel.panel, 0) + 1
    assert made == {each["id"]: each["quantity"] for each in document["panels"]}


def inches_of(text):
    whole, _, part = str(text).removesuffix(" in").partition(" ")
    return inches(Fraction(whole) + Fraction(part or 0))


@pytest.mark.parametrize("trim", [0, "1/8"])
def test_the_cuts_leave_what_the_plan_says(trim):
    document = {"kerf": "1/8", "edge_trim": trim, "sheets": SHEETS, "panels": PANELS}
    found = sheet_plan(**document)
    hold_against_cuts(found, document)
    assert cents(found.lower_bound) <= cents(found.cost)
    taken = {each.sheet: each.quantity for each in found.taken}
    prices = {"4x8": 62, "4x10": 84}
    assert cents(found.cost) == 100 * sum(prices[sheet] * n for sheet, n in taken.items())


def test_two_halves_do_not_come_out_of_a_sheet_with_a_saw_cut():
    # 2 * 24 + 1/8 > 48; the widest of which there are two is (48 - 1/8) / 2 = 23 15/16.
    asked = {"kerf": "1/8", "sheets": [{"length": 96, "width": 48, "price": 1}]}
    for width, sheets in ((24, 2), ("23 15/16", 1)):
        panels = [{"id": "N", "length": 96, "width": width, "quantity": 2, "grain": "length"}]
        found = sheet_plan(**asked, panels=panels)
        assert len(found.sheets) == sheets
        assert found.proof is Proof.BOUND
        hold_against_cuts(found, {**asked, "panels": panels})


def test_grain_keeps_a_panel_from_being_turned():
    asked = {"kerf": 0, "sheets": [{"length": 96, "width": 48, "price": 1}]}
    wanted = {"id": "N", "length": 40, "width": 48, "quantity": 2}
    along = sheet_plan(**asked, panels=[{**wanted, "grain": "length"}])
    assert (len(along.sheets), {panel.turned for panel in along.sheets[0].panels}) == (1, {False})
    # with its width along the grain, its 48 lie along the sheet: two of them are its 96
    across = sheet_plan(**asked, panels=[{**wanted, "grain": "width"}])
    assert (len(across.sheets), {panel.turned for panel in across.sheets[0].panels}) == (1, {True})
    with pytest.raises(SpecRefused) as refused:
        sheet_plan(**asked, panels=[{**wanted, "length": 50, "grain": "width"}])
    assert [fault.code for fault in refused.value.faults] == ["panel_larger_than_sheets"]


def test_without_prices_as_little_area_as_can_be_is_taken():
    found = sheet_plan(
        kerf=0,
        sheets=[{"length": 96, "width": 48}, {"length": 48, "width": 48}],
        panels=[{"length": 48, "width": 48, "quantity": 3}],
    )
    assert (found.area, found.least_area, found.cost) == ("48", "48", None)
    assert found.proven_best


def test_a_supply_of_sheets_is_not_overdrawn():
    asked = {
        "kerf": 0,
        "sheets": [
            {"id": "odd", "length": 50, "width": 50, "price": 1, "supply": 1},
            {"id": "full", "length": 96, "width": 48, "price": 10},
        ],
        "panels": [{"length": 48, "width": 48, "quantity": 3}],
    }
    taken = {each.sheet: each.quantity for each in sheet_plan(**asked).taken}
    assert taken == {"odd": 1, "full": 1}
    del asked["sheets"][1]
    with pytest.raises(SpecRefused) as refused:
        sheet_plan(**asked)
    assert [fault.code for fault in refused.value.faults] == ["stock_runs_out"]


def test_many_odd_panels_are_planned_within_a_bound_by_area():
    panels = [
        {"id": f"N{n}", "length": f"{300 + 37 * n}/16 in", "width": f"{170 + 23 * n}/16 in"}
        for n in range(14)
    ]
    document = {
        "kerf": "1/8",
        "sheets": [{"length": 96, "width": 48, "price": 50}],
        "panels": [{**panel, "quantity": 3 + n % 4} for n, panel in enumerate(panels)],
        "effort": "quick",
    }
    found = sheet_plan(**document)
    assert cents(found.lower_bound) <= cents(found.cost)
    made = [panel.panel for sheet in found.sheets for panel in sheet.panels]
    assert len(made) == sum(each["quantity"] for each in document["panels"])


@settings(max_examples=60, deadline=None)
@given(
    st.tuples(st.integers(3, 14), st.integers(3, 14)),
    st.lists(
        st.tuples(st.integers(1, 9), st.integers(1, 9), st.integers(0, 30)), min_size=1, max_size=4
    ),
)
def test_a_sheet_holds_what_trying_every_cut_gives(size, pieces):
    length, width = size
    shapes = [
        Shape(kind, a, b) for kind, (a, b, _) in enumerate(pieces) if a <= length and b <= width
    ]
    values = [value for _, _, value in pieces]
    places = (
        cut_places([(shape.length, length) for shape in shapes], length),
        cut_places([(shape.width, width) for shape in shapes], width),
    )

    @cache
    def most(x, y):
        """Every cut at every tick, by plain recursion."""
        best = max((v for a, b, v in pieces if a <= x and b <= y), default=0)
        for at in range(1, x // 2 + 1):
            best = max(best, most(at, y) + most(x - at, y))
        for at in range(1, y // 2 + 1):
            best = max(best, most(x, at) + most(x, y - at))
        return best

    worth, tree = SheetGrid(size, places, shapes).most(values)
    assert worth == most(length, width)
    counts = counted(tree, len(values))
    assert sum(n * value for n, value in zip(counts, values, strict=True)) == worth
