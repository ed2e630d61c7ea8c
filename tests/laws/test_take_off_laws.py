"""Laws of take-offs: nothing is lost, nothing counted twice, and pooling only adds up."""

import json
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from random import Random

import pytest

from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.fixing import Fixing
from lacunar.takeoff.part_records import MaterialKind, Part, PartKind
from lacunar.takeoff.parts import parts_from, pieces_of
from lacunar.takeoff.quantities.quantity_records import QuantityKind
from lacunar.takeoff.quantities.stock_amounts import USED_FOR
from lacunar.takeoff.taken_off import take_off
from tests.laws.random_openings import measured
from tests.laws.random_specs import Spec, random_specs
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions
from tests.takeoff.reconciling import backing_of, unlike

COUNT = 60
ZERO = Length.of_inches(0)


@cache
def layouts() -> tuple[Layout, ...]:
    """Layouts of random specs; few are refused, or the laws would hold for want of ceilings."""
    found = tuple(_laid_out())
    assert len(found) > COUNT * 2 // 3
    return found


def _laid_out() -> Iterator[Layout]:
    """As planned; of every third also as measured, many coffers out of square."""
    for number, spec in enumerate(random_specs(COUNT, seed=907)):
        try:
            layout = _read(spec)
            yield layout
            if number % 3 == 0:
                openings = measured(layout, Random(f"907:{number}"))
                yield _read({**spec, "measured_openings": openings})
        except SpecRefused:
            continue


def _read(spec: Spec) -> Layout:
    return lay_out(resolve(read_spec(json.dumps(spec, default=float).encode())).ceiling)


def test_every_piece_of_a_layout_is_a_part_exactly_once():
    for layout in layouts():
        assert unlike(layout, parts_from(pieces_of(layout))) == [], layout.ceiling


def test_backing_is_as_long_in_parts_as_in_lines():
    kinds = (PartKind.BACKING, PartKind.CLEAT)
    told = [layout for layout in layouts() if layout.ceiling.fixing is not None]
    assert told
    for layout in told:
        parts = parts_from(pieces_of(layout))
        lengths = (p.length.value * p.quantity for p in parts if p.kind in kinds)
        assert sum(lengths, ZERO) == backing_of(layout)


def test_backing_is_the_same_whether_it_is_told_what_it_is_fixed_to():
    untold = [layout for layout in layouts() if layout.ceiling.fixing is None]
    assert untold
    for layout in untold:
        fixed = lay_out(replace(layout.ceiling, fixing=_usual_fixing(layout)))
        one, other = (
            sum((p.length.value * p.quantity for p in _framing(each)), ZERO)
            for each in (layout, fixed)
        )
        assert one == other


def _usual_fixing(layout: Layout) -> Fixing | None:
    spec = {**ceiling_to_json(layout.ceiling), "fixing": {}}
    return resolve(read_spec(json.dumps(spec).encode())).ceiling.fixing


def _framing(layout: Layout) -> list[Part]:
    kinds = (PartKind.BACKING, PartKind.CLEAT)
    return [part for part in parts_from(pieces_of(layout)) if part.kind in kinds]


def test_boards_of_a_layout_are_as_long_in_parts():
    for layout in layouts():
        openings = layout.measured_openings
        if layout.boards is not None and not (openings and openings.boards):
            parts = parts_from(pieces_of(layout))
            lengths = (p.length.value * p.quantity for p in parts if p.kind is PartKind.BOARD)
            assert sum(lengths, ZERO) == layout.boards.lineal.value


def test_panels_cover_their_area_however_they_are_parted():
    for layout in layouts():
        parts = parts_from(pieces_of(layout))
        area = sum(
            part.length.value.inches * part.width.value.inches * part.quantity
            for part in parts
            if part.kind is PartKind.PANEL and part.width
        )
        told = sum(
            panel.length.value.inches * panel.width.value.inches * len(panel.coffers)
            for panel in layout.panels
        )
        assert area == told


