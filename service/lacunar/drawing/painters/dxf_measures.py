"""The dimensions of a string, taken apart into what a DXF drawing makes real dimensions of."""

from dataclasses import dataclass
from math import dist

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments, Text

Line = tuple[Pt, Pt]

_LEVEL = 1e-9
_HAIR = 1e-6


@dataclass(frozen=True, slots=True)
class Measure:
    """One dimension: its group, line and figure, its extension lines and ticks; what else it has.

    `origins` are where its extension lines begin.
    """

    group: Group
    line: Line
    origins: Line
    figure: Text
    extensions: tuple[Line, ...]
    ticks: tuple[Line, ...]
    others: tuple[Element, ...]

    @property
    def exact(self) -> float:
        """What it measures [mm], to six decimals."""
        return float(self.group.data["exact-mm"])

    @property
    def drawn(self) -> tuple[Element, ...]:
        """What is seen of it."""
        return (
            Segments((self.line, *self.extensions), style.DIMENSION),
            Segments(self.ticks, style.TICK),
            self.figure,
        )

    @property
    def middle(self) -> Pt:
        """The middle of its figure, which is anchored in the middle of its baseline."""
        half = self.figure.height / 2
        return (
            self.figure.at.moved(-half, 0) if self.figure.turned else self.figure.at.moved(0, -half)
        )


def dist_of(line: Line) -> float:
    """How long a line is on paper [mm]."""
    (start, end) = line
    return dist((start.x, start.y), (end.x, end.y))


def wall_of(string: Group) -> str:
    """Which strings go along the same wall."""
    return f"{string.data.get('run', '')} {string.data.get('end', '')}"


def rises_along(string: Group, measures: tuple[Measure, ...]) -> bool | None:
    """Whether the wall a string goes along turns left from its axis; None where none tells.

    Extension lines begin at the wall, but for those of strings farther out.
    """
    first, last = measures[0].origins[0], measures[-1].origins[1]
    left = first.y - last.y if string.data.get("axis") == "x" else first.x - last.x
    return None if abs(left) < _LEVEL else left > 0


def measures_of(string: Group) -> tuple[Measure, ...]:
    """The dimensions of a string, none where one of them has not all that it takes."""
    extensions, ticks = _lines(string, "extension-lines"), _lines(string, "ticks")
    level = string.data.get("axis") == "x"
    found = []
    for child in string.children:
        if not isinstance(child, Group) or child.kind != "dimension":
            continue
        line, figure = child.children[0], child.children[-1]
        if not (isinstance(line, Polyline) and isinstance(figure, Text)):
            return ()
        ends = line.points[0], line.points[-1]
        # An extension line can be in pieces, where it would run through a figure.
        pieces = [tuple(one for one in extensions if _at(one, end, level)) for end in ends]
        marks = [one for one in ticks if any(_middle_at(one, end) for end in ends)]
        if not all(pieces) or len(marks) != len(ends):
            return ()
        origins = _farthest(pieces[0], ends[0]), _farthest(pieces[1], ends[1])
        both = (*pieces[0], *pieces[1])
        others = child.children[1:-1]
        found.append(Measure(child, ends, origins, figure, both, tuple(marks), others))
    return tuple(found)


def _at(extension: Line, stop: Pt, level: bool) -> bool:
    """Whether an extension line is that of a stop of its string."""
    start = extension[0]
    return abs(start.x - stop.x if level else start.y - stop.y) < _HAIR


def _middle_at(tick: Line, stop: Pt) -> bool:
    (start, end) = tick
    middle = Pt((start.x + end.x) / 2, (start.y + end.y) / 2)
    return dist_of((middle, stop)) < _HAIR


def _farthest(pieces: tuple[Line, ...], stop: Pt) -> Pt:
    """Where an extension line begins: its far end from the dimension line."""
    return max((end for piece in pieces for end in piece), key=lambda end: dist_of((end, stop)))


def _lines(string: Group, kind: str) -> tuple[Line, ...]:
    """The separate lines in the groups of a kind."""
    groups = [c for c in string.children if isinstance(c, Group) and c.kind == kind]
    return tuple(
        line
        for group in groups
        for one in group.children
        if isinstance(one, Segments)
        for line in one.lines
    )
