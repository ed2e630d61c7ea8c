"""A section through the room: what is cut along a run, heights and headroom, openings above."""

from collections.abc import Iterator

from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Element
from lacunar.drawing.plan.clear_places import Occupied
from lacunar.drawing.upright.along import face_strings
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.heights import HeightStrings
from lacunar.drawing.upright.names import words_in_field
from lacunar.drawing.upright.view import Hand, Strings, UprightView


class RoomSection:
    """A section at a scale: its size is known before it is drawn."""

    def __init__(self, cut: UprightCut, hand: Hand) -> None:
        heights = HeightStrings(hand.number, hand.bare_paper(), hand.wording)
        strings = Strings(
            left=heights.beside(cut),
            right=(heights.headroom(cut),),
            above=face_strings(cut, hand.bare_paper(), hand.wording),
        )
        self.view = UprightView(cut, hand, strings)
        self.cut = cut
        self.hand = hand

    def drawn(self) -> Block:
        """The section as a block."""
        center, width = self.view.field()
        busy = Occupied(self.hand.typeface, (self.view.drawn.object(),))
        words: tuple[Element, ...] = words_in_field(
            tuple(self._headroom()), center, width, busy, self.hand.typeface
        )
        run = self.cut.run
        along = run.value if run is not None else ""
        return self.view.block("section", words, f"Section along the {along} run")

    def _headroom(self) -> Iterator[str]:
        """The lowest place of the room, and whether that leaves the headroom asked for."""
        heights, wording = self.cut.layout.heights, self.hand.wording
        kept = heights.worst_height.value >= heights.limit
        where = ", ".join(heights.worst)
        yield f"HEADROOM {wording.length(heights.worst_height.value)} UNDER {where}"
        yield f"LIMIT {wording.length(heights.limit)}, {'KEPT' if kept else 'NOT KEPT'}"
