"""Laws of measured openings: as planned they change nothing, mirrored they mirror, floats agree."""

import json
import math
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from random import Random
from typing import Any

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.exchange.ceiling_json import ceiling_to_json, digest
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.opening_records import MeasuredOpening, Squareness, TaperedField
from lacunar.layout.quadrilaterals import Quadrilateral, closing_error, corner
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.boards import Boards
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import layout_answer, prepare
from tests.laws.random_openings import measured
from tests.laws.random_specs import Spec, random_specs
from tests.layout import float_shapes
from tests.layout.test_traces import wrong

inch = Length.of_inches
WALLS = ("W4", "W3", "W2", "W1")


def read(spec: Spec) -> Layout:
    return lay_out(resolve(read_spec(json.dumps(spec, default=float).encode())).ceiling)


def buildable(count: int, seed: int) -> list[tuple[Spec, Layout]]:
    found = []
    for spec in random_specs(count, seed):
        try:
            found.append((spec, read(spec)))
        except SpecRefused:
            continue
    assert len(found) > count * 0.7
    return found


def pieces_of(layout: Layout, coffer: str) -> Counter[object]:
    """Every single piece of a coffer, by what it is, where it goes and how long it is."""
    return Counter(
        (
            *(piece.moulding, piece.along, wall, piece.left_end, piece.right_end),
            *(piece.long_point.value, piece.short_point.value),
        )
        for piece in layout.mouldings.of(coffer).pieces
        for wall in piece.toward
    )


def filling(layout: Layout, coffer: str) -> list[object]:
    """What fills a coffer: sizes of its panel, or of its boards."""
    sheets = [
        (panel.length.value, panel.width.value, panel.seams.value)
        for panel in layout.panels
        if coffer in panel.coffers
    ]
    fields = [
        (field.length.value, field.courses.edge.value, field.courses.courses.value)
        for field in (layout.boards.fields if layout.boards else ())
        if coffer in field.coffers
    ]
    return [*sheets, *fields]


@pytest.mark.parametrize("diagonals", [(), ("rising",), ("rising", "falling")])
def test_measured_as_planned_gives_exactly_the_planned_pieces(diagonals: tuple[str, ...]):
    for spec, layout in buildable(20, seed=501):
        coffers = []
        for coffer in layout.coffers:
            length, width = (str(size.value.inches) for size in (coffer.length, coffer.width))
            sides = {"W1": width, "W2": length, "W3": width, "W4": length}
            if any("/" in size and int(size.split("/")[1]) > 999 for size in sides.values()):
                break
            across = math.hypot(float(coffer.length.value.inches), float(Fraction(width)))
            told: dict[str, Any] = {
                "coffer": coffer.id,
                "sides": {wall: f"{size} in" for wall, size in sides.items()},
            }
            if diagonals:
                told["diagonals"] = dict.fromkeys(diagonals, f"{across:.4f} in")
            coffers.append(told)
        again = read({**spec, "measured_openings": {"grid": layout.grid_id, "coffers": coffers}})
        for coffer in layout.coffers:
            assert pieces_of(again, coffer.id) == pieces_of(layout, coffer.id), spec
            assert filling(again, coffer.id) == filling(layout, coffer.id), spec


def openings(count: int, seed: int) -> list[tuple[Spec, Layout]]:
    """Layouts with openings measured in them."""
    found = []
    random = Random(seed)
    for spec, layout in buildable(count, seed):
        told = {**spec, "measured_openings": measured(layout, random)}
        try:
            found.append((told, read(told)))
        except SpecRefused as refused:
            # Beams that are set crooked can close what was open just so.
            codes = {fault.code for fault in refused.faults}
            assert codes <= {"mouldings_fill_coffer", "mouth_closed", "gap_too_large"}, codes
    return found


def test_every_figure_of_measured_layouts_is_what_its_rule_gives():
    seen: Counter[str] = Counter()
    for spec, layout in openings(40, seed=506):
        assert wrong(layout) == [], spec
        found = layout.measured_openings
        assert found is not None
        seen.update(opening.squareness for opening in found.openings)
        seen.update(crown.chosen for crown in found.crown)
        seen.update(panels=len(found.panels), boards=len(found.boards))
    words = (*Squareness, "coped_in_place", "mitred_to_corners", "panels", "boards")
    assert min(seen[word] for word in words) > 5, seen


def test_a_resolved_spec_with_measured_openings_assumes_nothing_and_keeps_its_digest():
    for spec, layout in openings(16, seed=503):
        boards = layout.ceiling.panel.boards
        if boards is not None and boards.tongue > inch(2):
            continue  # a narrow cover told of a wide board: its tongue is assumed past its bounds
        told = json.dumps(ceiling_to_json(layout.ceiling)).encode()
        again = resolve(read_spec(told))
        assert again.assumptions == (), spec
        assert digest(again.ceiling) == digest(layout.ceiling)


