"""Laws of take-offs: nothing is lost, nothing counted twice, and pooling only adds up."""

import json
from collections import Counter
from collections.abc import Iterator
from functools import cache
from random import Random

import pytest

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.part_records import PartKind
from lacunar.takeoff.parts import parts_from, pieces_of
from lacunar.takeoff.taken_off import take_off
from tests.laws.random_openings import measured
from tests.laws.random_specs import Spec, random_specs
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions
from tests.takeoff.reconciling import backing_of, unlike

COUNT = 120
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
    for layout in layouts():
        parts = parts_from(pieces_of(layout))
        lengths = (p.length.value * p.quantity for p in parts if p.kind in kinds)
        assert sum(lengths, ZERO) == backing_of(layout)


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
