"""Decides what a spec leaves open about mouldings."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.moulding import (
    Crown,
    CrownMethod,
    CrownSpec,
    FlatMoulding,
    FlatMouldingSpec,
    FlatPlace,
)


@dataclass(frozen=True, slots=True)
class CrownDefaults:
    """One unit system's figures for crown."""

    face: Length
    thickness: Length
    land: Length
    fit_total: Length
    sprung_allowance: Length
    shortest_piece: Length
    nailer_clearance: Length


def _inches(amount: str) -> Length:
    return Length.of_inches(Fraction(amount))


# All common practice, no source: a crown for rooms of 8 and 9 ft; frames that drop in; a piece long
# enough to keep hands a hand's breadth off the blade.
_DEFAULTS: Mapping[Units, CrownDefaults] = {
    Units.INCH: CrownDefaults(
        face=_inches("13/4"),
        thickness=_inches("9/16"),
        land=_inches("3/8"),
        fit_total=_inches("1/16"),
        sprung_allowance=_inches("1/32"),
        shortest_piece=_inches("8"),
        nailer_clearance=_inches("1/8"),
    ),
    Units.MILLIMETER: CrownDefaults(
        face=Length.of_millimeters(80),
        thickness=Length.of_millimeters(15),
        land=Length.of_millimeters(10),
        fit_total=Length.of_millimeters(Fraction(3, 2)),
        sprung_allowance=Length.of_millimeters(1),
        shortest_piece=Length.of_millimeters(200),
        nailer_clearance=Length.of_millimeters(3),
    ),
}
# Crown is milled to 38 and to 45 degrees; the first is the more usual (common practice, no source).
SPRING_FROM_WALL = Angle.of_degrees(38)
# How far common compound-miter saws turn and tilt (common practice, no source).
MOST_MITER = Angle.of_degrees(50)
MOST_BEVEL = Angle.of_degrees(45)


def decide_crown(crown: CrownSpec | None, units: Units, assuming: Assuming) -> Crown | None:
    """Turn crown as asked for into crown decided; none where none is asked for.

    Of face, spring, drop and projection only what the others do not give is assumed; what matters
    to the method not chosen is filled silently.
    """
    if crown is None:
        return None
    usual = _DEFAULTS[units]
    method = assuming.settle(
        crown.method, "/crown/method", CrownMethod.BENCH_FRAME, "frames suit coffers of few sizes"
    )
    coped = method is CrownMethod.COPED_IN_PLACE
    framing, coping = (Assuming(), assuming) if coped else (assuming, Assuming())
    measured = crown.drop is not None or crown.projection is not None
    changed = assuming if measured and crown.spring_from_wall is not None else Assuming()

    def settle(name: str, reason: str, noted: Assuming = assuming) -> Length:
        said: Length | None = getattr(crown, name)
        otherwise: Length = getattr(usual, name)
        return noted.settle(said, f"/crown/{name}", otherwise, reason)

    return Crown(
        face=crown.face if measured else settle("face", "a usual crown for 8 and 9 ft rooms"),
        spring_from_wall=_spring(crown, assuming),
        drop=crown.drop,
        projection=crown.projection,
        thickness=settle("thickness", "a usual thickness of crown"),
        land=settle("land", "a usual width of the flats of crown", changed),
        method=method,
        fit_total=settle("fit_total", "a frame that drops in without being forced", framing),
        sprung_allowance=settle("sprung_allowance", "pieces are sprung in tight", coping),
        shortest_piece=settle("shortest_piece", "hands stay clear of the blade"),
        nailer_clearance=settle("nailer_clearance", "the nailer must not hold the crown off"),
        most_miter=assuming.settle(
            crown.most_miter, "/crown/most_miter", MOST_MITER, "as far as most saws turn"
        ),
        most_bevel=assuming.settle(
            crown.most_bevel, "/crown/most_bevel", MOST_BEVEL, "as far as most saws tilt"
        ),
    )


def _spring(crown: CrownSpec, assuming: Assuming) -> Angle | None:
    """The spring said, or the usual one where nothing measured gives it."""
    if crown.drop is not None or crown.projection is not None:
        return crown.spring_from_wall
    return assuming.settle(
        crown.spring_from_wall,
        "/crown/spring_from_wall",
        SPRING_FROM_WALL,
        "the more usual of the two springs crown is milled to, from the wall",
    )


def decide_flat_mouldings(
    mouldings: tuple[FlatMouldingSpec, ...], assuming: Assuming
) -> tuple[FlatMoulding, ...]:
    """Turn flat mouldings as asked for into ones with a name each.

    Raises ValueError for a spec that has not passed the rules.
    """
    decided = []
    for number, said in enumerate(mouldings):
        place = f"/flat_mouldings/{number}"
        if said.thickness is None or said.width is None:
            raise ValueError(f"{place} is open: the spec has not passed the rules")
        at = assuming.settle(
            said.at, f"{place}/at", FlatPlace.CEILING, "a flat behind the crown is the usual one"
        )
        name = assuming.settle(
            said.name or None,
            f"{place}/name",
            f"Flat moulding {number + 1}",
            "by its place in the list",
        )
        decided.append(FlatMoulding(name, at, said.thickness, said.width))
    return tuple(decided)