def test_sheets_of_measured_openings_pass_the_checker():
    typeface = load_typeface()
    pages = 0
    too_small: list[bool] = []
    for spec, _ in openings(24, seed=504):
        try:
            prepared = prepare(json.dumps(spec, default=float).encode())
            sheets = compose(prepared.layout, prepared.digest, typeface).sheets
        except SpecRefused as refused:
            too_small += [fault.code == "paper_too_small" for fault in refused.faults]
            continue
        pages += 1
        svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheets]
        assert check_set(svgs, layout_answer(prepared, trace=False), typeface) == (), spec
    assert pages > 10
    assert all(too_small)


def sides_of(opening: MeasuredOpening) -> list[float]:
    return [float(opening.side(number).value.inches) for number in range(4)]


def points_of(opening: MeasuredOpening) -> list[complex]:
    """A coffer's corners by coordinates, from its sides and the mean of its corners."""
    bottom, right, _, left = sides_of(opening)
    first, second = (math.radians(float(c.angle.value.degrees)) for c in opening.corners[:2])
    return [
        complex(0, 0),
        complex(bottom, 0),
        bottom + right * complex(-math.cos(second), math.sin(second)),
        left * complex(math.cos(first), math.sin(first)),
    ]


def once_measured(opening: MeasuredOpening) -> bool:
    """Whether only one diagonal was measured, so that sides and corners agree exactly."""
    return bool(opening.corners) and opening.closing_error is None


def near(found: Length, expected: float) -> bool:
    return abs(float(found.inches) - expected) < 1e-5


def test_corners_and_closing_errors_are_those_of_coordinates():
    random = Random(505)
    for _ in range(300):
        points = [
            corner_at + complex(random.uniform(-4, 4), random.uniform(-4, 4))
            for corner_at in (0j, 60 + 0j, 60 + 48j, 48j)
        ]
        sides = float_shapes.lengths(points)
        rising, falling = abs(points[2] - points[0]), abs(points[3] - points[1])
        fractions = [inch(Fraction(each)) for each in (*sides, rising, falling + 0.25)]
        first, second, third, fourth = fractions[:4]
        for given_rising, given_falling in ((True, False), (False, True)):
            shape = Quadrilateral(
                (first, second, third, fourth),
                fractions[4] if given_rising else None,
                inch(Fraction(falling)) if given_falling else None,
            )
            for number, expected in enumerate(float_shapes.corners(points)):
                found = corner(shape, number).angle.value
                assert abs(float(found.degrees) - expected) < 2e-9
        both = Quadrilateral((first, second, third, fourth), fractions[4], fractions[5])
        error = closing_error(both)
        assert error is not None
        assert near(error.value, 0.25)


def test_mitred_crown_and_tapered_panels_are_the_opening_set_in():
    frames = panels = 0
    for _, layout in openings(40, seed=506):
        found = layout.measured_openings
        assert found is not None
        by_id = {opening.coffer: opening for opening in found.openings}
        for crown in found.crown:
            opening = by_id[crown.coffer]
            if not once_measured(opening):
                continue
            frames += 1
            upper = [flat for flat in layout.ceiling.flat_mouldings if flat.at == "ceiling"]
            behind = sum(float(flat.thickness.inches) for flat in upper)
            assert layout.ceiling.crown is not None
            assert layout.mouldings.crown is not None
            fit = float(layout.ceiling.crown.fit_total.inches) / 2
            out = float(layout.mouldings.crown.projection.value.inches)
            outer = float_shapes.lengths(float_shapes.inset(points_of(opening), behind + fit))
            inner = float_shapes.lengths(float_shapes.inset(points_of(opening), behind + fit + out))
            for piece in crown.mitred:
                number = WALLS.index(piece.toward[0])
                assert near(piece.long_point.value, outer[number])
                assert near(piece.short_point.value, inner[number])
        for panel in found.panels:
            if not once_measured(by_id[panel.coffer]):
                continue
            panels += 1
            gap = float(layout.ceiling.panel.gap.inches)
            points = float_shapes.inset(points_of(by_id[panel.coffer]), gap)
            left = min(point.real for point in points)
            for place, point in zip(panel.corners, points, strict=True):
                assert near(place.along.value, point.real - left)
                assert near(place.up.value, point.imag - gap)
            assert near(panel.length.value, max(point.real for point in points) - left)
            assert near(panel.width.value, max(point.imag for point in points) - gap)
    assert min(frames, panels) > 10


def runs_out(field: TaperedField) -> bool:
    """Whether an edge board tapers to a point, so that it ends before the coffer does."""
    return any(min(rip.start.value, rip.end.value) <= ZERO for rip in field.edges)


def level(points: list[complex], along: str) -> list[complex]:
    """A field turned so that its boards lie level: those along the width mirrored before."""
    if along == "width":
        first, second, third, fourth = (complex(point.imag, point.real) for point in points)
        points = [first, fourth, third, second]
    far, close = points[2] - points[3], points[1] - points[0]
    middle = far / abs(far) + close / abs(close)
    return [point / middle * abs(middle) for point in points]


