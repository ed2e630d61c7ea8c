"""Sound specs as records, to be made unsound one field at a time."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

from lacunar.measure.length import Length
from lacunar.model.room import RunName
from lacunar.model.spec import BeamsSpec, BoxSpec, CeilingSpec, GridSpec, MemberSpec, RoomSpec


def inches(amount: str | int) -> Length:
    """So many inches, such as `7/2`."""
    return Length.of_inches(Fraction(amount))


MEMBER = MemberSpec(on=RunName.LENGTH, center=inches(121), width=inches("7/2"), drop=inches(6))
ROOM = RoomSpec(length=inches(243), width=inches(178), height=inches(109))
SOUND = CeilingSpec(room=ROOM)


def with_room(**fields: Any) -> CeilingSpec:
    """The sound spec with other fields of the room."""
    return replace(SOUND, room=replace(ROOM, **fields))


def with_members(*members: MemberSpec) -> CeilingSpec:
    """The sound spec with members."""
    return with_room(members=members)


def with_beams(**families: Any) -> CeilingSpec:
    """The sound spec with its beams described."""
    return replace(SOUND, beams=BeamsSpec(**families))


def with_box(**fields: Any) -> CeilingSpec:
    """The sound spec with its crosswise beams described."""
    return with_beams(crosswise=BoxSpec(**fields))


def with_run(**fields: Any) -> CeilingSpec:
    """The sound spec with its length run divided otherwise."""
    return replace(SOUND, grid=replace(GridSpec(), length=replace(GridSpec().length, **fields)))
