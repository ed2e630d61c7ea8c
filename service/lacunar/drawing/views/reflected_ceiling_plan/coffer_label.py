"""How a coffer's id is lettered: in its outline, and where that is too wide without, then turned.

An id is never smaller: in a small coffer the coffer itself is its outline.
"""

from collections.abc import Iterator

from lacunar.drawing.annotation import Tag, TagsDoNotFit
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.layout.records import Coffer

CLEAR = 0.5
"""How far an id's outline, or its letters, keep from the coffer's lines [mm]."""


def coffer_label(frame: PlanFrame, coffer: Coffer, typeface: Typeface) -> Tag:
    """The id of a coffer as it fits what crown leaves to be seen of it.

    Errors: `TagsDoNotFit` where it does not fit at this scale either way.
    """
    wide, high = seen_inside(frame, coffer)
    for tag in _ways(coffer.id):
        along, across = tag.size(typeface)
        if along + 2 * CLEAR <= wide and across + 2 * CLEAR <= high:
            return tag
    raise TagsDoNotFit(coffer.id)


def seen_inside(frame: PlanFrame, coffer: Coffer) -> tuple[float, float]:
    """Length and width of a coffer inside the lines that are drawn in it [mm of paper]."""
    mouldings = frame.layout.mouldings
    if mouldings.crown is None:
        return frame.on_paper(coffer.length.value), frame.on_paper(coffer.width.value)
    trim = next(trim for trim in mouldings.coffers if coffer.id in trim.coffers)
    return frame.on_paper(trim.seen_length.value), frame.on_paper(trim.seen_width.value)


def _ways(coffer: str) -> Iterator[Tag]:
    yield Tag("coffer", coffer, coffer)
    yield Tag("coffer", coffer, coffer, bare=True)
    yield Tag("coffer", coffer, coffer, bare=True, turned=True)
