"""Laws of crossings: boards of different beams never share space, and every meeting is counted."""

from dataclasses import dataclass, replace
from itertools import combinations, pairwise

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.crossing_records import BoardCut, CrossingKind, EndsAt
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.beams import BottomJoint
from lacunar.model.faults import SpecRefused
from lacunar.model.look import JointLook, LookSpec, SideLook
from lacunar.model.room import RunName
from lacunar.model.spec import StockSpec
from tests.laws.ceiling_specs import specs

LONG = Length.of_feet(60)
QUARTER = Length.of_inches(1) / 4
SETTINGS = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


@st.composite
def crossed(draw, look, longest=LONG):
    """Layouts of ceilings with a look, with bottoms between, under, set in or out."""
    spec = draw(specs())
    families = []
    for family in (spec.beams.crosswise, spec.beams.lengthwise):
        joint = draw(st.sampled_from([BottomJoint.BETWEEN, BottomJoint.UNDER]))
        out = draw(st.sampled_from([ZERO, QUARTER])) if joint is BottomJoint.UNDER else ZERO
        reveal = QUARTER if not out and draw(st.booleans()) else ZERO
        families.append(replace(family, bottom_joint=joint, overhang=out, reveal=reveal))
    beams = replace(spec.beams, crosswise=families[0], lengthwise=families[1], look=draw(look))
    stock = StockSpec(longest_board=longest)
    try:
        return lay_out(resolve(replace(spec, beams=beams, stock=stock)).ceiling)
    except SpecRefused:
        assume(False)


looks = st.builds(LookSpec, sides=st.sampled_from(SideLook), corners=st.just(JointLook.BUTTED))


@dataclass(frozen=True)
class Box:
    """A board in space: along the length run, along the width run, and down from the ceiling."""

    beam: str
    x: tuple[Length, Length]
    y: tuple[Length, Length]
    z: tuple[Length, Length]

    def shares_space(self, other):
        sides = zip((self.x, self.y, self.z), (other.x, other.y, other.z), strict=True)
        return all(max(a[0], b[0]) < min(a[1], b[1]) for a, b in sides)


def boxes(layout: Layout):
    """Every board as the profile and its place have it, worked out from those alone."""
    lines = {beam.id: beam for beam in (*layout.beams, *layout.wall_beams)}
    for piece in layout.pieces:
        profile = layout.profile(piece.profile)
        sizes = {part.name: part for part in profile.parts}
        thickness = sizes[piece.part].thickness.value
        drop = profile.drop.value
        under = profile.bottom_joint is BottomJoint.UNDER
        below = sizes["bottom"].thickness.value if under else ZERO
        for place in piece.places:
            line = lines[place.beam]
            near, far = line.near.at_start.value, line.far.at_start.value
            if piece.part == "side":
                across = (
                    (near, near + thickness) if place.side == "near" else (far - thickness, far)
                )
                heights = (ZERO, drop - below)
            else:
                width = sizes["bottom"].width.value
                middle = (near + far) / 2
                across = (middle - width / 2, middle + width / 2)
                wall = getattr(line, "wall", None)
                inset = (sizes["side"].thickness.value if not under else ZERO) + (
                    profile.reveal - profile.overhang if under else ZERO
                )
                if wall in ("W1", "W4"):
                    across = (far - inset - width, far - inset)
                elif wall:
                    across = (near + inset, near + inset + width)
                low = drop - (ZERO if under else profile.reveal)
                heights = (low - thickness, low)
            along = place.start, place.end
            x, y = (across, along) if line.on is RunName.LENGTH else (along, across)
            yield Box(place.beam, x, y, heights), piece


@SETTINGS
@given(crossed(looks))
def test_boards_of_different_beams_never_share_space(layout):
    square = [
        box
        for box, piece in boxes(layout)
        if BoardCut.NOTCHED not in (piece.start.cut, piece.end.cut)
    ]
    for one, other in combinations(square, 2):
        if one.beam != other.beam:
            assert not one.shares_space(other), (one, other)


@SETTINGS
@given(crossed(looks))
def test_boards_lie_in_the_room_and_apart_along_their_beam(layout):
    spans = {name: layout.run(name).span.at_start.value for name in RunName}
    lines = {beam.id: beam for beam in (*layout.beams, *layout.wall_beams)}
    places = {}
    for piece in layout.pieces:
        for place in piece.places:
            assert place.end - place.start == piece.length.value
            key = place.beam, piece.part, place.side
            places.setdefault(key, []).append((place.start, place.end))
    for (beam, _, _), found in places.items():
        found.sort()
        assert found[0][0] >= ZERO
        assert found[-1][1] <= spans[lines[beam].on.other]
        assert all(before[1] <= after[0] for before, after in pairwise(found))


@SETTINGS
@given(crossed(looks))
def test_every_two_beams_that_cross_are_in_one_place_of_the_catalogue(layout):
    forms = layout.backing.forms
    counted = dict.fromkeys(CrossingKind, 0)
    pairs = []
    for crossing in layout.crossings:
        counted[crossing.kind] += len(crossing.places)
        pairs += [frozenset((place.through, place.stopped)) for place in crossing.places]
    ends = CrossingKind.END_AT_WALL, CrossingKind.END_AT_SOFFIT
    assert counted[CrossingKind.CROSS] == forms.crosses.value
    assert counted[CrossingKind.TEE] == forms.tees.value
    assert counted[CrossingKind.ELL] == forms.ells.value
    assert counted[ends[0]] == forms.wall_ends.value
    assert counted[ends[1]] == forms.soffit_ends.value
    assert len(pairs) == len({*pairs}) == sum(counted.values())


@SETTINGS
@given(crossed(looks, longest=Length.of_feet(9)))
def test_no_board_is_longer_than_its_stock_and_parts_make_up_the_whole(layout):
    longest = layout.ceiling.stock.longest_board
    for piece in layout.pieces:
        assert piece.length.value <= longest
        for end in (piece.start, piece.end):
            assert (end.ends_at is EndsAt.SPLICE) >= (end.cut is BoardCut.SCARFED)


@SETTINGS
@given(crossed(st.just(LookSpec(sides=SideLook.PER_COFFER, corners=JointLook.MITRED))))
def test_mitred_sides_show_the_clear_openings(layout):
    openings = {coffer.length.value for coffer in layout.coffers}
    openings |= {coffer.width.value for coffer in layout.coffers}
    for piece in layout.pieces:
        if piece.part == "side" and piece.start.cut is piece.end.cut is BoardCut.MITRED:
            assert piece.short_length.value in openings
