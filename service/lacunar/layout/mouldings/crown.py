"""The section of a crown: from what is known of it to every size of it as it stands."""

from dataclasses import dataclass, replace

from lacunar.layout.moulding_records import (
    CrownSection,
    Nailer,
    Rake,
    RakedMeeting,
    SawSettings,
    SawSheet,
)
from lacunar.layout.mouldings.raked_run import SizedCrown, raked_meeting
from lacunar.layout.mouldings.saw_settings import SQUARE_CORNER, ceiling_edge, saw_settings
from lacunar.measure.angle import (
    Angle,
    angle_of_adjacent,
    angle_of_legs,
    angle_of_opposite,
    hypotenuse,
    over_cosine,
    over_sine,
    times_cosine,
    times_sine,
)
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import Crown

FACE = Rule(
    "face: across the measured drop and projection", "sqrt(drop * drop + projection * projection)"
)
SPRING = Rule(
    "spring from the wall, by the measured drop and projection", "atan(projection / drop)"
)
SPRING_AT_DROP = Rule("spring from the wall that this drop gives this face", "acos(drop / face)")
SPRING_AT_PROJECTION = Rule(
    "spring from the wall that this projection gives this face", "asin(projection / face)"
)
DROP = Rule("drop of a crown down the side", "face * cos(spring)")
PROJECTION = Rule("projection of a crown along the ceiling", "face * sin(spring)")
BACK_DROP = Rule(
    "where the back of a crown meets the side, down from the ceiling",
    "max(drop - thickness / sin(spring), 0)",
)
BACK_PROJECTION = Rule(
    "where the back of a crown meets the ceiling, out from the side",
    "max(projection - thickness / cos(spring), 0)",
)
LAND_OPENING = Rule(
    "what the flats open by, the crown standing at another spring than it is milled to",
    "land * sin(abs(stands_at - milled_to))",
)
NAILER_HEIGHT = Rule(
    "nailer against the side: up to the back of the crown, less the clearance",
    "back_drop - clearance / sin(spring)",
)
NAILER_DEPTH = Rule(
    "nailer against the ceiling: out to the back of the crown, less the clearance",
    "back_projection - clearance / cos(spring)",
)


@dataclass(frozen=True, slots=True)
class SawAsked:
    """What is asked about crown at a corner beside its spring, as far as it is known."""

    face: LengthFigure | None = None
    fence_height: Length | None = None
    slope: Angle | None = None
    rake: Rake = Rake.CLIMBS


def saw_sheet(spring: AngleFigure, settings: SawSettings, asked: SawAsked) -> SawSheet:
    """Turn a spring [deg], saw settings and what is asked beside into a sheet for the saw.

    Nested, crown stands against the fence by its drop: taller than the saw takes, it is not within
    the saw's limits.
    """
    face, fence = asked.face, asked.fence_height
    if face is None:
        raked = _raked(None, settings.corner, asked)
        return SawSheet(spring, settings, None, None, None, None, fence, raked)
    drop, projection = _drop(face, spring), _projection(None, face, spring)
    edge = ceiling_edge(projection, settings.corner) if settings.cuts else None
    if fence is not None and drop.value > fence:
        settings = replace(settings, nested_within_limits=False)
    raked = _raked(SizedCrown(face, drop, projection), settings.corner, asked)
    return SawSheet(spring, settings, face, drop, projection, edge, fence, raked)


def _raked(crown: SizedCrown | None, corner: Angle, asked: SawAsked) -> RakedMeeting | None:
    if asked.slope is None:
        return None
    return raked_meeting(crown, corner, asked.slope, asked.rake)


