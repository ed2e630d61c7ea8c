"""How far drawn elements reach on paper."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Circle, Element, Polyline, Pt, Segments, Text, walk
from lacunar.drawing.plan.clear_places import Box, text_box
from lacunar.drawing.typeface import Typeface


def extent(elements: Sequence[Element], typeface: Typeface) -> Box:
    """The smallest upright rectangle about elements, of which there is at least one."""
    boxes = [box for each in walk(tuple(elements)) for box in _boxes(each, typeface)]
    return Box(
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    )


def _boxes(element: Element, typeface: Typeface) -> Iterator[Box]:
    match element:
        case Polyline():
            yield _about(element.points)
        case Segments() if element.lines:
            yield _about([spot for line in element.lines for spot in line])
        case Circle():
            yield Box.about(element.center, element.radius * 2, element.radius * 2)
        case Text():
            yield text_box(element, typeface)


def _about(spots: Sequence[Pt]) -> Box:
    xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
    return Box(min(xs), min(ys), max(xs), max(ys))


def as_block(elements: Sequence[Element], typeface: Typeface) -> Block:
    """Drawn elements as a block from their own upper left corner."""
    box = extent(elements, typeface)
    children = Block(0.0, 0.0, tuple(elements)).at(-box.left, -box.top)
    return Block(box.right - box.left, box.bottom - box.top, children)
