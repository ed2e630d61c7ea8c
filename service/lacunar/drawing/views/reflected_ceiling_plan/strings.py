"""The dimension strings of a run, from the layout's elements: openings, centers, overall.

Where the walls lie otherwise at the run's other end, two more stand there: what is left at the
walls, and the overall.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from lacunar.drawing.dimensions import Segment, Stop, String
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.run_ends import DIMENSIONED, End, RunEnd, unlike, wall_at
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.outline_records import OutlinedRoom
from lacunar.layout.records import ElementKind, RunElement, RunLayout
from lacunar.measure.figure import LengthFigure, given
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot
from lacunar.model.room import END_WALL, START_WALL, WALLS, RunName

HAIR = 0.01
"""What lies nearer than this [mm of paper] lies in one place."""

_BEAMS = (ElementKind.BEAM, ElementKind.FIXED_BEAM, ElementKind.CASED_BEAM)
_AT_WALLS = (ElementKind.WALL_BEAM, ElementKind.SOFFIT)

MAIN_END: dict[RunName, End] = {RunName.LENGTH: "end", RunName.WIDTH: "start"}
"""At which end of a run all its strings stand: above and left of the plan."""
_OTHER: dict[End, End] = {"start": "end", "end": "start"}


@dataclass(frozen=True, slots=True)
class _StringsAt:
    """What the strings of a run at one of its ends are made with."""

    frame: PlanFrame
    wording: SheetWording
    at: RunEnd
    end: str
    far: bool

    def stop(self, name: str, figure: LengthFigure, *, center: bool = False) -> Stop:
        """A stop at a place of the run, marked from the wall at this end."""
        return self._stop(name, self.at.from_wall(name, figure), center=center)

    def wall(self, name: str, from_wall: Length) -> Stop:
        """A stop at one of the run's walls."""
        return self._stop(name, from_wall)

    def _stop(self, name: str, from_wall: Length, *, center: bool = False) -> Stop:
        at = self.frame.on_paper(self.at.along_run(from_wall))
        mark = self.wording.rounded(from_wall)
        return Stop(name, at, mark, from_wall, not center, self._inset(at))

    def _inset(self, at: float) -> float:
        """How far the wall that the strings stand by lies within its outermost place [mm]."""
        if self.frame.layout.crooked is None:
            return 0.0
        across = self.at.run.other
        room = self.frame.layout.outlined
        if room is not None:
            return self._inset_in(room, at)
        low, high = self.frame.reach(across)
        face = self.frame.face_at(wall_at(self.at.run, self.at.end), across, at)
        return max(0.0, face - low if self.at.end == "start" else high - face)

    def _inset_in(self, room: OutlinedRoom, at: float) -> float:
        """How far a room with other than four walls lies within its reach at a place [mm]."""
        across = self.at.run.other
        places: list[float] = []
        for wall in room.walls:
            (low, one), (high, other) = sorted(
                (self._on(spot, self.at.run), self._on(spot, across))
                for spot in (wall.start, wall.end)
            )
            if not low - HAIR <= at <= high + HAIR:
                continue
            if high - low > HAIR:
                places.append(one + (other - one) * (at - low) / (high - low))
            else:
                places += [one, other]
        low, high = self.frame.reach(across)
        return max(0.0, min(places) - low if self.at.end == "start" else high - max(places))

    def _on(self, spot: Spot, run: RunName) -> float:
        return self.frame.on_paper(_along(spot, run))

    def string(self, name: str, stops: list[Stop]) -> String:
        """The stops as a chain. The width run's strings end where the length run's begin."""
        run = self.at.run
        segments = tuple(_segments(stops, self.wording))
        closed = run is RunName.WIDTH and not self.far
        return String(run.value, name, segments, closed, self.end, self.far)


def run_strings(frame: PlanFrame, run: RunName, wording: SheetWording) -> tuple[String, ...]:
    """A run's strings from the object outward.

    Every figure is the difference of two marks rounded from the datum, so each string sums to the
    overall by construction. A run without beams needs no string of centers.
    """
    end = MAIN_END[run]
    at, other = (RunEnd.of(frame.layout, run, each) for each in (end, _OTHER[end]))
    told = "" if at.lies_as(other) else end
    made = _StringsAt(frame, wording, at, told, far=False)
    laid_out = frame.layout.run(run)
    faces = _face_stops(made, laid_out)
    strings = [made.string("openings", faces)]
    if any(element.kind in _BEAMS for element in laid_out.elements):
        strings.append(made.string("centers", _center_stops(made, laid_out)))
    strings.append(made.string("overall", [faces[0], faces[-1]]))
    return tuple(strings)


