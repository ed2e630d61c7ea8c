"""Laws of joists, backing and heights, on random ceilings. Each test is named after its law."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lacunar.layout.backing_records import BackingLine, JoistRelation, Weights
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.fixing import BetweenJoists
from lacunar.model.grid import WallCondition
from lacunar.model.room import CeilingState, RunName
from lacunar.model.spec import CeilingSpec, FixingSpec, GridSpec, JoistsSpec, RoomSpec, RunSpec
from lacunar.model.wall_kind import WallKind
from tests.laws.ceiling_specs import inch, sixteenths, specs


@st.composite
def framed(draw: st.DrawFn) -> Layout:
    """A ceiling under joists."""
    spec = draw(specs())
    spacing = draw(sixteenths(10, 30))
    joists = JoistsSpec(
        parallel_to=draw(st.sampled_from(RunName)),
        spacing=spacing,
        first=spacing * draw(st.fractions(0, 1, max_denominator=16)),
        width=draw(sixteenths(1, 4)),
        ceiling=CeilingState.OPEN,
    )
    fixing = FixingSpec(
        between_joists=BetweenJoists.BLOCKING,
        block_spacing=draw(sixteenths(8, 60)),
        end_distance=draw(sixteenths(0, 6)),
        at_crossing=draw(st.integers(1, 4)),
    )
    spec = replace(spec, room=replace(spec.room, joists=joists), fixing=fixing)
    try:
        return lay_out(resolve(spec).ceiling)
    except SpecRefused:
        assume(condition=False)
        raise


def centers(layout: Layout) -> list[Length]:
    """The joists' centers."""
    assert layout.backing.joists is not None
    return [joist.center.value for joist in layout.backing.joists.joists]


def lines_of(layout: Layout, relation: JoistRelation) -> list[BackingLine]:
    return [line for line in layout.backing.lines if line.relation is relation]


@settings(max_examples=40)
@given(framed())
def test_joists_stand_evenly_and_none_that_fits_is_left_out(layout: Layout):
    joists = layout.backing.joists
    assert joists is not None
    found = centers(layout)
    assert {b - a for a, b in pairwise(found)} <= {joists.spacing}
    span = layout.run(joists.on).span.at_start.value
    assert found[-1] <= span < found[-1] + joists.spacing


@settings(max_examples=40)
@given(framed())
def test_every_crossing_is_a_joist_and_every_joist_over_a_piece_is_crossed(layout: Layout):
    for line in lines_of(layout, JoistRelation.ACROSS):
        for piece in line.pieces:
            places = [place.value for place in piece.places]
            over = [c for c in centers(layout) if piece.start.value <= c <= piece.end.value]
            assert places == over
            assert piece.fasteners is not None
            assert layout.ceiling.fixing is not None
            each = layout.ceiling.fixing.at_crossing
            assert piece.fasteners.value == len(places) * each


@settings(max_examples=40)
@given(framed())
def test_a_line_along_the_joists_is_on_one_or_in_the_bay_that_its_block_fills(layout: Layout):
    joists = layout.backing.joists
    assert joists is not None
    half = joists.width / 2
    places = {joist.id: joist.center.value for joist in joists.joists}
    for line in layout.backing.lines:
        if line.relation is JoistRelation.ON_JOIST:
            assert line.joist is not None
            assert abs(line.position.value - places[line.joist]) <= half
        elif line.bay is not None:
            span = layout.run(joists.on).span.at_start.value
            near = places[line.bay.near] + half if line.bay.near else ZERO
            far = places[line.bay.far] - half if line.bay.far else span
            assert near < line.position.value < far
            assert line.bay.block.value == far - near
            assert not [c for c in centers(layout) if near < c < far]


@settings(max_examples=40)
@given(framed())
def test_even_places_lie_in_their_piece_no_further_apart_than_asked(layout: Layout):
    fixing = layout.ceiling.fixing
    assert fixing is not None
    for line in layout.backing.lines:
        if line.relation is JoistRelation.ACROSS:
            continue
        for piece in line.pieces:
            places = [place.value for place in piece.places]
            assert len(places) == piece.count.value
            assert piece.start.value <= places[0] <= places[-1] <= piece.end.value
            apart = [b - a for a, b in pairwise(places)]
            assert len(set(apart)) <= 1
            assert all(each <= fixing.block_spacing for each in apart)


WALLS = st.sampled_from([WallKind.NONE, WallKind.HALF, WallKind.FULL, WallKind.SOFFIT])


