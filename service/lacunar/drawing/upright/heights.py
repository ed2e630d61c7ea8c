"""Strings of heights beside an upright cut: from the finished floor up, as the layout stacks them.

Each height is rounded once, from the floor, and every figure is the difference of two of them, so
that strings sum up as printed.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lacunar.drawing.dimensions import Segment, Stop, String
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.paper import UprightPaper
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.backing_records import Level
from lacunar.measure.length import ZERO, Length

FLOOR, LIMIT = "floor", "limit"
Named = tuple[str, Length]


def level_name(level: Level) -> str:
    """What a height is called at the ends of dimensions: `ceiling`, `panel`, `beam:P1`."""
    return level.kind if level.of == level.kind else f"{level.kind}:{level.of}"


def levels_seen(cut: UprightCut) -> tuple[Named, ...]:
    """The undersides of what is cut or seen beyond, the lowest first, and the ceiling."""
    profiles = {profile.id for profile in cut.profiles}
    found: dict[Length, str] = {}
    for level in cut.layout.heights.levels:
        if level.kind == "ceiling" or (level.kind == "beam" and level.of in profiles):
            found.setdefault(level.height.value, level_name(level))
    return tuple((found[height], height) for height in sorted(found, key=lambda at: at.inches))


def panel_level(cut: UprightCut) -> Named | None:
    """The underside of the panels; None without panels."""
    found = (each for each in cut.layout.heights.levels if each.kind == "panel")
    return next(((level_name(level), level.height.value) for level in found), None)


class HeightStrings:
    """Strings of heights of one view, at a scale."""

    def __init__(self, number: int, paper: UprightPaper, wording: SheetWording) -> None:
        self.run = f"heights-{number}"
        self.paper = paper
        self.wording = wording

    def beside(self, cut: UprightCut) -> tuple[String, ...]:
        """From the floor to the panels, to all that is cut or seen, and to the ceiling.

        The panels' string is the innermost: its end lies within a segment of the next one.
        """
        levels, panel = levels_seen(cut), panel_level(cut)
        strings = [] if panel is None else [self.string("panel", (panel,))]
        strings.append(self.string("levels", levels))
        if len(levels) > 1:
            strings.append(self.string("overall", levels[-1:]))
        return tuple(strings)

    def headroom(self, cut: UprightCut) -> String:
        """From the floor to the room's lowest place, by way of the limit where that is kept."""
        heights = cut.layout.heights
        lowest = next(each for each in heights.levels if each.of == heights.worst[0])
        worst = (level_name(lowest), lowest.height.value)
        limit = (LIMIT, heights.limit)
        kept = limit[1] < worst[1]
        return self.string("headroom", (limit, worst) if kept else (worst,), far=True)

    def string(self, name: str, levels: Sequence[Named], *, far: bool = False) -> String:
        """One string from the floor by way of heights, in rising order."""
        stops = [Stop(FLOOR, 0.0, ZERO, ZERO)]
        for of, height in levels:
            mark = self.wording.rounded(height)
            stops.append(Stop(of, self.paper.on_paper(height), mark, height))
        told = tuple(segments(stops, self.wording))
        end = "right" if far else ""
        return String(self.run, name, told, closed_end=True, end=end, far=far)


def wall_string(
    view: int, ends: tuple[Named, Named], paper: UprightPaper, wording: SheetWording
) -> String:
    """One string of a wall's length, from its left end to its right one."""
    stops = [
        Stop(name, paper.on_paper(place), wording.rounded(place), place) for name, place in ends
    ]
    return String(f"wall-{view}", "overall", tuple(segments(stops, wording)), end="below", far=True)


def segments(stops: Sequence[Stop], wording: SheetWording) -> Iterator[Segment]:
    """What is printed from each stop of a string to the next: the difference of their marks."""
    for start, end in pairwise(stops):
        value, exact = end.mark - start.mark, decimal_mm(end.exact - start.exact)
        yield Segment(start, end, wording.dimension(value), wording.exact(value), exact)
