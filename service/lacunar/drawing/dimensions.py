"""Dimension strings: parallel lines outward from the object, each a chain of rounded segments.

A string is laid out along its own axis first: which figures fit between their ticks, which are
lifted clear of their neighbors and led out, and how far the next string must stand off. Only then
is it turned onto the paper: above the plan for the length run, left of it for the width run.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.lifting import Lead, stands
from lacunar.drawing.typeface import Typeface
from lacunar.measure.length import Length

LIFT = style.TEXT + 0.9
LIFT_LIMIT = 3
"""How many levels are tried figure by figure."""
MOST_LEVELS = 5
"""How many levels are tried for a whole string: more, and a leader is no longer followed by eye."""
FACE = Face.MEDIUM


@dataclass(frozen=True, slots=True)
class Stop:
    """A place a string stops at: what it is, where on the axis [mm of paper], and its rounded mark.

    `reaches_object` draws an extension line from the object; a center has its own center line. The
    object's edge lies `inset` [mm] further in there than at its outermost place.
    """

    name: str
    at: float
    mark: Length
    exact: Length
    reaches_object: bool = True
    inset: float = 0.0


@dataclass(frozen=True, slots=True)
class Segment:
    """One dimension of a string: from stop to stop, with its printed figure."""

    start: Stop
    end: Stop
    text: str
    value: str
    exact_mm: str


@dataclass(frozen=True, slots=True)
class String:
    """One chain of dimensions of a run: `name` is openings, centers or overall.

    A string with a `closed_end` has other strings beyond its end: no figure may stand there. `end`
    is the end of the other run it is taken at, empty where both are alike; a `far` string stands on
    the side where figures have their line between themselves and the outside.
    """

    run: str
    name: str
    segments: tuple[Segment, ...]
    closed_end: bool = False
    end: str = ""
    far: bool = False

    @property
    def identity(self) -> str:
        """What its ids are made of."""
        return f"{self.run}-{self.name}" + (f"-at-{self.end}" if self.far else "")


@dataclass(frozen=True, slots=True)
class FigurePlace:
    """Where a segment's figure stands: its middle along the string [mm] and its level.

    Level 0 stands on the line; higher levels are lifted and led out. `outside` figures stand on the
    line prolonged beyond the end of the string.
    """

    middle: float
    level: int = 0
    outside: bool = False

    @property
    def led_out(self) -> bool:
        """Whether the figure stands somewhere other than between its own ticks."""
        return self.outside or self.level > 0


@dataclass(frozen=True, slots=True)
class PlacedString:
    """A string with its distance from the object and the place of each segment's figure."""

    string: String
    offset: float
    places: tuple[FigurePlace, ...]

    @property
    def outer_edge(self) -> float:
        """How far out the string's own lines and figures reach [mm]."""
        lifted = max(place.level for place in self.places) * LIFT
        top = style.TEXT_ABOVE_LINE + style.TEXT + lifted
        return self.offset + max(top, style.EXTENSION_OVERRUN)

    @property
    def overrun_before(self) -> float:
        """How far a figure stands out beyond the string's start [mm], 0 where none does."""
        start, place = self.string.segments[0].start.at, self.places[0]
        return 2 * (start - place.middle) if place.outside and place.middle < start else 0.0

    @property
    def overrun_after(self) -> float:
        """How far a figure stands out beyond the string's end [mm], 0 where none does."""
        end, place = self.string.segments[-1].end.at, self.places[-1]
        return 2 * (place.middle - end) if place.outside and place.middle > end else 0.0


class StringsDoNotFit(Exception):
    """At this scale the figures of a string cannot be kept apart."""


def _half_width(segment: Segment, typeface: Typeface) -> float:
    """Half the room a figure takes along the string, clearance included [mm]."""
    return typeface.width(segment.text, style.TEXT, FACE) / 2 + style.TEXT_CLEARANCE


