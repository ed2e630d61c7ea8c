"""Arrows that say which way boards, or the grain of sheets, lie in each coffer.

An arrow stands below or beside the coffer's id, whichever leaves it clear. A coffer too small for
both has none: the way is the same everywhere, and the notes say it too.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import TAG_HEIGHT, Tag, TagsDoNotFit, arrow
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Box
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.drawing.views.reflected_ceiling_plan.items import item_boxes
from lacunar.layout.moulding_records import CofferTrim
from lacunar.layout.records import Coffer, Layout
from lacunar.model.room import RunName

HEAD = 1.8
HALF_HEAD = HEAD / 3
SHORTEST = 5.0
LONGEST = 14.0
CLEAR = 1.0


@dataclass(frozen=True, slots=True)
class _Space:
    """Half of what is seen of a coffer and half its tag, along the arrow and across it [mm]."""

    along: float
    across: float
    tag_along: float
    tag_across: float

    def place(self) -> tuple[float, float, float] | None:
        """The arrow's middle off the coffer's, along and across, and its length; None if none."""
        aside = self.tag_across + CLEAR + HALF_HEAD
        if aside + HALF_HEAD + CLEAR <= self.across and self.along - CLEAR >= SHORTEST / 2:
            return 0.0, aside, min(LONGEST, 2 * (self.along - CLEAR))
        left = self.along - self.tag_along - 2 * CLEAR
        if left >= SHORTEST and self.across >= HALF_HEAD + CLEAR:
            length = min(left, LONGEST)
            return self.tag_along + CLEAR + length / 2, 0.0, length
        return None


def direction_of(layout: Layout) -> RunName | None:
    """The run that boards, or the sheets' grain, lie along; None where nothing lies any way."""
    panel = layout.ceiling.panel
    return panel.boards.parallel_to if panel.boards else panel.grain


def direction_arrows(
    frame: PlanFrame, tags: Mapping[str, Box], typeface: Typeface
) -> tuple[Group, ...]:
    """An arrow in every coffer that has room for one.

    Errors: `TagsDoNotFit` where no coffer has.
    """
    run = direction_of(frame.layout)
    if run is None:
        return ()
    trims = {each: trim for trim in frame.layout.mouldings.coffers for each in trim.coffers}
    signs = item_boxes(frame)
    found = []
    for coffer in frame.layout.coffers:
        group = _arrow(frame, coffer, trims[coffer.id], run, typeface)
        taken = (tags[coffer.id], *signs.get(coffer.id, ()), *signs.get(None, ()))
        if group is not None and not _meets(group, taken):
            found.append(group)
    if not found:
        raise TagsDoNotFit("direction")
    return tuple(found)


def _meets(group: Group, taken: tuple[Box, ...]) -> bool:
    """Whether an arrow would lie on the coffer's id or on an item."""
    points = [spot for part in group.children if isinstance(part, Polyline) for spot in part.points]
    left, right = min(p.x for p in points), max(p.x for p in points)
    top, bottom = min(p.y for p in points), max(p.y for p in points)
    return any(Box(left, top, right, bottom).grown(0.3).meets(box) for box in taken)


def _arrow(
    frame: PlanFrame, coffer: Coffer, trim: CofferTrim, run: RunName, typeface: Typeface
) -> Group | None:
    """The arrow within what mouldings leave to be seen of a coffer, beside its id."""
    corners = [frame.point(point) for point in coffer.corners]
    wide, high = (frame.on_paper(seen.value) for seen in (trim.seen_length, trim.seen_width))
    tag_wide = Tag("coffer", coffer.id, coffer.id).long_side(typeface)
    halves = (wide / 2, high / 2, tag_wide / 2, TAG_HEIGHT / 2)
    if run is RunName.WIDTH:
        halves = (high / 2, wide / 2, TAG_HEIGHT / 2, tag_wide / 2)
    place = _Space(*halves).place()
    if place is None:
        return None
    along, aside, length = place
    middle = Pt(sum(c.x for c in corners) / 4, sum(c.y for c in corners) / 4)
    at = middle.moved(along, aside) if run is RunName.LENGTH else middle.moved(aside, along)
    what = "Boards lie" if frame.layout.boards else "Grain lies"
    return Group(
        "direction",
        double_arrow(at, length, run),
        id=f"direction-{coffer.id}",
        title=f"{what} along the {run} run",
        data={"of": coffer.id, "parallel-to": run.value},
    )


def double_arrow(middle: Pt, length: float, run: RunName) -> tuple[Element, ...]:
    """A line with a head at each end about its middle, along a run as it lies on the plan [mm]."""
    half = length / 2
    dx, dy = (half, 0.0) if run is RunName.LENGTH else (0.0, half)
    ends = (middle.moved(-dx, -dy), middle.moved(dx, dy))
    return (
        Polyline(ends, style.FINE),
        *(arrow(end, middle, HEAD) for end in ends),
    )
