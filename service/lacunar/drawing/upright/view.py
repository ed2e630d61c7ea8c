"""An upright view put together: what is built, its heights on both sides, what is told above it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing.annotation import Block
from lacunar.drawing.dimensions import (
    Axis,
    PlacedString,
    String,
    StringsDoNotFit,
    drawn_string,
    place_strings,
)
from lacunar.drawing.elements import Element, Group, Pt
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.clear_places import Occupied
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.upright.along import (
    PlacedMark,
    drawn_marks,
    have_room,
    marks_depth,
)
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.names import beam_ids, floor_mark, wall_names
from lacunar.drawing.upright.object import DrawnCut
from lacunar.drawing.upright.paper import BAND, UprightPaper
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.measure.length import ZERO

MARGIN = 1.0
FIRST_GAP = 1.6
OVER_END = 9.5
"""How far running marks may stand out beyond the ends of a view [mm], half a figure included."""


@dataclass(frozen=True, slots=True)
class Hand:
    """What a view is drawn with: its number, scale, and how lengths and words are written."""

    number: int
    scale: Scale
    wording: SheetWording
    typeface: Typeface

    def bare_paper(self) -> UprightPaper:
        """Paper with the cut's zero at its upper left corner, to measure by."""
        return UprightPaper(self.scale.ratio, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Strings:
    """What is told about a view: heights left and right of it, strings or running marks above.

    `below` stand under the floor.
    """

    left: tuple[String, ...]
    right: tuple[String, ...] = ()
    above: tuple[String, ...] = ()
    marks: tuple[PlacedMark, ...] = ()
    below: tuple[String, ...] = ()


class UprightView:
    """A cut with its strings at a scale, measured before it is drawn.

    Strings above that have no room at the scale are left out but for the overall one, and
    `has_all_strings` says so; so are running marks where they would stand out too far.
    """

    def __init__(self, cut: UprightCut, hand: Hand, strings: Strings) -> None:
        self.cut = cut
        self.hand = hand
        typeface = hand.typeface
        bare = hand.bare_paper()
        start, end = (bare.on_paper(each.at) for each in cut.ends)
        drawn = DrawnCut(cut, bare, hand.number)
        before, after = drawn.reach()
        self._left = _placed_beside(strings.left, typeface)
        self._right = _placed_beside(strings.right, typeface)
        self._above, self.has_all_strings = _placed_above(strings.above, typeface)
        self._marks = strings.marks if have_room(strings.marks, start, end) else ()
        out = OVER_END if self._marks else 0.0
        far = max((each.overrun_after for each in self._above), default=0.0)
        near = max((each.overrun_before for each in self._above), default=0.0)
        left = max(before + _reach(self._left), out, near) + MARGIN
        right = max(after + _reach(self._right), out, far) + MARGIN
        self.width = left + end - start + right
        over = max((each.overrun_after for each in (*self._left, *self._right)), default=0.0)
        below = max((each.overrun_before for each in (*self._left, *self._right)), default=0.0)
        above = drawn.top + max(
            _reach(self._above),
            marks_depth(self._marks, hand.wording, typeface) if self._marks else 0.0,
        )
        high = bare.on_paper(cut.height)
        floor = MARGIN + max(above, over) + high
        self._below = place_strings(strings.below, typeface)
        self.height = floor + max(BAND + _reach(self._below), below) + MARGIN
        self.paper = UprightPaper(hand.scale.ratio, left - start, floor)
        self.drawn = DrawnCut(cut, self.paper, hand.number)

    @property
    def tells_marks(self) -> bool:
        """Whether running marks stand above the view."""
        return bool(self._marks)

    def field(self) -> tuple[Pt, float]:
        """The middle of what is clear between the floor and the lowest beam, and its width [mm]."""
        lowest = max((p.drop.value for p in self.cut.profiles), default=ZERO)
        start, end = (each.at for each in self.cut.ends)
        low, high = self.paper.at(start, ZERO), self.paper.at(end, self.cut.height - lowest)
        return Pt((low.x + high.x) / 2, (low.y + high.y) / 2), high.x - low.x

    def named(self, within: Sequence[Element]) -> tuple[Element, ...]:
        """What is built, what else stands `within` it, such as doors in its wall; and their names.

        In the order in which these find room: ids of beams, the floor's mark, names of walls.
        """
        typeface, paper, number = self.hand.typeface, self.paper, self.hand.number
        about: tuple[Element, ...] = (self.drawn.object(), *within)
        busy = Occupied(typeface, about)
        ids = beam_ids(self.cut, paper, number, busy, typeface)
        mark = floor_mark(self.cut, paper, busy, typeface)
        busy.add(mark)
        return (*about, *ids, *mark, *wall_names(self.cut, paper, number, busy, typeface))

    def block(self, of: Mapping[str, str], about: Sequence[Element], title: str) -> Block:
        """The view with all that is drawn in it, `of` what it says it is, its strings about it."""
        data = {
            **of,
            "name": self.cut.name,
            "scale": str(self.hand.scale.ratio),
            "scale-text": self.hand.scale.text,
        }
        if self.cut.run is not None and self.cut.at is not None:
            data |= {"run": self.cut.run.value, "at-mm": decimal_mm(self.cut.at)}
        children = (*about, *self._strings(), *self._drawn_marks())
        group = Group("view", children, id=f"view-{self.hand.number}", title=title, data=data)
        return Block(self.width, self.height, (group,))

    def _corners(self) -> tuple[Pt, Pt]:
        """The object's upper left and upper right corners, without its walls."""
        left, right = (self.paper.at(each.at, self.cut.height) for each in self.cut.ends)
        return left.moved(0.0, -self.drawn.top), right.moved(0.0, -self.drawn.top)

    def _strings(self) -> tuple[Group, ...]:
        left, right = self._corners()
        before, after = self.drawn.reach()
        axes = (
            (self._left, Axis("y", left.x - before, -self.paper.floor)),
            (self._right, Axis("y", right.x + after, -self.paper.floor, far=True)),
            (self._above, Axis("x", left.y, self.paper.left)),
            (self._below, Axis("x", self.paper.floor + BAND, self.paper.left, far=True)),
        )
        return tuple(
            drawn_string(placed, axis, FIRST_GAP) for strings, axis in axes for placed in strings
        )

    def _drawn_marks(self) -> tuple[Group, ...]:
        if not self._marks:
            return ()
        shift = self.paper.left
        moved = [PlacedMark(each.mark, each.place + shift) for each in self._marks]
        return tuple(drawn_marks(moved, self.hand.wording, self.hand.number, self._corners()))


def _placed_beside(strings: Sequence[String], typeface: Typeface) -> tuple[PlacedString, ...]:
    """The strings placed; where figures have no room at the scale, those of one figure alone."""
    try:
        return place_strings(strings, typeface)
    except StringsDoNotFit:
        return place_strings([each for each in strings if len(each.segments) == 1], typeface)


def _placed_above(
    strings: Sequence[String], typeface: Typeface
) -> tuple[tuple[PlacedString, ...], bool]:
    """The strings placed, or the outermost alone where others have no room at the scale."""
    try:
        return place_strings(strings, typeface), True
    except StringsDoNotFit:
        return place_strings(strings[-1:], typeface), False


def _reach(strings: Sequence[PlacedString]) -> float:
    return max((each.outer_edge for each in strings), default=0.0)
