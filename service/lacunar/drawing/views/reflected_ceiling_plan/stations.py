"""Stations on the plan: a cross where the ceiling's height was measured, with its id beside it.

A station whose cross would run through a word, or whose id finds no clear place, is not marked:
the table tells the places of all.
"""

from lacunar.drawing import style
from lacunar.drawing.annotation import fitted
from lacunar.drawing.elements import Element, Face, Group, Pt, Segments
from lacunar.drawing.plan.clear_places import (
    Box,
    Label,
    Occupied,
    place_label,
)
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import room_on_paper
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.level_records import StationLevel
from lacunar.layout.records import Point

ARM = 1.2
LONGEST_NAME = 20.0


def cross(at: Pt) -> Segments:
    """The sign of a station."""
    falling = (at.moved(-ARM, -ARM), at.moved(ARM, ARM))
    rising = (at.moved(-ARM, ARM), at.moved(ARM, -ARM))
    return Segments((falling, rising), style.OBJECT)


def station_marks(frame: PlanFrame, busy: Occupied, typeface: Typeface) -> tuple[Group, ...]:
    """A cross and an id for every station that has room. What is placed is added to `busy`."""
    if frame.layout.levels is None:
        return ()
    crosses = {
        number: (station, cross(frame.point(Point(station.x.value, station.y.value))))
        for number, station in enumerate(frame.layout.levels.stations, start=1)
    }
    free = {
        number: (station, sign)
        for number, (station, sign) in crosses.items()
        if not any(busy.crosses_text(arm) for arm in sign.lines)
    }
    busy.add(sign for _, sign in free.values())
    marks: list[Group] = []
    for number, (station, sign) in free.items():
        label = _label(frame, station, busy, typeface)
        if not label:
            continue
        busy.add(label)
        marks.append(
            Group(
                "station",
                (sign, *label),
                id=f"station-{number}",
                title=f"Station {station.id}",
                data={
                    "id": station.id,
                    "x-mm": decimal_mm(station.x.value),
                    "y-mm": decimal_mm(station.y.value),
                },
            )
        )
    return tuple(marks)


def _label(
    frame: PlanFrame, station: StationLevel, busy: Occupied, typeface: Typeface
) -> tuple[Element, ...]:
    """The station's id at the nearest clear place within the room."""
    at = frame.point(Point(station.x.value, station.y.value))
    shown = fitted(station.id, LONGEST_NAME, style.TEXT, typeface, Face.MEDIUM)
    sign = Box.about(at, 2 * ARM, 2 * ARM)
    return place_label(Label(shown, sign, False, room_on_paper(frame)), busy, typeface)
