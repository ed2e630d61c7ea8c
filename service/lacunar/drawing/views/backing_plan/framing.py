"""What is above the ceiling: joists from wall to wall, and blocking between two of them."""

from collections.abc import Iterator

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import across_rings
from lacunar.layout.backing_records import BackingLine, Joist, JoistLines
from lacunar.model.fixing import BetweenJoists

Line = tuple[Pt, Pt]
APART = 1.0
"""Both edges of a joist are drawn from this far apart on; nearer, its middle line alone [mm]."""


def joist_lines(frame: PlanFrame, joists: JoistLines, joist: Joist) -> tuple[Line, ...]:
    """A joist between the walls of the room: both its edges, or its middle line where it is thin.

    A middle line also where an edge lies beyond the wall that the joist runs along.
    """
    outline = tuple(frame.point(corner) for corner in frame.layout.outline)
    center, half = frame.on_paper(joist.center.value), frame.on_paper(joists.width) / 2
    edges = (center - half, center + half) if 2 * half >= APART else (center,)
    return tuple(
        line
        for at in edges
        for line in across_rings((outline,), joists.on, frame.along(joists.on, at, 0.0))
    )


def blocking(frame: PlanFrame, line: BackingLine) -> Iterator[Line]:
    """Each block of a line that lies between two joists, from joist to joist."""
    joists = frame.layout.backing.joists
    if line.carried_by is not BetweenJoists.BLOCKING or line.bay is None or joists is None:
        return
    centers = {joist.id: joist.center.value for joist in joists.joists}
    half = joists.width / 2
    low = frame.on_paper(centers[line.bay.near] + half) if line.bay.near else 0.0
    high = frame.span(line.on)
    if line.bay.far:
        high = frame.on_paper(centers[line.bay.far] - half)
    for piece in line.pieces:
        for place in piece.places:
            across = frame.on_paper(place.value)
            yield frame.along(line.on, low, across), frame.along(line.on, high, across)
