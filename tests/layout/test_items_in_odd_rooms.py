"""Ceiling items in rooms with other than four walls, or with columns in them."""

from fractions import Fraction
from typing import Any

import pytest
import shapely

from lacunar.layout.item_records import CeilingItem, Meets
from lacunar.layout.records import Layout
from tests.layout.laying_out import Spec, laid_out
from tests.layout.test_columns import square, with_columns
from tests.layout.test_outlines import ELL, inch, outlined, room

CUT_OFF = {
    "points": [{"x": x, "y": y} for x, y in [(0, 0), (0, 180), (200, 180), (240, 140), (240, 0)]]
}


def lamp(x: Any, y: Any, size: Any = 6, **more: Any) -> dict[str, Any]:
    return {"kind": "light", "diameter": size, "x": x, "y": y, "mounting": "surface", **more}


def only(layout: Layout) -> CeilingItem:
    (item,) = layout.items.items
    return item


def with_lamp(spec: Spec, item: dict[str, Any]) -> Layout:
    spec["room"]["ceiling_items"] = [item]
    return laid_out(spec)


def met(item: CeilingItem) -> set[tuple[Meets, str]]:
    return {(each.meets, each.id) for each in item.conflicts}


def test_an_item_in_a_column_moves_off_it():
    """The column is from 85 to 95 both ways; a lamp of 6 at 92, 90 goes right, to 95 + 3."""
    item = only(with_lamp(with_columns(square(90, 90, 10)), lamp(92, 90)))
    assert met(item) == {(Meets.COLUMN, "COL-1")}
    assert item.nearest_clear is not None
    assert (item.nearest_clear.x, item.nearest_clear.y) == (inch(98), inch(90))
    assert item.nearest_clear.coffer == "B2"
    assert item.nearest_clear.beam_margin == inch(0)


def test_an_item_keeps_off_crown_round_a_column_with_its_clearance():
    spec = with_columns(square(90, 90, 10), crown={"face": "2 1/2", "fit_total": 0})
    layout = with_lamp(spec, lamp(99, 90, clearance=2))
    crown = layout.mouldings.crown
    assert crown is not None
    item = only(layout)
    assert (Meets.MOULDING, "crown") in met(item)
    assert item.nearest_clear is not None
    # From the column's face 95: what crown projects, 2 clear, and half of 6.
    assert item.nearest_clear.x == inch(95) + crown.projection.value + inch(5)


def test_an_item_at_an_angled_wall_moves_square_off_it():
    """W5 goes from 200, 180 to 240, 140, so that x + y = 380 on it; bare, and no crown.

    A lamp of 6 counts as the square about it: its corner comes at x + y = 380 where its center is
    at x + y = 374. From 190, 188 less 4: straight back by 45 degrees.
    """
    spec = room({**CUT_OFF, "walls": [{"wall": "W5", "stands": "none"}]}, (1, 1))
    item = only(with_lamp(spec, lamp(214, 164)))
    assert met(item) == {(Meets.WALL, "W5")}
    (conflict,) = item.conflicts
    assert conflict.overlap.value == inch(4)
    assert item.nearest_clear is not None
    assert (item.nearest_clear.x, item.nearest_clear.y) == (inch(212), inch(162))


def test_an_item_on_a_beam_goes_to_a_cut_coffer():
    """Beside the notch of an ell: the nearest clear place is in the cut coffer there."""
    item = only(with_lamp(room(ELL, (5, 4)), lamp(168, 92)))
    assert (Meets.BEAM, "LB-2") in met(item)
    assert item.nearest_clear is not None
    # LB-2 is from 86 1/2 to 93 1/2; C4 from there to W6's beam at 104 1/2.
    assert (item.nearest_clear.coffer, item.nearest_clear.y) == ("C4", inch("193/2"))


def test_an_item_beyond_an_angled_wall_is_brought_back():
    spec = room({**CUT_OFF, "walls": [{"wall": "W5", "stands": "none"}]}, (1, 1))
    item = only(with_lamp(spec, lamp(232, 172)))
    assert item.coffer is None
    (conflict,) = item.conflicts
    # x + y is 404 there, and is to be 374: 30 along either run.
    assert (conflict.id, conflict.overlap.value) == ("W5", inch(30))
    assert item.nearest_clear is not None
    assert item.nearest_clear.x + item.nearest_clear.y == inch(374)


