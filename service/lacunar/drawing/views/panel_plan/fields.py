"""What fills coffers, on paper: seams, joints of boards, hidden edges, where boards start.

Everything is from the place and the sizes that the layout has of it; cut coffers are filled about
the middle of the rectangle about them.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, dist, radians, sin

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import (
    Rings,
    across_rings,
    coffer_rings,
    room_on_paper,
    set_in,
    within_ring,
)
from lacunar.layout.board_records import BoardField, Courses, PanelPlace
from lacunar.layout.opening_records import TaperedField, TaperedPanel
from lacunar.layout.records import Coffer, PanelFit, Point
from lacunar.layout.tapering import tapered_boards_of, tapered_panels_of
from lacunar.measure.length import Length
from lacunar.model.panel import Seat
from lacunar.model.room import RunName

Line = tuple[Pt, Pt]
OFF_WALL = 1.0
"""An edge nearer to a wall than this on paper is not told apart from it [mm]."""
JOINTS_APART = 0.9
"""Joints nearer to each other than this on paper [mm] are left out between the edge boards."""


@dataclass(frozen=True, slots=True)
class FieldOnPaper:
    """What fills one coffer, or through boards from the first one they cover on.

    `joints` are seams, or joints of boards; `edges` of a panel that reach past the faces; `start`
    is the middle of the first board's outer edge and the way from there to the last one, one
    millimeter of it, of boards alone.
    """

    coffer: str
    kind: str
    joints: tuple[Line, ...]
    edges: tuple[Line, ...] = ()
    start: tuple[Pt, Pt] | None = None


def fields_on_paper(frame: PlanFrame) -> Iterator[FieldOnPaper]:
    """All sheet panels, or all fields of boards, whole and cut."""
    layout = frame.layout
    coffers = {coffer.id: coffer for coffer in layout.coffers}
    tapered = {panel.coffer: panel for panel in tapered_panels_of(layout)}
    for fit in layout.panels:
        for place in fit.places:
            if place.coffer in tapered:
                yield _tapered_panel(frame, coffers[place.coffer], fit, tapered[place.coffer])
            else:
                yield _panel(frame, fit, place)
    yield from _boards(frame, coffers)
    yield from _cut_boards(frame)


def _panel(frame: PlanFrame, fit: PanelFit, place: PanelPlace) -> FieldOnPaper:
    x, y, length, width = place.x.value, place.y.value, fit.length.value, fit.width.value
    upright = [
        _line(frame, (x + seam.value, y), (x + seam.value, y + width))
        for seam in fit.seams_along_length
    ]
    level = [
        _line(frame, (x, y + seam.value), (x + length, y + seam.value))
        for seam in fit.seams_along_width
    ]
    edges = _hidden(frame, (x, y), (x + length, y + width))
    return FieldOnPaper(place.coffer, "sheet", (*upright, *level), edges)


def _hidden(
    frame: PlanFrame, low: tuple[Length, Length], high: tuple[Length, Length]
) -> tuple[Line, ...]:
    """The edges of a panel or field above the faces of its coffer, but for those at walls."""
    if frame.layout.ceiling.panel.seat is Seat.BETWEEN_SIDES:
        return ()
    (left, lower), (right, upper) = low, high
    corners = (low, (right, lower), high, (left, upper))
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    lines = (_line(frame, one, other) for one, other in pairs)
    room = room_on_paper(frame).grown(-OFF_WALL)
    return tuple(line for line in lines if room.is_passed_by(*line))


def _line(frame: PlanFrame, one: tuple[Length, Length], other: tuple[Length, Length]) -> Line:
    return frame.point(Point(*one)), frame.point(Point(*other))


def _boards(frame: PlanFrame, coffers: dict[str, Coffer]) -> Iterator[FieldOnPaper]:
    boards = frame.layout.boards
    tapered = {field.coffer: field for field in tapered_boards_of(frame.layout)}
    for field in boards.fields if boards else ():
        for place in field.places:
            if place.coffer in tapered:
                yield _tapered_boards(frame, coffers[place.coffer], tapered[place.coffer])
            else:
                yield _board_field(frame, field, place)


def _board_field(frame: PlanFrame, field: BoardField, place: PanelPlace) -> FieldOnPaper:
    boards = frame.layout.boards
    assert boards is not None
    across, length = field.courses.across.value, field.length.value
    size = (length, across) if boards.parallel_to is RunName.LENGTH else (across, length)
    x, y = place.x.value, place.y.value
    joints = tuple(
        _line(frame, (x, y + at), (x + length, y + at))
        if boards.parallel_to is RunName.LENGTH
        else _line(frame, (x + at, y), (x + at, y + length))
        for at in _joints(frame, field.courses, boards.cover)
    )
    edges = _hidden(frame, (x, y), (x + size[0], y + size[1]))
    if boards.parallel_to is RunName.LENGTH:
        start = frame.point(Point(x + length / 2, y)), Pt(0.0, -1.0)
    else:
        start = frame.point(Point(x, y + length / 2)), Pt(1.0, 0.0)
    return FieldOnPaper(place.coffer, "boards", joints, edges, start)


def _joints(frame: PlanFrame, laid: Courses, cover: Length) -> list[Length]:
    """Where joints lie across a field from its start: all, or those of the edge boards alone."""
    count = laid.courses.value
    numbers = range(count - 1)
    if frame.on_paper(cover) < JOINTS_APART:
        numbers = range(0, count - 1, max(count - 2, 1))
    return [laid.edge.value + cover * number for number in numbers]


def _ring(frame: PlanFrame, coffer: Coffer) -> tuple[Pt, ...]:
    """The corners of what fills a coffer that tapers, a gap in from its sides."""
    corners = tuple(frame.point(corner) for corner in coffer.corners)
    return set_in(corners, frame.on_paper(frame.layout.ceiling.panel.gap))


def _tapered_panel(
    frame: PlanFrame, coffer: Coffer, fit: PanelFit, panel: TaperedPanel
) -> FieldOnPaper:
    """Seams as they lie in the rectangle that the panel is cut from, turned with its lower side."""
    ring = _ring(frame, coffer)
    first, second = ring[0], ring[1]
    reach = dist((first.x, first.y), (second.x, second.y))
    along = Pt((second.x - first.x) / reach, (second.y - first.y) / reach)
    up = Pt(along.y, -along.x)
    corner = panel.corners[0]
    ways = (
        (fit.seams_along_length, corner.along.value, along, up),
        (fit.seams_along_width, corner.up.value, up, along),
    )
    lines = [
        within_ring(ring, _moved(first, step, frame.on_paper(seam.value - past)), way)
        for seams, past, step, way in ways
        for seam in seams
    ]
    return FieldOnPaper(coffer.id, "sheet", tuple(line for line in lines if line))


def _moved(at: Pt, way: Pt, by: float) -> Pt:
    return at.moved(way.x * by, way.y * by)


def _tapered_boards(frame: PlanFrame, coffer: Coffer, field: TaperedField) -> FieldOnPaper:
    """Joints along the middle between two sides: the first as far in as the near edge board is."""
    boards = frame.layout.boards
    assert boards is not None
    ring = _ring(frame, coffer)
    lengthwise = boards.parallel_to is RunName.LENGTH
    first, second = ring[0], ring[1 if lengthwise else 3]
    # Turned is counter-clockwise on the ceiling from the lower side, clockwise from the left one.
    turn = radians(float(field.turned.value.degrees)) * (-1 if lengthwise else 1)
    reach = dist((first.x, first.y), (second.x, second.y))
    x, y = (second.x - first.x) / reach, (second.y - first.y) / reach
    way = Pt(x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn))
    inward = Pt(way.y, -way.x) if lengthwise else Pt(-way.y, way.x)
    edge = field.edges[0].start.value
    places = [edge + boards.cover * number for number in range(len(field.courses) - 1)]
    found = (within_ring(ring, _moved(first, inward, frame.on_paper(at)), way) for at in places)
    middle = Pt((first.x + second.x) / 2, (first.y + second.y) / 2)
    joints = tuple(line for line in found if line)
    return FieldOnPaper(coffer.id, "boards", joints, (), (middle, inward))


def _cut_boards(frame: PlanFrame) -> Iterator[FieldOnPaper]:
    """Joints of boards in coffers that walls cut, in what they leave."""
    boards, room = frame.layout.ceiling.panel.boards, frame.layout.outlined
    rings = coffer_rings(frame)
    for coffer in room.partial_coffers if room and boards else ():
        if coffer.laid is not None and boards is not None:
            on = boards.parallel_to.other
            start = _cut_start(frame, rings[coffer.id], on, coffer.laid)
            joints = tuple(
                line
                for at in _joints(frame, coffer.laid, boards.cover)
                for line in across_rings(
                    rings[coffer.id], on, _across(start, on, frame.on_paper(at))
                )
            )
            yield FieldOnPaper(coffer.id, "boards", joints)


def _joint(frame: PlanFrame, rings: Rings, start: tuple[Pt, RunName], at: Length) -> Iterator[Line]:
    first, on = start
    yield from across_rings(rings, on, _across(first, on, frame.on_paper(at)))


def _cut_start(frame: PlanFrame, rings: Rings, on: RunName, laid: Courses) -> Pt:
    """Where courses start about the middle of a cut coffer."""
    outer = rings[0]
    xs, ys = [at.x for at in outer], [at.y for at in outer]
    middle = Pt((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    return _across(middle, on, -frame.on_paper(laid.across.value) / 2)


def _across(at: Pt, on: RunName, by: float) -> Pt:
    return at.moved(by, 0.0) if on is RunName.LENGTH else at.moved(0.0, -by)
