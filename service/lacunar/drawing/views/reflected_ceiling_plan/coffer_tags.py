"""Where the ids of coffers stand: in the middle, or aside where a ceiling item is."""

from collections.abc import Iterator, Mapping

from lacunar.drawing.annotation import Tag
from lacunar.drawing.elements import Pt
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Box
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.drawing.views.reflected_ceiling_plan.items import item_boxes
from lacunar.layout.records import Coffer

APART = 0.9
# Above first: arrows that say how boards lie stand below the middle, or right of it.
ASIDE = ((-1, -1), (1, -1), (0, -1), (-1, 0), (-1, 1), (0, 1), (1, 1), (1, 0))


def coffer_tags(frame: PlanFrame, typeface: Typeface) -> Mapping[str, Box]:
    """The box of every coffer's id. Where nothing aside is clear it stays in the middle."""
    boxes = item_boxes(frame)
    on_beams = boxes.get(None, ())
    trims = {each: trim for trim in frame.layout.mouldings.coffers for each in trim.coffers}
    found = {}
    for coffer in frame.layout.coffers:
        taken = (*boxes.get(coffer.id, ()), *on_beams)
        trim = trims[coffer.id]
        seen = frame.on_paper(trim.seen_length.value), frame.on_paper(trim.seen_width.value)
        places = list(_places(frame, coffer, seen, typeface))
        clear = (box for box in places if not any(box.grown(APART).meets(sign) for sign in taken))
        found[coffer.id] = next(clear, places[0])
    return found


def _places(
    frame: PlanFrame, coffer: Coffer, seen: tuple[float, float], typeface: Typeface
) -> Iterator[Box]:
    corners = [frame.point(point) for point in coffer.corners]
    middle = Pt(sum(c.x for c in corners) / 4, sum(c.y for c in corners) / 4)
    wide, high = Tag("coffer", coffer.id, coffer.id).size(typeface)
    yield Box.about(middle, wide, high)
    across, down = ((seen[0] - wide) / 2 - APART, (seen[1] - high) / 2 - APART)
    if across >= 0 and down >= 0:
        for right, below in ASIDE:
            yield Box.about(middle.moved(right * across, below * down), wide, high)
