"""What is seen of coffers, and where their ids stand in it without meeting an item."""

from collections.abc import Mapping, Sequence

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.cut_coffers import seen_boxes
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.id_places import IdPlace, id_places
from lacunar.drawing.typeface import Typeface
from lacunar.layout.records import Coffer


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


def coffer_id_places(
    frame: PlanFrame, busy: Sequence[Occupied], typeface: Typeface
) -> dict[str, IdPlace]:
    """The place of each coffer's id in what is seen of it, clear of what is `busy`.

    Errors: `TagsDoNotFit` where a coffer has no room for its id.
    """
    return id_places(all_seen_boxes(frame), busy, typeface)


def all_seen_boxes(frame: PlanFrame) -> dict[str, Box]:
    """What is seen of every coffer, whole and cut."""
    seen = seen_sizes(frame)
    whole = {coffer.id: seen_box(frame, coffer, seen) for coffer in frame.layout.coffers}
    return {**whole, **seen_boxes(frame)}
