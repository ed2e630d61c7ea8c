"""Arrows that say which way boards, or the grain of sheets, lie in each coffer.

An arrow stands below or beside the middle of its coffer, where the id is; where an item is in its
way, anywhere else in the coffer. A coffer too small for both has none: the way is the same
everywhere, and the notes say it too.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import TagsDoNotFit, arrow
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.cut_coffers import seen_boxes
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.coffer_places import (
    IdPlace,
    first_free,
    seen_box,
    seen_sizes,
)
from lacunar.layout.records import Layout
from lacunar.model.room import RunName

HEAD = 1.8
HALF_HEAD = HEAD / 3
SHORTEST = 5.0
LONGEST = 14.0
LENGTHS = (LONGEST, 9.0, SHORTEST)
"""The lengths tried where an arrow has to leave its usual place [mm]."""
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
    frame: PlanFrame,
    ids: Mapping[str, IdPlace],
    busy: Sequence[Occupied],
    typeface: Typeface,
) -> tuple[Group, ...]:
    """An arrow in every coffer that has room for one.

    `busy` is what arrows keep clear of, `ids` of coffers among it; where no coffer has room then,
    the next of them counts. Errors: `TagsDoNotFit` where still none has.
    """
    run = direction_of(frame.layout)
    if run is None:
        return ()
    seen = seen_sizes(frame)
    boxes = {coffer.id: seen_box(frame, coffer, seen) for coffer in frame.layout.coffers}
    boxes |= seen_boxes(frame)
    spaces = [(coffer, box, ids[coffer].tag.size(typeface)) for coffer, box in boxes.items()]
    for taken in busy:
        places = ((coffer, _place(box, label, run, taken)) for coffer, box, label in spaces)
        found = tuple(_arrow(frame, coffer, place, run) for coffer, place in places if place)
        if found:
            return found
    raise TagsDoNotFit("an arrow along the boards or grain")


def _place(
    box: Box, label: tuple[float, float], run: RunName, busy: Occupied
) -> tuple[Pt, float] | None:
    """An arrow's middle and length within what is seen of a coffer; None where it has no room.

    `label` is how wide and how high the coffer's id is.
    """
    wide, high = box.right - box.left, box.bottom - box.top
    tag_wide, tag_high = label
    halves = (wide / 2, high / 2, tag_wide / 2, tag_high / 2)
    if run is RunName.WIDTH:
        halves = (high / 2, wide / 2, tag_high / 2, tag_wide / 2)
    usual = _Space(*halves).place()
    if usual is not None:
        along, aside, length = usual
        aside, along = (aside, along) if run is RunName.LENGTH else (along, aside)
        at = box.middle.moved(along, aside)
        if busy.is_free(Box.about(at, *_extent(length, run))):
            return at, length
    for length in LENGTHS:
        size = _extent(length, run)
        if size[0] + 2 * CLEAR > wide or size[1] + 2 * CLEAR > high:
            continue
        free = first_free(box, size, busy)
        if free is not None:
            return free, length
    return None


def _extent(length: float, run: RunName) -> tuple[float, float]:
    """What an arrow takes up on paper, from left to right and from top to bottom [mm]."""
    across = 2 * HALF_HEAD
    return (length, across) if run is RunName.LENGTH else (across, length)


def _arrow(frame: PlanFrame, coffer: str, place: tuple[Pt, float], run: RunName) -> Group:
    """The arrow of a coffer."""
    at, length = place
    what = "Boards lie" if frame.layout.boards else "Grain lies"
    return Group(
        "direction",
        double_arrow(at, length, run),
        id=f"direction-{coffer}",
        title=f"{what} along the {run} run",
        data={"of": coffer, "parallel-to": run.value},
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
