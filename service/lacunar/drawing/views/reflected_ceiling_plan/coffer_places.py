"""Where ids stand in coffers without meeting an item.

A coffer's id stands in its middle. Where an item takes that place, the id goes to a corner of what
is seen of the coffer, the upper left first, so that it stands alike in coffers that are alike.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing.annotation import Tag, TagsDoNotFit
from lacunar.drawing.elements import Group, Pt
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.cut_coffers import seen_boxes
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.typeface import Typeface
from lacunar.layout.records import Coffer

CLEAR = 0.8
"""How far from items an id keeps [mm]."""
INSIDE = 0.5
"""How far an id's outline, or its letters, keep from the coffer's lines [mm]."""
PLACES = 9
"""So many places along each side of a coffer are tried for what has no usual place left."""


def middle_of(frame: PlanFrame, coffer: Coffer) -> Pt:
    """The middle of a coffer's opening on paper."""
    corners = [frame.point(point) for point in coffer.corners]
    return Pt(sum(c.x for c in corners) / 4, sum(c.y for c in corners) / 4)


def seen_box(frame: PlanFrame, coffer: Coffer, seen: Mapping[str, tuple[float, float]]) -> Box:
    """What mouldings leave to be seen of a coffer."""
    return Box.about(middle_of(frame, coffer), *seen[coffer.id])


def seen_sizes(frame: PlanFrame) -> dict[str, tuple[float, float]]:
    """How long and how wide each coffer is inside the lines that are drawn in it [mm]."""
    layout = frame.layout
    if layout.mouldings.crown is None:
        return {
            coffer.id: (frame.on_paper(coffer.length.value), frame.on_paper(coffer.width.value))
            for coffer in layout.coffers
        }
    return {
        coffer: (frame.on_paper(trim.seen_length.value), frame.on_paper(trim.seen_width.value))
        for trim in layout.mouldings.coffers
        for coffer in trim.coffers
    }


@dataclass(frozen=True, slots=True)
class IdPlace:
    """A coffer's id and where its middle stands."""

    tag: Tag
    at: Pt

    def drawn(self, typeface: Typeface) -> Group:
        """The id at its place."""
        return self.tag.drawn(self.at, typeface)


def coffer_id_places(
    frame: PlanFrame, busy: Sequence[Occupied], typeface: Typeface
) -> dict[str, IdPlace]:
    """The place of each coffer's id: in outlines, or, where one has no room, all without.

    Without an outline an id turns where it is too wide; its letters are never smaller. `busy` is
    what ids keep clear of; where a coffer has no room then, the next of them counts.
    Errors: `TagsDoNotFit` where a coffer has no room for its id either way.
    """
    boxes = _seen_boxes(frame)
    places: dict[str, IdPlace] = {}
    for bare in (False, True):
        places = {}
        for coffer, box in boxes.items():
            place = _id_place(_ways(coffer, bare=bare), box, busy, typeface)
            if place is None:
                break
            places[coffer] = place
        else:
            return places
    raise TagsDoNotFit(next(coffer for coffer in boxes if coffer not in places))


def _seen_boxes(frame: PlanFrame) -> dict[str, Box]:
    seen = seen_sizes(frame)
    whole = {coffer.id: seen_box(frame, coffer, seen) for coffer in frame.layout.coffers}
    return {**whole, **seen_boxes(frame)}


def _ways(coffer: str, *, bare: bool) -> tuple[Tag, ...]:
    """How the id of a coffer may be lettered."""
    if not bare:
        return (Tag("coffer", coffer, coffer),)
    return tuple(
        Tag("coffer", coffer, coffer, bare=True, turned=turned) for turned in (False, True)
    )


def _id_place(
    ways: Iterable[Tag], box: Box, busy: Sequence[Occupied], typeface: Typeface
) -> IdPlace | None:
    """The first way an id fits what is seen of its coffer, and its place there."""
    for tag in ways:
        wide, high = tag.size(typeface)
        if wide + 2 * INSIDE > box.right - box.left or high + 2 * INSIDE > box.bottom - box.top:
            continue
        found = (first_free(box, (wide, high), taken) for taken in busy)
        at = next((at for at in found if at is not None), None)
        if at is not None:
            return IdPlace(tag, at)
    return None


def first_free(box: Box, size: tuple[float, float], busy: Occupied) -> Pt | None:
    """A place in an area for something of a size: its middle, a corner, or any; None if none."""
    wide, high = size
    return next(
        (at for at in _places(box, size) if busy.is_free(Box.about(at, wide, high).grown(CLEAR))),
        None,
    )


def _places(box: Box, size: tuple[float, float]) -> Iterator[Pt]:
    middle = Pt((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    across = max((box.right - box.left - size[0]) / 2 - CLEAR, 0.0)
    down = max((box.bottom - box.top - size[1]) / 2 - CLEAR, 0.0)
    yield middle
    for x, y in ((-1, -1), (1, -1), (-1, 1), (1, 1)):
        yield middle.moved(x * across, y * down)
    half = (PLACES - 1) / 2
    for row in range(PLACES):
        for column in range(PLACES):
            yield middle.moved((column / half - 1) * across, (row / half - 1) * down)
