"""Sheets as SVG: one user unit is one millimeter of paper, ids and data are those of the sheet.

Only plain shapes and attributes are used, which cairosvg and browsers draw alike: one path per
polyline or set of segments (absolute M, L and Z), circles, and one text element per text.
"""

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType
from xml.etree import ElementTree

from svgwrite.base import BaseElement, Desc, Title
from svgwrite.drawing import Drawing

from lacunar.drawing.elements import (
    Circle,
    Element,
    Face,
    Fill,
    Group,
    Pen,
    Polyline,
    Pt,
    Segments,
    Sheet,
    Text,
    walk,
)
from lacunar.drawing.painters.attributes import data_name, name, number, positive, printable
from lacunar.drawing.painters.fonts import FontStyles
from lacunar.drawing.typeface import Typeface

_FILLS = {Fill.NONE: "none", Fill.WHITE: "#ffffff", Fill.TINT: "#ececec", Fill.BLACK: "#000000"}
_INK = "#000000"
_UNSHAPED = "svg{font-kerning:none;font-variant-ligatures:none;text-rendering:geometricPrecision}"
"""Letters stand where the sheet was measured to have them: browsers would pair, join and round."""
_SHORTEST_POLYLINE = 2


def paint_svg(sheet: Sheet, typeface: Typeface, *, fonts: FontStyles | None) -> str:
    """One sheet as an SVG document of its paper size, the same text for the same sheet.

    With `fonts` the faces the sheet uses are embedded, for a browser; without them the document
    only names them. Raises `ValueError` as `svg_tree` does.
    """
    xml = svg_tree(sheet, typeface, fonts=fonts)
    ElementTree.indent(xml, space="")
    text = ElementTree.tostring(xml, encoding="unicode")
    return f'<?xml version="1.0" encoding="utf-8"?>\n{text}\n'


def svg_tree(
    sheet: Sheet, typeface: Typeface, *, fonts: FontStyles | None
) -> "ElementTree.Element[str]":
    """The elements of the SVG document of a sheet, for a painter that goes on from them.

    Raises `ValueError`, naming the sheet, for an id used twice, a name that cannot be one, and a
    number that is no position on paper.
    """
    try:
        drawing = _Painter(sheet, typeface).drawing(fonts)
    except ValueError as error:
        raise ValueError(f"sheet {sheet.id!r} cannot be painted: {error}") from error
    xml: ElementTree.Element[str] = drawing.get_xml()
    return xml


class _Painter:
    """Turns the elements of one sheet into svgwrite's, and sees that no id is given twice."""

    def __init__(self, sheet: Sheet, typeface: Typeface) -> None:
        self._sheet = sheet
        self._typeface = typeface
        self._ids: set[str] = set()

    def drawing(self, fonts: FontStyles | None) -> Drawing:
        sheet = self._sheet
        width, height = positive(sheet.width), positive(sheet.height)
        drawing = Drawing(size=(f"{width}mm", f"{height}mm"), debug=False)
        drawing["id"] = self._unique(sheet.id)
        drawing["viewBox"] = f"0 0 {width} {height}"
        drawing["role"] = "img"
        title = self._described(Title(printable(sheet.title)), "title")
        desc = self._described(Desc(printable(sheet.description)), "desc")
        drawing["aria-labelledby"] = f"{title.xml.get('id')} {desc.xml.get('id')}"
        _set_data(drawing, sheet.data)
        drawing.elements[:0] = [title, desc]
        if fonts is not None:
            drawing.defs.add(drawing.style(_UNSHAPED + fonts.css(_faces(sheet.children))))
        self._paint(drawing, drawing, sheet.children)
        return drawing

    def _described(self, element: Title, suffix: str) -> Title:
        element.xml.set("id", self._unique(f"{self._sheet.id}-{suffix}"))
        return element

    def _unique(self, text: str) -> str:
        if name(text) in self._ids:
            raise ValueError(f"the id {text!r} stands on it twice")
        self._ids.add(text)
        return text

    def _paint(self, drawing: Drawing, parent: BaseElement, children: Iterable[Element]) -> None:
        for child in children:
            match child:
                case Group():
                    self._paint(drawing, parent.add(self._group(drawing, child)), child.children)
                case Text():
                    parent.add(self._text(child))
                case Circle():
                    parent.add(_circle(child))
                case Polyline() | Segments():
                    parent.add(_path(child))

    def _group(self, drawing: Drawing, group: Group) -> BaseElement:
        element = drawing.g(class_=name(group.kind))
        if group.id:
            element["id"] = self._unique(group.id)
        _set_data(element, group.data)
        if group.title:
            element.set_desc(title=printable(group.title))
        return element

    def _text(self, text: Text) -> BaseElement:
        x, y = number(text.at.x), number(text.at.y)
        attributes = {
            "x": x,
            "y": y,
            "fill": _INK,
            "font-family": self._typeface.family[text.face],
            "font-size": positive(self._typeface.font_size(text.height)),
            "text-anchor": text.anchor,
            "data-face": text.face.value,
            "data-height": positive(text.height),
        }
        if text.turned:
            attributes["transform"] = f"rotate(-90 {x} {y})"
        return _Leaf("text", attributes, printable(text.text))


def _faces(children: tuple[Element, ...]) -> frozenset[Face]:
    return frozenset(element.face for element in walk(children) if isinstance(element, Text))


def _set_data(element: BaseElement, data: Mapping[str, str]) -> None:
    for key, value in data.items():
        element[data_name(key)] = printable(value)


class _Leaf(BaseElement):  # type: ignore[misc]
    """An element without others in it, whose attributes are already text.

    Most of a sheet is such elements; the library's own look at each attribute several times.
    """

    def __init__(self, name: str, attributes: dict[str, str], text: str | None = None) -> None:
        self.elementname = name
        self.attribs = attributes
        self.elements = ()
        self._text = text

    def get_xml(self) -> "ElementTree.Element[str]":
        """The element, its attributes in the order of their names."""
        xml = ElementTree.Element(self.elementname, dict(sorted(self.attribs.items())))
        xml.text = self._text
        return xml


def _circle(circle: Circle) -> BaseElement:
    attributes = {
        "cx": number(circle.center.x),
        "cy": number(circle.center.y),
        "r": positive(circle.radius),
        "fill": _FILLS[circle.fill],
    }
    return _Leaf("circle", {**attributes, **_pen(circle.pen)})


def _path(lines: Polyline | Segments) -> BaseElement:
    if isinstance(lines, Segments):
        d, fill = " ".join(map(_moves, lines.lines)), Fill.NONE
    else:
        d, fill = _moves(lines.points) + (" Z" if lines.closed else ""), lines.fill
    return _Leaf("path", {"d": d, "fill": _FILLS[fill], **_pen(lines.pen)})


def _moves(points: Sequence[Pt]) -> str:
    if len(points) < _SHORTEST_POLYLINE:
        raise ValueError(f"a line of {len(points)} points has no length")
    return "M" + " L".join([f"{number(point.x)} {number(point.y)}" for point in points])


@lru_cache(maxsize=64)
def _pen(pen: Pen | None) -> Mapping[str, str]:
    if pen is None:
        return MappingProxyType({})
    attributes = {
        "stroke": _INK,
        "stroke-width": positive(pen.width),
        "data-pen": name(pen.name),
    }
    if pen.dashes:
        attributes["stroke-dasharray"] = " ".join(positive(dash) for dash in pen.dashes)
    return MappingProxyType(attributes)
