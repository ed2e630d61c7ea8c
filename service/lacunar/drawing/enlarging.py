"""Makes finished pages larger, letters and lines and all, for prints at half size."""

from collections.abc import Mapping
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

AXIS = "-axis"
"""How names of data end that tell an axis of a picture."""


def enlarged(elements: tuple[Element, ...], factor: Fraction) -> tuple[Element, ...]:
    """Elements `factor` times as large, about the corner of their paper.

    A view says its scale, thing to paper; that becomes as much smaller as the paper has become
    larger. A picture says how long a millimeter of each axis is on paper.
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
            children = enlarged(element.children, factor)
            return replace(element, children=children, data=_data(element, factor))


def _data(group: Group, factor: Fraction) -> Mapping[str, str]:
    """What a group says of itself; of that, only scales and axes of pictures are of paper."""
    data = dict(group.data)
    if group.kind == "view" and "scale" in data:
        data["scale"] = str(Fraction(data["scale"]) / factor)
    for name in data:
        if name.endswith(AXIS):
            ways = (float(way) * float(factor) for way in data[name].split())
            data[name] = " ".join(f"{way:.9f}" for way in ways)
    return data


def _at(point: Pt, factor: Fraction) -> Pt:
    return Pt(float(point.x * factor), float(point.y * factor))


def _pen(pen: Pen | None, factor: Fraction) -> Pen | None:
    return None if pen is None else _pen_of(pen, factor)


@lru_cache
def _pen_of(pen: Pen, factor: Fraction) -> Pen:
    dashes = tuple(float(dash * factor) for dash in pen.dashes)
    return Pen(pen.name, float(pen.width * factor), dashes)
