"""A section through the room: what is cut along a run, heights and headroom, openings above."""

from collections.abc import Iterator, Mapping, Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Text
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.reference_mark import Reference, mark_radius, reference_mark
from lacunar.drawing.upright.along import face_strings
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.heights import HeightStrings
from lacunar.drawing.upright.names import words_in_field
from lacunar.drawing.upright.view import Hand, Strings, UprightView

BELOW_ID = 4.0
"""How far the ring of a mark stands below the id of the beam that it is for [mm]."""
OFF = 0.6


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

    def drawn(self, references: Mapping[str, Reference]) -> Block:
        """The section as a block, with marks to the profiles by their name among `references`."""
        typeface = self.hand.typeface
        center, width = self.view.field()
        about = self.view.named(())
        busy = Occupied(typeface, about)
        words = words_in_field(tuple(self._headroom()), center, width, busy, typeface)
        about = (*about, *words)
        about = (*about, *self._marks(about, references))
        run = self.cut.run
        along = run.value if run is not None else ""
        return self.view.block({"view": "section"}, about, f"Section along the {along} run")

    def _headroom(self) -> Iterator[str]:
        """The lowest place of the room, and whether that leaves the headroom asked for."""
        heights, wording = self.cut.layout.heights, self.hand.wording
        kept = heights.worst_height.value >= heights.limit
        where = ", ".join(heights.worst)
        yield f"HEADROOM {wording.length(heights.worst_height.value)} UNDER {where}"
        yield f"LIMIT {wording.length(heights.limit)}, {'KEPT' if kept else 'NOT KEPT'}"

    def _marks(
        self, about: Sequence[Element], references: Mapping[str, Reference]
    ) -> Iterator[Group]:
        """A mark to each profile below the first beam that has it, where there is room for one."""
        busy = Occupied(self.hand.typeface, about)
        ids = {
            group.data["of"]: text
            for group in about
            if isinstance(group, Group) and group.data.get("kind") == "cut"
            for text in group.children
            if isinstance(text, Text) and not text.turned
        }
        told: set[str] = set()
        for beam in self.cut.beams:
            reference, text = references.get(f"profile-{beam.profile.id}"), ids.get(beam.id)
            if reference is None or text is None or reference.name in told:
                continue
            radius = mark_radius(reference, self.hand.typeface)
            under = text.at.moved(0.0, OFF)
            center = under.moved(0.0, BELOW_ID + radius)
            if not busy.is_free(Box.about(center, 2 * radius + 1.0, 2 * radius + 1.0)):
                continue
            told.add(reference.name)
            line = Polyline((center.moved(0.0, -radius), Pt(under.x, under.y)), style.LEADER)
            within = f"view-{self.hand.number}"
            mark = reference_mark(reference, center, self.hand.typeface, within)
            group = Group(mark.kind, (*mark.children, line), mark.id, mark.title, mark.data)
            busy.add((group,))
            yield group
