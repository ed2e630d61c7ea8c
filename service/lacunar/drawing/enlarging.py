"""Makes finished pages larger, letters and lines and all, for prints at half size."""

from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from lacunar.drawing.elements import (
    Circle,
    Element,
    Group,
    Pen,
    Polyline,
    Pt,
    Segments,
    Text,
)


def enlarged(elements: tuple[Element, ...], factor: Fraction) -> tuple[Element, ...]:
    """Elements `factor` times as large, about the corner of their paper.

    A view says its scale, thing to paper; that becomes as much larger as the paper has become.
    """
    if factor == 1:
        return elements
    return tuple(_larger(element, factor) for element in elements)


def _larger(element: Element, factor: Fraction) -> Element:
    match element:
        case Polyline():
            points = tuple(_at(point, factor) for point in element.points)
            return replace(element, points=points, pen=_pen(element.pen, factor))
        case Segments():
            lines = tuple((_at(a, factor), _at(b, factor)) for a, b in element.lines)
            return Segments(lines, _pen_of(element.pen, factor))
        case Circle():
            return replace(
                element,
                center=_at(element.center, factor),
                radius=float(element.radius * factor),
                pen=_pen(element.pen, factor),
            )
        case Text():
            height = float(element.height * factor)
            return replace(element, at=_at(element.at, factor), height=height)
        case Group():
            data = element.data
            if "scale" in data:
                data = {**data, "scale": str(Fraction(data["scale"]) / factor)}
            return replace(element, children=enlarged(element.children, factor), data=data)


def _at(point: Pt, factor: Fraction) -> Pt:
    return Pt(float(point.x * factor), float(point.y * factor))


def _pen(pen: Pen | None, factor: Fraction) -> Pen | None:
    return None if pen is None else _pen_of(pen, factor)


@lru_cache
def _pen_of(pen: Pen, factor: Fraction) -> Pen:
    dashes = tuple(float(dash * factor) for dash in pen.dashes)
    return Pen(pen.name, float(pen.width * factor), dashes)