def far_strings(frame: PlanFrame, run: RunName, wording: SheetWording) -> tuple[String, ...]:
    """What stands at the walls and the overall, at a run's other end; nothing if both are alike."""
    if frame.layout.outlined is not None:
        return _wall_strings(frame, run, wording, frame.layout.outlined)
    if not unlike(frame.layout, run, DIMENSIONED):
        return ()
    if frame.layout.followed is not None:
        return _all_openings(frame, run, wording)
    end = _OTHER[MAIN_END[run]]
    made = _StringsAt(frame, wording, RunEnd.of(frame.layout, run, end), end, far=True)
    laid_out = frame.layout.run(run)
    stops = _face_stops(made, laid_out)
    within = [
        stop
        for stop, (element, following) in zip(stops[1:-1], pairwise(laid_out.elements), strict=True)
        if element.kind in _AT_WALLS or following.kind in _AT_WALLS
    ]
    overall = made.string("overall", [stops[0], stops[-1]])
    if not within:
        return (overall,)
    return made.string("strips", [stops[0], *within, stops[-1]]), overall


def _all_openings(frame: PlanFrame, run: RunName, wording: SheetWording) -> tuple[String, ...]:
    """Openings and the overall at a run's other end, where the grid follows the walls."""
    end = _OTHER[MAIN_END[run]]
    made = _StringsAt(frame, wording, RunEnd.of(frame.layout, run, end), end, far=True)
    stops = _face_stops(made, frame.layout.run(run))
    return made.string("openings", stops), made.string("overall", [stops[0], stops[-1]])


def _wall_strings(
    frame: PlanFrame, run: RunName, wording: SheetWording, room: OutlinedRoom
) -> tuple[String, ...]:
    """Where walls and corners lie along a run, with the faces of what stands at them, and all."""
    end = _OTHER[MAIN_END[run]]
    made = _StringsAt(frame, wording, RunEnd.of(frame.layout, run, end), end, far=True)
    stops = [made.wall(START_WALL[run], ZERO), made.wall(END_WALL[run], made.at.span)]
    for name, place in wall_places(room, run):
        # Corners of walls that are taken further in lie beyond them.
        inside = ZERO < place.value < made.at.span
        if inside and wording.rounded(place.value) not in map(_mark, stops):
            stops.append(made.stop(name, place))
    stops.sort(key=lambda stop: stop.exact)
    overall = made.string("overall", [stops[0], stops[-1]])
    return (made.string("walls", stops), overall) if len(stops) > 2 else (overall,)  # noqa: PLR2004


def _mark(stop: Stop) -> Length:
    return stop.mark


def wall_places(room: OutlinedRoom, run: RunName) -> Iterator[tuple[str, LengthFigure]]:
    """Places along a run of walls across it, of the faces there, and of other corners."""
    for wall in room.walls:
        if wall.on is run and wall.at is not None and wall.wall not in WALLS:
            yield wall.wall, wall.at
            if wall.beam is not None and wall.face is not None:
                side = "far" if wall.looks_as in START_WALL.values() else "near"
                yield f"{wall.beam}:{side}", wall.face
    for wall in room.walls:
        if wall.angled:
            for which, corner in (("start", wall.start), ("end", wall.end)):
                yield f"{wall.wall}:{which}", given(_along(corner, run))


def _along(spot: Spot, run: RunName) -> Length:
    return spot.x if run is RunName.LENGTH else spot.y


def _face_stops(made: _StringsAt, run: RunLayout) -> list[Stop]:
    """The start wall, then the far side of every element of the run; the last is the end wall."""
    stops = [made.wall(START_WALL[run.name], ZERO)]
    for element, following in pairwise(run.elements):
        stops.append(made.stop(_face_name(element, following), element.far.at_start))
    stops.append(made.wall(END_WALL[run.name], made.at.span))
    return stops


def _face_name(element: RunElement, following: RunElement) -> str:
    """Which beam's face lies between two elements."""
    if element.kind is ElementKind.COFFER:
        return f"{following.id}:near"
    return f"{element.id}:far"


def _center_stops(made: _StringsAt, run: RunLayout) -> list[Stop]:
    """Both walls and every beam's center between them."""
    beams = {beam.id: beam for beam in made.frame.layout.beams}
    return [
        made.wall(START_WALL[run.name], ZERO),
        *(
            made.stop(f"{e.id}:center", beams[e.id].center.at_start, center=True)
            for e in run.elements
            if e.kind in _BEAMS
        ),
        made.wall(END_WALL[run.name], made.at.span),
    ]


def _segments(stops: list[Stop], wording: SheetWording) -> Iterator[Segment]:
    for start, end in pairwise(stops):
        value = end.mark - start.mark
        exact = decimal_mm(end.exact - start.exact)
        yield Segment(start, end, wording.dimension(value), wording.exact(value), exact)
