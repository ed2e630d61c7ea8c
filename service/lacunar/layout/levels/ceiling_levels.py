"""Turns stations into the reference plane, and finds which of them lie on which beam."""

from collections.abc import Iterator, Mapping

from lacunar.layout.level_records import BeamLevel, Levels, StationLevel
from lacunar.layout.levels.beam_lines import BeamLine, LevelTask, beam_level
from lacunar.layout.records import Beam, WallBeam
from lacunar.layout.runs.frame import RunFrame
from lacunar.layout.set_out_beams import SetOutBeams
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import Room, RunName
from lacunar.model.stations import Leveling, Station

PLANE = Rule("reference plane: level, at the lowest station", "height")
FROM_LINE = Rule(
    "ceiling above the floor: its lowest height and what it lies higher above the line",
    "height + above_line - lowest_above_line",
)
RISE = Rule("from the reference plane up to the ceiling", "ceiling - plane")
MOST_RISE = Rule("from the lowest station to the highest", "highest - lowest")


def levels(
    ceiling: Ceiling, built: SetOutBeams, frames: Mapping[RunName, RunFrame]
) -> Levels | None:
    """Turn stations into what every beam needs to hang level; None where there are none.

    A station lies on a beam where it is between its faces, or within the reach of them. Formulas:
    rise = ceiling - plane; the plane is the lowest ceiling.
    """
    room, leveling = ceiling.room, ceiling.room.leveling
    if leveling is None:
        return None
    lines = tuple(_lines(built, leveling))
    stations = tuple(_stations(room, lines, frames))
    at_most = max(station.ceiling.value for station in stations)
    task = LevelTask(
        panels=leveling.panels,
        uneven=leveling.uneven,
        stations=stations,
        runs=built.runs,
        crossing={name: [b for b in built.beams if b.on is name] for name in RunName},
    )
    found: list[BeamLevel] = []
    for line in lines:
        level = beam_level(line, task)
        if level is not None:
            found.append(level)
    measured = {level.beam for level in found}
    return Levels(
        panels=leveling.panels,
        plane=PLANE.gives(room.height, height=room.height),
        lowest=tuple(each.id for each in stations if not each.rise.value),
        highest=tuple(each.id for each in stations if each.ceiling.value == at_most),
        rise=MOST_RISE.gives(at_most - room.height, highest=at_most, lowest=room.height),
        uneven=leveling.uneven,
        stations=stations,
        beams=tuple(found),
        not_measured=tuple(line.id for line in lines if line.id not in measured),
    )


def _lines(built: SetOutBeams, leveling: Leveling) -> Iterator[BeamLine]:
    """Every beam with side boards, and the strip of ceiling in which stations count for it."""
    beams: tuple[Beam | WallBeam, ...] = (*built.beams, *built.wall_beams)
    for beam in beams:
        profile = built.profiles[beam.profile]
        side = next((part for part in profile.parts if part.name == "side"), None)
        if side is not None:
            near = min(beam.near.at_start.value, beam.near.at_end.value) - leveling.reach
            far = max(beam.far.at_start.value, beam.far.at_end.value) + leveling.reach
            yield BeamLine(beam.id, beam.on, near, far, side)


def _stations(
    room: Room, lines: tuple[BeamLine, ...], frames: Mapping[RunName, RunFrame]
) -> Iterator[StationLevel]:
    lowest = min(station.measured for station in room.stations)
    for station in room.stations:
        x = frames[RunName.LENGTH].place(station.length)
        y = frames[RunName.WIDTH].place(station.width)
        ceiling = _ceiling(room, station, lowest)
        place = {RunName.LENGTH: x.value, RunName.WIDTH: y.value}
        yield StationLevel(
            id=station.name,
            x=x,
            y=y,
            ceiling=ceiling,
            rise=RISE.gives(ceiling.value - room.height, ceiling=ceiling.value, plane=room.height),
            beams=tuple(line.id for line in lines if line.near <= place[line.on] <= line.far),
        )


def _ceiling(room: Room, station: Station, lowest: Length) -> LengthFigure:
    if station.above_line is None:
        return given(station.measured)
    return FROM_LINE.gives(
        room.height + station.above_line - lowest,
        height=room.height,
        above_line=station.above_line,
        lowest_above_line=lowest,
    )
