"""Laws of stations and levels, on random ceilings. Each test is named after its law."""

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.level_records import BeamLevel, Levels
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.beams import BottomJoint
from lacunar.model.faults import SpecRefused
from lacunar.model.panel import PanelKind
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec, PanelSpec
from lacunar.model.stations import LevelingSpec, PanelsTo, StationSpec
from tests.laws.ceiling_specs import sixteenths, specs


def laid(spec: CeilingSpec) -> Layout:
    """The layout of a spec; one that cannot be built is passed over."""
    assume(not check(spec))
    try:
        return lay_out(resolve(spec).ceiling)
    except SpecRefused:
        assume(condition=False)
        raise


@st.composite
def uneven(draw: st.DrawFn) -> CeilingSpec:
    """A ceiling with stations read from a line, anywhere in the room."""
    spec = draw(specs())
    length, width = spec.room.length, spec.room.width
    assert length is not None
    assert width is not None
    sixteenth = st.integers(0, 16)
    places = draw(st.sets(st.tuples(sixteenth, sixteenth), min_size=1, max_size=10))
    stations = tuple(
        StationSpec(length * x / 16, width * y / 16, f"H{n}", None, draw(sixteenths(20, 21)))
        for n, (x, y) in enumerate(sorted(places))
    )
    filled = draw(st.sampled_from((PanelKind.SHEET_GOODS, PanelKind.EXISTING)))
    to = st.sampled_from(PanelsTo) if filled is PanelKind.SHEET_GOODS else st.just(PanelsTo.CEILING)
    leveling = LevelingSpec(panels=draw(to), reach=draw(sixteenths(0, 8)))
    room = replace(spec.room, stations=stations, leveling=leveling)
    return replace(spec, room=room, panel=PanelSpec(kind=filled))


def levels_of(layout: Layout) -> Levels:
    assert layout.levels is not None
    return layout.levels


def raised(spec: CeilingSpec, by: Length) -> CeilingSpec:
    """The same ceiling with every station read higher."""
    stations = tuple(
        replace(each, above_line=each.above_line + by)
        for each in spec.room.stations
        if each.above_line is not None
    )
    return replace(spec, room=replace(spec.room, stations=stations))


def profile_of(layout: Layout, beam: str) -> str:
    beams = (*layout.beams, *layout.wall_beams)
    return next(each.profile for each in beams if each.id == beam)


@settings(max_examples=60)
@given(uneven())
def test_shim_and_side_each_sum_up_to_the_ceiling_at_every_place(spec: CeilingSpec):
    layout = laid(spec)
    levels, stack = levels_of(layout), panel_stack(layout.ceiling.panel)
    for beam in levels.beams:
        profile = layout.profile(profile_of(layout, beam.beam))
        lowest = levels.plane.value - profile.drop.value
        board = layout_bottom(layout, profile.id)
        below = board if profile.bottom_joint is BottomJoint.UNDER else ZERO
        set_up = profile.reveal if profile.bottom_joint is BottomJoint.BETWEEN else ZERO
        for place in beam.places:
            ceiling = levels.plane.value + place.rise.value
            backing = lowest + set_up + board + profile.inside_depth.value
            assert backing + stack.above_backing + place.shim.value == ceiling
            side = lowest + below + place.side.value + stack.above_sides
            assert side + place.hidden_gap.value == ceiling
            assert place.side.value + place.scribe.value == beam.board.value


def layout_bottom(layout: Layout, profile: str) -> Length:
    """The thickness of the bottom that sides stand on."""
    parts = layout.profile(profile).parts
    return next(part.thickness.value for part in parts if part.name == "bottom")


@settings(max_examples=40)
@given(uneven())
def test_bottoms_hang_level_at_the_headroom_of_the_lowest_station(spec: CeilingSpec):
    layout = laid(spec)
    levels = levels_of(layout)
    assert levels.plane.value == min(station.ceiling.value for station in levels.stations)
    for clear in layout.headroom:
        drop = layout.profile(clear.profile).drop.value
        assert clear.clear_height.value == levels.plane.value - drop


