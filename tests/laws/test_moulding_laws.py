"""Laws of mouldings: whatever room comes in, what is cut and what is seen make up the openings."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import assume, given
from hypothesis import strategies as st

from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.moulding_records import MouldingPiece, PieceEnd
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.measure.length import ZERO, Length
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.moulding import CrownMethod, CrownSpec, FlatMouldingSpec, FlatPlace
from lacunar.model.spec import CeilingSpec
from tests.laws.ceiling_specs import sixteenths, specs

inch = Length.of_inches
# A leg is snapped to 1/8000 mm.
SNAP = Length.of_millimeters(Fraction(1, 8000))

crowns = st.builds(
    CrownSpec,
    face=sixteenths(2, 4),
    spring_from_wall=st.integers(30, 60).map(Angle.of_degrees),
    thickness=st.just(inch(Fraction(1, 2))),
    method=st.sampled_from(CrownMethod),
    fit_total=st.sampled_from([inch(0), inch(Fraction(1, 16))]),
)
flats = st.lists(
    st.builds(
        FlatMouldingSpec,
        at=st.sampled_from(FlatPlace),
        thickness=sixteenths(1, 1),
        width=st.just(inch(Fraction(7, 2))),
    ),
    max_size=3,
)


@st.composite
def moulded(draw: st.DrawFn) -> CeilingSpec:
    """A ceiling with crown, and perhaps flat mouldings."""
    spec = draw(specs())
    return replace(spec, crown=draw(crowns), flat_mouldings=tuple(draw(flats)))


def laid(spec: CeilingSpec) -> Layout:
    try:
        return lay_out(resolve(spec).ceiling)
    except SpecRefused:
        assume(False)
        raise


def mitred(piece: MouldingPiece) -> int:
    return [piece.left_end, piece.right_end].count(PieceEnd.MITRED)


@given(spec=moulded())
def test_law_every_coffer_has_one_trim(spec: CeilingSpec):
    layout = laid(spec)
    listed = [coffer for trim in layout.mouldings.coffers for coffer in trim.coffers]
    assert sorted(listed) == sorted(coffer.id for coffer in layout.coffers)


@given(spec=moulded())
def test_law_what_is_seen_and_what_covers_it_make_up_the_opening(spec: CeilingSpec):
    layout = laid(spec)
    crown, asked = layout.mouldings.crown, layout.ceiling.crown
    assert crown is not None
    assert asked is not None
    flats = layout.ceiling.flat_mouldings
    behind = sum((flat.thickness for flat in flats if flat.at is FlatPlace.CEILING), ZERO)
    fit = asked.fit_total if asked.method is CrownMethod.BENCH_FRAME else inch(0)
    for coffer in layout.coffers:
        trim = layout.mouldings.of(coffer.id)
        covered = behind * 2 + crown.projection.value * 2 + fit
        assert trim.seen_length.value + covered == coffer.length.value
        assert trim.seen_width.value + covered == coffer.width.value


@given(spec=moulded())
def test_law_a_frame_is_four_sides_of_a_ring(spec: CeilingSpec):
    """The long points less the short points are two projections, all round."""
    layout = laid(spec)
    crown = layout.mouldings.crown
    assert crown is not None
    for trim in layout.mouldings.coffers:
        for piece in trim.pieces:
            if piece.moulding == "Crown":
                ends = [piece.left_end, piece.right_end]
                slanted = 2 - ends.count(PieceEnd.SQUARE)
                difference = piece.long_point.value - piece.short_point.value
                assert difference == crown.projection.value * slanted
        pieces = [piece for piece in trim.pieces if piece.moulding == "Crown"]
        assert sum(piece.quantity for piece in pieces) == 4
        assert trim.running_length is not None
        total = sum((piece.long_point.value * piece.quantity for piece in pieces), ZERO)
        assert trim.running_length.value == total


@given(spec=moulded())
def test_law_the_legs_of_a_crown_span_its_face(spec: CeilingSpec):
    crown = laid(spec).mouldings.crown
    assert crown is not None
    drop, projection, face = (
        figure.value.inches for figure in (crown.drop, crown.projection, crown.face)
    )
    # (f + e)^2 - f^2 is about 2 f e, and each leg is off by half a snap at most.
    assert abs(drop**2 + projection**2 - face**2) <= 2 * face * SNAP.inches


@given(spec=moulded())
def test_law_at_every_corner_of_the_lower_edge_two_miters_meet(spec: CeilingSpec):
    """Left and right hands are as many: each miter of one hand meets one of the other."""
    layout = laid(spec)
    for trim in layout.mouldings.coffers:
        for flat in layout.ceiling.flat_mouldings:
            pieces = [p for p in trim.pieces if p.moulding == flat.name]
            lefts = sum(p.quantity for p in pieces if p.left_end is PieceEnd.MITRED)
            rights = sum(p.quantity for p in pieces if p.right_end is PieceEnd.MITRED)
            assert lefts == rights


@given(spec=moulded())
def test_law_the_mouth_is_never_wider_than_the_opening_and_a_frame_that_passes_fits_it(
    spec: CeilingSpec,
):
    layout = laid(spec)
    for coffer in layout.coffers:
        trim = layout.mouldings.of(coffer.id)
        assert trim.mouth_length.value <= coffer.length.value
        assert trim.mouth_width.value <= coffer.width.value
        if trim.frame_passes_mouth:
            for piece in trim.pieces:
                if piece.moulding == "Crown":
                    mouth = trim.mouth_length if piece.along == "length" else trim.mouth_width
                    assert piece.long_point.value <= mouth.value


@given(spec=moulded())
def test_law_flat_mouldings_lose_a_thickness_at_each_mitred_end(spec: CeilingSpec):
    layout = laid(spec)
    thickness = {flat.name: flat.thickness for flat in layout.ceiling.flat_mouldings}
    for trim in layout.mouldings.coffers:
        for piece in trim.pieces:
            if piece.moulding in thickness:
                taken = thickness[piece.moulding] * mitred(piece)
                assert piece.long_point.value - piece.short_point.value == taken
