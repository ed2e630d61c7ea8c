"""Where the joists are, and how a line along the ceiling lies to them."""

from dataclasses import dataclass

from lacunar.layout.backing_records import Bay, Joist, JoistLines
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import Joists

JOIST_COUNT = Rule("joists with their center in the room", "floor((span - first) / spacing) + 1")
JOIST_CENTER = Rule(
    "center of a joist: the first, and the spacing for each after it", "first + number * spacing"
)
OFFSET = Rule("how far a line lies beyond a joist's center", "position - joist")
BEARING = Rule(
    "from a line on a joist to the joist's nearer edge",
    "joist_width / 2 - max(offset, -offset)",
)
BLOCK = Rule("block between two joists: from face to face", "far_joist - near_joist - joist_width")
BLOCK_AT_START = Rule(
    "block between the start wall and the first joist", "far_joist - joist_width / 2"
)
BLOCK_AT_END = Rule(
    "block between the last joist and the end wall", "span - near_joist - joist_width / 2"
)


FIRST_JOIST = Rule(
    "first joist on the clear line: as told from the wall, less how far that lies before the line",
    "first - before + passed * spacing",
)


def joist_lines(joists: Joists, span: Length, before: Length = ZERO) -> JoistLines:
    """Turn joists as they were told into the place of each.

    Parameters: `joists`; `span` of the run they are measured along [length]; `before`, how far the
    start wall lies before it in a crooked room [length]. A joist counts whose center lies between
    the finished walls, or on the clear line. Formula: center = first + k · spacing.

    >>> from fractions import Fraction
    >>> from lacunar.model.room import CeilingState, JoistKind, RunName
    >>> inch = Length.of_inches
    >>> told = Joists(RunName.WIDTH, inch(16), inch(8), inch(Fraction(3, 2)), JoistKind.LUMBER,
    ...               CeilingState.OPEN, inch(0), None, Fraction(42, 100))
    >>> [joist.center.value.inches for joist in joist_lines(told, inch(60)).joists]
    [Fraction(8, 1), Fraction(24, 1), Fraction(40, 1), Fraction(56, 1)]
    """
    at_first, spacing = _first(joists, before), joists.spacing
    first = at_first.value
    count = (span - first) // spacing + 1
    return JoistLines(
        parallel_to=joists.parallel_to,
        on=joists.on,
        spacing=spacing,
        width=joists.width,
        count=JOIST_COUNT.gives(count, span=span, first=first, spacing=spacing),
        joists=tuple(Joist(f"J{n + 1}", _center(at_first, spacing, n)) for n in range(count)),
    )


def _first(joists: Joists, before: Length) -> LengthFigure:
    """The first joist whose center lies on the clear line."""
    if not before:
        return given(joists.first)
    passed = max(0, -((joists.first - before) // joists.spacing))
    return FIRST_JOIST.gives(
        joists.first - before + joists.spacing * passed,
        first=joists.first,
        before=before,
        passed=passed,
        spacing=joists.spacing,
    )


def _center(at_first: LengthFigure, spacing: Length, number: int) -> LengthFigure:
    if not number:
        return at_first
    first = at_first.value
    return JOIST_CENTER.gives(first + spacing * number, first=first, number=number, spacing=spacing)


@dataclass(frozen=True, slots=True)
class LineAmongJoists:
    """A line along the joists: the nearest joist, how far beyond it, and its bearing or its bay."""

    joist: str
    offset: LengthFigure
    bearing: LengthFigure | None
    bay: Bay | None


def among_joists(position: Length, lines: JoistLines, span: Length) -> LineAmongJoists:
    """Turn a place across the joists into the joist it is on, or the bay it is in.

    Parameters: `position` [length] of the line; `lines`, all joists; `span` of their run [length].
    A line is on a joist while it lies within the joist's width, edges included; of two joists
    equally near, the one next the datum is told.
    """
    nearest = min(lines.joists, key=lambda joist: abs(position - joist.center.value))
    center = nearest.center.value
    offset = OFFSET.gives(position - center, position=position, joist=center)
    bearing = lines.width / 2 - abs(offset.value)
    if bearing < ZERO:
        return LineAmongJoists(nearest.id, offset, None, _bay(position, lines, span))
    left = BEARING.gives(bearing, joist_width=lines.width, offset=offset.value)
    return LineAmongJoists(nearest.id, offset, left, None)


def _bay(position: Length, lines: JoistLines, span: Length) -> Bay:
    before = [joist for joist in lines.joists if joist.center.value < position]
    after = [joist for joist in lines.joists if joist.center.value > position]
    width = lines.width
    if not before:
        far = after[0].center.value
        block = BLOCK_AT_START.gives(far - width / 2, far_joist=far, joist_width=width)
        return Bay(None, after[0].id, block)
    near = before[-1].center.value
    if not after:
        block = BLOCK_AT_END.gives(
            span - near - width / 2, span=span, near_joist=near, joist_width=width
        )
        return Bay(before[-1].id, None, block)
    far = after[0].center.value
    block = BLOCK.gives(far - near - width, far_joist=far, near_joist=near, joist_width=width)
    return Bay(before[-1].id, after[0].id, block)
