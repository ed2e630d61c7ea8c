"""A plan in whole numbers as sticks with pieces on them, each exactly where it is cut."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.measure.length import ZERO, Length
from lacunar.takeoff.cutting.asked import Piece, Terms
from lacunar.takeoff.cutting.miters import EndCuts
from lacunar.takeoff.cutting.plan_records import CutPattern, PatternPart, PieceOnStick, Stick
from lacunar.takeoff.cutting.task import Chosen, Column


@dataclass(frozen=True, slots=True)
class SoldLength:
    """A stick as it lies in the rack: which stock it is, how long."""

    id: str
    length: Length


@dataclass(frozen=True, slots=True)
class Bench:
    """What a plan is laid out on: stock by number, kinds of pieces by length, the cuts between."""

    stock: tuple[SoldLength, ...]
    lengths: tuple[Length, ...]
    pieces: tuple[Piece, ...]
    cuts: EndCuts
    terms: Terms

    def parted(self, chosen: Chosen) -> tuple[tuple[CutPattern, ...], tuple[Stick, ...]]:
        """Patterns, the longest stick first, and every stick with the pieces it gives."""
        names = {length: self._names(length) for length in self.lengths}
        patterns: list[CutPattern] = []
        sticks: list[Stick] = []
        for number, (column, times) in enumerate(self._ordered(chosen), 1):
            offcut = self._offcut(column)
            sold = self.stock[column.stock]
            parts = tuple(
                PatternPart(length, n)
                for length, n in zip(self.lengths, column.counts, strict=True)
                if n
            )
            patterns.append(CutPattern(number, sold.id, times, parts, offcut))
            for _ in range(times):
                pieces = tuple(self._laid(column, names))
                usable = bool(offcut) and offcut >= self.terms.usable_offcut
                sticks.append(
                    Stick(len(sticks) + 1, sold.id, sold.length, number, pieces, offcut, usable)
                )
        return tuple(patterns), tuple(sticks)

    def _ordered(self, chosen: Chosen) -> list[tuple[Column, int]]:
        def place(entry: tuple[Column, int]) -> tuple[Length, str, int, tuple[int, ...]]:
            column, times = entry
            sold = self.stock[column.stock]
            return -sold.length, sold.id, -times, tuple(-n for n in column.counts)

        return sorted(chosen.items(), key=place)

    def _names(self, length: Length) -> Iterator[str]:
        for piece in self.pieces:
            if piece.length == length:
                for _ in range(piece.quantity):
                    yield piece.id

    def _laid(self, column: Column, names: dict[Length, Iterator[str]]) -> Iterator[PieceOnStick]:
        """The pieces of one stick, the longest first."""
        start = self.terms.end_trim
        for length, n in zip(self.lengths, column.counts, strict=True):
            for _ in range(n):
                end = start + length
                yield PieceOnStick(next(names[length]), length, start, end)
                start = end + self.cuts.saw - self.cuts.shared

    def _offcut(self, column: Column) -> Length:
        """What is left behind the last saw cut, the far end's trim included."""
        lengths = [length * n for length, n in zip(self.lengths, column.counts, strict=True) if n]
        between = (self.cuts.saw - self.cuts.shared) * (sum(column.counts) - 1)
        left = self.stock[column.stock].length - self.terms.end_trim - sum(lengths, ZERO) - between
        if left < self.terms.end_trim:
            raise AssertionError(f"a stick is too short for its pieces by {-left}")
        return max(ZERO, left - self.cuts.saw)


def merged_lengths(pieces: Sequence[Piece]) -> tuple[tuple[Length, int], ...]:
    """Each length there is, the longest first, and how many pieces have it."""
    found: dict[Length, int] = {}
    for piece in pieces:
        found[piece.length] = found.get(piece.length, 0) + piece.quantity
    return tuple(sorted(found.items(), reverse=True))
