"""How large what fills coffers is, marked once for all that are alike, with how many there are."""

from collections.abc import Iterator, Mapping, Sequence

from lacunar.drawing import style
from lacunar.drawing.elements import Face, Group, Pt, Text
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.id_places import CLEAR, first_free
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout

MOST_MARKS = 40
MOST_TRIED = 6
"""So many sizes are marked, each in one of so many coffers; the tables have all of them."""


def size_marks(
    layout: Layout,
    boxes: Mapping[str, Box],
    busy: Occupied,
    wording: SheetWording,
    typeface: Typeface,
) -> Iterator[Group]:
    """A mark for each size, in the first of its coffers that has room."""
    for number, (coffers, words) in enumerate(_sizes(layout, wording), start=1):
        if number > MOST_MARKS:
            return
        size = (
            max(typeface.width(line, style.TEXT, Face.REGULAR) for line in words),
            style.LINE_PITCH * (len(words) - 1) + style.TEXT,
        )
        places = ((coffer, _free(boxes[coffer], size, busy)) for coffer in coffers)
        found = next((place for place in places if place[1] is not None), None)
        if found is not None and found[1] is not None:
            mark = _mark(number, (found[0], found[1]), words)
            busy.add((mark,))
            yield mark


def _free(box: Box, size: tuple[float, float], busy: Occupied) -> Pt | None:
    """Under or over the middle of a coffer, where its id is, or any other place that is free."""
    inner = box.grown(-CLEAR)
    if size[0] > inner.right - inner.left or size[1] > inner.bottom - inner.top:
        return None
    quarter = (box.bottom - box.top) / 4
    for aside in (quarter, -quarter):
        at = box.middle.moved(0.0, aside)
        around = Box.about(at, *size).grown(CLEAR)
        if around.within(inner) and busy.is_free(around):
            return at
    return first_free(inner, size, busy)


def _mark(number: int, place: tuple[str, Pt], words: Sequence[str]) -> Group:
    coffer, at = place
    first = at.y - style.LINE_PITCH * (len(words) - 1) / 2 + style.TEXT / 2
    texts = tuple(
        Text(Pt(at.x, first + style.LINE_PITCH * n), line, style.TEXT, anchor="middle")
        for n, line in enumerate(words)
    )
    return Group("field-size", texts, id=f"field-size-{number}", data={"of": coffer})


def _sizes(layout: Layout, wording: SheetWording) -> Iterator[tuple[Sequence[str], Sequence[str]]]:
    """Coffers that one size may be marked in, and its words: how many, how large, how laid."""
    for fit in layout.panels:
        size = f"{wording.length(fit.length.value)} x {wording.length(fit.width.value)}"
        yield fit.coffers[:MOST_TRIED], (*_times(len(fit.coffers)), size)
    for field in layout.boards.fields if layout.boards else ():
        count = field.courses.courses.value
        yield (
            field.coffers[:MOST_TRIED],
            (
                *_times(field.fields.value),
                f"{count} COURSES, {wording.length(field.length.value)} LONG",
                f"EDGES {wording.length(field.courses.edge.value)}",
            ),
        )


def _times(count: int) -> tuple[str, ...]:
    """How many there are of a size; nothing of one alone."""
    return (f"{count}X",) if count > 1 else ()