@given(st.integers(1, 7), st.integers(1, 7), st.tuples(WALLS, WALLS, WALLS, WALLS))
def test_forms_are_those_of_the_grid_walked_node_by_node(
    columns: int, rows: int, walls: tuple[WallKind, WallKind, WallKind, WallKind]
):
    """An independent count: every node and every edge of the grid, one at a time.

    Grid lines 0 and m are walls. A line is there if it is a beam, or a wall with a beam.
    """
    west, east, south, north = walls
    layout = plain(columns, rows, walls)
    forms = layout.backing.forms
    beam = (WallKind.HALF, WallKind.FULL)
    across = [west, *["beam"] * (columns - 1), east]  # lines that run up the plan
    along = [south, *["beam"] * (rows - 1), north]  # lines that run across it
    kinds = {"crosses": 0, "tees": 0, "ells": 0, "wall_ends": 0, "soffit_ends": 0}
    for x in across:
        for y in along:
            kind = node(x in (*beam, "beam"), y in (*beam, "beam"), (x, y))
            if kind:
                kinds[kind] += 1
    spans = sum(x in (*beam, "beam") for x in across) * rows
    spans += sum(y in (*beam, "beam") for y in along) * columns
    assert {name: getattr(forms, name).value for name in kinds} == kinds
    assert forms.mid_spans.value == spans
    assert forms.in_all.value == spans + sum(kinds.values())


def node(x_there: bool, y_there: bool, lines: tuple[object, object]) -> str:
    """What form stands where two grid lines meet; none where neither is there."""
    inside = [line == "beam" for line in lines]
    if x_there and y_there:
        return ("ells", "tees", "crosses")[sum(inside)]
    if not (x_there or y_there):
        return ""
    bare = lines[1] if x_there else lines[0]
    return "soffit_ends" if bare is WallKind.SOFFIT else "wall_ends"


def plain(columns: int, rows: int, walls: tuple[WallKind, WallKind, WallKind, WallKind]) -> Layout:
    """A ceiling of so many coffers with these walls: W1, W3, W4, W2."""
    west, east, south, north = (
        WallCondition(kind, inch(9) if kind is WallKind.SOFFIT else None) for kind in walls
    )
    spec = CeilingSpec(
        room=RoomSpec(inch(400), inch(400), inch(110)),
        grid=GridSpec(
            RunSpec(coffers=columns, start=west, end=east),
            RunSpec(coffers=rows, start=south, end=north),
        ),
    )
    return lay_out(resolve(spec).ceiling)


@given(st.integers(1, 7), st.integers(1, 7))
def test_the_closed_forms_are_what_is_counted(m: int, n: int):
    """With beams at all walls, and with none: algebra over m x n coffers."""
    halves, none = (
        plain(m, n, (kind,) * 4).backing.forms for kind in (WallKind.HALF, WallKind.NONE)
    )
    assert halves.crosses.value == none.crosses.value == (m - 1) * (n - 1)
    assert halves.tees.value == none.wall_ends.value == 2 * (m - 1) + 2 * (n - 1)
    assert (halves.ells.value, none.ells.value) == (4, 0)
    assert halves.mid_spans.value == (m + 1) * n + (n + 1) * m
    assert none.mid_spans.value == (m - 1) * n + (n - 1) * m


@settings(max_examples=40)
@given(framed())
def test_the_weight_over_the_room_is_the_weight_of_all_boards_by_volume(layout: Layout):
    """Volume times density, summed board by board along every clear length, in cubic inches."""
    weights = layout.backing.weights
    assert weights is not None
    total = Fraction(0)
    at_walls = [beam for beam in layout.wall_beams if beam.kind is not WallKind.SOFFIT]
    for beam in (*layout.beams, *at_walls):
        for piece in beam.pieces:
            total += cubic_inches(layout, weights, beam.profile) * piece.length.value.inches
    assert weights.pounds.value == total
    area = layout.length.span.at_start.value.inches * layout.width.span.at_start.value.inches
    assert weights.pounds_per_square_foot.value == total / (area / 144)


def cubic_inches(layout: Layout, weights: Weights, profile_id: str) -> Fraction:
    """Pounds of an inch of a profile: its boards' cross-sections times their densities."""
    fixing = layout.ceiling.fixing
    assert fixing is not None
    pounds = Fraction(0)
    for part in layout.profile(profile_id).parts:
        trim, backing = (
            weights.trim_pounds_per_cubic_foot.value,
            weights.backing_pounds_per_cubic_foot.value,
        )
        thickness = part.thickness.value if part.stock else fixing.block_through
        section = thickness.inches * part.width.value.inches * part.quantity
        pounds += section * (backing if part.name == "backing" else trim) / 1728
    return pounds


@settings(max_examples=40)
@given(specs())
def test_no_level_lies_below_the_worst_and_the_stack_adds_up(spec: CeilingSpec):
    try:
        layout = lay_out(resolve(spec).ceiling)
    except SpecRefused:
        assume(condition=False)
        raise
    heights = layout.heights
    lowest = min(level.height.value for level in heights.levels)
    assert heights.worst_height.value == lowest
    height = layout.ceiling.room.height
    for level in heights.levels:
        if level.kind == "beam":
            assert level.height.value + layout.profile(level.of).drop.value == height
    assert heights.spare.value == heights.most_drop.value - (height - lowest)
