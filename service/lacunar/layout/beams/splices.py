"""Where boards longer than their stock are parted: where no joint is seen, or with a scarf."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from lacunar.measure.length import Length


@dataclass(frozen=True, slots=True)
class Reach:
    """From where to where a board, or a part of it, goes along its beam."""

    start: Length
    end: Length

    @property
    def length(self) -> Length:
        """How long it is."""
        return self.end - self.start


def at_joints(board: Reach, joints: Sequence[Length], longest: Length) -> tuple[Reach, ...] | None:
    """Part a board at given places, into as few parts as can be; None where that cannot be done.

    Parameters: `joints`, places along the beam in any order [length]; `longest`, its stock
    [length]. Each part but the last is the longest that ends at a joint, so no way has fewer parts.

    >>> inch = Length.of_inches
    >>> parts = at_joints(Reach(inch(0), inch(300)), [inch(100), inch(150), inch(220)], inch(192))
    >>> [part.length.inches for part in parts]
    [Fraction(150, 1), Fraction(150, 1)]
    """
    places = sorted(place for place in joints if board.start < place < board.end)
    cuts = [board.start]
    while board.end - cuts[-1] > longest:
        reached = [place for place in places if cuts[-1] < place <= cuts[-1] + longest]
        if not reached:
            return None
        cuts.append(reached[-1])
    cuts.append(board.end)
    return tuple(Reach(near, far) for near, far in pairwise(cuts))


def with_scarfs(board: Reach, lap: Length, longest: Length) -> tuple[Reach, ...] | None:
    """Part a board into the fewest equal parts that lap over each other.

    Parameters: `lap` [length], how far two parts lie over each other; `longest`, its stock
    [length]. Formula: n parts of (L + (n - 1) lap) / n each. None where the stock is no longer than
    the lap.

    >>> inch = Length.of_inches
    >>> parts = with_scarfs(Reach(inch(0), inch(300)), inch(1), inch(192))
    >>> [(part.start.inches, part.end.inches) for part in parts]
    [(Fraction(0, 1), Fraction(301, 2)), (Fraction(299, 2), Fraction(300, 1))]
    """
    if longest <= lap:
        return None
    count = -(-(board.length - lap) // (longest - lap))
    size = (board.length + lap * (count - 1)) / count
    starts = [board.start + (size - lap) * number for number in range(count)]
    return tuple(Reach(start, start + size) for start in starts)
