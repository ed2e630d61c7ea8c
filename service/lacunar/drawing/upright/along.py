"""What is told along an upright cut: a chain of its faces, or their running marks one by one."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.dimensions import Stop, String
from lacunar.drawing.elements import Group, Polyline, Pt, Text
from lacunar.drawing.run_ends import End, RunEnd
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.upright.cut import UprightCut, named_stops
from lacunar.drawing.upright.heights import segments
from lacunar.drawing.upright.paper import UprightPaper
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import Layout, Mark, MarkKind
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName

PITCH = 3.9
"""How near two figures may stand [mm]: their height and a little more than their clearance."""
STRAIGHT = 2.0
SLANT = 4.0
GAP = 0.9
OVER_CORNER = 9.0
"""How far figures may stand beyond the ends of the view [mm]."""


def face_strings(cut: UprightCut, paper: UprightPaper, wording: SheetWording) -> tuple[String, ...]:
    """Openings and beams from face to face, and over all, from the same marks as on the plan.

    In a room of four square walls these are the run's own strings, from wall to wall; in a crooked
    one, where walls lie as at no end of the run, they go from the first face to the last. A grid
    that follows its walls has no marks between both ends of a run, and so no strings here.
    """
    layout, run = cut.layout, cut.run
    crooked = layout.crooked is not None and not layout.crooked.square
    if run is None or (crooked and layout.followed is not None):
        return ()
    at = RunEnd.of(layout, run, "start")
    stops = []
    for name, place in named_stops(cut):
        if crooked and ":" not in name:
            continue
        exact = place + at.before
        stops.append(Stop(name, paper.on_paper(place), wording.rounded(exact), exact))
    plain = not crooked and layout.outlined is None
    named = run.value if plain else f"cut-{run.value}"
    if len(stops) < 2:  # noqa: PLR2004
        return ()
    return tuple(
        String(named, name, tuple(segments(each, wording)))
        for name, each in (("openings", stops), ("overall", (stops[0], stops[-1])))
    )


@dataclass(frozen=True, slots=True)
class PlacedMark:
    """A running mark of a run, and where it stands along the view."""

    mark: Mark
    place: float


def marks_along(cut: UprightCut, end: End, paper: UprightPaper) -> tuple[PlacedMark, ...]:
    """The marks of walls and faces that a view of a wall shows, from left to right."""
    if cut.run is None:
        return ()
    named = _named(cut.layout, cut.run, end)
    # Where the face of one thing is that of the next, either of them may have the mark.
    stops = sorted((*named_stops(cut), *_joints(cut)), key=lambda stop: stop[1].inches)
    marks = (named[name] for name, _ in stops if name in named)
    return tuple(PlacedMark(m, paper.at(cut.along(m.exact.value), ZERO).x) for m in marks)


def _joints(cut: UprightCut) -> Iterator[tuple[str, Length]]:
    """The left faces of things that stand against the one before them."""
    for one, other in pairwise(sorted(cut.beams, key=lambda beam: beam.near.inches)):
        if one.far == other.near:
            yield f"{other.id}:{other.sides[0]}", other.near


def _named(layout: Layout, run: RunName, end: End) -> Mapping[str, Mark]:
    """A run's marks of walls and faces at one end, by the names that dimensions have for them."""
    marks = next(each.marks for each in layout.marks if (each.run, each.end) == (run, end))
    named = {mark.of: mark for mark in marks if mark.kind is MarkKind.WALL}
    faces = (mark for mark in marks if mark.kind is MarkKind.FACE)
    return named | {f"{mark.of}:{mark.side}": mark for mark in faces}


def marks_depth(marks: Sequence[PlacedMark], wording: SheetWording, typeface: Typeface) -> float:
    """How far running marks reach above what they stand on [mm]."""
    texts = (wording.dimension(each.mark.mark) for each in marks)
    longest = max((typeface.width(text, style.TEXT) for text in texts), default=0.0)
    return style.EXTENSION_GAP + STRAIGHT + SLANT + GAP + longest


def have_room(marks: Sequence[PlacedMark], left: float, right: float) -> bool:
    """Whether so many figures stand side by side over a view [mm]."""
    return PITCH * (len(marks) - 1) <= right - left + 2 * OVER_CORNER


def drawn_marks(
    marks: Sequence[PlacedMark], wording: SheetWording, view: int, corners: tuple[Pt, Pt]
) -> Iterator[Group]:
    """Each mark with a line from over its place to its figure, which is read from the right.

    `corners` are the view's upper left and right ones.
    """
    (left, right), top = (corner.x for corner in corners), corners[0].y
    places = [each.place for each in marks]
    stands = spread(places, PITCH, left - OVER_CORNER, right + OVER_CORNER)
    start = top - style.EXTENSION_GAP
    bend, tip = start - STRAIGHT, start - STRAIGHT - SLANT
    for number, (each, stand) in enumerate(zip(marks, stands, strict=True), start=1):
        mark = each.mark
        way = (Pt(each.place, start), Pt(each.place, bend), Pt(stand, tip))
        at = Pt(stand + style.TEXT / 2, tip - GAP)
        figure = Text(at, wording.dimension(mark.mark), style.TEXT, turned=True)
        yield Group(
            "running-mark",
            (Polyline(way, style.DIMENSION), figure),
            id=f"view-{view}-mark-{number}",
            data={
                "of": mark.of,
                "kind": mark.kind.value,
                "side": mark.side,
                "value": wording.exact(mark.mark),
                "exact-mm": decimal_mm(mark.exact.value),
            },
        )
