"""The dimensions of a profile: what its parts add up to, across it and down it.

Each chain is rounded as marks are: its places once each from its start, so that its figures add up
to what stands beyond them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf

from lacunar.drawing import style
from lacunar.drawing.dimensions import FACE, FigurePlace, PlacedString, Segment, Stop, String
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.mouldings import standing_behind
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.profile_detail.parts import DetailOf, profile_side, set_out
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.panel_stack import panel_stack
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint
from lacunar.model.moulding import FlatPlace

ENDS = 2
HAIR = 1e-6


@dataclass(frozen=True, slots=True)
class Chain:
    """Dimensions in a row: from each place to the next; `name` says what they add up to."""

    name: str
    places: tuple[Length, ...]

    @property
    def parted(self) -> bool:
        """Whether it tells more than its whole."""
        return len(self.places) > ENDS


def chain(name: str, start: Length, sizes: Sequence[Length]) -> Chain:
    """A chain from its start on by its sizes; what has no size is left out."""
    places = [start]
    for size in sizes:
        if size:
            places.append(places[-1] + size)
    return Chain(name, tuple(places))


def below(detail: DetailOf) -> tuple[Chain, ...]:
    """What is dimensioned under the section, from the left face: parts, then the whole."""
    return (*(() if _stands_out(detail) else _across(detail)), *_below(detail))


def _stands_out(detail: DetailOf) -> bool:
    """Whether the bottom does, so that its own dimensions have the place of those of the sides."""
    return detail.of.profile.bottom_joint is not None and set_out(detail.of) > ZERO


def _across(detail: DetailOf) -> tuple[Chain, ...]:
    """Sides and what lies between them."""
    inside, side = detail.of.profile.inside_width, profile_side(detail.of)
    if inside is None or not side:
        return ()
    first = ZERO if detail.of.at_wall else side
    return (chain("across", ZERO, (first, inside.value, side)),)


def _below(detail: DetailOf) -> Iterator[Chain]:
    profile, out = detail.of.profile, set_out(detail.of)
    width, overall = profile.finished_width.value, profile.overall_width.value
    bottom = detail.of.part("bottom")
    if out and bottom is not None:
        edge = ZERO if detail.of.at_wall else abs(out)
        if _stands_out(detail):
            yield chain("bottom-across", -edge, (edge, width, out))
        else:
            inner = width - edge - abs(out)
            yield chain("bottom-across", ZERO, (edge, inner, abs(out)))
    yield chain("finished-width", ZERO, (width,))
    if overall != width:
        start = ZERO if detail.of.at_wall else (width - overall) / 2
        yield chain("overall-width", start, (overall,))


def above(detail: DetailOf) -> tuple[Chain, ...]:
    """How far mouldings at the ceiling stand out, and over these what has no room below."""
    trim, width = detail.of.trim, detail.of.profile.finished_width.value
    crown = ZERO if trim.crown is None else trim.crown.projection.value
    found = chain("mouldings", width, (standing_behind(FlatPlace.CEILING, trim.flats), crown))
    mouldings = (found,) if len(found.places) > 1 else ()
    return (*mouldings, *(_across(detail) if _stands_out(detail) else ()))


def beside(detail: DetailOf) -> tuple[Chain, ...]:
    """What is dimensioned left of the section, up from the lowest edge."""
    profile, stack = detail.of.profile, panel_stack(detail.of.panel)
    net = chain("net-depth", ZERO, (profile.net_depth.value, stack.thickness))
    down, seen = _down(detail), _seen(detail)
    told = [down]
    told += [seen] if seen.places not in (down.places, net.places) else []
    told += [net] if net.places != down.places else []
    return (*(one for one in told if one.parted), chain("drop", ZERO, (profile.drop.value,)))


def _down(detail: DetailOf) -> Chain:
    """The parts that make up the drop."""
    of, profile = detail.of, detail.of.profile
    bottom, upper, stack = of.part("bottom"), of.part("upper_board"), panel_stack(of.panel)
    sole = ZERO if bottom is None else bottom.thickness.value
    if profile.inside_depth is None or bottom is None:
        high = ZERO if upper is None else upper.thickness.value
        rest = profile.drop.value - sole - high if bottom is not None else ZERO
        return chain("down", ZERO, (sole, high, rest))
    up = profile.reveal if profile.bottom_joint is BottomJoint.BETWEEN else ZERO
    return chain("down", ZERO, (up, sole, profile.inside_depth.value, stack.above_backing))


def _seen(detail: DetailOf) -> Chain:
    """What is seen of a side between the mouldings, and what they cover."""
    of, profile = detail.of, detail.of.profile
    upper, lower = of.side_ends
    cover = next((c for c in detail.layout.mouldings.sides if c.profile == profile.id), None)
    under = profile.drop.value - lower
    stack = panel_stack(of.panel).thickness
    if cover is None:
        return chain("seen", ZERO, (under, lower - upper, stack))
    flats = of.trim.flats
    edge = max((flat.width for flat in flats if flat.at is FlatPlace.BOTTOM_EDGE), default=ZERO)
    covered = lower - upper - cover.side_left.value - edge
    crown = ZERO if of.trim.crown is None else of.trim.crown.drop.value
    seen = (cover.side_left.value, covered - crown, crown)
    return chain("seen", ZERO, (under, edge, *seen, stack))


@dataclass(frozen=True, slots=True)
class Written:
    """Chains as strings of one section, all to one step, so that they agree."""

    cut: Cut
    wording: SheetWording

    def string(self, of: Chain, *, far: bool = False) -> String:
        """A chain as a string from its own coordinates; `far` where it stands under the section."""
        marks = [self.wording.rounded(place - of.places[0]) for place in of.places]
        stops = [
            Stop(f"{of.name}-{number}", self.cut.on_paper(place), mark, place)
            for number, (place, mark) in enumerate(zip(of.places, marks, strict=True))
        ]
        segments = tuple(self._segment(start, end) for start, end in pairwise(stops))
        return String(f"profile-{self.cut.of.number}", of.name, segments, far=far)

    def _segment(self, start: Stop, end: Stop) -> Segment:
        value = end.mark - start.mark
        exact = decimal_mm(end.exact - start.exact)
        return Segment(start, end, self.wording.dimension(value), self.wording.exact(value), exact)


@dataclass(frozen=True, slots=True)
class _Figure:
    """A figure along its string: its place, and half the room it takes [mm]."""

    place: FigurePlace
    half: float

    def holds(self, at: float) -> bool:
        """Whether a line across the string would pass it."""
        return abs(at - self.place.middle) < self.half - HAIR

    def meets(self, other: "_Figure") -> bool:
        """Whether it stands on another one of its string."""
        apart = abs(self.place.middle - other.place.middle)
        return self.place.level == other.place.level and apart < self.half + other.half - HAIR


def clear_figures(strings: Sequence[PlacedString], typeface: Typeface) -> tuple[PlacedString, ...]:
    """Strings whose figures keep clear of the extension lines of those further out.

    A figure gives way along its line; where it cannot, the line that would pass it stops short.
    """
    cleared: list[PlacedString] = []
    inner: list[_Figure] = []
    for number, one in enumerate(strings):
        passing = [
            stop.at
            for other in strings[number + 1 :]
            for segment in other.string.segments
            for stop in (segment.start, segment.end)
        ]
        figures = _cleared(one, passing, typeface)
        cleared.append(
            replace(
                one,
                string=_stopping_short(one.string, inner),
                places=tuple(figure.place for figure in figures),
            )
        )
        inner.extend(figures)
    return tuple(cleared)


def _cleared(one: PlacedString, passing: Sequence[float], typeface: Typeface) -> list[_Figure]:
    """The figures of a string, each moved as little as keeps it clear of lines and of others."""
    figures = [
        _Figure(place, typeface.width(segment.text, style.TEXT, FACE) / 2 + style.TEXT_CLEARANCE)
        for place, segment in zip(one.places, one.string.segments, strict=True)
    ]
    for number, (figure, segment) in enumerate(zip(figures, one.string.segments, strict=True)):
        low, high = _range(figure, segment)
        at, half = figure.place.middle, figure.half
        tries = [at, *(line + way * half for line in passing for way in (-1.0, 1.0))]
        others = [each for place, each in enumerate(figures) if place != number]
        moved = [
            _Figure(replace(figure.place, middle=to), half)
            for to in sorted(tries, key=lambda to: abs(to - at))
            if low - HAIR <= to <= high + HAIR
        ]
        clear = (
            each
            for each in moved
            if not any(each.holds(line) for line in passing)
            and not any(each.meets(other) for other in others)
        )
        figures[number] = next(clear, figure)
    return figures


def _range(figure: _Figure, segment: Segment) -> tuple[float, float]:
    """Between which places a figure's middle may lie: on its line, over its leader, or outside."""
    place, middle = figure.place, (segment.start.at + segment.end.at) / 2
    if place.outside:
        return (-inf, place.middle) if place.middle < middle else (place.middle, inf)
    if place.level:
        return middle - figure.half, middle + figure.half
    off = figure.half + style.TICK_REACH
    return segment.start.at + off, segment.end.at - off


def _stopping_short(string: String, inner: Sequence[_Figure]) -> String:
    """A string without the extension lines that would pass figures nearer to the object."""

    def stop(of: Stop) -> Stop:
        return replace(of, reaches_object=not any(figure.holds(of.at) for figure in inner))

    segments = (
        replace(each, start=stop(each.start), end=stop(each.end)) for each in string.segments
    )
    return replace(string, segments=tuple(segments))


def written(cut: Cut, wording: SheetWording, chains: Sequence[Chain]) -> Written:
    """The wording of a section's chains: to the step that holds their places."""
    return Written(cut, wording.holding(place for one in chains for place in one.places))
