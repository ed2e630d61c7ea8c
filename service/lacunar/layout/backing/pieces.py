"""Clear lengths of backing, and where along them each is fixed."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from lacunar.layout.backing_records import BackingPiece
from lacunar.measure.figure import CountFigure, LengthFigure, Rule
from lacunar.model.fixing import Fixing

PIECE = Rule("clear length of backing between what stops it", "end - start")
CROSSINGS = Rule("crossings with joists, counted", "crossings")
EVEN_COUNT = Rule(
    "places to fix a piece at: its length over the most between them, rounded up, and one more",
    "ceil(length / most_between) + 1",
)
ONE_PLACE = Rule("one place, for a piece too short for two", "1")
EVEN_PLACE = Rule(
    "place to fix a piece at: from the first one on at even distances",
    "start + end_distance + number * (length - 2 * end_distance) / (places - 1)",
)
MIDDLE = Rule("place to fix a short piece at: its middle", "start + length / 2")
FASTENERS = Rule("fasteners in a piece", "places * at_each")


@dataclass(frozen=True, slots=True)
class Clear:
    """A clear length of backing, by both its ends along the run it lies along."""

    start: LengthFigure
    end: LengthFigure

    @property
    def length(self) -> LengthFigure:
        """From one end to the other [length]."""
        start, end = self.start.value, self.end.value
        return PIECE.gives(end - start, end=end, start=start)


def crossing_piece(clear: Clear, joists: Sequence[LengthFigure], fixing: Fixing) -> BackingPiece:
    """Turn a clear length across the joists into a piece fixed to each joist it crosses.

    Parameters: `clear`; `joists`, the centers of all [length]; `fixing`. A crossing is a place
    along the beam and along the run at once, since both are measured from the same wall.
    """
    start, end = clear.start.value, clear.end.value
    crossed = tuple(center for center in joists if start <= center.value <= end)
    count = CROSSINGS.gives(len(crossed), crossings=len(crossed))
    return _piece(clear, (count, crossed), fixing.at_crossing)


def even_piece(clear: Clear, fixing: Fixing, *, framed: bool) -> BackingPiece:
    """Turn a clear length with no joists across it into a piece fixed at even distances.

    Formula: ceil(length / most between) + 1 places, the outer ones an end distance from the ends; a
    piece no longer than both end distances has one, in its middle. `framed` says whether it is
    known what is above, so that fasteners can be counted.
    """
    start, length = clear.start.value, clear.end.value - clear.start.value
    inset, most = fixing.end_distance, fixing.block_spacing
    if length <= inset * 2:
        middle = MIDDLE.gives(start + length / 2, start=start, length=length)
        return _piece(
            clear, (ONE_PLACE.gives(1), (middle,)), fixing.at_crossing if framed else None
        )
    count = EVEN_COUNT.gives(ceil(length / most) + 1, length=length, most_between=most)
    places = count.value
    spread = tuple(
        EVEN_PLACE.gives(
            start + inset + (length - inset * 2) * Fraction(number, places - 1),
            start=start,
            end_distance=inset,
            number=number,
            length=length,
            places=places,
        )
        for number in range(places)
    )
    return _piece(clear, (count, spread), fixing.at_crossing if framed else None)


def _piece(
    clear: Clear, fixed: tuple[CountFigure, tuple[LengthFigure, ...]], at_each: int | None
) -> BackingPiece:
    count, places = fixed
    fasteners = None
    if at_each is not None:
        fasteners = FASTENERS.gives(count.value * at_each, places=count.value, at_each=at_each)
    return BackingPiece(
        start=clear.start,
        end=clear.end,
        length=clear.length,
        count=count,
        places=places,
        fasteners=fasteners,
    )


def added(name: str, figures: Sequence[CountFigure]) -> CountFigure:
    """Add up counts of several pieces under a rule of that name.

    >>> pieces = [CROSSINGS.gives(3, crossings=3), CROSSINGS.gives(2, crossings=2)]
    >>> added("blocks of a line", pieces).rule.formula
    'piece_1 + piece_2'
    """
    values = {f"piece_{number}": figure.value for number, figure in enumerate(figures, start=1)}
    return Rule(name, " + ".join(values)).gives(sum(values.values()), **values)
