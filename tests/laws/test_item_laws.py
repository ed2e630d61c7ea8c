"""The law of the clear place: it is clear, and no place of a fine grid is both clear and nearer."""

import json
from collections.abc import Iterator
from fractions import Fraction

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.item_records import CeilingItem
from lacunar.layout.records import ElementKind, Layout
from lacunar.model.assumptions import resolve
from lacunar.model.ceiling_items import Mounting
from lacunar.model.faults import SpecRefused
from lacunar.model.moulding import FlatPlace
from lacunar.model.room import RunName
from tests.laws.random_specs import random_specs

SPECS = 90
GRID = 12
"""So many places along each run are tried about an item."""

Box = tuple[Fraction, Fraction, Fraction, Fraction]


def layouts() -> Iterator[Layout]:
    for spec in random_specs(SPECS, seed=31):
        try:
            yield lay_out(resolve(read_spec(json.dumps(spec).encode())).ceiling)
        except SpecRefused:
            continue


def free_boxes(layout: Layout) -> list[Box]:
    """What is free in each coffer: within the mouldings at the ceiling and the lower edges, taken
    from the coffers' corners, seen openings and the beams beside them."""
    edge = sum(
        (
            f.thickness.inches
            for f in layout.ceiling.flat_mouldings
            if f.at is FlatPlace.BOTTOM_EDGE
        ),
        Fraction(0),
    )
    found = []
    for coffer in layout.coffers:
        trim = layout.mouldings.of(coffer.id)
        sides = []
        for run, number, low, opening, seen in (
            (RunName.LENGTH, coffer.column, coffer.corners[0].x, coffer.length, trim.seen_length),
            (RunName.WIDTH, coffer.row, coffer.corners[0].y, coffer.width, trim.seen_width),
        ):
            covered = (opening.value - seen.value).inches / 2
            before, after = beside(layout, run, number)
            near = low.inches + max(covered, out(layout, before, edge))
            far = (low + opening.value).inches - max(covered, out(layout, after, edge))
            sides.append((near, far))
        (left, right), (bottom, top) = sides
        found.append((left, right, bottom, top))
    return found


def beside(layout: Layout, run: RunName, number: int) -> tuple[str | None, str | None]:
    elements = layout.run(run).elements
    places = [n for n, each in enumerate(elements) if each.kind is ElementKind.COFFER]
    at = places[number - 1]
    before = elements[at - 1].id if at else None
    return before, elements[at + 1].id if at + 1 < len(elements) else None


def out(layout: Layout, beam: str | None, edge: Fraction) -> Fraction:
    if beam is None:
        return Fraction(0)
    profile = next(p for p in layout.profiles if beam in p.used_by)
    return edge + profile.overhang.inches


def is_clear(item: CeilingItem, x: Fraction, y: Fraction, layout: Layout, free: list[Box]) -> bool:
    half_x, half_y, gap = (
        each.inches for each in (item.length / 2, item.width / 2, item.clearance)
    )
    left, right, low, high = x - half_x, x + half_x, y - half_y, y + half_y
    inside = any(
        a <= left - gap and right + gap <= b and c <= low - gap and high + gap <= d
        for a, b, c, d in free
    )
    if not inside or on_joist(item, (left, right, low, high), layout):
        return False
    for other in layout.items.items:
        if other.id == item.id:
            continue
        keep = max(gap, other.clearance.inches)
        apart_x = abs(x - other.x.value.inches) - half_x - other.length.inches / 2
        apart_y = abs(y - other.y.value.inches) - half_y - other.width.inches / 2
        if apart_x < keep and apart_y < keep:
            return False
    return True


def on_joist(item: CeilingItem, body: Box, layout: Layout) -> bool:
    lines = layout.backing.joists
    if lines is None or item.mounting is not Mounting.RECESSED:
        return False
    near, far = body[:2] if lines.on is RunName.LENGTH else body[2:]
    half = lines.width.inches / 2
    return any(
        near < joist.center.value.inches + half and far > joist.center.value.inches - half
        for joist in lines.joists
    )


def test_an_item_has_conflicts_just_where_it_is_not_clear():
    judged = 0
    for layout in layouts():
        free = free_boxes(layout)
        for item in layout.items.items[-6:]:
            x, y = item.x.value.inches, item.y.value.inches
            assert is_clear(item, x, y, layout, free) is not bool(item.conflicts)
            judged += 1
    assert judged > 60


def test_the_nearest_clear_place_is_clear_and_nothing_nearer_is():
    judged = 0
    for layout in layouts():
        free = free_boxes(layout)
        for item in layout.items.items[-6:]:
            place = item.nearest_clear
            if place is None:
                continue
            judged += 1
            x, y = item.x.value.inches, item.y.value.inches
            assert is_clear(item, place.x.inches, place.y.inches, layout, free)
            dx, dy = place.move_x.value.inches, place.move_y.value.inches
            far = max(abs(dx), abs(dy)) + max(abs(dx), abs(dy)) / 2
            nearest = dx * dx + dy * dy
            for i in range(-GRID, GRID + 1):
                for j in range(-GRID, GRID + 1):
                    off_x, off_y = far * i / GRID, far * j / GRID
                    if off_x**2 + off_y**2 < nearest:
                        assert not is_clear(item, x + off_x, y + off_y, layout, free)
    assert judged > 15
