"""Headroom below the beams. Too little is a caution, never a fault: the local code decides."""

from collections.abc import Iterator, Sequence

from lacunar.layout.records import BeamProfile, Clearance
from lacunar.measure.figure import Rule
from lacunar.measure.length import ZERO
from lacunar.model.faults import Fault
from lacunar.model.room import Room

CLEAR_HEIGHT = Rule("clear height: from the finished floor to the lowest edge", "height - drop")


def headroom(room: Room, profiles: Sequence[BeamProfile]) -> tuple[Clearance, ...]:
    """Turn the room's height and each profile's drop into the clear height below it [length]."""
    return tuple(_clearance(room, profile) for profile in profiles)


def _clearance(room: Room, profile: BeamProfile) -> Clearance:
    drop = profile.drop.value
    clear = room.height - drop
    return Clearance(
        profile=profile.id,
        clear_height=CLEAR_HEIGHT.gives(clear, height=room.height, drop=drop),
        limit=room.headroom,
        enough=clear >= room.headroom,
    )


def floor_faults(clearances: Sequence[Clearance]) -> Iterator[Fault]:
    """The fault of beams that reach the floor."""
    lowest = min((clear.clear_height.value for clear in clearances), default=None)
    if lowest is not None and lowest <= ZERO:
        yield Fault(
            code="beam_reaches_floor",
            pointer="/room/height",
            message="The deepest beams hang as low as the floor.",
            remedy="Check the room's height, and the drop of beams and members.",
            figures={"clear_height": lowest},
        )
