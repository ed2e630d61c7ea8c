"""The line at which something is broken off that goes on: straight, with a turn in its middle."""

from math import dist

from lacunar.drawing import style
from lacunar.drawing.elements import Polyline, Pt

OVERRUN = 1.4
TURN = 1.3
"""How far it turns aside [mm]: so far whatever is broken off reaches."""


def break_line(start: Pt, end: Pt) -> Polyline:
    """A break line from edge to edge of what is broken off, run on a little beyond both."""
    long = dist((start.x, start.y), (end.x, end.y))
    along = ((end.x - start.x) / long, (end.y - start.y) / long)
    half, turn = long / 2, min(TURN, long / 4)

    def spot(way: float, aside: float) -> Pt:
        return start.moved(along[0] * way - along[1] * aside, along[1] * way + along[0] * aside)

    places = (
        (-OVERRUN, 0.0),
        (half - turn, 0.0),
        (half - turn / 2, turn),
        (half + turn / 2, -turn),
        (half + turn, 0.0),
        (long + OVERRUN, 0.0),
    )
    return Polyline(tuple(spot(*place) for place in places), style.FINE)
