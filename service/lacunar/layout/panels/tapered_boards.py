"""Boards of coffers out of square: courses along the middle, both edge boards tapering alike."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.layout.board_records import Courses
from lacunar.layout.opening_records import (
    MeasuredOpening,
    TaperedCourse,
    TaperedField,
    TaperedRip,
)
from lacunar.layout.panels.courses import lay_courses
from lacunar.layout.panels.tapered_panels import follows_measured, inner_sides, is_tapered
from lacunar.measure.angle import Angle, over_cosine, over_tangents, times_cosine, times_sine
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.boards import BoardRun, Boards
from lacunar.model.panel import Panel
from lacunar.model.room import RunName

TURNED = Rule(
    "turned from the near side: half of what the two sides are off parallel",
    "(near_start + far_start) / 2 - 90",
)
END_CUT = Rule(
    "end cut off square: half of what the corners at this end differ", "(near - far) / 2"
)
HALF_ACROSS = Rule(
    "from a corner to the middle line: half of its distance from the side across",
    "distance / 2 / cos(turned)",
)
ACROSS = Rule("across at the widest: twice the corner furthest from the middle", "2 * furthest")
RIP_AT = Rule(
    "face of an edge board at its end: to the middle line, less whole covers",
    "half_across - (courses - 2) * cover / 2",
)
ONLY_RIP_AT = Rule("face of the only board at its end: all that is across", "near + far")
MIDDLE = Rule(
    "length along the middle line: of the near side along it, less what both ends lean by",
    "along - near_start / tan(start) - near_end / tan(end)",
)
LENGTH_AT = Rule(
    "length of boards so far from the middle line: less what both ends lean by",
    "middle - at_start / tan(start) - at_end / tan(end)",
)

_RIGHT = Angle.of_degrees(90)


@dataclass(frozen=True, slots=True)
class _Field:
    """A tapered opening as boards lie in it: near side, the end, the far side, the start.

    `corners` from near start, near end, far end, far start; `halves` their distances from the
    middle line; `walls` the near and the far side.
    """

    coffer: str
    sides: tuple[LengthFigure, ...]
    corners: tuple[Angle, ...]
    halves: tuple[LengthFigure, ...]
    turned: AngleFigure
    walls: tuple[str, str]

    @property
    def start(self) -> Angle:
        """Between the middle line and the start side, at the near side."""
        return _RIGHT + (self.corners[0] - self.corners[3]) / 2

    @property
    def end(self) -> Angle:
        """Between the middle line and the end side, at the near side."""
        return _RIGHT + (self.corners[1] - self.corners[2]) / 2


def tapered_boards(
    panel: Panel, measured: Sequence[MeasuredOpening]
) -> Iterator[tuple[TaperedField, Courses]]:
    """Turn coffers out of square into their boards, and the courses these are cut from.

    None where boards run through, or went in before the sides.
    """
    boards = panel.boards
    if boards is None or boards.run is BoardRun.THROUGH or not follows_measured(panel):
        return
    for opening in measured:
        if is_tapered(opening):
            field = _field(panel.gap, boards, opening)
            yield _laid(field, boards)


def _field(gap: Length, boards: Boards, opening: MeasuredOpening) -> _Field:
    """Boards along the width have W1 at their near side: all is turned by one corner."""
    sides = inner_sides(gap, opening)
    corners = tuple(corner.angle.value for corner in opening.corners)
    walls = ("W4", "W2")
    if boards.parallel_to is RunName.WIDTH:
        # Mirrored about the diagonal, so that the width run goes from start to end as well.
        sides = (sides[3], sides[2], sides[1], sides[0])
        corners = (corners[0], corners[3], corners[2], corners[1])
        walls = ("W1", "W3")
    turned = TURNED.approximates(
        (corners[0] + corners[3]) / 2 - _RIGHT, near_start=corners[0], far_start=corners[3]
    )
    near, end, far, start = sides
    del near, far
    distances = (
        times_sine(start.value, corners[3]),
        times_sine(end.value, corners[2]),
        times_sine(end.value, corners[1]),
        times_sine(start.value, corners[0]),
    )
    halves = tuple(
        HALF_ACROSS.approximates(
            over_cosine(distance / 2, turned.value), distance=distance, turned=turned.value
        )
        for distance in distances
    )
    return _Field(opening.coffer, sides, corners, halves, turned, walls)


def _laid(field: _Field, boards: Boards) -> tuple[TaperedField, Courses]:
    furthest = max(half.value for half in field.halves)
    across = ACROSS.approximates(furthest * 2, furthest=furthest)
    laid = lay_courses(across, boards.cover, boards.tongue, boards.centered_on)
    count = laid.courses.value
    start = END_CUT.approximates(
        (field.corners[0] - field.corners[3]) / 2, near=field.corners[0], far=field.corners[3]
    )
    end = END_CUT.approximates(
        (field.corners[1] - field.corners[2]) / 2, near=field.corners[1], far=field.corners[2]
    )
    tapered = TaperedField(
        coffer=field.coffer,
        turned=field.turned,
        start_cut=start,
        end_cut=end,
        edges=_edges(field, count, boards.cover),
        courses=tuple(_courses(field, count, boards.cover)),
    )
    return tapered, laid


def _edges(field: _Field, count: int, cover: Length) -> tuple[TaperedRip, TaperedRip]:
    near_start, near_end, far_end, far_start = field.halves
    near, far = field.walls
    if count == 1:
        start, end = _only_rip(near_start, far_start), _only_rip(near_end, far_end)
        return TaperedRip(near, start, end), TaperedRip(far, start, end)
    rips = [_rip(half, count, cover) for half in field.halves]
    return TaperedRip(near, rips[0], rips[1]), TaperedRip(far, rips[3], rips[2])


def _only_rip(near: LengthFigure, far: LengthFigure) -> LengthFigure:
    return ONLY_RIP_AT.approximates(near.value + far.value, near=near.value, far=far.value)


def _rip(half: LengthFigure, count: int, cover: Length) -> LengthFigure:
    return RIP_AT.approximates(
        half.value - cover * (count - 2) / 2,
        half_across=half.value,
        courses=count,
        cover=cover,
    )


def _courses(field: _Field, count: int, cover: Length) -> Iterator[TaperedCourse]:
    """Each course with its edges; joints lie whole covers from the middle, or half ones."""
    near_start, near_end, far_end, far_start = (half.value for half in field.halves)
    along = times_cosine(field.sides[0].value, field.turned.value)
    start, end = field.start, field.end
    middle = MIDDLE.approximates(
        along - over_tangents([(near_start, start), (near_end, end)]),
        along=along,
        near_start=near_start,
        start=start,
        near_end=near_end,
        end=end,
    )
    joints = [cover * (2 * number - count) / 2 for number in range(1, count)]
    edges = [
        field.sides[0],
        *(_length_at(field, middle.value, joint, joint) for joint in joints),
        field.sides[2],
    ]
    at_start = [-near_start, *joints, far_start]
    at_end = [-near_end, *joints, far_end]
    for number in range(count):
        reach = (
            _further(at_start[number : number + 2], start),
            _further(at_end[number : number + 2], end),
        )
        cut_from = _length_at(field, middle.value, *reach)
        yield TaperedCourse(number + 1, edges[number], edges[number + 1], cut_from)


def _further(places: Sequence[Length], angle: Angle) -> Length:
    """Of both edges of a board, the place of the one that reaches further out at an end."""
    return min(places) if angle < _RIGHT else max(places)


def _length_at(field: _Field, middle: Length, at_start: Length, at_end: Length) -> LengthFigure:
    less = over_tangents([(at_start, field.start), (at_end, field.end)])
    return LENGTH_AT.approximates(
        middle - less,
        middle=middle,
        at_start=at_start,
        start=field.start,
        at_end=at_end,
        end=field.end,
    )