def crown_section(crown: Crown) -> CrownSection:
    """Turn a decided crown into its section as it stands in a square upper corner.

    Formula: drop f cos S, projection f sin S, with S from the wall. Measured sizes win: both give S
    as atan(p/d) and f as their hypotenuse; one, with the face, gives S as acos(d/f) or asin(p/f).
    Where that differs from the spring it is milled to, its flats open by land · sin(difference).
    The back lies its thickness behind the face. Trigonometry is rounded once, in `measure.angle`.
    """
    face, spring = _face(crown), _spring(crown)
    drop = given(crown.drop) if crown.drop is not None else _drop(face, spring)
    projection = _projection(crown.projection, face, spring)
    back_drop = _back_drop(crown.thickness, drop.value, spring.value)
    back_projection = _back_projection(crown.thickness, projection.value, spring.value)
    return CrownSection(
        face=face,
        spring_from_wall=spring,
        drop=drop,
        projection=projection,
        back_drop=back_drop,
        back_projection=back_projection,
        land_opening=_land_opening(crown, spring),
        nailer=_nailer(
            back_drop.value, back_projection.value, spring.value, crown.nailer_clearance
        ),
        saw=saw_settings(spring, SQUARE_CORNER, crown.most_miter, crown.most_bevel),
    )


def _known(length: Length | None) -> Length:
    """A size that the rules require where it is asked for."""
    if length is None:
        raise ValueError("the crown is not sized: the spec has not passed the rules")
    return length


def _face(crown: Crown) -> LengthFigure:
    if crown.face is not None:
        return given(crown.face)
    drop, projection = _known(crown.drop), _known(crown.projection)
    return FACE.approximates(hypotenuse(drop, projection), drop=drop, projection=projection)


def _spring(crown: Crown) -> AngleFigure:
    drop, projection = crown.drop, crown.projection
    if drop is not None and projection is not None:
        return SPRING.approximates(
            angle_of_legs(projection, drop), projection=projection, drop=drop
        )
    if drop is not None:
        face = _known(crown.face)
        return SPRING_AT_DROP.approximates(angle_of_adjacent(drop, face), drop=drop, face=face)
    if projection is not None:
        face = _known(crown.face)
        return SPRING_AT_PROJECTION.approximates(
            angle_of_opposite(projection, face), projection=projection, face=face
        )
    if crown.spring_from_wall is None:
        raise ValueError("the crown has no spring: the spec has not been decided")
    return given(crown.spring_from_wall)


def _drop(face: LengthFigure, spring: AngleFigure) -> LengthFigure:
    value = times_cosine(face.value, spring.value)
    return DROP.approximates(value, face=face.value, spring=spring.value)


def _projection(measured: Length | None, face: LengthFigure, spring: AngleFigure) -> LengthFigure:
    if measured is not None:
        return given(measured)
    value = times_sine(face.value, spring.value)
    return PROJECTION.approximates(value, face=face.value, spring=spring.value)


def _back_drop(thickness: Length, drop: Length, spring: Angle) -> LengthFigure:
    """None of it left where the crown fills its corner."""
    left = max(drop - over_sine(thickness, spring), ZERO)
    return BACK_DROP.approximates(left, drop=drop, thickness=thickness, spring=spring)


def _back_projection(thickness: Length, projection: Length, spring: Angle) -> LengthFigure:
    left = max(projection - over_cosine(thickness, spring), ZERO)
    return BACK_PROJECTION.approximates(
        left, projection=projection, thickness=thickness, spring=spring
    )


def _land_opening(crown: Crown, spring: AngleFigure) -> LengthFigure | None:
    """None where the crown stands as it is milled, or nothing is known of that."""
    milled, stands = crown.spring_from_wall, spring.value
    if milled is None or milled == stands:
        return None
    opening = times_sine(crown.land, abs(stands - milled))
    return LAND_OPENING.approximates(opening, land=crown.land, stands_at=stands, milled_to=milled)


def _nailer(
    back_drop: Length, back_projection: Length, spring: Angle, clearance: Length
) -> Nailer | None:
    height = back_drop - over_sine(clearance, spring)
    depth = back_projection - over_cosine(clearance, spring)
    if min(height, depth) <= ZERO:
        return None
    return Nailer(
        height=NAILER_HEIGHT.approximates(
            height, back_drop=back_drop, clearance=clearance, spring=spring
        ),
        depth=NAILER_DEPTH.approximates(
            depth, back_projection=back_projection, clearance=clearance, spring=spring
        ),
    )