def test_joists_and_other_items_are_kept_clear_of_too():
    spec = with_columns(square(90, 90, 10))
    spec["room"]["joists"] = {"parallel_to": "width", "spacing": 16, "first": 98}
    spec["room"]["ceiling_items"] = [
        lamp(92, 90, mounting="recessed"),
        lamp(108, 90),
    ]
    layout = laid_out(spec)
    first, _ = layout.items.items
    clear = first.nearest_clear
    assert clear is not None
    assert clear.joist_margin is not None
    assert clear.item_margin is not None
    assert clear.joist_margin >= inch(0)
    assert clear.item_margin >= inch(0)


def test_an_item_that_fits_nowhere_is_told_none():
    spec = with_columns(square(90, 90, 10))
    item = only(with_lamp(spec, lamp(92, 90, 54)))
    assert item.nearest_clear is None


def seen(layout: Layout, deep: float) -> list[shapely.Polygon]:
    """What mouldings leave of every coffer, by shapely's buffers with mitred corners."""
    whole = [
        shapely.Polygon([(float(p.x.inches), float(p.y.inches)) for p in coffer.corners])
        for coffer in layout.coffers
    ]
    cut = [
        shapely.Polygon(
            [(float(s.x.inches), float(s.y.inches)) for s in coffer.corners],
            [[(float(s.x.inches), float(s.y.inches)) for s in h.corners] for h in coffer.holes],
        )
        for coffer in outlined(layout).partial_coffers
    ]
    return [each.buffer(-deep, join_style="mitre", mitre_limit=10) for each in (*whole, *cut)]


@pytest.mark.parametrize("crown", [False, True])
def test_nothing_nearer_is_clear(crown: bool):
    """Places round an item are tried by shapely: none nearer than the one told is clear."""
    spec = room(CUT_OFF, (3, 2))
    spec["room"]["columns"] = [square(170, 60, 9), square(60, 140, 12)]
    if crown:
        spec["crown"] = {"face": "2 1/4", "fit_total": 0}
    places = [(66, 133), (172, 66), (210, 162), (78, 90), (160, 176), (237, 120), (3, 3)]
    spec["room"]["ceiling_items"] = [lamp(x, y, 5) for x, y in places]
    layout = laid_out(spec)
    section = layout.mouldings.crown
    deep = float(section.projection.value.inches) if section else 0.0
    areas = seen(layout, deep)
    for item in layout.items.items:
        blocked = shapely.union_all(
            [
                shapely.box(x - 2.5, y - 2.5, x + 2.5, y + 2.5)
                for x, y in places
                if (x, y) != (item.x.value.inches, item.y.value.inches)
            ]
        )
        free = [area.difference(blocked) for area in areas]
        clear = item.nearest_clear
        assert clear is not None
        x, y = float(item.x.value.inches), float(item.y.value.inches)
        at = float(clear.x.inches), float(clear.y.inches)
        assert fits(free, at, 2.499), item.id
        away = ((at[0] - x) ** 2 + (at[1] - y) ** 2) ** 0.5
        steps = [n / 8 for n in range(-int(away * 8) - 1, int(away * 8) + 2)]
        nearer = [
            (dx, dy) for dx in steps for dy in steps if dx * dx + dy * dy < (away - 0.01) ** 2
        ]
        assert not any(fits(free, (x + dx, y + dy), 2.501) for dx, dy in nearer), item.id


def fits(free: list[shapely.Polygon], at: tuple[float, float], half: float) -> bool:
    """Whether a square about a place lies in one of some areas."""
    box = shapely.box(at[0] - half, at[1] - half, at[0] + half, at[1] + half)
    return any(area.contains(box) for area in free)


def test_laid_out_where_it_was_told_to_be_clear_an_item_meets_nothing():
    spec = room(CUT_OFF, (3, 2), crown={"face": "2 1/4"})
    spec["room"]["columns"] = [square(170, 60, 9)]
    for x, y in [(172, 66), (210, 162), (237, 120), (78, 90)]:
        clear = only(with_lamp(spec, lamp(x, y, 5, clearance="1/2"))).nearest_clear
        assert clear is not None
        again = {"x": str(clear.x.inches), "y": str(clear.y.inches)}
        at = {name: Fraction(text) for name, text in again.items()}
        moved = lamp(float(at["x"]), float(at["y"]), 5, clearance="0.4999")
        assert only(with_lamp(spec, moved)).conflicts == (), (x, y)