def test_no_two_parts_are_the_same_and_no_mark_is_given_twice():
    for layout in layouts():
        parts = parts_from(pieces_of(layout))
        assert len({part.mark for part in parts}) == len(parts)
        shapes = Counter(
            (
                *(part.kind, part.name, part.material.key, part.length.value),
                *(part.width and part.width.value, part.thickness and part.thickness.value),
                *(part.short_length.value, part.left, part.right, part.mitred_edges),
                *(part.face, part.grain, part.tapered),
            )
            for part in parts
        )
        assert set(shapes.values()) <= {1}


def test_a_part_is_no_longer_nor_wider_than_what_it_is_cut_to():
    for layout in layouts():
        for part in parts_from(pieces_of(layout)):
            assert part.short_length.value <= part.length.value <= part.cut_length.value
            assert part.length.value > ZERO
            if part.width is not None and part.cut_width is not None:
                assert ZERO < part.width.value <= part.cut_width.value
            assert part.quantity == sum(place.quantity for place in part.places)


@pytest.mark.parametrize("times", [2, 5])
def test_equal_ceilings_pooled_have_the_same_marks_and_so_many_times_each_part(times: int):
    for layout in layouts()[::4]:
        one, many = take_off([layout]), take_off([layout] * times)
        assert [part.mark for part in one.parts] == [part.mark for part in many.parts]
        for single, pooled in zip(one.parts, many.parts, strict=True):
            assert pooled.quantity == single.quantity * times
            assert pooled.length.value == single.length.value


def test_the_order_of_ceilings_changes_no_mark():
    for first, second in zip(layouts()[::6], layouts()[1::6], strict=False):
        one, other = take_off([first, second]), take_off([second, first])
        assert [(p.mark, p.quantity, p.length.value) for p in one.parts] == [
            (p.mark, p.quantity, p.length.value) for p in other.parts
        ]


def test_every_figure_of_a_take_off_is_what_its_rule_gives():
    for layout in layouts()[::3]:
        figures = {id(figure): figure for figure in figures_in(take_off([layout]))}
        assert figures
        assert [line for figure in figures.values() for line in contradictions(figure)] == []


def test_equal_ceilings_pooled_need_so_many_times_of_everything():
    for layout in layouts()[::4]:
        one, many = take_off([layout]), take_off([layout] * 3)
        assert len(one.quantities) == len(many.quantities) > 0
        for single, pooled in zip(one.quantities, many.quantities, strict=True):
            assert (single.kind, single.of, single.used_for) == (
                *(pooled.kind, pooled.of, pooled.used_for),
            )
            assert pooled.need.value == single.need.value * 3
            assert pooled.waste.value == single.waste.value * 3
            assert pooled.with_waste.value == single.with_waste.value * 3


def test_different_ceilings_pooled_need_what_they_need_together():
    for first, second in zip(layouts()[::7], layouts()[1::7], strict=False):
        both = take_off([first, second])
        for kind in QuantityKind:
            alone = [
                each.with_waste.value
                for layout in (first, second)
                for each in take_off([layout]).quantities
                if each.kind is kind
            ]
            together = (each.with_waste.value for each in both.quantities if each.kind is kind)
            assert sum(together) == sum(alone)


def test_stock_needed_is_what_its_parts_measure():
    for layout in layouts():
        taken = take_off([layout])
        feet = {
            (each.material.key, each.used_for): each.need.value
            for each in taken.quantities
            if each.kind is QuantityKind.LINEAL and each.material
        }
        lengths: Counter[tuple[object, ...]] = Counter()
        for part in taken.parts:
            if part.material.kind is not MaterialKind.SHEET:
                key = part.material.key, USED_FOR[part.kind]
                lengths[key] += part.cut_length.value.inches * part.quantity
        assert {key: inches / 12 for key, inches in lengths.items()} == feet
