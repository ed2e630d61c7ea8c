"""Laws of beam profiles: what is cut makes up the beam, and a casing never touches its member."""

import json
from collections.abc import Iterator
from fractions import Fraction

import pytest

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Beam, BeamProfile, Layout, ProfilePart
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.beams import Box, FamilyProfile
from lacunar.model.faults import SpecRefused
from lacunar.model.panel import PanelKind, Seat
from lacunar.model.room import RunName
from tests.laws.random_specs import random_specs

SPECS = 110
SEED = 5


@pytest.fixture(scope="module")
def layouts() -> tuple[Layout, ...]:
    return tuple(laid())


def laid() -> Iterator[Layout]:
    for spec in random_specs(SPECS, SEED):
        try:
            yield lay_out(resolve(read_spec(json.dumps(spec).encode())).ceiling)
        except SpecRefused:
            continue


def boxes(layouts: tuple[Layout, ...]) -> Iterator[tuple[Layout, BeamProfile]]:
    """Every profile with boards that is built as a box."""
    for layout in layouts:
        for profile in layout.profiles:
            if profile.parts and profile.profile is FamilyProfile.BOX:
                yield layout, profile


def parts(profile: BeamProfile) -> dict[str, ProfilePart]:
    return {part.name: part for part in profile.parts}


def box_of(layout: Layout, profile: BeamProfile) -> Box:
    """How the family was asked for that has a profile."""
    user = profile.used_by[0]
    on = next(b.on for b in (*layout.beams, *layout.wall_beams) if b.id == user)
    family = layout.ceiling.beams.crosswise if on is RunName.LENGTH else None
    box = family or layout.ceiling.beams.lengthwise
    assert isinstance(box, Box)
    return box


def panel_above(layout: Layout, *seats: Seat) -> Length:
    panel = layout.ceiling.panel
    if panel.kind is PanelKind.EXISTING or panel.seat not in seats:
        return ZERO
    return panel.thickness


def test_enough_of_every_kind_is_laid_out(layouts: tuple[Layout, ...]):
    kinds = {(profile.profile, profile.kind) for each in layouts for profile in each.profiles}
    assert {kind for profile, kind in kinds if profile is FamilyProfile.BOX} >= {
        *("box", "cased", "wall_half", "wall_full")
    }
    assert {kind for profile, kind in kinds if profile is FamilyProfile.FLAT} >= {
        *("flat", "wall_half", "wall_full")
    }
    joints = {(profile.bottom_joint, profile.sides) for _, profile in boxes(layouts)}
    assert len(joints) == 6
    boards = {len(p.parts) for each in layouts for p in each.profiles if p.kind == "flat"}
    assert boards == {1, 2}
    assert len(layouts) > SPECS * 0.8


def test_law_the_boards_across_a_box_make_up_its_finished_width(layouts: tuple[Layout, ...]):
    """From side to side, or from wall to side, along two lines: through the bottom and above it."""
    for layout, profile in boxes(layouts):
        part, box = parts(profile), box_of(layout, profile)
        sides = part["side"].thickness.value * part["side"].quantity
        assert part["side"].quantity == profile.sides
        bottom, width = part["bottom"].width.value, profile.finished_width.value
        reach = {"between": sides, "mitred": ZERO}
        edges = (profile.reveal - profile.overhang) * profile.sides
        assert bottom + reach.get(str(profile.bottom_joint), edges) == width
        assert profile.inside_width is not None
        assert profile.inside_width.value + sides == width
        if "backing" in part:
            assert part["backing"].width.value + box.allowance + sides == width


def test_law_the_boards_down_a_box_make_up_its_drop(layouts: tuple[Layout, ...]):
    """From the ceiling to the lowest edge, along two lines: down a side and down the middle."""
    for layout, profile in boxes(layouts):
        part, drop = parts(profile), profile.drop.value
        above_sides = panel_above(layout, Seat.BETWEEN_BACKING, Seat.ABOVE_BACKING)
        under = part["bottom"].thickness.value if profile.bottom_joint == "under" else ZERO
        rise = part["side"].width.value + above_sides + under - drop
        assert rise >= ZERO
        if not layout.ceiling.room.stations:
            assert rise == ZERO
        assert profile.inside_depth is not None
        set_up = profile.reveal if profile.bottom_joint == "between" else ZERO
        middle = profile.inside_depth.value + part["bottom"].thickness.value + set_up
        assert middle + panel_above(layout, Seat.ABOVE_BACKING) == drop


def test_law_the_boards_of_a_flat_beam_make_it_up(layouts: tuple[Layout, ...]):
    for layout in layouts:
        for profile in layout.profiles:
            if profile.profile is FamilyProfile.BOX or not profile.parts:
                continue
            part, width = parts(profile), profile.finished_width.value
            two = "upper_board" in part
            set_in = profile.reveal * profile.sides if two else ZERO
            assert part["bottom"].width.value + set_in == width
            if two:
                upper = part["upper_board"].width.value
                assert upper + profile.overhang * profile.sides == width
            boards = sum((each.thickness.value for each in profile.parts), ZERO)
            above = panel_above(layout, Seat.ABOVE_BACKING, Seat.BETWEEN_BACKING)
            assert profile.drop.value in (boards, boards + above)


def air(beam: Beam, side: Length) -> Iterator[Length]:
    """What is free inside a casing beside the clad member and the cleats, at both ends."""
    assert beam.member is not None
    member = beam.member
    within = member.clad + member.cleat + side
    for end in ("at_start", "at_end"):
        near, far = getattr(beam.near, end).value, getattr(beam.far, end).value
        yield getattr(member.near, end).value - near - within
        yield far - getattr(member.far, end).value - within


def test_law_a_casing_never_touches_its_member_at_either_end(layouts: tuple[Layout, ...]):
    skew, shifted, clad, cleats = 0, 0, 0, 0
    for layout in layouts:
        asked = {member.name: member for member in layout.ceiling.room.members}
        for beam in layout.beams:
            if beam.member is None:
                continue
            side = parts(layout.profile(beam.profile))["side"].thickness.value
            clearance = asked[beam.member.name].clearance
            assert min(air(beam, side)) >= clearance
            assert abs(beam.member.shift.value.inches) <= beam.member.shift_limit.value.inches
            skew += bool(beam.member.skew.value)
            shifted += bool(beam.member.shift.value)
            clad += bool(beam.member.clad)
            cleats += bool(beam.member.cleat)
    assert min(skew, shifted, clad, cleats) > 4


def test_law_a_member_hangs_free_above_the_bottom_of_its_casing(layouts: tuple[Layout, ...]):
    for layout in layouts:
        asked = {member.name: member for member in layout.ceiling.room.members}
        for beam in layout.beams:
            if beam.member is None:
                continue
            profile = layout.profile(beam.profile)
            set_up = profile.reveal if profile.bottom_joint == "between" else ZERO
            bottom = profile.drop.value - parts(profile)["bottom"].thickness.value - set_up
            deepest = max(beam.member.drop, beam.member.drop_at_end)
            assert bottom - deepest - beam.member.clad >= asked[beam.member.name].clearance


def test_a_casing_that_touches_would_be_found(layouts: tuple[Layout, ...]):
    beam = next(beam for each in layouts for beam in each.beams if beam.member)
    assert min(air(beam, Length.of_inches(Fraction(40)))) < ZERO
