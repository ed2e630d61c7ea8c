"""Dimensions as drawn: a line from end to end, its printed figure, and what it says it measures."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from lacunar.drawing.checker.records import GroupRead, Lettering, Path, SheetRead
from lacunar.drawing.checker.shapes import Spot

LINE_ENDS = 2


@dataclass(frozen=True, slots=True)
class DimensionLine:
    """One dimension. `start` and `end` are the ends of its line, from `source` to `target`.

    `level` says whether the line lies along the sheet; otherwise it stands.
    """

    group: GroupRead
    start: Spot
    end: Spot
    figure: Lettering
    leaders: tuple[Path, ...]

    @property
    def level(self) -> bool:
        """Whether the line lies along the sheet rather than up it."""
        return abs(self.end.x - self.start.x) > abs(self.end.y - self.start.y)

    @property
    def drawn(self) -> float:
        """The drawn length [mm]; below 0 where it runs to the left or down the sheet."""
        ahead = self.end.x - self.start.x if self.level else self.start.y - self.end.y
        length = hypot(self.end.x - self.start.x, self.end.y - self.start.y)
        return length if ahead > 0 else -length

    @property
    def source(self) -> str:
        """What the dimension is taken from, such as `W1` or `XB-1:near`."""
        return self.group.data.get("from", "")

    @property
    def target(self) -> str:
        """What the dimension is taken to."""
        return self.group.data.get("to", "")

    @property
    def led_out(self) -> bool:
        """Whether the dimension says that its figure stands elsewhere than on its line."""
        return self.group.data.get("led-out") == "yes"


def dimension_lines(sheet: SheetRead, within: GroupRead | None = None) -> Iterator[DimensionLine]:
    """Every dimension that has a line and one figure, on the sheet or inside one group."""
    for group in sheet.of_kind("dimension", within):
        line = dimension_line(sheet, group)
        if line:
            yield line


def dimension_line(sheet: SheetRead, group: GroupRead) -> DimensionLine | None:
    """The dimension a group draws, the first path its line; None if that or the figure lacks."""
    paths, letterings = sheet.paths_in(group), sheet.letterings_in(group)
    drawn = paths and paths[0].pen and len(paths[0].spots) == LINE_ENDS
    if not drawn or len(letterings) != 1:
        return None
    leaders = tuple(path for path in paths[1:] if path.pen and path.pen.name == "leader")
    start, end = paths[0].spots
    return DimensionLine(group, start, end, letterings[0], leaders)
