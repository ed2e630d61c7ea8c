"""Sheets filled quickly: the foremost panel in the corner, the rest split in two, and so on."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from lacunar.takeoff.cutting.guillotine import NOTHING, Leaf, Node, Shape, Split

Order = Callable[[Shape], tuple[int, ...]]
Rule = Callable[[int, int, Shape], bool]

# Which panel goes first, and whether what is left of a rectangle is cut across its length first.
ORDERS: tuple[Order, ...] = (
    lambda shape: (shape.length * shape.width, shape.length),
    lambda shape: (max(shape.length, shape.width), min(shape.length, shape.width), shape.length),
    lambda shape: (shape.length, shape.width),
    lambda shape: (shape.width, shape.length),
)
RULES: tuple[Rule, ...] = (
    lambda length, width, shape: True,
    lambda length, width, shape: False,
    lambda length, width, shape: length - shape.length > width - shape.width,
    lambda length, width, shape: length - shape.length <= width - shape.width,
)


@dataclass(frozen=True, slots=True)
class Filler:
    """One way to fill a sheet, as one of the orders and one of the rules."""

    shapes: tuple[Shape, ...]
    rule: Rule

    def fill(self, size: tuple[int, int], rest: Sequence[int]) -> Node:
        """A sheet of what is still wanted."""
        wanted = list(rest)
        return self._filled(*size, wanted)

    def _filled(self, length: int, width: int, wanted: list[int]) -> Node:
        shape = next(
            (
                each
                for each in self.shapes
                if wanted[each.kind] and each.length <= length and each.width <= width
            ),
            None,
        )
        if shape is None:
            return NOTHING
        wanted[shape.kind] -= 1
        if self.rule(length, width, shape):
            strip = self._corner(shape.length, width, shape, across_length=False, wanted=wanted)
            beside = self._filled(length - shape.length, width, wanted)
            return _split(length, shape.length, strip, beside, across_length=True)
        strip = self._corner(length, shape.width, shape, across_length=True, wanted=wanted)
        above = self._filled(length, width - shape.width, wanted)
        return _split(width, shape.width, strip, above, across_length=False)

    def _corner(
        self, length: int, width: int, shape: Shape, *, across_length: bool, wanted: list[int]
    ) -> Node:
        """A strip as wide as the panel in its corner, and what fits behind that."""
        if across_length:
            rest = self._filled(length - shape.length, width, wanted)
            return _split(length, shape.length, Leaf(shape), rest, across_length=True)
        rest = self._filled(length, width - shape.width, wanted)
        return _split(width, shape.width, Leaf(shape), rest, across_length=False)


def _split(whole: int, at: int, first: Node, second: Node, *, across_length: bool) -> Node:
    if at >= whole or second == NOTHING:
        return first
    return Split(across_length, at, first, second)


def fillers(shapes: Sequence[Shape]) -> Iterator[Filler]:
    """Every way to fill."""
    for order in ORDERS:
        ordered = tuple(sorted(shapes, key=order, reverse=True))
        for rule in RULES:
            yield Filler(ordered, rule)