def figure_places(string: String, typeface: Typeface) -> tuple[FigurePlace, ...]:
    """A place for each figure: between its ticks, else outside the string's end, else lifted.

    Lifted figures keep within the string: the lines of the strings farther out pass its ends.
    Errors: `StringsDoNotFit` where more than five lifted levels would be needed.
    """
    try:
        return _one_by_one(string, typeface)
    except StringsDoNotFit:
        return _as_a_whole(string, typeface)


def _one_by_one(string: String, typeface: Typeface) -> tuple[FigurePlace, ...]:
    """Each figure on the lowest level that those before it leave free."""
    segments = string.segments
    limit = segments[-1].end.at
    reached = [segments[0].start.at] * (LIFT_LIMIT + 1)
    return tuple(
        _unlifted(string, index, typeface)
        or _lifted(segment, _half_width(segment, typeface), reached, limit)
        for index, segment in enumerate(segments)
    )


def _as_a_whole(string: String, typeface: Typeface) -> tuple[FigurePlace, ...]:
    """The figures that are lifted on levels chosen for all of them together."""
    segments = string.segments
    places = [_unlifted(string, index, typeface) for index in range(len(segments))]
    narrow = [s for s, place in zip(segments, places, strict=True) if place is None]
    leads = [Lead((s.start.at + s.end.at) / 2, _half_width(s, typeface)) for s in narrow]
    found = stands(leads, segments[0].start.at, segments[-1].end.at, MOST_LEVELS)
    if found is None:
        raise StringsDoNotFit(max(narrow, key=lambda s: _half_width(s, typeface)).text)
    lifted = (FigurePlace(stand.middle, stand.level) for stand in found)
    return tuple(place or next(lifted) for place in places)


def _unlifted(string: String, index: int, typeface: Typeface) -> FigurePlace | None:
    """A figure's place on its own line or outside the string's end; None if it must be lifted."""
    segment, last = string.segments[index], len(string.segments) - 1
    half = _half_width(segment, typeface)
    if 2 * (half + style.TICK_REACH) <= segment.end.at - segment.start.at:
        return FigurePlace((segment.start.at + segment.end.at) / 2)
    if index == 0:
        return FigurePlace(segment.start.at - style.TICK_REACH - half, outside=True)
    if index == last and not string.closed_end:
        return FigurePlace(segment.end.at + style.TICK_REACH + half, outside=True)
    return None


def _lifted(segment: Segment, half: float, reached: list[float], limit: float) -> FigurePlace:
    """The lowest lifted place that is free; notes in `reached` how far each level is now taken."""
    leader = (segment.start.at + segment.end.at) / 2
    for level in range(1, LIFT_LIMIT + 1):
        middle = min(max(leader, reached[level] + half), limit - half)
        under_figure = abs(middle - leader) <= half
        # The leader to a higher level passes the lower ones and must not meet a figure there.
        passes = all(reached[n] + 0.3 <= leader for n in range(1, level))
        if under_figure and passes and middle - half >= reached[level]:
            reached[level] = middle + half
            for n in range(1, level):
                reached[n] = max(reached[n], leader + 0.3)
            return FigurePlace(middle, level)
    raise StringsDoNotFit(segment.text)


def place_strings(
    strings: Sequence[String], typeface: Typeface, reach: float = 0.0
) -> tuple[PlacedString, ...]:
    """The strings one outside the other, each far enough out for the figures within it.

    `reach` [mm] is how far the object is drawn beyond the edge that strings are offset from.
    """
    placed: list[PlacedString] = []
    offset = reach + style.FIRST_STRING
    for string in strings:
        one = PlacedString(string, offset, figure_places(string, typeface))
        placed.append(one)
        lifted = string.far and any(place.level for place in one.places)
        inward = style.TEXT_ABOVE_LINE + style.TEXT if lifted else 0.0
        offset = max(offset + style.STRING_PITCH, one.outer_edge + 2.6 + inward)
    return tuple(placed)


