"""From a query about one corner to a sheet for the saw: bounds, what is left open, the sums."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from lacunar.layout.moulding_records import Rake, SawSheet
from lacunar.layout.mouldings.crown import SawAsked, saw_sheet
from lacunar.layout.mouldings.saw_settings import saw_settings
from lacunar.measure.angle import Angle
from lacunar.measure.figure import given
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.ceiling import Assumption
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.limits import CORNER, FENCE_HEIGHT, SLOPE
from lacunar.model.moulding import CrownSpec
from lacunar.model.moulding_assumptions import MOST_BEVEL, MOST_MITER
from lacunar.model.moulding_rules import angle_out_of_bounds
from lacunar.model.rules import check, length_out_of_bounds
from lacunar.model.spec import CeilingSpec, RoomSpec


@dataclass(frozen=True, slots=True)
class SawAnswer:
    """A sheet for the saw, the step its lengths are told to, and what was assumed for it."""

    sheet: SawSheet
    mark_to: Step
    assumptions: tuple[Assumption, ...]


def settings_for(query: Mapping[str, Any]) -> SawAnswer:
    """Turn a query for saw settings, as read, into the settings.

    Raises `SpecRefused` with every fault; pointers are into the query.
    """
    units = query.get("units", Units.INCH)
    faults = tuple(_faults(query))
    if faults:
        raise SpecRefused(faults)
    assuming = Assuming()
    limits = [
        assuming.settle(query.get(name), f"/{name}", usual, "as far as most saws go")
        for name, usual in (("most_miter", MOST_MITER), ("most_bevel", MOST_BEVEL))
    ]
    spring = given(query["spring_from_wall"])
    settings = saw_settings(spring, query["corner"], *limits)
    sheet = saw_sheet(spring, settings, _asked(query, assuming))
    return SawAnswer(sheet, query.get("mark_to", DEFAULTS[units].mark_to), assuming.made)


def _asked(query: Mapping[str, Any], assuming: Assuming) -> SawAsked:
    face: Length | None = query.get("face")
    rake = Rake.CLIMBS
    if "slope" in query:
        why = "most raked runs start at the low corner"
        rake = assuming.settle(query.get("rake"), "/rake", rake, why)
    return SawAsked(
        face=None if face is None else given(face),
        fence_height=query.get("fence_height"),
        slope=query.get("slope"),
        rake=rake,
    )


def _faults(query: Mapping[str, Any]) -> Iterator[Fault]:
    """The rules of a ceiling's crown, which are silent about all that is not asked; the corner."""
    names = ("face", "spring_from_wall", "most_miter", "most_bevel")
    crown = CrownSpec(**{name: query[name] for name in names if name in query})
    spec = CeilingSpec(room=RoomSpec(), crown=crown)
    for fault in check(spec, frozenset({"/room"})):
        yield Fault(
            fault.code,
            fault.pointer.removeprefix("/crown"),
            fault.message,
            fault.remedy,
            fault.figures,
        )
    for name, bounds in (("corner", CORNER), ("slope", SLOPE)):
        angle: Angle | None = query.get(name)
        if angle is not None and not bounds.least <= angle <= bounds.most:
            yield angle_out_of_bounds(f"/{name}", angle, bounds)
    yield from _said_alone(query)
    height: Length | None = query.get("fence_height")
    if height is not None and not FENCE_HEIGHT.least <= height <= FENCE_HEIGHT.most:
        yield length_out_of_bounds("/fence_height", height, FENCE_HEIGHT)


def _said_alone(query: Mapping[str, Any]) -> Iterator[Fault]:
    """What is said, and says nothing without something else that is not."""
    if "fence_height" in query and "face" not in query:
        yield Fault(
            code="fence_height_alone",
            pointer="/fence_height",
            message="Without a face nobody knows how tall the crown stands at the fence.",
            remedy="Give the width of the face too.",
        )
    if "rake" in query and "slope" not in query:
        yield Fault(
            code="rake_without_slope",
            pointer="/rake",
            message="A raked run has no slope.",
            remedy="Give the slope too, in degrees above level.",
        )
