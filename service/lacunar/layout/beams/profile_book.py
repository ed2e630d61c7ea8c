"""All profiles of a ceiling: one for each way a beam is built, with the beams that have it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from lacunar.layout.beams.drops import Drops
from lacunar.layout.beams.profile_sizes import ProfileKind, ProfileOrder
from lacunar.layout.beams.profiles import build_profile
from lacunar.layout.families import Family
from lacunar.layout.fault_gathering import FaultGathering
from lacunar.layout.panel_stack import PanelStack
from lacunar.layout.records import BeamProfile
from lacunar.layout.runs.run_division import BeamStretch
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.layout.runs.wall_strips import WallStrip
from lacunar.model.room import RunName
from lacunar.model.wall_kind import WallKind

_WALL_KINDS: Mapping[WallKind, ProfileKind] = {
    WallKind.HALF: "wall_half",
    WallKind.FULL: "wall_full",
    WallKind.SOFFIT: "soffit",
}


@dataclass(frozen=True, slots=True)
class ProfileBook:
    """The profiles, numbered in the order beams first use them, and which beam has which."""

    profiles: tuple[BeamProfile, ...]
    of: Mapping[str, str]

    @property
    def by_id(self) -> dict[str, BeamProfile]:
        """The profiles by their ids."""
        return {profile.id: profile for profile in self.profiles}


def profile_book(
    orders: list[tuple[str, ProfileOrder]], stack: PanelStack, faults: FaultGathering
) -> ProfileBook:
    """Build each different profile once.

    Parameters: `orders`, pairs of a beam's id and the profile it is to have; `stack` of the panel;
    `faults`, which keeps those of profiles that cannot be built.
    """
    built: dict[tuple[object, ...], BeamProfile] = {}
    used_by: dict[tuple[object, ...], list[str]] = {}
    for user, order in orders:
        used_by.setdefault(order.key, []).append(user)
        if len(used_by[order.key]) == 1:
            profile = faults.attempt(build_profile, order, stack)
            if profile is not None:
                built[order.key] = profile
    profiles = tuple(
        replace(profile, id=f"P{number}", used_by=tuple(used_by[key]))
        for number, (key, profile) in enumerate(built.items(), start=1)
    )
    return ProfileBook(profiles, {user: p.id for p in profiles for user in p.used_by})


def beam_orders(
    ends: DividedEnds, family: Family, drops: Drops
) -> Iterator[tuple[str, ProfileOrder]]:
    """The profile each beam of a run is to have, with the beam's id."""
    for beam_id, beam, _ in ends.beams:
        yield beam_id, _beam_order(beam, family, drops)


def _beam_order(beam: BeamStretch, family: Family, drops: Drops) -> ProfileOrder:
    if beam.thing is not None and beam.thing.member is not None:
        drop, partial = drops.casings[beam.thing.pointer], beam.thing.member.partial
        return ProfileOrder("cased", family, beam.width, drop, partial)
    return ProfileOrder(_free_kind(family), family, beam.width, drops.families[family.run])


def _free_kind(family: Family) -> ProfileKind:
    return "flat" if family.flat else "box"


def wall_order(strip: WallStrip, family: Family, drops: Drops) -> ProfileOrder:
    """The profile a soffit or wall beam is to have."""
    kind = _WALL_KINDS[strip.wall_kind]
    return ProfileOrder(kind, family, strip.width, drops.families[family.run])


def family_orders(
    families: Mapping[RunName, Family], drops: Drops
) -> list[tuple[str, ProfileOrder]]:
    """The plain beam of each family, to be judged where the runs could not be divided."""
    return [
        (
            str(family.run),
            ProfileOrder(_free_kind(family), family, family.width, drops.families[family.run]),
        )
        for family in families.values()
    ]