@dataclass(frozen=True, slots=True)
class Axis:
    """How string coordinates lie on the paper.

    `x`: along the sheet from `start`, outward is up from `edge`. `y`: up the sheet (so that `start`
    is the paper's y negated), outward is left of `edge`. On the `far` side, outward is down or
    right: there figures stand between line and object, for "above" a line stays where it is; only
    those that are lifted stand beyond it, clear of extension lines.
    """

    direction: Literal["x", "y"]
    edge: float
    start: float
    far: bool = False

    def point(self, along: float, out: float) -> Pt:
        """The paper point at `along` [mm] on the axis, `out` [mm] from the object's edge."""
        away = -out if self.far else out
        if self.direction == "x":
            return Pt(self.start + along, self.edge - away)
        return Pt(self.edge - away, -(self.start + along))

    def baseline(self, out: float, level: int) -> float:
        """How far out figures of a level have their baseline [mm], by a line that is `out`."""
        if not self.far:
            return out + style.TEXT_ABOVE_LINE + level * LIFT
        if not level:
            return out - style.TEXT_ABOVE_LINE
        return out + style.TEXT_ABOVE_LINE + style.TEXT + level * LIFT

    @property
    def turned(self) -> bool:
        """Whether figures read from the right."""
        return self.direction == "y"


def drawn_string(placed: PlacedString, axis: Axis, first_gap: float) -> Group:
    """The string on paper: dimensions, ticks and extension lines.

    `first_gap` [mm] is where extension lines start, clear of the object's outline.
    """
    string = placed.string
    dimensions = tuple(
        _drawn_dimension(placed, index, axis) for index in range(len(string.segments))
    )
    stops = [string.segments[0].start, *(s.end for s in string.segments)]
    out = placed.offset
    extensions = tuple(
        (
            axis.point(
                stop.at,
                first_gap - stop.inset if stop.reaches_object else out - style.EXTENSION_OVERRUN,
            ),
            axis.point(stop.at, out + style.EXTENSION_OVERRUN),
        )
        for stop in stops
    )
    # A 45° tick leans the same way on both axes, as a pencil would draw it.
    reach = style.TICK_REACH
    ticks = tuple(
        (axis.point(s.at, out).moved(-reach, reach), axis.point(s.at, out).moved(reach, -reach))
        for s in stops
    )
    return Group(
        "dimension-string",
        (
            Group("extension-lines", (Segments(extensions, style.DIMENSION),)),
            *dimensions,
            Group("ticks", (Segments(ticks, style.TICK),)),
        ),
        id=f"string-{string.identity}",
        data={
            "run": string.run,
            "string": string.name,
            "axis": axis.direction,
            **({"end": string.end} if string.end else {}),
        },
    )


def _drawn_dimension(placed: PlacedString, index: int, axis: Axis) -> Group:
    """One dimension: its line from tick to tick, its figure, and a leader where it is led out."""
    segment = placed.string.segments[index]
    place = placed.places[index]
    out = placed.offset
    start, end = segment.start.at, segment.end.at
    baseline = axis.baseline(out, place.level)
    figure = Text(
        axis.point(place.middle, baseline), segment.text, style.TEXT, FACE, "middle", axis.turned
    )
    children: list[Element] = [
        Polyline((axis.point(start, out), axis.point(end, out)), style.DIMENSION)
    ]
    if place.outside:
        near = start if place.middle < start else end
        far = 2 * place.middle - near
        children.append(Polyline((axis.point(near, out), axis.point(far, out)), style.LEADER))
    elif place.level:
        middle = (start + end) / 2
        leader = (axis.point(middle, out), axis.point(middle, out + place.level * LIFT))
        children.append(Polyline(leader, style.LEADER))
    return Group(
        "dimension",
        (*children, figure),
        id=f"dim-{placed.string.identity}-{index + 1}",
        title=segment.text,
        data={
            "from": segment.start.name,
            "to": segment.end.name,
            "value": segment.value,
            "exact-mm": segment.exact_mm,
            "led-out": "yes" if place.led_out else "no",
        },
    )