def tapered_fields(count: int, seed: int) -> Iterator[tuple[TaperedField, Boards, list[complex]]]:
    """Fields that taper, and where their corners are, boards lying level."""
    for _, layout in openings(count, seed):
        found, boards = layout.measured_openings, layout.ceiling.panel.boards
        if found is None or boards is None:
            continue
        by_id = {opening.coffer: opening for opening in found.openings}
        for field in found.boards:
            if once_measured(by_id[field.coffer]):
                gap = float(layout.ceiling.panel.gap.inches)
                points = float_shapes.inset(points_of(by_id[field.coffer]), gap)
                yield field, boards, level(points, boards.parallel_to)


def test_tapered_boards_fill_their_coffer():
    """The coffer turned so that boards lie level, and cut up at every joint."""
    fields = 0
    for field, boards, points in tapered_fields(80, seed=507):
        fields += 1
        nearest, farthest = field.edges
        first = points[0].imag + float(nearest.start.value.inches)
        last = points[3].imag - float(farthest.start.value.inches)
        cover, count = float(boards.cover.inches), len(field.courses)
        if count > 1:
            assert abs(last - first - cover * (count - 2)) < 1e-5
            assert near(nearest.end.value, first - points[1].imag)
            assert near(farthest.end.value, points[2].imag - last)
        joints = [first + cover * number for number in range(count - 1)]
        edges = [-math.inf, *joints, math.inf]
        for course, low, high in zip(field.courses, edges, edges[1:], strict=False):
            board = [point.real for point in float_shapes.clipped(points, low, high)]
            over = float(course.cut_from.value.inches) - (max(board) - min(board))
            assert over > -1e-5, (field.coffer, course.number)
            assert runs_out(field) or over < 1e-5, (field.coffer, course.number)
            assert (
                high == math.inf
                or runs_out(field)
                or near(course.far_edge.value, float_shapes.width_at(points, high))
            )
    assert fields > 10


def mirrored(section: Any) -> Any:
    """What someone would measure who saw every coffer in a mirror: left is right."""
    walls = {"W1": "W3", "W3": "W1", "W2": "W2", "W4": "W4"}
    names = {"rising": "falling", "falling": "rising"}
    coffers = []
    for told in section["coffers"]:
        other = {**told, "sides": {walls[w]: size for w, size in told["sides"].items()}}
        if "diagonals" in told:
            other["diagonals"] = {names[n]: size for n, size in told["diagonals"].items()}
        coffers.append(other)
    return {**section, "coffers": coffers}


def test_a_mirrored_measurement_gives_mirrored_corners_and_pieces():
    walls = {"W1": "W3", "W3": "W1", "W2": "W2", "W4": "W4"}
    crooked = 0
    for spec, layout in openings(25, seed=508):
        other = read({**spec, "measured_openings": mirrored(spec["measured_openings"])})
        ours, theirs = layout.measured_openings, other.measured_openings
        assert ours is not None
        assert theirs is not None
        for one, two in zip(ours.openings, theirs.openings, strict=True):
            angles = {frozenset(c.between): c.angle.value for c in one.corners}
            for each in two.corners:
                seen = frozenset(walls[wall] for wall in each.between)
                assert abs((each.angle.value - angles[seen]).degrees) <= Fraction(1, 10**8)
            assert one.squareness == two.squareness
        for a, b in zip(ours.crown, theirs.crown, strict=True):
            lengths = {piece.toward[0]: piece.long_point.value for piece in a.mitred}
            for piece in b.mitred:
                crooked += 1
                off = piece.long_point.value - lengths[walls[piece.toward[0]]]
                assert abs(off) <= Length.of_millimeters(Fraction(1, 4000))
    assert crooked > 20


def test_a_spoiled_measurement_is_named():
    """Of six measurements of a square opening one is read an inch off; it is the one named."""
    for spec, layout in buildable(12, seed=509):
        coffer = layout.coffers[0]
        length, width = (float(size.value.inches) for size in (coffer.length, coffer.width))
        true = {
            **{"W1": width, "W2": length, "W3": width, "W4": length},
            **dict.fromkeys(("rising", "falling"), math.hypot(length, width)),
        }
        for spoiled in true:
            read_off = {name: f"{size + (name == spoiled):.4f} in" for name, size in true.items()}
            told = {
                "coffer": coffer.id,
                "sides": {name: read_off[name] for name in ("W1", "W2", "W3", "W4")},
                "diagonals": {name: read_off[name] for name in ("rising", "falling")},
            }
            section = {"grid": layout.grid_id, "coffers": [told], "closing_limit": '1/64"'}
            with pytest.raises(SpecRefused) as refusal:
                read({**spec, "measured_openings": section})
            [fault] = refusal.value.faults
            assert fault.code == "opening_does_not_close"
            assert fault.figures["take_again"] == spoiled
