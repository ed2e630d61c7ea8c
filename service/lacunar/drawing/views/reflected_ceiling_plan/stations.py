"""Stations on the plan: a cross where the ceiling's height was measured, with its id beside it.

A station whose cross would run through a word, or whose id finds no clear place, is not marked:
the table tells the places of all.
"""

from collections.abc import Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import fitted
from lacunar.drawing.elements import Element, Face, Group, Pt, Segments
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import (
    Box,
    Drawn,
    Label,
    on_paper,
    place_label,
    room_on_paper,
)
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
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


def station_marks(
    frame: PlanFrame, drawn: Sequence[Element], typeface: Typeface
) -> tuple[Group, ...]:
    """A cross and an id for every station that has room among what is drawn already."""
    if frame.layout.levels is None:
        return ()
    there = on_paper(drawn, typeface)
    crosses = {
        number: (station, cross(frame.point(Point(station.x.value, station.y.value))))
        for number, station in enumerate(frame.layout.levels.stations, start=1)
    }
    free = {
        number: pair
        for number, pair in crosses.items()
        if not any(word.crossed_by(arm) for word in there.words for arm in pair[1].lines)
    }
    lines = (*there.lines, *(arm for _, sign in free.values() for arm in sign.lines))
    words = list(there.words)
    marks: list[Group] = []
    for number, (station, sign) in free.items():
        placed = _label(frame, station, Drawn(lines, tuple(words)), typeface)
        if placed is None:
            lines = tuple(line for line in lines if line not in sign.lines)
            continue
        box, label = placed
        words.append(box)
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
    frame: PlanFrame, station: StationLevel, drawn: Drawn, typeface: Typeface
) -> tuple[Box, tuple[Element, ...]] | None:
    """The station's id at the nearest clear place within the room."""
    at = frame.point(Point(station.x.value, station.y.value))
    shown = fitted(station.id, LONGEST_NAME, style.TEXT, typeface, Face.SEMIBOLD)
    return place_label(Label(at, shown, ARM, room_on_paper(frame)), drawn, typeface)
