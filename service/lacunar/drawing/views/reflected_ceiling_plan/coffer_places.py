"""Where ids stand in coffers without meeting an item.

A coffer's id stands in its middle. Where an item takes that place, the id goes to a corner of what
is seen of the coffer, the upper left first, so that it stands alike in coffers that are alike.
"""

from collections.abc import Iterator, Mapping, Sequence

from lacunar.drawing.annotation import Tag, TagsDoNotFit
from lacunar.drawing.elements import Pt
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Box, Occupied
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.layout.records import Coffer

CLEAR = 0.8
PLACES = 9
"""So many places along each side of a coffer are tried for what has no usual place left."""


def middle_of(frame: PlanFrame, coffer: Coffer) -> Pt:
    """The middle of a coffer's opening on paper."""
    corners = [frame.point(point) for point in coffer.corners]
    return Pt(sum(c.x for c in corners) / 4, sum(c.y for c in corners) / 4)


def seen_area(frame: PlanFrame, coffer: Coffer, seen: Mapping[str, tuple[float, float]]) -> Box:
    """What mouldings leave to be seen of a coffer."""
    return Box.about(middle_of(frame, coffer), *seen[coffer.id])


def seen_sizes(frame: PlanFrame) -> dict[str, tuple[float, float]]:
    """How long and how wide each coffer is inside its mouldings [mm]."""
    return {
        coffer: (frame.on_paper(trim.seen_length.value), frame.on_paper(trim.seen_width.value))
        for trim in frame.layout.mouldings.coffers
        for coffer in trim.coffers
    }


def coffer_id_places(
    frame: PlanFrame, busy: Sequence[Occupied], typeface: Typeface
) -> dict[str, Pt]:
    """The middle of each coffer's id.

    `busy` is what ids keep clear of; where a coffer has no room then, the next of them counts.
    Errors: `TagsDoNotFit` where it still has none.
    """
    seen = seen_sizes(frame)
    places = {}
    for coffer in frame.layout.coffers:
        size = Tag("coffer", coffer.id, coffer.id).size(typeface)
        area = seen_area(frame, coffer, seen)
        found = (first_free(area, size, taken) for taken in busy)
        place = next((at for at in found if at is not None), None)
        if place is None:
            raise TagsDoNotFit(coffer.id)
        places[coffer.id] = place
    return places


def first_free(area: Box, size: tuple[float, float], busy: Occupied) -> Pt | None:
    """A place in an area for something of a size: its middle, a corner, or any; None if none."""
    wide, high = size
    return next(
        (at for at in _places(area, size) if busy.is_free(Box.about(at, wide, high).grown(CLEAR))),
        None,
    )


def _places(area: Box, size: tuple[float, float]) -> Iterator[Pt]:
    middle = Pt((area.left + area.right) / 2, (area.top + area.bottom) / 2)
    across = max((area.right - area.left - size[0]) / 2 - CLEAR, 0.0)
    down = max((area.bottom - area.top - size[1]) / 2 - CLEAR, 0.0)
    yield middle
    for x, y in ((-1, -1), (1, -1), (-1, 1), (1, 1)):
        yield middle.moved(x * across, y * down)
    half = (PLACES - 1) / 2
    for row in range(PLACES):
        for column in range(PLACES):
            yield middle.moved((column / half - 1) * across, (row / half - 1) * down)
