"""The upright box that elements take on paper."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing.elements import Circle, Element, Group, Polyline, Pt, Segments, Text, walk
from lacunar.drawing.typeface import Typeface

_BEFORE = {"start": 0.0, "middle": 0.5, "end": 1.0}


@dataclass(frozen=True, slots=True)
class Extent:
    """A box on paper [mm], y down."""

    left: float
    top: float
    right: float
    bottom: float


def extent(elements: Sequence[Element], typeface: Typeface) -> Extent:
    """The box around elements, with the widths of their texts. Raises `ValueError` for none."""
    spots = list(spots_of(elements, typeface))
    xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
    return Extent(min(xs), min(ys), max(xs), max(ys))


def spots_of(elements: Sequence[Element], typeface: Typeface) -> Iterator[Pt]:
    """Points that all of the elements lie between."""
    for element in walk(tuple(elements)):
        yield from _spots(element, typeface)


def _spots(element: Element, typeface: Typeface) -> Iterable[Pt]:
    match element:
        case Polyline():
            return element.points
        case Segments():
            return (spot for line in element.lines for spot in line)
        case Circle():
            reach = element.radius
            return element.center.moved(-reach, -reach), element.center.moved(reach, reach)
        case Text():
            return _corners(element, typeface)
        case Group():
            return ()


def _corners(text: Text, typeface: Typeface) -> Iterator[Pt]:
    """Two opposite corners of a text's box, from capital height to the depth of a tail."""
    width = typeface.width(text.text, text.height, text.face)
    start = -width * _BEFORE[text.anchor]
    depth = typeface.font_size(text.height) * typeface.descent
    for along, down in ((start, -text.height), (start + width, depth)):
        yield text.at.moved(down, -along) if text.turned else text.at.moved(along, down)
