"""Ceilings for laws to hold on: with members, fixed beams, weights, soffits and unlike families."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import strategies as st

from lacunar.measure.length import ZERO, Length
from lacunar.measure.rounding import STEPS
from lacunar.measure.units import Units
from lacunar.model.beams import BottomJoint, Through
from lacunar.model.grid import WallCondition
from lacunar.model.room import Casing, RunName
from lacunar.model.spec import (
    BeamsSpec,
    BoxSpec,
    CeilingSpec,
    FixedBeamSpec,
    GridSpec,
    MemberSpec,
    RoomSpec,
    RunSpec,
)
from lacunar.model.stock import actual_stock
from lacunar.model.wall_kind import WallKind

inch = Length.of_inches

# Stock that nothing asked of it here is too wide for.
BOARD = actual_stock(inch(Fraction(3, 4)), inch(40), Units.INCH)

WALL_KINDS = st.sampled_from([WallKind.NONE, WallKind.HALF, WallKind.FULL])


def sixteenths(low: int, high: int) -> st.SearchStrategy[Length]:
    """Lengths between two numbers of inches, in sixteenths."""
    return st.integers(low * 16, high * 16).map(lambda n: inch(Fraction(n, 16)))


wall_conditions = st.one_of(
    WALL_KINDS.map(WallCondition),
    st.builds(
        lambda width, then: WallCondition(WallKind.SOFFIT, width, then),
        sixteenths(2, 14),
        WALL_KINDS,
    ),
)


@st.composite
def boxes(draw: st.DrawFn) -> BoxSpec:
    """Beams whose stock is wide enough for whatever is asked of it."""
    return BoxSpec(
        sides=BOARD,
        bottom=BOARD,
        bottom_joint=draw(st.sampled_from([BottomJoint.BETWEEN, BottomJoint.MITRED])),
        reveal=ZERO,
        overhang=ZERO,
        allowance=draw(st.sampled_from([ZERO, inch(Fraction(1, 16))])),
        width=draw(sixteenths(3, 12)),
        drop=draw(sixteenths(7, 12)),
    )


@st.composite
def divided_runs(draw: st.DrawFn, span: Length) -> tuple[RunSpec, list[MemberSpec], int]:
    """A run with up to two things that have a place, and how many coffers it has."""
    fixed = draw(st.integers(0, 2))
    places = [span * Fraction(part, fixed + 1) for part in range(1, fixed + 1)]
    jitter = [draw(sixteenths(-12, 12)) for _ in places]
    cased = [draw(st.booleans()) for _ in places]
    counts = tuple(draw(st.integers(1, 4)) for _ in range(fixed + 1))
    weights = None
    if draw(st.booleans()):
        weights = tuple(Fraction(draw(st.integers(2, 6))) for _ in range(sum(counts)))
    centers = [place + off for place, off in zip(places, jitter, strict=True)]
    spec = RunSpec(
        coffers=counts,
        weights=weights,
        start=draw(wall_conditions),
        end=draw(wall_conditions),
        fixed_beams=tuple(
            FixedBeamSpec(center, width=draw(st.none() | sixteenths(4, 10)))
            for center, inside in zip(centers, cased, strict=True)
            if not inside
        ),
    )
    members = [
        MemberSpec(
            on=RunName.LENGTH,
            center=center,
            width=draw(sixteenths(2, 5)),
            drop=draw(sixteenths(2, 6)),
            casing=draw(st.sampled_from(Casing)),
            clearance=draw(st.sampled_from([ZERO, inch(Fraction(1, 4))])),
        )
        for center, inside in zip(centers, cased, strict=True)
        if inside
    ]
    return spec, members, sum(counts)


@st.composite
def specs(draw: st.DrawFn) -> CeilingSpec:
    """Ceilings with room enough for what is in them."""
    runs, members, spans = {}, [], {}
    for name in RunName:
        spans[name] = draw(sixteenths(200, 400))
        runs[name], found, _ = draw(divided_runs(spans[name]))
        members += [replace(member, on=name) for member in found]
    return CeilingSpec(
        room=RoomSpec(
            length=spans[RunName.LENGTH],
            width=spans[RunName.WIDTH],
            height=inch(120),
            members=tuple(members),
        ),
        mark_to=draw(st.sampled_from(STEPS)),
        beams=BeamsSpec(
            crosswise=draw(boxes()),
            lengthwise=draw(boxes()),
            through=draw(st.sampled_from(Through)),
        ),
        grid=GridSpec(runs[RunName.LENGTH], runs[RunName.WIDTH]),
    )
