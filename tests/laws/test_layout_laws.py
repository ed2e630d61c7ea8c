"""Laws that hold for every layout, each test named after its law."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from itertools import combinations, pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import ElementKind, Layout, RunLayout
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.grid import WallCondition
from lacunar.model.room import RunName
from lacunar.model.spec import (
    BeamsSpec,
    BoxSpec,
    CeilingSpec,
    GridSpec,
    RoomSpec,
    RunSpec,
)
from lacunar.model.wall_kind import WallKind
from tests.laws.ceiling_specs import BOARD, inch, sixteenths, specs
from tests.layout.laying_out import Spec, figures_in, laid_out


def laid(spec: CeilingSpec) -> Layout:
    """The layout; a draw whose beams do not leave each other room is drawn again."""
    try:
        return lay_out(resolve(spec).ceiling)
    except SpecRefused as refused:
        codes = {fault.code for fault in refused.faults}
        assume(not codes & {"no_room_left", "fixed_beams_overlap", "zone_too_small"})
        raise


def runs_of(layout: Layout) -> tuple[RunLayout, RunLayout]:
    return layout.length, layout.width


def widths(run: RunLayout) -> list[Length]:
    """What every stretch takes of the run."""
    return [each.far.at_start.value - each.near.at_start.value for each in run.elements]


@settings(max_examples=60)
@given(specs())
def test_openings_beams_and_what_is_at_the_walls_make_up_the_span_exactly(spec: CeilingSpec):
    layout = laid(spec)
    for run in runs_of(layout):
        openings = [opening.value for zone in run.zones for opening in zone.openings]
        beams = [beam.width.value for beam in layout.beams if beam.on is run.name]
        walls = [beam.width.value for beam in layout.wall_beams if beam.on is run.name]
        assert sum([*openings, *beams, *walls], ZERO) == run.span.at_start.value


@settings(max_examples=60)
@given(specs())
def test_every_stretch_starts_where_the_one_before_it_ends(spec: CeilingSpec):
    for run in runs_of(laid(spec)):
        assert run.elements[0].near.at_start.value == ZERO
        assert run.elements[-1].far.at_start.value == run.span.at_start.value
        for before, after in pairwise(run.elements):
            assert before.far.at_start.value == after.near.at_start.value
        assert all(width > ZERO for width in widths(run))


@settings(max_examples=60)
@given(specs())
def test_openings_of_a_zone_sum_to_its_clear_total_and_share_it_by_weight(spec: CeilingSpec):
    layout = laid(spec)
    for run in runs_of(layout):
        weights = spec.grid.run(run.name).weights or (Fraction(1),) * 99
        for zone in run.zones:
            assert sum((o.value for o in zone.openings), ZERO) == zone.clear_total.value
            own, weights = weights[: len(zone.openings)], weights[len(zone.openings) :]
            per_weight = {o.value / w for o, w in zip(zone.openings, own, strict=True)}
            assert len(per_weight) == 1


@settings(max_examples=60)
@given(specs())
def test_both_ends_of_a_rectangle_are_the_same_figures(spec: CeilingSpec):
    layout = laid(spec)
    for run in runs_of(layout):
        for each in run.elements:
            assert each.near.at_start is each.near.at_end
            assert each.far.at_start is each.far.at_end


def mirrored(spec: CeilingSpec) -> CeilingSpec:
    """The same ceiling, measured along the length run from its other wall."""
    run, span = spec.grid.length, spec.room.length
    assert span is not None
    turned = replace(
        run,
        coffers=run.coffers[::-1] if isinstance(run.coffers, tuple) else run.coffers,
        weights=run.weights and run.weights[::-1],
        start=run.end,
        end=run.start,
        fixed_beams=tuple(replace(b, center=b.center and span - b.center) for b in run.fixed_beams),
    )
    members = tuple(
        replace(m, center=m.center and span - m.center) if m.on is RunName.LENGTH else m
        for m in spec.room.members
    )
    return replace(
        spec, grid=replace(spec.grid, length=turned), room=replace(spec.room, members=members)
    )


@settings(max_examples=60)
@given(specs())
def test_a_mirrored_spec_gives_mirrored_positions(spec: CeilingSpec):
    layout, turned = laid(spec), laid(mirrored(spec))
    span = layout.length.span.at_start.value
    there = [(e.kind, e.near.at_start.value, e.far.at_start.value) for e in layout.length.elements]
    back = [
        (e.kind, span - e.far.at_start.value, span - e.near.at_start.value)
        for e in reversed(turned.length.elements)
    ]
    assert there == back


@given(sixteenths(100, 400), sixteenths(3, 12), st.integers(1, 8))
def test_in_one_zone_the_closed_forms_are_what_is_laid_out(span: Length, width: Length, n: int):
    """None (S - (n - 1) W) / n, half S / n - W, full (S - (n + 1) W) / n: algebra."""
    closed = {
        WallKind.NONE: (span - width * (n - 1)) / n,
        WallKind.HALF: span / n - width,
        WallKind.FULL: (span - width * (n + 1)) / n,
    }
    assume(min(closed.values()) > ZERO)
    for kind, opening in closed.items():
        wall = WallCondition(kind)
        spec = CeilingSpec(
            room=RoomSpec(span, inch(60), inch(120)),
            beams=BeamsSpec(crosswise=BoxSpec(BOARD, BOARD, width=width, drop=inch(6))),
            grid=GridSpec(RunSpec(coffers=n, start=wall, end=wall), RunSpec(coffers=1)),
        )
        assert {o.value for o in laid(spec).length.zones[0].openings} == {opening}


@settings(max_examples=60)
@given(specs())
def test_coffers_and_beams_tile_the_room(spec: CeilingSpec):
    """Room = coffers + beams of one family + of the other - their crossings, in square inches.

    Worked from the layout's positions alone, each strip as wide as it is wall to wall.
    """
    layout = laid(spec)
    length, width = (run.span.at_start.value.inches for run in runs_of(layout))
    across = sum(w.inches for w in solid(layout.length))
    along = sum(w.inches for w in solid(layout.width))
    coffers = sum(shoelace([(p.x.inches, p.y.inches) for p in c.corners]) for c in layout.coffers)
    assert coffers + across * width + along * length - across * along == length * width


Rectangle = tuple[Fraction, Fraction, Fraction, Fraction]


def rectangles(layout: Layout) -> list[Rectangle]:
    """Every beam and what is at the walls as a rectangle from wall to wall: x, x, y, y."""
    spans = {run.name: run.span.at_start.value.inches for run in runs_of(layout)}
    found = []
    for each in (*layout.beams, *layout.wall_beams):
        near, far = each.near.at_start.value.inches, each.far.at_start.value.inches
        other = spans[each.on.other]
        across = each.on is RunName.LENGTH
        zero = Fraction(0)
        found.append((near, far, zero, other) if across else (zero, other, near, far))
    return found


def common(rectangles: Sequence[Rectangle]) -> Fraction:
    """The area that rectangles have in common."""
    x = min(r[1] for r in rectangles) - max(r[0] for r in rectangles)
    y = min(r[3] for r in rectangles) - max(r[2] for r in rectangles)
    return max(x, Fraction(0)) * max(y, Fraction(0))


@settings(max_examples=40)
@given(specs())
def test_the_area_of_beams_by_inclusion_and_exclusion_and_of_coffers_make_up_the_room(
    spec: CeilingSpec,
):
    """Rectangles are added, what two have in common taken off, what three have added again."""
    layout = laid(spec)
    beams = rectangles(layout)
    assert sum(common(three) for three in combinations(beams, 3)) == 0
    union = sum(common([one]) for one in beams) - sum(common(two) for two in combinations(beams, 2))
    coffers = sum(shoelace([(p.x.inches, p.y.inches) for p in c.corners]) for c in layout.coffers)
    assert union + coffers == shoelace([(p.x.inches, p.y.inches) for p in layout.outline])


def solid(run: RunLayout) -> list[Length]:
    """The widths of everything in a run that is no coffer."""
    stretches = zip(run.elements, widths(run), strict=True)
    return [width for each, width in stretches if each.kind is not ElementKind.COFFER]


def shoelace(corners: Sequence[tuple[Fraction, Fraction]]) -> Fraction:
    """The area of a polygon, positive when its corners run counter-clockwise."""
    turned = [*corners[1:], corners[0]]
    edges = zip(corners, turned, strict=True)
    return sum((x * next_y - next_x * y for (x, y), (next_x, next_y) in edges), Fraction(0)) / 2


@settings(max_examples=60)
@given(specs())
def test_beam_pieces_and_the_beams_that_stop_them_make_up_the_way_between_the_walls(
    spec: CeilingSpec,
):
    """Pieces cover each crossing once: so their areas and the coffers' make up what is between.

    What reaches into what stands at the walls, as casings and deeper beams do, is left out.
    """
    layout = laid(spec)
    pieces = Fraction(0)
    for beam in layout.beams:
        zones = layout.run(beam.on.other).zones
        for piece in beam.pieces:
            start = max(piece.start.value, zones[0].start.value)
            end = min(piece.end.value, zones[-1].end.value)
            pieces += beam.width.value.inches * (end - start).inches
    coffers = sum(c.length.value.inches * c.width.value.inches for c in layout.coffers)
    between = [run.zones[-1].end.value - run.zones[0].start.value for run in runs_of(layout)]
    assert pieces + coffers == between[0].inches * between[1].inches


@settings(max_examples=60)
@given(specs())
def test_no_mark_is_off_by_more_than_half_a_step_and_no_segment_by_more_than_one(
    spec: CeilingSpec,
):
    layout = laid(spec)
    step = layout.ceiling.mark_to.size
    for run in layout.marks:
        exact = [mark.exact.value for mark in run.marks]
        marks = [mark.mark for mark in run.marks]
        assert exact == sorted(exact)
        assert all((mark / step).denominator == 1 for mark in marks)
        for place, mark in zip(exact, marks, strict=True):
            assert abs(mark - place) <= step / 2
        for (a, b), (c, d) in zip(pairwise(exact), pairwise(marks), strict=True):
            assert abs((b - a) - (d - c)) <= step


@settings(max_examples=60)
@given(specs())
def test_shifted_casings_leave_clearance_on_both_sides_of_their_members(spec: CeilingSpec):
    layout = laid(spec)
    members = {member.name: member for member in layout.ceiling.room.members}
    for beam in layout.beams:
        if beam.member is None:
            continue
        clearance = members[beam.member.name].clearance
        side = layout.profile(beam.profile).parts[0].thickness.value
        inside = beam.near.at_start.value + side, beam.far.at_start.value - side
        assert beam.member.near.at_start.value - inside[0] >= clearance
        assert inside[1] - beam.member.far.at_start.value >= clearance


def as_millimeters(length: Length) -> str:
    """A whole number of sixteenths of an inch as exact decimal millimeters: 1.5875 mm each."""
    return f"{Decimal(int(length.inches * 16)) * Decimal('1.5875')} mm"


def document(lengths: dict[str, Length], coffers: int, *, metric: bool) -> Spec:
    """One ceiling written in inches or in millimeters, with nothing left to be assumed."""

    def write(length: Length) -> str:
        return as_millimeters(length) if metric else f"{length.inches} in"

    three_quarters = inch(Fraction(3, 4))
    board = {"thickness": write(three_quarters), "width": write(inch(20))}
    family = {
        "sides": board,
        "bottom": board,
        "bottom_joint": "between",
        "reveal": write(inch(Fraction(1, 4))),
        "allowance": write(ZERO),
        "width": write(lengths["beam"]),
        "drop": write(inch(7)),
    }
    return {
        "units": "mm" if metric else "in",
        "room": {
            **{n: write(lengths[n]) for n in ("length", "width")},
            "height": write(inch(120)),
            "headroom": write(inch(84)),
        },
        "beams": {"crosswise": family},
        "grid": {
            "length": {"coffers": coffers, "start": "half", "end": {"soffit": write(inch(9))}},
            "width": {"largest_opening": write(inch(40)), "start": "full", "end": "none"},
        },
        "panel": {"kind": "existing"},
        "stock": {"longest_board": write(inch(192))},
    }


def positions(layout: Layout) -> list[object]:
    """Every exact place and size of a layout."""
    return [figure.value for figure in figures_in(replace(layout, marks=()))]


@given(sixteenths(150, 400), sixteenths(150, 400), sixteenths(3, 12), st.integers(1, 5))
def test_a_spec_in_millimeters_gives_the_same_exact_layout(
    length: Length, width: Length, beam: Length, coffers: int
):
    lengths = {"length": length, "width": width, "beam": beam}
    imperial, metric = (
        laid_out(document(lengths, coffers, metric=metric)) for metric in (False, True)
    )
    assert positions(imperial) == positions(metric)


@given(sixteenths(150, 400), sixteenths(3, 12), st.integers(3, 8), sixteenths(8, 60))
def test_held_coffers_keep_their_size_and_the_borders_share_the_rest(
    span: Length, width: Length, coffers: int, held: Length
):
    none = WallCondition(WallKind.NONE)
    border = (span - width * (coffers - 1) - held * (coffers - 2)) / 2
    assume(border > ZERO)
    layout = laid(
        CeilingSpec(
            room=RoomSpec(span, inch(60), inch(120)),
            beams=BeamsSpec(crosswise=BoxSpec(BOARD, BOARD, width=width, drop=inch(6))),
            grid=GridSpec(
                RunSpec(coffers=coffers, held=held, start=none, end=none), RunSpec(coffers=1)
            ),
        )
    )
    openings = [opening.value for opening in layout.length.zones[0].openings]
    assert openings == [border, *[held] * (coffers - 2), border]
