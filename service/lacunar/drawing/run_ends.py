"""Both ends of a run: where walls lie otherwise at one than at the other, sheets tell both."""

from dataclasses import dataclass
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
    """A run at one end: how far its start wall lies before the line that is divided, its span."""

    run: RunName
    end: End
    before: Length
    span: Length

    @classmethod
    def of(cls, layout: Layout, run: RunName, end: End) -> "RunEnd":
        """The run of a layout at an end; in a square room, the same at both."""
        if layout.crooked is None:
            return cls(run, end, ZERO, layout.run(run).span.at_start.value)
        found = next(each for each in layout.crooked.runs if each.run is run)
        before, span = (
            (found.before_start, found.span_at_start)
            if end == "start"
            else (found.before_end, found.span_at_end)
        )
        return cls(run, end, before.value, span.value)

    def lies_as(self, other: "RunEnd") -> bool:
        """Whether both walls lie at this end as at the other."""
        return (self.before, self.span) == (other.before, other.span)

    def from_wall(self, place: LengthFigure) -> Length:
        """A place along the run, from its start wall as it lies at this end."""
        return place.value + self.before


def from_walls(layout: Layout, run: RunName, place: Length, end: End = "start") -> Length:
    """A place along a run, told from its start wall as it lies at an end, as it is taped."""
    return place + RunEnd.of(layout, run, end).before
