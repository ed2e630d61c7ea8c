"""Mouldings in a coffer: crown in its upper corners, flat ones on the sides of its beams.

Of crown, `spring_from_wall` is always the angle between its flat back and the wall, which in a
coffer is the side of a beam; never the angle from the ceiling. Each thing comes twice: as asked
for, where None means "not said", and as decided.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length


class CrownMethod(StrEnum):
    """How crown is fitted: as a mitred frame made up on the bench, or piece by piece, coped."""

    BENCH_FRAME = "bench_frame"
    COPED_IN_PLACE = "coped_in_place"


class FlatPlace(StrEnum):
    """Where a flat moulding lies on the sides: up against the panel, or along the lower edge."""

    CEILING = "ceiling"
    BOTTOM_EDGE = "bottom_edge"


@dataclass(frozen=True, slots=True)
class CrownSpec:
    """Crown as asked for; see `Crown`."""

    face: Length | None = None
    spring_from_wall: Angle | None = None
    drop: Length | None = None
    projection: Length | None = None
    thickness: Length | None = None
    land: Length | None = None
    method: CrownMethod | None = None
    fit_total: Length | None = None
    sprung_allowance: Length | None = None
    shortest_piece: Length | None = None
    nailer_clearance: Length | None = None
    most_miter: Angle | None = None
    most_bevel: Angle | None = None


@dataclass(frozen=True, slots=True)
class FlatMouldingSpec:
    """A flat moulding as asked for; see `FlatMoulding`."""

    at: FlatPlace | None = None
    thickness: Length | None = None
    width: Length | None = None
    name: str | None = None


@dataclass(frozen=True, slots=True)
class Crown:
    """Crown, decided. Of the first four, None means "as the others give".

    `face` is the width across the face, `drop` how far it comes down the side, `projection` how far
    it comes out along the ceiling; measured, these two win. `land` is the width of the flats it
    touches side and ceiling with. `fit_total` is what a bench frame is smaller than its opening,
    `sprung_allowance` what a coped piece is longer. The saw turns up to `most_miter` and tilts up
    to `most_bevel`; pieces under `shortest_piece` are not cut on it. `nailer_clearance` keeps the
    nailer off the crown's back.
    """

    face: Length | None
    spring_from_wall: Angle | None
    drop: Length | None
    projection: Length | None
    thickness: Length
    land: Length
    method: CrownMethod
    fit_total: Length
    sprung_allowance: Length
    shortest_piece: Length
    nailer_clearance: Length
    most_miter: Angle
    most_bevel: Angle


@dataclass(frozen=True, slots=True)
class FlatMoulding:
    """A flat moulding: `thickness` out from the side, `width` along it.

    Those at one place are stacked in their order: each lies on the one before it, and crown on the
    last at the ceiling.
    """

    name: str
    at: FlatPlace
    thickness: Length
    width: Length
