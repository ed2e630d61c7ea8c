"""Puts seams of sheets that lie along the joists on them, and says what those that miss rest on."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.layout.backing_records import JoistLines
from lacunar.layout.joists import among_joists
from lacunar.layout.records import Caution, PanelFit, SeamBearing
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName

SEAM_ON_JOIST = Rule("seam on a joist, from the panel's near edge", "joist - start")
BACKING_STRIP = Rule("strip that carries a seam between joists: as long as the seam", "across")


@dataclass(frozen=True, slots=True)
class SeamTask:
    """A panel along one run: its size, the sheet's edge, its start, and the joists met."""

    run: RunName
    size: Length
    edge: Length
    start: Length
    joists: JoistLines


@dataclass(frozen=True, slots=True)
class _Way:
    """Joists chosen so far, and how far they lie from where seams would be, added up."""

    joists: tuple[Length, ...]
    off: Length


def on_joists(task: SeamTask, wished: Sequence[LengthFigure]) -> tuple[LengthFigure, ...]:
    """Turn seams where they would lie into as many on joists; unchanged where sheets fall short.

    Of all ways in which no piece is longer than the sheet, the one is taken whose seams lie nearest
    to where they would, added up.
    """
    ways = {ZERO: _Way((), ZERO)}
    places = [(j.center.value, j.center.value - task.start) for j in task.joists.joists]
    for number, seam in enumerate(wished, start=1):
        # What is left must not be longer than the sheets that are left.
        least = task.size - task.edge * (len(wished) + 1 - number)
        found: dict[Length, _Way] = {}
        for joist, place in places:
            before = [
                way
                for last, way in ways.items()
                if last < place <= last + task.edge and least <= place < task.size
            ]
            if before:
                best = min(before, key=lambda way: way.off)
                off = best.off + abs(place - seam.value)
                found[place] = _Way((*best.joists, joist), off)
        ways = found
    if not wished or not ways:
        return tuple(wished)
    best = min(ways.values(), key=lambda way: way.off)
    return tuple(
        SEAM_ON_JOIST.gives(joist - task.start, joist=joist, start=task.start)
        for joist in best.joists
    )


def seam_bearings(
    task: SeamTask, seams: Sequence[LengthFigure], across: Length
) -> Iterator[SeamBearing]:
    """Say of each seam what it has of a joist; `across` is how long the seams are [length]."""
    for seam in seams:
        found = among_joists(task.start + seam.value, task.joists, task.start + task.size)
        strip = None if found.bearing is not None else BACKING_STRIP.gives(across, across=across)
        yield SeamBearing(task.run, seam, found.offset, found.bearing, strip)


def seam_cautions(panels: Sequence[PanelFit]) -> Iterator[Caution]:
    """A caution where seams lie between joists."""
    strips = [
        (panel, bearing)
        for panel in panels
        for bearing in panel.seam_bearings
        if bearing.backing is not None
    ]
    if strips:
        panel, bearing = strips[0]
        length = bearing.backing.value if bearing.backing else ZERO
        yield Caution(
            code="seams_between_joists",
            text="Sheets do not reach from joist to joist, so that seams lie between joists. Let in"
            " a strip of backing along each before the panels go up, or part the panel in more"
            " pieces.",
            figures={
                "coffer": panel.coffers[0],
                "seam": bearing.place.value,
                "strip": length,
                "strips": sum(len(panel.coffers) for panel, _ in strips),
            },
            pointer="/panel/seams",
        )
