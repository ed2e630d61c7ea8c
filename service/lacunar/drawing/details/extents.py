"""How far drawn elements reach, and the straight lines among them."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.elements import Circle, Element, Polyline, Pt, Segments, Text, walk
from lacunar.drawing.plan.clear_places import Box
from lacunar.drawing.typeface import Typeface

Line = tuple[Pt, Pt]
_BELOW_BASELINE = 0.27


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
            yield _text(element, typeface)


def _about(spots: Sequence[Pt]) -> Box:
    xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _text(text: Text, typeface: Typeface) -> Box:
    width = typeface.width(text.text, text.height, text.face)
    before = {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
    low = text.height * _BELOW_BASELINE
    x, y = text.at.x, text.at.y
    if text.turned:
        return Box(x - text.height, y - (width - before), x + low, y + before)
    return Box(x - before, y - text.height, x + width - before, y + low)


def lines_of(elements: Sequence[Element]) -> Iterator[Line]:
    """Every straight line that is drawn with a pen."""
    for element in walk(tuple(elements)):
        match element:
            case Polyline() if element.pen is not None:
                spots = element.points + element.points[:1] * element.closed
                yield from zip(spots, spots[1:], strict=False)
            case Segments():
                yield from element.lines