@settings(max_examples=40)
@given(specs(), st.sampled_from((PanelsTo.PLANE, PanelsTo.CEILING)))
def test_a_flat_ceiling_is_laid_out_as_one_without_stations(spec: CeilingSpec, to: PanelsTo):
    spec = replace(spec, panel=PanelSpec(kind=PanelKind.SHEET_GOODS))
    length, width = spec.room.length, spec.room.width
    assert length is not None
    assert width is not None
    at = Length.of_inches(20)
    flat = tuple(StationSpec(length * n / 4, width / 2, None, None, at) for n in range(5))
    room = replace(spec.room, stations=flat, leveling=LevelingSpec(panels=to))
    plain, leveled = laid(spec), laid(replace(spec, room=room))
    assert all(not place.shim.value for b in levels_of(leveled).beams for place in b.places)
    assert replace(leveled, ceiling=plain.ceiling, levels=None) == plain


@settings(max_examples=40)
@given(uneven(), sixteenths(1, 12))
def test_raising_the_line_of_all_stations_changes_nothing(spec: CeilingSpec, by: Length):
    one, other = laid(spec), laid(raised(spec, -by))
    assert [beam_told(b) for b in levels_of(one).beams] == [
        beam_told(b) for b in levels_of(other).beams
    ]
    assert one.headroom == other.headroom


@settings(max_examples=40)
@given(uneven(), sixteenths(1, 12))
def test_a_constant_more_at_all_stations_is_so_much_more_headroom(spec: CeilingSpec, by: Length):
    height = spec.room.height
    assert height is not None
    told = [each.above_line for each in spec.room.stations if each.above_line is not None]

    def at_height(more: Length) -> CeilingSpec:
        stations = tuple(
            replace(each, above_line=None, height=height + more + read - min(told))
            for each, read in zip(spec.room.stations, told, strict=True)
        )
        return replace(spec, room=replace(spec.room, stations=stations, height=None))

    low, high = laid(at_height(ZERO)), laid(at_height(by))
    for one, other in zip(low.headroom, high.headroom, strict=True):
        assert other.clear_height.value == one.clear_height.value + by
    assert low.profiles == high.profiles
    assert low.coffers == high.coffers
    assert [beam_told(b) for b in levels_of(low).beams] == [
        beam_told(b) for b in levels_of(high).beams
    ]


def beam_told(beam: BeamLevel) -> tuple[object, ...]:
    """What of a beam's level does not hang on where heights were read from."""
    places = [
        (p.at.value, p.station, p.known, p.shim.value, p.side.value, p.scribe.value)
        for p in beam.places
    ]
    return beam.beam, beam.board.value, places


@settings(max_examples=60)
@given(uneven())
def test_a_mirrored_room_has_mirrored_stations(spec: CeilingSpec):
    length = spec.room.length
    assert length is not None
    # Without what has a place of its own or is told in order, which would have to be mirrored too.
    run = replace(spec.grid.length, coffers=3, fixed_beams=(), weights=None)
    grid = replace(spec.grid, length=run, width=replace(run, start=None, end=None))
    spec = replace(spec, room=replace(spec.room, members=()), grid=grid)
    stations = tuple(
        replace(each, length=length - each.length)
        for each in spec.room.stations
        if each.length is not None
    )
    mirrored = replace(
        spec,
        room=replace(spec.room, stations=stations),
        grid=replace(grid, length=replace(run, start=run.end, end=run.start)),
    )
    if spec.room.wall_finish is not None:
        w1, w2, w3, w4 = spec.room.wall_finish
        mirrored = replace(mirrored, room=replace(mirrored.room, wall_finish=(w3, w2, w1, w4)))
    one, other = laid(spec), laid(mirrored)
    span = one.length.span.at_start.value

    def told(layout: Layout, turned: bool) -> list[tuple[object, ...]]:
        found = []
        for beam in levels_of(layout).beams:
            on = next(b.on for b in (*layout.beams, *layout.wall_beams) if b.id == beam.beam)
            for place in beam.places:
                at = place.at.value
                if turned and on == "width":
                    at = span - at
                found.append(
                    (on, at, place.station or "", place.known, place.shim.value, place.side.value)
                )
        return sorted(found)

    assert told(one, turned=False) == told(other, turned=True)
