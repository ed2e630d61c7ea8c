"""Both ends of a run: where walls lie otherwise at one than at the other, sheets tell both."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from lacunar.layout.records import Layout, MarkKind
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import END_WALL, START_WALL, RunName

End = Literal["start", "end"]

DIMENSIONED = (MarkKind.WALL, MarkKind.FACE, MarkKind.CENTER)


def wall_at(run: RunName, end: End) -> str:
    """The wall that lies along a run at the start or at the end of the run across it."""
    return (START_WALL if end == "start" else END_WALL)[run.other]


def unlike(layout: Layout, run: RunName, kinds: tuple[MarkKind, ...] = tuple(MarkKind)) -> bool:
    """Whether marks of some kinds of a run differ from one end to the other."""
    one, other = (
        {(m.kind, m.of, m.side, m.mark) for m in marks.marks if m.kind in kinds}
        for marks in layout.marks
        if marks.run is run
    )
    return one != other


@dataclass(frozen=True, slots=True)
class RunEnd:
    """A run at one end: how far its start wall lies before the line that is divided, its span.

    Where the grid follows the walls, `marked` are its places along the wall at this end, by the
    names that dimensions have for them, and `level` how much of the way along the wall goes along
    the run.
    """

    run: RunName
    end: End
    before: Length
    span: Length
    marked: Mapping[str, Length] = field(default_factory=dict)
    level: Fraction = Fraction(1)

    @classmethod
    def of(cls, layout: Layout, run: RunName, end: End) -> "RunEnd":
        """The run of a layout at an end; in a square room, the same at both."""
        if layout.crooked is None:
            return cls(run, end, ZERO, layout.run(run).span.at_start.value)
        if layout.followed is not None:
            return _along_wall(layout, run, end)
        found = next(each for each in layout.crooked.runs if each.run is run)
        before, span = (
            (found.before_start, found.span_at_start)
            if end == "start"
            else (found.before_end, found.span_at_end)
        )
        return cls(run, end, before.value, span.value)

    def lies_as(self, other: "RunEnd") -> bool:
        """Whether both walls lie at this end as at the other, and all between as far from them."""
        mine, its = ((each.before, each.span, each.marked) for each in (self, other))
        return mine == its

    def from_wall(self, name: str, place: LengthFigure) -> Length:
        """A place along the run, by its name, from its start wall as it lies at this end."""
        return self.marked.get(name, place.value + self.before)

    def along_run(self, from_wall: Length) -> Length:
        """Where a place from the start wall lies along the run, from where all places are."""
        return from_wall * self.level - self.before


def _along_wall(layout: Layout, run: RunName, end: End) -> RunEnd:
    """A run's end where the grid follows the walls: places are along the wall there."""
    corners = layout.outline
    first, last = {
        (RunName.LENGTH, "start"): (0, 1),
        (RunName.LENGTH, "end"): (3, 2),
        (RunName.WIDTH, "start"): (0, 3),
        (RunName.WIDTH, "end"): (1, 2),
    }[run, end]
    start, stop = (
        corner.x if run is RunName.LENGTH else corner.y
        for corner in (corners[first], corners[last])
    )
    (marks,) = (each.marks for each in layout.marks if (each.run, each.end) == (run, end))
    span = marks[-1].exact.value
    named = {
        f"{mark.of}:{mark.side}": mark.exact.value for mark in marks if mark.kind is MarkKind.FACE
    }
    named |= {f"{m.of}:center": m.exact.value for m in marks if m.kind is MarkKind.CENTER}
    for one, other in pairwise(layout.run(run).elements):
        # Where the face of one thing is that of the next, only one of both is marked.
        far, near = f"{one.id}:far", f"{other.id}:near"
        shared = named.get(far, named.get(near))
        if shared is not None:
            named |= {far: shared, near: shared}
    return RunEnd(run, end, -start, span, named, (stop - start) / span)


def from_walls(layout: Layout, run: RunName, place: Length, end: End = "start") -> Length:
    """A place along a run, told from its start wall as it lies at an end, as it is taped."""
    if layout.crooked is None:
        return place
    found = next(each for each in layout.crooked.runs if each.run is run)
    return place + (found.before_start if end == "start" else found.before_end).value
