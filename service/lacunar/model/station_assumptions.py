"""Decides what a spec leaves open about stations and leveling."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming, FreeNames
from lacunar.model.panel import Panel, PanelKind, Seat
from lacunar.model.spec import RoomSpec
from lacunar.model.stations import Leveling, LevelingSpec, PanelsTo, Station

# How far off a beam's face a station still tells its height, and how much sides may differ along a
# beam before the eye finds it: common practice, no source.
_REACH = {Units.INCH: Length.of_inches(3), Units.MILLIMETER: Length.of_millimeters(75)}
_UNEVEN = {
    Units.INCH: Length.of_inches(Fraction(1, 4)),
    Units.MILLIMETER: Length.of_millimeters(6),
}


def decide_height(room: RoomSpec, assuming: Assuming) -> Length:
    """The height of the ceiling at its lowest: as told, or that of the lowest station."""
    if room.height is not None:
        return room.height
    read = [station.height for station in room.stations if station.height is not None]
    if not read:
        raise ValueError("/room/height is open: the spec has not passed the rules")
    return assuming.settle(None, "/room/height", min(read), "the ceiling at its lowest station")


def decide_stations(room: RoomSpec, assuming: Assuming) -> tuple[Station, ...]:
    """The stations, each with a name."""
    return tuple(_named(room, assuming))


def _named(room: RoomSpec, assuming: Assuming) -> Iterator[Station]:
    names = FreeNames("H", (station.name for station in room.stations))
    for position, said in enumerate(room.stations):
        place = f"/room/stations/{position}"
        if said.length is None or said.width is None:
            raise ValueError(f"{place} is open: the spec has not passed the rules")
        name = names.settle(said.name, place, assuming)
        yield Station(name, said.length, said.width, said.height, said.above_line)


def decide_leveling(
    room: RoomSpec, panel: Panel, units: Units, assuming: Assuming
) -> Leveling | None:
    """What is leveled to what; None where no heights are known."""
    if not room.stations:
        return None
    said, place = room.leveling or LevelingSpec(), "/room/leveling"
    follows = panel.kind is PanelKind.EXISTING or panel.seat is Seat.BETWEEN_SIDES
    return Leveling(
        panels=assuming.settle(
            said.panels,
            f"{place}/panels",
            PanelsTo.CEILING if follows else PanelsTo.PLANE,
            "what lies against the ceiling follows it"
            if follows
            else "what goes up before the sides can be hung level with the backing",
        ),
        reach=assuming.settle(
            said.reach, f"{place}/reach", _REACH[units], "a ceiling hardly changes within this"
        ),
        uneven=assuming.settle(
            said.uneven, f"{place}/uneven", _UNEVEN[units], "less is hardly seen from the floor"
        ),
    )
